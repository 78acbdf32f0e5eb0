import { clippedSineAt } from '../network/clipped-sine.ts';
import type { ClippedSine } from '../network/clipped-sine.ts';
import type { PassRecord } from './mains-pass.ts';
import type { RectifierCircuit } from './rectifier-circuit.ts';

/** Intervals in a plotted cycle: 0.7 degrees each. */
export const WAVEFORM_INTERVALS = 512;

/** A solved pass seen at every step end and at every point of the even grid that is plotted. */
export interface CycleTrace {
  readonly seconds: Float64Array;
  readonly railVolts: Float64Array;
  readonly amps1: Float64Array;
  readonly amps2: Float64Array;
  /** 1 where the source has a corner or the pass an end. */
  readonly corner: Uint8Array;
  /** Where the grid points are in the arrays above. */
  readonly gridIndex: Uint16Array;
  /** Largest reverse voltage across a diode. */
  readonly reverseVolts: number;
}

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

/**
 * Reads a solved pass between its steps: the reservoir voltages by the cubic that has the right voltage and current at
 * both ends of a step, and everything else by solving the instant again, so that every point obeys the circuit.
 */
export function traceCycle(options: CycleTraceOptions): CycleTrace {
  const { record, circuit, wave, openCircuitVolts, hertz, farads, esrOhms, halfCycles } = options;
  const { seconds: ends, reservoir1Volts, reservoir2Volts, charge1Amps, charge2Amps } = record;
  const intervals = (WAVEFORM_INTERVALS / 2) * halfCycles;
  const span = halfCycles / (2 * hertz);
  const size = ends.length + intervals + 1;
  const seconds = new Float64Array(size);
  const railVolts = new Float64Array(size);
  const amps1 = new Float64Array(size);
  const amps2 = new Float64Array(size);
  const corner = new Uint8Array(size);
  const gridIndex = new Uint16Array(intervals + 1);
  let count = 0;
  let reverseVolts = 0;

  const point = (at: number, y1: number, y2: number, sharp: boolean): void => {
    const e = openCircuitVolts * clippedSineAt(wave, 2 * Math.PI * hertz * at);
    circuit.solve(e, y1, y2, esrOhms);
    seconds[count] = at;
    railVolts[count] = circuit.railVolts;
    amps1[count] = circuit.arms.amps1;
    amps2[count] = circuit.arms.amps2;
    corner[count] = sharp ? 1 : 0;
    count += 1;
    const reverse = circuit.reverseVolts(e, y1 + esrOhms * circuit.charge1, y2 + esrOhms * circuit.charge2);
    if (reverse > reverseVolts) reverseVolts = reverse;
  };

  let grid = 0;
  for (let k = 0; k < ends.length; k += 1) {
    const t1 = ends[k] as number;
    if (k > 0) {
      const t0 = ends[k - 1] as number;
      const h = t1 - t0;
      // A grid point that falls on a step end (but for rounding) is that step end.
      while (grid <= intervals && (span * grid) / intervals < t1 - 1e-9 * span) {
        const at = (span * grid) / intervals;
        const u = (at - t0) / h;
        const v = 1 - u;
        const from = v * v * (1 + 2 * u);
        const to = u * u * (1 + 2 * v);
        const pull = (h * u * v) / farads;
        gridIndex[grid] = count;
        point(
          at,
          from * (reservoir1Volts[k - 1] as number) + to * (reservoir1Volts[k] as number) +
            pull * (v * (charge1Amps[k - 1] as number) - u * (charge1Amps[k] as number)),
          from * (reservoir2Volts[k - 1] as number) + to * (reservoir2Volts[k] as number) +
            pull * (v * (charge2Amps[k - 1] as number) - u * (charge2Amps[k] as number)),
          false,
        );
        grid += 1;
      }
    }
    if (grid <= intervals && Math.abs((span * grid) / intervals - t1) <= 1e-9 * span) {
      gridIndex[grid] = count;
      grid += 1;
    }
    point(t1, reservoir1Volts[k] as number, reservoir2Volts[k] as number, record.corner[k] === true || k === 0);
  }
  return {
    seconds: seconds.subarray(0, count),
    railVolts: railVolts.subarray(0, count),
    amps1: amps1.subarray(0, count),
    amps2: amps2.subarray(0, count),
    corner: corner.subarray(0, count),
    gridIndex,
    reverseVolts,
  };
}

/** Largest value of a traced quantity, by a parabola through the highest point and its neighbours. */
export function tracedMaximum({ seconds, corner }: CycleTrace, values: Float64Array): number {
  let at = 0;
  for (let i = 1; i < values.length; i += 1) if ((values[i] as number) > (values[at] as number)) at = i;
  const top = values[at] as number;
  // An end of the pass has no neighbour, and a corner of the source makes a sharp peak that is already exact.
  if (at === 0 || at === values.length - 1 || corner[at] === 1) return top;
  const h0 = (seconds[at] as number) - (seconds[at - 1] as number);
  const h1 = (seconds[at + 1] as number) - (seconds[at] as number);
  const d0 = (top - (values[at - 1] as number)) / h0;
  const d1 = ((values[at + 1] as number) - top) / h1;
  const curvature = (d1 - d0) / (h0 + h1);
  if (!(curvature < 0)) return top;
  const slope = (d0 * h1 + d1 * h0) / (h0 + h1);
  return top - (slope * slope) / (4 * curvature);
}

/**
 * Seconds during which a traced quantity is above a positive level. A pulse's foot is an exponential that bends into a
 * curve, so a crossing is placed on the straight line through the logarithms where both neighbours are positive.
 */
export function secondsAbove({ seconds }: CycleTrace, values: Float64Array, level: number): number {
  let total = 0;
  for (let i = 1; i < values.length; i += 1) {
    const a = values[i - 1] as number;
    const b = values[i] as number;
    const h = (seconds[i] as number) - (seconds[i - 1] as number);
    if (a > level && b > level) total += h;
    else if (a > level || b > level) {
      const high = Math.max(a, b);
      const low = Math.min(a, b);
      total += low > 0 ? (h * Math.log(high / level)) / Math.log(high / low) : (h * (high - level)) / (high - low);
    }
  }
  return total;
}
