import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/footswitches-and-outside-gear.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 17 says of a cable that completes a second ground', () => {
  it('the cable and the earth limit it: amps through a long one, past the winding’s and the diodes’ ratings through a short one', () => {
    expect(value('stageAmps')).toBeGreaterThan(3);
    expect(value('stageWatts')).toBeCloseTo(value('stageAmps') ** 2 * value('path'), 1);
    expect(value('nearAmps')).toBeGreaterThan(2 * value('stageAmps'));
    expect(value('nearHalf')).toBeGreaterThan(value('heaterRated'));
    expect(value('nearDiode')).toBeGreaterThan(value('diodeRated'));
  });

  it('the rail hardly shows it', () => expect(value('stageRail')).toBeGreaterThan(0.9 * value('benchRail')));

  it('a bonded rail is left with the difference of two earths over the cable', () => expect(value('loopAmps')).toBeCloseTo(1 / value('path'), 1));
});

describe('what it says may stand on a jack', () => {
  it('a floating converter: half the mains, and more through a hand than an unearthed part may pass', () => {
    expect(value('leakVolts')).toBeCloseTo(120, -1);
    expect(value('leakAmps')).toBeGreaterThan(value('unearthed'));
  });

  it('behind a tip, after a breakdown onto an idle rail, nearly all of the high voltage', () => {
    expect(value('brokenVolts')).toBeGreaterThan(0.9 * value('highVolts'));
    expect(value('brokenHand')).toBeGreaterThan(0.1);
  });

  it('the positive on a sleeve takes all that the module gives and leaves no relay pulled in', () => {
    expect(value('shieldAmps')).toBeGreaterThan(0.4);
    expect(value('shieldRail')).toBeLessThan(1);
  });

  it('a sleeve on elevated heaters starts at tens of volts, below what may be touched only while nothing fails', () => {
    expect(value('elevatedSleeve')).toBeGreaterThan(30);
    expect(value('elevatedSleeve')).toBeLessThan(60);
  });
});

describe('what it says of coils, lamps and couplers', () => {
  it('a lamp in series leaves enough for a cold coil and not for a hot one', () => {
    expect(value('atCoil')).toBeGreaterThan(0.75 * value('rail'));
    expect(value('atCoil')).toBeLessThan(value('hotNeeds'));
  });

  it('a coupler at its worst feeds a transistor and not a coil', () => {
    expect(value('aged')).toBeCloseTo(0.005 * 0.5 * 0.5, 9);
    expect(value('aged')).toBeLessThan(value('coilAmps') / 10);
    expect(value('pullUp')).toBeGreaterThanOrEqual(value('leastPullUp'));
  });
});

describe('the quiz of lesson 17', () => {
  it('asks for LED current times the least ratio times a half', () => expect(quiz.answers['aged-collector']).toBeCloseTo(0.01 * 0.2 * 0.5, 12));
});
