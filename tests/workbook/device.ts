import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach } from 'vitest';
import { openPlanShelf, PLAN_DATABASE } from '../../src/workbook/plans/open-plan-shelf.ts';
import type { PlanShelf } from '../../src/workbook/plans/shelf.ts';
import { openRecordStore } from '../../src/workbook/record/record-store.ts';
import type { RecordStore } from '../../src/workbook/record/record-store.ts';
import { readSamplePlan } from './sample-plan.ts';
import type { SamplePlan } from './sample-plan.ts';

const opened: { close(): void }[] = [];

/** Gives each test a device of its own with nothing on it, and closes what the test opened. */
export function useFreshDevice(): void {
  beforeEach(() => {
    globalThis.indexedDB = new IDBFactory();
  });
  afterEach(() => {
    for (const one of opened.splice(0)) one.close();
  });
}

/** A clock that starts at noon and goes on by a second each time it is read. */
export function tickingClock(start = '2025-03-01T12:00:00.000Z'): () => Date {
  let at = Date.parse(start);
  return () => {
    at += 1000;
    return new Date(at);
  };
}

/** One tab with its plans open. */
export async function openTab(now = tickingClock()): Promise<PlanShelf<SamplePlan>> {
  const shelf = await openPlanShelf({ readPlan: readSamplePlan, now });
  opened.push(shelf);
  return shelf;
}

/** One tab with the record of learning open. */
export async function openRecordTab(now = tickingClock()): Promise<RecordStore> {
  const store = await openRecordStore({ now });
  opened.push(store);
  return store;
}

/** Writes a row as it is, past every check, as a defect or another program might. */
export async function putRaw(store: string, row: unknown, layout = PLAN_DATABASE): Promise<void> {
  const database = await openDB(layout.name, layout.version);
  await database.put(store, row);
  database.close();
}

/** Everything in a store, as it is. */
export async function rawRows(store: string, layout = PLAN_DATABASE): Promise<readonly unknown[]> {
  const database = await openDB(layout.name, layout.version);
  const rows: unknown[] = await database.getAll(store);
  database.close();
  return rows;
}

/** Makes every write fail as a full device does, until the function it gives is called. */
export function fillDevice(): () => void {
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('no room', 'QuotaExceededError');
  };
  return () => {
    IDBObjectStore.prototype.put = put;
  };
}

/** Waits until a notice that was told has been heard. */
export const untilHeard = async (happened: () => boolean): Promise<void> => {
  for (let turns = 0; !happened(); turns += 1) {
    if (turns > 400) throw new Error('it never happened');
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
};
