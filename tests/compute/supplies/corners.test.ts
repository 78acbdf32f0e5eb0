import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { operatingCorners } from '../../../src/compute/supplies/corners.ts';

const mains = { nominalVolts: 230, lowVolts: 207, highVolts: 253, hertz: 50 };

describe('operating corners', () => {
  const corners = operatingCorners(mains);

  it('cross every state of the mains with every state of the load, two reservoirs under load', () => {
    expect(corners).toHaveLength(15);
    for (const state of ['low', 'nominal', 'high']) {
      for (const load of ['off', 'running', 'everything']) {
        expect(corners.filter((at) => at.mains === state && at.load === load)).toHaveLength(load === 'off' ? 1 : 2);
      }
    }
  });

  it('have names of their own', () => {
    expect(new Set(corners.map((at) => at.id)).size).toBe(corners.length);
    expect(new Set(corners.map((at) => at.words)).size).toBe(corners.length);
  });

  it('plan low mains with a flat-topped wave and the smallest, oldest reservoir', () => {
    const worst = corners.find((at) => at.words === 'low mains, everything on, smallest and oldest reservoir');
    expect(worst).toMatchObject({ mainsRatio: 0.9, crestFactor: 1.35, esrRatio: 2 });
    expect(worst?.faradsRatio).toBeCloseTo(0.64, 12);
  });

  it('plan high mains with a sine and the largest reservoir', () => {
    const worst = corners.find((at) => at.words === 'high mains, load off, largest reservoir');
    expect(worst?.mainsRatio).toBeCloseTo(1.1, 12);
    expect(worst).toMatchObject({ crestFactor: Math.SQRT2, faradsRatio: 1.2, coldCopperRatio: 1 });
    expect(worst?.diodeShiftVolts).toBeLessThan(0);
  });

  it('come at both frequencies at low mains, and there only, for an amp that must work on both', () => {
    const both = operatingCorners({ ...mains, alsoHertz: 60 });
    expect(both).toHaveLength(20);
    expect(both.filter((at) => at.hertz === 60).every((at) => at.mains === 'low')).toBe(true);
    expect(both.find((at) => at.hertz === 60)?.words).toMatch(/60 Hz$/);
  });

  it.each([
    ['mains.lowVolts', { ...mains, lowVolts: 240 }],
    ['mains.highVolts', { ...mains, highVolts: 220 }],
    ['mains.nominalVolts', { ...mains, nominalVolts: Number.NaN }],
    ['mains.hertz', { ...mains, hertz: 0 }],
    ['mains.alsoHertz', { ...mains, alsoHertz: 400 }],
  ])('refuse %s out of range', (quantity, wrong) => {
    expect(() => operatingCorners(wrong)).toThrow(InputError);
    expect(() => operatingCorners(wrong)).toThrow(quantity);
  });
});
