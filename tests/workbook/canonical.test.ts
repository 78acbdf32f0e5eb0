import { describe, expect, it } from 'vitest';
import { canonicalText } from '../../src/workbook/canonical.ts';

describe('canonical text', () => {
  it('is the same whatever order the fields were written in, at every depth', () => {
    expect(canonicalText({ b: 1, a: [{ d: 1, c: null }] })).toBe(canonicalText({ a: [{ c: null, d: 1 }], b: 1 }));
    expect(canonicalText({ a: undefined, b: 1 })).toBe('{"b":1}');
  });

  it('tells apart what differs, the order of a list included', () => {
    const texts = [{ a: 1 }, { a: '1' }, { a: [1, 2] }, { a: [2, 1] }, { a: { 0: 1, 1: 2 } }, {}, [], null].map(canonicalText);
    expect(new Set(texts).size).toBe(texts.length);
  });
});
