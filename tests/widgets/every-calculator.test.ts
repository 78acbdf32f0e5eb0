import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CALCULATORS, openedCase } from '../../src/widgets/registry.ts';
import { caseIn, readCase, withCase, writeCase } from '../../src/widgets/shared/address.ts';
import type { Calculator, QuantityField, SimpleField } from '../../src/widgets/shared/definition.ts';
import { evaluate, open } from '../../src/widgets/shared/evaluate.ts';
import type { RawFields, RawRow } from '../../src/widgets/shared/raw-fields.ts';

const contentOf = (name: string): unknown => JSON.parse(readFileSync(resolve(import.meta.dirname, `../../content/${name}.json`), 'utf8'));
const entries = contentOf('calculators') as readonly { slug: string; question: string }[];
const sources = new Set(Object.keys(contentOf('sources') as object));

/** Everything that is no value of any field. Each is told apart from a value by the field itself. */
const HOSTILE = ['', ' ', '0', '-1', '-0.001 V', '1e300', '1e-300', 'NaN', 'Infinity', 'plenty', '12 furlongs', '5 A²s', '--', '1/0', '<b>12</b>', '1,2,3', '\u0000', '9'.repeat(70)];

/** Some solve a circuit in time for every case: this is no measure of speed. */
const PATIENCE = 120_000;

/** Where a field stands in the raw state, and how to put a text there. */
interface Place {
  readonly path: string;
  readonly field: SimpleField;
  readonly put: (raw: RawFields, text: string) => RawFields;
}

function places(calculator: Calculator, raw: RawFields): readonly Place[] {
  return Object.entries(calculator.fields).flatMap(([name, field]): Place[] => {
    if (field.kind !== 'rows') return [{ path: name, field, put: (all, text) => ({ ...all, [name]: text }) }];
    const rows = raw[name] as readonly RawRow[];
    return rows.flatMap((_, index) =>
      Object.entries(field.row).map(([cell, descriptor]) => ({
        path: `${name}.${index}.${cell}`,
        field: descriptor,
        put: (all: RawFields, text: string) => ({
          ...all,
          [name]: (all[name] as readonly RawRow[]).map((row, at) => (at === index ? { ...row, [cell]: text } : row)),
        }),
      })),
    );
  });
}

/** Every number in a value, however deep. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

/** Every source that a value names, however deep. */
function sourcesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'source' in value ? [(value as { source: { id: string } }).source.id] : [];
  return [...own, ...Object.values(value).flatMap(sourcesIn)];
}

describe.each(CALCULATORS.map((each) => each as unknown as Calculator))('the $id calculator', (calculator) => {
  const opened = open(calculator);
  const all = places(calculator, opened.raw);

  it('is in the list of the site, under the same question', () => {
    expect(entries.find(({ slug }) => slug === calculator.id)?.question).toBe(calculator.question);
  });

  it('opens on a worked case whose every figure is a number and whose every source is known', () => {
    expect(numbersIn(opened.view).every(Number.isFinite)).toBe(true);
    expect(opened.view.summary).not.toMatch(/NaN|undefined|unknown/);
    expect(sourcesIn(opened.view).filter((id) => id !== 'solved' && !sources.has(id))).toEqual([]);
  });

  it('fits into the page as text, and comes out of it the same', () => {
    const text = openedCase(calculator.id as Parameters<typeof openedCase>[0]);
    expect(text.length).toBeLessThan(40_000);
    expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(opened)));
  });

  it.each(all.map((place) => [place.path, place] as const))('says what is wrong with %s, and keeps the last good result', (path, { field, put }) => {
    for (const text of HOSTILE) {
      const after = evaluate(calculator, put(opened.raw, text), opened);
      const message = after.errors[path];
      if (after.stale) {
        expect(after.view).toBe(opened.view);
        expect(after.problem ?? Object.values(after.errors).join(' '), `${path} = "${text}"`).not.toBe('');
      } else {
        expect(message).toBeUndefined();
        expect(numbersIn(after.view).every(Number.isFinite), `${path} = "${text}"`).toBe(true);
      }
      if (field.kind === 'quantity' && message !== undefined && after.problem === undefined) {
        expect(message, `${path} = "${text}"`).toMatch(/between .+ and .+|Write /);
      }
    }
  }, PATIENCE);

  it('takes a wrong unit for none of its quantities', () => {
    for (const { path, field, put } of all) {
      if (field.kind !== 'quantity' || field.unit === '') continue;
      const wrong = field.unit === 'V' ? '5 A' : '5 V';
      expect(evaluate(calculator, put(opened.raw, wrong), opened).errors[path], `${path} = "${wrong}"`).toMatch(/between .+ and .+/);
    }
  });

  it('gives a result or a reason anywhere inside its fields’ ranges', () => {
    const inside = (field: SimpleField): fc.Arbitrary<string> => {
      if (field.kind === 'choice') return fc.constantFrom(...field.options.map(({ value }) => value));
      if (field.kind === 'text') return fc.constantFrom('', 'A', 'a name');
      return insideQuantity(field);
    };
    const everywhere = fc.tuple(...all.map((place) => inside(place.field).map((text) => [place, text] as const)));
    fc.assert(
      fc.property(everywhere, (choices) => {
        const raw = choices.reduce((state, [place, text]) => place.put(state, text), opened.raw);
        const after = evaluate(calculator, raw, opened);
        if (!after.stale) {
          expect(numbersIn(after.view).every(Number.isFinite)).toBe(true);
          expect(after.view.summary).not.toMatch(/NaN|undefined|unknown/);
          expect(sourcesIn(after.view).filter((id) => id !== 'solved' && !sources.has(id))).toEqual([]);
        } else {
          expect(after.problem ?? Object.values(after.errors).join('')).not.toBe('');
        }
        const text = caseIn(withCase('', calculator.id, writeCase(calculator, raw)), calculator.id);
        expect(text === undefined ? opened.raw : readCase(calculator, text)).toEqual(raw);
      }),
      { numRuns: 60, seed: 20260301 },
    );
  }, PATIENCE);

  it('takes any text for an address', () => {
    const names = Object.keys(calculator.fields);
    const part = fc.tuple(fc.oneof(fc.constantFrom(...names, '__proto__', 'toString'), fc.string()), fc.oneof(fc.string(), fc.constantFrom('1', '!', '*!*', '_n'))).map(([name, value]) => `${name}.${value}`);
    fc.assert(
      fc.property(fc.array(part, { maxLength: 6 }), (parts) => {
        const raw = readCase(calculator, [String(calculator.version), ...parts].join('~'));
        expect(raw).toBeDefined();
        if (raw !== undefined) expect(evaluate(calculator, raw, opened).view.summary).toBeTruthy();
      }),
      { numRuns: 100, seed: 20260302 },
    );
  }, PATIENCE);
});

/** Values spread over a quantity's range, by ratio where it is wide, its ends and a blank among them. */
function insideQuantity(field: QuantityField): fc.Arbitrary<string> {
  const { min, max } = field;
  const low = min > 0 ? Math.log(min) : 0;
  const value = fc.double({ min: 0, max: 1, noNaN: true }).map((part) => (min > 0 ? Math.exp(low + part * (Math.log(max) - low)) : min + part * (max - min)));
  const held = value.map((each) => (field.whole === true ? Math.round(each) : Number(each.toPrecision(4)))).map((each) => Math.min(max, Math.max(min, each)));
  const scaled = field.unit === '%' ? held.map((each) => `${Number((each * 100).toPrecision(6))} %`) : held.map((each) => `${each} ${field.unit}`.trim());
  return field.optional === true ? fc.oneof(scaled, fc.constant('')) : scaled;
}
