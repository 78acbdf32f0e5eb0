import { describe, expect, it } from 'vitest';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';
import { divider } from './divider.ts';

const opened = open(divider);
const change = (changes: Record<string, string>) => evaluate(divider, { ...opened.raw, ...changes }, opened);

describe('a calculator opens on its worked case', () => {
  it('reads and solves it', () => {
    expect(opened.values.inputVolts).toBe(12);
    expect(opened.values.loads).toEqual([{ name: 'Relay', amps: 0.033 }, { name: 'Lamp', amps: 0.01 }]);
    expect(opened.values.ratedWatts).toBeUndefined();
    expect(opened.view.volts).toBeCloseTo(12 - 0.043 * 4700, 9);
    expect(evaluate(divider, opened.raw, opened).stale).toBe(false);
  });

  it('opens on the case of a lesson, in SI or as typed', () => {
    const other = open(divider, { inputVolts: 24, topOhms: '1k5', loads: [{ amps: 0.5 }] });
    expect(other.raw['inputVolts']).toBe('24 V');
    expect(other.values).toMatchObject({ inputVolts: 24, topOhms: 1500, loads: [{ name: 'Lamp', amps: 0.5 }] });
  });

  it.each([
    ['an unknown field', { voltage: 3 }, 'no field "voltage"'],
    ['a value out of range', { inputVolts: 1000 }, 'between 1'],
    ['one value for a list', { loads: 3 }, 'takes a list of rows'],
    ['a list for one value', { inputVolts: [{}] }, 'takes one value'],
  ])('stops the build on %s', (_, initial, words) => {
    expect(() => open(divider, initial)).toThrow(words);
  });
});

describe('what cannot be read is said, and the last good result stays', () => {
  it.each([
    ['inputVolts', '', 'between 1'],
    ['inputVolts', '0', 'out of range'],
    ['inputVolts', '-5 V', 'out of range'],
    ['inputVolts', '1e9', 'out of range'],
    ['inputVolts', 'twelve', 'not a number'],
    ['inputVolts', '12 mA', 'in amps'],
    ['topOhms', '4k7k', 'size twice'],
    ['kind', 'round', 'plain, loaded'],
    ['note', 'x'.repeat(41), '40 characters'],
    ['ratedWatts', '-1', 'out of range'],
  ])('%s = "%s"', (field, text, words) => {
    const after = change({ [field]: text });
    expect(after.errors[field]).toContain(words);
    expect(after.stale).toBe(true);
    expect(after.view).toBe(opened.view);
    expect(after.raw[field]).toBe(text);
  });

  it('names the cell of a row', () => {
    const after = evaluate(divider, { ...opened.raw, loads: [{ name: 'A', amps: '5' }, { name: 'B', amps: 'x' }] }, opened);
    expect(Object.keys(after.errors)).toEqual(['loads.1.amps']);
  });

  it('says when a list is too long', () => {
    const row = { name: 'A', amps: '5' };
    const after = evaluate(divider, { ...opened.raw, loads: [row, row, row, row, row] }, opened);
    expect(after.errors['loads']).toContain('0 to 4');
  });

  it('takes a blank optional field as not known', () => {
    expect(change({ ratedWatts: '  ' }).values.ratedWatts).toBeUndefined();
    expect(change({ ratedWatts: '1/4 W' }).values.ratedWatts).toBe(0.25);
  });

  it('reads a bare number in the prefix that the field assumes', () => {
    const after = evaluate(divider, { ...opened.raw, loads: [{ name: 'A', amps: '250' }] }, opened);
    expect(after.values.loads[0]?.amps).toBe(0.25);
  });
});

describe('what cannot be solved is said where it belongs', () => {
  it('shows a refused quantity at its field, with the range in its unit', () => {
    const after = change({ topOhms: '666' });
    expect(after.errors['topOhms']).toContain('at most 500 Ω');
    expect(after.view).toBe(opened.view);
  });

  it('shows a refused quantity without a field as a problem of the whole case', () => {
    const after = change({ topOhms: '777' });
    expect(after.errors).toEqual({});
    expect(after.problem).toContain('elsewhere');
  });

  it('shows a case without an answer', () => {
    const after = change({ topOhms: '888' });
    expect(after.problem).toContain('takes more than there is');
    expect(after.stale).toBe(true);
  });
});
