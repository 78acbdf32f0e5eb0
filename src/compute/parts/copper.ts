import { requireNumber } from '../errors.ts';

/** Resistivity of annealed copper at 20 °C, Ω·m (International Annealed Copper Standard). */
export const COPPER_OHM_METRES = 1.724e-8;

// Copper's resistance runs in a straight line to zero at −234.5 °C: 0.00393 per kelvin at 20 °C.
const COPPER_ZERO_CELSIUS = -234.5;

/**
 * Ratio of a copper winding's resistance at `toCelsius` to that at `fromCelsius`: (234.5 + T₁)/(234.5 + T₀).
 * For −60 to 1000 °C, though no winding lives beyond 300 °C. Throws `InputError` outside.
 * Source: relay maker's note on coil temperature.
 */
export function copperRatio(options: { readonly fromCelsius: number; readonly toCelsius: number }): number {
  const from = requireNumber('fromCelsius', options.fromCelsius, { min: -60, max: 1000 });
  const to = requireNumber('toCelsius', options.toCelsius, { min: -60, max: 1000 });
  return (to - COPPER_ZERO_CELSIUS) / (from - COPPER_ZERO_CELSIUS);
}

/**
 * Mean temperature of a copper winding from its resistance cold and hot, °C.
 * `coldOhms` at `coldCelsius` (everything soaked at that temperature), `hotOhms` read at once after switching off.
 * Resistances from 1 µΩ. Throws `InputError` for values outside. Source: the standard method of temperature rise by
 * resistance (IEC 61558-1).
 */
export function temperatureByResistance(options: {
  readonly coldOhms: number;
  readonly coldCelsius: number;
  readonly hotOhms: number;
}): number {
  const coldOhms = requireNumber('coldOhms', options.coldOhms, { min: 1e-6, max: 1e9 });
  const hotOhms = requireNumber('hotOhms', options.hotOhms, { min: 1e-6, max: 1e9 });
  const coldCelsius = requireNumber('coldCelsius', options.coldCelsius, { min: -60, max: 300 });
  return (hotOhms / coldOhms) * (coldCelsius - COPPER_ZERO_CELSIUS) + COPPER_ZERO_CELSIUS;
}
