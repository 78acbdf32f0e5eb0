import { describe, expect, it } from 'vitest';
import { analyseGrounding, solveGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundConnections } from '../../../src/compute/grounding/connections.ts';
import { harmonicPeak } from '../../../src/compute/grounding/harmonic.ts';
import { NEGATIVE, TAP, TWO_RESISTORS, jobOf } from './jobs.ts';

describe('one harmonic of a wave', () => {
  const wave = Float64Array.from({ length: 129 }, (_, index) => 7 + 3 * Math.sin((2 * Math.PI * index) / 128 + 0.4) + 2 * Math.cos((4 * Math.PI * index) / 128));
  it.each([[1, 3], [2, 2], [3, 0]] as const)('number %i has the amplitude that was put in, %d', (order, amplitude) => {
    expect(harmonicPeak({ values: wave, order })).toBeCloseTo(amplitude, 9);
  });
});

describe('heaters about the chassis', () => {
  const supply = { openCircuitVolts: 6.3, ohms: 0.01, heaterOhms: 4.2 } as const;
  const balance = (connections: Partial<GroundConnections>) => solveGrounding(jobOf({ supply, connections, job: { loadOhms: 200 } })).heater;

  it('balance on their tap: nothing at the mains frequency, nothing at twice that', () => {
    const heater = balance({ winding: TAP });
    expect(heater?.commonVolts).toBeLessThan(1e-3);
    expect(heater?.first.acVolts).toBeCloseTo(3.15, 1);
  });

  it('grounded at one end swing as one, by half of the winding', () => {
    const heater = balance({ winding: { kind: 'one-leg', leg: 'first' } });
    expect(heater?.first.acVolts).toBeLessThan(1e-2);
    expect(heater?.second.acVolts).toBeCloseTo(6.3, 1);
    expect(heater?.humPeakVolts).toBeCloseTo((6.3 * Math.SQRT2) / 2, 1);
  });

  it('on unequal resistors hum by the part that the two differ', () => {
    const [a, b] = [{ ohms: 100, ratedWatts: 1 }, { ohms: 150, ratedWatts: 1 }];
    const heater = balance({ winding: { kind: 'artificial-centre', resistors: [a, b] } });
    // The centre stands at 100/250 of the winding instead of half of it.
    expect(heater?.humPeakVolts).toBeCloseTo(6.3 * Math.SQRT2 * (0.5 - 100 / 250), 1);
  });

  it('buzz at twice the mains frequency once the rail’s negative is grounded beside two resistors', () => {
    const heater = balance({ winding: TWO_RESISTORS, rail: NEGATIVE });
    expect(heater?.buzzPeakVolts).toBeGreaterThan(1);
    expect(heater?.humPeakVolts).toBeLessThan(1e-2);
    expect(heater?.first.meanVolts).toBeGreaterThan(1);
  });

  it('held by the rectifier alone are never called quiet', () => {
    const finding = analyseGrounding(jobOf({ supply, connections: { rail: NEGATIVE }, job: { loadOhms: 200 } })).findings.find((entry) => entry.rule === 'heater-balance');
    expect(finding?.level).toBe('marginal');
    const floating = analyseGrounding(jobOf({ supply })).findings.find((entry) => entry.rule === 'heater-balance');
    expect(floating?.level).toBe('not assessed');
  });
});
