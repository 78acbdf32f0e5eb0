import { describe, expect, it } from 'vitest';
import { printableRecord } from '../../../src/workbook/record/printable.ts';
import { answer, outline, recordWith, unsafeAnswer, wrongAnswer } from './facts.ts';

const course = {
  lessons: [
    { id: 'what-can-hurt-you', title: 'What can hurt you', quiz: outline('what-can-hurt-you', 2) },
    { id: 'working-dead', title: 'Working dead', quiz: outline('working-dead', 2) },
  ],
};

describe('the printed record', () => {
  it('has every lesson of the course in its order, with the best sitting', () => {
    const record = recordWith({
      lessons: [{ id: 'working-dead', openedAt: '2025-03-01T12:00:00.000Z', seenAt: '2025-03-01T12:30:00.000Z', finishedAt: '2025-03-01T12:30:00.000Z' }],
      answers: [
        unsafeAnswer('x', { sitting: 's1', question: 'q1' }), answer({ sitting: 's1', question: 'q2' }),
        answer({ sitting: 's2', question: 'q1' }), answer({ sitting: 's2', question: 'q2' }),
        wrongAnswer('y', { sitting: 's3', question: 'q1' }), answer({ question: 'gone' }), unsafeAnswer('z', { question: 'gone' }),
      ],
      drills: [
        { id: 'b', drill: 'd', case: '2', at: '2025-03-02T12:00:00.000Z', named: '', correct: false, readingsTaken: 1 },
        { id: 'a', drill: 'd', case: '1', at: '2025-03-01T12:00:00.000Z', named: '', correct: true, readingsTaken: 1 },
      ],
    });
    const printed = printableRecord(record, course, new Date('2025-06-01T00:00:00.000Z'));
    expect(printed.lessons).toEqual([
      { id: 'what-can-hurt-you', title: 'What can hurt you', openedAt: undefined, finishedAt: undefined, sittings: 0, best: undefined, right: 0, questions: 2, unsafeSittings: 0 },
      { id: 'working-dead', title: 'Working dead', openedAt: '2025-03-01T12:00:00.000Z', finishedAt: '2025-03-01T12:30:00.000Z', sittings: 3, best: 'passed', right: 2, questions: 2, unsafeSittings: 1 },
    ]);
    expect(printed.gate).toMatchObject({ open: false });
    expect(printed.misconceptions.map(({ option }) => option)).toEqual(['x']);
    expect(printed.due.map(({ question }) => question).sort()).toEqual(['q1', 'q2']);
    expect(printed.drills.map(({ id }) => id)).toEqual(['a', 'b']);
  });
});
