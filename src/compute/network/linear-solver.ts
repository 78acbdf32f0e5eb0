/** Below this a pivot is rounding, not a circuit: the least real conductance here is 1e-12 S. */
const LEAST_PIVOT = 1e-15;

/**
 * Dense LU factors of a small matrix, with row exchanges. The matrices and vectors given are those of `NodeEquations`:
 * one longer, their place 0 being the reference node's, which is passed over.
 */
export class LinearSolver {
  readonly size: number;
  readonly #lu: Float64Array;
  readonly #order: Int32Array;
  readonly #work: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.#lu = new Float64Array(size * size);
    this.#order = new Int32Array(size);
    this.#work = new Float64Array(size);
  }

  /** Factors the matrix; false when it is singular. */
  factor(matrix: Float64Array): boolean {
    const n = this.size;
    const stride = n + 1;
    const lu = this.#lu;
    const order = this.#order;
    for (let i = 0; i < n; i += 1) {
      order[i] = i;
      for (let j = 0; j < n; j += 1) lu[i * n + j] = matrix[(i + 1) * stride + j + 1] as number;
    }
    for (let k = 0; k < n; k += 1) {
      let best = k;
      let size = Math.abs(lu[k * n + k] as number);
      for (let i = k + 1; i < n; i += 1) {
        const s = Math.abs(lu[i * n + k] as number);
        if (s > size) {
          size = s;
          best = i;
        }
      }
      if (!(size > LEAST_PIVOT)) return false;
      if (best !== k) {
        for (let j = 0; j < n; j += 1) {
          const t = lu[k * n + j] as number;
          lu[k * n + j] = lu[best * n + j] as number;
          lu[best * n + j] = t;
        }
        const t = order[k] as number;
        order[k] = order[best] as number;
        order[best] = t;
      }
      const inverse = 1 / (lu[k * n + k] as number);
      for (let i = k + 1; i < n; i += 1) {
        const entry = lu[i * n + k] as number;
        if (entry === 0) continue;
        const f = entry * inverse;
        lu[i * n + k] = f;
        for (let j = k + 1; j < n; j += 1) lu[i * n + j] = (lu[i * n + j] as number) - f * (lu[k * n + j] as number);
      }
    }
    return true;
  }

  /** Solves in place for one right-hand side. */
  solve(rhs: Float64Array): void {
    const n = this.size;
    const lu = this.#lu;
    const y = this.#work;
    for (let i = 0; i < n; i += 1) {
      let s = rhs[(this.#order[i] as number) + 1] as number;
      for (let j = 0; j < i; j += 1) s -= (lu[i * n + j] as number) * (y[j] as number);
      y[i] = s;
    }
    for (let i = n - 1; i >= 0; i -= 1) {
      let s = y[i] as number;
      for (let j = i + 1; j < n; j += 1) s -= (lu[i * n + j] as number) * (rhs[j + 1] as number);
      rhs[i + 1] = s / (lu[i * n + i] as number);
    }
  }
}
