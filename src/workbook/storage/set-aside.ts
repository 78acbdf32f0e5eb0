import { readInstant, readObject, readText } from '../fields.ts';
import type { Outcome, Problem } from '../problem.ts';
import { refused } from '../problem.ts';
import type { Row, Rows } from './rows.ts';
import { problemOf } from './rows.ts';

/** The store for what could not be read. Every database of this site has one. */
export const SET_ASIDE = 'set-aside';

/** Something kept that cannot be read: shown, exportable, never changed and never erased by the site. */
export interface SetAside {
  readonly from: string;
  readonly key: IDBValidKey;
  readonly problem: Problem;
  /** When it was found, ISO. */
  readonly foundAt: string;
  /** Exactly what was stored. */
  readonly verbatim: unknown;
}

interface SetAsideRow extends Row {
  readonly from: string;
  readonly key: IDBValidKey;
  readonly place: string;
  readonly message: string;
  readonly kind: Problem['kind'];
  readonly foundAt: string;
  readonly verbatim: unknown;
}

export interface Sorted<T> {
  readonly good: readonly T[];
  readonly setAside: readonly SetAside[];
  /** Set when storage could not be read at all. */
  readonly problem: Problem | undefined;
}

interface SortOptions<T> {
  readonly rows: Rows;
  readonly store: string;
  /** Reads one stored value as what this version keeps. */
  readonly read: (value: unknown) => Outcome<T>;
  readonly now: () => Date;
  readonly newId: () => string;
}

const rowOf = (entry: SetAside, id: string): SetAsideRow => ({
  id,
  from: entry.from,
  key: entry.key,
  kind: entry.problem.kind,
  place: entry.problem.place,
  message: entry.problem.message,
  foundAt: entry.foundAt,
  verbatim: entry.verbatim,
});

/** A row of the set-aside store, however little of it can be read itself. */
function entryOf(value: unknown): SetAside | undefined {
  try {
    const row = readObject('', value);
    const problem = refused('damaged', String(row['place']), readText('message', row['message'], { max: 1000 })).problem;
    return {
      from: readText('from', row['from'], { max: 60 }),
      key: row['key'] as IDBValidKey,
      problem,
      foundAt: readInstant('foundAt', row['foundAt']),
      verbatim: row['verbatim'],
    };
  } catch {
    return undefined;
  }
}

/** Moves a row that is still unreadable when the transaction looks at it. True when it now lies in the set-aside store. */
function moveAside<T>(options: SortOptions<T>, entry: SetAside): Promise<boolean> {
  const { rows, store, read, newId } = options;
  return rows.transact({
    read: [{ store, key: entry.key }],
    writeTo: [store, SET_ASIDE],
    decide: ([current]) =>
      current === undefined || read(current).ok
        ? { writes: [], result: false }
        : {
            writes: [
              { store: SET_ASIDE, put: rowOf({ ...entry, verbatim: current }, newId()) },
              { store, remove: entry.key },
            ],
            result: true,
          },
  });
}

/** Puts back what an earlier version set aside and this one can read, where its place is still free. */
async function takeBack<T>(options: SortOptions<T>, entry: SetAside, id: IDBValidKey): Promise<T | undefined> {
  const { rows, store, read } = options;
  const again = read(entry.verbatim);
  if (!again.ok) return undefined;
  return rows.transact<T | undefined>({
    read: [{ store, key: entry.key }],
    writeTo: [store, SET_ASIDE],
    decide: ([current]) =>
      current !== undefined
        ? { writes: [], result: undefined }
        : {
            writes: [
              { store, put: entry.verbatim as Row },
              { store: SET_ASIDE, remove: id },
            ],
            result: again.value,
          },
  });
}

/**
 * Reads every row of a store. What cannot be read is moved, verbatim, to the set-aside store, so that no later save
 * can touch it; what a later version of the site wrote is listed but left where it is, since that version may be open
 * in the next tab. Never rejects and never erases: where moving fails the row stays in place and is still listed.
 */
export async function sortRows<T>(options: SortOptions<T>): Promise<Sorted<T>> {
  const { rows, store, read, now } = options;
  const good: T[] = [];
  const setAside: SetAside[] = [];
  let found;
  let before;
  try {
    found = await rows.all(store);
    before = await rows.all(SET_ASIDE);
  } catch (error) {
    return { good, setAside, problem: problemOf(error) };
  }
  let problem: Problem | undefined;
  for (const { key, value } of before) {
    const entry = entryOf(value) ?? {
      from: SET_ASIDE, key, foundAt: now().toISOString(), verbatim: value,
      problem: refused('damaged', '', 'This was set aside earlier and can no longer be described.').problem,
    };
    if (entry.from !== store && entry.from !== SET_ASIDE) continue;
    const back = entry.from === store ? await takeBack(options, entry, key).catch(() => undefined) : undefined;
    if (back === undefined) setAside.push(entry);
    else good.push(back);
  }
  for (const { key, value } of found) {
    const outcome = read(value);
    if (outcome.ok) {
      good.push(outcome.value);
      continue;
    }
    const entry = { from: store, key, problem: outcome.problem, foundAt: now().toISOString(), verbatim: value };
    setAside.push(entry);
    if (outcome.problem.kind === 'newer' || value === undefined) continue;
    try {
      await moveAside(options, entry);
    } catch (error) {
      problem ??= problemOf(error);
    }
  }
  return { good, setAside, problem };
}
