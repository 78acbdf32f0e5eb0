import { describe, expect, it } from 'vitest';
import { LinearSolver } from '../../../src/compute/network/linear-solver.ts';
import { solveWhatIsDetermined } from '../../../src/compute/network/null-solve.ts';
import { seeded } from './seeded-circuits.ts';

describe('LinearSolver', () => {
  it('gives back the solution of random systems, the reference place passed over', () => {
    const random = seeded(3);
    for (let n = 1; n <= 12; n += 1) {
      const stride = n + 1;
      const matrix = Float64Array.from({ length: stride * stride }, () => random() - 0.5);
      const solution = Float64Array.from({ length: stride }, () => random() - 0.5);
      const rhs = new Float64Array(stride);
      for (let i = 1; i <= n; i += 1) for (let j = 1; j <= n; j += 1) rhs[i] = (rhs[i] as number) + (matrix[i * stride + j] as number) * (solution[j] as number);
      const solver = new LinearSolver(n);
      expect(solver.factor(matrix)).toBe(true);
      solver.solve(rhs);
      for (let i = 1; i <= n; i += 1) expect(rhs[i]).toBeCloseTo(solution[i] as number, 8);
    }
  });
  it('says so when the matrix is singular', () => {
    expect(new LinearSolver(2).factor(Float64Array.of(0, 0, 0, 0, 1, 2, 0, 2, 4))).toBe(false);
  });
});

describe('solveWhatIsDetermined', () => {
  it('solves what can be solved and leaves the rest alone', () => {
    const { x, contradiction } = solveWhatIsDetermined(Float64Array.of(2, 0, 0, 0, 0, 0, 0, 0, 4), Float64Array.of(2, 0, 8), 1e-12);
    expect([...x]).toEqual([1, 0, 2]);
    expect(contradiction).toBe(0);
  });
  it('reports what an equation without unknowns still asks for', () => {
    expect(solveWhatIsDetermined(Float64Array.of(1, 0, 0, 0), Float64Array.of(1, 0.25), 1e-12).contradiction).toBe(0.25);
  });
});
