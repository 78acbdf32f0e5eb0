import { describe, expect, it } from 'vitest';
import { parseUntrusted } from '../../src/workbook/untrusted-json.ts';

const limits = { characters: 1000, depth: 5, values: 50 };
const parse = (text: string) => parseUntrusted(text, limits);

const problemOf = (text: string) => {
  const outcome = parse(text);
  if (outcome.ok) throw new Error('it was accepted');
  return outcome.problem;
};

describe('text from outside', () => {
  it('is parsed when it is JSON within the limits, byte order mark or not', () => {
    expect(parse('{"a":[1,2,{"b":null}]}')).toEqual({ ok: true, value: { a: [1, 2, { b: null }] } });
    expect(parse('\uFEFF[1]')).toEqual({ ok: true, value: [1] });
  });

  it('may be exactly as long and as deep as the limit, and no more', () => {
    expect(parse(`"${'x'.repeat(998)}"`).ok).toBe(true);
    expect(problemOf(`"${'x'.repeat(999)}"`).kind).toBe('too-large');
    expect(parse('[[[[[1]]]]]').ok).toBe(true);
    expect(problemOf('[[[[[[1]]]]]]')).toMatchObject({ kind: 'too-deep', place: 'character 6' });
  });

  it('is not called deep for brackets inside a text', () => {
    expect(parse(JSON.stringify({ note: '[[[[[[[[{{{{{{ \\" [[' })).ok).toBe(true);
  });

  it('is refused when it holds too many values, however shallow', () => {
    expect(problemOf(`[${Array.from({ length: 60 }, () => '1').join()}]`).kind).toBe('too-large');
  });

  it('is refused with the place of a name that reaches a prototype', () => {
    expect(problemOf('{"plans":[{"plan":{"__proto__":{"polluted":true}}}]}')).toMatchObject({ kind: 'invalid', place: 'plans.0.plan.__proto__' });
    expect(problemOf('{"constructor":{"prototype":{"polluted":true}}}').place).toBe('constructor');
    expect(problemOf('{"a":{"toString":1}}').place).toBe('a.toString');
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  it('is refused with a sentence when it is cut short or is no JSON', () => {
    for (const text of ['', '{', '{"a":1', 'plan', '{"a":1}}', "{'a':1}"]) expect(problemOf(text)).toMatchObject({ kind: 'not-json', message: expect.stringMatching(/^This is not a whole JSON text/) });
  });

  it('does not overflow on a million brackets', () => {
    const outcome = parseUntrusted('['.repeat(1_000_000), { characters: 2_000_000, depth: 32, values: 1000 });
    expect(outcome).toMatchObject({ ok: false, problem: { kind: 'too-deep' } });
  });
});
