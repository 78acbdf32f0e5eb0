import { InputError, requireNumber } from '../errors.ts';

/** One sine of a repeating wave. */
export interface Harmonic {
  /** Times the frequency of the period. */
  readonly order: number;
  readonly hertz: number;
  readonly rms: number;
  /** Of cos(2π·order·f·t + phase), radians. */
  readonly phase: number;
}

export interface Spectrum {
  readonly mean: number;
  readonly harmonics: readonly Harmonic[];
  /** Root of the mean square of all of the wave but its mean, and the part of it that the harmonics hold. */
  readonly alternatingRms: number;
  readonly heldRms: number;
}

const MOST_ORDERS = 400;

/**
 * Harmonics of one period of even samples, the last of which repeats the first, by direct Fourier sums. Exact for
 * harmonics well below half the samples of the period; a pulse's corners put a little of what lies above onto those
 * below, less than 1 % up to a tenth of the sample count. `orders` (default 40) to 400 and below half the samples.
 * Throws `InputError` for fewer than 17 samples or too many orders.
 */
export function harmonicsOf(options: { readonly values: ArrayLike<number>; readonly hertz: number; readonly orders?: number }): Spectrum {
  const { values } = options;
  const hertz = requireNumber('hertz', options.hertz, { min: 0.1, max: 1e6 });
  const samples = values.length - 1;
  if (samples < 16) throw new InputError('values', values.length, { expected: 'at least 17 samples of one period' });
  const orders = requireNumber('orders', options.orders ?? Math.min(40, Math.floor((samples - 1) / 2)), { min: 1, max: Math.min(MOST_ORDERS, (samples - 1) / 2) });
  let mean = 0;
  for (let k = 0; k < samples; k += 1) mean += (values[k] as number) / samples;
  let square = 0;
  for (let k = 0; k < samples; k += 1) square += ((values[k] as number) - mean) ** 2 / samples;
  const { cosines, sines } = oneTurn(samples);
  const harmonics: Harmonic[] = [];
  let held = 0;
  for (let order = 1; order <= orders; order += 1) {
    let real = 0;
    let imaginary = 0;
    let at = 0;
    for (let k = 0; k < samples; k += 1) {
      real += (values[k] as number) * (cosines[at] as number);
      imaginary -= (values[k] as number) * (sines[at] as number);
      at = (at + order) % samples;
    }
    const rms = (Math.hypot(real, imaginary) * Math.SQRT2) / samples;
    held += rms * rms;
    harmonics.push({ order, hertz: order * hertz, rms, phase: Math.atan2(imaginary, real) });
  }
  return { mean, harmonics, alternatingRms: Math.sqrt(square), heldRms: Math.sqrt(held) };
}

/** One turn in even parts. Every angle of a higher order is one of those of the first: one table serves all. */
function oneTurn(samples: number): { readonly cosines: Float64Array; readonly sines: Float64Array } {
  const angle = (k: number): number => (2 * Math.PI * k) / samples;
  return { cosines: Float64Array.from({ length: samples }, (_, k) => Math.cos(angle(k))), sines: Float64Array.from({ length: samples }, (_, k) => Math.sin(angle(k))) };
}

/** The wave that harmonics make, even samples of one period, both ends included. */
export function waveOf(options: { readonly harmonics: readonly Harmonic[]; readonly mean?: number; readonly samples?: number }): Float64Array {
  const { harmonics, mean = 0, samples = 512 } = options;
  const { cosines, sines } = oneTurn(samples);
  const wave = new Float64Array(samples + 1).fill(mean);
  for (const { order, rms, phase } of harmonics) {
    const real = rms * Math.SQRT2 * Math.cos(phase);
    const imaginary = rms * Math.SQRT2 * Math.sin(phase);
    let at = 0;
    for (let k = 0; k <= samples; k += 1) {
      wave[k] = (wave[k] as number) + real * (cosines[at] as number) - imaginary * (sines[at] as number);
      at = (at + order) % samples;
    }
  }
  return wave;
}
