import { describe, expect, it } from 'vitest';
import { solveRectifier } from '../../../src/compute/index.ts';
import type { RectifierOptions, RectifierTopology } from '../../../src/compute/index.ts';
import { BRIDGE_4A, N400X, N540X, N5819, N5822 } from './diode-sets.ts';

// Supplies of the kind the course is about, solved elsewhere with the same circuit (constant-current load, no ESR).
// The reference is printed to 10 mV, 10 mA of peak and two or three figures of RMS. One unit of its last place is the
// tolerance: half for its rounding, half for its own method.
type Row = readonly [
  name: string, topology: RectifierTopology, diode: RectifierOptions['diode'], hertz: number, volts: number,
  ohms: number, farads: number, amps: number,
  mean: number, valley: number, ripple: number, rms: number, rmsUnit: number, peak: number,
];
const ROWS: readonly Row[] = [
  ['A', 'bridge', N400X, 50, 10.8, 2.7, 2200e-6, 0.3, 10.5, 10.08, 0.83, 0.507, 0.001, 1.08],
  ['B', 'bridge', N400X, 60, 10.8, 2.7, 2200e-6, 0.3, 10.51, 10.16, 0.69, 0.507, 0.001, 1.08],
  ['C', 'bridge', N5822, 50, 6.3, 0.1, 4700e-6, 0.2, 7.98, 7.8, 0.34, 0.496, 0.001, 1.59],
  ['C low mains', 'bridge', N5822, 50, 5.67, 0.1, 4700e-6, 0.2, 7.1, 6.93, 0.34, 0.49, 0.01, 1.53],
  ['C high mains', 'bridge', N5822, 50, 6.93, 0.1, 4700e-6, 0.2, 8.86, 8.68, 0.34, 0.5, 0.01, 1.65],
  ['D', 'bridge', N400X, 50, 6.3, 0.1, 4700e-6, 0.2, 6.85, 6.68, 0.33, 0.479, 0.001, 1.51],
  ['D low mains', 'bridge', N400X, 50, 5.67, 0.1, 4700e-6, 0.2, 5.97, 5.8, 0.33, 0.47, 0.01, 1.45],
  ['D high mains', 'bridge', N400X, 50, 6.93, 0.1, 4700e-6, 0.2, 7.73, 7.56, 0.33, 0.49, 0.01, 1.57],
  ['E', 'bridge', BRIDGE_4A, 50, 16.8, 0.54, 10e-3, 1.2, 18.86, 18.45, 0.81, 2.26, 0.01, 5.35],
  ['F', 'centre-tap', N400X, 50, 10.8, 5.4, 2200e-6, 0.3, 9.65, 9.29, 0.72, 0.323, 0.001, 0.87],
  ['G', 'half-wave', N5819, 50, 6.3, 0.1, 1000e-6, 0.04, 8.24, 7.86, 0.73, 0.154, 0.001, 0.79],
  ['H', 'doubler', N5819, 50, 6.3, 0.1, 2200e-6, 0.1, 16.2, 15.83, 0.73, 0.496, 0.001, 1.59],
  ['I', 'bridge', N400X, 50, 20.7, 4.86, 1000e-6, 0.15, 24.07, 23.54, 1.04, 0.289, 0.001, 0.7],
  ['J', 'bridge', N540X, 50, 13.8, 1.08, 4700e-6, 0.6, 15.02, 14.6, 0.84, 1.098, 0.001, 2.54],
];

describe('supplies solved elsewhere with the same circuit', () => {
  for (const row of ROWS) {
    const [name, topology, diode, hertz, volts, ohms, farads, amps, mean, valley, ripple, rms, rmsUnit, peak] = row;
    it(`case ${name}`, () => {
      const { rail, winding } = solveRectifier({
        topology, diode, hertz, winding: { openCircuitVolts: volts, ohms },
        reservoir: { farads, ohms: 0 }, load: { amps },
      });
      const near = (found: number, printed: number, unit: number): void => {
        expect(Math.abs(found - printed)).toBeLessThanOrEqual(unit);
      };
      near(rail.meanVolts, mean, 0.01);
      near(rail.minVolts, valley, 0.01);
      near(rail.rippleVolts, ripple, 0.01);
      near(winding.rmsAmps, rms, rmsUnit);
      near(winding.peakAmps, peak, 0.01);
    });
  }
});
