import { InputError, requireNumber } from '../errors.ts';
import { DIODES } from './diode-rows.ts';
import type { DiodeModel, DiodePart } from './diode-rows.ts';

export { DIODES } from './diode-rows.ts';
export type { DiodeModel, DiodePart } from './diode-rows.ts';

/** Thermal voltage kT/q of the diode equation, volts, at 27 °C: the value the sets were fitted with. */
export const THERMAL_VOLTS = 0.025852;

/** The row with this id. Throws `InputError` when there is none. */
export function diodePart(id: string): DiodePart {
  const found = DIODES.find((row) => row.id === id);
  if (found === undefined) throw new InputError('diode', id, { expected: DIODES.map((row) => row.id).join(', ') });
  return found;
}

/**
 * Forward drop at a current, volts: n·VT·ln(1 + I/Is) + I·R, at 27 °C junction. About −1.5 to −2 mV per kelvin hotter.
 * `amps` 0 to 1000 instantaneous; beyond the fitted range of its set (`fittedToAmps`) it is an extrapolation.
 */
export function diodeForwardVolts(options: { readonly model: DiodeModel; readonly amps: number }): number {
  const { saturationAmps, emission, ohms } = options.model;
  const amps = requireNumber('amps', options.amps, { min: 0, max: 1000 });
  return emission * THERMAL_VOLTS * Math.log1p(amps / saturationAmps) + amps * ohms;
}

/**
 * Heat in one diode from its solved mean and RMS current, watts, taking the junction part of the drop at the
 * charge-weighted current (RMS² over mean). The logarithm is concave, so this is an upper bound for the model,
 * usually within 2 %. Throws `InputError` for negative currents or an RMS below the mean.
 */
export function diodeWatts(options: { readonly model: DiodeModel; readonly meanAmps: number; readonly rmsAmps: number }): number {
  const { saturationAmps, emission, ohms } = options.model;
  const meanAmps = requireNumber('meanAmps', options.meanAmps, { min: 0, max: 1000 });
  const rmsAmps = requireNumber('rmsAmps', options.rmsAmps, { min: meanAmps * (1 - 1e-9), max: 1e4 });
  if (meanAmps === 0) return 0;
  const weighted = (rmsAmps * rmsAmps) / meanAmps;
  return emission * THERMAL_VOLTS * Math.log1p(weighted / saturationAmps) * meanAmps + ohms * rmsAmps * rmsAmps;
}

/**
 * Largest reverse leakage at a junction temperature, amps, from the row's limits: its hot figure, doubling every 10 K
 * from there and not below the figure at 25 °C. −40 to 175 °C. The doubling is typical of silicon and Schottky alike.
 */
export function diodeLeakageAmps(options: { readonly part: DiodePart; readonly celsius: number }): number {
  const { coldAmps, hotAmps, hotCelsius } = options.part.leakage;
  const celsius = requireNumber('celsius', options.celsius, { min: -40, max: 175 });
  return Math.max(coldAmps, hotAmps * 2 ** ((celsius - hotCelsius) / 10));
}

/**
 * The lowest-rated type of a family whose repetitive reverse voltage is at least `reverseVolts` times `factor`
 * (default 2, the usual allowance over the solved peak at high mains without load); `undefined` when none reaches it.
 */
export function diodeTypeFor(options: {
  readonly part: DiodePart;
  readonly reverseVolts: number;
  readonly factor?: number;
}): DiodePart['types'][number] | undefined {
  const needed = requireNumber('reverseVolts', options.reverseVolts, { min: 0, max: 1e5 }) * requireNumber('factor', options.factor ?? 2, { min: 1, max: 10 });
  return options.part.types.find((type) => type.reverseVolts >= needed);
}
