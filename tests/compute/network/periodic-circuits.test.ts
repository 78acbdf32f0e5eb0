import { describe, expect, it } from 'vitest';
import { GROUND, SolveError, solveNetwork, waveformMax, waveformMean, waveformPeak, waveformRms } from '../../../src/compute/index.ts';
import type { Element, NetworkSolution } from '../../../src/compute/index.ts';

const series = (table: Readonly<Record<string, Float64Array>>, key: string): Float64Array => {
  const found = table[key];
  if (!found) throw new Error(`no series ${key}`);
  return found;
};

/** Largest sum of currents leaving any node, and the largest current there is. */
export function kirchhoff(elements: readonly Element[], { seconds, amps }: NetworkSolution): { residual: number; largest: number } {
  let residual = 0;
  let largest = 0;
  const nodes = new Set(elements.flatMap((e) => e.between).filter((n) => n !== GROUND));
  for (let k = 0; k < seconds.length; k += 1) {
    for (const node of nodes) {
      let sum = 0;
      for (const { name, between } of elements) {
        const i = series(amps, name)[k] as number;
        largest = Math.max(largest, Math.abs(i));
        if (between[0] === between[1]) continue;
        if (between[0] === node) sum += i;
        if (between[1] === node) sum -= i;
      }
      residual = Math.max(residual, Math.abs(sum));
    }
  }
  return { residual, largest };
}

describe('circuits with a closed answer', () => {
  it('a series R, L and C at any frequency is its impedance', () => {
    const [hertz, ohms, henries, farads] = [60, 3.3, 0.02, 470e-6];
    const { amps } = solveNetwork({
      hertz,
      elements: [
        { kind: 'sine', name: 'source', between: ['a', GROUND], peakVolts: 10 },
        { kind: 'resistor', name: 'r', between: ['a', 'b'], ohms },
        { kind: 'inductor', name: 'l', between: ['b', 'c'], henries },
        { kind: 'capacitor', name: 'c', between: ['c', GROUND], farads },
      ],
    });
    const w = 2 * Math.PI * hertz;
    const impedance = Math.hypot(ohms, w * henries - 1 / (w * farads));
    expect(waveformPeak(series(amps, 'r')) / (10 / impedance)).toBeCloseTo(1, 4);
    expect(waveformMean(series(amps, 'r'))).toBeCloseTo(0, 5);
  });

  it('a circuit that would ring for a thousand cycles is found as quickly', () => {
    // At resonance: Q = 6283, so the start dies out over about 2000 cycles; the steady current is V/R.
    const hertz = 1000;
    const henries = 0.1;
    const farads = 1 / ((2 * Math.PI * hertz) ** 2 * henries);
    const { amps } = solveNetwork({
      hertz,
      elements: [
        { kind: 'sine', name: 'source', between: ['a', GROUND], peakVolts: 1, ohms: 0.1 },
        { kind: 'inductor', name: 'l', between: ['a', 'b'], henries },
        { kind: 'capacitor', name: 'c', between: ['b', GROUND], farads },
      ],
    });
    expect(waveformPeak(series(amps, 'l')) / 10).toBeCloseTo(1, 2);
  });

  it('a harmonic, a phase and an offset add up', () => {
    const { volts } = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'sine', name: 'first', between: ['a', GROUND], peakVolts: 3, degrees: 90 },
        { kind: 'sine', name: 'third', between: ['b', 'a'], peakVolts: 1, harmonic: 3 },
        { kind: 'dc', name: 'offset', between: ['c', 'b'], volts: 2 },
        { kind: 'resistor', name: 'r', between: ['c', GROUND], ohms: 100 },
      ],
    });
    const c = series(volts, 'c');
    c.forEach((v, k) => {
      const phase = (2 * Math.PI * k) / (c.length - 1);
      expect(v).toBeCloseTo(3 * Math.cos(phase) + Math.sin(3 * phase) + 2, 6);
    });
  });

  it('a clipped source keeps its peak and has the RMS of its crest factor', () => {
    const { volts } = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'sine', name: 'source', between: ['a', GROUND], peakVolts: 10, crestFactor: 1.3 },
        { kind: 'resistor', name: 'r', between: ['a', GROUND], ohms: 1 },
      ],
    });
    expect(waveformMax(series(volts, 'a'))).toBeCloseTo(10, 6);
    expect(waveformRms(series(volts, 'a'))).toBeCloseTo(10 / 1.3, 2);
  });

  it('a current through a diode gives the logarithm', () => {
    const { volts } = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'current', name: 'feed', between: [GROUND, 'a'], amps: 1 },
        { kind: 'diode', name: 'd', between: ['a', GROUND], saturationAmps: 1e-9, emission: 1.5, ohms: 0.02 },
      ],
    });
    expect(series(volts, 'a')[7]).toBeCloseTo(1.5 * 0.025852 * Math.log(1 + 1e9) + 0.02, 6);
  });

  it('a zener holds its voltage, named at a milliampere', () => {
    const { volts } = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'current', name: 'feed', between: [GROUND, 'a'], amps: 1e-3 },
        { kind: 'diode', name: 'z', between: [GROUND, 'a'], saturationAmps: 1e-14, emission: 1, ohms: 5, breakdownVolts: 12 },
      ],
    });
    expect(series(volts, 'a')[0]).toBeCloseTo(12, 6);
  });
});

describe('what floats, and what has no answer', () => {
  it('solves a floating part, its first-named node at zero', () => {
    const { volts, amps } = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'dc', name: 'grounded', between: ['x', GROUND], volts: 5, ohms: 1 },
        { kind: 'resistor', name: 'its load', between: ['x', GROUND], ohms: 4 },
        { kind: 'sine', name: 'adrift', between: ['p', 'q'], peakVolts: 10, ohms: 2 },
        { kind: 'resistor', name: 'its own load', between: ['p', 'q'], ohms: 3 },
      ],
    });
    expect(waveformPeak(series(volts, 'p'))).toBeLessThan(1e-9);
    expect(waveformPeak(series(volts, 'q'))).toBeCloseTo(6, 6);
    expect(waveformPeak(series(amps, 'its own load'))).toBeCloseTo(2, 6);
    expect(series(volts, 'x')[3]).toBeCloseTo(4, 9);
  });

  it('a floating bridge supply is the same supply', () => {
    const diode = { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 };
    const supply = (minus: string): Element[] => [
      { kind: 'sine', name: 'w', between: ['a', 'b'], peakVolts: 15, ohms: 1 },
      { kind: 'diode', name: 'd1', between: ['a', 'rail'], ...diode },
      { kind: 'diode', name: 'd2', between: ['b', 'rail'], ...diode },
      { kind: 'diode', name: 'd3', between: [minus, 'a'], ...diode },
      { kind: 'diode', name: 'd4', between: [minus, 'b'], ...diode },
      { kind: 'capacitor', name: 'c', between: ['rail', minus], farads: 1e-3 },
      { kind: 'resistor', name: 'load', between: ['rail', minus], ohms: 50 },
    ];
    const tied = solveNetwork({ hertz: 50, elements: supply(GROUND) });
    const free = solveNetwork({
      hertz: 50,
      elements: [...supply('minus'), { kind: 'resistor', name: 'elsewhere', between: ['n', GROUND], ohms: 1 }],
    });
    expect(waveformMean(series(free.amps, 'load'))).toBeCloseTo(waveformMean(series(tied.amps, 'load')), 6);
    expect(waveformRms(series(free.amps, 'w'))).toBeCloseTo(waveformRms(series(tied.amps, 'w')), 5);
  });

  it('a charge that nothing can change stays zero', () => {
    const { volts } = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'sine', name: 's', between: ['a', GROUND], peakVolts: 10 },
        { kind: 'capacitor', name: 'upper', between: ['a', 'm'], farads: 1e-6 },
        { kind: 'capacitor', name: 'lower', between: ['m', GROUND], farads: 3e-6 },
      ],
    });
    expect(waveformPeak(series(volts, 'm'))).toBeCloseTo(2.5, 4);
    expect(waveformMean(series(volts, 'm'))).toBeCloseTo(0, 4);
  });

  const failing: readonly [string, Element[]][] = [
    ['two ideal sources in parallel', [
      { kind: 'dc', name: 'five', between: ['a', GROUND], volts: 5 },
      { kind: 'dc', name: 'six', between: ['a', GROUND], volts: 6 },
    ]],
    ['a current into nothing', [
      { kind: 'current', name: 'feed', between: [GROUND, 'a'], amps: 1 },
      { kind: 'resistor', name: 'r', between: ['a', 'b'], ohms: 1 },
    ]],
    ['a current into an open switch', [
      { kind: 'current', name: 'feed', between: [GROUND, 'a'], amps: 1e-3 },
      { kind: 'switch', name: 's', between: ['a', GROUND], closed: false },
    ]],
    ['a direct current into a capacitor', [
      { kind: 'current', name: 'feed', between: [GROUND, 'a'], amps: 1e-3 },
      { kind: 'capacitor', name: 'c', between: ['a', GROUND], farads: 1e-6 },
    ]],
  ];
  for (const [name, elements] of failing) {
    it(`${name} is a typed failure`, () => {
      expect(() => solveNetwork({ hertz: 50, elements })).toThrow(SolveError);
    });
  }
});

describe('balances in a supply with a choke and a zener', () => {
  const elements: Element[] = [
    { kind: 'sine', name: 'w', between: ['a', 'b'], peakVolts: 25, ohms: 1.5, crestFactor: 1.36 },
    { kind: 'diode', name: 'd1', between: ['a', 'raw'], saturationAmps: 1e-8, emission: 1.8, ohms: 0.03 },
    { kind: 'diode', name: 'd2', between: ['b', 'raw'], saturationAmps: 1e-8, emission: 1.8, ohms: 0.03 },
    { kind: 'diode', name: 'd3', between: [GROUND, 'a'], saturationAmps: 1e-8, emission: 1.8, ohms: 0.03 },
    { kind: 'diode', name: 'd4', between: [GROUND, 'b'], saturationAmps: 1e-8, emission: 1.8, ohms: 0.03 },
    { kind: 'capacitor', name: 'c1', between: ['raw', GROUND], farads: 470e-6, ohms: 0.1 },
    { kind: 'inductor', name: 'choke', between: ['raw', 'rail'], henries: 0.01, ohms: 0.8 },
    { kind: 'capacitor', name: 'c2', between: ['rail', GROUND], farads: 1000e-6, ohms: 0.05 },
    { kind: 'resistor', name: 'feed', between: ['rail', 'reg'], ohms: 100 },
    { kind: 'diode', name: 'z', between: [GROUND, 'reg'], saturationAmps: 1e-13, emission: 1.3, ohms: 4, breakdownVolts: 12 },
    { kind: 'resistor', name: 'load', between: ['rail', GROUND], ohms: 60 },
  ];
  const solution = solveNetwork({ hertz: 50, elements });
  const across = (e: Element): Float64Array => {
    const second = series(solution.volts, e.between[1]);
    return series(solution.volts, e.between[0]).map((v, k) => v - (second[k] as number));
  };

  it('Kirchhoff holds at every node at every instant', () => {
    const { residual, largest } = kirchhoff(elements, solution);
    // Newton leaves a microvolt's worth of current at most on the steepest diode.
    expect(residual).toBeLessThan(1e-6 * largest);
  });

  it('the period closes: no net charge into capacitors, no net voltage across the choke', () => {
    expect(waveformMean(series(solution.amps, 'c1'))).toBeCloseTo(0, 4);
    expect(waveformMean(series(solution.amps, 'c2'))).toBeCloseTo(0, 4);
    const choke = elements[6] as Element;
    expect(waveformMean(across(choke)) - 0.8 * waveformMean(series(solution.amps, 'choke'))).toBeCloseTo(0, 4);
  });

  it('all powers sum to nothing over a period', () => {
    let sum = 0;
    let delivered = 0;
    for (const e of elements) {
      const i = series(solution.amps, e.name);
      const watts = waveformMean(across(e).map((v, k) => v * (i[k] as number)));
      sum += watts;
      delivered += Math.abs(watts);
    }
    expect(Math.abs(sum)).toBeLessThan(1e-4 * delivered);
  });
});
