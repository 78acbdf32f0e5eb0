import { openDB } from 'idb';
import type { IDBPDatabase } from 'idb';
import { memoryRows } from './memory-rows.ts';
import type { FoundRow, Rows } from './rows.ts';
import { StorageError } from './rows.ts';
import { storageProblem } from './storage-problem.ts';

/** One database of this site: its stores keep rows by `id`. A changed set of stores needs the next version number. */
export interface DatabaseLayout {
  readonly name: string;
  readonly version: number;
  readonly stores: readonly string[];
}

/** A browser that does not answer at all (seen after a crash, and while another tab holds an upgrade) must not hold up the page. */
const OPENING_MILLISECONDS = 4000;

function open(layout: DatabaseLayout, onClosed: () => void): Promise<IDBPDatabase> {
  return openDB(layout.name, layout.version, {
    upgrade: (database) => {
      for (const store of layout.stores) {
        if (!database.objectStoreNames.contains(store)) database.createObjectStore(store, { keyPath: 'id' });
      }
    },
    // Another tab runs a later version and wants to upgrade: let go, so that it can.
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      onClosed();
    },
    terminated: onClosed,
  });
}

function withinTime<T>(promise: Promise<T>, milliseconds: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => { reject(new DOMException('it does not answer', 'TimeoutError')); }, milliseconds);
    promise.then(resolve, reject).finally(() => { clearTimeout(timer); });
  });
}

/** Reads every row on its own, so that one the browser cannot give back does not hide the others. */
async function everyRow(database: IDBPDatabase, store: string): Promise<readonly FoundRow[]> {
  const keys = await database.getAllKeys(store);
  try {
    const values: unknown[] = await database.getAll(store);
    if (values.length === keys.length) return keys.map((key, index) => ({ key, value: values[index] }));
  } catch {
    // Fall through to one at a time.
  }
  return Promise.all(keys.map(async (key) => ({ key, value: await database.get(store, key).catch(() => undefined) as unknown })));
}

/**
 * Opens a database of this site. When the browser refuses (or does not answer within `openingMilliseconds`) the rows
 * come back all the same, kept in memory, with the reason in `problem`. Never rejects.
 */
export async function openRows(layout: DatabaseLayout, openingMilliseconds = OPENING_MILLISECONDS): Promise<Rows> {
  let connection: Promise<IDBPDatabase> | undefined;
  let closed = false;
  const connect = async (): Promise<IDBPDatabase> => {
    if (closed) throw new DOMException('the page has closed its storage', 'InvalidStateError');
    connection ??= open(layout, () => { connection = undefined; });
    try {
      return await connection;
    } catch (error) {
      connection = undefined;
      throw error;
    }
  };
  try {
    await withinTime(connect(), openingMilliseconds);
  } catch (error) {
    closed = true; // one that opens after all must not stand in the way of another tab
    void connection?.then((database) => { database.close(); }, () => undefined);
    return memoryRows(storageProblem(error, true));
  }
  const guarded = async <T>(work: (database: IDBPDatabase) => Promise<T>): Promise<T> => {
    try {
      return await work(await connect());
    } catch (error) {
      if (!(error instanceof DOMException)) throw error; // a defect of ours, not of the storage
      throw new StorageError(storageProblem(error, false), error);
    }
  };
  return {
    problem: undefined,
    all: (store) => guarded((database) => everyRow(database, store)),
    transact: ({ read, writeTo, decide }) =>
      guarded(async (database) => {
        const stores = [...new Set([...read.map(({ store }) => store), ...writeTo])];
        // Strict: a save that was reported is on the disk, whatever happens to the phone next.
        const transaction = database.transaction(stores, writeTo.length > 0 ? 'readwrite' : 'readonly', { durability: 'strict' });
        // Observed from the start: an abort must not surface as an unhandled rejection.
        const done = transaction.done.then(() => undefined, (error: unknown) => ({ error }));
        let result;
        try {
          const rows: unknown[] = await Promise.all(read.map(({ store, key }): Promise<unknown> => transaction.objectStore(store).get(key)));
          const decision = decide(rows);
          result = decision.result;
          await Promise.all(decision.writes.map(async (write) => {
            const store = transaction.objectStore(write.store);
            await ('put' in write ? store.put?.(write.put) : store.delete?.(write.remove));
          }));
        } catch (error) {
          try {
            transaction.abort();
          } catch {
            // It has aborted itself already.
          }
          throw error;
        }
        const failure = await done;
        if (failure !== undefined) throw failure.error;
        return result;
      }),
    clear: (stores) =>
      guarded(async (database) => {
        const transaction = database.transaction([...stores], 'readwrite', { durability: 'strict' });
        await Promise.all([...stores.map((store) => transaction.objectStore(store).clear()), transaction.done]);
      }),
    close: () => {
      closed = true;
      void connection?.then((database) => { database.close(); }, () => undefined);
    },
  };
}
