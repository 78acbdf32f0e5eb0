import { describe, expect, it } from 'vitest';
import { loadedVolts, sagOfEstimate } from '../../../src/compute/parts/winding-sag.ts';

const bounded = (value: number, width: number) => ({ value, least: value - width, most: value + width });
const estimate = { openCircuitVolts: bounded(16.2, 0.2), ohms: bounded(0.48, 0.06) };

describe('the sag of an estimated winding', () => {
  it('is its lost volts over its loaded ones, between the limits of its resistance', () => {
    const { value, least, most } = sagOfEstimate({ estimate, amps: 2.5 });
    expect(value).toBeCloseTo(1.2 / 15, 12);
    expect(least).toBeCloseTo(1.05 / 15.15, 12);
    expect(most).toBeCloseTo(1.35 / 14.85, 12);
  });

  it('refuses a current that it cannot give, and holds a limit that tells nothing', () => {
    expect(() => sagOfEstimate({ estimate, amps: 40 })).toThrow(RangeError);
    expect(sagOfEstimate({ estimate: { ...estimate, ohms: { value: 0.48, least: 0, most: 90 } }, amps: 2 }).most).toBeCloseTo(9, 9);
  });

  it('follows the mains', () => {
    expect(loadedVolts({ estimate, mainsRatio: 0.9, amps: 2 })).toBeCloseTo(16.2 * 0.9 - 0.96, 12);
    expect(loadedVolts({ estimate, mainsRatio: 1, amps: 100 })).toBe(0);
  });
});
