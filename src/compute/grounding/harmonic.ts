/**
 * Amplitude (peak) of one harmonic of a wave sampled evenly over one period, both ends included, as `solveNetwork`
 * gives it. `order` 1 is the period's own frequency. Source: Fourier's integral by the trapezoid rule.
 */
export function harmonicPeak(options: { readonly values: Float64Array; readonly order: number }): number {
  const { values, order } = options;
  const intervals = values.length - 1;
  let real = 0;
  let imaginary = 0;
  for (let i = 0; i < intervals; i += 1) {
    const angle = (2 * Math.PI * order * i) / intervals;
    real += (values[i] ?? 0) * Math.cos(angle);
    imaginary += (values[i] ?? 0) * Math.sin(angle);
  }
  return (2 / intervals) * Math.hypot(real, imaginary);
}
