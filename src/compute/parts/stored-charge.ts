import { requireNumber } from '../errors.ts';

const FARADS = { min: 1e-12, max: 10 };
const VOLTS = { min: 0, max: 2000 };

/** Touch limit for direct voltage, volts: below it a contact is not counted as live, which does not make it empty. */
export const TOUCH_LIMIT_VOLTS = 60;

/** Energy in a capacitor, joules: CV²/2. */
export function storedJoules(options: { readonly farads: number; readonly volts: number }): number {
  const volts = requireNumber('volts', options.volts, VOLTS);
  return (requireNumber('farads', options.farads, FARADS) * volts * volts) / 2;
}

/**
 * Time for a capacitor to fall from one voltage to another through a resistor, seconds: RC·ln(V₀/V₁); 0 when it is
 * already there. Assumes the resistor is whole: bleeders fail open, and a reservoir recovers a part of its volts.
 * 1 Ω–100 MΩ; target above 0.
 */
export function bleedSeconds(options: { readonly farads: number; readonly ohms: number; readonly fromVolts: number; readonly toVolts?: number }): number {
  const farads = requireNumber('farads', options.farads, FARADS);
  const ohms = requireNumber('ohms', options.ohms, { min: 1, max: 1e8 });
  const from = requireNumber('fromVolts', options.fromVolts, VOLTS);
  const to = requireNumber('toVolts', options.toVolts ?? TOUCH_LIMIT_VOLTS, { min: 1e-3, max: 2000 });
  return from <= to ? 0 : ohms * farads * Math.log(from / to);
}

/** Heat in a bleeder with the supply on, watts: V²/R. */
export function bleederWatts(options: { readonly ohms: number; readonly volts: number }): number {
  const volts = requireNumber('volts', options.volts, VOLTS);
  return (volts * volts) / requireNumber('ohms', options.ohms, { min: 1, max: 1e8 });
}
