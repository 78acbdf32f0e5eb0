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
  const cosines = cosinesOf(samples);
  const quarter = (3 * samples) / 4;
  const sine = (at: number): number => (samples % 4 === 0 ? (cosines[(at + quarter) % samples] as number) : Math.sin((2 * Math.PI * at) / samples));
  const harmonics: Harmonic[] = [];
  let held = 0;
  for (let order = 1; order <= orders; order += 1) {
    let real = 0;
    let imaginary = 0;
    for (let k = 0; k < samples; k += 1) {
      // Every angle is one of those of the first order: one table serves all.
      const at = (order * k) % samples;
      real += (values[k] as number) * (cosines[at] as number);
      imaginary -= (values[k] as number) * sine(at);
    }
    const rms = (Math.hypot(real, imaginary) * Math.SQRT2) / samples;
    held += rms * rms;
    harmonics.push({ order, hertz: order * hertz, rms, phase: Math.atan2(imaginary, real) });
  }
  return { mean, harmonics, alternatingRms: Math.sqrt(square), heldRms: Math.sqrt(held) };
}

/** One turn's cosines in even parts. */
const cosinesOf = (samples: number): Float64Array => Float64Array.from({ length: samples }, (_, k) => Math.cos((2 * Math.PI * k) / samples));

/** The wave that harmonics make, even samples of one period of `hertz`, both ends included. */
export function waveOf(options: { readonly harmonics: readonly Harmonic[]; readonly mean?: number; readonly samples?: number }): Float64Array {
  const { harmonics, mean = 0, samples = 512 } = options;
  return Float64Array.from({ length: samples + 1 }, (_, k) =>
    harmonics.reduce((sum, { order, rms, phase }) => sum + rms * Math.SQRT2 * Math.cos((2 * Math.PI * order * k) / samples + phase), mean));
}
