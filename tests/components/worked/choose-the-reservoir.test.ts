import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/choose-the-reservoir.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => figures[name]?.value ?? Number.NaN;
const DRAWER = [100, 150, 220, 470, 1000, 4700];

describe('what lesson 8 says of the Quillon 20’s reservoir', () => {
  it('a larger one leaves more over, and each step gains less than the one before', () => {
    for (const age of ['new', 'old']) {
      const left = DRAWER.map((size) => value(`${age}${size}`));
      const gains = left.slice(1).map((volts, at) => volts - (left[at] ?? Number.NaN));
      for (const gain of gains) expect(gain).toBeGreaterThan(0);
      // From 220 µF on each step multiplies the size by two or more, and still gains less.
      const late = gains.slice(2);
      expect([...late].sort((a, b) => b - a)).toEqual(late);
    }
  });

  it('one that holds when new fails when it is small and old; the shop’s own holds for life', () => {
    expect(value('new150')).toBeGreaterThan(0);
    expect(value('old150')).toBeLessThan(0);
    expect(value('left')).toBeGreaterThan(1);
    expect(value('gain')).toBeLessThan(0.5);
  });

  it('the old part has 0.64 of its marking', () => {
    expect(value('oldest') / value('marked')).toBeCloseTo(0.64, 9);
    expect(quiz.answers['end-of-life']).toBeCloseTo(640e-6, 12);
  });

  it('the ripple current of the largest is that of the smallest, give or take a twentieth, and more than the load', () => {
    expect(value('rippleLarge') / value('rippleSmall')).toBeGreaterThan(1);
    expect(value('rippleLarge') / value('rippleSmall')).toBeLessThan(1.05);
    expect(value('rippleAmps')).toBeGreaterThan(value('dc'));
    expect(value('rippleAmps')).toBeLessThan(0.8 * value('ratedHere'));
  });

  it('the winding’s current hardly follows the size, the first gulp in proportion to it', () => {
    expect(value('windingLarge') / value('windingSmall')).toBeLessThan(1.02);
    expect(value('gulpLarge') / value('gulp')).toBeCloseTo(10, 6);
  });

  it('the rating chosen is the shop’s own, the lower ones are past the fifth and past the surge', () => {
    expect(value('rated')).toBe(shop.quillon20.parts.reservoir?.ratedVolts);
    expect(value('tight')).toBeGreaterThan(value('unloaded'));
    expect(value('tight')).toBeLessThan(value('fifth'));
    expect(value('surge')).toBeLessThan(value('unloaded'));
  });

  it('twenty kelvin is a quarter of the life, up to the ceiling', () => {
    for (const grade of ['life85', 'life105']) expect(value(grade) / value(`${grade}Hot`)).toBeCloseTo(4, 6);
    expect(value('lifeLong')).toBe(130_000 * 3600);
    expect(value('life105') / value('life85')).toBeCloseTo(4, 6);
  });

  it('reversed, it is held by the winding’s resistance alone', () => {
    const { openCircuitVolts, ohms } = shop.tarn45.amp.spare ?? { openCircuitVolts: Number.NaN, ohms: Number.NaN };
    expect(value('reversedTarnAmps')).toBeLessThan(openCircuitVolts / ohms);
    expect(value('reversedTarnAmps')).toBeGreaterThan((0.9 * openCircuitVolts - 4) / ohms / 1.3);
    expect(value('reversedTarnWatts')).toBeGreaterThan(10 * value('reversedWatts'));
  });

  it('the rule reads above the solved ripple', () => expect(value('ruleRipple')).toBeGreaterThan(1.3 * value('solvedRipple')));
});
