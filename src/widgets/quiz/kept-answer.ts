import type { Answer } from '../../workbook/record/learning-record.ts';
import type { SolvedQuestion } from './question.ts';
import { judge, startingReply, type Judgement, type Reply } from './state.ts';

/** What of an answer the quiz knows; the store adds its id and the time. */
export type AnswerGiven = Omit<Answer, 'id' | 'at'>;

/** As much of a typed figure as is kept: nobody writes a number longer than this. */
const TYPED_CHARACTERS = 60;

/**
 * A judged reply as the record keeps it: options and steps in their own words. A step taken too early is its unsafe
 * part; a wrong figure is kept as it was typed.
 */
export function answerGiven(options: {
  readonly lesson: string;
  readonly sitting: string;
  readonly question: SolvedQuestion;
  readonly reply: Reply;
  readonly judgement: Judgement;
}): AnswerGiven {
  const { lesson, sitting, question, reply, judgement } = options;
  const given = { lesson, sitting, question: question.id, correct: judgement.outcome === 'right' };
  switch (question.kind) {
    case 'one':
    case 'several': {
      const chosen = reply.chosen.flatMap((index) => question.options[index] ?? []);
      const texts = (list: typeof chosen): string[] => list.map(({ text }) => text);
      return {
        ...given,
        chosen: texts(chosen),
        wrong: texts(chosen.filter(({ correct, unsafe }) => !correct && unsafe === undefined)),
        unsafe: texts(chosen.filter(({ unsafe }) => unsafe !== undefined)),
      };
    }
    case 'order':
      return {
        ...given,
        chosen: reply.order.flatMap((index) => question.steps[index] ?? []),
        wrong: [],
        unsafe: judgement.outcome === 'unsafe' && question.unsafe !== undefined ? [question.unsafe.before[0]] : [],
      };
    case 'numeric': {
      const typed = reply.text.trim().slice(0, TYPED_CHARACTERS);
      return { ...given, chosen: [typed], wrong: given.correct ? [] : [typed], unsafe: [] };
    }
  }
}

/** A question as it stood when it was answered, and its verdict by today's answers. */
export interface Restored {
  readonly reply: Reply;
  readonly judgement: Judgement;
}

/** The reply that a kept answer came from; undefined when the question was edited so that its words are no longer there. */
export function restoredAnswer(question: SolvedQuestion, { chosen }: Pick<Answer, 'chosen'>): Restored | undefined {
  const indicesIn = (texts: readonly string[]): number[] | undefined => {
    const found = chosen.map((text) => texts.indexOf(text));
    return found.includes(-1) ? undefined : found;
  };
  const start = startingReply(question);
  const reply = ((): Reply | undefined => {
    switch (question.kind) {
      case 'one':
      case 'several': {
        const found = indicesIn(question.options.map(({ text }) => text));
        return found && { ...start, chosen: found };
      }
      case 'order': {
        const found = indicesIn(question.steps);
        return found?.length === question.steps.length && new Set(found).size === found.length ? { ...start, order: found } : undefined;
      }
      case 'numeric':
        return { ...start, text: chosen[0] ?? '' };
    }
  })();
  if (reply === undefined) return undefined;
  const judgement = judge(question, reply);
  return judgement.outcome === 'unanswered' ? undefined : { reply, judgement };
}
