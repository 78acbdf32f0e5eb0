import { describe, expect, it } from 'vitest';
import { analyseGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import { firstToOverheat, secondsToPass } from '../../../src/compute/grounding/overheating.ts';
import type { PartStress } from '../../../src/compute/grounding/overheating.ts';
import { NEGATIVE, SILICON, TAP, UNRATED_WINDING, jobOf } from './jobs.ts';

describe('time to a temperature', () => {
  const body = { startCelsius: 50, timeConstantSeconds: 100 };
  it('is the logarithm of one warming body', () => {
    // Half of the way takes ln 2 time constants.
    expect(secondsToPass({ ...body, finalCelsius: 150, limitCelsius: 100 })).toBeCloseTo(100 * Math.LN2, 9);
  });
  it('far beyond the limit is that of heat that nothing carries off', () => {
    const rate = (10_050 - 50) / 100;
    expect(secondsToPass({ ...body, finalCelsius: 10_050, limitCelsius: 100 })).toBeCloseTo(50 / rate, 2);
  });
  it('is nought above the limit already, and never where it levels off below', () => {
    expect(secondsToPass({ ...body, finalCelsius: 200, limitCelsius: 40 })).toBe(0);
    expect(secondsToPass({ ...body, finalCelsius: 100, limitCelsius: 100 })).toBeUndefined();
  });
});

describe('what a second ground overheats', () => {
  const stressOf = (id: string, options: Parameters<typeof jobOf>[0]): PartStress | undefined => analyseGrounding(jobOf(options)).stresses.find((stress) => stress.branchId === id);
  const both = { winding: TAP, rail: NEGATIVE } as const;

  it('a winding of larger rating lasts longer, and of a large enough one for ever', () => {
    const seconds = [2, 5, 10].map((ratedAmps) => stressOf('half-1', { supply: { ratedAmps }, connections: both })?.secondsToLimit ?? Infinity);
    expect(seconds[0]).toBeLessThan(seconds[1] ?? 0);
    expect(seconds[1]).toBeLessThan(seconds[2] ?? 0);
    expect(stressOf('half-1', { supply: { ratedAmps: 17 }, connections: both })?.secondsToLimit).toBeUndefined();
  });

  it('copper at three times its current density warms as fast as its heat capacity says', () => {
    const stress = stressOf('half-1', { supply: { ratedAmps: 5 }, connections: both });
    // 3 A/mm² at the rating; resistivity at 80 °C 2.13e-8 Ω·m; 385 J/(kg·K) and 8960 kg/m³. No heat carried off: the least time.
    const density = (3e6 * (stress?.value ?? 0)) / 5;
    const kelvinPerSecond = (density ** 2 * 2.13e-8) / (385 * 8960);
    expect(stress?.secondsToLimit).toBeGreaterThan((100 - 57) / kelvinPerSecond);
    expect(stress?.secondsToLimit).toBeLessThan((1.2 * (100 - 55)) / kelvinPerSecond);
  });

  it('a diode past its one surge goes at once; below it, by its heat', () => {
    const surge = stressOf('diode-negative-to-first', { supply: { diode: { ...SILICON, surgeAmps: 30 } }, connections: both });
    expect(surge?.surge?.allowedAmps).toBe(30);
    expect(surge?.secondsToLimit).toBeLessThan(0.1);
    const heat = stressOf('diode-negative-to-first', { supply: { diode: { ...SILICON, surgeAmps: 60 } }, connections: both });
    expect(heat?.surge).toBeUndefined();
    expect(heat?.secondsToLimit).toBeGreaterThan(0.5);
    expect(heat?.secondsToLimit).toBeLessThan(10);
  });

  it('nothing that nobody has rated: it is said to be not assessed', () => {
    const { saturationAmps, emission, ohms } = SILICON;
    const supply = { ...UNRATED_WINDING, diode: { saturationAmps, emission, ohms } };
    const analysis = analyseGrounding({ ...jobOf({ connections: both }), supply });
    expect(analysis.firstToOverheat).toBeUndefined();
    expect(analysis.findings.find((entry) => entry.rule === 'fault-rating')?.level).toBe('not assessed');
    expect(analysis.findings.find((entry) => entry.rule === 'second-ground')?.level).toBe('hazard');
  });

  it('resistors too small for their part, and not those that are large enough', () => {
    const at = (ratedWatts: number) => {
      const pair = { kind: 'artificial-centre', resistors: [{ ohms: 100, ratedWatts }, { ohms: 100, ratedWatts }] } as const;
      return analyseGrounding(jobOf({ supply: { hasCentreTap: false }, connections: { winding: pair, rail: NEGATIVE } }));
    };
    expect(at(0.125).firstToOverheat?.branchId).toMatch(/^centre-resistor/);
    expect(at(0.125).findings.find((entry) => entry.rule === 'second-ground')?.level).toBe('hazard');
    expect(at(0.5).firstToOverheat).toBeUndefined();
  });

  it('first comes what passes its limit soonest', () => {
    const stress = (branchId: string, secondsToLimit?: number): PartStress => ({
      branchId, name: branchId, quantity: 'watts', value: 1, restsOn: ['assumed'], ...(secondsToLimit === undefined ? {} : { secondsToLimit }),
    });
    expect(firstToOverheat([stress('a', 20), stress('b'), stress('c', 3)])?.branchId).toBe('c');
    expect(firstToOverheat([stress('b')])).toBeUndefined();
  });
});
