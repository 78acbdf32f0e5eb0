import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { LEAK_OHMS, handRmsAmps, leftAfter, recovered, tarnLine } from '../../../src/components/worked/high-voltage.ts';
import { work } from '../../../src/components/worked/what-can-hurt-you.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;
const WHOLE = { standby: 'closed', valves: 'hot', bleeder: 'whole', dropper: 'whole' } as const;

describe('what lesson 2 says of the Tarn 45’s charge', () => {
  it('half C V squared, and R C times a logarithm', () => {
    expect(value('firstJoules')).toBeCloseTo(0.5 * 47e-6 * 450 ** 2, 9);
    expect(value('bleedTime')).toBeCloseTo(220e3 * 116e-6 * Math.log(450 / 60), 9);
    expect(value('bleedTime')).toBeLessThan(60);
    expect(value('leakTime')).toBeGreaterThan(2 * 3600);
    expect(quiz.answers['another-reservoir']).toBeCloseTo(0.5 * 100e-6 * 470 ** 2, 9);
  });

  it('the quiz’s reservoir holds more than twice the Tarn’s first one', () => {
    expect(quiz.answers['another-reservoir']).toBeGreaterThan(2 * value('firstJoules'));
    expect(quiz.answers['its-bleeder']).toBeCloseTo(150e3 * 100e-6 * Math.log(470 / 60), 6);
  });

  it('played empty it is empty everywhere; each other case leaves more than 300 V somewhere', () => {
    for (const name of ['usualFirst', 'usualSecond', 'usualPreamp']) expect(value(name), name).toBe(0);
    for (const name of ['standbyFirst', 'bleederFirst', 'bleederSecond', 'bleederPreamp', 'dropperPreamp']) expect(value(name), name).toBeGreaterThan(300);
  });

  it('in two of the four cases the anode reads nothing and the amp is loaded', () => {
    for (const name of ['standbySecond', 'dropperSecond']) expect(value(name), name).toBe(0);
  });

  it('a reservoir with nothing but its leak falls as RC says', () => {
    const { first } = leftAfter({ volts: 450, seconds: 600, standing: { ...WHOLE, standby: 'open' } });
    expect(first).toBeCloseTo(450 * Math.exp(-600 / (LEAK_OHMS * tarnLine.firstFarads)), 1);
  });

  it('the bleeder alone empties the line within the touch limit in the time that the sum says', () => {
    const { first } = leftAfter({ volts: 450, seconds: value('bleedTime'), standing: { ...WHOLE, valves: 'out' } });
    // A little sooner: three leaks help it.
    expect(first).toBeLessThan(60);
    expect(first).toBeGreaterThan(59);
  });
});

describe('what comes back', () => {
  const probe = { volts: 450, farads: 47e-6, probeOhms: 4700, probeSeconds: 1.1 };

  it('is almost nothing at once, and the stated share in the end, less what leaks meanwhile', () => {
    expect(recovered({ ...probe, share: 0.1, waitSeconds: 0.01 })).toBeLessThan(5);
    expect(value('recovered')).toBeGreaterThan(0.08 * 450);
    expect(value('recovered')).toBeLessThan(0.1 * 450);
  });

  it('lies on either side of the touch limit, and is nothing with a link', () => {
    expect(value('recovered')).toBeLessThan(value('touch'));
    expect(value('recoveredMost')).toBeGreaterThan(value('touch'));
    expect(value('recoveredLinked')).toBeLessThan(0.1);
  });

  it('a longer discharge leaves less to come back', () => {
    expect(recovered({ ...probe, share: 0.1, probeSeconds: 300, waitSeconds: 600 })).toBeLessThan(0.5 * value('recovered'));
  });
});

describe('hands, rings and fuses', () => {
  it('a hand on DC carries volts over two kilohms, on mains a little more than the resistance alone lets through', () => {
    expect(value('handAmps')).toBeCloseTo(450 / 2000, 9);
    const amps = handRmsAmps({ volts: 230, hertz: 50 });
    expect(amps).toBeGreaterThan(230 / 2000);
    expect(amps).toBeLessThan(1.02 * (230 / 2000));
  });

  it('the ring glows and the mains fuse need not open', () => {
    expect(value('ringWatts')).toBeGreaterThan(50);
    expect(value('ringAmps')).toBeLessThan(value('shortAmps'));
    expect(value('fuseMultiple')).toBeLessThan(value('fuseMust'));
  });

  it('the touch limit is no mark for energy: the rail’s reservoir and C1 at the limit both hold some', () => {
    expect(value('railPeak')).toBeLessThan(value('touch'));
    expect(value('railJoules')).toBeGreaterThan(1);
    expect(value('lowEnergyVolts')).toBeGreaterThan(value('touch'));
    expect(value('firstJoules') / value('lowEnergyTimes')).toBeCloseTo(0.2, 9);
  });
});
