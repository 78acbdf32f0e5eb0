import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { solveShortedDiode } from '../../../src/compute/grounding/shorted-diode.ts';
import { CONVERTER, NEGATIVE, TAP, jobOf } from './jobs.ts';

describe('a diode that has failed as a short circuit', () => {
  const both = jobOf({ connections: { winding: TAP, rail: NEGATIVE, bondOhms: 1e-5 } });

  it('shorts its half of the winding through all of the cycle: volts over ohms', () => {
    const branches = solveShortedDiode({ job: both, diode: 'diode-negative-to-first' });
    const half = branches.find((branch) => branch.id === 'half-1');
    const expected = 3.25 / (0.045 + 0.01);
    expect(Math.abs((half?.rmsAmps ?? 0) / expected - 1)).toBeLessThan(0.02);
    expect(half?.rmsAmps).toBeGreaterThan(2 * (half?.alone.rmsAmps ?? Infinity));
    expect(half?.isFault).toBe(true);
  });

  it('is refused by the name of one that is not there', () => {
    expect(() => solveShortedDiode({ job: both, diode: 'half-1' })).toThrow(InputError);
    expect(() => solveShortedDiode({ job: jobOf({ supply: CONVERTER }), diode: 'diode-negative-to-first' })).toThrow(InputError);
  });
});
