import { describe, expect, it } from 'vitest';
import { solveRectifier } from '../../../src/compute/index.ts';
import type { RectifierSolution, RectifierTopology } from '../../../src/compute/index.ts';

// The classic charts: ideal diode, series resistance Rs, load resistance R, reservoir C, against ωCR and Rs/R. The
// diode here drops about 5 mV of 1000 V, so that it is ideal to five figures.
const PEAK_VOLTS = 1000;
const LOAD_OHMS = 1000;
const HERTZ = 50;
const RATIOS = [0.001, 0.01, 0.02, 0.05, 0.1, 0.2] as const;

function solve(topology: RectifierTopology, omegaCR: number, ratio: number): RectifierSolution {
  return solveRectifier({
    topology,
    winding: { openCircuitVolts: PEAK_VOLTS / Math.SQRT2, ohms: ratio * LOAD_OHMS },
    hertz: HERTZ,
    diode: { saturationAmps: 1e-9, emission: 0.01, ohms: 0 },
    reservoir: { farads: omegaCR / (2 * Math.PI * HERTZ * LOAD_OHMS), ohms: 0 },
    load: { ohms: LOAD_OHMS },
  });
}

// VDC/Vpk, by ωCR and (in the order of RATIOS) Rs/R.
const RAIL: readonly [RectifierTopology, number, readonly number[]][] = [
  ['bridge', 1, [0.678, 0.672, 0.665, 0.646, 0.616, 0.562]],
  ['bridge', 2, [0.736, 0.73, 0.722, 0.7, 0.665, 0.6]],
  ['bridge', 5, [0.835, 0.827, 0.817, 0.783, 0.726, 0.635]],
  ['bridge', 10, [0.897, 0.886, 0.869, 0.817, 0.745, 0.643]],
  ['bridge', 20, [0.94, 0.92, 0.893, 0.828, 0.75, 0.645]],
  ['bridge', 50, [0.972, 0.935, 0.902, 0.832, 0.751, 0.645]],
  ['bridge', 100, [0.982, 0.937, 0.903, 0.832, 0.752, 0.645]],
  ['half-wave', 1, [0.382, 0.378, 0.374, 0.364, 0.346, 0.316]],
  ['half-wave', 5, [0.666, 0.659, 0.651, 0.622, 0.569, 0.479]],
  ['half-wave', 10, [0.79, 0.78, 0.764, 0.706, 0.622, 0.506]],
  ['half-wave', 20, [0.878, 0.857, 0.824, 0.739, 0.639, 0.514]],
  ['half-wave', 50, [0.944, 0.895, 0.848, 0.75, 0.644, 0.517]],
  ['half-wave', 100, [0.966, 0.901, 0.852, 0.751, 0.645, 0.517]],
  ['doubler', 5, [1.1, 1.085, 1.067, 1.004, 0.893, 0.709]],
  ['doubler', 10, [1.368, 1.343, 1.307, 1.177, 0.988, 0.745]],
  ['doubler', 20, [1.596, 1.547, 1.468, 1.257, 1.021, 0.755]],
  ['doubler', 50, [1.799, 1.672, 1.544, 1.285, 1.032, 0.758]],
  ['doubler', 100, [1.881, 1.697, 1.557, 1.289, 1.033, 0.759]],
];

describe('rail over peak, against the charts', () => {
  for (const [topology, omegaCR, row] of RAIL) {
    it(`${topology}, ωCR ${omegaCR}`, () => {
      row.forEach((expected, k) => {
        // Half a unit of the printed place for its rounding, half for the printed method.
        const found = solve(topology, omegaCR, RATIOS[k] as number).rail.meanVolts / PEAK_VOLTS;
        expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-3);
      });
    });
  }
  it('a centre tap is a bridge whose halves take turns', () => {
    for (const ratio of RATIOS) {
      const bridge = solve('bridge', 20, ratio);
      const tapped = solve('centre-tap', 20, ratio);
      expect(tapped.rail.meanVolts / bridge.rail.meanVolts).toBeCloseTo(1, 4);
      expect(tapped.winding.rmsAmps * Math.SQRT2).toBeCloseTo(bridge.winding.rmsAmps, 3);
    }
  });
});

describe('current ratios at ωCR 50, against the charts', () => {
  const at = (topology: RectifierTopology, of: (s: RectifierSolution) => number, expected: readonly number[], part: number): void => {
    expected.forEach((value, k) => {
      const found = of(solve(topology, 50, RATIOS[k] as number));
      expect(Math.abs(found / value - 1), `${RATIOS[k]}: ${found} against ${value}`).toBeLessThanOrEqual(part);
    });
  };
  // Printed to three figures or two: 0.5 % and 1.5 % are a unit of the last place where it weighs most.
  it('bridge: winding RMS', () => at('bridge', (s) => s.winding.rmsAmps / s.load.meanAmps, [3.12, 2.3, 2.06, 1.79, 1.62, 1.48], 5e-3));
  it('centre tap: RMS of each half', () => at('centre-tap', (s) => s.winding.rmsAmps / s.load.meanAmps, [2.21, 1.62, 1.46, 1.27, 1.15, 1.05], 6e-3));
  it('half-wave: winding RMS', () => at('half-wave', (s) => s.winding.rmsAmps / s.load.meanAmps, [3.83, 2.9, 2.62, 2.29, 2.09, 1.93], 5e-3));
  it('doubler: winding RMS', () => at('doubler', (s) => s.winding.rmsAmps / s.load.meanAmps, [4.67, 3.68, 3.34, 2.95, 2.72, 2.54], 5e-3));
  it('bridge: diode RMS over its mean', () => at('bridge', (s) => s.diode.rmsAmps / s.diode.meanAmps, [4.42, 3.25, 2.92, 2.54, 2.29, 2.09], 5e-3));
  it('bridge: peak', () => at('bridge', (s) => s.winding.peakAmps / s.load.meanAmps, [12.7, 6.6, 5.3, 4.0, 3.3, 2.7], 1.9e-2));
  it('half-wave: peak', () => at('half-wave', (s) => s.winding.peakAmps / s.load.meanAmps, [19.3, 10.6, 8.6, 6.6, 5.5, 4.7], 1.2e-2));
  it('doubler: peak', () => at('doubler', (s) => s.winding.peakAmps / s.load.meanAmps, [14.5, 8.5, 7.0, 5.5, 4.7, 4.1], 1.3e-2));
  it('bridge: reservoir RMS, from the winding', () =>
    at('bridge', (s) => Math.sqrt((s.winding.rmsAmps / s.load.meanAmps) ** 2 - 1) / (s.reservoir.rmsAmps / s.load.meanAmps), [1, 1, 1, 1, 1, 1], 3e-3));
  it('bridge: conduction per half-cycle', () => {
    [23, 41, 51, 67, 83, 100].forEach((degrees, k) => {
      // One diode conducts on one half-cycle in two. Printed to a degree; the foot below 1 % of the peak is not counted.
      expect(Math.abs(solve('bridge', 50, RATIOS[k] as number).diode.conductionDegrees - degrees)).toBeLessThanOrEqual(1.2);
    });
  });
});

describe('the limit of a very large reservoir', () => {
  // tan b − b = k·π·Rs/R; rail = peak·cos b per reservoir; peak current = peak·(1 − cos b)/Rs.
  const halfAngle = (x: number): number => {
    let low = 0;
    let high = Math.PI / 2 - 1e-9;
    for (let i = 0; i < 200; i += 1) {
      const b = (low + high) / 2;
      if (Math.tan(b) - b > x) high = b;
      else low = b;
    }
    return low;
  };
  const forms: readonly [RectifierTopology, number, number][] = [['bridge', 0.5, 1], ['half-wave', 1, 1], ['doubler', 2, 2]];
  for (const [topology, k, stacked] of forms) {
    it(topology, () => {
      for (const ratio of RATIOS) {
        const b = halfAngle(k * Math.PI * ratio);
        const { rail, winding } = solve(topology, 20_000, ratio);
        expect(Math.abs(rail.meanVolts / (stacked * PEAK_VOLTS * Math.cos(b)) - 1)).toBeLessThan(5e-4);
        expect(Math.abs(winding.peakAmps / ((PEAK_VOLTS * (1 - Math.cos(b))) / (ratio * LOAD_OHMS)) - 1)).toBeLessThan(5e-3);
      }
    });
  }
});
