import { describe, expect, it } from 'vitest';
import { checkPhasing } from '../../../src/compute/findings/phasing.ts';

const context = { corner: 'unloaded', restsOn: ['assumed'] as const };
// Two of 12 V open-circuit behind 6 Ω each, as joined: parallel 12 V behind 3 Ω, series 24 V behind 12 Ω.
const parallel = { ...context, secondaries: 'two-in-parallel' as const, secondaryVolts: 10, winding: { openCircuitVolts: 12, ohms: 3 } };
const series = { ...context, secondaries: 'two-in-series' as const, secondaryVolts: 10, winding: { openCircuitVolts: 24, ohms: 12 } };

describe('the phasing of two secondaries', () => {
  it('has nothing to say of one, nor of a centre tap', () => {
    expect(checkPhasing({ ...parallel, secondaries: 'one' })).toEqual([]);
    expect(checkPhasing({ ...parallel, secondaries: 'two-as-centre-tap' })).toEqual([]);
  });

  it('is not assessed until somebody reads it, and names the current that would run: 2 × 12 V round 2 × 6 Ω', () => {
    const [finding] = checkPhasing(parallel);
    expect(finding?.level).toBe('not assessed');
    expect(finding?.numbers[0]?.value).toBeCloseTo(2, 12);
    expect(checkPhasing(series)[0]?.level).toBe('not assessed');
  });

  it.each([
    [0, 'within'],
    [0.5, 'within'],
    [0.6, 'outside'],
    [10, 'outside'],
    [24, 'hazard'],
  ] as const)('reads %s V between the free ends of a parallel pair as %s', (freeEndVolts, level) => {
    expect(checkPhasing({ ...parallel, freeEndVolts })[0]?.level).toBe(level);
  });

  it.each([
    [24, 'within'],
    [18, 'within'],
    [12, 'outside'],
    [0, 'outside'],
  ] as const)('reads %s V across a pair in series as %s', (freeEndVolts, level) => {
    expect(checkPhasing({ ...series, freeEndVolts })[0]?.level).toBe(level);
  });

  it('refuses volts that no secondary has', () => {
    expect(() => checkPhasing({ ...parallel, freeEndVolts: -1 })).toThrow(RangeError);
    expect(() => checkPhasing({ ...parallel, secondaryVolts: Number.NaN })).toThrow(RangeError);
  });
});
