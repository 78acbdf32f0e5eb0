/** One thing wrong with what was read. */
export interface ReadProblem {
  /** Where, dotted from the top: `amp.heater.ohms`, `loads.3.amps`; '' for the value as a whole. */
  readonly path: string;
  /** What is expected there, in a sentence a reader of the file can act on. */
  readonly message: string;
}

/** What has been found so far while one value is read. */
export interface Reading {
  readonly problems: ReadProblem[];
  /** Paths of keys that mean nothing here and were left out. */
  readonly dropped: string[];
}

/** Reads one value; `undefined` when it is not usable, with a problem added. It never throws on plain JSON. */
export type Reader<T> = (value: unknown, path: string, reading: Reading) => T | undefined;

/** A key that may be left out. */
export interface Optional<T> {
  readonly optional: Reader<T>;
}

type Field = Reader<unknown> | Optional<unknown>;
type Shape = Readonly<Record<string, Field>>;
type OptionalKeys<S extends Shape> = { [K in keyof S]: S[K] extends Optional<unknown> ? K : never }[keyof S];

/** What `record` gives for its fields. */
export type ReadRecord<S extends Shape> = {
  readonly [K in Exclude<keyof S, OptionalKeys<S>>]: S[K] extends Reader<infer T> ? T : never;
} & {
  readonly [K in OptionalKeys<S>]?: S[K] extends Optional<infer T> ? T : never;
};

/** Problems beyond this many are not listed: a hostile file could name a million. */
export const MOST_PROBLEMS = 50;
/** Keys beyond this many in one object are refused unread. */
const MOST_KEYS = 100;
/** Assigning to these changes an object's prototype or its constructor: never data. */
const FORBIDDEN_KEYS = ['__proto__', 'constructor', 'prototype'];

const below = (path: string, key: string | number): string => (path === '' ? String(key) : `${path}.${key}`);

/** Names a key of a hostile file without repeating a megabyte of it. */
const shown = (key: string): string => (key.length <= 40 ? key : `${key.slice(0, 40)}…`);

export function refuse(reading: Reading, path: string, message: string): undefined {
  if (reading.problems.length < MOST_PROBLEMS) reading.problems.push({ path, message });
  return undefined;
}

/** A finite number within limits, both included. */
export function number(limits: { readonly min: number; readonly max: number; readonly unit?: string }): Reader<number> {
  const unit = limits.unit === undefined || limits.unit === '' ? '' : ` ${limits.unit}`;
  const message = `a number from ${limits.min} to ${limits.max}${unit} is expected`;
  return (value, path, reading) =>
    typeof value === 'number' && Number.isFinite(value) && value >= limits.min && value <= limits.max ?
      value
    : refuse(reading, path, message);
}

/** A whole number within limits, both included. */
export function wholeNumber(limits: { readonly min: number; readonly max: number }): Reader<number> {
  return (value, path, reading) =>
    typeof value === 'number' && Number.isInteger(value) && value >= limits.min && value <= limits.max ?
      value
    : refuse(reading, path, `a whole number from ${limits.min} to ${limits.max} is expected`);
}

/** Text of at most so many characters, without control characters. */
export function text(options: { readonly most: number; readonly least?: number }): Reader<string> {
  const { most, least = 0 } = options;
  return (value, path, reading) => {
    if (typeof value !== 'string' || value.length > most || value.length < least) {
      return refuse(reading, path, `text of ${least} to ${most} characters is expected`);
    }
    // Control and direction-override characters can make one name look like another on screen and on paper.
    if (/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u.test(value)) return refuse(reading, path, 'text without control characters is expected');
    return value;
  };
}

export const flag: Reader<boolean> = (value, path, reading) =>
  typeof value === 'boolean' ? value : refuse(reading, path, 'true or false is expected');

/** One of a fixed set of words (or numbers). */
export function oneOf<const T extends readonly (string | number)[]>(words: T): Reader<T[number]> {
  return (value, path, reading) =>
    words.includes(value as T[number]) ? (value as T[number]) : refuse(reading, path, `one of ${words.join(', ')} is expected`);
}

/** A list with at most so many entries. All of its entries are read, so that all problems are named. */
export function list<T>(entry: Reader<T>, options: { readonly most: number; readonly least?: number }): Reader<readonly T[]> {
  const { most, least = 0 } = options;
  return (value, path, reading) => {
    if (!Array.isArray(value) || value.length > most || value.length < least) {
      return refuse(reading, path, `a list of ${least} to ${most} entries is expected`);
    }
    const read: T[] = [];
    // By index: a hole in the list must be refused, and forEach would pass over it.
    for (let i = 0; i < value.length; i++) {
      const item = entry(value[i], below(path, i), reading);
      if (item !== undefined) read.push(item);
    }
    return read.length === value.length ? read : undefined;
  };
}

export const optional = <T>(reader: Reader<T>): Optional<T> => ({ optional: reader });

const isOptional = (field: Field): field is Optional<unknown> => typeof field === 'object';

/** The value as an object with own keys only, or `undefined` with a problem added. */
function ownKeys(value: unknown, path: string, reading: Reading): readonly string[] | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return refuse(reading, path, 'an object is expected');
  const keys = Object.keys(value);
  if (keys.length > MOST_KEYS) return refuse(reading, path, `an object of at most ${MOST_KEYS} keys is expected`);
  for (const key of FORBIDDEN_KEYS) {
    if (Object.hasOwn(value, key)) return refuse(reading, below(path, key), 'this key is never part of a plan');
  }
  return keys;
}

/**
 * An object with known fields. The result holds these and nothing else. A key that is not among them is left out and
 * its path noted in `dropped`; `__proto__`, `constructor` and `prototype` are refused.
 */
export function record<const S extends Shape>(fields: S): Reader<ReadRecord<S>> {
  return (value, path, reading) => {
    const keys = ownKeys(value, path, reading);
    if (keys === undefined) return undefined;
    const source = value as Readonly<Record<string, unknown>>;
    const read: Record<string, unknown> = {};
    let whole = true;
    for (const [key, field] of Object.entries(fields)) {
      const given = Object.hasOwn(source, key) ? source[key] : undefined;
      if (isOptional(field)) {
        if (given === undefined) continue;
        const item = field.optional(given, below(path, key), reading);
        if (item === undefined) whole = false;
        else read[key] = item;
      } else {
        const item = field(given, below(path, key), reading);
        if (item === undefined) whole = false;
        else read[key] = item;
      }
    }
    for (const key of keys) {
      if (!Object.hasOwn(fields, key) && reading.dropped.length < MOST_PROBLEMS) reading.dropped.push(below(path, shown(key)));
    }
    return whole ? (read as ReadRecord<S>) : undefined;
  };
}

type Variant<Tag extends string, Name extends string, R> = R extends Reader<infer T> ? T & { readonly [K in Tag]: Name } : never;

/** One of several kinds of object, told apart by the word under `tag`, which becomes part of the result. */
export function tagged<const Tag extends string, const V extends Readonly<Record<string, Reader<object>>>>(
  tag: Tag,
  variants: V,
): Reader<{ [Name in keyof V & string]: Variant<Tag, Name, V[Name]> }[keyof V & string]> {
  const names = Object.keys(variants);
  return (value, path, reading) => {
    if (ownKeys(value, path, reading) === undefined) return undefined;
    const { [tag]: name, ...rest } = value as Readonly<Record<string, unknown>>;
    const variant = typeof name === 'string' && Object.hasOwn(variants, name) ? variants[name] : undefined;
    if (variant === undefined) return refuse(reading, below(path, tag), `one of ${names.join(', ')} is expected`);
    const read = variant(rest, path, reading);
    return read === undefined ? undefined : ({ [tag]: name, ...read } as { [Name in keyof V & string]: Variant<Tag, Name, V[Name]> }[keyof V & string]);
  };
}
