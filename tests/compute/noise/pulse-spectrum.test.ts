import { describe, expect, it } from 'vitest';
import { loopAmps, pulseSpectrum } from '../../../src/compute/noise/pulse-spectrum.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import type { RectifierOptions } from '../../../src/compute/rectifier/rectifier-types.ts';

const JOB: RectifierOptions = {
  topology: 'bridge', winding: { openCircuitVolts: 13.8, ohms: 1.08 }, hertz: 50, diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 },
  reservoir: { farads: 4700e-6, ohms: 0.03 }, load: { amps: 0.6 },
};

describe('charging pulses', () => {
  const rectifier = solveRectifier(JOB);
  const spectrum = pulseSpectrum({ topology: 'bridge', rectifier, hertz: 50 });

  it('of a bridge have odd harmonics in the winding and even ones in the reservoir', () => {
    const winding = spectrum.winding.harmonics;
    const reservoir = spectrum.reservoir.harmonics;
    for (const { order, rms } of winding) if (order % 2 === 0) expect(rms).toBeLessThan(1e-3 * (winding[0]?.rms ?? 0));
    for (const { order, rms } of reservoir) if (order % 2 === 1) expect(rms).toBeLessThan(1e-2 * (reservoir[1]?.rms ?? 0));
    // The third carries most of the fundamental's size: why it buzzes.
    expect(winding[2]?.rms).toBeGreaterThan(0.6 * (winding[0]?.rms ?? Infinity));
  });

  it('carry the solved RMS, and the reservoir’s is √(Iw² − IDC²)', () => {
    expect(spectrum.winding.alternatingRms / rectifier.winding.rmsAmps).toBeCloseTo(1, 2);
    expect(spectrum.reservoir.alternatingRms / rectifier.reservoir.rmsAmps).toBeCloseTo(1, 1.7);
    expect(spectrum.reservoir.alternatingRms / Math.sqrt(rectifier.winding.rmsAmps ** 2 - 0.36)).toBeCloseTo(1, 1.7);
    expect(spectrum.reservoir.mean).toBeCloseTo(0, 2);
  });

  it('reach higher harmonics from a stiffer winding', () => {
    const high = (ohms: number): number => {
      const { winding } = pulseSpectrum({ topology: 'bridge', rectifier: solveRectifier({ ...JOB, winding: { openCircuitVolts: 13.8, ohms } }), hertz: 50 });
      return (winding.harmonics[8]?.rms ?? 0) / (winding.harmonics[0]?.rms ?? 1);
    };
    expect(high(0.2)).toBeGreaterThan(high(1));
    expect(high(1)).toBeGreaterThan(high(4));
  });

  it('add up to the load’s current for each rectifier', () => {
    for (const topology of ['bridge', 'centre-tap', 'half-wave', 'doubler'] as const) {
      const solved = solveRectifier({ ...JOB, topology });
      const { rectified } = loopAmps({ topology, rectifier: solved });
      const mean = rectified.subarray(0, -1).reduce((sum, amps) => sum + amps, 0) / (rectified.length - 1);
      expect(mean / 0.6).toBeCloseTo(1, 1.7);
    }
  });
});
