import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addLoads } from '../../../src/compute/loads/load-list.ts';
import type { LoadItem } from '../../../src/compute/loads/load-types.ts';

const relay: LoadItem = { kind: 'relay', name: 'Channel relay', count: 2, volts: 12, ohms: 360 };
const lamp: LoadItem = { kind: 'indicator', name: 'Channel lamp', count: 1, amps: 0.01 };
const heater: LoadItem = { kind: 'heater', name: '12AX7 heaters', count: 2, volts: 12.6, amps: 0.15 };

const steady = { railMinVolts: 12, railMaxVolts: 12 } as const;
const only = (item: LoadItem, more: object = {}) => {
  const sums = addLoads({ items: [item], railVolts: 12, ...more });
  const line = sums.lines[0];
  if (line === undefined) throw new Error('no line');
  return { sums, line };
};

describe('a relay coil as a load', () => {
  it('takes rail over ohms, the most when cold and of least resistance, the least when hot and of most', () => {
    const { line } = only(relay, steady);
    expect(line.each.typical).toBeCloseTo(12 / 360, 12);
    expect(line.each.max).toBeCloseTo(12 / 324, 12);
    expect(line.each.min).toBeLessThan(12 / 396);
    expect(line.nature).toBe('resistive');
    expect(line.everything.typical).toBeCloseTo(24 / 360, 12);
  });

  it('is the same from its watts', () => {
    const { line } = only({ kind: 'relay', name: 'Relay', count: 1, volts: 12, watts: 0.4 }, steady);
    expect(line.each.typical).toBeCloseTo(12 / 360, 12);
  });

  it('takes a dropping resistor and a driver into account', () => {
    const { line } = only({ kind: 'relay', name: 'Relay', count: 1, volts: 5, ohms: 125, dropperOhms: 170, driverVolts: 0.2 }, steady);
    expect(line.each.typical).toBeCloseTo(11.8 / 295, 12);
    expect(line.working.substituted.replace(/\u00A0/g, ' ')).toBe('(12 V − 200 mV) / (125 Ω + 170 Ω) = 40 mA');
  });

  it('shows its working with the count', () => {
    expect(only(relay).line.working.substituted.replace(/\u00A0/g, ' ')).toBe('12 V / 360 Ω = 33.3 mA; 2 × 33.3 mA = 66.7 mA');
  });

  it('is checked for pull-in at the lowest rail and for heat at the highest', () => {
    const level = (rule: string, more: object) => only({ ...relay, mustOperateRatio: 0.75, kelvinPerWatt: 60 }, more).sums.findings.find((each) => each.rule === rule);
    expect(level('coil-pull-in', { railMinVolts: 11.4 })).toMatchObject({ level: 'within', restsOn: ['rated'] });
    expect(level('coil-pull-in', { railMinVolts: 10.5 })).toMatchObject({ level: 'outside' });
    expect(level('coil-volts', { railMaxVolts: 12.6 })).toMatchObject({ level: 'within' });
    expect(level('coil-volts', { railMaxVolts: 16 })).toMatchObject({ level: 'outside' });
    expect(only(relay).sums.findings[0]?.restsOn).toEqual(['rated', 'typical', 'assumed']);
  });

  it('needs more volts the hotter the air', () => {
    const margins = [25, 40, 55, 70].map((airCelsius) => only(relay, { airCelsius }).sums.findings[0]?.numbers.find(({ name }) => name === 'margin')?.value ?? NaN);
    margins.slice(1).forEach((margin, at) => { expect(margin).toBeLessThan(margins[at] ?? -Infinity); });
  });
});

describe('LEDs as loads', () => {
  it('take the current wanted at the nominal rail, or what their resistor gives', () => {
    expect(only(lamp).line.each.typical).toBeCloseTo(0.01, 12);
    expect(only({ kind: 'indicator', name: 'Lamp', count: 1, seriesOhms: 1000, forwardVolts: 2 }).line.each.typical).toBeCloseTo(0.01, 12);
    expect(only({ kind: 'optocoupler', name: 'Coupler', count: 3, amps: 0.005 }).line.everything.typical).toBeCloseTo(0.015, 12);
  });

  it('refuse a rail below their drop, and a lamp of which nothing is known', () => {
    expect(() => only({ ...lamp, forwardVolts: 12 })).toThrow(RangeError);
    expect(() => only({ kind: 'indicator', name: 'Lamp', count: 1 })).toThrow(RangeError);
  });
});

describe('heaters as loads', () => {
  it('take their rating at their volts and six times that cold', () => {
    const { line, sums } = only(heater, { railVolts: 12.6, railMinVolts: 12.6, railMaxVolts: 12.6 });
    expect(line.everything.typical).toBeCloseTo(0.3, 12);
    expect(sums.switchOn.alwaysAmps).toBeCloseTo(0.3 * 1.05 * 6, 9);
    expect(sums.findings[0]).toMatchObject({ rule: 'heater-volts', level: 'within' });
  });

  it('on 12.0 V are 4.8 % low', () => {
    const { sums } = only(heater, steady);
    expect(sums.findings[0]?.numbers.find(({ name }) => name === 'worst deviation')?.value).toBeCloseTo(0.0476, 4);
  });

  it('fall with about the root of the volts, not in proportion', () => {
    const ratio = only(heater, { railVolts: 12.6 }).line.each.typical / only(heater, { railVolts: 6.3 }).line.each.typical;
    expect(ratio).toBeGreaterThan(1.4);
    expect(ratio).toBeLessThan(1.6);
  });

  it('in series strings want the sum of their volts', () => {
    const { line } = only({ kind: 'heater', name: 'Strings', count: 1, volts: 6.3, amps: 0.3, inSeries: 2 }, { railVolts: 12.6 });
    expect(line.each.typical).toBeCloseTo(0.3, 12);
  });
});

describe('sums', () => {
  const items: LoadItem[] = [
    { ...relay, count: 5, onAtOnce: 3 }, lamp, heater,
    { kind: 'logic', name: 'Logic', count: 1, amps: 0.01 }, { kind: 'fixed-watts', name: 'Step-down', count: 1, watts: 1.2 }, { kind: 'fixed-amps', name: 'Fan', count: 1, amps: 0.05, when: 'switched' },
  ];
  const sums = addLoads({ items, railVolts: 12 });

  it('are those of the lines', () => {
    for (const state of ['running', 'everything'] as const) {
      for (const end of ['min', 'typical', 'max'] as const) expect(sums[state][end]).toBeCloseTo(sums.lines.reduce((sum, line) => sum + line[state][end], 0), 12);
    }
    expect(sums.lines.map(({ when }) => when)).toEqual(['switched', 'always', 'always', 'always', 'always', 'switched']);
    expect(sums.idle.typical).toBeCloseTo(sums.everything.typical - 5 * (12 / 360) - 0.05, 12);
  });

  it('stand in order: idle, running, everything, cold', () => {
    expect(sums.idle.max).toBeLessThan(sums.running.max);
    expect(sums.running.max).toBeLessThan(sums.everything.max);
    expect(sums.everything.max).toBeLessThan(sums.switchOn.everythingAmps);
    expect(sums.switchOn.alwaysAmps).toBeLessThan(sums.switchOn.everythingAmps);
  });

  it('are designed for with a fifth more, and say why', () => {
    expect(sums.design).toMatchObject({ amps: expect.closeTo(1.2 * sums.everything.max, 12) as number, marginRatio: 0.2 });
    expect(sums.design.reason).toMatch(/fifth/);
  });

  it('are split by how they behave', () => {
    const { resistive, constantCurrent, constantPower } = sums.natureAmps;
    expect(resistive + constantCurrent + constantPower).toBeCloseTo(sums.everything.typical, 12);
    expect(constantPower).toBeCloseTo(0.1, 12);
    expect(constantCurrent).toBeCloseTo(0.06, 12);
    expect(sums.equivalentOhms).toBeCloseTo(12 / sums.everything.typical, 12);
  });

  it('of nothing are nothing', () => {
    expect(addLoads({ items: [], railVolts: 12 })).toMatchObject({ everything: { max: 0 }, equivalentOhms: Infinity, findings: [] });
  });

  it('keep least, typical and most in order for any sane list', () => {
    const count = fc.integer({ min: 1, max: 10 });
    const item: fc.Arbitrary<LoadItem> = fc.oneof(
      fc.record({ kind: fc.constant('relay' as const), name: fc.constant('r'), count, volts: fc.double({ min: 3, max: 24, noNaN: true }), ohms: fc.double({ min: 20, max: 5000, noNaN: true }) }),
      fc.record({ kind: fc.constantFrom('indicator' as const, 'optocoupler' as const), name: fc.constant('l'), count, amps: fc.double({ min: 0.001, max: 0.05, noNaN: true }) }),
      fc.record({ kind: fc.constant('heater' as const), name: fc.constant('h'), count, volts: fc.double({ min: 5, max: 30, noNaN: true }), amps: fc.double({ min: 0.1, max: 3, noNaN: true }) }),
      fc.record({ kind: fc.constant('fixed-watts' as const), name: fc.constant('w'), count, watts: fc.double({ min: 0, max: 20, noNaN: true }) }),
    );
    fc.assert(
      fc.property(fc.array(item, { maxLength: 8 }), fc.double({ min: 5, max: 30, noNaN: true }), fc.double({ min: 0.7, max: 1, noNaN: true }), (list, railVolts, low) => {
        const found = addLoads({ items: list, railVolts, railMinVolts: low * railVolts, railMaxVolts: 1.1 * railVolts });
        for (const spread of [found.idle, found.running, found.everything]) {
          expect(spread.min).toBeLessThanOrEqual(spread.typical + 1e-12);
          expect(spread.typical).toBeLessThanOrEqual(spread.max + 1e-12);
        }
        expect(found.switchOn.everythingAmps).toBeGreaterThanOrEqual(found.everything.max - 1e-9);
      }),
      { seed: 40, numRuns: 300 },
    );
  });

  it.each<[string, object, object]>([
    ['half a relay', { count: 1.5 }, {}], ['no relays', { count: 0 }, {}], ['more on than there are', { onAtOnce: 3 }, {}], ['no resistance', { ohms: 0 }, {}],
    ['neither ohms nor watts', { ohms: undefined }, {}], ['no rail', {}, { railVolts: 0 }], ['a rail whose least is above its nominal', {}, { railMinVolts: 13 }],
  ])('refuse %s', (_, item, rail) => {
    expect(() => addLoads({ items: [{ ...relay, ...item } as LoadItem], railVolts: 12, ...rail })).toThrow(RangeError);
  });
});
