import { SolveError } from '../errors.ts';
import type { Stepper } from './stepper.ts';

const SHORTEST_PART = 1e-10;
const MAX_STEPS = 8000;
/** A mesh taken over from an earlier pass is given up when a step on it errs more than this many times the tolerance. */
const WORN_OUT = 10;

export interface PeriodicPassOptions {
  readonly stepper: Stepper;
  readonly hertz: number;
  /** Equal parts of the period whose ends are always step ends. */
  readonly intervals: number;
  /** Error allowed per step, as a part of each state's scale. */
  readonly tolerance: number;
  readonly scales: Float64Array;
  /**
   * Step ends of an earlier pass to go through again. On a fixed mesh the end of the period is a smooth function of its
   * start; steps that adapt afresh each time would shake it by more than the search for the repeating cycle can bear.
   */
  readonly mesh?: readonly number[] | undefined;
  /** Called at the end of each interval. */
  readonly onGrid?: ((index: number) => void) | undefined;
}

/** What a pass learnt. */
export interface PassReport {
  /** The largest size of each state. */
  readonly largest: Float64Array;
  /** The distance each state would travel if every change in the period had the same sign. */
  readonly travel: Float64Array;
  /** The ends of its steps. */
  readonly mesh: readonly number[];
}

/** Integrates one period from the stepper's states, leaving it at the end; adaptive between the points of the grid. */
export function runPeriod(options: PeriodicPassOptions): PassReport {
  if (options.mesh) {
    const start = Float64Array.from(options.stepper.states);
    const sensitivity = options.stepper.sensitivity?.slice();
    const report = followMesh(options, options.mesh);
    if (report) return report;
    options.stepper.states.set(start);
    if (sensitivity) options.stepper.sensitivity?.set(sensitivity);
  }
  return makeMesh(options);
}

/** Keeps count of what the states do. */
class Tally implements PassReport {
  readonly largest: Float64Array;
  readonly travel: Float64Array;
  readonly mesh: number[] = [];
  readonly #before: Float64Array;

  constructor(states: Float64Array) {
    this.largest = states.map(Math.abs);
    this.travel = new Float64Array(states.length);
    this.#before = Float64Array.from(states);
  }

  add(states: Float64Array, end: number): void {
    this.mesh.push(end);
    for (let k = 0; k < states.length; k += 1) {
      const value = states[k] as number;
      this.largest[k] = Math.max(this.largest[k] as number, Math.abs(value));
      this.travel[k] = (this.travel[k] as number) + Math.abs(value - (this.#before[k] as number));
      this.#before[k] = value;
    }
  }
}

/** Largest error of the step last tried, in units of what is allowed. */
function judge({ stepper, tolerance, scales }: PeriodicPassOptions): number {
  let error = 0;
  for (let k = 0; k < scales.length; k += 1) {
    error = Math.max(error, Math.abs(stepper.errors[k] as number) / (tolerance * (scales[k] as number)));
  }
  return error;
}

function followMesh(options: PeriodicPassOptions, mesh: readonly number[]): PassReport | undefined {
  const { stepper } = options;
  const tally = new Tally(stepper.states);
  let t = 0;
  for (const end of mesh) {
    if (!stepper.attempt(t, end - t) || judge(options) > WORN_OUT) return undefined;
    stepper.accept(end - t);
    tally.add(stepper.states, end);
    t = end;
  }
  return tally;
}

function makeMesh(options: PeriodicPassOptions): PassReport {
  const { stepper, hertz, intervals, onGrid } = options;
  const period = 1 / hertz;
  const shortest = period * SHORTEST_PART;
  const corners = stepper.circuit.devices.flatMap((d) => d.corners?.(0, period) ?? []).sort((a, b) => a - b);
  const tally = new Tally(stepper.states);
  let t = 0;
  let step = period / intervals;
  let tries = 0;
  let corner = 0;
  for (let grid = 1; grid <= intervals; grid += 1) {
    const gridEnd = grid === intervals ? period : (period * grid) / intervals;
    while (t < gridEnd) {
      while (corner < corners.length && (corners[corner] as number) <= t + shortest) corner += 1;
      const next = Math.min(gridEnd, corners[corner] ?? gridEnd);
      const end = next > gridEnd - shortest ? gridEnd : next;
      const left = end - t;
      let h = Math.min(step, left);
      // Two even steps rather than a long one and a sliver.
      if (h < left && h > left / 2) h = left / 2;
      tries += 1;
      if (tries > MAX_STEPS || step < shortest) {
        throw new SolveError('no-convergence', 'The circuit could not be followed through a period.');
      }
      if (!stepper.attempt(t, h)) {
        step = h / 4;
        continue;
      }
      const error = judge(options);
      const growth = Math.min(4, 0.85 * Math.max(error, 1e-6) ** -0.25);
      if (error > 1 && h > shortest) {
        stepper.retreat();
        // A state forced to jump (a capacitor across an ideal source) errs however short the step: take the shortest.
        step = Math.max(shortest, h * Math.max(0.1, growth));
        continue;
      }
      stepper.accept(h);
      t = h === left ? end : t + h;
      tally.add(stepper.states, t);
      // A step cut short by the grid says little against a longer one that was doing well.
      step = h < step ? Math.max(step, h * growth) : h * Math.max(1, growth);
    }
    onGrid?.(grid);
  }
  return tally;
}
