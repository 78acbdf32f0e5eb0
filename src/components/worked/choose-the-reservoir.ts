import {
  capacitanceSpread, capacitorLife, diodePart, electrolytic, esrLimitOhms, esrOhms, nextRatedVolts, reservoirInrushA2s, rippleLimitAmps, solveNetwork, storedJoules, typicalRippleAmps,
  waveformMean, RATED_VOLTS, SURGE_FACTOR, REVERSE_MAX_VOLTS, type DiodeModel,
} from '../../compute/index.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import { chainReservoir } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import type { MainsState, ReservoirState } from '../../compute/supplies/corners.ts';
import { given, type Shop } from '../shop.ts';
import { cornerOf, quillonChain, rectifyAt, settledParts, supplyCase } from './small-transformer.ts';
import { figure, solved, worked, type Figure, type Worked } from './worked.ts';

/** What lies in the shop's drawer, farads. */
const DRAWER = [100e-6, 150e-6, 220e-6, 470e-6, 1000e-6, 4700e-6] as const;
/** The one that the quiz asks about. */
const OTHER_FARADS = 330e-6;
/** Air in the open part of the chassis is the plan's; beside an output valve it is commonly this much. */
const HOT_CELSIUS = 75;

interface Reversed {
  readonly amps: number;
  readonly watts: number;
}

/** What a winding drives through a bridge into a reservoir fitted backwards, taken as the diode that its film then is. */
function reversed(winding: { readonly openCircuitVolts: number; readonly ohms: number }, hertz: number, diode: DiodeModel): Reversed {
  const { saturationAmps, emission, ohms } = diode;
  const arm = (name: string, between: [string, string]) => ({ kind: 'diode', name, between, saturationAmps, emission, ohms }) as const;
  const solution = solveNetwork({
    hertz,
    elements: [
      { kind: 'sine', name: 'winding', between: ['a', 'b'], peakVolts: winding.openCircuitVolts * Math.SQRT2, ohms: winding.ohms },
      arm('d1', ['a', 'plus']), arm('d2', ['b', 'plus']), arm('d3', ['ground', 'a']), arm('d4', ['ground', 'b']),
      { kind: 'dc', name: 'reservoir', between: ['plus', 'ground'], volts: REVERSE_MAX_VOLTS },
    ],
  });
  const amps = waveformMean(given(solution.amps['reservoir'], 'the reservoir’s current'), solution.seconds);
  return { amps, watts: amps * REVERSE_MAX_VOLTS };
}

/** "0.3 V", or "0.3 V short" of what the regulator needs. */
const leftOver = ({ value, text }: Figure): string => (value < 0 ? `${solved(-value, 'V').text} short` : text);

/** Everything that lesson 8 says of the reservoir on the Quillon 20's small transformer. */
export function work(shop: Shop): Worked<string> {
  const job = shop.quillon20;
  const chain = quillonChain(job);
  const { reservoir } = settledParts(job);
  const { airCelsius } = chain.cooling;
  const rippleHertz = 2 * job.mains.hertz;
  const withFarads = (farads: number): ChainInput => ({
    ...chain,
    reservoir: chainReservoir({ farads, ratedVolts: reservoir.ratedVolts, topology: chain.topology, hertz: job.mains.hertz, airCelsius }),
  });
  const at = (farads: number, mains: MainsState, state: ReservoirState): SolvedCorner => {
    const input = withFarads(farads);
    const corner = solveCorner(input, cornerOf(input, { mains, load: 'everything', reservoir: state }));
    if (!corner.solved) throw new Error(corner.message);
    return corner;
  };
  const headroom = (farads: number, state: ReservoirState): number => given(at(farads, 'low', state).headroomVolts, 'a regulator behind the reservoir');

  const low = at(reservoir.farads, 'low', 'smallest-oldest');
  // The regulator's own current comes out of the reservoir too.
  const drawnAmps = low.rectifier.load.meanAmps;
  const spread = capacitanceSpread({ farads: reservoir.farads });
  const unloaded = rectifyAt({ chain, corner: cornerOf(chain, { mains: 'high', load: 'off', reservoir: 'largest' }), amps: 0 }).rail.maxVolts;
  const rated = given(nextRatedVolts({ volts: unloaded }), 'a standard rating');
  const [tooLow = Number.NaN, tight = Number.NaN] = RATED_VOLTS.filter((volts) => volts < rated).slice(-2);

  const general = electrolytic('general-105');
  const rippleAt = (farads: number): number => at(farads, 'high', 'largest').rectifier.reservoir.rmsAmps;
  const ripple = rippleAt(reservoir.farads);
  const ratedRipple = typicalRippleAmps({ row: general, farads: reservoir.farads }).lowest;
  const lifeOf = (id: string, celsius: number): Figure => {
    const row = electrolytic(id);
    const { creditedHours } = capacitorLife({ ratedHours: row.lifeHours, ratedCelsius: row.maxCelsius, celsius, rippleRatio: ripple / ratedRipple });
    return figure(creditedHours * 3600, 's', 2);
  };
  const gulp = (farads: number): number => reservoirInrushA2s({ farads, peakVolts: unloaded, ohms: chain.winding.ohms });
  const small = reversed(chain.winding, job.mains.hertz, diodePart(given(job.parts.diode, 'a diode')).typical);
  const spare = given(shop.tarn45.amp.spare, 'a spare winding');
  const large = reversed(spare, shop.tarn45.mains.hertz, diodePart(given(shop.tarn45.parts.diode, 'a diode')).typical);

  const rows = Object.fromEntries(
    DRAWER.flatMap((farads): [string, Figure][] => {
      const name = String(Math.round(farads * 1e6));
      return [
        [`size${name}`, figure(farads, 'F')],
        [`ripple${name}`, solved(at(farads, 'low', 'marked').rectifier.rail.rippleVolts, 'V', 2)],
        [`new${name}`, solved(headroom(farads, 'marked'), 'V', 2)],
        [`old${name}`, solved(headroom(farads, 'smallest-oldest'), 'V', 2)],
      ];
    }),
  );

  const figures = {
    ...rows,
    marked: figure(reservoir.farads, 'F'),
    oldest: figure(spread.min, 'F'),
    largest: figure(spread.max, 'F'),
    tolerance: figure(0.2, '%'),
    dc: figure(chain.load.everythingAmps, 'A'),
    drawn: solved(drawnAmps, 'A'),
    rail: figure(job.rail.volts, 'V'),
    lowMains: figure(job.mains.lowVolts, 'V'),
    highMains: figure(job.mains.highVolts, 'V'),
    needed: solved(low.neededVolts, 'V'),
    valley: solved(low.rectifier.rail.minVolts, 'V'),
    left: solved(given(low.headroomVolts, 'headroom'), 'V'),
    gain: solved(headroom(4700e-6, 'smallest-oldest') - headroom(1000e-6, 'smallest-oldest'), 'V', 2),
    ruleRipple: solved(drawnAmps / (rippleHertz * spread.min), 'V', 2),
    solvedRipple: solved(low.rectifier.rail.rippleVolts, 'V', 2),
    unloaded: solved(unloaded, 'V'),
    fifth: solved(unloaded / 0.8, 'V'),
    rated: figure(rated, 'V'),
    tight: figure(tight, 'V'),
    tooLow: figure(tooLow, 'V'),
    tightShare: solved(unloaded / tight, '%', 2),
    surge: solved(tooLow * SURGE_FACTOR, 'V'),
    rippleAmps: solved(ripple, 'A'),
    rippleSmall: solved(rippleAt(100e-6), 'A'),
    rippleLarge: solved(rippleAt(4700e-6), 'A'),
    ratedRipple: figure(ratedRipple, 'A'),
    ratedHere: figure(rippleLimitAmps({ row: general, ratedAmps: ratedRipple, rippleHertz, celsius: airCelsius }), 'A'),
    air: figure(airCelsius, '°C'),
    hotAir: figure(HOT_CELSIUS, '°C'),
    life85: lifeOf('general-85', airCelsius),
    life85Hot: lifeOf('general-85', HOT_CELSIUS),
    life105: lifeOf('general-105', airCelsius),
    life105Hot: lifeOf('general-105', HOT_CELSIUS),
    lifeLong: lifeOf('long-life-105', airCelsius),
    lifeLongHot: lifeOf('long-life-105', HOT_CELSIUS),
    esrNew: figure(esrLimitOhms(reservoir), 'Ω', 2),
    esrOld: figure(esrOhms(reservoir).max, 'Ω', 2),
    windingSmall: solved(at(220e-6, 'high', 'largest').windingRmsAmps, 'A'),
    windingLarge: solved(at(4700e-6, 'high', 'largest').windingRmsAmps, 'A'),
    gulp: solved(gulp(reservoir.farads), 'A²s', 2),
    gulpLarge: solved(gulp(4700e-6), 'A²s', 2),
    joules: solved(storedJoules({ farads: 4700e-6, volts: unloaded }), 'J', 2),
    reverse: figure(REVERSE_MAX_VOLTS, 'V'),
    reversedAmps: solved(small.amps, 'A', 2),
    reversedWatts: solved(small.watts, 'W', 2),
    reversedTarnAmps: solved(large.amps, 'A', 2),
    reversedTarnWatts: solved(large.watts, 'W', 2),
    otherFarads: figure(OTHER_FARADS, 'F'),
    thousand: figure(1000e-6, 'F'),
  };
  const text = (name: keyof typeof figures): string => figures[name]?.text ?? '';
  const left = Object.fromEntries(DRAWER.flatMap((farads) => ['new', 'old'].map((age): [string, string] => {
    const name = `${age}${Math.round(farads * 1e6)}`;
    return [`${name}Left`, leftOver(given((figures as Record<string, Figure>)[name], name))];
  })));

  return worked({
    figures,
    names: { ...left, regulator: settledParts(job).regulator },
    asked: ['otherFarads', 'thousand', 'unloaded', 'rated', 'tight', 'tooLow', 'surge', 'tightShare', 'marked', 'size4700', 'rippleAmps', 'rippleLarge', 'reversedWatts', 'reversedTarnAmps', 'size150', 'reverse', 'gain'],
    answers: { 'other-size': headroom(OTHER_FARADS, 'smallest-oldest'), 'end-of-life': capacitanceSpread({ farads: 1000e-6 }).min },
    opened: { ...supplyCase(job, drawnAmps), floorVolts: low.neededVolts },
    steps: [
      {
        ask: 'How small can the marked capacitor become?',
        words: 'A fifth low when new, and a fifth of that gone when its sheet calls it worn out.',
        sum: `${text('marked')} × 0.8 × 0.8 = ${text('oldest')}`,
      },
      {
        ask: 'Where is the valley then, on weak mains?',
        words: 'Solved at low mains with a flat top, everything on. The rule would have said that the ripple alone is more than this.',
        sum: `ripple ${text('solvedRipple')} (rule: ${text('ruleRipple')}), valley ${text('valley')}`,
      },
      { ask: 'Does the regulator hold?', words: 'Valley less what it needs.', sum: `${text('valley')} − ${text('needed')} = ${text('left')}` },
      {
        ask: 'Which voltage rating?',
        words: 'Load unplugged, mains at its highest, and a fifth in hand. The next standard rating above that.',
        sum: `${text('unloaded')} / 0.8 = ${text('fifth')}, so ${text('rated')}`,
      },
      {
        ask: 'Does it bear its ripple current?',
        words: 'From the same solution, on strong mains. The rating is the lowest that makers print for the size, brought to this ripple frequency and this air.',
        sum: `${text('rippleAmps')} of ${text('ratedHere')}`,
        left: true,
      },
      {
        ask: 'How long does it last?',
        words: 'Its rated hours, doubled for every ten kelvin between its limit and the core.',
        sum: `in ${text('air')}: ${text('life105')} of power on; in ${text('hotAir')}: ${text('life105Hot')}`,
        left: true,
      },
    ],
  });
}
