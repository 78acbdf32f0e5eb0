import { GROUND, solveNetwork, solveRectifier, solveTransient } from '../../src/compute/index.ts';
import type { Element, RectifierOptions, RectifierTopology } from '../../src/compute/index.ts';
import type { BenchCase } from './measure.ts';

const DIODE = { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 };
const SCHOTTKY = { saturationAmps: 1.39e-5, emission: 1.0315, ohms: 0.0384 };

const soft = (topology: RectifierTopology): RectifierOptions => ({
  topology, winding: { openCircuitVolts: 10.8, ohms: 2.7 }, hertz: 50, diode: DIODE,
  reservoir: { farads: 2200e-6, ohms: 0.05 }, load: { amps: 0.3 },
});
const stiff = (topology: RectifierTopology): RectifierOptions => ({
  topology, winding: { openCircuitVolts: 6.3, ohms: 0.05 }, hertz: 50, crestFactor: 1.35, diode: SCHOTTKY,
  reservoir: { farads: 4700e-6, ohms: 0.02 }, load: { watts: 1.2 },
});

const bridge: Element[] = [
  { kind: 'sine', name: 'w', between: ['a', 'b'], peakVolts: 15.3, ohms: 2.7 },
  { kind: 'diode', name: 'd1', between: ['a', 'rail'], ...DIODE },
  { kind: 'diode', name: 'd2', between: ['b', 'rail'], ...DIODE },
  { kind: 'diode', name: 'd3', between: [GROUND, 'a'], ...DIODE },
  { kind: 'diode', name: 'd4', between: [GROUND, 'b'], ...DIODE },
  { kind: 'capacitor', name: 'c', between: ['rail', GROUND], farads: 2200e-6, ohms: 0.05 },
  { kind: 'current', name: 'load', between: ['rail', GROUND], amps: 0.3 },
];
/** A heater winding with a grounded tap, and a bridge whose negative is grounded too. */
const twoGrounds: Element[] = [
  { kind: 'sine', name: 'upper', between: ['a', 'tap'], peakVolts: 4.45, ohms: 0.05 },
  { kind: 'sine', name: 'lower', between: ['tap', 'b'], peakVolts: 4.45, ohms: 0.05 },
  { kind: 'resistor', name: 'tap to chassis', between: ['tap', GROUND], ohms: 0.01 },
  { kind: 'resistor', name: 'heaters', between: ['a', 'b'], ohms: 2.1 },
  { kind: 'diode', name: 'd1', between: ['a', 'rail'], ...DIODE },
  { kind: 'diode', name: 'd2', between: ['b', 'rail'], ...DIODE },
  { kind: 'diode', name: 'd3', between: ['minus', 'a'], ...DIODE },
  { kind: 'diode', name: 'd4', between: ['minus', 'b'], ...DIODE },
  { kind: 'resistor', name: 'minus to chassis', between: ['minus', GROUND], ohms: 0.02 },
  { kind: 'capacitor', name: 'c', between: ['rail', 'minus'], farads: 4700e-6, ohms: 0.03 },
  { kind: 'resistor', name: 'load', between: ['rail', 'minus'], ohms: 30 },
];

const TOPOLOGIES: readonly RectifierTopology[] = ['bridge', 'centre-tap', 'half-wave', 'doubler'];

export const cases: readonly BenchCase[] = [
  ...TOPOLOGIES.map((t) => ({ name: `rectifier: ${t}, small soft transformer`, targetMilliseconds: 0.5, run: () => solveRectifier(soft(t)) })),
  ...TOPOLOGIES.map((t) => ({ name: `rectifier: ${t}, stiff, clipped mains, power`, targetMilliseconds: 0.5, run: () => solveRectifier(stiff(t)) })),
  { name: 'rectifier: bridge, no load', targetMilliseconds: 0.5, run: () => solveRectifier({ ...soft('bridge'), load: { amps: 0 } }) },
  { name: 'network: bridge supply, 7 elements', targetMilliseconds: 50, run: () => solveNetwork({ hertz: 50, elements: bridge }) },
  { name: 'network: tapped winding grounded twice, 11 elements', targetMilliseconds: 50, run: () => solveNetwork({ hertz: 50, elements: twoGrounds }) },
  { name: 'transient: bridge supply, 0.5 s from switch-on', run: () => solveTransient({ seconds: 0.5, elements: bridge }) },
];
