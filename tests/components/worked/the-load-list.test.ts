import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/the-load-list.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 5 says of the Quillon 20’s loads', () => {
  it('the four sums come in their order, and the margin on top', () => {
    const order = ['idle', 'running', 'everything', 'firstMoment'].map(value);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(value('wanted')).toBeGreaterThan(value('firstMoment'));
  });

  it('a coil takes most on a high rail, at the low end of its tolerance, cold', () => {
    expect(value('coilAmps')).toBeCloseTo(12 / 360, 9);
    expect(value('coilMost')).toBeCloseTo(12.6 / 324, 9);
    expect(value('coilCold')).toBeGreaterThan(value('coilMost'));
  });

  it('cold heaters want several times their running current', () => {
    expect(value('heaterCold')).toBeCloseTo(6 * value('heaterHot'), 9);
    expect(value('coldRatio')).toBeGreaterThanOrEqual(2.7);
    expect(value('coldRatio')).toBeLessThanOrEqual(7.2);
  });

  it('answers its quiz by the same rules', () => expect(quiz.answers['coil-most']).toBeCloseTo(12.6 / 648, 9));
});
