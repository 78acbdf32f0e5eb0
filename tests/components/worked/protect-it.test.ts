import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/protect-it.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 10 says of the Tarn 45’s fuses', () => {
  it('the winding carries about twice the DC, so a fuse rated from DC runs beyond its rating and short of certain opening', () => {
    expect(value('ratio')).toBeGreaterThan(2);
    expect(value('byDcMultiple')).toBeGreaterThan(1.5);
    expect(value('byDcMultiple')).toBeLessThan(2.1);
    expect(value('byDcSoonest')).toBeGreaterThan(30);
  });

  it('what carries the running current does not bear the gulp; the fuse chosen bears both and is not above the winding’s rating', () => {
    expect(value('bearsCarries')).toBeLessThan(value('inrush'));
    expect(value('bearsFuse')).toBeGreaterThan(value('inrush'));
    expect(value('fuse')).toBeLessThanOrEqual(value('windingRated'));
    expect(value('fuse')).toBeGreaterThan(1.1 * value('rms'));
    expect(value('shortClears')).toBeLessThan(0.1);
  });

  it('with the winding shorted the mains fuse stands at about one and a half times its rating', () => {
    expect(value('mainsMultiple')).toBeGreaterThan(1.5);
    expect(value('mainsMultiple')).toBeLessThan(2.1);
    expect(value('mainsHolds')).toBeGreaterThan(1800);
    // 16.2 V over 0.48 Ω, squared against 2.5 A.
    expect(value('shortHeat')).toBeCloseTo((16.2 / 0.48 / 2.5) ** 2, 6);
  });

  it('the wire outlasts the fuse, the thinner one would not', () => {
    expect(value('wireAmps')).toBeGreaterThanOrEqual(value('hourAmps'));
    expect(value('thinAmps')).toBeGreaterThan(value('rms'));
    expect(value('thinAmps')).toBeLessThan(value('hourAmps'));
  });

  it('the clamp dies before the winding’s fuse, and a fuse behind the reservoir is quick', () => {
    expect(value('clamp')).toBeGreaterThan(value('railVolts') * 1.05);
    expect(value('clamp')).toBeLessThan(value('coilMost'));
    expect(value('clampWatts')).toBeGreaterThan(20);
    expect(value('clampLongest')).toBeGreaterThan(100 * value('railFuseLongest'));
    expect(value('railFuse')).toBeGreaterThan(value('dc'));
  });
});

describe('what lesson 10 says of the Quillon 20’s small transformer', () => {
  it('its fuse is the one that the parts list sizes, and a short draws little more than twice that', () => {
    expect(value('primary')).toBeCloseTo(5 / 120, 9);
    expect(value('primaryFuse')).toBe(0.08);
    // 19.5 V over 13.5 Ω, by the turns ratio of 19.5 to 120.
    expect(value('primaryShort')).toBeCloseTo((19.5 / 13.5) * (19.5 / 120), 9);
    expect(value('primaryMultiple')).toBeGreaterThan(2.1);
    expect(value('primaryMultiple')).toBeLessThan(3);
  });

  it('the winding passes both limits of its class while a slow fuse still holds', () => {
    expect(value('raceSoonest')).toBeLessThan(1);
    expect(value('raceNormal')).toBeLessThan(value('raceOverload'));
    expect(value('raceOverload')).toBeLessThan(600);
    expect(value('raceMultiple')).toBeLessThan(2.1);
    expect(value('primaryHeat')).toBeCloseTo((19.5 / 13.5 / (1 / 3)) ** 2, 6);
  });
});

describe('the quiz of lesson 10', () => {
  it('asks for C·V²/2R', () => expect(quiz.answers['gulp-of-another']).toBeCloseTo((2200e-6 * 20 * 20) / 0.8, 9));
});
