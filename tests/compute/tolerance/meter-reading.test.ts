import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { meterReading } from '../../../src/compute/tolerance/meter-reading.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';

const wave = (of: (share: number) => number, samples = 4000): Float64Array => Float64Array.from({ length: samples + 1 }, (_, k) => of(k / samples));
const shows = (values: Float64Array, meter: 'dc' | 'true-rms-ac' | 'averaging-ac'): number => meterReading({ values, meter }).value;

describe('what meters show', () => {
  it('agree on a sine, with or without DC under it', () => {
    const sine = wave((x) => 7 + 2 * Math.sin(2 * Math.PI * x));
    expect(shows(sine, 'dc')).toBeCloseTo(7, 6);
    expect(shows(sine, 'true-rms-ac')).toBeCloseTo(Math.SQRT2, 5);
    expect(shows(sine, 'averaging-ac')).toBeCloseTo(Math.SQRT2, 4);
  });

  it('differ on a sawtooth: 3.46 and 3.60 to peak to peak, as the bench rule says', () => {
    const saw = wave((x) => x);
    expect(1 / shows(saw, 'true-rms-ac')).toBeCloseTo(2 * Math.sqrt(3), 3);
    expect(1 / shows(saw, 'averaging-ac')).toBeCloseTo(3.6, 2);
  });

  it('differ on a square wave: the averaging one shows 11 % more', () => {
    const square = wave((x) => (x < 0.5 ? 1 : -1));
    expect(shows(square, 'averaging-ac') / shows(square, 'true-rms-ac')).toBeCloseTo(1.11, 2);
  });

  it('real ripple is 3.1 to 3.5 times the true-RMS reading, peak to peak', () => {
    for (const [ohms, farads] of [[2.7, 2200e-6], [0.54, 10_000e-6], [0.1, 4700e-6]] as const) {
      const { rail, waveform } = solveRectifier({
        topology: 'bridge', winding: { openCircuitVolts: 12, ohms }, hertz: 50, diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 },
        reservoir: { farads, ohms: 0 }, load: { amps: 0.4 },
      });
      const factor = rail.rippleVolts / shows(waveform.railVolts, 'true-rms-ac');
      expect(factor).toBeGreaterThan(3.05);
      expect(factor).toBeLessThan(3.5);
    }
  });

  it('an averaging meter misses most of narrow pulses, and the crest factor says so', () => {
    const pulses = wave((x) => (x % 0.5 < 0.03 ? 5 : 0));
    expect(shows(pulses, 'averaging-ac')).toBeLessThan(0.6 * shows(pulses, 'true-rms-ac'));
    expect(meterReading({ values: pulses, meter: 'true-rms-ac' }).crestIsHigh).toBe(true);
    expect(meterReading({ values: wave((x) => Math.sin(2 * Math.PI * x)), meter: 'true-rms-ac' }).crestIsHigh).toBe(false);
  });

  it('takes uneven samples with their times', () => {
    const even = wave((x) => 3 + Math.sin(2 * Math.PI * x));
    const keep = [...even.keys()].filter((k) => k < 2000 || k % 2 === 0);
    const values = Float64Array.from(keep, (k) => even[k] as number);
    const seconds = Float64Array.from(keep, (k) => k / 4000);
    for (const meter of ['dc', 'true-rms-ac', 'averaging-ac'] as const) {
      expect(meterReading({ values, seconds, meter }).value).toBeCloseTo(shows(even, meter), 5);
    }
    expect(() => meterReading({ values: Float64Array.of(1), meter: 'dc' })).toThrow(InputError);
  });
});
