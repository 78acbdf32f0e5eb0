import { clippedSineAt } from '../network/clipped-sine.ts';
import type { ClippedSine } from '../network/clipped-sine.ts';
import type { PassRecord } from './mains-pass.ts';
import type { RectifierCircuit } from './rectifier-circuit.ts';

/** Intervals in a plotted cycle: 0.7 degrees each. */
export const WAVEFORM_INTERVALS = 512;

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Narrowings of an extreme's bracket: a thousandth of the grid's interval is left. */
const NARROWINGS = 14;
const HALVINGS = 12;

export interface CycleTraceOptions {
  readonly record: PassRecord;
  readonly circuit: RectifierCircuit;
  readonly wave: ClippedSine;
  readonly openCircuitVolts: number;
  readonly hertz: number;
  readonly farads: number;
  readonly esrOhms: number;
  readonly halfCycles: 1 | 2;
}

/** A quantity of the circuit just solved. */
export type Reading = (circuit: RectifierCircuit) => number;

/**
 * A solved pass read anywhere between its steps: the reservoir voltages by the cubic that has the right voltage and
 * current at both ends of a step, and everything else by solving the instant again, so that every point obeys the
 * circuit. Laid out at every step end and at every point of the even grid that is plotted.
 */
export class CycleTrace {
  readonly #o: CycleTraceOptions;
  readonly #count: number;
  readonly seconds: Float64Array;
  readonly railVolts: Float64Array;
  readonly amps1: Float64Array;
  readonly amps2: Float64Array;
  /** Which step each point lies in (the step's end, for a point that is one). */
  readonly #stepOf: Uint16Array;
  /** Where the grid points are in the arrays above. */
  readonly gridIndex: Uint16Array;
  /** Largest reverse voltage across a diode. */
  reverseVolts = 0;

  constructor(options: CycleTraceOptions) {
    this.#o = options;
    const ends = options.record.seconds;
    const intervals = (WAVEFORM_INTERVALS / 2) * options.halfCycles;
    const span = options.halfCycles / (2 * options.hertz);
    const size = ends.length + intervals + 1;
    this.seconds = new Float64Array(size);
    this.railVolts = new Float64Array(size);
    this.amps1 = new Float64Array(size);
    this.amps2 = new Float64Array(size);
    this.#stepOf = new Uint16Array(size);
    this.gridIndex = new Uint16Array(intervals + 1);
    let count = 0;
    let grid = 0;
    for (let k = 0; k < ends.length; k += 1) {
      const end = ends[k] as number;
      // A grid point that falls on a step end (but for rounding) is that step end.
      for (; grid <= intervals && (span * grid) / intervals < end - 1e-9 * span; grid += 1) {
        this.gridIndex[grid] = count;
        this.#lay(count++, (span * grid) / intervals, k);
      }
      if (grid <= intervals && (span * grid) / intervals <= end + 1e-9 * span) this.gridIndex[grid++] = count;
      this.#lay(count++, end, Math.max(k, 1));
    }
    this.#count = count;
  }

  /** Solves the instant at a time within step `k`, which ends at the k-th recorded time. */
  #solveAt(at: number, k: number): void {
    const { record, circuit, wave, openCircuitVolts, hertz, farads, esrOhms } = this.#o;
    const { seconds, reservoir1Volts, reservoir2Volts, charge1Amps, charge2Amps } = record;
    const from = seconds[k - 1] as number;
    const h = (seconds[k] as number) - from;
    const u = (at - from) / h;
    const v = 1 - u;
    const start = v * v * (1 + 2 * u);
    const end = u * u * (1 + 2 * v);
    const pull = (h * u * v) / farads;
    const y1 =
      start * (reservoir1Volts[k - 1] as number) + end * (reservoir1Volts[k] as number) +
      pull * (v * (charge1Amps[k - 1] as number) - u * (charge1Amps[k] as number));
    const y2 =
      start * (reservoir2Volts[k - 1] as number) + end * (reservoir2Volts[k] as number) +
      pull * (v * (charge2Amps[k - 1] as number) - u * (charge2Amps[k] as number));
    const e = openCircuitVolts * clippedSineAt(wave, 2 * Math.PI * hertz * at);
    circuit.solve(e, y1, y2, esrOhms);
    const reverse = circuit.reverseVolts(e, y1 + esrOhms * circuit.charge1, y2 + esrOhms * circuit.charge2);
    if (reverse > this.reverseVolts) this.reverseVolts = reverse;
  }

  #lay(index: number, at: number, step: number): void {
    this.#solveAt(at, step);
    const { circuit } = this.#o;
    this.seconds[index] = at;
    this.#stepOf[index] = step;
    this.railVolts[index] = circuit.railVolts;
    this.amps1[index] = circuit.arms.amps1;
    this.amps2[index] = circuit.arms.amps2;
  }

  /** Reading at a time between points `index − 1` and `index`. */
  #read(reading: Reading, at: number, index: number): number {
    this.#solveAt(at, this.#stepOf[index] as number);
    return reading(this.#o.circuit);
  }

  /**
   * Largest value of a reading, given its values at the points: between the highest point's neighbours by golden
   * section, which a corner cannot mislead as it would a parabola.
   */
  maximum(values: Float64Array, reading: Reading): number {
    let top = 0;
    for (let i = 1; i < this.#count; i += 1) if ((values[i] as number) > (values[top] as number)) top = i;
    let best = values[top] as number;
    for (const index of [top, top + 1]) {
      if (index === 0 || index >= this.#count) continue;
      let low = this.seconds[index - 1] as number;
      let high = this.seconds[index] as number;
      let a = high - GOLDEN * (high - low);
      let b = low + GOLDEN * (high - low);
      let atA = this.#read(reading, a, index);
      let atB = this.#read(reading, b, index);
      // An interval that falls away from its known end everywhere holds no extreme worth narrowing.
      for (let i = 0; i < NARROWINGS && Math.max(atA, atB) > best - 1e-3 * Math.abs(best); i += 1) {
        best = Math.max(best, atA, atB);
        if (atA > atB) {
          high = b;
          b = a;
          atB = atA;
          a = high - GOLDEN * (high - low);
          atA = this.#read(reading, a, index);
        } else {
          low = a;
          a = b;
          atA = atB;
          b = low + GOLDEN * (high - low);
          atB = this.#read(reading, b, index);
        }
      }
    }
    return best;
  }

  /** Seconds during which a reading is above a level, each crossing found by halving. */
  secondsAbove(values: Float64Array, reading: Reading, level: number): number {
    let total = 0;
    for (let i = 1; i < this.#count; i += 1) {
      const before = (values[i - 1] as number) > level;
      const after = (values[i] as number) > level;
      let low = this.seconds[i - 1] as number;
      let high = this.seconds[i] as number;
      if (before && after) total += high - low;
      if (before === after) continue;
      const from = low;
      const to = high;
      for (let k = 0; k < HALVINGS; k += 1) {
        const middle = (low + high) / 2;
        if (this.#read(reading, middle, i) > level === before) low = middle;
        else high = middle;
      }
      total += before ? low - from : to - high;
    }
    return total;
  }
}
