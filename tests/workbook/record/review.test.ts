import { describe, expect, it } from 'vitest';
import { dueQuestions, reviewCards } from '../../../src/workbook/record/review.ts';
import { answer, unsafeAnswer, wrongAnswer } from './facts.ts';

const day = (number: number): string => new Date(Date.UTC(2025, 2, number, 9)).toISOString();
const days = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;
const now = new Date(day(40));

const dueAfter = (...answers: Parameters<typeof answer>[0][]): string =>
  reviewCards({ answers: answers.map((given, index) => answer({ sitting: `s${index}`, ...given })), now })[0]?.dueAt ?? '';

describe('review', () => {
  it('asks nothing of a reader who has answered nothing', () => expect(reviewCards({ answers: [], now })).toEqual([]));

  it('asks again later after each right answer, sooner after a wrong one', () => {
    const first = days(day(1), dueAfter({ at: day(1) }));
    const second = days(day(4), dueAfter({ at: day(1) }, { at: day(4) }));
    const lapsed = days(day(4), dueAfter({ at: day(1) }, { at: day(4), correct: false }));
    expect(first).toBeGreaterThanOrEqual(1);
    expect(second).toBeGreaterThan(first);
    expect(lapsed).toBeLessThan(second);
    expect(lapsed).toBeGreaterThanOrEqual(1);
  });

  it('counts only the first answer of a sitting', () => {
    const once = reviewCards({ answers: [wrongAnswer('z', { at: day(1) })], now });
    const cards = reviewCards({ answers: [wrongAnswer('z', { at: day(1) }), answer({ at: day(2) }), answer({ at: day(3) })], now });
    expect(cards[0]?.dueAt).toBe(once[0]?.dueAt);
    expect(cards[0]?.timesAnswered).toBe(1);
  });

  it('takes a right answer with something unsafe in it for a wrong one', () => {
    const ends = dueAfter({ at: day(1) }, { at: day(4), unsafe: ['z'] });
    expect(ends).toBe(dueAfter({ at: day(1) }, { at: day(4), correct: false }));
  });

  it('puts what was unsafe first, then what is least likely to be known', () => {
    const answers = [
      answer({ question: 'old', at: day(1) }),
      answer({ question: 'older', at: '2025-01-01T00:00:00.000Z' }),
      unsafeAnswer('z', { question: 'unsafe', at: day(30) }),
      answer({ question: 'fresh', at: day(40) }),
    ];
    const due = dueQuestions({ answers, now });
    expect(due.map(({ question }) => question)).toEqual(['unsafe', 'older', 'old']);
    for (const { recall } of due) expect(recall > 0 && recall <= 1).toBe(true);
  });

  it('is due at the instant, not before', () => {
    const answers = [answer({ at: day(1) })];
    const at = Date.parse(reviewCards({ answers, now })[0]?.dueAt ?? '');
    expect(dueQuestions({ answers, now: new Date(at - 1) })).toEqual([]);
    expect(dueQuestions({ answers, now: new Date(at) })).toHaveLength(1);
  });

  it('leaves out what the course no longer asks', () => {
    expect(reviewCards({ answers: [answer({ question: 'gone' }), answer({ question: 'kept' })], now, known: (_, question) => question === 'kept' })).toMatchObject([{ question: 'kept' }]);
  });

  it('gives the same dates whatever order the answers are stored in, and every time', () => {
    const answers = Array.from({ length: 30 }, (_, index) => answer({ question: `q${index % 4}`, sitting: `s${index}`, at: day(1 + index), correct: index % 3 !== 0 }));
    expect(reviewCards({ answers: [...answers].reverse(), now })).toEqual(reviewCards({ answers, now }));
  });

  it('is not upset by a clock that was set back', () => {
    const answers = [answer({ sitting: 'a', at: day(400) }), answer({ sitting: 'b', at: day(1) }), answer({ sitting: 'c', at: day(1) })];
    const [card] = reviewCards({ answers, now });
    expect(card?.timesAnswered).toBe(3);
    expect(Number.isFinite(card?.recall)).toBe(true);
  });
});
