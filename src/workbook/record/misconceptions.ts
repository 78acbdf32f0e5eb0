import type { Answer } from './learning-record.ts';
import { inOrder } from './sittings.ts';

/** An option a reader took for right, and should look at again. */
export interface Misconception {
  readonly lesson: string;
  readonly question: string;
  readonly option: string;
  /** `unsafe` is listed from the first time; a wrong option from the second. */
  readonly kind: 'unsafe' | 'repeated';
  readonly times: number;
  readonly lastAt: string;
  /** Right answers to the question in a row, up to the latest one. */
  readonly rightSince: number;
  /** Right twice in a row by now: kept in the record, no longer put forward. */
  readonly settled: boolean;
}

const REPEATED = 2;
const SETTLED = 2;

/** Unsafe choices and wrong options chosen repeatedly: unsettled before settled, unsafe first, then the latest. */
export function misconceptionsOf(answers: readonly Answer[]): readonly Misconception[] {
  const found = new Map<string, Misconception>();
  for (const answer of [...answers].sort(inOrder)) {
    const { lesson, question } = answer;
    for (const option of new Set([...answer.unsafe, ...answer.wrong])) {
      const key = JSON.stringify([lesson, question, option]);
      const before = found.get(key);
      const unsafe = before?.kind === 'unsafe' || answer.unsafe.includes(option);
      found.set(key, { lesson, question, option, kind: unsafe ? 'unsafe' : 'repeated', times: (before?.times ?? 0) + 1, lastAt: answer.at, rightSince: 0, settled: false });
    }
    for (const [key, one] of found) {
      if (one.lesson !== lesson || one.question !== question) continue;
      const rightSince = answer.correct ? one.rightSince + 1 : 0;
      found.set(key, { ...one, rightSince, settled: rightSince >= SETTLED });
    }
  }
  const rank = (one: Misconception): number => (one.settled ? 2 : 0) + (one.kind === 'unsafe' ? 0 : 1);
  return [...found.values()]
    .filter((one) => one.kind === 'unsafe' || one.times >= REPEATED)
    .sort((a, b) => rank(a) - rank(b) || (a.lastAt < b.lastAt ? 1 : -1));
}
