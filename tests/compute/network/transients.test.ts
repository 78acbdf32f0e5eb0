import { describe, expect, it } from 'vitest';
import { GROUND, InputError, SolveError, solveNetwork, solveTransient, waveformMax, waveformMean, waveformMin } from '../../../src/compute/index.ts';
import type { Element, NetworkSolution, TransientOptions } from '../../../src/compute/index.ts';

const of = (table: Readonly<Record<string, Float64Array>>, key: string): Float64Array => {
  const found = table[key];
  if (!found) throw new Error(`no series ${key}`);
  return found;
};
const last = (values: Float64Array): number => values[values.length - 1] as number;
/** First time at which a series has come down to a level, after a given time. */
const downTo = ({ seconds }: NetworkSolution, values: Float64Array, level: number, after: number): number => {
  const k = values.findIndex((v, i) => (seconds[i] as number) > after && v <= level);
  const [t0, t1] = [seconds[k - 1] as number, seconds[k] as number];
  const [v0, v1] = [values[k - 1] as number, values[k] as number];
  // Decays are straight in the logarithm.
  return t0 + ((t1 - t0) * Math.log(v0 / level)) / Math.log(v0 / v1);
};
const DIODE = { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 };

describe('transients with a closed answer', () => {
  it('a capacitor charges through a resistor', () => {
    const { seconds, volts } = solveTransient({
      seconds: 5e-3,
      elements: [
        { kind: 'dc', name: 'v', between: ['a', GROUND], volts: 10 },
        { kind: 'resistor', name: 'r', between: ['a', 'b'], ohms: 1000 },
        { kind: 'capacitor', name: 'c', between: ['b', GROUND], farads: 1e-6 },
      ],
    });
    seconds.forEach((t, k) => expect(of(volts, 'b')[k]).toBeCloseTo(10 * (1 - Math.exp(-t / 1e-3)), 3));
  });

  it('a capacitor given a voltage rings into an inductor', () => {
    const [henries, farads] = [1e-3, 1e-6];
    const { seconds, amps } = solveTransient({
      seconds: 2e-3,
      initial: { c: 5 },
      elements: [
        { kind: 'capacitor', name: 'c', between: ['a', GROUND], farads },
        { kind: 'inductor', name: 'l', between: ['a', GROUND], henries },
      ],
    });
    const w = 1 / Math.sqrt(henries * farads);
    // Ten cycles: a thousandth of the amplitude is what the run promises.
    seconds.forEach((t, k) => expect(Math.abs((of(amps, 'l')[k] as number) - (5 / (w * henries)) * Math.sin(w * t))).toBeLessThan(1e-3 * 0.16));
  });

  it('a coil let go into a resistor decays by L over R, from the spike that R makes', () => {
    const coil: Element[] = [
      { kind: 'dc', name: 'v', between: ['p', GROUND], volts: 12 },
      { kind: 'inductor', name: 'coil', between: ['p', 'q'], henries: 0.5, ohms: 400 },
      { kind: 'switch', name: 's', between: ['q', GROUND], closed: true, ohms: 0, opensAt: 5e-3 },
      { kind: 'resistor', name: 'damper', between: ['q', 'p'], ohms: 1000 },
    ];
    const run = solveTransient({ seconds: 0.02, initial: { coil: 0.03 }, elements: coil });
    expect(waveformMax(of(run.volts, 'q'))).toBeCloseTo(12 + 30, 3);
    expect(downTo(run, of(run.amps, 'coil'), 0.03 / Math.E, 5e-3) - 5e-3).toBeCloseTo(0.5 / 1400, 6);
  });

  it('a diode across the coil releases it slowly, at L/R·ln((V/R + Vd/R)/(i + Vd/R)) with the diode taken flat', () => {
    const run = solveTransient({
      seconds: 0.03,
      initial: { coil: 0.03 },
      elements: [
        { kind: 'dc', name: 'v', between: ['p', GROUND], volts: 12 },
        { kind: 'inductor', name: 'coil', between: ['p', 'q'], henries: 0.5, ohms: 400 },
        { kind: 'switch', name: 's', between: ['q', GROUND], closed: true, opensAt: 5e-3 },
        { kind: 'diode', name: 'd', between: ['q', 'p'], ...DIODE },
      ],
    });
    const spike = waveformMax(of(run.volts, 'q')) - 12;
    expect(spike).toBeCloseTo(1.7529 * 0.025852 * Math.log(0.03 / 4.64e-9) + 0.03 * 0.0355, 2);
    const flat = 0.65 / 400;
    const expected = (0.5 / 400) * Math.log((0.03 + flat) / (0.003 + flat));
    expect(Math.abs((downTo(run, of(run.amps, 'coil'), 0.003, 5e-3) - 5e-3) / expected - 1)).toBeLessThan(0.03);
  });

  it('a zener with the diode bounds the spike and shortens the release', () => {
    const elements = (volts: number | undefined): Element[] => [
      { kind: 'dc', name: 'v', between: ['p', GROUND], volts: 12 },
      { kind: 'inductor', name: 'coil', between: ['p', 'q'], henries: 0.5, ohms: 400 },
      { kind: 'switch', name: 's', between: ['q', GROUND], closed: true, opensAt: 5e-3 },
      { kind: 'diode', name: 'd', between: ['x', 'p'], ...DIODE },
      volts === undefined
        ? { kind: 'resistor', name: 'z', between: ['x', 'q'], ohms: 0 }
        : { kind: 'diode', name: 'z', between: ['x', 'q'], saturationAmps: 1e-12, emission: 1.5, ohms: 2, breakdownVolts: volts },
    ];
    const release = (volts: number | undefined): number => {
      const run = solveTransient({ seconds: 0.03, initial: { coil: 0.03 }, elements: elements(volts) });
      if (volts !== undefined) {
        const spike = waveformMax(of(run.volts, 'q')) - 12;
        expect(spike).toBeGreaterThan(volts);
        expect(spike).toBeLessThan(volts + 1.5);
      }
      return downTo(run, of(run.amps, 'coil'), 0.003, 5e-3) - 5e-3;
    };
    expect(release(24)).toBeLessThan(release(undefined) / 3);
  });
});

describe('switch-on of a supply', () => {
  const supply: Element[] = [
    { kind: 'sine', name: 'w', between: ['a', 'b'], peakVolts: 10.8 * Math.SQRT2, ohms: 2.7 },
    { kind: 'diode', name: 'd1', between: ['a', 'rail'], ...DIODE },
    { kind: 'diode', name: 'd2', between: ['b', 'rail'], ...DIODE },
    { kind: 'diode', name: 'd3', between: [GROUND, 'a'], ...DIODE },
    { kind: 'diode', name: 'd4', between: [GROUND, 'b'], ...DIODE },
    { kind: 'capacitor', name: 'c', between: ['rail', GROUND], farads: 2200e-6 },
    { kind: 'resistor', name: 'load', between: ['rail', GROUND], ohms: 35 },
  ];
  const surge = (startPhaseDegrees: number): number =>
    waveformMax(of(solveTransient({ seconds: 0.04, startPhaseDegrees, elements: supply }).amps, 'd1'));

  it('is worst at the crest, where resistance alone bounds it', () => {
    // At the crest: (peak − two diodes) over winding and diode resistance, the reservoir being empty.
    expect(surge(90)).toBeGreaterThan(surge(0));
    const drop = 2 * 1.7529 * 0.025852 * Math.log(surge(90) / DIODE.saturationAmps);
    expect(surge(90) / ((10.8 * Math.SQRT2 - drop) / (2.7 + 2 * 0.0355))).toBeCloseTo(1, 2);
  });

  it('ends in the periodic steady state', () => {
    const run = solveTransient({ seconds: 0.6, elements: supply });
    const steady = solveNetwork({ hertz: 50, elements: supply });
    const tail = run.seconds.findIndex((t) => t >= 0.58);
    const rail = of(run.volts, 'rail').slice(tail);
    expect(waveformMax(rail)).toBeCloseTo(waveformMax(of(steady.volts, 'rail')), 2);
    expect(waveformMin(rail)).toBeCloseTo(waveformMin(of(steady.volts, 'rail')), 2);
  });
});

describe('elements with a memory of their own', () => {
  it('a cold heater draws its cold current and reaches 90 % of its hot resistance when stated', () => {
    const { seconds, volts, amps } = solveTransient({
      seconds: 40,
      elements: [
        { kind: 'dc', name: 'v', between: ['h', GROUND], volts: 6.3 },
        { kind: 'heater', name: 'heater', between: ['h', GROUND], hotVolts: 6.3, hotAmps: 0.9, coldRatio: 0.25, warmUpSeconds: 8 },
      ],
    });
    const ohms = of(amps, 'heater').map((i, k) => (of(volts, 'h')[k] as number) / i);
    expect(of(amps, 'heater')[0]).toBeCloseTo(3.6, 4);
    expect(last(of(amps, 'heater'))).toBeCloseTo(0.9, 3);
    const k = ohms.findIndex((r) => r >= 0.9 * 7);
    expect(seconds[k]).toBeGreaterThan(7.5);
    expect(seconds[k]).toBeLessThan(8.5);
  });

  it('a voltage-controlled contact chatters between its two levels, its moments found closely', () => {
    // A comparator with hysteresis: draws 20 mA from 2 V up until 1 V down, on a 1 kΩ feed from 3 V into 1 µF.
    const { volts } = solveTransient({
      seconds: 0.05,
      eventSeconds: 1e-7,
      elements: [
        { kind: 'dc', name: 'v', between: ['a', GROUND], volts: 3 },
        { kind: 'resistor', name: 'r', between: ['a', 'b'], ohms: 1000 },
        { kind: 'capacitor', name: 'c', between: ['b', GROUND], farads: 1e-6 },
        {
          kind: 'behaviour', name: 'contact', between: ['b', GROUND], initialState: [0],
          amps: ({ state }) => (state[0] === 1 ? 0.02 : 0),
          crossing: ({ volts: v, state }) => (state[0] === 1 ? v - 1 : v - 2),
          next: ({ state }) => [state[0] === 1 ? 0 : 1],
        },
      ],
    });
    const settled = of(volts, 'b').slice(50);
    expect(waveformMax(settled)).toBeCloseTo(2, 2);
    expect(waveformMin(settled)).toBeCloseTo(1, 2);
  });

  it('states that change by given rates keep their own time', () => {
    const { seconds, amps } = solveTransient({
      seconds: 1,
      elements: [
        { kind: 'resistor', name: 'r', between: ['a', GROUND], ohms: 1 },
        {
          kind: 'behaviour', name: 'decay', between: [GROUND, 'a'], initialState: [1],
          amps: ({ state }) => state[0] as number, rates: ({ state }) => [-5 * (state[0] as number)],
        },
      ],
    });
    seconds.forEach((t, k) => expect(of(amps, 'r')[k]).toBeCloseTo(Math.exp(-5 * t), 3));
  });
});

describe('bounds', () => {
  const ripple: TransientOptions = {
    seconds: 2,
    maxPoints: 300,
    elements: [
      { kind: 'sine', name: 's', between: ['a', GROUND], peakVolts: 10 },
      { kind: 'resistor', name: 'r', between: ['a', GROUND], ohms: 1000 },
      { kind: 'switch', name: 'brief', between: ['b', 'a'], closed: false, closesAt: 1.005, opensAt: 1.0051 },
      { kind: 'resistor', name: 'pulse', between: ['b', GROUND], ohms: 10 },
    ],
  };
  it('thins to the points asked for and keeps a pulse of a tenth of a millisecond', () => {
    const { seconds, volts, amps } = solveTransient(ripple);
    expect(seconds.length).toBeLessThanOrEqual(300);
    expect(waveformMax(of(volts, 'a'))).toBeCloseTo(10, 1);
    expect(waveformMax(of(amps, 'pulse'))).toBeCloseTo(1, 2);
    for (let k = 1; k < seconds.length; k += 1) expect(seconds[k]).toBeGreaterThanOrEqual(seconds[k - 1] as number);
    expect(waveformMean(of(volts, 'a'), seconds)).toBeLessThan(10);
  });
  it('a run beyond the limit is a typed failure, not a hang', () => {
    expect(() => solveTransient({ ...ripple, hertz: 1e5, seconds: 100 })).toThrow(SolveError);
  });
  it('refuses what it cannot use, by name', () => {
    const bad = (change: Partial<TransientOptions>): void => {
      expect(() => solveTransient({ ...ripple, ...change })).toThrow(InputError);
    };
    bad({ seconds: 0 });
    bad({ maxPoints: 1 });
    bad({ initial: { s: 1 } });
    bad({ initial: { nobody: 1 } });
    bad({ eventSeconds: 10 });
  });
});
