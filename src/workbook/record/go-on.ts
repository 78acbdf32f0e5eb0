import type { LearningRecord } from './learning-record.ts';

/** Where a reader goes on: a lesson, and the heading last read in it. */
export interface GoOn {
  readonly lesson: string;
  readonly place?: string;
  /** `within` a lesson that was begun, or the `next` one after those finished. */
  readonly how: 'within' | 'next';
}

/**
 * The lesson to go on with: the one seen last, or the next unfinished one after it when it is finished. `order` holds
 * the lessons that can be read, in the course's order. Undefined before the first and after the last.
 */
export function whereToGoOn(record: Pick<LearningRecord, 'lessons'>, order: readonly string[]): GoOn | undefined {
  const [last] = record.lessons.filter(({ id }) => order.includes(id)).sort((a, b) => (a.seenAt > b.seenAt ? -1 : 1));
  if (last === undefined) return undefined;
  if (last.finishedAt === undefined) return { lesson: last.id, how: 'within', ...(last.place === undefined ? {} : { place: last.place }) };
  const finished = new Set(record.lessons.filter(({ finishedAt }) => finishedAt !== undefined).map(({ id }) => id));
  const at = order.indexOf(last.id);
  const next = [...order.slice(at + 1), ...order.slice(0, at)].find((lesson) => !finished.has(lesson));
  return next === undefined ? undefined : { lesson: next, how: 'next' };
}
