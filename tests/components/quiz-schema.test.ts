import { describe, expect, it } from 'vitest';
import { quizFaults, quizSchema } from '../../src/components/quiz-schema.ts';
import type { Question } from '../../src/widgets/quiz/question.ts';

const question = (id: string, aims = ['valley']): Question => ({
  id,
  kind: 'one',
  aims,
  ask: 'Which voltage decides?',
  options: [
    { text: 'the mean', reason: 'half the time the rail is lower' },
    { text: 'the valley', reason: 'the least there ever is', correct: true },
  ],
});
const five = ['a', 'b', 'c', 'd', 'e'].map((id) => question(id));
const refused = (questions: unknown): string => {
  const result = quizSchema.safeParse({ questions });
  return result.success ? 'accepted' : result.error.issues.map(({ message }) => message).join('; ');
};

describe('a quiz is refused when', () => {
  it('(none of this)', () => expect(refused(five)).toBe('accepted'));
  it('it has four questions, or nine', () => {
    expect(refused(five.slice(1))).not.toBe('accepted');
    expect(refused([...five, ...['f', 'g', 'h', 'i'].map((id) => question(id))])).not.toBe('accepted');
  });
  it('two questions share an id', () => expect(refused([...five.slice(1), question('b')])).toContain('unique'));
  it('two options of a single choice are correct', () => {
    const both = { ...question('a'), options: [{ text: 'x', reason: 'because', correct: true }, { text: 'y', reason: 'because', correct: true }] };
    expect(refused([both, ...five.slice(1)])).toContain('exactly one');
  });
  it('an option has no reason', () => {
    const bare = { ...question('a'), options: [{ text: 'x', reason: '' }, { text: 'y', reason: 'because', correct: true }] };
    expect(refused([bare, ...five.slice(1)])).not.toBe('accepted');
  });
  it('an unsafe option is correct', () => {
    const unsafe = { harm: 'shock', consequence: 'live strings' };
    const odd = { ...question('a'), options: [{ text: 'x', reason: 'because', correct: true, unsafe }, { text: 'y', reason: 'because' }] };
    expect(refused([odd, ...five.slice(1)])).toContain('unsafe');
  });
  it('a numeric question has a unit that nothing reads, or its answer typed in', () => {
    const numeric = { id: 'a', kind: 'numeric', aims: ['valley'], ask: 'How many?', unit: 'V', tolerance: 0.05, reason: 'because' };
    expect(refused([numeric, ...five.slice(1)])).toBe('accepted');
    expect(refused([{ ...numeric, unit: 'furlong' }, ...five.slice(1)])).not.toBe('accepted');
    expect(refused([{ ...numeric, answer: 16.5 }, ...five.slice(1)])).not.toBe('accepted');
  });
  it('the harm of an order question names the steps the wrong way round', () => {
    const steps = ['pull the plug', 'measure', 'work'];
    const ordered = (before: string[]): unknown => ({
      id: 'a', kind: 'order', aims: ['valley'], ask: 'In order', steps, reason: 'because', unsafe: { harm: 'shock', consequence: 'live', before },
    });
    expect(refused([ordered(['measure', 'pull the plug']), ...five.slice(1)])).toBe('accepted');
    expect(refused([ordered(['pull the plug', 'measure']), ...five.slice(1)])).not.toBe('accepted');
  });
});

describe('as the quiz of its lesson', () => {
  it('tests every aim and no other', () => {
    expect(quizFaults({ questions: five, aims: ['valley'], touchesHazard: false })).toEqual([]);
    expect(quizFaults({ questions: five, aims: ['valley', 'heat'], touchesHazard: false })).toEqual(['no question tests the aim "heat"']);
    expect(quizFaults({ questions: [question('a', ['heat'])], aims: [], touchesHazard: false })).toEqual(['"heat" is not an aim of the lesson']);
  });

  it('flags an unsafe option where the lesson touches a hazard', () => {
    expect(quizFaults({ questions: five, aims: ['valley'], touchesHazard: true })).toHaveLength(1);
    const flagged: Question = {
      ...question('a'),
      kind: 'one',
      options: [
        { text: 'work live', reason: 'because', unsafe: { harm: 'shock', consequence: 'you are the path' } },
        { text: 'work dead', reason: 'because', correct: true },
      ],
    };
    expect(quizFaults({ questions: [...five, flagged], aims: ['valley'], touchesHazard: true })).toEqual([]);
  });
});
