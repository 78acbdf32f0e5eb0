import { COIL_REFERENCE_CELSIUS } from '../../compute/parts/relay.ts';
import { ANODE_SWING } from '../../compute/findings/contacts.ts';
import { TOUCH_LIMIT_VOLTS, UNCONNECTED, analyseGrounding, coilOnRail, copperRatio, droppedCoils, relayCoil, releaseSpread, type GroundingJob, type RailReference, type RelayCoil, type Suppression } from '../../compute/index.ts';
import { BREAKDOWN_OHMS } from '../../compute/grounding/limits.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import { given, type Shop } from '../shop.ts';
import { HAND_DC_OHMS } from './high-voltage.ts';
import { coilOf } from './shop-coil.ts';
import { RAIL_HIGH } from './the-load-list.ts';
import { figure, inWords, solved, worked, type Worked } from './worked.ts';

/** Drop of what switches a coil: a small transistor, and a Darlington array. Typical. */
const DROP = { transistor: 0.1, darlington: 1 };

/** Rails from the mistakes: two coils in series, or behind one resistor. */
const DOUBLE_RAIL = 24;

/** A signal relay from the drawer, for the barrier. */
const SIGNAL_RELAY = 'telecom-200-12v';

/** What the quiz's coil stands in: hotter air than the lesson's. */
const QUIZ_AIR = 70;

/** What feeds the Fennel’s rail in the fault; its own insulation is taken to hold. Supposed. */
const CONVERTER = { kind: 'converter', outputVolts: 12, limitAmps: 0.6 } as const;

const MINUS: RailReference = { kind: 'bonded', pole: 'negative' };

/** Everything that lesson 6 says of coils on a rail and of what a relay keeps apart. */
export function work(shop: Shop): Worked<string> & {
  /** The case that the indicator’s calculator opens on: two coils behind one resistor. */
  readonly dropper: InitialCase;
  readonly fault: { readonly anodeVolts: string; readonly highVolts: string; readonly jackVolts: string };
} {
  const { quillon20, fennel100 } = shop;
  const coil = coilOf(quillon20);
  const signal = relayCoil(SIGNAL_RELAY);
  const rail = quillon20.rail.volts;
  const { airCelsius } = quillon20.amp;
  const lowestVolts = rail * (1 - RAIL_HIGH);
  const highestVolts = rail * (1 + RAIL_HIGH);
  const feeding = { lowestVolts, highestVolts, airCelsius };
  const direct = coilOnRail({ coil, ...feeding, dropVolts: DROP.transistor });
  const darlington = coilOnRail({ coil, ...feeding, dropVolts: DROP.darlington });
  const quizCoil = coilOnRail({ coil, ...feeding, airCelsius: QUIZ_AIR });
  const room = rail * coil.mustOperateRatio;
  const hotRatio = copperRatio({ fromCelsius: COIL_REFERENCE_CELSIUS, toCelsius: direct.coilCelsius });

  // Two coils in series: the one at the low end of its tolerance gets the smaller share.
  const lowShare = (1 - coil.tolerance) / 2;
  const seriesLeast = DOUBLE_RAIL * (1 - RAIL_HIGH) * lowShare;
  const resistorOhms = (DOUBLE_RAIL - rail) / ((2 * rail) / coil.ohms);
  const dropped = droppedCoils({ coil, airCelsius, lowestVolts: DOUBLE_RAIL * (1 - RAIL_HIGH), highestVolts: DOUBLE_RAIL * (1 + RAIL_HIGH), nominalVolts: DOUBLE_RAIL, coils: 2, resistorOhms });

  const letsGo = (suppression: Suppression) => releaseSpread({ coil, lowestVolts, highestVolts, suppression });
  const diode = letsGo({ kind: 'diode' });
  const zener = letsGo({ kind: 'diode-zener', volts: rail });

  const highVolts = given(fennel100.amp.highTensionVolts, 'the high voltage of the Fennel 100');
  const faulty = (reference: RailReference, relay: RelayCoil = signal): GroundingJob => ({
    hertz: fennel100.mains.hertz,
    mainsVolts: fennel100.mains.nominalVolts,
    supply: CONVERTER,
    loadOhms: relay.ohms,
    connections: {
      ...UNCONNECTED,
      ampEarth: 'verified',
      rail: reference,
      highTensionVolts: highVolts,
      insulation: { fromMains: { kind: 'reinforced', workingVolts: 1000 }, fromHighTension: { kind: 'reinforced', workingVolts: 1000 } },
      relays: [{ name: 'the standby relay', work: { at: 'high-tension' }, insulation: { kind: 'test-voltage-only', testVolts: relay.contacts.coilToContactVolts } }],
      jacks: [{ name: 'Switcher', mounting: 'insulated', tip: { kind: 'coil', ohms: relay.ohms }, sleeve: { kind: 'rail-negative' }, touchable: true, gear: { kind: 'none' } }],
    },
  });
  const breakdownOf = (job: GroundingJob) => given(analyseGrounding(job).singleFaults.find(({ kind }) => kind === 'coil-to-contact'), 'a breakdown at the relay');
  const floating = breakdownOf(faulty({ kind: 'floating' }));
  const bonded = breakdownOf(faulty(MINUS));
  const most = (contacts: typeof floating.contacts): number => Math.max(...contacts.map(({ dcVolts }) => Math.abs(dcVolts)));

  const figures = {
    rail: figure(rail, 'V'),
    railLow: figure(lowestVolts, 'V'),
    railHigh: figure(highestVolts, 'V'),
    coilOhms: figure(coil.ohms, 'Ω'),
    coilTolerance: figure(coil.tolerance, '%'),
    mustOperate: figure(coil.mustOperateRatio, '%'),
    roomPullIn: figure(room, 'V'),
    air: figure(airCelsius, '°C'),
    coilCelsius: solved(direct.coilCelsius, '°C', 2),
    coilWatts: solved(direct.coilWatts, 'W', 2),
    hotRatio: solved(hotRatio, '', 4),
    hotPullIn: solved(direct.operateVolts, 'V', 4),
    transistorDrop: figure(DROP.transistor, 'V'),
    darlingtonDrop: figure(DROP.darlington, 'V'),
    lowestAtCoil: solved(direct.lowestAtCoil, 'V', 4),
    spare: solved(direct.marginVolts, 'V', 2),
    darlingtonShort: solved(-darlington.marginVolts, 'V', 2),
    darlingtonAtCoil: solved(darlington.lowestAtCoil, 'V', 4),
    coilLimit: solved(direct.limitVolts, 'V'),
    doubleRail: figure(DOUBLE_RAIL, 'V'),
    seriesLeast: solved(seriesLeast, 'V'),
    seriesShort: solved(direct.operateVolts - seriesLeast, 'V', 2),
    resistor: figure(resistorOhms, 'Ω'),
    resistorWatts: solved(dropped.resistorWatts, 'W', 2),
    aloneVolts: solved(dropped.alone.highestAtCoil, 'V'),
    diodeWorst: solved(diode.longestSeconds, 's', 2),
    diodeUsual: solved(diode.usualSeconds, 's', 2),
    zenerVolts: figure(rail, 'V'),
    zenerWorst: solved(zener.longestSeconds, 's', 2),
    zenerUsual: solved(zener.usualSeconds, 's', 2),
    zenerSwitch: solved(zener.switchVolts, 'V', 2),
    coilJoules: solved(diode.joules, 'J', 2),
    minVolts: figure(coil.contacts.minLoad.volts, 'V'),
    minAmps: figure(coil.contacts.minLoad.amps, 'A'),
    signalDc: figure(signal.contacts.maxVoltsDc, 'V'),
    signalTest: figure(signal.contacts.coilToContactVolts, 'V'),
    signalOpen: figure(signal.contacts.openContactVolts, 'V'),
    signalMinVolts: figure(signal.contacts.minLoad.volts, 'V'),
    signalMinAmps: figure(signal.contacts.minLoad.amps, 'A'),
    powerDc: figure(coil.contacts.maxVoltsDc, 'V'),
    highVolts: figure(highVolts, 'V'),
    anodeVolts: figure(ANODE_SWING * highVolts, 'V'),
        faultOhms: figure(BREAKDOWN_OHMS, 'Ω'),
    floatingVolts: solved(most(floating.contacts), 'V'),
    floatingHand: solved(given(floating.touch.hand, 'the current of a hand').dcAmps, 'A', 2),
    bondedVolts: solved(most(bonded.contacts), 'V', 2),
    bondedAmps: solved(bonded.faultAmps, 'A', 2),
    hand: figure(HAND_DC_OHMS, 'Ω'),
    touch: figure(TOUCH_LIMIT_VOLTS, 'V'),
    quizAir: figure(QUIZ_AIR, '°C'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return {
    ...worked({
      figures,
      names: { coils: inWords(2) },
      asked: ['rail', 'railHigh', 'quizAir', 'highVolts', 'anodeVolts', 'floatingVolts', 'floatingHand', 'bondedAmps', 'bondedVolts', 'signalTest', 'signalDc', 'diodeWorst', 'zenerWorst', 'coilOhms', 'darlingtonDrop', 'darlingtonShort', 'doubleRail', 'seriesLeast'],
      answers: { 'hotter-pull-in': quizCoil.operateVolts },
      opened: {
        kind: 'power-400',
        ratedVolts: coil.ratedVolts,
        lowestVolts,
        highestVolts,
        dropVolts: DROP.transistor,
        airCelsius,
        highVolts: given(quillon20.amp.highTensionVolts, 'the high voltage of the Quillon 20'),
      },
      steps: [
        { ask: 'How hot is a coil that has been on all evening?', words: 'Air, and its own watts on the highest rail times the rise per watt of a relay this size (assumed). Warmer copper takes less, so the two settle together.', sum: `${text('air')} and ${text('coilWatts')}: ${text('coilCelsius')}` },
        { ask: 'What does that make of its pull-in?', words: 'The sheet’s guarantee at room temperature, times what the copper has gained. The relay wants the same amps, and they now cost more volts.', sum: `${text('roomPullIn')} × ${text('hotRatio')} = ${text('hotPullIn')}` },
        { ask: 'What does the coil get at the worst?', words: 'The lowest rail, less what the transistor drops.', sum: `${text('railLow')} − ${text('transistorDrop')} = ${text('lowestAtCoil')}` },
        { ask: 'What is to spare?', words: 'Little, and enough: both figures are worst ones.', sum: `${text('lowestAtCoil')} − ${text('hotPullIn')} = ${text('spare')}` },
        { ask: 'And with a Darlington array as the driver?', words: 'It clicks on the bench, cold, every time. On stage, hot, it need not.', sum: `${text('railLow')} − ${text('darlingtonDrop')} = ${text('darlingtonAtCoil')}: ${text('darlingtonShort')} short` },
      ],
    }),
    dropper: { what: 'coil', feed: 'dc', railVolts: DOUBLE_RAIL, railSpread: RAIL_HIGH, coilVolts: coil.ratedVolts, coilOhms: coil.ohms, coils: 2, airCelsius },
    fault: { anodeVolts: text('anodeVolts'), highVolts: text('highVolts'), jackVolts: text('floatingVolts') },
  };
}
