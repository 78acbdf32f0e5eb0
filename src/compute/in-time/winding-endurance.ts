import { requireNumber } from '../errors.ts';
import { windingKelvinPerSecond } from './winding-heating.ts';
import type { WindingHeat } from './winding-heating.ts';

const LONGEST_SECONDS = 7200;
/** A step warms by this much at most. */
const STEP_KELVIN = 2;

/**
 * How long a winding bears a steady RMS current from `startCelsius` until it passes `limitCelsius`: what a fuse must
 * beat. Undefined when it never does within two hours. Heat as `windingHeat` has it, an estimate; the current is held,
 * though copper that warms would lower that of a short. Midpoint rule, 2 K a step.
 *
 * Amps 0 to 10 kA, temperatures −40 to 400 °C. Throws `InputError` outside.
 */
export function windingEndurance(options: {
  readonly heat: WindingHeat;
  readonly rmsAmps: number;
  readonly airCelsius: number;
  readonly startCelsius?: number;
  readonly limitCelsius: number;
}): number | undefined {
  const { heat } = options;
  const rmsAmps = requireNumber('rmsAmps', options.rmsAmps, { min: 0, max: 1e4 });
  const airCelsius = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 120 });
  const limit = requireNumber('limitCelsius', options.limitCelsius, { min: -40, max: 400 });
  let celsius = requireNumber('startCelsius', options.startCelsius ?? airCelsius, { min: -40, max: 400 });
  const rate = (at: number): number => windingKelvinPerSecond({ heat, celsius: at, airCelsius, rmsAmps });
  let seconds = 0;
  while (celsius < limit) {
    const first = rate(celsius);
    if (first < 1e-4) return undefined;
    const kelvin = Math.min(STEP_KELVIN, limit - celsius);
    seconds += kelvin / Math.max(rate(celsius + kelvin / 2), 1e-9);
    if (seconds > LONGEST_SECONDS) return undefined;
    celsius += kelvin;
  }
  return seconds;
}
