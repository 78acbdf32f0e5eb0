import { describe, expect, it } from 'vitest';
import { answerGiven, restoredAnswer } from '../../../src/widgets/quiz/kept-answer.ts';
import type { SolvedQuestion } from '../../../src/widgets/quiz/question.ts';
import { judge, startingReply, type Reply } from '../../../src/widgets/quiz/state.ts';

const harm = { harm: 'shock', consequence: 'It would have hurt.' } as const;
const several: SolvedQuestion = {
  kind: 'several', id: 'which', aims: [], ask: 'Which?',
  options: [
    { text: 'good', reason: '', correct: true },
    { text: 'bad', reason: '' },
    { text: 'deadly', reason: '', unsafe: harm },
  ],
};
const order: SolvedQuestion = { kind: 'order', id: 'steps', aims: [], ask: 'Order?', steps: ['unplug', 'measure', 'touch'], reason: '', unsafe: { ...harm, before: ['touch', 'measure'] } };
const numeric: SolvedQuestion = { kind: 'numeric', id: 'amps', aims: [], ask: 'How many?', unit: 'A', tolerance: 0.05, answer: 2, reason: '' };

const given = (question: SolvedQuestion, change: Partial<Reply>) => {
  const reply = { ...startingReply(question), ...change };
  return { reply, answer: answerGiven({ lesson: 'a-lesson', sitting: 's', question, reply, judgement: judge(question, reply) }) };
};

describe('an answer as the record keeps it', () => {
  it('parts the wrong options from the unsafe ones, in their own words', () => {
    const { answer } = given(several, { chosen: [0, 1, 2] });
    expect(answer).toMatchObject({ lesson: 'a-lesson', question: 'which', correct: false, chosen: ['good', 'bad', 'deadly'], wrong: ['bad'], unsafe: ['deadly'] });
  });

  it('names the step that was taken too early', () => {
    expect(given(order, { order: [0, 2, 1] }).answer).toMatchObject({ correct: false, chosen: ['unplug', 'touch', 'measure'], unsafe: ['touch'] });
    expect(given(order, { order: [0, 1, 2] }).answer).toMatchObject({ correct: true, unsafe: [] });
  });

  it('keeps a figure as it was typed', () => {
    expect(given(numeric, { text: ' 2.02 A ' }).answer).toMatchObject({ correct: true, chosen: ['2.02 A'], wrong: [] });
    expect(given(numeric, { text: '3 A' }).answer).toMatchObject({ correct: false, wrong: ['3 A'] });
  });

  it.each([
    [several, { chosen: [2, 0] }],
    [order, { order: [1, 0, 2] }],
    [numeric, { text: '3 A' }],
  ] as const)('puts the reply and its verdict back after a reload', (question, change) => {
    const { reply, answer } = given(question, change);
    expect(restoredAnswer(question, answer)).toEqual({ reply, judgement: judge(question, reply) });
  });

  it('puts nothing back when the words are no longer there', () => {
    expect(restoredAnswer(several, { chosen: ['an option of last year'] })).toBeUndefined();
    expect(restoredAnswer(order, { chosen: ['unplug', 'unplug', 'touch'] })).toBeUndefined();
    expect(restoredAnswer(numeric, { chosen: [] })).toBeUndefined();
  });
});
