import { describe, expect, it } from 'vitest';
import { whereToGoOn } from '../../../src/workbook/record/go-on.ts';

const at = (hour: number): string => `2025-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const lesson = (id: string, hour: number, more: { place?: string; finishedAt?: string } = {}) => ({ id, openedAt: at(1), seenAt: at(hour), ...more });
const order = ['one', 'two', 'three'];

describe('where a reader goes on', () => {
  it('is nowhere before the first lesson and after the last', () => {
    expect(whereToGoOn({ lessons: [] }, order)).toBeUndefined();
    expect(whereToGoOn({ lessons: order.map((id, index) => lesson(id, index + 2, { finishedAt: at(9) })) }, order)).toBeUndefined();
  });

  it('is the heading last read in the lesson last seen', () => {
    expect(whereToGoOn({ lessons: [lesson('one', 3), lesson('two', 5, { place: 'the-job' })] }, order)).toEqual({ lesson: 'two', place: 'the-job', how: 'within' });
  });

  it('is the next unfinished lesson after a finished one, round to the start', () => {
    expect(whereToGoOn({ lessons: [lesson('one', 3, { finishedAt: at(3) })] }, order)).toEqual({ lesson: 'two', how: 'next' });
    expect(whereToGoOn({ lessons: [lesson('three', 3, { finishedAt: at(3) })] }, order)).toEqual({ lesson: 'one', how: 'next' });
  });

  it('passes over a lesson that the course no longer has', () => {
    expect(whereToGoOn({ lessons: [lesson('gone', 8), lesson('one', 3)] }, order)).toEqual({ lesson: 'one', how: 'within' });
  });
});
