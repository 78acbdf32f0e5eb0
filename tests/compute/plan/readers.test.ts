import { describe, expect, it } from 'vitest';
import { MOST_PROBLEMS, flag, list, number, oneOf, optional, record, tagged, text, wholeNumber } from '../../../src/compute/plan/readers.ts';
import type { Reader, Reading } from '../../../src/compute/plan/readers.ts';

function read<T>(reader: Reader<T>, value: unknown): Reading & { readonly value: T | undefined } {
  const reading: Reading = { problems: [], dropped: [] };
  const result = reader(value, '', reading);
  return { ...reading, value: result };
}

const point = record({ x: number({ min: 0, max: 1, unit: 'm' }), name: optional(text({ most: 5 })) });

describe('reading values field by field', () => {
  it.each([0, 1, 0.5])('takes a number within its limits: %s', (x) => expect(read(number({ min: 0, max: 1 }), x).value).toBe(x));

  it.each([-0.001, 1.001, Number.NaN, Infinity, '0.5', null, undefined, [0.5], { valueOf: () => 0.5 }, 1n])('refuses as a number: %s', (x) => {
    const { value, problems } = read(number({ min: 0, max: 1, unit: 'V' }), x);
    expect(value).toBeUndefined();
    expect(problems).toEqual([{ path: '', message: 'a number from 0 to 1 V is expected' }]);
  });

  it('takes whole numbers only where a count is meant', () => {
    expect(read(wholeNumber({ min: 1, max: 9 }), 3).value).toBe(3);
    expect(read(wholeNumber({ min: 1, max: 9 }), 3.5).value).toBeUndefined();
  });

  it('refuses text that is too long, or that hides something from the eye', () => {
    expect(read(text({ most: 3 }), 'abc').value).toBe('abc');
    for (const bad of ['abcd', 'a\u0000', 'a\u202E', 'a\n', 5]) expect(read(text({ most: 3 }), bad).value).toBeUndefined();
  });

  it('takes only the words of a set, and only true or false for a flag', () => {
    expect(read(oneOf(['a', 'b']), 'b').value).toBe('b');
    expect(read(oneOf(['a', 'b']), 'toString').value).toBeUndefined();
    expect(read(flag, false).value).toBe(false);
    expect(read(flag, 0).value).toBeUndefined();
  });

  it('names the place of every problem in a list', () => {
    const { value, problems } = read(list(point, { most: 5 }), [{ x: 0 }, { x: 2 }, 7]);
    expect(value).toBeUndefined();
    expect(problems.map((problem) => problem.path)).toEqual(['1.x', '2']);
  });

  it('refuses a list with holes and one that is too long', () => {
    const holes: unknown[] = [{ x: 0 }];
    holes.length = 3;
    expect(read(list(point, { most: 5 }), holes).value).toBeUndefined();
    expect(read(list(point, { most: 2 }), [{ x: 0 }, { x: 0 }, { x: 0 }]).problems).toHaveLength(1);
  });

  it('leaves out keys that it does not know, and says which', () => {
    const { value, dropped } = read(point, { x: 1, colour: 'red', name: 'ab' });
    expect(value).toEqual({ x: 1, name: 'ab' });
    expect(dropped).toEqual(['colour']);
  });

  it('refuses keys that would reach a prototype, own or parsed', () => {
    for (const key of ['__proto__', 'constructor', 'prototype']) {
      const { value, problems } = read(point, JSON.parse(`{"x": 1, "${key}": {"polluted": true}}`));
      expect(value, key).toBeUndefined();
      expect(problems[0]?.path).toBe(key);
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('does not take inherited values for given ones', () => {
    const inherited: unknown = Object.create({ x: 0.5 });
    expect(read(point, inherited).value).toBeUndefined();
  });

  it('tells kinds apart by their tag, and refuses a tag that only an object would have', () => {
    const shape = tagged('kind', { dot: record({}), line: record({ length: number({ min: 0, max: 9 }) }) });
    expect(read(shape, { kind: 'line', length: 3 }).value).toEqual({ kind: 'line', length: 3 });
    expect(read(shape, { kind: 'dot', length: 3 }).dropped).toEqual(['length']);
    expect(read(shape, { kind: 'toString' }).problems[0]).toEqual({ path: 'kind', message: 'one of dot, line is expected' });
    expect(read(shape, { length: 3 }).problems[0]?.path).toBe('kind');
  });

  it('lists so many problems and no more', () => {
    const many = Array.from({ length: 500 }, () => ({ x: 9 }));
    expect(read(list(point, { most: 1000 }), many).problems).toHaveLength(MOST_PROBLEMS);
  });

  it('refuses an object with a crowd of keys unread, and repeats no endless key', () => {
    const crowd = Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`k${i}`, i]));
    expect(read(point, crowd).problems[0]?.message).toMatch(/at most 100 keys/);
    expect(read(point, { x: 1, ['y'.repeat(1e6)]: 1 }).dropped[0]?.length).toBeLessThan(60);
  });
});
