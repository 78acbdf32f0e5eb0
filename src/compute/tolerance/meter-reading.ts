import { InputError } from '../errors.ts';
import { waveformMean, waveformRms } from '../network/waveform.ts';

/** What a meter does with a wave: its mean; the RMS of all but its mean; or the mean size of all but its mean, scaled for a sine. */
export type MeterKind = 'dc' | 'true-rms-ac' | 'averaging-ac';

export interface MeterReading {
  /** What the display shows. */
  readonly value: number;
  /** Peak over RMS of what the range sees; 1 on DC. Hand-held true-RMS meters are good to about 3 at full scale. */
  readonly crestFactor: number;
  readonly crestIsHigh: boolean;
}

/** RMS over rectified mean of a sine, π/(2√2): what an averaging meter multiplies by. */
export const SINE_FORM_FACTOR = Math.PI / (2 * Math.SQRT2);
/** Crest factor to which hand-held true-RMS meters hold their accuracy at full scale. Typical. */
const CREST_LIMIT = 3;

/** Mean size of a wave about a level, joined by straight lines, those that cross the level split at the crossing. */
function meanSize(values: Float64Array, seconds: Float64Array | undefined, level: number): number {
  let area = 0;
  let span = 0;
  for (let k = 1; k < values.length; k += 1) {
    const h = seconds ? (seconds[k] as number) - (seconds[k - 1] as number) : 1;
    const a = (values[k - 1] as number) - level;
    const b = (values[k] as number) - level;
    span += h;
    area += a * b >= 0 ? (h * Math.abs(a + b)) / 2 : (h * (a * a + b * b)) / (2 * Math.abs(a - b));
  }
  return area / span;
}

/**
 * What a meter shows on a solved wave: one or more whole periods, both ends included, evenly sampled unless `seconds` are given.
 *
 * AC ranges are coupled through a capacitor and see no mean. Within their bandwidth: ripple at 100 Hz and its harmonics is.
 * A true-RMS meter is right on ripple; an averaging one is right on a sine only (on a sawtooth it shows 4 % less, on a
 * square wave 11 % more, on narrow pulses far too little). Throws `InputError` for fewer than two samples.
 */
export function meterReading(options: { readonly values: Float64Array; readonly seconds?: Float64Array; readonly meter: MeterKind }): MeterReading {
  const { values, seconds, meter } = options;
  const mean = waveformMean(values, seconds);
  if (meter === 'dc') return { value: mean, crestFactor: 1, crestIsHigh: false };
  const rms = waveformRms(values.map((value) => value - mean), seconds);
  const peak = values.reduce((most, value) => Math.max(most, Math.abs(value - mean)), 0);
  const crestFactor = rms > 0 ? peak / rms : 1;
  const crestIsHigh = crestFactor > CREST_LIMIT;
  switch (meter) {
    case 'true-rms-ac':
      return { value: rms, crestFactor, crestIsHigh };
    case 'averaging-ac':
      return { value: SINE_FORM_FACTOR * meanSize(values, seconds, mean), crestFactor, crestIsHigh };
    default:
      throw new InputError('meter', meter, { expected: 'dc, true-rms-ac or averaging-ac' });
  }
}
