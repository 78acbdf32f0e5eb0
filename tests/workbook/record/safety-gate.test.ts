import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/workbook/record/learning-record.ts';
import { GATE_LESSONS, gateState } from '../../../src/workbook/record/safety-gate.ts';
import { openSitting, resultOf, sittingsOf } from '../../../src/workbook/record/sittings.ts';
import { answer, outline, recordWith, unsafeAnswer, wrongAnswer } from './facts.ts';

const quizzes = GATE_LESSONS.map((lesson) => outline(lesson));

/** One whole run through a quiz of five, the first `right` answers of it right. */
const run = (lesson: string, sitting: string, right = 5): Answer[] =>
  outline(lesson).questions.map((question, index) => (index < right ? answer : (given: Partial<Answer>) => wrongAnswer('z', given))({ lesson, sitting, question }));

const state = (...answers: readonly Answer[]) => gateState(recordWith({ answers }), quizzes);

describe('a sitting', () => {
  const quiz = outline('working-dead');
  const result = (...answers: readonly Answer[]) => sittingsOf(answers, 'working-dead').map((sitting) => resultOf(sitting, quiz));

  it('passes with four of five right and not with three', () => {
    expect(result(...run('working-dead', 's', 4))).toEqual(['passed']);
    expect(result(...run('working-dead', 's', 3))).toEqual(['too few right']);
  });

  it('counts the first answer to each question, whatever was tried after', () => {
    const answers = run('working-dead', 's', 3);
    expect(result(...answers, answer({ question: 'q4', sitting: 's' }), answer({ question: 'q5', sitting: 's' }))).toEqual(['too few right']);
  });

  it('fails for one unsafe choice, even at a second try', () => {
    expect(result(...run('working-dead', 's').slice(1), unsafeAnswer('z', { sitting: 's', question: 'q1' }))).toEqual(['unsafe']);
    expect(result(...run('working-dead', 's'), unsafeAnswer('z', { sitting: 's', question: 'q1' }))).toEqual(['unsafe']);
  });

  it('is unfinished until every present question is answered', () => {
    expect(result(...run('working-dead', 's').slice(1))).toEqual(['unfinished']);
    expect(sittingsOf(run('working-dead', 's'), 'working-dead').map((sitting) => resultOf(sitting, outline('working-dead', 6)))).toEqual(['unfinished']);
    expect(sittingsOf(run('working-dead', 's'), 'working-dead').map((sitting) => resultOf(sitting, outline('working-dead', 0)))).toEqual(['unfinished']);
  });

  it('goes on after a reload until it is complete', () => {
    const answers = run('working-dead', 's');
    expect(openSitting(answers.slice(0, 2), quiz)?.id).toBe('s');
    expect(openSitting(answers, quiz)).toBeUndefined();
    expect(openSitting([], quiz)).toBeUndefined();
  });
});

describe('the safety gate', () => {
  it('is shut at first and with one quiz passed', () => {
    expect(state()).toMatchObject({ open: false, by: undefined });
    expect(state(...run('what-can-hurt-you', 'a'))).toMatchObject({ open: false });
  });

  it('opens when both quizzes are passed, each in one sitting', () => {
    expect(state(...run('what-can-hurt-you', 'a'), ...run('working-dead', 'b'))).toMatchObject({
      open: true, by: 'quizzes', lessons: [{ lesson: 'what-can-hurt-you', latest: 'passed', passedAt: expect.any(String) }, { lesson: 'working-dead', latest: 'passed' }],
    });
  });

  it('is not opened by good halves of two sittings', () => {
    const halves = [...run('working-dead', 'b').slice(0, 3), ...run('working-dead', 'c').slice(3)];
    expect(state(...run('what-can-hurt-you', 'a'), ...halves)).toMatchObject({ open: false });
  });

  it('stays shut after an unsafe answer, and opens with a later clean sitting', () => {
    const answers = [...run('what-can-hurt-you', 'a'), ...run('working-dead', 'b').slice(1), unsafeAnswer('z', { sitting: 'b', question: 'q1' })];
    expect(state(...answers)).toMatchObject({ open: false, lessons: [{}, { latest: 'unsafe' }] });
    expect(state(...answers, ...run('working-dead', 'c'))).toMatchObject({ open: true });
  });

  it('can be opened by a teacher, and says so until the quizzes are passed', () => {
    const gateOpenings = [{ id: 'g2', at: '2025-03-02T12:00:00.000Z', by: 'M. again' }, { id: 'g', at: '2025-03-01T12:00:00.000Z', by: 'M.' }];
    const byHand = { at: '2025-03-01T12:00:00.000Z', by: 'M.' };
    expect(gateState(recordWith({ gateOpenings }), quizzes)).toMatchObject({ open: true, by: 'hand', byHand });
    const answers = [...run('what-can-hurt-you', 'a'), ...run('working-dead', 'b')];
    expect(gateState(recordWith({ gateOpenings, answers }), quizzes)).toMatchObject({ open: true, by: 'quizzes', byHand });
  });

  it('stays shut when the outline of a gate quiz is missing', () => {
    const answers = [...run('what-can-hurt-you', 'a'), ...run('working-dead', 'b')];
    expect(gateState(recordWith({ answers }), quizzes.slice(0, 1)).open).toBe(false);
  });
});
