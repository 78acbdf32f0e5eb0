import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/relays-as-loads-and-barriers.ts';
import { work as firstLesson } from '../../../src/components/worked/what-the-rail-is-for.ts';

const { figures, quiz } = work(shop);
const value = (name: keyof typeof figures): number => figures[name]?.value ?? Number.NaN;

describe('what lesson 6 says of coils', () => {
  // Copper from 23 °C to the coil's temperature: (234.5 + T)/257.5.
  it('a hot coil wants its cold volts times what the copper has gained', () => {
    expect(value('hotPullIn')).toBeCloseTo((9 * (234.5 + value('coilCelsius'))) / 257.5, 6);
    expect(value('hotPullIn')).toBeGreaterThan(1.15 * value('roomPullIn'));
  });

  it('with a small transistor it pulls in, with a Darlington array it need not', () => {
    expect(value('spare')).toBeGreaterThan(0);
    expect(value('darlingtonShort')).toBeGreaterThan(0);
    expect(value('spare') + value('darlingtonShort')).toBeCloseTo(value('darlingtonDrop') - value('transistorDrop'), 9);
  });

  it('says the same pull-in as lesson 1', () => expect(firstLesson(shop).figures['coilFrom']?.value).toBeCloseTo(value('hotPullIn'), 9));

  it('in series the coil of least resistance is left short, behind one resistor the last one on gets too much', () => {
    expect(value('seriesLeast')).toBeCloseTo(24 * 0.95 * (324 / 720), 9);
    expect(value('seriesShort')).toBeGreaterThan(0);
    expect(value('resistor')).toBeCloseTo(12 / (2 * (12 / 360)), 9);
    expect(value('aloneVolts')).toBeGreaterThan(value('coilLimit'));
  });

  it('hotter air leaves hardly anything of the rail’s worst', () => {
    const answer = quiz.answers['hotter-pull-in'] ?? Number.NaN;
    expect(answer).toBeGreaterThan(value('hotPullIn'));
    expect(Math.abs(answer - value('lowestAtCoil'))).toBeLessThan(0.3);
  });

  it('a zener gives most of the speed back, for more volts on the switch', () => {
    expect(value('zenerWorst')).toBeLessThan(0.4 * value('diodeWorst'));
    expect(value('zenerUsual')).toBeLessThan(0.5 * value('diodeUsual'));
    expect(value('zenerSwitch')).toBeGreaterThan(1.9 * value('rail'));
  });
});

describe('what it says of contacts and barriers', () => {
  it('the high voltage is past what either relay may part, and an anode close to the test of the small one', () => {
    expect(value('highVolts')).toBeGreaterThan(value('powerDc'));
    expect(value('powerDc')).toBeGreaterThan(value('signalDc'));
    expect(value('anodeVolts')).toBe(2 * value('highVolts'));
    expect(value('anodeVolts')).toBeGreaterThan(0.9 * value('signalTest'));
  });

  it('a breakdown lifts a floating jack to the high voltage, and a bonded one not past the touch limit', () => {
    expect(value('floatingVolts')).toBeGreaterThan(0.95 * value('highVolts'));
    expect(value('bondedVolts')).toBeLessThan(value('touch'));
  });

  it('a hand and the bond carry what Ohm says: volts over breakdown and what follows it', () => {
    expect(value('floatingHand')).toBeCloseTo(value('highVolts') / (value('faultOhms') + value('hand')), 2);
    expect(value('bondedAmps')).toBeCloseTo((value('highVolts') - value('bondedVolts')) / value('faultOhms'), 2);
  });
});
