import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { harmonicsOf, waveOf } from '../../../src/compute/noise/harmonics.ts';

const period = (of: (share: number) => number, samples = 256): Float64Array => Float64Array.from({ length: samples + 1 }, (_, k) => of(k / samples));

describe('harmonics', () => {
  it('are those of a square wave, 4/(πn) over √2, and none that are even', () => {
    const { harmonics, mean } = harmonicsOf({ values: period((x) => (x < 0.5 ? 1 : -1), 4096), hertz: 50, orders: 9 });
    expect(mean).toBeCloseTo(0, 9);
    for (const { order, rms, hertz } of harmonics) {
      expect(rms).toBeCloseTo(order % 2 === 1 ? 4 / (Math.PI * order) / Math.SQRT2 : 0, 3);
      expect(hertz).toBe(50 * order);
    }
  });

  it('make the wave again, with its mean and its energy', () => {
    const values = period((x) => 3 + 2 * Math.cos(2 * Math.PI * x + 0.4) - Math.sin(6 * Math.PI * x));
    const spectrum = harmonicsOf({ values, hertz: 60 });
    const again = waveOf({ harmonics: spectrum.harmonics, mean: spectrum.mean, samples: 256 });
    again.forEach((volts, k) => {
      expect(volts).toBeCloseTo(values[k] as number, 9);
    });
    expect(spectrum.heldRms).toBeCloseTo(spectrum.alternatingRms, 9);
    expect(spectrum.alternatingRms).toBeCloseTo(Math.sqrt((4 + 1) / 2), 9);
  });

  it('refuse too few samples and too many orders', () => {
    expect(() => harmonicsOf({ values: [1, 2, 3], hertz: 50 })).toThrow(InputError);
    expect(() => harmonicsOf({ values: period(() => 0), hertz: 50, orders: 200 })).toThrow(InputError);
  });
});
