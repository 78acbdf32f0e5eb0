import { describe, expect, it } from 'vitest';
import { DiodeArms } from '../../../src/compute/rectifier/diode-arms.ts';
import { seeded } from '../network/seeded-circuits.ts';

describe('DiodeArms', () => {
  it('satisfies both arm equations for 20,000 seeded drives, and its slopes are theirs', () => {
    const random = seeded(5);
    const spread = (low: number, high: number): number => low * (high / low) ** random();
    for (let k = 0; k < 20_000; k += 1) {
      const n = spread(2.6e-3, 0.4);
      const is = spread(1e-14, 1e-3);
      const own = spread(1e-4, 1);
      const shared = spread(1e-3, 1e3) * (random() < 0.5 ? 1 : -1);
      const ohms = own + Math.abs(shared);
      const drives = [(random() - 0.5) * 40, (random() - 0.5) * 40] as const;
      const arms = new DiodeArms(n, is);
      arms.solveTwo(drives[0], drives[1], ohms, shared);
      const misses = (amps: number, other: number, drive: number): number => {
        // So near to −Is the logarithm is of the rounding of amps, not of the current.
        if (amps / is <= -1 + 1e-6) return 0;
        const size = Math.abs(drive) + ohms * Math.abs(amps) + Math.abs(shared * other) + n;
        return Math.abs(n * Math.log1p(amps / is) + ohms * amps + shared * other - drive) / size;
      };
      expect(misses(arms.amps1, arms.amps2, drives[0])).toBeLessThan(1e-9);
      expect(misses(arms.amps2, arms.amps1, drives[1])).toBeLessThan(1e-9);
    }
  });
  it('gives slopes that a small change of drive confirms, with both arms conducting', () => {
    const arms = new DiodeArms(0.05, 1e-6);
    const at = (d1: number): readonly number[] => {
      arms.solveTwo(d1, 2, 1.2, 0.9);
      return [arms.amps1, arms.amps2];
    };
    const [a1 = 0, a2 = 0] = at(2.3 - 1e-6);
    const [b1 = 0, b2 = 0] = at(2.3 + 1e-6);
    at(2.3);
    expect(arms.siemens11).toBeCloseTo((b1 - a1) / 2e-6, 5);
    expect(arms.siemens12).toBeCloseTo((b2 - a2) / 2e-6, 5);
  });
});
