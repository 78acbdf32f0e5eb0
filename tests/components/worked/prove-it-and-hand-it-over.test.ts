import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/prove-it-and-hand-it-over.ts';

const { figures, quiz } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 23 says of an earth on one strand', () => {
  it('its reading stays within the limit, and differs by less than a hand meter’s own leads do', () => {
    expect(value('wornLead')).toBeGreaterThan(value('leadOhms'));
    expect(value('wornLead') - value('leadOhms')).toBeLessThan(0.02);
    expect(value('wornLead')).toBeLessThan(value('limitWithLead'));
  });

  it('a bond current melts it within about half a second, worked out again from copper’s own figures', () => {
    // ρ·l/A at 20 °C; heat to melt it with nothing lost: m·c·ΔT, m = 8960 · A · l.
    const area = (Math.PI / 4) * 0.2e-3 ** 2;
    const ohms = (1.724e-8 * 0.02) / area;
    expect(value('neckOhms')).toBeCloseTo(ohms, 4);
    expect(value('neckSeconds') / ((8960 * area * 0.02 * 385 * 1065) / (625 * ohms))).toBeCloseTo(1, 2);
    expect(value('neckSeconds')).toBeLessThan(0.6);
  });
});

describe('what lesson 23 says of leakage', () => {
  it('the module multiplies what leaked before', () => {
    expect(value('before')).toBeCloseTo(2 * Math.PI * 50 * 1.5e-9 * 240, 9);
    expect(value('after')).toBeGreaterThan(2 * value('before'));
    expect(value('module')).toBeCloseTo((value('moduleLeak') * 240) / 230, 9);
  });

  it('at high mains it is within the class-one touch limit and beyond that for a part without earth', () => {
    expect(value('afterHigh')).toBeLessThan(value('touchLimit'));
    expect(value('afterHigh')).toBeGreaterThan(value('unearthedLimit'));
  });

  it('the least insulation passes less than that, so the two tests ask different things', () => expect(value('throughInsulation')).toBeLessThan(value('after')));
});

describe('the label of lesson 23', () => {
  it('has spare milliamps left in the chassis air', () => {
    expect(value('spare')).toBeGreaterThan(0);
    expect(value('spare') + value('everything')).toBeCloseTo(value('gives'), 9);
  });
});

describe('the quiz of lesson 23', () => {
  it('asks for bond plus lead, and for 2πfCV', () => {
    expect(quiz.answers['another-lead']).toBeCloseTo(0.1 + 5 * 0.0195, 9);
    expect(quiz.answers['another-module']).toBeCloseTo(2 * Math.PI * 60 * 2.2e-9 * 264, 12);
  });
});
