import { attempt } from '../fields.ts';
import { newId as randomId } from '../new-id.ts';
import type { Outcome, Problem } from '../problem.ts';
import { accepted } from '../problem.ts';
import { climb } from '../schema-ladder.ts';
import { openRows } from '../storage/database-rows.ts';
import { openNotices } from '../storage/notices.ts';
import type { Row, Rows } from '../storage/rows.ts';
import { problemOf } from '../storage/rows.ts';
import type { SetAside } from '../storage/set-aside.ts';
import { SET_ASIDE, sortRows } from '../storage/set-aside.ts';
import type { Answer, Drill, Fact, GateOpening, LearningRecord, LessonProgress, RecordKind } from './learning-record.ts';
import { FACT_READERS, RECORD_KINDS, RECORD_LADDERS, recordVersion } from './learning-record.ts';

/**
 * The record of learning has a database of its own, apart from the plans: a lesson page loads nothing of the plans, and
 * wiping one leaves the other. IndexedDB rather than localStorage, because each fact is a row that two tabs can add
 * without rewriting (and so losing) each other's, a wipe is one transaction, and nothing blocks the page meanwhile.
 */
export const RECORD_DATABASE = { name: 'second-rail-record', version: 1, stores: [...RECORD_KINDS, SET_ASIDE] };

export interface KeptRecord {
  readonly record: LearningRecord;
  readonly setAside: readonly SetAside[];
  /** Why the record lasts only as long as the page, if so. */
  readonly problem: Problem | undefined;
}

/** The record of one reader on one device. Each method gives the problem when storage refused; the page holds on to what it refused. */
export interface RecordStore {
  read(): Promise<KeptRecord>;
  lessonOpened(lesson: string): Promise<Problem | undefined>;
  /** Notes the anchor of the heading last read. To be called when the reader pauses, not with every scroll. */
  lessonPlace(lesson: string, place: string): Promise<Problem | undefined>;
  lessonFinished(lesson: string): Promise<Problem | undefined>;
  answered(answer: Omit<Answer, 'id' | 'at'>): Promise<Problem | undefined>;
  drilled(drill: Omit<Drill, 'id' | 'at'>): Promise<Problem | undefined>;
  /** Records that a teacher opened the gate. */
  gateOpenedByHand(by: string): Promise<Problem | undefined>;
  /** Keeps the additions of an import, all or none. */
  addFacts(additions: LearningRecord): Promise<Problem | undefined>;
  /** Erases everything this record holds on the device and in the page, what was set aside included. Not to be undone. */
  wipe(): Promise<Problem | undefined>;
  /** Hears that another tab added to the record or wiped it. */
  listen(hear: () => void): () => void;
  /** An id for a new run through a quiz. */
  readonly newId: () => string;
  readonly now: () => Date;
  close(): void;
}

export interface RecordStoreOptions {
  readonly rows?: Rows;
  readonly now?: () => Date;
  readonly newId?: () => string;
}

interface Put {
  readonly store: RecordKind;
  readonly put: Row;
}

function readFact<Kind extends RecordKind>(kind: Kind, value: unknown): Outcome<Fact<Kind>> {
  const climbed = climb(value, RECORD_LADDERS[kind]);
  return climbed.ok ? attempt({ at: '', kind: 'damaged', read: () => FACT_READERS[kind]('', climbed.value) }) : climbed;
}

/** Throws `InputError` when a field is wrong: what cannot be read back is not kept. */
const putOf = <Kind extends RecordKind>(store: Kind, fact: Fact<Kind>): Put => ({
  store,
  put: { ...FACT_READERS[store]('', { ...fact }), schemaVersion: recordVersion(store) },
});

export async function openRecordStore(options: RecordStoreOptions = {}): Promise<RecordStore> {
  const { now = () => new Date(), newId = randomId } = options;
  const rows = options.rows ?? (await openRows(RECORD_DATABASE));
  const notices = openNotices(RECORD_DATABASE.name);
  /** What storage refused, by store and id; goes along with the next thing that is kept. */
  const held = new Map<string, Put>();
  const forgetWhenWiped = notices.listen(({ kind }) => {
    if (kind === 'wiped') held.clear();
  });

  const write = async (puts: readonly Put[]): Promise<Problem | undefined> => {
    const all = new Map([...held, ...puts.map((put) => [`${put.store} ${put.put.id}`, put] as const)]);
    try {
      await rows.transact({ read: [], writeTo: RECORD_KINDS, decide: () => ({ writes: [...all.values()], result: undefined }) });
      held.clear();
      notices.tell({ kind: 'saved', id: '', revision: 0 });
      return rows.problem;
    } catch (error) {
      const problem = problemOf(error);
      for (const [key, put] of all) held.set(key, put);
      return problem;
    }
  };

  const progress = async (lesson: string, change: (before: LessonProgress, at: string) => LessonProgress): Promise<Problem | undefined> => {
    const at = now().toISOString();
    const fresh: LessonProgress = { id: lesson, openedAt: at, seenAt: at };
    const next = (row: unknown): Put | undefined => {
      const before = row === undefined ? accepted(fresh) : readFact('lessons', row);
      // What cannot be read here (a later version's) is left alone; the next reading of the record reports it.
      return before.ok ? putOf('lessons', change({ ...before.value, seenAt: at }, at)) : undefined;
    };
    const waiting = held.get(`lessons ${lesson}`)?.put;
    try {
      await rows.transact({
        read: [{ store: 'lessons', key: lesson }],
        writeTo: ['lessons'],
        decide: ([row]) => {
          const put = next(waiting ?? row);
          return { writes: put === undefined ? [] : [put], result: undefined };
        },
      });
      held.delete(`lessons ${lesson}`);
      return rows.problem;
    } catch (error) {
      const problem = problemOf(error);
      const put = next(waiting);
      if (put !== undefined) held.set(`lessons ${lesson}`, put);
      return problem;
    }
  };

  const read = async (): Promise<KeptRecord> => {
    const setAside: SetAside[] = [];
    let problem = rows.problem;
    const factsOf = async <Kind extends RecordKind>(kind: Kind): Promise<readonly Fact<Kind>[]> => {
      const sorted = await sortRows({ rows, store: kind, read: (value) => readFact(kind, value), now, newId });
      setAside.push(...sorted.setAside);
      problem ??= sorted.problem;
      const waiting = [...held.values()].filter(({ store }) => store === kind).flatMap(({ put }) => {
        const fact = readFact(kind, put);
        return fact.ok ? [fact.value] : [];
      });
      return [...sorted.good.filter(({ id }) => !waiting.some((fact) => fact.id === id)), ...waiting];
    };
    const record: LearningRecord = {
      lessons: await factsOf('lessons'),
      answers: await factsOf('answers'),
      drills: await factsOf('drills'),
      gateOpenings: await factsOf('gateOpenings'),
    };
    return { record, setAside, problem };
  };

  const stamp = (): { id: string; at: string } => ({ id: newId(), at: now().toISOString() });

  return {
    newId,
    now,
    read,
    lessonOpened: (lesson) => progress(lesson, (before) => before),
    lessonPlace: (lesson, place) => progress(lesson, (before) => ({ ...before, place })),
    lessonFinished: (lesson) => progress(lesson, (before, at) => ({ ...before, finishedAt: before.finishedAt ?? at })),
    answered: async (answer) => write([putOf('answers', { ...answer, ...stamp() })]),
    drilled: async (drill) => write([putOf('drills', { ...drill, ...stamp() })]),
    gateOpenedByHand: async (by) => {
      const opening: GateOpening = { ...stamp(), by };
      return write([putOf('gateOpenings', opening)]);
    },
    addFacts: (additions) => write(RECORD_KINDS.flatMap((kind) => additions[kind].map((fact) => putOf(kind, fact)))),
    wipe: async () => {
      held.clear();
      try {
        await rows.clear([...RECORD_KINDS, SET_ASIDE]);
        notices.tell({ kind: 'wiped', id: '', revision: 0 });
        return rows.problem;
      } catch (error) {
        return problemOf(error);
      }
    },
    listen: (hear) => notices.listen(() => { hear(); }),
    close: () => {
      forgetWhenWiped();
      notices.close();
      rows.close();
    },
  };
}
