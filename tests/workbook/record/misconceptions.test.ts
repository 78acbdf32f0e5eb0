import { describe, expect, it } from 'vitest';
import { misconceptionsOf } from '../../../src/workbook/record/misconceptions.ts';
import { answer, unsafeAnswer, wrongAnswer } from './facts.ts';

describe('misconceptions', () => {
  it('list an unsafe choice from the first time and a wrong one from the second', () => {
    const once = [unsafeAnswer('lift-earth', { question: 'q1' }), wrongAnswer('guess', { question: 'q2' })];
    expect(misconceptionsOf(once)).toMatchObject([{ option: 'lift-earth', kind: 'unsafe', times: 1 }]);
    expect(misconceptionsOf([...once, wrongAnswer('guess', { question: 'q2' })])).toMatchObject([{ option: 'lift-earth' }, { option: 'guess', kind: 'repeated', times: 2 }]);
  });

  it('do not list two different wrong options chosen once each, nor the same option of two lessons', () => {
    expect(misconceptionsOf([wrongAnswer('a'), wrongAnswer('b'), wrongAnswer('a', { lesson: 'quiet' })])).toEqual([]);
  });

  it('are settled by two right answers in a row, and unsettled by the next wrong one', () => {
    const start = [unsafeAnswer('lift-earth'), answer()];
    expect(misconceptionsOf(start)[0]).toMatchObject({ rightSince: 1, settled: false });
    expect(misconceptionsOf([...start, answer()])[0]).toMatchObject({ rightSince: 2, settled: true });
    expect(misconceptionsOf([...start, wrongAnswer('other'), answer()])[0]).toMatchObject({ rightSince: 1, settled: false });
    expect(misconceptionsOf([...start, answer(), unsafeAnswer('lift-earth')])[0]).toMatchObject({ times: 2, settled: false });
  });

  it('put what is unsettled first, unsafe before wrong, and the latest first', () => {
    const list = misconceptionsOf([
      unsafeAnswer('settled', { question: 'q1' }), answer({ question: 'q1' }), answer({ question: 'q1' }),
      wrongAnswer('twice', { question: 'q2' }), wrongAnswer('twice', { question: 'q2' }),
      unsafeAnswer('older', { question: 'q3' }), unsafeAnswer('newer', { question: 'q4' }),
    ]);
    expect(list.map(({ option }) => option)).toEqual(['newer', 'older', 'twice', 'settled']);
  });

  it('do not depend on the order in which the answers are stored', () => {
    const answers = [unsafeAnswer('x'), answer(), wrongAnswer('y'), wrongAnswer('y'), answer()];
    expect(misconceptionsOf([...answers].reverse())).toEqual(misconceptionsOf(answers));
  });
});
