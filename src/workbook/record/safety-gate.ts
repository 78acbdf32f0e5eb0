import type { LearningRecord } from './learning-record.ts';
import { resultOf, sittingsOf } from './sittings.ts';
import type { QuizOutline, SittingResult } from './sittings.ts';

/** The lessons whose quizzes stand before the labs and the capstone. */
export const GATE_LESSONS = ['what-can-hurt-you', 'working-dead'] as const;

export interface GateLesson {
  readonly lesson: string;
  /** When the first passed sitting began; absent while there is none. */
  readonly passedAt?: string;
  /** How the latest sitting came out; absent before the first. */
  readonly latest?: SittingResult;
}

export interface GateState {
  readonly open: boolean;
  /** How it was opened; a gate opened by hand stays recorded as such until the quizzes are passed as well. */
  readonly by: 'quizzes' | 'hand' | undefined;
  readonly lessons: readonly GateLesson[];
  /** The first opening by hand, whether or not the quizzes were passed since. */
  readonly byHand?: { readonly at: string; readonly by: string };
}

/**
 * Whether the labs and the capstone are open in the course: both quizzes passed in a sitting without an unsafe choice,
 * or opened by a teacher. `quizzes` are the present outlines of the gate lessons; one that is missing keeps the gate
 * shut. A pass is not lost by a worse sitting later: that shows among the misconceptions.
 */
export function gateState(record: LearningRecord, quizzes: readonly QuizOutline[]): GateState {
  const lessons = GATE_LESSONS.map((lesson): GateLesson => {
    const quiz = quizzes.find((one) => one.lesson === lesson);
    if (quiz === undefined) return { lesson };
    const sittings = sittingsOf(record.answers, lesson);
    const passed = sittings.find((sitting) => resultOf(sitting, quiz) === 'passed');
    const latest = sittings.at(-1);
    return {
      lesson,
      ...(passed === undefined ? {} : { passedAt: passed.startedAt }),
      ...(latest === undefined ? {} : { latest: resultOf(latest, quiz) }),
    };
  });
  const passed = lessons.every(({ passedAt }) => passedAt !== undefined);
  const [opening] = [...record.gateOpenings].sort((a, b) => (a.at < b.at ? -1 : 1));
  return {
    open: passed || opening !== undefined,
    by: passed ? 'quizzes' : opening === undefined ? undefined : 'hand',
    lessons,
    ...(opening === undefined ? {} : { byHand: { at: opening.at, by: opening.by } }),
  };
}
