import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/bring-it-up.ts';
import { behindLamp, lampOhms } from '../../../src/components/worked/series-lamp.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('a lamp in the line', () => {
  const lamp = { watts: 60, volts: 120 };

  it('has its rated resistance at its rated volts and a twelfth of it cold', () => {
    expect(lampOhms(lamp, 120)).toBeCloseTo(240, 9);
    expect(lampOhms(lamp, 0.01)).toBeCloseTo(20, 9);
  });

  it('shares the mains with its load: volts add up, the current is one', () => {
    for (const loadOhms of [0.5, 20, 156, 2880]) {
      const { amps, lampVolts, loadVolts } = behindLamp({ lamp, mainsVolts: 121, loadOhms });
      expect(lampVolts + loadVolts).toBeCloseTo(121, 6);
      expect(amps * lampOhms(lamp, lampVolts)).toBeCloseTo(lampVolts, 5);
    }
  });
});

describe('what lesson 21 says of limiters', () => {
  it('a shorted small transformer passes most of its short-circuit current behind the large lamp, and the small one shows it', () => {
    expect(value('bigShortAmps') / value('shortAmps')).toBeGreaterThan(0.8);
    expect(value('bigShortHeat')).toBeGreaterThan(10);
    expect(value('bigShortLamp')).toBeLessThan(value('mains') / 6);
    expect(value('smallShortHeat')).toBeLessThan(0.35 * value('bigShortHeat'));
    // Open-circuit over rated loss: a short draws (1 + r)/r times rated, r = 0.3.
    expect(value('shortHeat')).toBeCloseTo((1.3 / 0.3) ** 2, 6);
  });

  it('behind the lamp the amp gets about half its mains, so no reading counts', () => {
    expect(value('bigAmpVolts')).toBeGreaterThan(0.4 * value('day'));
    expect(value('bigAmpVolts')).toBeLessThan(0.55 * value('day'));
  });

  it('the unloaded high voltage passes the mark that its reservoirs bear', () => {
    expect(value('highPeak')).toBeCloseTo(325 * Math.SQRT2 * 1.1, 6);
    expect(value('highPeak')).toBeGreaterThan(value('highMark'));
    expect(value('highMark')).toBeGreaterThan(value('highVolts'));
  });
});

describe('what lesson 21 says of meters', () => {
  it('true RMS times 3.1 to 3.5 is peak to peak, and an averaging meter hardly differs on ripple', () => {
    expect(value('trueTimes')).toBeGreaterThan(3.1);
    expect(value('trueTimes')).toBeLessThan(3.5);
    expect(Math.abs(value('rippleAveraging') / value('ripple') - 1)).toBeLessThan(0.05);
  });

  it('an averaging clamp misses a third of the winding’s current and over half of its heat', () => {
    expect(value('averagingShort')).toBeGreaterThan(0.3);
    expect(value('heatShort')).toBeGreaterThan(0.5);
    expect(1 - (1 - value('averagingShort')) ** 2).toBeCloseTo(value('heatShort'), 9);
  });

  it('the valley worked out from the two readings is the solved one, within a tenth of a volt, and the regulator holds there', () => {
    expect(Math.abs(value('valley') - value('solvedValley'))).toBeLessThan(0.1);
    expect(value('left')).toBeGreaterThan(1);
  });

  it('a valley two volts under the sheet’s lowest still lets the regulator hold today', () => expect(value('left')).toBeGreaterThan(3));

  it('the unloaded reservoir stays within its mark', () => expect(value('noLoad')).toBeLessThan(value('mark')));

  it('the dummy load’s resistor is used at less than half its watts', () => expect(value('dummyHeat')).toBeLessThan(value('dummyWatts') / 2));
});

describe('the quiz of lesson 21', () => {
  it('asks for √2 times the winding on strong mains, and for half the ripple off the mean', () => {
    expect(quiz.answers['fennel-peak']).toBeCloseTo((345 * Math.SQRT2 * 264) / 240, 6);
    expect(quiz.answers['valley-by-meter']).toBeCloseTo(21.4 - (3.3 * 0.36) / 2, 9);
  });
});
