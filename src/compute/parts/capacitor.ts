import { InputError, requireNumber } from '../errors.ts';
import {
  CAPACITANCE_TOLERANCE, ELECTROLYTICS, END_OF_LIFE, RATED_VOLTS, RIPPLE_FREQUENCY_FACTOR, TAN_DELTA, TAN_DELTA_PER_MILLIFARAD, TYPICAL_ESR_FRACTION,
} from './capacitor-rows.ts';
import type { ElectrolyticRow } from './capacitor-rows.ts';
import { onCurve, onLogCurve, onLogLogCurve } from './interpolate.ts';
import type { Spread } from './row.ts';

export { CAPACITANCE_TOLERANCE, ELECTROLYTICS, END_OF_LIFE, RATED_VOLTS, REVERSE_MAX_VOLTS, SURGE_FACTOR, TAN_DELTA_SOURCE } from './capacitor-rows.ts';
export type { ElectrolyticRow } from './capacitor-rows.ts';

const FARADS = { min: 1e-9, max: 10 };
const RATED = { min: 1, max: 1000 };

/** The row with this id. Throws `InputError` when there is none. */
export function electrolytic(id: string): ElectrolyticRow {
  const found = ELECTROLYTICS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('electrolytic', id, { expected: ELECTROLYTICS.map((row) => row.id).join(', ') });
  return found;
}

/**
 * Largest ESR of a new general-purpose electrolytic, ohms at 20 °C: tan δ over 2πfC, from the limits of tan δ at
 * 120 Hz (0.02 more per 1000 µF or part of it above 1000 µF). Takes 1 nF–10 F and 1–1000 V rated (tan δ level beyond 6.3–100 V).
 */
export function esrLimitOhms(options: { readonly farads: number; readonly ratedVolts: number }): number {
  const farads = requireNumber('farads', options.farads, FARADS);
  const ratedVolts = requireNumber('ratedVolts', options.ratedVolts, RATED);
  const tanDelta = onCurve(TAN_DELTA, ratedVolts) + TAN_DELTA_PER_MILLIFARAD * Math.max(0, Math.ceil(farads / 1e-3 - 1 - 1e-9));
  return tanDelta / (2 * Math.PI * 120 * farads);
}

/**
 * ESR to expect, ohms: least and typical of a new part, and the most of an old one (twice the limit of a new one).
 * Limits from the data sheet, the fractions of it typical.
 */
export function esrOhms(options: { readonly farads: number; readonly ratedVolts: number }): Spread {
  const limit = esrLimitOhms(options);
  return { min: limit * TYPICAL_ESR_FRACTION.min, typical: limit * TYPICAL_ESR_FRACTION.typical, max: limit * END_OF_LIFE.esrFactor };
}

/**
 * Capacitance to reckon with, farads: smallest and aged (tolerance low, then a fifth lost), as marked, and largest new.
 * `tolerance` as a ratio, default 0.2.
 */
export function capacitanceSpread(options: { readonly farads: number; readonly tolerance?: number }): Spread {
  const farads = requireNumber('farads', options.farads, FARADS);
  const tolerance = requireNumber('tolerance', options.tolerance ?? CAPACITANCE_TOLERANCE, { min: 0, max: 0.9 });
  return { min: farads * (1 - tolerance) * END_OF_LIFE.capacitanceFactor, typical: farads, max: farads * (1 + tolerance) };
}

/**
 * Ripple rating to expect of a class at 120 Hz, amps: lowest and highest of makers' tables for 25 V parts, scaled
 * between table entries along straight lines on logarithmic scales. Typical, to be replaced by the part's own figure.
 */
export function typicalRippleAmps(options: { readonly row: ElectrolyticRow; readonly farads: number }): { readonly lowest: number; readonly highest: number } {
  const farads = requireNumber('farads', options.farads, FARADS);
  const { lowest, highest } = options.row.rippleAmps;
  return { lowest: onLogLogCurve(lowest, farads), highest: onLogLogCurve(highest, farads) };
}

/**
 * Ripple current allowed at a ripple frequency and air temperature, amps RMS: the 120 Hz rating times the frequency
 * factor (0.92 at 100 Hz, the lowest printed) times the class's temperature factor. Zero above the class's limit.
 * Rating 1 mA–100 A, 50 Hz–1 MHz, −40 to 130 °C. The factor at 50 Hz is typical.
 */
export function rippleLimitAmps(options: {
  readonly row: ElectrolyticRow;
  readonly ratedAmps: number;
  readonly rippleHertz: number;
  readonly celsius: number;
}): number {
  const ratedAmps = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-3, max: 100 });
  const hertz = requireNumber('rippleHertz', options.rippleHertz, { min: 50, max: 1e6 });
  const celsius = requireNumber('celsius', options.celsius, { min: -40, max: 130 });
  if (celsius > options.row.maxCelsius) return 0;
  return ratedAmps * onLogCurve(RIPPLE_FREQUENCY_FACTOR, hertz) * onCurve(options.row.rippleTemperatureFactor, celsius);
}

/** Core rise over air at the rated ripple current and temperature, K: typical of small parts. */
export const RATED_RIPPLE_RISE = 5;

// Makers do not vouch for any electrolytic beyond about fifteen years, whatever the formula says: seals age.
const SEAL_HOURS = 130_000;

/**
 * Hours to the end-of-life limits of the sheet: L₀ · 2^((T₀ − T)/10), with T the core: air plus the rise that the
 * ripple causes (rated rise times the square of actual over rated ripple current).
 *
 * `ratedCelsius` and `ratedHours` from the sheet; `rippleRatio` is RMS ripple over the 120 Hz rating brought to its
 * frequency (0 when unknown heat is to be left out). `hours` follows the formula; `creditedHours` stops at 130 000 h
 * (about 15 years), beyond which nobody vouches for the seal. Throws `InputError` for air outside −40 to 150 °C,
 * hours outside 1 to 1e6 and a ratio outside 0 to 10. Source: maker's life note; the rated rise is typical.
 */
export function capacitorLife(options: {
  readonly ratedHours: number;
  readonly ratedCelsius: number;
  readonly celsius: number;
  readonly rippleRatio?: number;
}): { readonly hours: number; readonly creditedHours: number; readonly coreCelsius: number } {
  const ratedHours = requireNumber('ratedHours', options.ratedHours, { min: 1, max: 1e6 });
  const ratedCelsius = requireNumber('ratedCelsius', options.ratedCelsius, { min: 40, max: 150 });
  const celsius = requireNumber('celsius', options.celsius, { min: -40, max: 150 });
  const rippleRatio = requireNumber('rippleRatio', options.rippleRatio ?? 0, { min: 0, max: 10 });
  const coreCelsius = celsius + RATED_RIPPLE_RISE * rippleRatio ** 2;
  const hours = ratedHours * 2 ** ((ratedCelsius + RATED_RIPPLE_RISE - coreCelsius) / 10);
  return { hours, creditedHours: Math.min(hours, SEAL_HOURS), coreCelsius };
}

/**
 * Smallest standard voltage rating of which `volts` is at most `share` (default 0.8); `undefined` above 100 V rated.
 * `volts` is the highest the part ever sees: high mains, no load.
 */
export function nextRatedVolts(options: { readonly volts: number; readonly share?: number }): number | undefined {
  const volts = requireNumber('volts', options.volts, { min: 0, max: 1000 });
  const share = requireNumber('share', options.share ?? 0.8, { min: 0.1, max: 1 });
  return RATED_VOLTS.find((rated) => volts <= rated * share * (1 + 1e-9));
}

/** Largest leakage after two minutes at rated volts, amps: 0.01·C·V (C in µF, µA) or 3 µA, whichever is more; to 100 V. */
export function capacitorLeakageAmps(options: { readonly farads: number; readonly volts: number }): number {
  const farads = requireNumber('farads', options.farads, FARADS);
  const volts = requireNumber('volts', options.volts, { min: 0, max: 100 });
  return Math.max(3e-6, 0.01 * farads * volts);
}
