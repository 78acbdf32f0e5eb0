import { InputError, requireNumber } from '../errors.ts';
import { CONVERTERS } from './converter-rows.ts';
import type { ConverterRow, StartUpLimit } from './converter-rows.ts';
import { onCurve } from './interpolate.ts';

export { CONVERTERS } from './converter-rows.ts';
export type { ConverterRow, StartUpLimit } from './converter-rows.ts';

/** The row with this id. Throws `InputError` when there is none. */
export function converter(id: string): ConverterRow {
  const found = CONVERTERS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('converter', id, { expected: CONVERTERS.map((row) => row.id).join(', ') });
  return found;
}

/**
 * What a converter may give in air of a temperature: watts and amps. From −40 °C; beyond the end of its derating curve
 * it may not run at all and both are 0.
 */
export function deratedOutput(options: { readonly part: ConverterRow; readonly airCelsius: number }): { readonly share: number; readonly watts: number; readonly amps: number } {
  const { part } = options;
  const air = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 150 });
  const hottest = part.derating.at(-1)?.[0] ?? -Infinity;
  const share = air > hottest ? 0 : onCurve(part.derating, air);
  return { share, watts: part.ratedWatts * share, amps: part.ratedAmps * share };
}

/** Heat in the converter at a load, watts: output over efficiency less output, and its standby draw when idle. */
export function converterHeatWatts(options: { readonly part: ConverterRow; readonly amps: number }): number {
  const output = options.part.outputVolts * requireNumber('amps', options.amps, { min: 0, max: 2 * options.part.ratedAmps });
  return Math.max(options.part.standbyWatts, output / options.part.efficiency - output);
}

/**
 * Current through a capacitor from mains to the output, amps RMS: 2πfCV. Source: solved. 0–1 µF, 0–1000 V, 40–70 Hz.
 * For what the output's own capacitor leaks see `yCapacitorFarads`.
 */
export function yCapacitorAmps(options: { readonly farads: number; readonly mainsVolts: number; readonly hertz: number }): number {
  const farads = requireNumber('farads', options.farads, { min: 0, max: 1e-6 });
  const volts = requireNumber('mainsVolts', options.mainsVolts, { min: 0, max: 1000 });
  return 2 * Math.PI * requireNumber('hertz', options.hertz, { min: 40, max: 70 }) * farads * volts;
}

/** The capacitance that a printed leakage current stands for, farads: I/(2πfV), by default at 230 V 50 Hz. */
export function yCapacitorFarads(options: { readonly leakageAmps: number; readonly mainsVolts?: number; readonly hertz?: number }): number {
  const amps = requireNumber('leakageAmps', options.leakageAmps, { min: 0, max: 0.1 });
  const volts = requireNumber('mainsVolts', options.mainsVolts ?? 230, { min: 50, max: 500 });
  return amps / (2 * Math.PI * requireNumber('hertz', options.hertz ?? 50, { min: 40, max: 70 }) * volts);
}

// How long a hiccup tries and rests; makers' notes give 0.1 to 1 s for the pause.
const HICCUP_ON_SECONDS = 0.05;
const HICCUP_PAUSE_SECONDS = 0.5;
// A folding limit gives about a third of its trip current into a short.
const FOLDBACK_SHARE = 1 / 3;

/** The start-up limit of a row with its amps, in its assumed kind or the one read on the part. Times typical. */
export function startUpLimit(options: { readonly part: ConverterRow; readonly kind?: StartUpLimit['kind'] }): StartUpLimit {
  const { part, kind = part.startUpKind } = options;
  const amps = part.ratedAmps * part.overloadRatio;
  switch (kind) {
    case 'constant-current':
      return { kind, amps };
    case 'foldback':
      return { kind, tripAmps: amps, shortAmps: amps * FOLDBACK_SHARE };
    case 'hiccup':
      return { kind, tripAmps: amps, onSeconds: HICCUP_ON_SECONDS, pauseSeconds: HICCUP_PAUSE_SECONDS };
    default:
      throw new InputError('kind', kind, { expected: 'constant-current, hiccup or foldback' });
  }
}

/**
 * Rating to want for a load with heaters cold at start, amps: 1.3 to 1.5 times running with a constant-current limit,
 * 3 to 4 times without, before derating for temperature. Typical practice; a solved start says more.
 */
export function ratingForHeaters(options: { readonly runningAmps: number; readonly limit: StartUpLimit['kind'] }): { readonly least: number; readonly comfortable: number } {
  const amps = requireNumber('runningAmps', options.runningAmps, { min: 0, max: 100 });
  return options.limit === 'constant-current' ? { least: 1.3 * amps, comfortable: 1.5 * amps } : { least: 3 * amps, comfortable: 4 * amps };
}
