import type { Drill, LearningRecord } from './learning-record.ts';
import { misconceptionsOf } from './misconceptions.ts';
import type { Misconception } from './misconceptions.ts';
import { dueQuestions } from './review.ts';
import type { ReviewCard } from './review.ts';
import { gateState } from './safety-gate.ts';
import type { GateState } from './safety-gate.ts';
import { resultOf, sittingsOf } from './sittings.ts';
import type { QuizOutline, SittingResult } from './sittings.ts';

/** The course as the printed record names it, in its order. */
export interface CourseOutline {
  readonly lessons: readonly { readonly id: string; readonly title: string; readonly quiz: QuizOutline }[];
}

export interface PrintedLesson {
  readonly id: string;
  readonly title: string;
  readonly openedAt: string | undefined;
  readonly finishedAt: string | undefined;
  readonly sittings: number;
  /** The best result of any sitting, and how many first answers were right in the best one. */
  readonly best: SittingResult | undefined;
  readonly right: number;
  readonly questions: number;
  /** Sittings in which something unsafe was chosen. */
  readonly unsafeSittings: number;
}

export interface PrintedRecord {
  readonly printedAt: string;
  readonly lessons: readonly PrintedLesson[];
  readonly gate: GateState;
  readonly misconceptions: readonly Misconception[];
  readonly due: readonly ReviewCard[];
  readonly drills: readonly Drill[];
}

const BEST_FIRST: readonly SittingResult[] = ['passed', 'too few right', 'unsafe', 'unfinished'];

/** Everything the printed record shows, worked out from the facts; only lessons and questions the course still has. */
export function printableRecord(record: LearningRecord, course: CourseOutline, now: Date): PrintedRecord {
  const lessons = course.lessons.map(({ id, title, quiz }): PrintedLesson => {
    const progress = record.lessons.find((lesson) => lesson.id === id);
    const sittings = sittingsOf(record.answers, id);
    const results = sittings.map((sitting) => resultOf(sitting, quiz));
    const rightOf = (first: ReadonlyMap<string, { readonly correct: boolean }>): number =>
      quiz.questions.filter((question) => first.get(question)?.correct === true).length;
    return {
      id,
      title,
      openedAt: progress?.openedAt,
      finishedAt: progress?.finishedAt,
      sittings: sittings.length,
      best: BEST_FIRST.find((result) => results.includes(result)),
      right: Math.max(0, ...sittings.map(({ first }) => rightOf(first))),
      questions: quiz.questions.length,
      unsafeSittings: sittings.filter(({ unsafe }) => unsafe).length,
    };
  });
  const known = (lesson: string, question: string): boolean =>
    course.lessons.some(({ id, quiz }) => id === lesson && quiz.questions.includes(question));
  return {
    printedAt: now.toISOString(),
    lessons,
    gate: gateState(record, course.lessons.map(({ quiz }) => quiz)),
    misconceptions: misconceptionsOf(record.answers.filter(({ lesson, question }) => known(lesson, question))),
    due: dueQuestions({ answers: record.answers, now, known }),
    drills: [...record.drills].sort((a, b) => (a.at < b.at ? -1 : 1)),
  };
}
