import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import plan from '../../../content/course-plan.json';
import { lessons } from '../../../src/components/course.ts';
import { keyOf, solvedQuiz } from '../../../src/components/teaching/answer-key.ts';
import type { Question } from '../../../src/widgets/quiz/question.ts';

const folder = new URL('../../../content/quizzes/', import.meta.url);
const quizzes = readdirSync(folder).map((file): [string, Question[]] => [
  file.replace('.json', ''),
  (JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as { questions: Question[] }).questions,
]);

describe('the answer key', () => {
  it.each(quizzes)('%s: every question has a right answer, and every unsafe option is named with what it does', (slug, questions) => {
    for (const question of solvedQuiz(slug, questions)) {
      const { right, unsafe } = keyOf(question);
      expect(right.length, question.id).toBeGreaterThan(0);
      for (const { text } of right) expect(text).not.toMatch(/NaN|undefined|\{\w+\}/);
      const flagged = 'options' in question ? question.options.filter((option) => option.unsafe !== undefined).length : 0;
      expect(unsafe.length).toBeGreaterThanOrEqual(flagged);
    }
  });
});

describe('the plan of four half-days', () => {
  it('has every lesson on exactly one of them', () => {
    expect(plan.halfDays.flatMap((day) => day.lessons).sort((a, b) => a - b)).toEqual(lessons.map(({ number }) => number));
  });

  it.each(plan.halfDays.map((day) => [day.title, day] as const))('%s fits a half-day of three and a half hours', (_, day) => {
    expect(day.timetable.reduce((sum, { minutes }) => sum + minutes, 0)).toBeLessThanOrEqual(210);
  });
});
