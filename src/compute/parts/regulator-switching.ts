import { InputError, requireNumber } from '../errors.ts';
import type { CatalogueRow } from './row.ts';

/** A non-isolated step-down module or part. */
export interface BuckRow extends CatalogueRow {
  readonly minInputVolts: number;
  readonly maxInputVolts: number;
  readonly maxAmps: number;
  /** What small boards really bear. */
  readonly realisticAmps: number;
  readonly switchingHertz: number;
  /** Ratio of nominal output. */
  readonly tolerance: number;
  /** Input over output it needs to regulate. */
  readonly headroomVolts: number;
  /** Volts that its switch, diode and coil eat, as if in series with the output. */
  readonly lossVolts: number;
  /** Input current with no load. */
  readonly idleAmps: number;
  /** Peak to peak at the switching frequency without a filter behind. */
  readonly rippleVolts: { readonly min: number; readonly max: number };
  /** Load below which it skips pulses, so that its ripple falls into the audio band. */
  readonly skipBelowAmps: number;
}

/** Step-down modules. All typical: the boards sold differ from the parts' sheets. */
export const BUCKS: readonly BuckRow[] = [
  {
    id: 'buck-150k', name: '2596-class step-down, 150 kHz', basis: 'typical', source: { id: 'typical-buck-modules' }, minInputVolts: 4.5, maxInputVolts: 40,
    maxAmps: 3, realisticAmps: 2, switchingHertz: 150e3, tolerance: 0.04, headroomVolts: 1.5, lossVolts: 1.3, idleAmps: 0.008,
    rippleVolts: { min: 0.03, max: 0.08 }, skipBelowAmps: 0.1,
    note: 'Loss fitted to 80 % efficiency 12 V to 5 V and 90 % 24 V to 12 V.',
  },
  {
    id: 'buck-1m', name: '1584-class step-down, about 1 MHz', basis: 'typical', source: { id: 'typical-buck-modules' }, minInputVolts: 4.5, maxInputVolts: 28,
    maxAmps: 3, realisticAmps: 1.5, switchingHertz: 1e6, tolerance: 0.04, headroomVolts: 1.2, lossVolts: 0.9, idleAmps: 0.002,
    rippleVolts: { min: 0.02, max: 0.06 }, skipBelowAmps: 0.15,
  },
  {
    id: 'buck-34063', name: '34063-class step-down, about 60 kHz', basis: 'typical', source: { id: 'typical-buck-modules' }, minInputVolts: 4.5, maxInputVolts: 40,
    maxAmps: 0.75, realisticAmps: 0.5, switchingHertz: 60e3, tolerance: 0.04, headroomVolts: 2.5, lossVolts: 1.8, idleAmps: 0.004,
    rippleVolts: { min: 0.05, max: 0.15 }, skipBelowAmps: 0.2,
    note: 'Its frequency wanders down into hearing at light load.',
  },
];

/** The row with this id. Throws `InputError` when there is none. */
export function buck(id: string): BuckRow {
  const found = BUCKS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('buck', id, { expected: BUCKS.map((row) => row.id).join(', ') });
  return found;
}

/** Lowest input at which a step-down still regulates, volts: its own minimum, or output plus headroom. Output 0.8–60 V. */
export function buckMinimumInputVolts(options: { readonly part: BuckRow; readonly outputVolts: number }): number {
  const output = requireNumber('outputVolts', options.outputVolts, { min: 0.8, max: 60 });
  return Math.max(options.part.minInputVolts, output + options.part.headroomVolts);
}

export interface BuckInput {
  /** Constant-power input: watts at any input volts (the idle current's share apart). */
  readonly watts: number;
  readonly amps: number;
  /** Heat in the module. */
  readonly heatWatts: number;
  readonly efficiency: number;
  /** Slope of input volts over input amps: negative, so that a soft supply can collapse into it at start. */
  readonly inputOhms: number;
  /** Whether at this load it skips pulses. */
  readonly skipping: boolean;
}

/**
 * What a step-down module draws. It takes constant power: the lower the input, the more current, so it starts at its
 * worst. Output 0.8–60 V, load 0–10 A, input from `buckMinimumInputVolts` to its maximum; throws `InputError` outside.
 * A negative `inputOhms` smaller in size than the source's resistance cannot be started or held by that source.
 */
export function buckInput(options: { readonly part: BuckRow; readonly outputVolts: number; readonly amps: number; readonly inputVolts: number }): BuckInput {
  const { part } = options;
  const outputVolts = requireNumber('outputVolts', options.outputVolts, { min: 0.8, max: 60 });
  const amps = requireNumber('amps', options.amps, { min: 0, max: 10 });
  const inputVolts = requireNumber('inputVolts', options.inputVolts, { min: buckMinimumInputVolts({ part, outputVolts }), max: part.maxInputVolts });
  const converted = (outputVolts + part.lossVolts) * amps;
  const watts = converted + inputVolts * part.idleAmps;
  const delivered = outputVolts * amps;
  return {
    watts, amps: watts / inputVolts, heatWatts: watts - delivered, efficiency: delivered / watts,
    inputOhms: converted === 0 ? -Infinity : -(inputVolts * inputVolts) / converted, skipping: amps < part.skipBelowAmps,
  };
}

/**
 * What protects the load from a switch that fails shorted and puts the whole input on it: a fuse before the module, and
 * a clamp behind it of 1.1 to 1.3 times the output that blows the fuse. Typical practice.
 */
export function buckClampVolts(outputVolts: number): { readonly min: number; readonly max: number } {
  const output = requireNumber('outputVolts', outputVolts, { min: 0.8, max: 60 });
  return { min: 1.1 * output, max: 1.3 * output };
}
