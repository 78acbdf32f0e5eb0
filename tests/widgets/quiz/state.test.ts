import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChoiceQuestion, OrderQuestion, SolvedNumericQuestion } from '../../../src/widgets/quiz/question.ts';
import { choose, judge, move, score, shuffled, startingReply, type Reply } from '../../../src/widgets/quiz/state.ts';

const one: ChoiceQuestion = {
  id: 'tab',
  kind: 'one',
  aims: ['tab'],
  ask: 'What is the tab bolted to?',
  options: [
    { text: 'the bare chassis', reason: 'it is the output', unsafe: { harm: 'fire', consequence: 'a dead short' } },
    { text: 'a pad', reason: 'heat passes', correct: true },
    { text: 'nothing', reason: 'too hot' },
  ],
};
const several: ChoiceQuestion = {
  ...one,
  kind: 'several',
  options: [
    { text: 'a', reason: '-', correct: true },
    { text: 'b', reason: '-', correct: true },
    { text: 'c', reason: '-' },
    { text: 'd', reason: '-', unsafe: { harm: 'shock', consequence: '-' } },
  ],
};
const order: OrderQuestion = {
  id: 'dead',
  kind: 'order',
  aims: ['dead'],
  ask: 'Put in order',
  steps: ['pull the plug', 'prove the meter', 'measure', 'prove the meter again'],
  reason: '-',
  unsafe: { harm: 'shock', consequence: 'measured live', before: ['measure', 'pull the plug'] },
};
const heat: SolvedNumericQuestion = { id: 'heat', kind: 'numeric', aims: ['heat'], ask: 'How hot?', unit: 'W', tolerance: 0.05, reason: '-', answer: 0.83 };

const chosen = (...indices: number[]): Reply => ({ chosen: indices, order: [], text: '' });
const typed = (text: string): Reply => ({ chosen: [], order: [], text });

describe('choosing one option', () => {
  it('replaces the choice before', () => {
    expect(choose(one, choose(one, startingReply(one), 0), 2).chosen).toEqual([2]);
  });

  it.each([
    [[], 'unanswered'],
    [[1], 'right'],
    [[2], 'wrong'],
    [[0], 'unsafe'],
  ] as const)('judges %j as %s', (indices, outcome) => expect(judge(one, chosen(...indices)).outcome).toBe(outcome));

  it('says what harm an unsafe option does', () => {
    expect(judge(one, chosen(0)).harms).toEqual([{ harm: 'fire', consequence: 'a dead short' }]);
  });
});

describe('choosing several options', () => {
  it('takes an option and gives it back', () => {
    expect(choose(several, choose(several, chosen(2), 0), 2).chosen).toEqual([0]);
  });

  it.each([
    [[0, 1], 'right'],
    [[1, 0], 'right'],
    [[0], 'wrong'],
    [[0, 1, 2], 'wrong'],
    [[0, 1, 3], 'unsafe'],
  ] as const)('judges %j as %s', (indices, outcome) => expect(judge(several, chosen(...indices)).outcome).toBe(outcome));
});

describe('ordering steps', () => {
  it('begins out of order, with every step once, and the same each time', () => {
    fc.assert(
      fc.property(fc.string(), fc.uniqueArray(fc.string(), { minLength: 2, maxLength: 8 }), (id, steps) => {
        const places = shuffled({ id, steps });
        expect([...places].sort((a, b) => a - b)).toEqual(steps.map((_, index) => index));
        expect(places).not.toEqual(steps.map((_, index) => index));
        expect(shuffled({ id, steps })).toEqual(places);
      }),
    );
  });

  it('moves a step by one place, and not past the ends', () => {
    const reply: Reply = { chosen: [], order: [2, 0, 1], text: '' };
    expect(move(reply, 0, 1).order).toEqual([0, 2, 1]);
    expect(move(reply, 0, -1).order).toEqual([2, 0, 1]);
    expect(move(reply, 2, 1).order).toEqual([2, 0, 1]);
  });

  it.each([
    [[0, 1, 2, 3], 'right'],
    [[0, 2, 1, 3], 'wrong'],
    [[1, 2, 0, 3], 'unsafe'],
  ] as const)('judges %j as %s', (steps, outcome) => {
    expect(judge(order, { chosen: [], order: steps, text: '' }).outcome).toBe(outcome);
  });

  it('says how far the order was right', () => {
    expect(judge(order, { chosen: [], order: [0, 2, 1, 3], text: '' }).message).toContain('up to step 1');
  });
});

describe('giving a figure', () => {
  it.each([
    ['0.83 W', 'right'],
    ['830 mW', 'right'],
    ['0,85', 'right'],
    ['0.88', 'wrong'],
    ['0.78', 'wrong'],
    ['', 'unanswered'],
    ['hot', 'unanswered'],
    ['0.83 A', 'unanswered'],
  ])('judges "%s" as %s', (text, outcome) => expect(judge(heat, typed(text)).outcome).toBe(outcome));

  it('takes a bare number in the unit that the question names', () => {
    const amps: SolvedNumericQuestion = { ...heat, unit: 'A', writtenIn: 'mA', answer: 0.076 };
    expect(judge(amps, typed('76')).outcome).toBe('right');
  });

  it('never counts what it cannot read as right', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const { outcome } = judge(heat, typed(text));
        if (outcome === 'right') expect(text).toMatch(/\d/);
      }),
    );
  });
});

describe('the score', () => {
  it('counts right, unsafe and open questions', () => {
    const judgements = [judge(one, chosen(1)), judge(one, chosen(0)), judge(heat, typed('')), undefined];
    expect(score(judgements)).toEqual({ right: 1, unsafe: 1, open: 2 });
  });
});
