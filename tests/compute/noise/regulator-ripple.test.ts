import { describe, expect, it } from 'vitest';
import { harmonicsOf } from '../../../src/compute/noise/harmonics.ts';
import { rejectionDecibels, rippleBehindRegulator } from '../../../src/compute/noise/regulator-ripple.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import type { RectifierOptions } from '../../../src/compute/rectifier/rectifier-types.ts';

const JOB: RectifierOptions = {
  topology: 'bridge', winding: { openCircuitVolts: 13.8, ohms: 1.08 }, hertz: 50, diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 },
  reservoir: { farads: 4700e-6, ohms: 0.03 }, load: { amps: 0.6 },
};

describe('ripple behind a regulator', () => {
  const { waveform } = solveRectifier(JOB);
  const at = (setVolts: number, rejectionAt120Hertz = 55) => rippleBehindRegulator({ inputVolts: waveform.railVolts, hertz: 50, setVolts, dropoutVolts: 2, rejectionAt120Hertz });

  it('is lowered by its rejection while there is headroom', () => {
    const out = at(12);
    expect(out.dropoutShare).toBe(0);
    const input = harmonicsOf({ values: waveform.railVolts, hertz: 50 }).harmonics[1]?.rms ?? 0;
    expect(20 * Math.log10(input / (out.harmonics[1]?.rms ?? 1))).toBeCloseTo(55, 0);
    expect(out.peakToPeakVolts).toBeLessThan(0.005);
    expect(at(12, 71).rmsVolts).toBeLessThan(out.rmsVolts);
  });

  it('comes through as a sawtooth once the valley is short', () => {
    const out = at(12.9);
    expect(out.dropoutShare).toBeGreaterThan(0.05);
    expect(out.dropoutShare).toBeLessThan(1);
    expect(out.peakToPeakVolts).toBeGreaterThan(50 * at(12).peakToPeakVolts);
    const all = at(15);
    expect(all.dropoutShare).toBe(1);
    const input = Math.max(...waveform.railVolts) - Math.min(...waveform.railVolts);
    expect(all.peakToPeakVolts).toBeCloseTo(input, 6);
  });

  it('rejects less at higher frequencies, and never amplifies', () => {
    const decibels = [100, 1e3, 1e4, 1e5, 1e7].map((hertz) => rejectionDecibels({ at120Hertz: 60, hertz }));
    expect(decibels[0]).toBeCloseTo(60, 1);
    expect(decibels[2]).toBeCloseTo(40, 0);
    expect(decibels).toEqual([...decibels].sort((a, b) => b - a));
    expect(decibels.at(-1)).toBe(0);
  });
});
