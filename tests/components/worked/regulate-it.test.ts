import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/regulate-it.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 9 says of the Quillon 20’s regulator', () => {
  it('it holds at low mains, with less to spare there than anywhere else', () => {
    expect(value('headroom')).toBeGreaterThan(0);
    expect(value('headroom')).toBeLessThan(value('nominalHeadroom'));
    expect(value('nominalHeadroom')).toBeLessThan(value('highHeadroom'));
    expect(value('headroom')).toBeCloseTo(value('lowValley') - value('needed'), 9);
  });

  it('its heat is that of the printed sum', () => {
    const sum = (value('highMean') - value('lowestOutput')) * value('dc') + value('highMean') * value('own');
    expect(value('heat')).toBeCloseTo(sum, 9);
  });

  it('without a heatsink it passes its limit, and the heatsink found brings it to the target', () => {
    expect(value('bareJunction')).toBeGreaterThan(value('limit'));
    const junction = value('air') + value('heat') * (value('junctionToCase') + value('contact') + value('heatsinkNeeded'));
    expect(junction).toBeCloseTo(value('target'), 6);
  });

  it('a low-dropout part would hold with more to spare, but the unloaded rail is past what it stands', () => {
    expect(quiz.answers['ldo-headroom']).toBeGreaterThan(value('headroom'));
    expect(value('noLoadHigh')).toBeGreaterThan(26);
  });

  it('a winding labelled with the rail’s own volts falls short', () => expect(value('askedShort')).toBeGreaterThan(0));

  it('the tab burns skin while the junction is within limits', () => expect(value('tabAtTarget')).toBeGreaterThan(70));

  it('the Tarn’s own heaters start, the many do not', () => {
    expect(value('heaterCold')).toBeLessThan(value('limitAmps'));
    expect(value('manyHot')).toBeLessThan(1);
    expect(value('manyCold')).toBeGreaterThan(value('limitAmps'));
    expect(value('startAmps')).toBeLessThanOrEqual(value('limitAmps'));
    expect(value('startVolts')).toBeLessThan(0.5 * shop.tarn45.rail.volts);
    expect(value('heaterHeat')).toBeGreaterThan(15);
  });

  it('a switching part makes a small fraction of the heat', () => expect(value('buckHeat')).toBeLessThan(0.3 * value('heat')));
});
