import { describe, expect, it } from 'vitest';
import { lessons, neighbours, placeOfLesson, units } from '../../src/components/course.ts';

describe('the outline of the course', () => {
  it('has five units and twenty-three lessons, numbered through', () => {
    expect(units.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
    expect(lessons.map(({ number }) => number)).toEqual(Array.from({ length: 23 }, (_, index) => index + 1));
  });

  it('gives each lesson an address of its own', () => expect(new Set(lessons.map(({ slug }) => slug)).size).toBe(23));

  it('makes lessons 2 and 3 the safety gate', () => {
    expect(lessons.filter(({ gate }) => gate).map(({ number }) => number)).toEqual([2, 3]);
  });
});

describe('finding a lesson', () => {
  it('knows its unit', () => expect(placeOfLesson('regulate-it').unit.number).toBe(2));
  it('refuses one that the outline does not name', () => expect(() => placeOfLesson('invented')).toThrow('invented'));
  it('skips what is not written on the way to the neighbours', () => {
    const written = new Set(['the-load-list', 'regulate-it', 'quiet']);
    const { before, after } = neighbours('regulate-it', written);
    expect([before?.slug, after?.slug]).toEqual(['the-load-list', 'quiet']);
    expect(neighbours('the-load-list', written).before).toBeUndefined();
    expect(neighbours('quiet', written).after).toBeUndefined();
  });
});
