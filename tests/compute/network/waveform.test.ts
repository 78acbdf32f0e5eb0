import { describe, expect, it } from 'vitest';
import {
  InputError, waveformMax, waveformMean, waveformMeanProduct, waveformMin, waveformPeak, waveformRms,
} from '../../../src/compute/index.ts';

const RAMP = Float64Array.of(0, 1, 2, 3);

describe('figures of a waveform', () => {
  it('of a ramp: mean half, RMS over root three, exactly', () => {
    expect(waveformMean(RAMP)).toBe(1.5);
    expect(waveformRms(RAMP)).toBeCloseTo(3 / Math.sqrt(3), 14);
  });
  it('do not depend on where a straight line is sampled', () => {
    const seconds = Float64Array.of(0, 0.1, 0.7, 3);
    expect(waveformMean(seconds, seconds)).toBeCloseTo(1.5, 14);
    expect(waveformRms(seconds, seconds)).toBeCloseTo(Math.sqrt(3), 14);
  });
  it('of a sampled sine', () => {
    const sine = Float64Array.from({ length: 513 }, (_, k) => 2 * Math.sin((2 * Math.PI * k) / 512));
    expect(waveformMean(sine)).toBeCloseTo(0, 12);
    expect(waveformRms(sine)).toBeCloseTo(Math.SQRT2, 4);
    expect(waveformMeanProduct(sine, sine)).toBeCloseTo(2, 12);
    expect([waveformMin(sine), waveformMax(sine), waveformPeak(sine.map((v) => v - 1))]).toEqual([-2, 2, 3]);
  });
  it('refuse what has no span, and series that do not belong together', () => {
    expect(() => waveformMean(Float64Array.of(1))).toThrow(InputError);
    expect(() => waveformRms(RAMP, Float64Array.of(0, 1))).toThrow(InputError);
    expect(() => waveformMeanProduct(RAMP, Float64Array.of(1, 2))).toThrow(InputError);
  });
});
