import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { seededRandom } from '../../../src/compute/tolerance/random.ts';

const draw = (seed: number, count: number): number[] => {
  const { next } = seededRandom(seed);
  return Array.from({ length: count }, next);
};

describe('the seeded source', () => {
  it('repeats with its seed and not without', () => {
    expect(draw(7, 20)).toEqual(draw(7, 20));
    expect(draw(7, 20)).not.toEqual(draw(8, 20));
  });

  it('is even, in tenths and in pairs, and uncorrelated from one draw to the next', () => {
    const values = draw(3, 40_000);
    const tenths = new Array<number>(10).fill(0);
    for (const value of values) tenths[Math.floor(value * 10)] = (tenths[Math.floor(value * 10)] as number) + 1;
    // Nine degrees of freedom: beyond 28 only once in a thousand seeds.
    expect(tenths.reduce((sum, count) => sum + (count - 4000) ** 2 / 4000, 0)).toBeLessThan(28);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean).toBeCloseTo(0.5, 2);
    let together = 0;
    for (let k = 1; k < values.length; k += 1) together += ((values[k - 1] as number) - 0.5) * ((values[k] as number) - 0.5);
    expect(Math.abs((together * 12) / values.length)).toBeLessThan(0.02);
  });

  it('stays between its ends, and gathers in the middle where asked', () => {
    const { between, around } = seededRandom(1);
    const flat = Array.from({ length: 5000 }, () => between(-2, 3));
    const peaked = Array.from({ length: 5000 }, () => around(-2, 3));
    for (const value of [...flat, ...peaked]) {
      expect(value).toBeGreaterThanOrEqual(-2);
      expect(value).toBeLessThan(3);
    }
    const near = (values: number[]): number => values.filter((value) => Math.abs(value - 0.5) < 0.625).length / values.length;
    expect(near(flat)).toBeCloseTo(0.25, 1);
    expect(near(peaked)).toBeCloseTo(0.4375, 1);
  });

  it('refuses a seed that is none', () => {
    expect(() => seededRandom(-1)).toThrow(InputError);
    expect(() => seededRandom(NaN)).toThrow(InputError);
  });
});
