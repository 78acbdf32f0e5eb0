import { describe, expect, it } from 'vitest';
import { GROUND, InputError, solveNetwork, waveformMax, waveformMin } from '../../../src/compute/index.ts';
import type { Element, RegulatorElement } from '../../../src/compute/index.ts';

const PART: RegulatorElement = { kind: 'regulator', name: 'regulator', between: ['in', 'out'], reference: GROUND, setVolts: 5, dropoutVolts: 2 };
const LIMIT = { peakAmps: 2, foldVolts: 10, foldedAmps: 0.5, foldedVolts: 30 } as const;

/** Output volts from a steady input into a resistor. */
function outputFrom(volts: number, ohms: number, more: Partial<RegulatorElement> = {}): { volts: number; amps: number; inputAmps: number } {
  const elements: Element[] = [
    { kind: 'dc', name: 'source', between: ['in', GROUND], volts },
    { ...PART, ...more },
    { kind: 'resistor', name: 'load', between: ['out', more.reference ?? GROUND], ohms },
    ...(more.reference === undefined ? [] : [{ kind: 'resistor' as const, name: 'lift', between: [more.reference, GROUND] as const, ohms: 1 }]),
  ];
  const solution = solveNetwork({ hertz: 50, elements });
  return { volts: solution.volts['out']?.[0] as number, amps: solution.amps['load']?.[0] as number, inputAmps: -(solution.amps['source']?.[0] as number) };
}

describe('a series regulator', () => {
  it('holds its output while the input stands two volts above it, less ten millivolts per ampere', () => {
    expect(outputFrom(9, 10).volts).toBeCloseTo(5 - 0.5 * 0.01, 3);
    expect(outputFrom(30, 1000).volts).toBeCloseTo(5, 3);
    expect(outputFrom(9, 10).inputAmps).toBeCloseTo(outputFrom(9, 10).amps, 9);
  });

  it('in dropout gives the input less its dropout', () => {
    const { volts, amps } = outputFrom(6, 10);
    expect(volts).toBeCloseTo(6 - 2 - amps * 0.05, 3);
    expect(outputFrom(1, 10).volts).toBeLessThan(0.01);
  });

  it('limits into a short, less with more across it', () => {
    expect(outputFrom(8, 0.01, { limit: LIMIT }).amps).toBeCloseTo(2, 2);
    expect(outputFrom(20, 0.01, { limit: LIMIT }).amps).toBeCloseTo(2 - 1.5 * ((20 - 10) / 20), 1);
    expect(outputFrom(35, 0.01, { limit: LIMIT }).amps).toBeCloseTo(0.5, 2);
  });

  it('holds against the node it is told to, and never passes current backwards', () => {
    const lifted = outputFrom(12, 10, { reference: 'lifted' });
    expect(lifted.amps * 10).toBeCloseTo(5 - 0.005, 2);
    const back = solveNetwork({
      hertz: 50,
      elements: [
        { kind: 'resistor', name: 'bleed', between: ['in', GROUND], ohms: 100 },
        PART,
        { kind: 'dc', name: 'pushed', between: ['out', GROUND], volts: 9, ohms: 0.1 },
      ],
    });
    expect(back.volts['in']?.[0]).toBeLessThan(0.01);
  });

  it('lets the valley of a ripple through and nothing of it above', () => {
    const elements: Element[] = [
      { kind: 'sine', name: 'ripple', between: ['in', 'mean'], peakVolts: 1 },
      { kind: 'dc', name: 'mean', between: ['mean', GROUND], volts: 7.5 },
      PART,
      { kind: 'resistor', name: 'load', between: ['out', GROUND], ohms: 50 },
    ];
    const out = solveNetwork({ hertz: 100, elements }).volts['out'] as Float64Array;
    expect(waveformMax(out)).toBeCloseTo(5, 2);
    expect(waveformMin(out)).toBeCloseTo(6.5 - 2, 1);
  });

  it('refuses figures that cannot be', () => {
    expect(() => outputFrom(9, 10, { setVolts: 0 })).toThrow(InputError);
    expect(() => outputFrom(9, 10, { reference: '' })).toThrow(InputError);
    expect(() => outputFrom(9, 10, { limit: { ...LIMIT, foldedAmps: 3 } })).toThrow(InputError);
  });
});
