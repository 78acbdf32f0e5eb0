/**
 * Solves A·x = b for a small dense matrix by elimination with full pivoting, leaving unmoved (x = 0) whatever the
 * matrix does not determine: pivots below `threshold` are taken for zero. `contradiction` is the largest right-hand side
 * that such an equation was left with: near zero if it asked for nothing. A and b are consumed.
 */
export function solveWhatIsDetermined(
  a: Float64Array,
  b: Float64Array,
  threshold: number,
): { readonly x: Float64Array; readonly contradiction: number } {
  const n = b.length;
  const columns = Array.from({ length: n }, (_, i) => i);
  let rank = 0;
  for (; rank < n; rank += 1) {
    let row = rank;
    let column = rank;
    for (let i = rank; i < n; i += 1) {
      for (let j = rank; j < n; j += 1) {
        if (Math.abs(a[i * n + j] as number) > Math.abs(a[row * n + column] as number)) {
          row = i;
          column = j;
        }
      }
    }
    const pivot = a[row * n + column] as number;
    if (!(Math.abs(pivot) > threshold)) break;
    for (let j = 0; j < n; j += 1) {
      const t = a[rank * n + j] as number;
      a[rank * n + j] = a[row * n + j] as number;
      a[row * n + j] = t;
    }
    const t = b[rank] as number;
    b[rank] = b[row] as number;
    b[row] = t;
    for (let i = 0; i < n; i += 1) {
      const s = a[i * n + rank] as number;
      a[i * n + rank] = a[i * n + column] as number;
      a[i * n + column] = s;
    }
    const c = columns[rank] as number;
    columns[rank] = columns[column] as number;
    columns[column] = c;
    for (let i = rank + 1; i < n; i += 1) {
      const f = (a[i * n + rank] as number) / pivot;
      if (f === 0) continue;
      for (let j = rank; j < n; j += 1) a[i * n + j] = (a[i * n + j] as number) - f * (a[rank * n + j] as number);
      b[i] = (b[i] as number) - f * (b[rank] as number);
    }
  }
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  for (let i = rank - 1; i >= 0; i -= 1) {
    let s = b[i] as number;
    for (let j = i + 1; j < rank; j += 1) s -= (a[i * n + j] as number) * (y[j] as number);
    y[i] = s / (a[i * n + i] as number);
  }
  for (let i = 0; i < rank; i += 1) x[columns[i] as number] = y[i] as number;
  let contradiction = 0;
  for (let i = rank; i < n; i += 1) contradiction = Math.max(contradiction, Math.abs(b[i] as number));
  return { x, contradiction };
}
