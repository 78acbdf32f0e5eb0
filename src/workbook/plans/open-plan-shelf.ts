import { newId as randomId } from '../new-id.ts';
import type { Outcome } from '../problem.ts';
import { accepted, refused } from '../problem.ts';
import { openRows } from '../storage/database-rows.ts';
import { openNotices } from '../storage/notices.ts';
import type { RowWrite } from '../storage/rows.ts';
import { problemOf } from '../storage/rows.ts';
import { SET_ASIDE, sortRows } from '../storage/set-aside.ts';
import type { SaveRequest } from './decide.ts';
import { decideSave, withDeletion } from './decide.ts';
import { browserNoteStorage, leaveNote, readNotes, removeNote, requestFrom } from './parting-note.ts';
import { copyTitle, PLAN_SCHEMA, readPlanRecord, tidyTitle } from './plan-record.ts';
import type { PlanRecord } from './plan-record.ts';
import { bareReading, openReadingShelf, readingRecord, READINGS } from './reading-shelf.ts';
import type { PlanShelf, SaveResult, ShelfOptions } from './shelf.ts';

const PLANS = 'plans';

/** Where plans are kept on the device. */
export const PLAN_DATABASE = { name: 'second-rail-plans', version: 1, stores: [PLANS, READINGS, SET_ASIDE] };

const latestFirst = <Plan>(a: PlanRecord<Plan>, b: PlanRecord<Plan>): number => (a.savedAt < b.savedAt ? 1 : -1);

/** Opens the plans of this device; where the browser refuses, the same shelf in memory, with the reason in its listing. */
export async function openPlanShelf<Plan>(options: ShelfOptions<Plan>): Promise<PlanShelf<Plan>> {
  const { readPlan, now = () => new Date(), newId = randomId } = options;
  const rows = options.rows ?? (await openRows(PLAN_DATABASE));
  // In memory there is nothing that a note could be about when the next page opens.
  const noteStorage = rows.problem === undefined ? (options.noteStorage ?? browserNoteStorage()) : undefined;
  const notices = openNotices(PLAN_DATABASE.name);
  const readings = openReadingShelf({ rows, now, newId });
  /** Content that storage refused, by id, with the revision it was made from. */
  const held = new Map<string, SaveRequest<Plan>>();

  const read = (value: unknown): Outcome<PlanRecord<Plan>> => readPlanRecord(value, readPlan);
  const rowFrom = (record: PlanRecord<Plan>): RowWrite => ({ store: PLANS, put: record });
  const heldRecord = (request: SaveRequest<Plan>): PlanRecord<Plan> => ({
    id: request.id,
    title: tidyTitle(request.title),
    savedAt: now().toISOString(),
    revision: request.basedOn,
    schemaVersion: PLAN_SCHEMA,
    plan: request.plan,
  });

  /** A copy made because of another tab takes the readings along, so that the bench sheet goes on as it was. */
  const takeReadings = async (from: string, to: string): Promise<void> => {
    const listing = await readings.of(from);
    for (const reading of listing.readings) await readings.add(to, bareReading(reading));
  };

  const save = async (request: SaveRequest<Plan>): Promise<SaveResult<Plan>> => {
    try {
      const copyId = newId();
      const decision = await rows.transact({
        read: [{ store: PLANS, key: request.id }],
        writeTo: [PLANS],
        decide: ([row]) => {
          const existing = row === undefined ? undefined : read(row);
          const decided = decideSave({ request, existing, savedAt: now().toISOString(), copyId });
          return { writes: decided.kind === 'unchanged' ? [] : [rowFrom(decided.record)], result: decided };
        },
      });
      held.delete(request.id);
      const { record } = decision;
      if (decision.kind !== 'unchanged') notices.tell({ kind: 'saved', id: record.id, revision: record.revision });
      if (decision.kind === 'copied') await takeReadings(request.id, record.id);
      return { ...decision, problem: rows.problem };
    } catch (error) {
      const problem = problemOf(error);
      held.set(request.id, request);
      return { kind: 'held', record: heldRecord(request), problem };
    }
  };

  const open = async (id: string): Promise<Outcome<PlanRecord<Plan>>> => {
    const waiting = held.get(id);
    if (waiting !== undefined) return accepted(heldRecord(waiting));
    try {
      const row = await rows.transact({ read: [{ store: PLANS, key: id }], writeTo: [], decide: ([found]) => ({ writes: [], result: found }) });
      return row === undefined ? refused('foreign', 'id', 'There is no plan of this name on this device any more.') : read(row);
    } catch (error) {
      return { ok: false, problem: problemOf(error) };
    }
  };

  const mark = async (id: string, kind: 'removed' | 'restored'): Promise<Outcome<PlanRecord<Plan>>> => {
    const deletedAt = kind === 'removed' ? now().toISOString() : undefined;
    const waiting = held.get(id);
    if (waiting !== undefined) {
      // What is only in the page must reach the device before it can lie among the deleted plans there.
      const kept = await save(waiting);
      if (kept.kind === 'held') return { ok: false, problem: kept.problem ?? refused('failed', '', 'This plan is only in this page.').problem };
    }
    try {
      const outcome = await rows.transact({
        read: [{ store: PLANS, key: id }],
        writeTo: [PLANS],
        decide: ([row]) => {
          const existing = row === undefined ? refused('foreign', 'id', 'There is no plan of this name on this device any more.') : read(row);
          if (!existing.ok) return { writes: [], result: existing };
          const record = withDeletion(existing.value, deletedAt);
          return { writes: [rowFrom(record)], result: accepted(record) };
        },
      });
      if (outcome.ok) notices.tell({ kind, id, revision: outcome.value.revision });
      return outcome;
    } catch (error) {
      return { ok: false, problem: problemOf(error) };
    }
  };

  const addAll: PlanShelf<Plan>['addAll'] = async (plans) => {
    const entries = plans.map(({ title, plan, readings: own }) => ({ request: { id: newId(), title, plan, basedOn: 0 }, own }));
    const records = entries.map(({ request }) => ({ ...heldRecord(request), revision: 1 }));
    const rowsOfReadings = entries.flatMap(({ request, own }) => own.map((reading) => readingRecord(newId(), request.id, reading)));
    const puts: RowWrite[] = [...records.map(rowFrom), ...rowsOfReadings.map((record) => ({ store: READINGS, put: record }))];
    try {
      await rows.transact({ read: [], writeTo: [PLANS, READINGS], decide: () => ({ writes: puts, result: undefined }) });
    } catch (error) {
      const problem = problemOf(error);
      for (const { request } of entries) held.set(request.id, request);
      for (const { planId, ...reading } of rowsOfReadings) await readings.add(planId, reading);
      return entries.map(({ request }) => ({ kind: 'held' as const, record: heldRecord(request), problem }));
    }
    for (const record of records) notices.tell({ kind: 'saved', id: record.id, revision: 1 });
    return records.map((record) => ({ kind: 'saved' as const, record, problem: rows.problem }));
  };

  const left = readNotes({ storage: noteStorage, readPlan, now });
  const recovered: SaveResult<Plan>[] = [];
  for (const note of left.notes) {
    const result = await save(requestFrom(note, await open(note.request.id)));
    if (result.problem === undefined) removeNote(noteStorage, note.request.id);
    if (result.kind !== 'unchanged') recovered.push(result);
  }

  return {
    readings,
    recovered,
    leaveNote: (note) => void leaveNote(noteStorage, note),
    removeNote: (id) => { removeNote(noteStorage, id); },
    readPlan,
    now,
    newId,
    open,
    save,
    addAll,
    add: (title, plan) => save({ id: newId(), title, plan, basedOn: 0 }),
    list: async () => {
      const sorted = await sortRows({ rows, store: PLANS, read, now, newId });
      const kept = sorted.good.filter(({ id }) => !held.has(id)).map((record) => ({ ...record, held: false }));
      const inPage = [...held.values()].map((request) => ({ ...heldRecord(request), held: true }));
      return {
        plans: [...kept.filter(({ deletedAt }) => deletedAt === undefined), ...inPage].sort(latestFirst),
        deleted: kept.filter(({ deletedAt }) => deletedAt !== undefined).sort(latestFirst),
        setAside: [...sorted.setAside, ...left.setAside],
        problem: sorted.problem ?? rows.problem,
      };
    },
    duplicate: async (id) => {
      const original = await open(id);
      if (!original.ok) return original;
      const { title, plan } = original.value;
      return accepted(await save({ id: newId(), title: copyTitle(title, 'copy'), plan, basedOn: 0 }));
    },
    remove: (id) => mark(id, 'removed'),
    restore: (id) => mark(id, 'restored'),
    erase: async (id) => {
      try {
        const { readings: own } = await readings.of(id);
        const erased = await rows.transact({
          read: [{ store: PLANS, key: id }],
          writeTo: [PLANS, READINGS],
          decide: ([row]) => {
            const existing = row === undefined ? undefined : read(row);
            // Only what lies among the deleted plans can be erased: one slip must never be enough.
            if (existing?.ok !== true || existing.value.deletedAt === undefined) return { writes: [], result: false };
            const removals = own.map((reading) => ({ store: READINGS, remove: reading.id }));
            return { writes: [{ store: PLANS, remove: id }, ...removals], result: true };
          },
        });
        if (!erased) return refused('invalid', 'id', 'Only a plan that was deleted first can be erased; nothing was.').problem;
        notices.tell({ kind: 'erased', id, revision: 0 });
        return rows.problem;
      } catch (error) {
        return problemOf(error);
      }
    },
    keepHeld: async () => {
      const results: SaveResult<Plan>[] = [];
      for (const request of [...held.values()]) results.push(await save(request));
      return results;
    },
    listen: (hear) => notices.listen(hear),
    close: () => {
      notices.close();
      rows.close();
    },
  };
}
