import { describe, expect, it } from 'vitest';
import { wrightOmega } from '../../../src/compute/network/wright-omega.ts';

describe('wrightOmega', () => {
  it('is 1 at 1, and 0.56714… (the solution of w·e^w = 1) at 0', () => {
    expect(wrightOmega(1)).toBeCloseTo(1, 15);
    expect(wrightOmega(0)).toBeCloseTo(0.5671432904097838, 14);
  });
  it('solves w + ln w = z over all that a diode meets', () => {
    for (let z = -40; z < 3000; z += z < 40 ? 0.013 : 17) {
      const w = wrightOmega(z);
      expect(Math.abs(w + Math.log(w) - z)).toBeLessThan(4e-14 * (1 + Math.abs(z)));
    }
  });
  it('vanishes as the exponential far below, without a step where the series takes over', () => {
    expect(wrightOmega(-700) / Math.exp(-700)).toBeCloseTo(1, 12);
    expect(wrightOmega(-12 - 1e-9) / wrightOmega(-12 + 1e-9)).toBeCloseTo(Math.exp(-2e-9), 12);
  });
});
