import {
  coilPullIn, driveOptocoupler, groundingJob, ledRow, nearestPreferred, nextPreferredUp, optocoupler, supplyFromConverter, TOUCH_LIMIT_VOLTS, wire, wireOhms, type GroundingJob, type Jack, type OutsideGear,
} from '../../compute/index.ts';
import { UNEARTHED_TOUCH_RMS_AMPS } from '../../compute/grounding/limits.ts';
import type { SleeveLoopProps } from '../../drawings/sleeve-loop.tsx';
import { given, type Shop } from '../shop.ts';
import { grounds, regrounded } from './grounded.ts';
import { heaterRailJob } from './heater-rail.ts';
import { tarnRail } from './tarn-spare.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** The player's lead and what earths the box at its end; all supposed. */
const CABLE = { wire: 'awg-22', metres: 6, earthOhms: 0.3, differenceVolts: 1 } as const;
/** The same box in a rack beside the amp, on a short lead and the same outlet; supposed. */
const NEAR = { metres: 1, earthOhms: 0.1 } as const;
/** What the switcher gives on its own contacts; supposed. */
const DRIVE = { volts: 9, ledAmps: 0.005, opto: '817' } as const;
/** The player's other switcher, for the reader's own sum; supposed. */
const OTHER = { volts: 5, ledAmps: 0.01, opto: '4n25' } as const;
/** Nothing draws from the rail. Supposed. */
const IDLE_OHMS = 1e6;

/** Everything that lesson 17 says: the Fennel 100's jack met in several ways, and what an earthed box does to each. */
export function work(shop: Shop): Worked<string> & { readonly loop: SleeveLoopProps } {
  const { fennel100, tarn45 } = shop;
  const cableOhms = wireOhms({ row: wire(CABLE.wire), metres: CABLE.metres });
  const earthed: OutsideGear = { kind: 'sleeve-to-earth', cableOhms, earthOhms: CABLE.earthOhms };
  const relay = given(fennel100.loads.find((item) => item.kind === 'relay'), 'relays on the Fennel 100');
  const coilOhms = given(relay.ohms, 'the resistance of its coils');
  const railVolts = fennel100.rail.volts;
  const onJack = (change: Partial<Jack>): readonly Jack[] => [
    { name: 'Switcher', mounting: 'insulated', tip: { kind: 'coil', ohms: coilOhms }, sleeve: { kind: 'rail-negative' }, touchable: true, gear: { kind: 'none' }, ...change },
  ];
  const module = given(groundingJob(fennel100, supplyFromConverter(fennel100)), 'grounds for a converter');
  const fennel = (change: Partial<Jack>, isFloating = false): ReturnType<typeof grounds> =>
    grounds(regrounded(module, { jacks: onJack(change), ...(isFloating ? { rail: { kind: 'floating' } } : {}) }));

  const loop = fennel({ gear: { ...earthed, earthDifferenceVolts: CABLE.differenceVolts } });
  const shield = fennel({ sleeve: { kind: 'rail-positive' }, tip: { kind: 'rail-negative' }, gear: earthed });
  const floating = fennel({}, true);
  const leak = given(floating.leakage, 'what leaks through the module');

  const hung = heaterRailJob(tarn45);
  const bench = grounds(regrounded(hung, { jacks: onJack({}) }));
  const stage = grounds(regrounded(hung, { jacks: onJack({ gear: earthed }) }));
  const nearOhms = wireOhms({ row: wire(CABLE.wire), metres: NEAR.metres });
  const near = grounds(regrounded(hung, { jacks: onJack({ gear: { kind: 'sleeve-to-earth', cableOhms: nearOhms, earthOhms: NEAR.earthOhms } }) }));
  const outside = stage.branch('jack-1-outside');
  const heaterRated = given(tarn45.amp.heater?.ratedAmps, 'the rating of the heater winding');
  const elevatedJob = heaterRailJob(fennel100);
  const elevated = grounds(regrounded(elevatedJob, { jacks: onJack({}) }));
  const elevatedSleeve = given(elevated.jacks.find(({ side }) => side === 'sleeve'), 'the sleeve');

  // High voltage on a signal relay whose coil the tip switches, on the Tarn 45's bonded rail, while nothing draws from it.
  const spare = given(groundingJob(tarn45, tarnRail(tarn45).supply), 'grounds for the spare winding');
  const switched: GroundingJob = {
    ...regrounded(spare, { jacks: onJack({}), relays: [{ name: 'relay', work: { at: 'high-tension' }, insulation: { kind: 'test-voltage-only', testVolts: 1000 } }] }),
    loadOhms: IDLE_OHMS,
  };
  const broken = grounds(switched).fault('coil-to-contact');
  const brokenTip = given(broken.contacts.find(({ side }) => side === 'tip'), 'the tip');

  const coil = { ratedVolts: relay.volts, ohms: coilOhms, tolerance: relay.tolerance ?? 0.1, mustOperateRatio: relay.mustOperateRatio ?? 0.75, mustReleaseRatio: 0.1, kelvinPerWatt: given(relay.kelvinPerWatt, 'how its coils warm') };
  const lamp = ledRow('red');
  const atCoil = railVolts - lamp.forwardVolts.typical;
  const hot = coilPullIn({ coil, airCelsius: fennel100.amp.airCelsius, heatingVolts: atCoil });

  const part = optocoupler(DRIVE.opto);
  const drive = driveOptocoupler({ part, driveVolts: DRIVE.volts, ledAmps: DRIVE.ledAmps, pullUpVolts: railVolts });
  const ledOhms = nearestPreferred({ value: drive.ohms, series: 'E12' });
  const pullUp = nextPreferredUp({ value: drive.leastPullUpOhms, series: 'E12' });
  const coilAmps = railVolts / coilOhms;
  const otherPart = optocoupler(OTHER.opto);
  const other = driveOptocoupler({ part: otherPart, driveVolts: OTHER.volts, ledAmps: OTHER.ledAmps, pullUpVolts: railVolts });

  const figures = {
    rail: figure(railVolts, 'V'),
    coilOhms: figure(coilOhms, 'Ω'),
    coilAmps: figure(coilAmps, 'A', 2),
    metres: figure(CABLE.metres, 'm'),
    cable: figure(cableOhms, 'Ω', 2),
    earth: figure(CABLE.earthOhms, 'Ω'),
    path: figure(cableOhms + CABLE.earthOhms, 'Ω', 2),
    cableDrop: figure(2 * cableOhms * coilAmps, 'V', 2),
    difference: figure(CABLE.differenceVolts, 'V'),
    loopAmps: solved(loop.branch('jack-1-outside').rmsAmps, 'A', 2),
    benchHalf: solved(bench.branch('half-1').rmsAmps, 'A', 2),
    stageAmps: solved(outside.rmsAmps, 'A', 2),
    stagePeak: solved(outside.peakAmps, 'A', 2),
    stageWatts: solved(outside.watts, 'W', 2),
    stageHalf: solved(stage.branch('half-1').rmsAmps, 'A', 2),
    stageRail: solved(stage.rail.meanVolts, 'V', 2),
    benchRail: solved(bench.rail.meanVolts, 'V', 2),
    stageDiode: solved(stage.branch('diode-negative-to-second').meanAmps, 'A', 2),
    nearMetres: figure(NEAR.metres, 'm'),
    nearPath: figure(nearOhms + NEAR.earthOhms, 'Ω', 2),
    nearAmps: solved(near.branch('jack-1-outside').rmsAmps, 'A', 2),
    nearHalf: solved(near.branch('half-1').rmsAmps, 'A', 2),
    nearDiode: solved(near.branch('diode-negative-to-second').meanAmps, 'A', 2),
    diodeRated: figure(given(near.stress('diode-negative-to-second').rated, 'the diode’s rating'), 'A', 2),
    heaterRated: figure(heaterRated, 'A'),
    elevatedSleeve: solved(elevatedSleeve.dcVolts, 'V', 2),
    shieldAmps: solved(shield.branch('jack-1-outside').rmsAmps, 'A', 2),
    shieldRail: solved(shield.rail.meanVolts, 'V', 1),
    leakVolts: solved(leak.acVolts, 'V', 2),
    leakAmps: solved(given(leak.hand, 'a hand').acAmps, 'A', 2),
    unearthed: figure(UNEARTHED_TOUCH_RMS_AMPS.value, 'A'),
    touch: figure(TOUCH_LIMIT_VOLTS, 'V'),
    brokenVolts: solved(brokenTip.dcVolts, 'V', 2),
    brokenHand: solved(given(broken.touch.hand, 'a hand').dcAmps, 'A', 2),
    highVolts: figure(given(tarn45.amp.highTensionVolts, 'the high voltage'), 'V'),
    lampVolts: figure(lamp.forwardVolts.typical, 'V'),
    atCoil: solved(atCoil, 'V', 3),
    hotNeeds: solved(hot.operateVolts, 'V', 3),
    hotCelsius: solved(hot.coilCelsius, '°C', 2),
    air: figure(fennel100.amp.airCelsius, '°C'),
    drive: figure(DRIVE.volts, 'V'),
    ledAmps: figure(DRIVE.ledAmps, 'A'),
    ledVolts: figure(part.ledVolts.typical, 'V'),
    ledOhms: figure(ledOhms, 'Ω'),
    ratio: figure(part.transfer.min, '%'),
    aged: figure(drive.collectorAmps, 'A', 3),
    agedRatio: figure(drive.collectorAmps / DRIVE.ledAmps, '%'),
    leastPullUp: figure(drive.leastPullUpOhms, 'Ω', 2),
    pullUp: figure(pullUp, 'Ω'),
    otherVolts: figure(OTHER.volts, 'V'),
    otherAmps: figure(OTHER.ledAmps, 'A'),
    otherRatio: figure(otherPart.transfer.min, '%'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return {
    ...worked({
      figures,
      names: { optoName: part.name, otherName: otherPart.name },
      asked: [
        'stageAmps', 'nearHalf', 'heaterRated', 'stageWatts', 'rail', 'shieldAmps', 'shieldRail', 'brokenVolts', 'brokenHand', 'highVolts', 'otherVolts', 'otherAmps', 'otherName', 'otherRatio', 'loopAmps', 'difference',
        'atCoil', 'hotNeeds', 'lampVolts', 'elevatedSleeve', 'leakVolts', 'leakAmps', 'unearthed', 'path', 'coilAmps',
      ],
      answers: { 'aged-collector': other.collectorAmps },
      opened: {},
      steps: [
        { ask: 'Which parts may touch the player’s box?', words: 'Only the light side of each coupler. Its two wires go to an insulated jack and to nothing else in the amp.', sum: 'tip → resistor → LED → sleeve; sleeve on neither rail nor chassis' },
        {
          ask: 'Which resistor stands before the LED?',
          words: `The switcher gives ${text('drive')} (supposed). Take off the LED’s drop, divide by the current wanted.`,
          sum: `(${text('drive')} − ${text('ledVolts')}) ÷ ${text('ledAmps')} ≈ ${text('ledOhms')}`,
        },
        {
          ask: 'How much current does the other side carry, at worst and in ten years?',
          words: 'LED current times the least transfer ratio that the sheet allows, times a half for age and heat.',
          sum: `${text('ledAmps')} × ${text('ratio')} × 0.5 = ${text('aged')}`,
          left: true,
        },
        { ask: 'Can that pull in a coil by itself?', words: 'Compare it with the coil’s current.', sum: `${text('aged')} against ${text('coilAmps')}: no, a transistor must do it`, left: true },
        { ask: 'Which pull-up can it hold down?', words: 'The rail, less what is left across the coupler, over that current. Take the next value up.', sum: `at least ${text('leastPullUp')}: ${text('pullUp')}`, left: true },
        { ask: 'How many grounds does the cable bring now?', words: 'Follow the sleeve into the amp.', sum: 'none: it ends at an LED', left: true },
      ],
    }),
    loop: { id: 'sleeve-loop', loopText: `${text('stageAmps')} RMS`, pathText: text('path') },
  };
}
