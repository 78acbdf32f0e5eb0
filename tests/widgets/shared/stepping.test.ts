import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stepping } from '../../../src/widgets/shared/definition.ts';
import { SLIDER_STEPS, sliderPosition, sliderValue, stepFrom, usualStep } from '../../../src/widgets/shared/stepping.ts';

describe('arrow keys step', () => {
  it.each([
    [0.00047, 1, 0.00056],
    [0.00047, -1, 0.00039],
    [0.0005, 1, 0.00056],
    [0.00082, 1, 0.001],
    [0.001, -1, 0.00082],
  ] as const)('along preferred values from %d by %d to %d', (from, direction, to) => {
    expect(stepFrom({ min: 1e-5, max: 0.1, stepping: 'e12' }, from, direction)).toBeCloseTo(to, 9);
  });

  it('along 1, 2, 5', () => {
    expect(stepFrom({ min: 0, max: 100, stepping: '1-2-5' }, 0.2, 1)).toBe(0.5);
    expect(stepFrom({ min: 0, max: 100, stepping: '1-2-5' }, 0.3, -1)).toBe(0.2);
  });

  it('to the next whole step of a fixed size, without binary crumbs', () => {
    expect(stepFrom({ min: 1, max: 60, stepping: 0.1 }, 12.65, 1)).toBe(12.7);
    expect(stepFrom({ min: 1, max: 60, stepping: 0.1 }, 12.7, -1)).toBe(12.6);
    expect(stepFrom({ min: 1, max: 60 }, 59.9, 1)).toBe(60);
  });

  it('takes a plain step when the field names none', () => {
    expect(usualStep({ min: 1, max: 60 })).toBe(2);
    expect(usualStep({ min: 0, max: 0.5 })).toBe(0.02);
  });

  it('never leaves the range, and always moves inside it', () => {
    const stepping = fc.constantFrom<Stepping | undefined>('e12', 'e6', '1-2-5', 0.5, undefined);
    fc.assert(
      fc.property(stepping, fc.double({ min: 0.001, max: 1000, noNaN: true }), fc.constantFrom(1, -1), (by, value, direction) => {
        const field = by === undefined ? { min: 0.001, max: 1000 } : { min: 0.001, max: 1000, stepping: by };
        const next = stepFrom(field, value, direction);
        expect(next).toBeGreaterThanOrEqual(0.001);
        expect(next).toBeLessThanOrEqual(1000);
        if (direction > 0) expect(next).toBeGreaterThanOrEqual(Math.min(value, 1000));
        else expect(next).toBeLessThanOrEqual(Math.max(value, 0.001));
      }),
    );
  });
});

describe('a slider', () => {
  it.each([{ min: 1, max: 60 }, { min: 1e-5, max: 0.1 }, { min: -20, max: 90 }, { min: 0, max: 5 }])('spans %o and comes back to where it was', (field) => {
    expect(sliderValue(field, 0)).toBe(field.min);
    expect(sliderValue(field, SLIDER_STEPS)).toBe(field.max);
    for (let position = 0; position <= SLIDER_STEPS; position += 1) {
      expect(Math.abs(sliderPosition(field, sliderValue(field, position)) - position)).toBeLessThanOrEqual(2);
    }
  });
});
