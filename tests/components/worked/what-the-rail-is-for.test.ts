import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/what-the-rail-is-for.ts';
import { compareSupplies, openJob } from '../../../src/compute/index.ts';

const { figures, quiz, say } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 1 says of the three jobs', () => {
  it('they take as many relays as their owners asked for', () => {
    expect([say['quillonRelays'], say['tarnRelays'], say['fennelRelays']]).toEqual(['two', 'five', 'three']);
  });

  it('a relay’s range lies about its rated volts, and a heater’s is narrower', () => {
    expect(value('coilFrom')).toBeLessThan(12);
    expect(value('coilTo')).toBeGreaterThan(12);
    expect(value('coilTo') / value('coilFrom') - 1).toBeGreaterThan(2 * 2 * value('heaterClose'));
  });

  it('a dropping resistor burns all but a few hundredths of what it takes', () => {
    expect(value('dropWatts')).toBeCloseTo(408 * value('running'), 9);
    expect(value('usedShare')).toBeLessThan(0.05);
    expect(quiz.answers['drop-it']).toBeCloseTo((470 - 12) * value('quizAmps'), 9);
  });
});

describe('what it says of the four ways', () => {
  it('the heater winding takes least room and little heat, and is the only one that is overloaded', () => {
    for (const other of ['converter', 'transformer', 'spare']) {
      expect(value('heaterRoom'), other).toBeLessThan(value(`${other}Room`));
      expect(value(`${other}Loading`), other).toBeLessThan(1);
    }
    expect(value('heaterHeat')).toBeLessThan(value('transformerHeat'));
    expect(value('heaterLoading')).toBeGreaterThan(1);
    expect(value('heaterShort')).toBeGreaterThan(0);
  });

  it('the shop chooses as the comparison does', () => {
    expect(compareSupplies(openJob(shop.quillon20)).recommended).toBe('separate-transformer');
    expect(compareSupplies(openJob(shop.tarn45)).recommended).toBe('spare-winding');
  });
});
