import type { Problem } from '../problem.ts';
import type { Rows } from '../storage/rows.ts';
import { problemOf } from '../storage/rows.ts';
import type { SetAside } from '../storage/set-aside.ts';
import { sortRows } from '../storage/set-aside.ts';
import type { BenchReading, ReadingRecord } from './reading.ts';
import { READING_SCHEMA, readReading, readReadingRecord } from './reading.ts';

export const READINGS = 'readings';

export interface ReadingListing {
  /** In the order taken. */
  readonly readings: readonly ReadingRecord[];
  readonly setAside: readonly SetAside[];
  readonly problem: Problem | undefined;
}

/**
 * Bench readings, one row each, so that two tabs (the plan on the desk, the bench sheet on the phone) add to them
 * without meeting. A correction is a removal and an addition.
 */
export interface ReadingShelf {
  /** Every reading on the device and those held in the page. */
  all(): Promise<ReadingListing>;
  of(planId: string): Promise<ReadingListing>;
  /** Keeps a reading. Throws `InputError` when a field is wrong; when storage fails holds it in the page and says so. */
  add(planId: string, reading: BenchReading): Promise<{ readonly record: ReadingRecord; readonly problem: Problem | undefined }>;
  remove(id: string): Promise<Problem | undefined>;
}

interface ReadingShelfOptions {
  readonly rows: Rows;
  readonly now: () => Date;
  readonly newId: () => string;
}

const inOrderTaken = (a: ReadingRecord, b: ReadingRecord): number =>
  a.takenAt < b.takenAt ? -1 : a.takenAt > b.takenAt ? 1 : a.id < b.id ? -1 : 1;

export const readingRecord = (id: string, planId: string, reading: BenchReading): ReadingRecord => ({
  ...readReading('', { ...reading }),
  id,
  planId,
  schemaVersion: READING_SCHEMA,
});

/** The reading without what ties it to this device. */
export const bareReading = (record: ReadingRecord): BenchReading => readReading('', { ...record });

export function openReadingShelf(options: ReadingShelfOptions): ReadingShelf {
  const { rows, now, newId } = options;
  const held = new Map<string, ReadingRecord>();

  const put = async (records: readonly ReadingRecord[]): Promise<void> =>
    rows.transact({
      read: [],
      writeTo: [READINGS],
      decide: () => ({ writes: records.map((record) => ({ store: READINGS, put: record })), result: undefined }),
    });

  const all = async (): Promise<ReadingListing> => {
    const sorted = await sortRows({ rows, store: READINGS, read: readReadingRecord, now, newId });
    const readings = [...sorted.good.filter(({ id }) => !held.has(id)), ...held.values()].sort(inOrderTaken);
    return { readings, setAside: sorted.setAside, problem: sorted.problem ?? rows.problem };
  };

  return {
    all,
    of: async (planId) => {
      const listing = await all();
      return { ...listing, readings: listing.readings.filter((reading) => reading.planId === planId) };
    },
    add: async (planId, reading) => {
      const record = readingRecord(newId(), planId, reading);
      held.set(record.id, record);
      try {
        // Whatever could not be kept earlier goes along: room may have been made since.
        const waiting = [...held.values()];
        await put(waiting);
        for (const { id } of waiting) held.delete(id);
        return { record, problem: rows.problem };
      } catch (error) {
        return { record, problem: problemOf(error) };
      }
    },
    remove: async (id) => {
      if (held.delete(id)) return undefined;
      try {
        await rows.transact({ read: [], writeTo: [READINGS], decide: () => ({ writes: [{ store: READINGS, remove: id }], result: undefined }) });
        return rows.problem;
      } catch (error) {
        return problemOf(error);
      }
    },
  };
}
