import type { FieldSet, InitialCase, RowsField, SimpleField } from './definition.ts';
import { writeQuantity } from './units.ts';

/** What stands in one row of a list, as typed. */
export type RawRow = Readonly<Record<string, string>>;

/** What stands in the fields, as typed: the whole state of a calculator. */
export type RawFields = Readonly<Record<string, string | readonly RawRow[]>>;

/** A value as it would stand in its field. */
export function rawOf(field: SimpleField, value: string | number | undefined): string {
  if (value === undefined) return '';
  return field.kind === 'quantity' && typeof value === 'number' ? writeQuantity(value, field.unit) : String(value);
}

/** A fresh row: the defaults of its fields, overlaid with what is given. */
export function rawRow(field: RowsField, given: Readonly<Record<string, string | number>> = {}): RawRow {
  return Object.fromEntries(
    Object.entries(field.row).map(([name, cell]) => [name, rawOf(cell, Object.hasOwn(given, name) ? given[name] : cell.default)]),
  );
}

/** The fields of the worked case, overlaid with the case that a lesson or page opens on. Unknown names throw: they are typing errors of an author. */
export function rawFields(fields: FieldSet, initial: InitialCase = {}): RawFields {
  for (const name of Object.keys(initial)) {
    if (!Object.hasOwn(fields, name)) throw new Error(`There is no field "${name}"; the fields are ${Object.keys(fields).join(', ')}`);
  }
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => {
      const given = initial[name];
      if (field.kind === 'rows') {
        const rows = given ?? field.default;
        if (!Array.isArray(rows)) throw new Error(`The field "${name}" takes a list of rows`);
        return [name, rows.map((row: Readonly<Record<string, string | number>>) => rawRow(field, row))];
      }
      if (given !== undefined && typeof given === 'object') throw new Error(`The field "${name}" takes one value`);
      return [name, rawOf(field, given ?? field.default)];
    }),
  );
}

/** True when two states of one calculator hold the same text everywhere. */
export function sameRaw(a: RawFields[string] | undefined, b: RawFields[string] | undefined): boolean {
  if (typeof a === 'string' || typeof b === 'string' || a === undefined || b === undefined) return a === b;
  return (
    a.length === b.length &&
    a.every((row, index) => {
      const other = b[index];
      return other !== undefined && Object.keys(row).every((name) => row[name] === other[name]);
    })
  );
}
