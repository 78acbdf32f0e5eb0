import { InputError } from '../errors.ts';

/**
 * Figures of a sampled quantity, such as the solvers return. Each takes the values and, where samples are uneven, the
 * times they belong to; without times they are taken for even. Integrals join the samples by straight lines, so one
 * whole period needs both of its ends, as the solvers give it. At least two samples, of equal count. Throw `InputError`.
 */
function integral(values: Float64Array, seconds: Float64Array | undefined, of: (a: number, b: number) => number): number {
  const n = values.length;
  if (n < 2) throw new InputError('values', n, { expected: 'at least two samples' });
  if (seconds && seconds.length !== n) throw new InputError('seconds', seconds.length, { expected: `${n} samples` });
  let total = 0;
  for (let i = 1; i < n; i += 1) {
    const h = seconds ? (seconds[i] as number) - (seconds[i - 1] as number) : 1;
    total += h * of(values[i - 1] as number, values[i] as number);
  }
  return total / (seconds ? (seconds[n - 1] as number) - (seconds[0] as number) : n - 1);
}

/** Mean over the sampled span. */
export function waveformMean(values: Float64Array, seconds?: Float64Array): number {
  return integral(values, seconds, (a, b) => (a + b) / 2);
}

/** Root mean square over the sampled span (exact for straight lines between samples). */
export function waveformRms(values: Float64Array, seconds?: Float64Array): number {
  return Math.sqrt(integral(values, seconds, (a, b) => (a * a + a * b + b * b) / 3));
}

/** Mean of the product of two quantities: volts and amps give watts. */
export function waveformMeanProduct(first: Float64Array, second: Float64Array, seconds?: Float64Array): number {
  if (first.length !== second.length) throw new InputError('second', second.length, { expected: `${first.length} samples` });
  return waveformMean(first.map((v, i) => v * (second[i] as number)), seconds);
}

/** Smallest sample. */
export function waveformMin(values: Float64Array): number {
  return values.reduce((a, b) => Math.min(a, b), Infinity);
}

/** Largest sample. */
export function waveformMax(values: Float64Array): number {
  return values.reduce((a, b) => Math.max(a, b), -Infinity);
}

/** Largest magnitude of a sample. */
export function waveformPeak(values: Float64Array): number {
  return values.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
}
