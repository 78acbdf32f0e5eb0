import { describe, expect, it } from 'vitest';
import { InputError, SolveError } from '../../../src/compute/errors.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import { benchCircuit } from '../../../src/compute/tolerance/bench-circuit.ts';
import { benchJob } from '../../../src/compute/tolerance/bench-job.ts';
import type { BenchJob } from '../../../src/compute/tolerance/bench-job.ts';
import { nominalDraw, partSpreads } from '../../../src/compute/tolerance/part-draw.ts';
import { readBench } from '../../../src/compute/tolerance/read-bench.ts';
import { judgeReading, runTolerance, toleranceRun } from '../../../src/compute/tolerance/spread-of-readings.ts';
import type { ReadingSpread, ToleranceRun } from '../../../src/compute/tolerance/spread-of-readings.ts';
import type { Readings, TestPointId } from '../../../src/compute/tolerance/test-points.ts';
import type { ChainInput } from '../../../src/compute/supplies/chain-types.ts';
import { JOB, chainOf } from './jobs.ts';

const nominal = (job: BenchJob): Readings => readBench(benchCircuit(job, nominalDraw(partSpreads(job))));
const of = (run: ToleranceRun, id: TestPointId): ReadingSpread => {
  const found = run.readings.find(({ point }) => point.id === id);
  if (found === undefined) throw new Error(`no reading ${id}`);
  return found;
};
const withChain = (change: Partial<ChainInput>): BenchJob => ({ ...JOB, feed: { kind: 'winding', chain: { ...chainOf(JOB), ...change } } });
const CONVERTER_JOB: BenchJob = {
  ...JOB, feed: { kind: 'converter', outputVolts: 12, outputToleranceRatio: 0.02, limitAmps: 1.2, stage: { kind: 'none', designVolts: 12 } },
};

describe('readings of the plan as it is', () => {
  it('are those of the solved rectifier, seen through meters', () => {
    const read = nominal(JOB);
    const { winding, diode, reservoir } = chainOf(JOB);
    const solved = solveRectifier({
      topology: 'bridge', winding, hertz: 50, crestFactor: 1.4, diode, reservoir: { farads: reservoir.farads, ohms: reservoir.ohms / 2 }, load: { amps: 0.55 + 0.65 * 0.008 },
    });
    expect(read['reservoir-mean']).toBeCloseTo(solved.rail.meanVolts, 2);
    expect(read['reservoir-valley']).toBeCloseTo(solved.rail.minVolts, 2);
    expect((read['winding-amps'] ?? 0) / solved.winding.rmsAmps).toBeCloseTo(1, 2);
    expect(read.rail).toBeCloseTo(12, 3);
    expect(read['load-amps']).toBeCloseTo(0.55, 3);
    expect(read['ripple-frequency']).toBe(100);
    // The winding's terminals: less than its open-circuit volts by about what its ohms drop at the pulses.
    expect(read['winding-loaded']).toBeLessThan(read['winding-open'] ?? 0);
    expect(read['winding-loaded']).toBeGreaterThan((read['winding-open'] ?? 0) - 1.2 * (read['winding-amps'] ?? 0));
    // Flattened peaks: an averaging meter, scaled for a sine, shows more.
    expect(read['winding-loaded-averaging']).toBeGreaterThan(read['winding-loaded'] ?? Infinity);
  });

  it('warm the tab by the regulator’s heat over the way to the air', () => {
    const read = nominal(JOB);
    const watts = ((read['reservoir-mean'] ?? 0) - 12) * 0.55 + (read['reservoir-mean'] ?? 0) * 0.65 * 0.008;
    expect(read['regulator-celsius']).toBeCloseTo(40 + watts * 7.5, 1);
  });

  it('move with the mains of the day, but not the rail', () => {
    const low = nominal({ ...JOB, mains: { ...JOB.mains, volts: 215 } });
    const high = nominal({ ...JOB, mains: { ...JOB.mains, volts: 245 } });
    for (const id of ['mains', 'winding-open', 'winding-loaded', 'reservoir-mean', 'reservoir-valley', 'regulator-celsius'] as const) {
      expect(high[id] ?? 0).toBeGreaterThan(low[id] ?? Infinity);
    }
    expect(high.rail).toBeCloseTo(low.rail ?? 0, 3);
    expect((high['winding-open'] ?? 0) / (low['winding-open'] ?? 1)).toBeCloseTo(245 / 215, 9);
  });

  it('are given for every approach: centre tap, doubler, heaters across the winding, no regulator, a converter', () => {
    const jobs: BenchJob[] = [
      withChain({ topology: 'centre-tap' }),
      withChain({ topology: 'doubler', winding: { openCircuitVolts: 8, ohms: 0.15, basis: 'rated' } }),
      withChain({ winding: { ...chainOf(JOB).winding, acrossOhms: 8 } }),
      withChain({ stage: { kind: 'none', designVolts: 18 } }),
      withChain({ stage: { kind: 'buck', name: 'buck', outputVolts: 12, outputToleranceRatio: 0.04, lossVolts: 1, headroomVolts: 1.5, minInputVolts: 4.5, maxInputVolts: 40, quiescentAmps: 0.01, ratedAmps: 2, junctionToAirKelvinPerWatt: 40, maxJunctionCelsius: 125, basis: 'assumed' } }),
      CONVERTER_JOB,
    ];
    for (const job of jobs) {
      const run = runTolerance({ job, samples: 12 });
      expect(run.unsolved).toBe(0);
      for (const { min, p5, p50, p95, max, nominal: middle } of run.readings) {
        for (const value of [min, p5, p50, p95, max, middle]) expect(Number.isFinite(value)).toBe(true);
        expect([min, p5, p50, p95, max]).toEqual([min, p5, p50, p95, max].sort((a, b) => a - b));
      }
      expect(of(run, 'rail').nominal).toBeGreaterThan(11);
    }
    const across = nominal(jobs[2] as BenchJob);
    // Heaters of 8 Ω at about 15 V carry two amperes beside the pulses.
    expect(across['winding-amps']).toBeGreaterThan((nominal(JOB)['winding-amps'] ?? 0) + 1);
  });
});

describe('a tolerance run', () => {
  const run = runTolerance({ job: JOB, samples: 200, seed: 5 });

  it('repeats with its seed, batch by batch or at once', () => {
    const steps = [...toleranceRun({ job: JOB, samples: 60, seed: 5, batch: 20 })];
    expect(steps.map(({ samples }) => samples)).toEqual([20, 40]);
    expect(steps.every(({ done }) => !done)).toBe(true);
    const whole = runTolerance({ job: JOB, samples: 60, seed: 5, batch: 7 });
    expect(whole).toEqual(runTolerance({ job: JOB, samples: 60, seed: 5, batch: 20 }));
    expect(whole.done).toBe(true);
    expect(of(runTolerance({ job: JOB, samples: 60, seed: 6 }), 'reservoir-mean').p50).not.toBe(of(whole, 'reservoir-mean').p50);
  });

  it('spreads each reading as its parts do', () => {
    // The rail: 5 % of tolerance each way and half a per cent of meter.
    const rail = of(run, 'rail');
    expect(rail.min).toBeGreaterThan(12 * 0.95 * 0.994);
    expect(rail.max).toBeLessThan(12 * 1.05 * 1.007);
    // Ripple goes with capacitance, ±20 %: the widest of the electrical readings.
    const width = (id: TestPointId): number => (of(run, id).p95 - of(run, id).p5) / of(run, id).p50;
    expect(width('reservoir-ripple')).toBeGreaterThan(0.25);
    expect(width('reservoir-mean')).toBeLessThan(0.12);
    expect(width('mains')).toBeLessThan(0.04);
  });

  it('spreads wider with wider tolerances, and moves with age', () => {
    const wide = runTolerance({ job: { ...JOB, mains: { ...JOB.mains, spreadRatio: 0.1 } }, samples: 100 });
    expect(of(wide, 'reservoir-mean').p95 - of(wide, 'reservoir-mean').p5).toBeGreaterThan(2 * (of(run, 'reservoir-mean').p95 - of(run, 'reservoir-mean').p5));
    const old = runTolerance({ job: { ...JOB, reservoirAge: 1 }, samples: 100 });
    expect(of(old, 'reservoir-ripple').p50).toBeGreaterThan(1.15 * of(run, 'reservoir-ripple').p50);
    expect(of(old, 'reservoir-valley').p50).toBeLessThan(of(run, 'reservoir-valley').p50);
  });

  it('judges a measured value by it', () => {
    const spread = of(run, 'reservoir-mean');
    const at = (measured: number) => judgeReading({ spread, measured });
    expect(at(spread.p50)).toBe('within');
    expect(at(spread.p95)).toBe('within');
    expect(at(spread.p95 + 0.01)).toBe('marginal');
    expect(at(spread.p5 - 0.01)).toBe('marginal');
    expect(at(spread.p95 + (spread.p95 - spread.p5))).toBe('outside');
    expect(at(NaN)).toBe('not assessed');
  });

  it('refuses counts that are none, and says when no build has a steady state', () => {
    expect(() => runTolerance({ job: JOB, samples: 0 })).toThrow(InputError);
    expect(() => runTolerance({ job: JOB, samples: 2.5 })).toThrow(InputError);
    const starving = withChain({ stage: { kind: 'buck', name: 'buck', outputVolts: 12, outputToleranceRatio: 0.04, lossVolts: 1, headroomVolts: 1.5, minInputVolts: 4.5, maxInputVolts: 40, quiescentAmps: 0.01, ratedAmps: 50, junctionToAirKelvinPerWatt: 40, maxJunctionCelsius: 125, basis: 'assumed' } });
    expect(() => runTolerance({ job: { ...starving, load: { amps: 20, toleranceRatio: 0.1 } } })).toThrow(SolveError);
  });
});

describe('the bench job of a supply', () => {
  it('takes the chain, the mains of the day and the running load', () => {
    const chain = chainOf(JOB);
    const job = benchJob({ supply: { chainInput: chain }, mains: { nominalVolts: 230, hertz: 50, measuredVolts: 236 }, airCelsius: 45 });
    expect(job.load.amps).toBe(chain.load.runningAmps);
    expect(job.mains).toMatchObject({ volts: 236, spreadRatio: 0.01 });
    expect(benchJob({ supply: { chainInput: chain }, mains: { nominalVolts: 230, hertz: 50 }, airCelsius: 45 }).mains.spreadRatio).toBe(0.1);
    expect(() => benchJob({ supply: {}, mains: { nominalVolts: 230, hertz: 50 }, airCelsius: 45 })).toThrow(InputError);
  });
});
