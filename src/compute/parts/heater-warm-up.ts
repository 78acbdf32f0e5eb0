import { InputError, requireNumber } from '../errors.ts';
import { heaterKelvinPerSecond, heaterOhms } from './heater.ts';
import type { HeaterModel } from './heater.ts';

// Far beyond any heater's life; tungsten itself melts at 3695 K.
const BURNT_OUT_KELVIN = 3000;

export interface HeaterWarmUp {
  readonly seconds: Float64Array;
  readonly volts: Float64Array;
  readonly amps: Float64Array;
  readonly kelvin: Float64Array;
  /** Largest current, at the first instant. */
  readonly inrushAmps: number;
  /** When the current has come within a tenth of its last value; `undefined` while it still warms, or the limit still holds it, at the end. */
  readonly settledSeconds?: number;
}

/**
 * A cold heater on a DC source of `sourceVolts` behind `sourceOhms`, that gives no more than `limitAmps` (constant
 * current), solved in time from room temperature by fourth-order steps of a few tens of milliseconds.
 *
 * Follows the heater model's assumptions. A source that hiccups or folds back is a matter for its own solution.
 * Volts 0–500, ohms 0–1e4, limit above zero, seconds 0.1–600. Throws `InputError` outside, and for a source that burns
 * the heater out.
 */
export function warmUpHeater(options: {
  readonly model: HeaterModel;
  readonly sourceVolts: number;
  readonly sourceOhms?: number;
  readonly limitAmps?: number;
  readonly seconds?: number;
}): HeaterWarmUp {
  const { model } = options;
  const sourceVolts = requireNumber('sourceVolts', options.sourceVolts, { min: 0, max: 500 });
  const sourceOhms = requireNumber('sourceOhms', options.sourceOhms ?? 0, { min: 0, max: 1e4 });
  const limitAmps = options.limitAmps === undefined ? Infinity : requireNumber('limitAmps', options.limitAmps, { min: 1e-6, max: 1e4 });
  const seconds = requireNumber('seconds', options.seconds ?? 60, { min: 0.1, max: 600 });

  const ampsAt = (kelvin: number): number => Math.min(limitAmps, sourceVolts / (sourceOhms + heaterOhms({ model, kelvin })));
  const slope = (at: number): number => {
    // A trial step may overshoot; a real one past this is a burnt-out heater.
    const kelvin = Math.min(Math.max(at, 200), BURNT_OUT_KELVIN);
    const amps = ampsAt(kelvin);
    return heaterKelvinPerSecond({ model, kelvin, watts: amps * amps * heaterOhms({ model, kelvin }) });
  };

  // The quickest change is that of the cold inrush: hold a step to a hundredth of the heat content it would take to
  // double the temperature, and to what a plot can show.
  const quickest = Math.max(Math.abs(slope(model.airKelvin)), 1);
  const steps = Math.min(20_000, Math.max(600, Math.ceil((seconds * quickest) / (0.02 * model.airKelvin))));
  const step = seconds / steps;
  const size = steps + 1;
  const out = { seconds: new Float64Array(size), volts: new Float64Array(size), amps: new Float64Array(size), kelvin: new Float64Array(size) };
  let kelvin = model.airKelvin;
  for (let at = 0; at < size; at += 1) {
    const amps = ampsAt(kelvin);
    out.seconds[at] = at * step;
    out.amps[at] = amps;
    out.volts[at] = amps * heaterOhms({ model, kelvin });
    out.kelvin[at] = kelvin;
    const k1 = slope(kelvin);
    const k2 = slope(kelvin + (step / 2) * k1);
    const k3 = slope(kelvin + (step / 2) * k2);
    const k4 = slope(kelvin + step * k3);
    kelvin += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    if (kelvin >= BURNT_OUT_KELVIN) {
      throw new InputError('sourceVolts', sourceVolts, { expected: `a source that does not burn out a heater of ${model.volts} V` });
    }
  }
  const last = out.amps.at(-1) ?? 0;
  const steady = Math.abs(slope(out.kelvin.at(-1) ?? model.airKelvin)) < 1 && last < limitAmps;
  const settled = steady ? out.seconds[out.amps.findIndex((amps) => amps < limitAmps && Math.abs(amps - last) <= 0.1 * last)] : undefined;
  return { ...out, inrushAmps: out.amps[0] ?? 0, ...(settled === undefined ? {} : { settledSeconds: settled }) };
}
