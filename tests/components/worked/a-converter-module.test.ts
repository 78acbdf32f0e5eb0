import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/a-converter-module.ts';

const { figures, say, quiz, trace } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 12 says of the Fennel 100’s module', () => {
  it('hot air takes a part of its rating, and its load fits what is left', () => {
    expect(value('at70')).toBeLessThan(value('derated'));
    expect(value('derated')).toBeLessThan(value('rated'));
    expect(value('dc')).toBeLessThan(0.8 * value('derated'));
  });

  it('its floating output reads about half the mains, and a hand there passes more than the stricter limit', () => {
    expect(value('meter')).toBeGreaterThan(0.9 * value('half'));
    expect(value('meter')).toBeLessThanOrEqual(value('half'));
    expect(value('hand')).toBeGreaterThan(value('strictLimit'));
    expect(value('hand')).toBeLessThan(value('limit'));
    expect(value('unearthedHand')).toBeGreaterThan(value('strictLimit'));
  });

  it('its leakage is 2πfCV', () => {
    expect(value('leakage')).toBeCloseTo(2 * Math.PI * 50 * value('yFarads') * 264, 9);
    expect(quiz.answers['y-current']).toBeCloseTo(2 * Math.PI * 50 * 2.2e-9 * 230, 9);
  });

  it('a reservoir carried over is more than it starts into', () => expect(value('carried')).toBeGreaterThan(value('mostFarads')));
});

describe('what lesson 12 says of the Tarn 45’s cold heaters', () => {
  it('running, the module has room; cold, its limit is passed', () => {
    expect(value('tarnShare')).toBeLessThan(0.8);
    expect(value('tarnCold')).toBeGreaterThan(1.5 * value('tarnLimit'));
  });

  it('a hiccup starts late and often, a held current soon, and relays off at first halve the wait', () => {
    expect(value('hiccupSeconds')).toBeGreaterThan(20);
    expect(value('hiccupSeconds')).toBeLessThan(40);
    expect(value('steadySeconds')).toBeLessThan(0.2 * value('hiccupSeconds'));
    expect(value('onlyHeaters')).toBeLessThan(0.6 * value('hiccupSeconds'));
    expect(Number(say['tries'])).toBeGreaterThan(20);
  });

  it('the smallest module never starts, whatever its kind', () => {
    for (const cell of ['start00', 'start01', 'start02']) expect(say[cell]).toMatch(/^never/);
    for (const cell of ['start10', 'start11', 'start12', 'start20', 'start21', 'start22']) expect(say[cell]).not.toMatch(/never/);
  });

  it('the drawing shows the solved courses to their end', () => {
    for (const { volts, seconds } of trace.courses) {
      expect(volts).toHaveLength(seconds.length);
      expect(volts.at(-1)).toBeCloseTo(trace.setVolts, 6);
      expect(seconds.at(-1)).toBeLessThan(trace.endSeconds);
    }
  });
});
