import type { Answer, LearningRecord } from '../../../src/workbook/record/learning-record.ts';
import { EMPTY_RECORD } from '../../../src/workbook/record/learning-record.ts';

let made = 0;

/** An answer with what a test leaves open filled in: right, and chosen from nothing unsafe. */
export function answer(given: Partial<Answer> = {}): Answer {
  made += 1;
  const at = new Date(Date.UTC(2025, 2, 1, 12, 0, made)).toISOString();
  return { id: `answer-${made}`, lesson: 'working-dead', question: 'q1', sitting: 's1', at, chosen: ['a'], correct: true, wrong: [], unsafe: [], ...given };
}

export const wrongAnswer = (option: string, given: Partial<Answer> = {}): Answer => answer({ chosen: [option], correct: false, wrong: [option], ...given });
export const unsafeAnswer = (option: string, given: Partial<Answer> = {}): Answer => wrongAnswer(option, { unsafe: [option], ...given });

export const recordWith = (given: Partial<LearningRecord>): LearningRecord => ({ ...EMPTY_RECORD, ...given });

export const outline = (lesson: string, questions = 5): { lesson: string; questions: string[] } => ({
  lesson,
  questions: Array.from({ length: questions }, (_, index) => `q${index + 1}`),
});
