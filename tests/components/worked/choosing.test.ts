import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/choosing.ts';

const { figures, say, quiz } = work(shop);
const value = (name: string): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 19 says of the three jobs', () => {
  it('they end in three different ways, none of them the heater winding', () => {
    expect([say['quillonWins'], say['tarnWins'], say['fennelWins']]).toEqual(['a small transformer', 'the spare winding', 'a converter module']);
  });

  it('the figures that the tables call too much are beyond their limits', () => {
    expect(value('qhLoading')).toBeGreaterThan(1);
    expect(value('fhLoading')).toBeGreaterThan(1);
    expect(value('ttRoom')).toBeGreaterThan(1);
    expect(value('ftRoom')).toBeGreaterThan(1);
    expect(value('ttJunction')).toBeGreaterThan(125);
  });

  it('the Tarn’s module runs well within its rating and cannot start its cold heaters at once', () => {
    expect(value('tcLoading')).toBeLessThan(0.8);
    expect(value('tcCold')).toBeGreaterThan(1);
    expect(value('tcTries')).toBeGreaterThan(5);
  });

  it('the Tarn’s heater winding is within its rating by loading and far beyond it with both grounds made', () => {
    expect(value('thLoading')).toBeLessThan(1);
    expect(value('trapAmps')).toBeGreaterThan((shop.tarn45.amp.heater?.ratedAmps ?? Number.NaN) * 1.5);
  });
});

describe('what lesson 19 says would turn the choice round', () => {
  it('one fact at a time', () => {
    expect(say['quillonSmall']).toBe('a converter module');
    expect(say['quillonUnearthed']).toBe('none of them');
    expect(say['fennelLarge']).toBe('a converter module');
    expect(say['tarnWithoutSpare']).toBe('none of them');
    expect(say['tarnRelaysOnly']).toBe('a small transformer');
  });
});

it('the quiz of lesson 19 asks for the square of the loading', () => expect(quiz.answers['copper-heat']).toBeCloseTo((value('fhRms') / value('fhRated')) ** 2, 9));
