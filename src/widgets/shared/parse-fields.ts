import type { FieldSet, RowsField, SimpleField, ValuesOf } from './definition.ts';
import type { RawFields, RawRow } from './raw-fields.ts';
import { describeLimits, readQuantity, writeQuantity } from './units.ts';

/** Messages by field path: `windingVolts`, or `loads.2.amps` for a cell of a row. */
export type FieldErrors = Readonly<Record<string, string>>;

/** Either every value, or what is wrong with each field that has none. */
export type Parsed<F> =
  | { readonly values: ValuesOf<F>; readonly errors: FieldErrors }
  | { readonly values: undefined; readonly errors: FieldErrors };

type Read = { readonly value: unknown } | { readonly message: string };

const readSimple = (field: SimpleField, text: string): Read => {
  if (field.kind === 'choice') {
    return field.options.some((option) => option.value === text)
      ? { value: text }
      : { message: `Choose one of: ${field.options.map((option) => option.label).join(', ')}.` };
  }
  if (field.kind === 'text') {
    return text.length <= field.maxLength ? { value: text } : { message: `At most ${field.maxLength} characters.` };
  }
  const limits = describeLimits(field);
  if (text.trim() === '') {
    return field.optional === true ? { value: undefined } : { message: `Write a value ${limits}.` };
  }
  const read = readQuantity(text, field.unit, field.assume);
  if ('reason' in read) return { message: `${read.reason} Write a value ${limits}.` };
  if (read.value < field.min || read.value > field.max) {
    return { message: `${writeQuantity(read.value, field.unit)} is out of range. Write a value ${limits}.` };
  }
  if (field.whole === true && !Number.isInteger(read.value)) return { message: `Only whole numbers here. Write a value ${limits}.` };
  return read;
};

const readRows = (name: string, field: RowsField, rows: readonly RawRow[], errors: Record<string, string>): unknown[] => {
  if (rows.length < field.min || rows.length > field.max) {
    errors[name] = `The list takes ${field.min} to ${field.max} rows.`;
  }
  return rows.map((row, index) =>
    Object.fromEntries(
      Object.entries(field.row).map(([cell, descriptor]) => {
        const read = readSimple(descriptor, row[cell] ?? '');
        if ('message' in read) errors[`${name}.${index}.${cell}`] = read.message;
        return [cell, 'value' in read ? read.value : undefined];
      }),
    ),
  );
};

/** Reads every field. Values are given only when all fields could be read. */
export function parseFields<F extends FieldSet>(fields: F, raw: RawFields): Parsed<F> {
  const errors: Record<string, string> = {};
  const values: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    const given = raw[name];
    if (field.kind === 'rows') {
      values[name] = readRows(name, field, Array.isArray(given) ? given : [], errors);
      continue;
    }
    const read = readSimple(field, typeof given === 'string' ? given : '');
    if ('message' in read) errors[name] = read.message;
    else values[name] = read.value;
  }
  return Object.keys(errors).length === 0
    ? { values: values as ValuesOf<F>, errors }
    : { values: undefined, errors };
}
