import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { analyseGrounding, firstGroundingFindings, solveGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundConnections } from '../../../src/compute/grounding/connections.ts';
import { CONVERTER, FOOTSWITCH, NEGATIVE, TAP, TWO_RESISTORS, jobOf, plugIn } from './jobs.ts';

const amps = (job: Parameters<typeof solveGrounding>[0], id: string): number => solveGrounding(job).branches.find((branch) => branch.id === id)?.rmsAmps ?? Number.NaN;

describe('points wired to the chassis besides', () => {
  it('both ends of a winding short it: its volts over its ohms and those of the two bonds', () => {
    const job = jobOf({ connections: { winding: { kind: 'one-leg', leg: 'first' }, furtherGrounds: ['second'] } });
    // 6.5 V, 2 × 45 mΩ, two bonds of 1 mΩ; the rectifier behind them takes nothing worth counting.
    expect(Math.abs(amps(job, 'further-second') / (6.5 / 0.092) - 1)).toBeLessThan(0.01);
    expect(solveGrounding(job).rail.meanVolts).toBeLessThan(0.1);
  });

  it('both poles of a converter short it: its limiting current', () => {
    const job = jobOf({ supply: CONVERTER, connections: { rail: NEGATIVE, furtherGrounds: ['positive'] } });
    expect(Math.abs(amps(job, 'further-positive') / CONVERTER.limitAmps - 1)).toBeLessThan(0.001);
    expect(Math.abs(amps(job, 'converter-output') / CONVERTER.limitAmps - 1)).toBeLessThan(0.001);
    // With one ground it gives what the load takes: 12 V over 15 Ω would be more than its 0.5 A, over 100 Ω it is not.
    const alone = jobOf({ supply: CONVERTER, connections: { rail: NEGATIVE }, job: { loadOhms: 100 } });
    expect(Math.abs(amps(alone, 'converter-output') / 0.12 - 1)).toBeLessThan(0.001);
  });

  it('are the same as the reference that grounds the same point', () => {
    const byReference = jobOf({ connections: { winding: TAP, rail: NEGATIVE } });
    const byWire = jobOf({ connections: { furtherGrounds: ['tap', 'negative'] } });
    expect(Math.abs(amps(byWire, 'further-tap') / amps(byReference, 'winding-reference') - 1)).toBeLessThan(1e-6);
  });

  it('are one ground where they meet the same point, as the tap and the negative of a centre-tap pair do', () => {
    const { points, circulating } = solveGrounding(jobOf({ supply: { topology: 'centre-tap' }, connections: { rail: NEGATIVE, furtherGrounds: ['tap'] } }));
    expect(points).toHaveLength(1);
    expect(circulating.rmsAmps).toBe(0);
  });

  it('can each be taken away as a cure', () => {
    const { options } = analyseGrounding(jobOf({ connections: { rail: NEGATIVE, furtherGrounds: ['second', 'first'] } }));
    expect(options).toHaveLength(3);
    expect(options[0]?.remove.map((link) => link.id)).toEqual(['further-second', 'further-first']);
    expect(options.every((option) => option.clears)).toBe(true);
  });

  it.each<[string, Partial<GroundConnections>]>([
    ['a tap that is not there', { furtherGrounds: ['tap'] }],
    ['a joint of resistors that are not there', { furtherGrounds: ['centre'] }],
    ['a point twice', { furtherGrounds: ['first', 'first'] }],
  ])('refuse %s', (_, connections) => {
    expect(() => solveGrounding(jobOf({ supply: { hasCentreTap: false }, connections }))).toThrow(InputError);
  });

  it('refuse a winding’s end on a converter', () => {
    expect(() => solveGrounding(jobOf({ supply: CONVERTER, connections: { furtherGrounds: ['first'] } }))).toThrow(InputError);
  });
});

describe('what is said before the whole analysis', () => {
  const jobs = [
    jobOf({ connections: { winding: TAP, rail: NEGATIVE, jacks: [FOOTSWITCH] } }),
    jobOf({ connections: { winding: TWO_RESISTORS, rail: NEGATIVE, jacks: [plugIn(0.1, 0.2)] } }),
    jobOf({ connections: { rail: NEGATIVE } }),
    jobOf({ supply: CONVERTER, connections: { jacks: [FOOTSWITCH] } }),
  ];

  it.each(jobs.map((job, index) => [index, job] as const))('is part of it, at the same level (job %i)', (_, job) => {
    const whole = analyseGrounding(job).findings;
    for (const first of firstGroundingFindings(solveGrounding(job))) {
      expect(whole.find((finding) => finding.rule === first.rule && finding.level === first.level)?.numbers).toEqual(first.numbers);
    }
  });
});
