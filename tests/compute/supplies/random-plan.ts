import type { Approach } from '../../../src/compute/plan.ts';

/** A small generator of evenly spread numbers below one, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Draws values of a plan: sane ones near what amps have, insane ones anywhere a number can be. */
interface Draw {
  readonly real: (sane: readonly [number, number], wild: readonly [number, number]) => number;
  readonly one: <T>(of: readonly T[]) => T;
  readonly maybe: <T>(value: () => T) => T | undefined;
  readonly chance: (share: number) => boolean;
}

function drawFrom(next: () => number, wildness: number): Draw {
  const chance = (share: number): boolean => next() < share;
  // By ratio between the ends, so that small values come as often as large ones.
  const between = ([low, high]: readonly [number, number]): number => (low > 0 ? low * (high / low) ** next() : low + next() * (high - low));
  return {
    chance,
    real: (sane, wild) => between(chance(wildness) ? wild : sane),
    one: (of) => of[Math.floor(next() * of.length)] as (typeof of)[number],
    maybe: (value) => (chance(0.5) ? value() : undefined),
  };
}

const tidy = (value: Record<string, unknown>): Record<string, unknown> => Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined));

const insulation = (draw: Draw): unknown =>
  draw.one<unknown>([{ kind: 'unknown' }, { kind: 'test-voltage-only', testVolts: draw.real([500, 4000], [1, 20_000]) }, { kind: 'basic', workingVolts: draw.real([100, 600], [1, 20_000]) }, { kind: 'reinforced', workingVolts: draw.real([100, 600], [1, 20_000]) }]);

const resistors = (draw: Draw): unknown => [0, 1].map(() => ({ ohms: draw.real([47, 220], [0.01, 1e8]), ratedWatts: draw.real([0.25, 1], [0.01, 1000]) }));

const reference = (draw: Draw): unknown =>
  draw.one<unknown>([
    { kind: 'none' },
    { kind: 'centre-tap' },
    { kind: 'artificial-centre', resistors: resistors(draw) },
    { kind: 'one-leg', leg: draw.one(['first', 'second']) },
    { kind: 'elevated', volts: draw.real([30, 80], [1, 500]), centre: { kind: 'centre-tap' }, lowerOhms: draw.real([10e3, 100e3], [0.01, 1e8]) },
  ]);

const winding = (draw: Draw, volts: readonly [number, number]): Record<string, unknown> =>
  tidy({
    openCircuitVolts: draw.real(volts, [0.5, 500]),
    ohms: draw.real([0.03, 3], [0.001, 1000]),
    ohmsMeasuredCold: draw.maybe(() => draw.chance(0.5)),
    ratedAmps: draw.maybe(() => draw.real([0.3, 8], [0.001, 100])),
    basis: draw.one(['measured', 'rated', 'typical', 'assumed']),
    reference: reference(draw),
    insulation: { fromMains: insulation(draw), fromHighTension: insulation(draw) },
  });

const load = (draw: Draw): unknown => {
  const counted = { name: 'load', count: Math.ceil(draw.real([1, 6], [1, 100])) };
  return draw.one<unknown>([
    { ...counted, kind: 'relay', volts: draw.real([5, 24], [0.5, 200]), ohms: draw.real([60, 1500], [1, 1e5]), dropperOhms: draw.chance(0.2) ? draw.real([10, 300], [0, 1e5]) : 0 },
    { ...counted, kind: 'indicator', amps: draw.real([1e-3, 0.02], [1e-5, 1]) },
    { ...counted, kind: 'heater', volts: draw.one([6.3, 12.6, draw.real([5, 30], [0.5, 200])]), amps: draw.real([0.15, 1], [0.01, 10]) },
    { ...counted, kind: 'fixed-amps', amps: draw.real([0.01, 0.5], [0, 100]) },
    { ...counted, kind: 'fixed-watts', watts: draw.real([0.1, 5], [0, 1000]) },
  ]);
};

const transformer = (draw: Draw): unknown => ({
  secondaryVolts: draw.real([6, 24], [1, 120]),
  secondaries: draw.one(['one', 'two-in-series', 'two-in-parallel', 'two-as-centre-tap']),
  voltAmps: draw.real([3, 50], [0.3, 2000]),
  regulationRatio: draw.real([0.1, 0.5], [0.01, 1.5]),
  shortCircuitMark: draw.one(['inherently-proof', 'conditionally-proof', 'not-proof', 'fail-safe', 'unknown']),
  basis: 'rated',
});

const parts = (draw: Draw): Record<string, unknown> =>
  tidy({
    topology: draw.chance(0.3) ? draw.one(['bridge', 'centre-tap', 'half-wave', 'doubler']) : undefined,
    diode: draw.chance(0.2) ? draw.one(['1n400x', '1n540x', 'bridge-4a', '1n5817-19', '1n5820-22', 'no-such-diode']) : undefined,
    reservoir: draw.chance(0.4) ? { farads: draw.real([470e-6, 10e-3], [1e-6, 1]), ratedVolts: draw.real([16, 63], [1, 500]) } : undefined,
    regulator: draw.chance(0.1) ? draw.one(['7805', '7812', '317', 'ldo-12', 'buck-150k', 'no-such-regulator']) : undefined,
    heatsink: draw.chance(0.3) ? { kind: draw.one(['separate', 'chassis']), kelvinPerWatt: draw.real([3, 40], [0.1, 200]) } : undefined,
    transformer: draw.chance(0.4) ? transformer(draw) : undefined,
    converter: draw.chance(0.3) ? { id: draw.one(['module-5w-12v', 'module-10w-5v', 'module-12w-24v', 'adaptor-12w-12v', 'no-such-module']) } : undefined,
    railFarads: draw.maybe(() => draw.real([10e-6, 1e-3], [0, 1])),
  });

/** A plan as JSON, of which about `wildness` of the values are insane though each within what a plan may hold. */
export function randomPlan(seed: number, wildness: number): { readonly plan: unknown; readonly approach: Approach } {
  const next = randomFrom(seed);
  const draw = drawFrom(next, wildness);
  const nominalVolts = draw.one([100, 120, 230, 240, draw.real([90, 250], [50, 500])]);
  const metres = (): number => draw.real([0.02, 0.2], [0.001, 2]);
  const plan = {
    version: 1,
    name: `random ${seed}`,
    mains: tidy({ nominalVolts, lowVolts: nominalVolts * draw.real([0.85, 1], [0.5, 1]), highVolts: nominalVolts * draw.real([1, 1.12], [1, 1.5]), hertz: draw.one([50, 60]), alsoHertz: draw.chance(0.1) ? 50 : undefined }),
    amp: tidy({
      protectiveEarth: draw.one(['verified', 'absent', 'not-checked']),
      highTensionVolts: draw.chance(0.9) ? draw.real([250, 500], [20, 2000]) : undefined,
      transformer: tidy({ ratedVoltAmps: draw.maybe(() => draw.real([60, 400], [0.1, 5000])), presentVoltAmps: draw.maybe(() => draw.real([50, 300], [0.1, 5000])) }),
      heater: draw.chance(0.8) ? { ...winding(draw, [6.3, 7.5]), heaters: draw.chance(0.8) ? [{ name: 'valves', volts: draw.one([6.3, 12.6]), amps: draw.real([0.3, 1.5], [0.01, 20]), count: Math.ceil(draw.real([1, 5], [1, 40])) }] : [] } : undefined,
      spare: draw.chance(0.7) ? { ...winding(draw, [5, 25]), kind: draw.one(['low-voltage', 'low-voltage', 'heater', 'rectifier-valve']), centreTapped: draw.chance(0.4) } : undefined,
      room: { lengthMetres: metres(), widthMetres: metres(), heightMetres: metres() },
      airCelsius: draw.real([40, 75], [1, 120]),
    }),
    loads: Array.from({ length: Math.floor(next() * 4) }, () => load(draw)),
    rail: tidy({ volts: draw.one([5, 6.3, 12, 12.6, 24, draw.real([3, 30], [1, 60])]), regulation: draw.one(['none', 'fixed', 'low-dropout', 'adjustable', 'buck']), toleranceRatio: draw.maybe(() => draw.real([0.05, 0.2], [0.001, 0.5])) }),
    approach: 'undecided',
    parts: parts(draw),
    protections: tidy({ secondaryFuse: draw.chance(0.2) ? { amps: draw.real([0.1, 5], [0.03, 10]), standard: draw.one(['iec-sheet-5', 'iec-sheet-3', 'ul-248-14', 'no-such-standard']) } : undefined }),
    grounds: {
      rail: draw.one<unknown>([{ kind: 'floating' }, { kind: 'bonded', pole: draw.one(['negative', 'positive']) }, { kind: 'through-resistance', pole: 'negative', ohms: draw.real([10, 1e4], [0.01, 1e8]) }]),
      jacks: draw.chance(0.4) ? [{ name: 'jack', mounting: draw.one(['insulated', 'chassis']), tip: { kind: 'coil', ohms: 400 }, sleeve: { kind: draw.one(['rail-negative', 'chassis', 'isolated']) }, touchable: draw.chance(0.5), gear: { kind: draw.one(['none', 'isolated-contact', 'optocoupler']) } }] : [],
      touchableControls: draw.chance(0.3),
      relays: [],
    },
  };
  return { plan, approach: draw.one(['spare-winding', 'converter', 'separate-transformer', 'heater-winding']) };
}
