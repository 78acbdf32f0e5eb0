import { describe, expect, it } from 'vitest';
import { BUCKS, buck, buckClampVolts, buckInput, buckMinimumInputVolts } from '../../../src/compute/parts/regulator-switching.ts';

const part = buck('buck-150k');

describe('a step-down module', () => {
  it('is about 80 % efficient from 12 to 5 V and 90 % from 24 to 12 V', () => {
    // The printed figures are themselves "about": one fitted loss meets both within a point and a half.
    expect(Math.abs(buckInput({ part, outputVolts: 5, amps: 2, inputVolts: 12 }).efficiency - 0.8)).toBeLessThan(0.015);
    expect(Math.abs(buckInput({ part, outputVolts: 12, amps: 2, inputVolts: 24 }).efficiency - 0.9)).toBeLessThan(0.015);
  });

  it('takes more current the lower its input: constant power, negative resistance', () => {
    const at = (inputVolts: number) => buckInput({ part, outputVolts: 5, amps: 1, inputVolts });
    expect(at(8).amps).toBeGreaterThan(at(16).amps);
    const slope = (at(12.001).amps - at(11.999).amps) / 0.002;
    expect(1 / slope).toBeCloseTo(at(12).inputOhms, 3);
    expect(at(12).inputOhms).toBeLessThan(0);
  });

  it('balances its energy', () => {
    const { watts, heatWatts, amps } = buckInput({ part, outputVolts: 5, amps: 1, inputVolts: 10 });
    expect(watts).toBeCloseTo(5 + heatWatts, 12);
    expect(amps * 10).toBeCloseTo(watts, 12);
    expect(heatWatts).toBeGreaterThan(0);
  });

  it('needs headroom, and its own least input', () => {
    expect(buckMinimumInputVolts({ part, outputVolts: 6 })).toBe(7.5);
    expect(buckMinimumInputVolts({ part, outputVolts: 1.2 })).toBe(4.5);
    expect(() => buckInput({ part, outputVolts: 6, amps: 1, inputVolts: 7.4 })).toThrow(RangeError);
    expect(() => buckInput({ part, outputVolts: 6, amps: 1, inputVolts: 41 })).toThrow(RangeError);
  });

  it('idles at no load without a division by it', () => {
    expect(buckInput({ part, outputVolts: 5, amps: 0, inputVolts: 12 })).toMatchObject({ watts: expect.closeTo(0.096, 9) as number, efficiency: 0, inputOhms: -Infinity, skipping: true });
  });

  it('is clamped a little over its output', () => {
    expect(buckClampVolts(12.6)).toEqual({ min: expect.closeTo(13.86, 9) as number, max: expect.closeTo(16.38, 9) as number });
  });

  it('has rows that hold together', () => {
    for (const row of BUCKS) {
      expect(row.realisticAmps).toBeLessThan(row.maxAmps);
      expect(row.rippleVolts.min).toBeLessThan(row.rippleVolts.max);
    }
  });
});
