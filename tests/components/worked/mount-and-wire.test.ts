import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/mount-and-wire.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 20 says of the mains entry', () => {
  it('the earth is the longest wire and has the least slack', () => {
    expect(value('earthWire')).toBeGreaterThan(value('lineWire'));
    expect(value('earthSlack')).toBeLessThan(value('lineSlack'));
  });

  it('cut as the lesson says, it parts last', () => expect(value('earthNeeded') - value('earthReach')).toBeGreaterThan(value('lineSlack')));

  it('a free end of the mains reaches the rail', () => expect(value('free')).toBeGreaterThan(value('nearest')));
});

describe('what lesson 20 says of what lies beside what', () => {
  it('a pair couples at least ten times less than two leads apart', () => {
    expect(value('pairTimes')).toBeGreaterThan(10);
    // μ₀l/2π · ln((d + w)/d) · 2πf · I, for one wire alone.
    expect(value('single')).toBeCloseTo(2 * Math.PI * 100 * 2e-7 * 0.15 * Math.log(1.5) * value('tarnRms'), 9);
  });

  it('a picofarad from the mains gives a grid about what a guitar does', () => {
    expect(value('strayVolts')).toBeGreaterThan(0.05);
    expect(value('strayVolts')).toBeLessThan(0.2);
  });

  it('a shorted turn takes far less at the primary than any fuse for it notices, and heats like a soldering iron', () => {
    expect(value('turnPrimary')).toBeLessThan(value('primary'));
    expect(value('turnWatts')).toBeGreaterThan(10);
    // What the turn makes is what the primary takes for it.
    expect(value('turnPrimary') * value('mains')).toBeCloseTo(value('turnWatts'), 9);
  });

  it('twenty degrees are four times the life, by the rule that it doubles every ten', () => expect(value('lifeTimes')).toBe(4));
});

describe('the quiz of lesson 20', () => {
  it('asks for way, slack and margin', () => expect(quiz.answers['cut-the-earth']).toBeCloseTo(0.09 + 0.015 + 0.01, 9));
});
