import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/the-load-list.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 5 says of the Quillon 20’s loads', () => {
  it('the sums come in their order, and the margin on top', () => {
    for (const names of [['idle', 'running', 'everything', 'firstMoment', 'wanted'], ['tarnIdle', 'tarnRunning', 'tarnEverything', 'tarnFirst']]) {
      const order = names.map(value);
      expect([...order].sort((a, b) => a - b)).toEqual(order);
    }
  });

  it('a coil takes most on a high rail, at the low end of its tolerance', () => {
    expect(value('coilAmps')).toBeCloseTo(12 / 360, 9);
    expect(value('coilMost')).toBeCloseTo(12.6 / 324, 9);
  });

  it('the margin has room for the coils of a cold van', () => {
    const cold = 2 * value('coilMost') * (1 + value('coldGain')) + value('lampMost');
    expect(cold).toBeLessThan(value('wanted'));
  });

  it('without heaters the first moment is like any other; with them it is several times the rest', () => {
    expect(value('firstMoment')).toBeCloseTo(value('everything'), 9);
    expect(value('tarnFirst')).toBeGreaterThan(3 * value('tarnEverything'));
  });

  it('its cold heaters are within what has been measured', () => {
    expect(value('coldRatio')).toBeGreaterThanOrEqual(2.7);
    expect(value('coldRatio')).toBeLessThanOrEqual(7.2);
  });

  it('answers its quiz by the same rules', () => expect(quiz.answers['coil-most']).toBeCloseTo(12.6 / 648, 9));
});
