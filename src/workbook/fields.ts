import { InputError, requireNumber } from '../compute/errors.ts';
import type { AllowedRange } from '../compute/errors.ts';
import { accepted, refused } from './problem.ts';
import type { Outcome, ProblemKind } from './problem.ts';

/**
 * Readers of one field of something that came from outside (a file, a link, storage).
 * Each takes the field's place and its value and gives the value back with its type, or throws `InputError`
 * naming the place; `attempt` turns that into a `Problem`. None keeps a reference to the value it was given.
 */

/** A value as an error may quote it: a value from outside is never asked to print itself. */
const quoted = (value: unknown): string => {
  if (typeof value === 'string') return JSON.stringify(value.length > 60 ? `${value.slice(0, 60)}…` : value);
  if (typeof value === 'number' || typeof value === 'boolean' || value === undefined || value === null) return String(value);
  return Array.isArray(value) ? 'a list' : `a value of type ${typeof value}`;
};

const wrong = (place: string, value: unknown, expected: string): InputError =>
  new InputError(place, quoted(value), { expected });

/** A plain object, to read fields from. */
export function readObject(place: string, value: unknown): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw wrong(place, value, 'an object');
  return value as Readonly<Record<string, unknown>>;
}

/** Text of 1 to `max` characters (0 to `max` where it may be empty). */
export function readText(place: string, value: unknown, limits: { readonly max: number; readonly empty?: boolean }): string {
  const least = limits.empty === true ? 0 : 1;
  if (typeof value !== 'string' || value.length < least || value.length > limits.max) {
    throw wrong(place, value, `text of ${least} to ${limits.max} characters`);
  }
  return value;
}

/** A finite number within the inclusive limits. */
export function readNumber(place: string, value: unknown, allowed: AllowedRange = {}): number {
  if (typeof value !== 'number') throw wrong(place, value, 'a number');
  return requireNumber(place, value, allowed);
}

/** A whole number within the inclusive limits. */
export function readInteger(place: string, value: unknown, allowed: AllowedRange): number {
  const number = readNumber(place, value, allowed);
  if (!Number.isSafeInteger(number)) throw wrong(place, value, 'a whole number');
  return number;
}

export function readBoolean(place: string, value: unknown): boolean {
  if (typeof value !== 'boolean') throw wrong(place, value, 'true or false');
  return value;
}

/** One of a closed set of words. */
export function readChoice<Word extends string>(place: string, value: unknown, words: readonly Word[]): Word {
  const found = words.find((word) => word === value);
  if (found === undefined) throw wrong(place, value, `one of ${words.join(', ')}`);
  return found;
}

const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d{1,9})?Z$/;

/** An instant in UTC as `Date.prototype.toISOString` writes it. */
export function readInstant(place: string, value: unknown): string {
  if (typeof value !== 'string' || !INSTANT.test(value) || Number.isNaN(Date.parse(value))) {
    throw wrong(place, value, 'a date and time such as 2024-05-01T09:30:00.000Z');
  }
  return new Date(value).toISOString();
}

/** A list of at most `max` items, each read by `item` with its own place. */
export function readList<Item>(
  place: string,
  value: unknown,
  max: number,
  item: (place: string, value: unknown) => Item,
): readonly Item[] {
  if (!Array.isArray(value)) throw wrong(place, value, 'a list');
  if (value.length > max) throw new InputError(place, `a list of ${value.length}`, { expected: `at most ${max} entries` });
  return value.map((entry: unknown, index) => item(`${place}.${index}`, entry));
}

/** The field as `{ [name]: value }`, or nothing where it is absent: for spreading into an object with optional fields. */
export function readOptional<Name extends string, Value>(
  name: Name,
  value: unknown,
  read: (value: unknown) => Value,
): { readonly [Key in Name]?: Value } {
  return value === undefined ? {} : ({ [name]: read(value) } as { readonly [Key in Name]?: Value });
}

/**
 * Runs a reader on something from outside; whatever it throws becomes a `Problem`.
 * `InputError` carries its own place; `at` stands before it. Anything else a reader throws is reported against `at`
 * as well: text from outside must never break the page that reads it.
 */
export function attempt<T>(options: { readonly at: string; readonly kind: ProblemKind; readonly read: () => T }): Outcome<T> {
  const { at, kind, read } = options;
  try {
    return accepted(read());
  } catch (error) {
    if (!(error instanceof InputError)) return refused(kind, at, `${at === '' ? 'This' : at} cannot be read.`);
    const place = at === '' || error.quantity === '' ? at + error.quantity : `${at}.${error.quantity}`;
    const said = error.message.slice(error.quantity.length).replace(/^: /, '');
    return refused(kind, place, `${place === '' ? 'This' : place}: ${said}.`);
  }
}
