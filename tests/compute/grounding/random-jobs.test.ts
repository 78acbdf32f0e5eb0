import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError, SolveError } from '../../../src/compute/errors.ts';
import { analyseGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundConnections, Insulation, Jack, JackContact, OutsideGear, RailReference, SupplyPoint, WindingReference } from '../../../src/compute/grounding/connections.ts';
import type { GroundingAnalysis } from '../../../src/compute/grounding/grounding-result.ts';
import type { GroundingJob, GroundingSupply } from '../../../src/compute/grounding/job.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import { NEGATIVE, SCHOTTKY, SILICON, jobOf } from './jobs.ts';

/** Spread evenly over decades, as parts are. */
const decades = (low: number, high: number) => fc.double({ min: Math.log10(low), max: Math.log10(high), noNaN: true }).map((power) => 10 ** power);
const pole = fc.constantFrom('negative' as const, 'positive' as const);

const resistors = fc.record({ ohms: decades(1, 1e4), ratedWatts: decades(0.1, 10) });
const centre = fc.oneof(fc.constant({ kind: 'centre-tap' as const }), fc.record({ kind: fc.constant('artificial-centre' as const), resistors: fc.tuple(resistors, resistors) }));
const winding: fc.Arbitrary<WindingReference> = fc.oneof(
  fc.constant({ kind: 'none' as const }),
  centre,
  fc.record({ kind: fc.constant('one-leg' as const), leg: fc.constantFrom('first' as const, 'second' as const) }),
  fc.record(
    { kind: fc.constant('elevated' as const), volts: decades(5, 120), centre, lowerOhms: decades(1e3, 1e6), bypassFarads: decades(1e-7, 1e-4) },
    { requiredKeys: ['kind', 'volts', 'centre', 'lowerOhms'] },
  ),
);
const rail: fc.Arbitrary<RailReference> = fc.oneof(
  fc.constant({ kind: 'floating' as const }),
  fc.record({ kind: fc.constant('bonded' as const), pole }),
  fc.record({ kind: fc.constant('through-resistance' as const), pole, ohms: decades(0.01, 1e6) }),
);
const contact: fc.Arbitrary<JackContact> = fc.oneof(
  fc.constantFrom<JackContact>({ kind: 'rail-positive' }, { kind: 'rail-negative' }, { kind: 'chassis' }, { kind: 'isolated' }),
  fc.record({ kind: fc.constantFrom('coil' as const, 'logic' as const, 'led' as const), ohms: decades(10, 1e5) }),
);
const gear: fc.Arbitrary<OutsideGear> = fc.oneof(
  fc.constantFrom<OutsideGear>({ kind: 'none' }, { kind: 'isolated-contact' }, { kind: 'optocoupler' }),
  fc.record(
    { kind: fc.constant('sleeve-to-earth' as const), cableOhms: decades(1e-3, 10), earthOhms: decades(1e-3, 100), earthDifferenceVolts: fc.double({ min: 0, max: 5, noNaN: true }) },
    { requiredKeys: ['kind', 'cableOhms', 'earthOhms'] },
  ),
);
const jack: fc.Arbitrary<Jack> = fc.record({
  name: fc.constant('Footswitch'),
  mounting: fc.constantFrom('insulated' as const, 'chassis' as const),
  tip: contact,
  sleeve: contact,
  touchable: fc.boolean(),
  gear,
  pressed: fc.boolean(),
});
const insulation: fc.Arbitrary<Insulation> = fc.oneof(
  fc.constant({ kind: 'unknown' as const }),
  fc.record({ kind: fc.constant('test-voltage-only' as const), testVolts: decades(100, 5000) }),
  fc.record({ kind: fc.constantFrom('basic' as const, 'reinforced' as const), workingVolts: decades(50, 1500) }),
);
const connections: fc.Arbitrary<GroundConnections> = fc.record({
  winding,
  rail,
  // Those that every supply has; those of a winding have tests of their own.
  furtherGrounds: fc.oneof(
    { weight: 2, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.subarray<SupplyPoint>(['negative', 'positive']) },
  ),
  jacks: fc.array(jack, { maxLength: 3 }),
  touchableControls: fc.boolean(),
  ampEarth: fc.constantFrom('verified' as const, 'absent' as const, 'not-checked' as const),
  insulation: fc.record({ fromMains: insulation, fromHighTension: insulation }),
  relays: fc.array(fc.record({ name: fc.constant('K1'), work: fc.constantFrom({ at: 'high-tension' as const }, { at: 'output-anode' as const }), insulation }), { maxLength: 1 }),
  highTensionVolts: decades(130, 600),
  converterCoupling: fc.oneof(
    fc.record({ kind: fc.constant('y-capacitor' as const), farads: decades(1e-10, 1e-8), from: fc.constantFrom('line' as const, 'midpoint' as const) }),
    fc.constant({ kind: 'unknown' as const }),
  ),
  bondOhms: decades(1e-5, 0.1),
});
const supply: fc.Arbitrary<GroundingSupply> = fc.oneof(
  fc.record(
    {
      kind: fc.constant('winding' as const),
      windingKind: fc.constantFrom('low-voltage' as const, 'heater' as const),
      topology: fc.constantFrom('bridge' as const, 'centre-tap' as const, 'half-wave' as const, 'doubler' as const),
      openCircuitVolts: decades(4, 40),
      ohms: decades(0.03, 20),
      hasCentreTap: fc.boolean(),
      ratedAmps: decades(0.1, 10),
      heaterOhms: decades(1, 50),
      diode: fc.constantFrom(SILICON, SCHOTTKY),
      reservoir: fc.record({ farads: decades(1e-4, 2e-2), ohms: decades(0.01, 0.5) }),
    },
    { requiredKeys: ['kind', 'windingKind', 'topology', 'openCircuitVolts', 'ohms', 'hasCentreTap', 'diode', 'reservoir'] },
  ),
  fc.record({ kind: fc.constant('converter' as const), outputVolts: fc.constantFrom(5, 12, 24), limitAmps: decades(0.2, 3) }),
);
const job: fc.Arbitrary<GroundingJob> = fc.record({
  hertz: fc.constantFrom(50, 60),
  mainsVolts: fc.constantFrom(100, 120, 230, 240),
  supply,
  loadOhms: decades(5, 1e5),
  connections,
});

const numbersIn = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
};

const checkSolution = (analysis: GroundingAnalysis): void => {
  expect(numbersIn(analysis).every((value) => Number.isFinite(value))).toBe(true);
  expect(analysis.findings.length).toBeGreaterThan(2);
  // One point of the circuit grounded, whatever the wires: nothing may circulate.
  if (analysis.points.length < 2) expect(analysis.branches.some((branch) => branch.isFault)).toBe(false);
  else expect(analysis.options).toHaveLength(analysis.points.length);
  // With any single ground the supply's own currents are the same: each option is solved for it.
  for (const option of analysis.options) {
    const largest = Math.max(...analysis.branches.map((branch) => branch.rmsAmps));
    expect(option.remainingAmps).toBeLessThan(1e-3 + 1e-3 * largest);
  }
};

describe('any connections whatever', () => {
  it('give findings or a typed error, never a number that is none', () => {
    let solved = 0;
    let refused = 0;
    fc.assert(
      fc.property(job, (given) => {
        let analysis: GroundingAnalysis;
        try {
          analysis = analyseGrounding(given);
        } catch (error) {
          expect(error instanceof InputError || error instanceof SolveError).toBe(true);
          refused += 1;
          return;
        }
        solved += 1;
        checkSolution(analysis);
      }),
      { seed: 20_250_401, numRuns: 160 },
    );
    expect(solved).toBeGreaterThan(refused);
  }, 120_000);
});

describe('with one ground', () => {
  const topologies = ['bridge', 'centre-tap', 'half-wave', 'doubler'] as const;
  it.each(topologies)('the %s gives what the rectifier solver gives, by another method', (topology) => {
    const loadOhms = 30;
    const analysis = analyseGrounding(jobOf({ supply: { topology, openCircuitVolts: 9, ohms: 0.3 }, connections: { rail: NEGATIVE, bondOhms: 1e-5 }, job: { loadOhms } }));
    const halved = topology === 'centre-tap' ? 2 : 1;
    const reference = solveRectifier({
      topology,
      winding: { openCircuitVolts: 9 / halved, ohms: 0.3 / halved },
      hertz: 60,
      diode: SCHOTTKY,
      reservoir: { farads: 4700e-6, ohms: 0.05 },
      load: { ohms: loadOhms },
    });
    const half = analysis.branches.find((branch) => branch.id === 'half-1');
    expect(Math.abs(analysis.rail.meanVolts / reference.rail.meanVolts - 1)).toBeLessThan(0.003);
    expect(Math.abs((half?.rmsAmps ?? 0) / reference.winding.rmsAmps - 1)).toBeLessThan(0.02);
    expect(Math.abs((half?.peakAmps ?? 0) / reference.winding.peakAmps - 1)).toBeLessThan(0.02);
  });
});
