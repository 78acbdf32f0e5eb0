import type { Answer } from './learning-record.ts';

/** Oldest first; answers of the same instant keep a fixed order. */
export const inOrder = (a: Pick<Answer, 'at' | 'id'>, b: Pick<Answer, 'at' | 'id'>): number =>
  a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0;

/** A quiz as the record needs to know it. */
export interface QuizOutline {
  readonly lesson: string;
  readonly questions: readonly string[];
}

/** One run through a quiz. */
export interface Sitting {
  readonly id: string;
  readonly lesson: string;
  readonly startedAt: string;
  /** The first answer to each question: a second try, with the reasons read, shows nothing. */
  readonly first: ReadonlyMap<string, Answer>;
  /** True when any answer of the sitting, a later try included, chose something unsafe. */
  readonly unsafe: boolean;
}

/** The runs through one lesson's quiz, oldest first. */
export function sittingsOf(answers: readonly Answer[], lesson: string): readonly Sitting[] {
  const sittings = new Map<string, { id: string; lesson: string; startedAt: string; first: Map<string, Answer>; unsafe: boolean }>();
  for (const answer of answers.filter((one) => one.lesson === lesson).sort(inOrder)) {
    const sitting = sittings.get(answer.sitting) ?? { id: answer.sitting, lesson, startedAt: answer.at, first: new Map<string, Answer>(), unsafe: false };
    sittings.set(answer.sitting, sitting);
    if (!sitting.first.has(answer.question)) sitting.first.set(answer.question, answer);
    sitting.unsafe ||= answer.unsafe.length > 0;
  }
  return [...sittings.values()];
}

/**
 * The run to go on with after a reload: the latest one, if it has questions left. `undefined` when the next answer
 * begins a new run.
 */
export function openSitting(answers: readonly Answer[], quiz: QuizOutline): Sitting | undefined {
  const latest = sittingsOf(answers, quiz.lesson).at(-1);
  return latest !== undefined && quiz.questions.some((question) => !latest.first.has(question)) ? latest : undefined;
}

/** Share of a quiz to be answered rightly at the first try. One slip in a quiz of five to eight questions is allowed. */
export const PASS_SHARE = 0.8;

export type SittingResult = 'passed' | 'unsafe' | 'too few right' | 'unfinished';

/** How a run through a quiz came out. An unsafe choice fails it whatever else was right. */
export function resultOf(sitting: Sitting, quiz: QuizOutline): SittingResult {
  if (sitting.unsafe) return 'unsafe';
  const first = quiz.questions.map((question) => sitting.first.get(question));
  if (first.length === 0 || first.includes(undefined)) return 'unfinished';
  const right = first.filter((answer) => answer?.correct === true).length;
  return right / first.length >= PASS_SHARE ? 'passed' : 'too few right';
}
