import { describe, expect, it } from 'vitest';
import { fillQuiz } from '../../src/components/quiz-fill.ts';
import type { Question } from '../../src/widgets/quiz/question.ts';

const numeric: Question = { id: 'heat', kind: 'numeric', aims: ['heat'], ask: 'From {inputVolts}, how much heat?', unit: 'W', tolerance: 0.05, reason: '-' };

describe('filling a quiz with what its lesson computed', () => {
  it('puts figures into texts and answers into questions', () => {
    expect(fillQuiz([numeric], { answers: { heat: 0.83 }, figures: { inputVolts: '22.2 V' } })).toEqual([
      { ...numeric, ask: 'From 22.2 V, how much heat?', answer: 0.83 },
    ]);
  });

  it('refuses a figure or an answer that the lesson does not give', () => {
    expect(() => fillQuiz([numeric], { answers: { heat: 0.83 } })).toThrow('{inputVolts}');
    expect(() => fillQuiz([numeric], { figures: { inputVolts: '22.2 V' } })).toThrow('"heat"');
    expect(() => fillQuiz([numeric], { answers: { heat: Number.NaN }, figures: { inputVolts: '22.2 V' } })).toThrow('"heat"');
  });

  it('refuses a figure or an answer that the quiz does not ask for', () => {
    expect(() => fillQuiz([numeric], { answers: { heat: 1, cold: 2 }, figures: { inputVolts: '1 V', spare: '2 V' } })).toThrow('spare, cold');
  });
});
