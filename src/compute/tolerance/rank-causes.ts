import { InputError, SolveError, requireNumber } from '../errors.ts';
import { benchCircuit } from './bench-circuit.ts';
import type { BenchJob } from './bench-job.ts';
import { CAUSES } from './causes.ts';
import type { Cause } from './causes.ts';
import { drawParts, partSpreads } from './part-draw.ts';
import { seededRandom } from './random.ts';
import { readBench } from './read-bench.ts';
import { TEST_POINTS } from './test-points.ts';
import type { Readings, TestPoint, TestPointId } from './test-points.ts';

/** What a cause would have every test point show, over some builds. */
export interface ExpectedOfCause {
  readonly cause: Cause;
  /** One set of readings per build, instruments taken as right. */
  readonly builds: readonly Readings[];
}

/** A cause with how well it explains a set of readings. */
export interface RankedCause {
  readonly cause: Cause;
  /** Share of all causes' likelihood, each taken as equally likely beforehand. */
  readonly share: number;
  /** The reading that this cause explains worst, in units of the spread it allows. */
  readonly worst: { readonly id: TestPointId; readonly deviations: number } | undefined;
  /**
   * The test point that best tells this cause from the next one, measured or not: the reading to take. None beside a cause
   * that may burn: there the power goes off, and `confirm` says what to look at.
   */
  readonly tellsFromNext: TestPointId | undefined;
}

const DEFAULT_SAMPLES = 32;
/** What the models are off by, beside instrument and tolerance: little for mean volts and amps, some per cent for the rest. Assumed. */
const MODEL_RATIO = { dc: 0.005, other: 0.02 } as const;
/** Share of a cause's own spread laid around each of its builds, so that some tens of builds stand for all. */
const BUILD_SHARE = 0.35;
/** Degrees of freedom of the bell that a deviation is judged by: long tails, so that one wild reading does not decide alone. */
const TAIL = 3;

/**
 * What each cause that a job can have would show, its circuit changed and solved for `samples` builds (default 32, 4 to
 * 1000) drawn alike for all causes, from a mild case of it to a bad one. A cause whose circuit has no steady state is left out. Throws `InputError` outside.
 */
export function expectCauses(options: { readonly job: BenchJob; readonly samples?: number; readonly seed?: number }): readonly ExpectedOfCause[] {
  return CAUSES.filter(({ applies }) => applies(options.job)).flatMap((cause): ExpectedOfCause[] => {
    const expected = expectCause({ ...options, cause });
    return expected.builds.length === 0 ? [] : [expected];
  });
}

/** As `expectCauses`, of one cause: for a page that works them off one by one. */
export function expectCause(options: { readonly job: BenchJob; readonly cause: Cause; readonly samples?: number; readonly seed?: number }): ExpectedOfCause {
  const { job, cause } = options;
  const samples = requireNumber('samples', options.samples ?? DEFAULT_SAMPLES, { min: 4, max: 1000 });
  const random = seededRandom(options.seed ?? 1);
  const spreads = partSpreads(job);
  const builds: Readings[] = [];
  for (let sample = 0; sample < samples; sample += 1) {
    const draw = drawParts(spreads, random);
    try {
      // The degree of the fault is swept evenly, mild to bad, over the builds.
      builds.push(readBench(cause.change(benchCircuit(job, draw), (sample + 0.5) / samples, job)));
    } catch (error) {
      if (!(error instanceof SolveError)) throw error;
    }
  }
  return { cause, builds };
}

/**
 * Readings are compared by their logarithms, from the instrument's least error up: a fault may move a ripple tenfold or a rail by a
 * tenth, and a share of the reading means the same for both.
 */
const scaled = ({ error }: TestPoint, value: number): number => Math.log(Math.max(0, value) + error.least);

interface Summary {
  /** Of the scaled readings. */
  readonly mean: number;
  readonly deviation: number;
  /** Off by this for reasons that are not the cause, at the mean: instrument and model. */
  readonly blur: number;
}

/** What a scaled reading may be off by beside the cause: instrument and model, root of the sum of squares. */
function blurOf({ error, instrument }: TestPoint, value: number): number {
  const size = Math.max(0, value);
  return Math.hypot(error.ratio * size + error.least, MODEL_RATIO[instrument === 'dc' ? 'dc' : 'other'] * size) / (size + error.least);
}

function summaryOf({ builds }: ExpectedOfCause, point: TestPoint): Summary | undefined {
  const values = builds.flatMap((build) => build[point.id] ?? []);
  if (values.length === 0) return undefined;
  const logs = values.map((value) => scaled(point, value));
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
  const square = logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / logs.length;
  return { mean, deviation: Math.sqrt(square), blur: blurOf(point, values.reduce((sum, value) => sum + value, 0) / values.length) };
}

/** Logarithm of the likelihood of a deviation in units of its scale (Student's t, without its constant). */
const logLikelihood = (deviation: number, scale: number): number => -((TAIL + 1) / 2) * Math.log1p((deviation / scale) ** 2 / TAIL) - Math.log(scale);

function causeLogLikelihood(expected: ExpectedOfCause, measured: readonly (readonly [TestPoint, number])[]): number {
  const spreads = new Map(measured.map(([point]) => [point.id, summaryOf(expected, point)?.deviation]));
  const logs = expected.builds.map((build) => {
    let sum = 0;
    for (const [point, value] of measured) {
      const there = build[point.id];
      if (there === undefined) continue;
      const spread = spreads.get(point.id) ?? 0;
      sum += logLikelihood(scaled(point, value) - scaled(point, there), Math.hypot(blurOf(point, there), BUILD_SHARE * spread));
    }
    return sum;
  });
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0) / logs.length);
}

function worstOf(expected: ExpectedOfCause, measured: readonly (readonly [TestPoint, number])[]): RankedCause['worst'] {
  let worst: RankedCause['worst'];
  for (const [point, value] of measured) {
    const there = summaryOf(expected, point);
    if (there === undefined) continue;
    const deviations = (scaled(point, value) - there.mean) / Math.hypot(there.blur, there.deviation);
    if (worst === undefined || Math.abs(deviations) > Math.abs(worst.deviations)) worst = { id: point.id, deviations };
  }
  return worst;
}

/** The test point at which two causes lie furthest apart, in units of what blurs them. */
export function separatingPoint(a: ExpectedOfCause, b: ExpectedOfCause): TestPointId | undefined {
  let best: { readonly id: TestPointId; readonly apart: number } | undefined;
  for (const point of TEST_POINTS) {
    const [one, other] = [summaryOf(a, point), summaryOf(b, point)];
    if (one === undefined || other === undefined) continue;
    const apart = Math.abs(one.mean - other.mean) / Math.hypot(one.blur, other.blur, one.deviation, other.deviation);
    if (best === undefined || apart > best.apart) best = { id: point.id, apart };
  }
  return best?.id;
}

/**
 * Ranks what may be wrong by how likely it makes a set of readings: each build of each cause is compared with them, every
 * reading judged by its instrument's error, the model's, and the spread of the parts; builds are averaged, so that what the
 * mains or a soft winding moves together counts once. Needs one reading at least; more tell more.
 *
 * `measured` by test point, in SI units; only points that the job has count. Throws `InputError` for no reading, or one that
 * is not a finite number. It ranks the causes it knows; a fault that is none of them comes out as the one it resembles.
 */
export function rankCauses(options: { readonly expected: readonly ExpectedOfCause[]; readonly measured: Readings }): readonly RankedCause[] {
  const { expected, measured } = options;
  const taken = TEST_POINTS.flatMap((point): (readonly [TestPoint, number])[] => {
    const value = measured[point.id];
    return value === undefined ? [] : [[point, requireNumber(`measured.${point.id}`, value)]];
  });
  if (taken.length === 0) throw new InputError('measured', 'no reading', { expected: 'at least one reading' });
  if (expected.length === 0) throw new InputError('expected', 'no cause', { expected: 'at least one cause' });
  const scored = expected
    .map((each) => ({ each, log: causeLogLikelihood(each, taken) }))
    .sort((a, b) => b.log - a.log);
  const top = scored[0]?.log ?? 0;
  const total = scored.reduce((sum, { log }) => sum + Math.exp(log - top), 0);
  return scored.map(({ each, log }, at) => {
    const next = scored[at + 1]?.each;
    const mayBurn = each.cause.harm === 'fire' || next?.cause.harm === 'fire';
    return {
      cause: each.cause,
      share: Math.exp(log - top) / total,
      worst: worstOf(each, taken),
      tellsFromNext: next === undefined || mayBurn ? undefined : separatingPoint(each, next),
    };
  });
}
