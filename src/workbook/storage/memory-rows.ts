import type { Problem } from '../problem.ts';
import type { Row, Rows } from './rows.ts';

/**
 * Rows that last as long as the page, for a browser that keeps nothing. Values are copied in and out, as a database
 * does, so that a page which works on the device works here.
 */
export function memoryRows(problem: Problem): Rows {
  const stores = new Map<string, Map<IDBValidKey, Row>>();
  const storeOf = (name: string): Map<IDBValidKey, Row> => {
    const present = stores.get(name);
    if (present !== undefined) return present;
    const made = new Map<IDBValidKey, Row>();
    stores.set(name, made);
    return made;
  };
  return {
    problem,
    all: (store) => Promise.resolve([...storeOf(store)].map(([key, value]) => ({ key, value: structuredClone(value) }))),
    transact: async ({ read, decide }) => {
      const { writes, result } = decide(read.map(({ store, key }) => structuredClone(storeOf(store).get(key))));
      for (const write of writes) {
        if ('put' in write) storeOf(write.store).set(write.put.id, structuredClone(write.put));
        else storeOf(write.store).delete(write.remove);
      }
      return Promise.resolve(result);
    },
    clear: (names) => {
      for (const name of names) storeOf(name).clear();
      return Promise.resolve();
    },
    close: () => stores.clear(),
  };
}
