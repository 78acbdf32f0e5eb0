import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/one-ground.ts';

const { figures, quiz, sheet } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 15 says of two grounds on the Tarn 45’s spare winding', () => {
  it('the current is the crest less a diode over the winding’s ohms, for half of the cycle', () => {
    const estimate = (16.2 * Math.SQRT2 - 1.1) / 0.48;
    expect(Math.abs(value('twoPeak') / estimate - 1)).toBeLessThan(0.03);
    // Half of a sine has half the crest as its RMS.
    expect(Math.abs(value('twoAmps') / (value('twoPeak') / 2) - 1)).toBeLessThan(0.05);
  });

  it('the rail hardly shows it, the winding and the diode are far past their ratings', () => {
    expect(value('railLost')).toBeGreaterThan(0);
    expect(value('railLost')).toBeLessThan(0.05);
    expect(value('windingHeat')).toBeGreaterThan(50);
    expect(value('d4Mean')).toBeGreaterThan(5 * value('d4Rated'));
  });

  it('the diode is gone before the winding, however it is mounted', () => {
    expect(value('d4Fast')).toBeLessThan(value('d4Slow'));
    expect(value('d4Slow')).toBeLessThan(value('ruin'));
  });

  it('shorted, the diode lets the whole wave through', () => {
    expect(Math.abs(value('burntAmps') / (16.2 / 0.49) - 1)).toBeLessThan(0.02);
  });

  it('the mains fuse is below its rating first, and below what it must bear for an hour later', () => {
    expect(value('fuseShare')).toBeLessThan(1);
    expect(value('burntMultiple')).toBeGreaterThan(1);
    expect(value('burntMultiple')).toBeLessThan(1.5);
    expect(value('burntHolds')).toBeCloseTo(3600, 6);
  });

  it('the winding’s own fuse sees it from one end only', () => {
    expect(value('otherEndFuse')).toBeGreaterThan(5);
    expect(value('otherEndOpens')).toBeLessThan(1);
  });

  it('draws that case', () => {
    expect(sheet).toMatchObject({ windingGround: 'first', isNegativeGrounded: true });
  });
});

describe('what lesson 15 says of one ground and of none', () => {
  it('with a winding end as the only ground the negative swings with the mains, as far as the crest', () => {
    expect(value('swingMean')).toBeCloseTo(-value('oneRail') / 2, 1);
    expect(value('swingAc')).toBeGreaterThan(5);
    expect(value('swingPeak')).toBeLessThan(16.2 * Math.SQRT2);
  });

  it('a breakdown lifts a floating rail to the high voltage, and a bonded one by hardly more than the rail', () => {
    expect(value('liftedVolts')).toBeGreaterThanOrEqual(value('highVolts'));
    expect(value('liftedHand')).toBeCloseTo(value('liftedVolts') / 3000, 2);
    expect(value('caughtVolts')).toBeLessThan(value('oneRail') + 2);
    expect(value('caughtAmps')).toBeGreaterThan(0.1);
  });

  it('but only while something draws from it: idle, the bond holds the negative alone', () => {
    expect(value('idleVolts')).toBeGreaterThan(400);
    expect(value('idleHand')).toBeGreaterThan(0.1);
  });

  it('a floating converter stands at half the mains, and a hand passes more than an unearthed part may', () => {
    expect(value('leakVolts')).toBeCloseTo(120, -1);
    expect(value('leakAmps')).toBeGreaterThan(value('unearthed'));
  });
});

describe('the quiz of lesson 15', () => {
  it('asks for the crest less a diode over the ohms', () => expect(quiz.answers['peak-of-another']).toBeCloseTo((10 * Math.SQRT2 - 1) / 0.3, 9));
});
