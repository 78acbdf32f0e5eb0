import { describe, expect, it } from 'vitest';
import {
  solveNetwork, solveRectifier, waveformMax, waveformMean, waveformMin, waveformPeak, waveformRms,
} from '../../../src/compute/index.ts';
import type { RectifierLoad, RectifierOptions, RectifierTopology } from '../../../src/compute/index.ts';
import { N400X, N5819, N5822 } from './diode-sets.ts';
import { rectifierNetwork } from './rectifier-networks.ts';

// The two solvers share the diode law and nothing else: reduced equations against node equations, different time
// steps, different searches. Tolerances are a tenth of what is owed against an outside reference, except peaks, where
// the network's even samples may straddle the top of a pulse.
const TOPOLOGIES: readonly RectifierTopology[] = ['bridge', 'centre-tap', 'half-wave', 'doubler'];
const LOADS: readonly [string, RectifierLoad][] = [['current', { amps: 0.25 }], ['resistance', { ohms: 40 }], ['power', { watts: 2 }]];

interface Case extends Omit<RectifierOptions, 'topology' | 'load'> {
  readonly name: string;
}
const CASES: readonly Case[] = [
  { name: 'a small soft transformer', winding: { openCircuitVolts: 10.8, ohms: 2.7 }, hertz: 50, diode: N400X, reservoir: { farads: 2200e-6, ohms: 0.05 } },
  { name: 'a stiff heater winding, flat-topped mains', winding: { openCircuitVolts: 6.3, ohms: 0.05 }, hertz: 60, crestFactor: 1.35, diode: N5822, reservoir: { farads: 4700e-6, ohms: 0.02 } },
  { name: 'a small reservoir and large ripple', winding: { openCircuitVolts: 9, ohms: 0.3 }, hertz: 50, diode: N5819, reservoir: { farads: 220e-6, ohms: 0 } },
];

const within = (found: number, other: number, part: number): void => {
  expect(Math.abs(found - other)).toBeLessThanOrEqual(part * Math.abs(other));
};

describe('solveRectifier and solveNetwork agree', () => {
  for (const topology of TOPOLOGIES) {
    for (const { name, ...supply } of CASES) {
      for (const [kind, load] of LOADS) {
        // A half-wave rectifier with this little reservoir cannot hold a constant current or power between pulses.
        if (supply.reservoir.farads < 1e-3 && topology !== 'bridge' && topology !== 'centre-tap' && kind !== 'resistance') continue;
        it(`${topology}, ${name}, load a constant ${kind}`, () => {
          const options = { topology, ...supply, load };
          const fast = solveRectifier(options);
          const { volts, amps } = solveNetwork({ hertz: supply.hertz, elements: rectifierNetwork(options) });
          const minus = volts['minus'];
          const rail = (volts['rail'] as Float64Array).map((v, i) => v - (minus ? (minus[i] as number) : 0));
          within(fast.rail.meanVolts, waveformMean(rail), 3e-4);
          within(fast.rail.rippleVolts, waveformMax(rail) - waveformMin(rail), 5e-3);
          within(fast.winding.rmsAmps, waveformRms(amps['winding'] as Float64Array), 3e-3);
          within(fast.winding.peakAmps, waveformPeak(amps['winding'] as Float64Array), 1e-2);
          within(fast.diode.meanAmps, waveformMean(amps['d1'] as Float64Array), 2e-3);
          within(fast.diode.rmsAmps, waveformRms(amps['d1'] as Float64Array), 3e-3);
          within(fast.diode.peakAmps, waveformMax(amps['d1'] as Float64Array), 1e-2);
          within(fast.reservoir.rmsAmps, waveformRms(amps['reservoir'] as Float64Array), 3e-3);
          within(fast.load.meanAmps, waveformMean(amps['load'] as Float64Array), 3e-4);
        });
      }
    }
  }
});
