import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/the-heater-windings-trap.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 16 says of a grounded tap and a grounded negative on the Tarn 45', () => {
  it('each half carries tens of amps, the rail falls to about half and the heaters dim', () => {
    expect(value('halfAmps')).toBeGreaterThan(4 * value('tarnRated'));
    expect(value('tapRailShare')).toBeGreaterThan(0.45);
    expect(value('tapRailShare')).toBeLessThan(0.6);
    expect(value('heatersLost')).toBeGreaterThan(0.2);
  });

  it('the peak is half the crest less the knee over half the ohms and the diode’s, within what the heaters take off', () => {
    const estimate = ((6.6 / 2) * Math.SQRT2 - value('knee')) / (0.035 + value('diodeOhms'));
    expect(value('tapPeak')).toBeLessThan(estimate);
    expect(value('tapPeak')).toBeGreaterThan(0.85 * estimate);
  });

  it('the mains sees less than an amp of it, and its fuse stays below its rating', () => {
    expect(value('primary')).toBeLessThan(1);
    expect(value('fuseShare')).toBeLessThan(1);
    // By the turns ratio, both halves as one winding carry what is left after they are set against each other.
    expect(value('primary')).toBeGreaterThan(3 * value('primaryBefore'));
  });

  it('the diodes go within seconds, one-amp silicon past its single surge, and a shorted one leaves the worst', () => {
    expect(value('diodeSlow')).toBeLessThan(5);
    expect(value('diodeFast')).toBeLessThan(value('diodeSlow'));
    expect(value('siliconPeak')).toBeGreaterThan(value('siliconOnce'));
    expect(value('ruin')).toBeGreaterThan(value('diodeSlow'));
    expect(value('burntHalf')).toBeGreaterThan(2 * value('halfAmps'));
  });
});

describe('what it says of the other ways in which heaters are held', () => {
  it('an artificial centre: milliamps, the resistors within their rating, the balance gone', () => {
    expect(value('quillonAmps')).toBeLessThan(0.1);
    expect(value('resistorAfter')).toBeGreaterThan(1.5 * value('resistorBefore'));
    expect(value('resistorAfter')).toBeLessThan(value('resistorRated'));
    expect(value('quillonLow')).toBeGreaterThan(-1);
    expect(value('quillonHigh')).toBeGreaterThan(1.8 * value('quillonBefore'));
    expect(value('quillonCommon')).toBeGreaterThan(1);
    expect(value('quillonRail')).toBeCloseTo(value('quillonFreeRail'), 1);
  });

  it('one end: the whole winding shorted while the rail reads right', () => {
    expect(value('legWinding')).toBeGreaterThan(value('halfAmps'));
    expect(Math.abs(value('legRail') / value('freeRail') - 1)).toBeLessThan(0.02);
  });

  it('an elevation: the rail rides on it, near 60 V and not past it; grounding the rail brings it down', () => {
    expect(value('fennelHigh')).toBeCloseTo(45 + 4, 0);
    expect(1.1 * value('fennelHigh')).toBeLessThan(60);
    expect(1.1 * value('fennelHigh')).toBeGreaterThan(50);
    expect(value('fennelMean')).toBeLessThan(5);
    expect(value('openedVolts')).toBeGreaterThan(400);
  });

  it('the arrangements that do not fight hold what the words say', () => {
    expect(value('twoDiodesRail')).toBeGreaterThan(3);
    expect(value('freedRail')).toBeCloseTo(value('freeRail'), 6);
    expect(value('hungDrawing')).toBeLessThan(20);
    expect(value('hungIdle')).toBeGreaterThan(400);
  });

  it('a doubler on a grounded tap staggers', () => {
    expect(value('doubledAmps')).toBeGreaterThan(20);
    expect(value('doubledMin')).toBeLessThan(0.3 * value('doubledRail'));
  });
});

describe('the quiz of lesson 16', () => {
  it('asks for half the crest less a diode over half the ohms', () => expect(quiz.answers['half-of-another']).toBeCloseTo((6.4 * Math.SQRT2 - 1) / 0.08, 9));
});
