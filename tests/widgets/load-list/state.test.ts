import { describe, expect, it } from 'vitest';
import { loadList } from '../../../src/widgets/load-list/state.ts';
import { rectify } from '../../../src/widgets/rectify/state.ts';
import { caseIn, readCase } from '../../../src/widgets/shared/address.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';

const relay = { kind: 'relay', name: 'Relay', count: 2, volts: 12, ohms: 360 };
const view = (initial: Parameters<typeof open>[1]) => open(loadList, initial).view;

describe('the load list', () => {
  it('adds up the shop’s job as by hand', () => {
    const { figures, lines, level } = view({});
    // Two coils of 12 V / 360 Ω and a lamp of 10 mA.
    expect(figures[0]?.value).toBeCloseTo(2 * (12 / 360) + 0.01, 6);
    // At worst: rail 5 % high, coils 10 % low, the lamp's resistor (10 V / 10 mA) with 0.3 V less across the lamp.
    const worst = 2 * (12.6 / (360 * 0.9)) + (12.6 - 2 + 0.3) / 1000;
    expect(figures[1]?.value).toBeCloseTo(worst, 6);
    expect(figures[3]?.value).toBeCloseTo(worst * 1.2, 6);
    expect(lines[0]?.typicalAmps).toBeCloseTo(0.0667, 4);
    expect(level).toBe('within');
  });

  it('reckons heaters cold at switch-on: six times the hot current, 5 % over, on the highest rail', () => {
    const { figures } = view({ railVolts: 12.6, loads: [{ kind: 'heater', name: '12AX7', volts: 12.6, amps: 0.15 }] });
    expect(figures[2]?.value).toBeCloseTo(0.15 * 1.05 * 6 * 1.05, 3);
  });

  it('counts in use only what is on at once', () => {
    const { figures } = view({ loads: [{ ...relay, onAtOnce: 1 }] });
    expect(figures[0]?.value).toBeCloseTo(12 / 360, 6);
    expect(figures[1]?.value).toBeGreaterThan(figures[0]?.value ?? 0);
  });

  it('finds a 12 V relay on a 9 V rail outside, and says what to do', () => {
    const { level, findings, summary } = view({ railVolts: 9, loads: [relay] });
    expect(level).toBe('outside');
    expect(summary).toContain('Not every load');
    const pullIn = findings.find(({ rule }) => rule === 'coil-pull-in');
    expect(pullIn?.level).toBe('outside');
    expect(pullIn?.todo).not.toBe('');
  });

  it('has nothing to hold against the rail in an empty list, and does not call that within', () => {
    expect(view({ loads: [] })).toMatchObject({ level: 'not assessed' });
  });

  it('names the row and the cell of a lamp whose drop exceeds the rail', () => {
    const opened = open(loadList);
    const after = evaluate(loadList, { ...opened.raw, railVolts: '3', loads: [{ ...opened.raw['loads']?.[1] as object, kind: 'heater', volts: '12', count: '1.5' } as Record<string, string>] }, opened);
    expect(Object.keys(after.errors)).toEqual(['loads.0.count']);
    expect(after.errors['loads.0.count']).toContain('whole numbers');
  });

  it('hands the current to design for on to the rectifier', () => {
    const opened = open(loadList, { loads: [{ ...relay, count: 5 }] });
    const [link] = opened.view.handOn;
    const [path = '', query = ''] = (link?.path ?? '').split('?');
    expect(path).toBe('calculators/rectify/');
    const raw = readCase(rectify, caseIn(query, 'rectify') ?? '');
    const next = evaluate(rectify, raw ?? {}, open(rectify));
    expect(next.values.loadAmps).toBeCloseTo(opened.view.designAmps, 3);
    expect(next.stale).toBe(false);
  });

  it('comes, on the worked case, to the current that the rectifier’s worked case takes', () => {
    expect(open(rectify).values.loadAmps).toBe(Number(view({}).designAmps.toPrecision(3)));
  });
});
