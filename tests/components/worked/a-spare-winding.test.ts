import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/a-spare-winding.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 11 says of the Tarn 45’s spare winding', () => {
  it('as it is it barely holds, and each cure leaves more', () => {
    expect(value('left')).toBeGreaterThan(0);
    expect(value('left')).toBeLessThan(0.3);
    expect(value('left')).toBeCloseTo(value('valley') - value('needed'), 9);
    for (const cure of ['largerLeft', 'schottkyLeft', 'switchingLeft'] as const) expect(value(cure), cure).toBeGreaterThan(0.3);
  });

  it('each cure costs what the table says', () => {
    expect(value('largerFuse')).toBeGreaterThan(value('ratedAmps'));
    expect(value('fuse')).toBeLessThanOrEqual(value('ratedAmps'));
    expect(value('schottkyHeat')).toBeGreaterThan(value('heat'));
    expect(value('switchingHeat')).toBeLessThan(0.25 * value('heat'));
    expect(value('schottkyReverse')).toBeLessThan(0.8 * value('schottkyRated'));
  });

  it('the winding is at ease and the transformer has VA left, though the rail adds three times its watts', () => {
    expect(value('copper')).toBeLessThan(0.5);
    expect(value('total')).toBeLessThan(0.9 * value('transformer'));
    expect(value('added') / value('railWatts')).toBeGreaterThan(2.5);
    expect(value('added') / value('railWatts')).toBeLessThan(3.5);
    expect(quiz.answers['spare-va']).toBeCloseTo(value('transformer') - value('total'), 9);
  });

  it('cold heaters pass the winding’s rating for a moment and the rail is soon up', () => {
    expect(value('coldRms')).toBeGreaterThan(value('ratedAmps'));
    expect(value('weakRail')).toBeLessThan(value('rail'));
    expect(value('weakUp')).toBeLessThan(2);
  });

  it('one breakdown: held down with the bond, at the high voltage without it', () => {
    expect(value('faultBonded')).toBeLessThan(60);
    expect(value('faultAmps')).toBeCloseTo(value('highVolts') / value('faultOhms'), 1);
    expect(value('faultFloating')).toBeGreaterThan(value('highVolts'));
    expect(value('faultHand')).toBeGreaterThan(0.03);
  });

  it('a 5 V winding would not serve, and half of this one would not either', () => {
    expect(value('fiveValley')).toBeLessThan(4.3);
    expect(value('tappedMean')).toBeLessThan(value('rail'));
  });

  it('the hot primary is found by the rule of copper', () => {
    expect(quiz.answers['hot-primary']).toBeCloseTo((8.4 / 6.8) * (234.5 + 21) - 234.5, 1);
  });

  it('the apprentice’s amps would be about five times the heat', () => {
    const ratio = value('rms') / value('dc');
    expect(ratio ** 2).toBeGreaterThan(4);
    expect(ratio ** 2).toBeLessThan(5.5);
  });
});
