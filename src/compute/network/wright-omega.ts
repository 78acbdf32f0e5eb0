/**
 * The real Wright omega function: the positive w with w + ln w = z.
 *
 * It is what a diode in series with a resistance asks for: from v = N·ln(x/Is) + a·x follows x = (N/a)·ω(v/N + ln(a·Is/N)),
 * with no exponential that could overflow, so that a Newton step on junction voltage is never needed.
 *
 * Any finite z; full double precision. Source: R. M. Corless and D. J. Jeffrey, "The Wright ω function" (2002); the
 * correction step is that of Fritsch, Shafer and Crowley, "Algorithm 443" (CACM 16, 1973), fourth order.
 */
export function wrightOmega(z: number): number {
  if (z < -12) {
    // The series of the Lambert function about zero: the next term is below rounding here.
    const e = Math.exp(z);
    return e * (1 - e * (1 - 1.5 * e));
  }
  let w: number;
  if (z < -1.5) {
    const e = Math.exp(z);
    // Two terms of the series of the Lambert function about zero, in a rational form that stays positive.
    w = e / (1 + e);
  } else if (z < 3) {
    // Taylor expansion about z = 1, where omega is 1.
    const s = z - 1;
    w = 1 + s * (0.5 + s * (1 / 16 - s / 192));
  } else {
    const l = Math.log(z);
    w = z - l + l / z;
  }
  for (let i = 0; i < 4; i += 1) {
    const r = z - w - Math.log(w);
    const p = w + 1;
    const q = 2 * p * (p + (2 / 3) * r);
    w *= 1 + ((r / p) * (q - r)) / (q - 2 * r);
    // Fourth order: a residual this small before the step is below rounding after it.
    if (Math.abs(r) < 2e-4 * p) break;
  }
  return w;
}
