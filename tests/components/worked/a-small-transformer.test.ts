import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/a-small-transformer.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 13 says of the Quillon 20’s small transformer', () => {
  it('the lowest secondary that holds is the shop’s own; the next one is past what the regulator bears', () => {
    expect(value('left12')).toBeLessThan(0);
    expect(value('left15')).toBeGreaterThan(0.3);
    expect(value('label')).toBe(15);
    expect(value('peak15')).toBeLessThan(value('maxInput'));
    expect(value('peak18')).toBeGreaterThan(value('maxInput'));
    expect(value('heat18')).toBeGreaterThan(1.2 * value('heat15'));
  });

  it('the smaller one has the amps and lacks the volts', () => {
    expect(value('smallerRms')).toBeLessThan(value('smallerRated'));
    expect(value('smallerShort')).toBeGreaterThan(0);
    expect(value('smallerPeak')).toBeGreaterThan(value('peak'));
  });

  it('RMS asks for more VA than DC does', () => {
    expect(value('rmsVoltAmps')).toBeGreaterThan(1.7 * value('dcVoltAmps'));
    expect(value('rmsVoltAmps')).toBeLessThan(0.9 * value('voltAmps'));
    expect(quiz.answers['va-from-rms']).toBeCloseTo(15 * value('rms'), 9);
  });

  it('the smaller the part, the further it rises', () => {
    const reads = ['1_5', '3', '5', '10', '25', '50'].map((size) => value(`reads${size}`));
    expect([...reads].sort((a, b) => b - a)).toEqual(reads);
    expect(value('rise')).toBeGreaterThanOrEqual(value('riseMin5'));
    expect(value('rise')).toBeLessThanOrEqual(value('riseMax5'));
    expect(value('rise')).toBeLessThan(value('allowed'));
    expect(quiz.answers['unloaded-crest']).toBeCloseTo(9 * 1.4 * 1.1 * Math.SQRT2, 9);
  });

  // Each carries its own short-circuit current: (1 + r)/r of its rating, r = 0.3.
  it('secondaries joined against each other carry their short-circuit current, and the primary that of a dead short', () => {
    expect(value('loopMultiple')).toBeCloseTo(1.3 / 0.3, 9);
    expect(value('loopPrimary')).toBeCloseTo((1.3 ** 2 / 0.3) * (5 / 120), 9);
    expect(value('loopPrimary') / value('fuse')).toBeLessThan(3);
    expect(value('against')).toBeCloseTo(39, 9);
  });

  it('fed backwards it is dangerous', () => expect(value('backwards')).toBeGreaterThan(50));

  it('the Tarn 45 done this way is past its limits', () => {
    expect(value('tarnJunction')).toBeGreaterThan(125);
    expect(value('tarnRoom')).toBeGreaterThan(1);
  });
});
