/*
 * A calculator's state in the page's query: `?rectify=1~windingVolts.15+V~loads.Relay*2*12+V!Lamp*1*6.3+V`.
 *
 * The first part is the version, then one part for each field that stands differently from the worked case:
 * its name, a point, its text as typed. Rows are divided by `!` and their cells, in the order of the fields, by `*`.
 * Text that holds one of these marks is escaped with `_`. None of the marks is changed by the query's own encoding, so
 * that an address stays readable and survives being sent about.
 */
import type { Face, InitialCase, RowsField } from './definition.ts';
import { rawFields, rawOf, sameRaw, type RawFields, type RawRow } from './raw-fields.ts';

const MAX_LENGTH = 8_000;
const MAX_TEXT = 120;

const ESCAPES: readonly (readonly [mark: string, code: string])[] = [['~', 't'], ['!', 'r'], ['*', 'c']];

const escapeText = (text: string): string =>
  ESCAPES.reduce((done, [mark, code]) => done.replaceAll(mark, `_${code}`), text.replaceAll('_', '__'));

const unescapeText = (text: string): string =>
  text.replace(/_(.)/g, (_, code: string) => ESCAPES.find(([, c]) => c === code)?.[0] ?? code).slice(0, MAX_TEXT);

/** What stands for a list without rows; a cell is never written like this. */
const NO_ROWS = '_n';

const writeRows = (field: RowsField, rows: readonly RawRow[]): string =>
  rows.length === 0
    ? NO_ROWS
    : rows
        .map((row) =>
          Object.entries(field.row)
            .map(([name, cell]) => (row[name] === rawOf(cell, cell.default) ? '' : escapeText(row[name] ?? '') || '_'))
            .join('*'),
        )
        .join('!');

const readCell = (text: string | undefined, usual: string): string => {
  if (text === undefined || text === '') return usual;
  return text === '_' ? '' : unescapeText(text);
};

const readRows = (field: RowsField, text: string): readonly RawRow[] =>
  (text === NO_ROWS ? [] : text.split('!'))
    .slice(0, field.max)
    .map((row) => {
      const cells = row.split('*');
      return Object.fromEntries(
        Object.entries(field.row).map(([name, cell], index) => [name, readCell(cells[index], rawOf(cell, cell.default))]),
      );
    });

/** The case as text, or undefined when it does not differ from the one the page opens on. */
export function writeCase(
  calculator: Face,
  raw: RawFields,
  opened: RawFields = rawFields(calculator.fields),
): string | undefined {
  const worked = rawFields(calculator.fields);
  const names = Object.keys(calculator.fields);
  if (names.every((name) => sameRaw(raw[name], opened[name]))) return undefined;
  const parts = names.flatMap((name) => {
    if (sameRaw(raw[name], opened[name]) && sameRaw(raw[name], worked[name])) return [];
    const field = calculator.fields[name];
    const value = raw[name];
    if (field?.kind === 'rows') return [`${name}.${Array.isArray(value) ? writeRows(field, value) : ''}`];
    return [`${name}.${typeof value === 'string' ? escapeText(value) : ''}`];
  });
  return [String(calculator.version), ...parts].join('~');
}

/**
 * Reads a case written by `writeCase` over the one the page opens on. Anything may stand in an address: what is not
 * understood is left out, and text of another version is not read at all (`undefined`).
 */
export function readCase(
  calculator: Face,
  text: string,
  opened: RawFields = rawFields(calculator.fields),
): RawFields | undefined {
  const [version, ...parts] = text.slice(0, MAX_LENGTH).split('~');
  if (version !== String(calculator.version)) return undefined;
  const given = new Map<string, string | readonly RawRow[]>();
  for (const part of parts) {
    const point = part.indexOf('.');
    const name = part.slice(0, point);
    const field = point > 0 && Object.hasOwn(calculator.fields, name) ? calculator.fields[name] : undefined;
    if (field === undefined) continue;
    const value = part.slice(point + 1);
    if (field.kind === 'rows') given.set(name, readRows(field, value));
    else if (field.kind !== 'choice' || field.options.some((option) => option.value === value)) given.set(name, unescapeText(value));
  }
  return Object.fromEntries(Object.keys(calculator.fields).map((name) => [name, given.get(name) ?? opened[name] ?? '']));
}

const queryOf = (text: string): string => encodeURIComponent(text).replaceAll('%20', '+');

/** The query with this calculator's part replaced (or removed), everything else in it kept. */
export function withCase(search: string, key: string, text: string | undefined): string {
  const others = search
    .replace(/^\?/, '')
    .split('&')
    .filter((part) => part !== '' && part.split('=')[0] !== key);
  const all = text === undefined ? others : [...others, `${key}=${queryOf(text)}`];
  return all.length === 0 ? '' : `?${all.join('&')}`;
}

/** This calculator's part of the query, decoded; undefined when there is none. */
export function caseIn(search: string, key: string): string | undefined {
  return new URLSearchParams(search).get(key) ?? undefined;
}

/** Where another calculator stands, opened on a case; from the site's root, for `sitePath`. */
export function handOnPath(calculator: Face, given: InitialCase): string {
  const text = writeCase(calculator, rawFields(calculator.fields, given));
  return `calculators/${calculator.id}/${withCase('', calculator.id, text)}`;
}
