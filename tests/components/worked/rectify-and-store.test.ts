import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/rectify-and-store.ts';

const { figures, cycle } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 7 says of the small transformer', () => {
  it('the winding feels more than the load takes, and stays within its rating', () => {
    expect(value('ratio')).toBeGreaterThan(1.5);
    expect(value('windingRms')).toBeLessThan(value('ratedAmps'));
    expect(value('highRms')).toBeLessThan(value('ratedAmps'));
  });

  it('taking the label’s amps as DC amps overloads it by far', () => {
    expect(value('overRms')).toBeGreaterThan(1.3 * value('ratedAmps'));
    expect(value('dcAllowed')).toBeLessThan(0.75 * value('ratedAmps'));
  });

  it('a soft winding lowers the ratio for every rectifier, and a doubler on a stiff one is the worst', () => {
    for (const kind of ['bridge', 'tap', 'half', 'doubler']) expect(value(`${kind}Soft`), kind).toBeLessThan(value(`${kind}Stiff`));
    expect(value('doublerStiff')).toBeGreaterThan(value('halfStiff'));
  });

  // Tabulated for ωCR = 50 with ideal diodes: 1.48 and 3.12 for a bridge, 4.67 for a doubler.
  it('agrees with the published extremes of the ratio', () => {
    expect(value('bridgeLow')).toBeCloseTo(1.48, 1);
    expect(value('bridgeHigh')).toBeCloseTo(3.12, 1);
    expect(value('doublerHigh')).toBeCloseTo(4.67, 1);
  });

  it('each half of a centre tap carries the bridge’s ratio over √2, not the 0.8 that is printed', () => {
    expect(value('tapSoft')).toBeGreaterThan(1.05);
    expect(value('tapSoft') * Math.SQRT2).toBeCloseTo(value('bridgeSoft'), 0);
  });

  it('mean, valley and the two peaks come in their order', () => {
    const order = ['valley', 'mean', 'idleVolts', 'noLoadHigh'].map(value);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  it('the rule reads too high, and the sum of 1.414 promises more than the loaded rail gives', () => {
    expect(value('ruleError')).toBeGreaterThan(0.25);
    expect(value('naiveVolts')).toBeGreaterThan(value('mean'));
    expect(value('naiveVolts')).toBeLessThan(value('idleVolts'));
  });

  it('a flat top costs the stiff winding’s rail the larger part of its volts', () => {
    expect(value('flatStiff') / value('stiffMean')).toBeGreaterThan(2 * (value('flatSoft') / value('mean')));
  });

  it('twice the reservoir hardly moves the winding’s current', () => expect(value('biggerReservoirRms')).toBeLessThan(0.02));

  it('the parts chosen stand what they meet', () => {
    expect(value('goodRating')).toBeGreaterThanOrEqual(value('noLoadHigh') / 0.8);
    expect(value('badRating')).toBeLessThan(value('noLoadHigh'));
    expect(value('badRating')).toBeGreaterThan(value('mean'));
    expect(value('diodeReverse')).toBeGreaterThan(2 * value('reverse'));
    expect(shop.quillon20.parts.reservoir?.ratedVolts).toBe(value('goodRating'));
  });

  it('the cycle of the dial is the solved one: two pulses, the same charge each way', () => {
    const half = (cycle.windingAmps.length - 1) / 2;
    const sum = (from: number, to: number): number => cycle.windingAmps.slice(from, to).reduce((total, amps) => total + amps, 0);
    expect(sum(0, half)).toBeGreaterThan(0);
    expect(sum(0, half) / -sum(half, 2 * half)).toBeCloseTo(1, 2);
  });
});
