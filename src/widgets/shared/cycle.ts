import type { RectifierTopology, RectifierWaveform } from '../../compute/rectifier/rectifier-types.ts';
import type { PlotData } from './plot-data.ts';

/** One mains cycle of a solved rectifier as plain lists, for the dial, the drawing and the plot. */
export interface Cycle {
  readonly topology: RectifierTopology;
  readonly seconds: readonly number[];
  readonly railVolts: readonly number[];
  /** All the current out of the winding, both halves of a centre tap; signed by the direction of the source. */
  readonly windingAmps: readonly number[];
  readonly sourceVolts: readonly number[];
}

/** Every this many samples of the solved cycle: 256 points are more than a screen shows. */
const EVERY = 2;

/** To a figure that no screen can show more of, so that the page as built stays small. */
const rounded = (value: number): number => Number(value.toPrecision(5));

const thinned = (values: Float64Array): number[] => Array.from(values.filter((_, index) => index % EVERY === 0), rounded);

/** Takes a solved waveform apart for showing. The other half of a centre tap carries the same current half a cycle later. */
export function cycleOf(topology: RectifierTopology, waveform: RectifierWaveform): Cycle {
  const amps = thinned(waveform.windingAmps);
  const steps = amps.length - 1;
  const half = steps / 2;
  const windingAmps = topology === 'centre-tap' ? amps.map((value, index) => rounded(value - (amps[(index + half) % steps] ?? 0))) : amps;
  return { topology, seconds: thinned(waveform.seconds), railVolts: thinned(waveform.railVolts), windingAmps, sourceVolts: thinned(waveform.sourceVolts) };
}

/** A list of a cycle at a place in degrees, by straight lines between its samples. */
export function atDegrees(values: readonly number[], degrees: number): number {
  const steps = values.length - 1;
  const place = ((((degrees % 360) + 360) % 360) / 360) * steps;
  const below = Math.floor(place);
  const low = values[below] ?? 0;
  return low + (place - below) * ((values[below + 1] ?? low) - low);
}

/** The place of the largest current: where a reader looks first. */
export function peakDegrees(cycle: Cycle): number {
  const index = cycle.windingAmps.reduce((best, value, at) => (value > (cycle.windingAmps[best] ?? 0) ? at : best), 0);
  return Math.round((index * 360) / (cycle.windingAmps.length - 1)) % 360;
}

/** Diodes are taken to carry nothing below a hundredth of the peak, nor where all there is is leakage. */
export function leastAmps(amps: readonly number[]): number {
  return Math.max(0.01 * Math.max(...amps.map(Math.abs)), 1e-5);
}

/** Which way the winding charges the reservoir at a place in the cycle, if it does. */
export function phaseAt(cycle: Cycle, degrees: number): 'forward' | 'reverse' | 'resting' {
  const amps = atDegrees(cycle.windingAmps, degrees);
  if (Math.abs(amps) <= leastAmps(cycle.windingAmps)) return 'resting';
  return amps > 0 ? 'forward' : 'reverse';
}

/** The cycle as a plot: the reservoir's volts over what is asked of it, and the charging pulses. */
export function cyclePlot(options: {
  readonly cycle: Cycle;
  readonly caption: string;
  /** A level that the valley is held against. */
  readonly needed?: { readonly name: string; readonly volts: number };
  readonly markDegrees?: number;
}): PlotData {
  const { cycle, needed, markDegrees } = options;
  const last = cycle.seconds.at(-1) ?? 0;
  return {
    caption: options.caption,
    x: { name: 'time in one mains cycle', unit: 's', values: cycle.seconds },
    series: [
      { name: 'reservoir', kind: 'volts', unit: 'V', values: cycle.railVolts },
      ...(needed === undefined ? [] : [{ name: needed.name, kind: 'needed' as const, unit: 'V' as const, values: cycle.seconds.map(() => needed.volts) }]),
      { name: 'winding current', kind: 'amps', unit: 'A', values: cycle.windingAmps },
    ],
    ...(markDegrees === undefined ? {} : { markAt: (last * markDegrees) / 360 }),
  };
}
