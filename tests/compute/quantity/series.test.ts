import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestPreferred, nextPreferredDown, nextPreferredUp, preferredValues } from '../../../src/compute/quantity.ts';
import type { PreferredSeries } from '../../../src/compute/quantity.ts';

const SERIES: PreferredSeries[] = ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'];

describe('preferred values of IEC 60063', () => {
  it('are the printed ones in the coarse series', () => {
    expect(preferredValues('E3')).toEqual([1, 2.2, 4.7]);
    expect(preferredValues('E6')).toEqual([1, 1.5, 2.2, 3.3, 4.7, 6.8]);
    expect(preferredValues('E12')).toEqual([1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2]);
    expect(preferredValues('E24').filter((value) => !preferredValues('E12').includes(value))).toEqual([1.1, 1.3, 1.6, 2, 2.4, 3, 3.6, 4.3, 5.1, 6.2, 7.5, 9.1]);
  });

  it('follow the geometric series in the fine ones, with the one exception of E192', () => {
    expect(preferredValues('E96').slice(0, 6)).toEqual([1, 1.02, 1.05, 1.07, 1.1, 1.13]);
    expect(preferredValues('E96')).toContain(9.76);
    expect(preferredValues('E48').every((value) => preferredValues('E96').includes(value))).toBe(true);
    expect(preferredValues('E192')).toContain(9.2);
    expect(preferredValues('E192')).not.toContain(9.19);
  });

  it.each(SERIES)('%s has its number of values, ascending', (series) => {
    const values = preferredValues(series);
    expect(values).toHaveLength(Number(series.slice(1)));
    expect([...values].sort((a, b) => a - b)).toEqual(values);
  });
});

describe('choosing a preferred value', () => {
  it('finds neighbours within and across decades', () => {
    expect(nearestPreferred({ value: 1160, series: 'E12' })).toBe(1200);
    expect(nextPreferredUp({ value: 1160, series: 'E24' })).toBe(1200);
    expect(nextPreferredDown({ value: 1160, series: 'E24' })).toBe(1100);
    expect(nextPreferredUp({ value: 9500, series: 'E24' })).toBe(10_000);
    expect(nearestPreferred({ value: 9700, series: 'E12' })).toBe(10_000);
    expect(nextPreferredDown({ value: 0.0021, series: 'E6' })).toBe(0.0015);
    expect(nextPreferredUp({ value: 0.0047, series: 'E6' })).toBe(0.0047);
    expect(nextPreferredDown({ value: 0.0047, series: 'E6' })).toBe(0.0047);
  });

  it('brackets any value, and the nearest is one of the two', () => {
    fc.assert(
      fc.property(fc.double({ min: -11, max: 8, noNaN: true }), fc.constantFrom(...SERIES), (power, series) => {
        const value = 10 ** power;
        const up = nextPreferredUp({ value, series });
        const down = nextPreferredDown({ value, series });
        expect(down).toBeLessThanOrEqual(value * (1 + 1e-9));
        expect(up).toBeGreaterThanOrEqual(value * (1 - 1e-9));
        expect([up, down]).toContain(nearestPreferred({ value, series }));
      }),
      { seed: 24, numRuns: 1000 },
    );
  });

  it('refuses what has no neighbours', () => {
    for (const value of [0, -1, NaN, Infinity]) expect(() => nearestPreferred({ value, series: 'E12' })).toThrow(RangeError);
    expect(() => preferredValues('E13' as PreferredSeries)).toThrow(RangeError);
  });
});
