import { InputError, SolveError, requireNumber } from '../errors.ts';
import { levelOfMargin } from '../findings.ts';
import type { Level } from '../findings.ts';
import { benchCircuit } from './bench-circuit.ts';
import type { BenchJob } from './bench-job.ts';
import { drawParts, nominalDraw, partSpreads } from './part-draw.ts';
import { seededRandom } from './random.ts';
import type { RandomSource } from './random.ts';
import { readBench } from './read-bench.ts';
import { TEST_POINTS } from './test-points.ts';
import type { Readings, TestPoint } from './test-points.ts';

/** What one test point shows over many builds of the same plan, its instrument's error included. */
export interface ReadingSpread {
  readonly point: TestPoint;
  /** Every part where the plan has it, the instrument right. */
  readonly nominal: number;
  readonly min: number;
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
  readonly max: number;
}

export interface ToleranceRun {
  readonly readings: readonly ReadingSpread[];
  readonly samples: number;
  /** Builds that have no steady state: the supply cannot be relied on. */
  readonly unsolved: number;
  /** True when all the samples asked for are in. */
  readonly done: boolean;
}

export interface ToleranceOptions {
  readonly job: BenchJob;
  /** Builds to draw, 1 to 20 000; 500 when left out. */
  readonly samples?: number;
  /** Whole number; 1 when left out. The same seed gives the same run. */
  readonly seed?: number;
  /** Builds between two looks at the result, 1 to 1000; 10 when left out: about half a frame. */
  readonly batch?: number;
}

/** A reading as an instrument shows it: off by up to its error, evenly, and never below nothing: none of these points has a sign. */
export function withInstrumentError(readings: Readings, random: RandomSource): Readings {
  return Object.fromEntries(TEST_POINTS.flatMap(({ id, error }) => {
    const value = readings[id];
    return value === undefined ? [] : [[id, Math.max(0, value * (1 + random.between(-error.ratio, error.ratio)) + random.between(-error.least, error.least))]];
  }));
}

/** Value below which a share of sorted values lies, between neighbours by a straight line. */
function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const low = sorted[below] ?? NaN;
  return low + (at - below) * ((sorted[below + 1] ?? low) - low);
}

function summary(nominal: Readings, builds: readonly Readings[], unsolved: number, done: boolean): ToleranceRun {
  const readings = TEST_POINTS.flatMap((point): ReadingSpread[] => {
    const middle = nominal[point.id];
    const values = builds.flatMap((build) => build[point.id] ?? []).sort((a, b) => a - b);
    const [min] = values;
    const max = values.at(-1);
    if (middle === undefined || min === undefined || max === undefined) return [];
    return [{ point, nominal: middle, min, p5: quantile(values, 0.05), p50: quantile(values, 0.5), p95: quantile(values, 0.95), max }];
  });
  return { readings, samples: builds.length, unsolved, done };
}

/**
 * The spread of every reading of a job over the tolerances of its parts, drawn one build after another: a generator, so that
 * a reader can watch it settle and stop it. Yields the run so far after each batch, and returns the whole.
 *
 * Parts vary independently, each as `partSpreads` says: assumed shapes, so the fifth and ninety-fifth percentiles are
 * what to expect, not limits. Every build is solved afresh. Throws `InputError` for numbers out of range, and `SolveError`
 * when not even the nominal build has a steady state.
 */
export function* toleranceRun(options: ToleranceOptions): Generator<ToleranceRun, ToleranceRun> {
  const { job } = options;
  const samples = requireNumber('samples', options.samples ?? 500, { min: 1, max: 20_000 });
  const batch = requireNumber('batch', options.batch ?? 10, { min: 1, max: 1000 });
  for (const [name, value] of [['samples', samples], ['batch', batch]] as const) {
    if (!Number.isInteger(value)) throw new InputError(name, value, { expected: 'a whole number' });
  }
  const random = seededRandom(options.seed ?? 1);
  const spreads = partSpreads(job);
  const nominal = readBench(benchCircuit(job, nominalDraw(spreads)));
  const builds: Readings[] = [];
  let unsolved = 0;
  for (let sample = 1; sample <= samples; sample += 1) {
    const build = drawParts(spreads, random);
    try {
      builds.push(withInstrumentError(readBench(benchCircuit(job, build)), random));
    } catch (error) {
      if (!(error instanceof SolveError)) throw error;
      unsolved += 1;
    }
    if (sample % batch === 0 && sample < samples) yield summary(nominal, builds, unsolved, false);
  }
  return summary(nominal, builds, unsolved, true);
}

/** A whole tolerance run at once; as `toleranceRun`. */
export function runTolerance(options: ToleranceOptions): ToleranceRun {
  const run = toleranceRun(options);
  for (;;) {
    const step = run.next();
    if (step.done === true) return step.value;
  }
}

/**
 * A measured value against the spread of its reading: `within` from the 5th to the 95th percentile, `marginal` to the
 * extremes seen (and half the spread beyond, since a run of some hundred builds has not seen everything), else `outside`.
 * Not a number is `not assessed`.
 */
export function judgeReading(options: { readonly spread: ReadingSpread; readonly measured: number }): Level {
  const { spread, measured } = options;
  if (!Number.isFinite(measured)) return 'not assessed';
  if (measured >= spread.p5 && measured <= spread.p95) return 'within';
  const beyond = Math.max(spread.p5 - measured, measured - spread.p95);
  const allowed = Math.max(spread.p5 - spread.min, spread.max - spread.p95, (spread.p95 - spread.p5) / 2);
  return levelOfMargin({ margin: allowed - beyond, wanted: Infinity });
}
