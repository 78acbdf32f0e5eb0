import { InputError, requireNumber } from '../errors.ts';
import { COLD_INRUSH, HEATERS } from './heater-rows.ts';
import type { HeaterRow } from './heater-rows.ts';

export { COLD_INRUSH, HEATERS, HEATER_TOLERANCE } from './heater-rows.ts';
export type { HeaterRow } from './heater-rows.ts';

/** The row with this id. Throws `InputError` when there is none. */
export function heaterRow(id: string): HeaterRow {
  const found = HEATERS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('heater', id, { expected: HEATERS.map((row) => row.id).join(', ') });
  return found;
}

/** A heater hot: rated volts and amps. */
export interface HeaterRating {
  readonly volts: number;
  readonly amps: number;
}

export interface HeaterString {
  /** Volts for the whole string, amps through it (the mean of the ratings), hot ohms. */
  readonly volts: number;
  readonly amps: number;
  readonly ohms: number;
  /** Volts that each heater gets when the string has its rated volts, in order, on hot resistances. */
  readonly shares: readonly number[];
  /** Largest deviation of a share from that heater's rated volts, ratio. */
  readonly mismatch: number;
}

/**
 * Heaters in series. They carry one current, so they must be rated for the same one: those rated for less get more
 * than their volts. The shares use rated hot resistances; the true mismatch is somewhat larger, since a heater that is
 * over-fed grows in resistance. One to 20 heaters, 0.5–100 V and 10 mA–10 A each.
 */
export function seriesHeaters(heaters: readonly HeaterRating[]): HeaterString {
  if (heaters.length < 1 || heaters.length > 20) throw new InputError('heaters', heaters.length, { min: 1, max: 20 });
  const checked = heaters.map(({ volts, amps }) => ({
    volts: requireNumber('heater.volts', volts, { min: 0.5, max: 100 }),
    amps: requireNumber('heater.amps', amps, { min: 0.01, max: 10 }),
  }));
  const total = checked.reduce((sum, { volts }) => sum + volts, 0);
  const ohms = checked.reduce((sum, { volts, amps }) => sum + volts / amps, 0);
  const amps = total / ohms;
  const shares = checked.map((each) => (amps * each.volts) / each.amps);
  return { volts: total, amps, ohms, shares, mismatch: Math.max(...checked.map((each, at) => Math.abs((shares[at] ?? 0) / each.volts - 1))) };
}

/** A heater as a lump of heat whose resistance follows its temperature. */
export interface HeaterModel extends HeaterRating {
  readonly hotOhms: number;
  readonly hotKelvin: number;
  readonly airKelvin: number;
  /** R = hotOhms · (T/hotKelvin)^exponent. */
  readonly exponent: number;
  readonly joulesPerKelvin: number;
}

// Heaters of indirectly heated valves run at about 1300 to 1400 K; tungsten there has 6.0 to 6.6 times its resistance at
// room temperature.
const HOT_KELVIN = 1350;
const AIR_KELVIN = 298;

const loss = (share: number, air: number): number => (share ** 4 - air ** 4) / (1 - air ** 4);

/** Time to come within a tenth of hot current at rated volts, in units of heat content over rated watts. */
function warmUpInUnits(exponent: number, air: number): number {
  const end = 1.1 ** (-1 / exponent);
  const steps = 400;
  const width = (end - air) / steps;
  let sum = 0;
  for (let step = 0; step < steps; step += 1) {
    const share = air + (step + 0.5) * width;
    sum += width / (share ** -exponent - loss(share, air));
  }
  return sum;
}

/**
 * Thermal model of a heater, or of equal heaters as one: heat content C, loss by radiation as T⁴, resistance as a power
 * of T that gives `coldRatio` (hot over cold resistance, so cold inrush over hot current; default 6, seen 2.7 to 7.2).
 * C is set so that at rated volts the current comes within a tenth of its hot value after `warmUpSeconds` (default 15).
 *
 * A model, not a measurement: one lump for heater and cathode sleeve, so the shape of the first tenth of a second is
 * sharper in truth. Volts 0.5–200, amps 10 mA–50 A, ratio 2–8, warm-up 1–60 s. Throws `InputError` outside.
 */
export function heaterModel(options: HeaterRating & { readonly coldRatio?: number; readonly warmUpSeconds?: number }): HeaterModel {
  const volts = requireNumber('volts', options.volts, { min: 0.5, max: 200 });
  const amps = requireNumber('amps', options.amps, { min: 0.01, max: 50 });
  const coldRatio = requireNumber('coldRatio', options.coldRatio ?? COLD_INRUSH.typical, { min: 2, max: 8 });
  const warmUpSeconds = requireNumber('warmUpSeconds', options.warmUpSeconds ?? 15, { min: 1, max: 60 });
  const exponent = Math.log(coldRatio) / Math.log(HOT_KELVIN / AIR_KELVIN);
  const unitSeconds = warmUpSeconds / warmUpInUnits(exponent, AIR_KELVIN / HOT_KELVIN);
  return { volts, amps, hotOhms: volts / amps, hotKelvin: HOT_KELVIN, airKelvin: AIR_KELVIN, exponent, joulesPerKelvin: (unitSeconds * volts * amps) / HOT_KELVIN };
}

/** Resistance of the model at a temperature, ohms. Kelvin 200–4000. */
export function heaterOhms(options: { readonly model: HeaterModel; readonly kelvin: number }): number {
  const { model } = options;
  return model.hotOhms * (requireNumber('kelvin', options.kelvin, { min: 200, max: 4000 }) / model.hotKelvin) ** model.exponent;
}

/** Rate of change of the model's temperature, K/s, with `watts` going in: the differential equation to solve in time. */
export function heaterKelvinPerSecond(options: { readonly model: HeaterModel; readonly kelvin: number; readonly watts: number }): number {
  const { model } = options;
  const kelvin = requireNumber('kelvin', options.kelvin, { min: 200, max: 4000 });
  const out = model.volts * model.amps * loss(kelvin / model.hotKelvin, model.airKelvin / model.hotKelvin);
  return (requireNumber('watts', options.watts) - out) / model.joulesPerKelvin;
}
