import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/survey-the-amp.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;
const spare = shop.tarn45.amp.spare;

describe('what lesson 4 says of two readings', () => {
  it('they find the winding that the shop’s plan describes, within their own limits', () => {
    expect(value('ohms')).toBeCloseTo(spare?.ohms ?? Number.NaN, 2);
    expect(value('ohmsLeast')).toBeLessThan(spare?.ohms ?? Number.NaN);
    expect(value('ohmsMost')).toBeGreaterThan(spare?.ohms ?? Number.NaN);
    expect(value('step') / value('upAmps')).toBeCloseTo(value('ohms'), 9);
  });

  it('an unwatched mains is worth about a tenth of the answer, though it moved by half a per cent', () => {
    expect(value('naiveError')).toBeGreaterThan(0.08);
    expect(value('naiveError')).toBeLessThan(0.12);
    expect(1 - value('loadedMains') / value('mains')).toBeLessThan(0.005);
  });

  it('a light load tells nothing, and the ohmmeter little', () => {
    expect(value('weakLeast')).toBe(0);
    expect(value('weakMost')).toBeGreaterThan(2 * value('ohms'));
    const width = (least: string, most: string): number => value(most) - value(least);
    expect(width('meteredLeast', 'meteredMost')).toBeGreaterThan(5 * width('ohmsLeast', 'ohmsMost'));
    expect(value('ownOhms')).toBeLessThan(0.6 * value('ohms'));
  });

  it('asks its quiz for a step over a step', () => expect(quiz.answers['source-ohms']).toBeCloseTo(0.8, 9));
});

describe('what it says of a few volts on a transformer', () => {
  it('the small supply keeps the largest winding within the touch limit, the large one does not', () => {
    expect(value('smallHigh')).toBeLessThan(value('touchAc'));
    expect(value('largeHigh')).toBeGreaterThan(value('touchAc'));
    expect(value('smallSpare') / value('smallUnloaded')).toBeCloseTo(16.2 / 230, 9);
  });

  it('the wrong way round it is lethal', () => {
    expect(value('backwardsMains')).toBeGreaterThan(value('mains'));
    expect(value('backwardsHigh')).toBeGreaterThan(900);
  });

  // (5.1/4.2)·(234.5 + 21) − 234.5, by hand.
  it('a primary’s resistance is its thermometer', () => expect(value('copperCelsius')).toBeCloseTo(75.75, 2));
});
