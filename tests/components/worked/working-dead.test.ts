import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { tarnLine } from '../../../src/components/worked/high-voltage.ts';
import { work } from '../../../src/components/worked/working-dead.ts';
import { bleedSeconds } from '../../../src/compute/index.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 3 says of the discharge', () => {
  it('five time constants leave less than a hundredth, well within the touch limit', () => {
    expect(value('probeLeft') / value('highVolts')).toBeLessThan(0.01);
    expect(bleedSeconds({ farads: tarnLine.firstFarads, ohms: value('probe'), fromVolts: value('highVolts'), toVolts: value('probeLeft') })).toBeCloseTo(value('probeTime'), 9);
    expect(quiz.answers['probe-time']).toBeCloseTo(5 * 4700 * 100e-6, 9);
  });

  it('the probe’s resistor is of the ohms and watts that practice asks for, and could not stay on a live line', () => {
    expect(value('probe')).toBeGreaterThanOrEqual(1e3);
    expect(value('probe')).toBeLessThanOrEqual(10e3);
    expect(value('probeWatts')).toBeGreaterThanOrEqual(5);
    expect(value('probeHeat')).toBeGreaterThan(3 * value('probeWatts'));
  });

  it('the unloaded crest on strong mains is above the drawing’s volts, and below what probes for a kilovolt are made for', () => {
    expect(value('unloaded')).toBeGreaterThan(value('highVolts'));
    expect(value('unloaded')).toBeLessThan(1000);
  });

  it('a tool drives thousands of times the probe’s current', () => expect(value('toolAmps')).toBeGreaterThan(1000 * value('probeAmps')));
});

describe('what it says of earth and devices', () => {
  it('an earthed fault is far past the gate that opens the fuse, a hand far below its rating', () => {
    expect(value('faultTimes')).toBeGreaterThan(value('opensTimes'));
    expect(value('mainsHand')).toBeLessThan(0.1 * value('fuseAmps'));
  });

  it('a hand on mains would trip a residual-current device that sees it; the larger one on the high voltage it does not see', () => {
    expect(value('mainsHand')).toBeGreaterThan(value('residual'));
    expect(value('handAmps')).toBeGreaterThan(value('mainsHand'));
    expect(value('nothing')).toBe(0);
  });

  it('both the old capacitor and a converter’s leakage pass the limit of a part without earth', () => {
    expect(value('oldAmps')).toBeCloseTo(2 * Math.PI * 60 * 47e-9 * 120, 9);
    expect(value('oldTimes')).toBeGreaterThan(5);
    expect(value('moduleLeak')).toBeGreaterThan(value('unearthedLimit'));
  });

  it('a quarter of a variable transformer leaves more than may be touched', () => expect(value('variacVolts')).toBeGreaterThan(60));

  it('the building’s protection is no protection for a transformer this size', () => {
    expect(value('building') / value('ratedAmps')).toBeGreaterThan(15);
    expect(value('building') / value('ratedAmps')).toBeLessThan(18);
    expect(value('buildingHeat')).toBeGreaterThan(200);
  });
});
