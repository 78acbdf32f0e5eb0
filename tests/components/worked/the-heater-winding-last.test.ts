import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/the-heater-winding-last.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 14 says of the heater windings', () => {
  it('the total lies between quadrature and sum, and quadrature promises far too little', () => {
    expect(value('tarnTotal')).toBeGreaterThan(value('quadrature'));
    expect(value('tarnTotal')).toBeLessThan(value('sum'));
    expect(value('quadrature') - value('tarnHeaters')).toBeLessThan(0.25 * value('rise'));
  });

  it('the heaters alone are what is listed, at the winding’s volts', () => {
    // 3 A of 6.3 V heaters on 6.387 V.
    expect(value('tarnHeaters')).toBeCloseTo((3 / 6.3) * value('heaterBefore'), 6);
  });

  it('two amps pass their rating on strong mains, the third has room', () => {
    expect(value('quillonTotal')).toBeGreaterThan(value('quillonRated'));
    expect(value('fennelTotal')).toBeLessThan(value('fennelRated'));
    expect(value('fennelHigh')).toBeGreaterThan(value('fennelRated'));
    expect(value('tarnHigh')).toBeLessThan(0.9 * value('tarnRated'));
  });

  it('5 V holds with Schottky diodes and a low-dropout part only', () => {
    expect(value('siliconShort')).toBeGreaterThan(value('schottkyShort'));
    expect(value('schottkyShort')).toBeGreaterThan(0.5);
    expect(value('lowLeft')).toBeGreaterThan(0.3);
    expect(value('lowLeft')).toBeCloseTo(value('lowValley') - value('neededLow'), 9);
  });

  it('a doubler draws about five times its DC and still falls short with a common regulator', () => {
    expect(value('doubledRatio')).toBeGreaterThan(4.5);
    expect(value('doubledRatio')).toBeLessThan(6);
    expect(value('doubledShort')).toBeGreaterThan(0.5);
    expect(value('doubledLowLeft')).toBeGreaterThan(0.3);
    expect(value('doubledLowRms')).toBeGreaterThan(value('doubledRms'));
    expect(quiz.answers['doubler-rms']).toBeCloseTo(value('doubledRms'), 9);
  });

  it('the heaters keep their volts and lose their crest', () => {
    expect(1 - value('heaterAfter') / value('heaterBefore')).toBeLessThan(0.01);
    expect(value('crestAfter')).toBeLessThan(Math.SQRT2 - 0.01);
  });

  it('a second ground puts tens of amps into half the winding, and under an amp more at the mains', () => {
    expect(value('trapAmps')).toBeGreaterThan(10);
    expect(value('trapMains')).toBeLessThan(1);
    expect(value('trapRail')).toBeGreaterThan(2);
    expect(value('trapRail')).toBeLessThan(0.7 * value('trapAlone'));
  });

  it('an elevated rail stands below the limit by little, and at the high voltage with one resistor open', () => {
    expect(value('elevatedPlus')).toBeGreaterThan(value('elevation'));
    expect(value('touch') - value('elevatedPlus')).toBeLessThan(15);
    expect(value('openedVolts')).toBeGreaterThan(0.9 * value('highVolts'));
    expect(value('openedJoules')).toBeGreaterThan(1);
  });

  it('half as much again in the tap is about half as much again in the rise', () => {
    const rise = (quiz.answers['total-with-tap'] ?? Number.NaN) - value('tarnHeaters');
    expect(rise / value('rise')).toBeGreaterThan(1.3);
    expect(rise / value('rise')).toBeLessThan(1.6);
  });
});
