import { canonicalText } from '../canonical.ts';
import { openEnvelope, writeEnvelope } from '../exchange/envelope.ts';
import { attempt, readObject } from '../fields.ts';
import type { Outcome, Problem } from '../problem.ts';
import { accepted, refused } from '../problem.ts';
import type { Fact, LearningRecord, LessonProgress, RecordKind } from './learning-record.ts';
import { FACT_READERS, RECORD_KINDS } from './learning-record.ts';

/** Facts of one kind in a file. A course of 23 lessons taken ten times over makes under 2,000 answers. */
export const FACTS_PER_KIND = 50_000;

export function writeRecordFile(exportedAt: string, record: LearningRecord): string {
  return writeEnvelope('record', exportedAt, { record });
}

export interface RecordFile {
  readonly record: LearningRecord;
  /** Facts of the file that were refused, each with its place. */
  readonly refused: readonly Problem[];
}

function readKind<Kind extends RecordKind>(kind: Kind, list: unknown, troubles: Problem[]): readonly Fact<Kind>[] {
  const place = `record.${kind}`;
  if (list === undefined) return [];
  if (!Array.isArray(list) || list.length > FACTS_PER_KIND) {
    troubles.push(refused('invalid', place, `${place}: a list of at most ${FACTS_PER_KIND} entries is expected.`).problem);
    return [];
  }
  const seen = new Set<string>();
  return list.flatMap((value: unknown, index) => {
    const at = `${place}.${index}`;
    const outcome = attempt({ at, kind: 'invalid', read: () => FACT_READERS[kind]('', readObject('', value)) });
    const problem = !outcome.ok
      ? outcome.problem
      : seen.has(outcome.value.id) ? refused('invalid', `${at}.id`, `${at}.id: two entries have this id.`).problem : undefined;
    if (problem !== undefined) troubles.push(problem);
    if (!outcome.ok || problem !== undefined) return [];
    seen.add(outcome.value.id);
    return [outcome.value];
  });
}

/** Reads a record file fact by fact. A fact that cannot be read is refused with its place. Never throws. */
export function readRecordFile(text: string): Outcome<RecordFile> {
  const envelope = openEnvelope('record', text);
  if (!envelope.ok) return envelope;
  const fields = attempt({ at: 'record', kind: 'invalid', read: () => readObject('', envelope.value['record']) });
  if (!fields.ok) return fields;
  const troubles: Problem[] = [];
  const record: LearningRecord = {
    lessons: readKind('lessons', fields.value['lessons'], troubles),
    answers: readKind('answers', fields.value['answers'], troubles),
    drills: readKind('drills', fields.value['drills'], troubles),
    gateOpenings: readKind('gateOpenings', fields.value['gateOpenings'], troubles),
  };
  return accepted({ record, refused: troubles });
}

const earlier = (a: string, b: string): string => (a < b ? a : b);

/** Two accounts of the same lesson as one: opened at the earlier, seen at the later with its place, finished if ever. */
export function joinProgress(a: LessonProgress, b: LessonProgress): LessonProgress {
  const later = a.seenAt >= b.seenAt ? a : b;
  const place = later.place ?? a.place ?? b.place;
  const finished = [a.finishedAt, b.finishedAt].filter((at) => at !== undefined).sort();
  return {
    id: a.id,
    openedAt: earlier(a.openedAt, b.openedAt),
    seenAt: later.seenAt,
    ...(place === undefined ? {} : { place }),
    ...(finished[0] === undefined ? {} : { finishedAt: finished[0] }),
  };
}

export interface Merge {
  /** What has to be kept in addition to what is there. */
  readonly additions: LearningRecord;
  readonly alreadyThere: number;
}

/**
 * What an imported record adds to the one that is kept. A fact kept already is not added again; one whose id is taken
 * by another fact gets a new id; progress in a lesson is joined. Nothing kept is ever dropped.
 */
export function mergeRecords(kept: LearningRecord, imported: LearningRecord, newId: () => string): Merge {
  let alreadyThere = 0;
  const additionsOf = <Kind extends Exclude<RecordKind, 'lessons'>>(kind: Kind): Fact<Kind>[] => {
    const taken = new Set(kept[kind].map(({ id }) => id));
    const contents = new Set((kept[kind] as readonly Fact<Kind>[]).map((fact) => canonicalText({ ...fact, id: '' })));
    return (imported[kind] as readonly Fact<Kind>[]).flatMap((fact) => {
      // Compared without its id as well: a file imported twice after an id had to be changed adds nothing.
      if (contents.has(canonicalText({ ...fact, id: '' }))) {
        alreadyThere += 1;
        return [];
      }
      return [taken.has(fact.id) ? { ...fact, id: newId() } : fact];
    });
  };
  const lessons = imported.lessons.flatMap((progress) => {
    const before = kept.lessons.find(({ id }) => id === progress.id);
    const joined = before === undefined ? progress : joinProgress(before, progress);
    if (before === undefined || canonicalText(joined) !== canonicalText(before)) return [joined];
    alreadyThere += 1;
    return [];
  });
  const additions = { lessons, answers: additionsOf('answers'), drills: additionsOf('drills'), gateOpenings: additionsOf('gateOpenings') };
  return { additions, alreadyThere };
}

export const factCount = (record: LearningRecord): number => RECORD_KINDS.reduce((sum, kind) => sum + record[kind].length, 0);
