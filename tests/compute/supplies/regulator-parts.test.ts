import { describe, expect, it } from 'vitest';
import { adjustableOutput, linearRegulator } from '../../../src/compute/parts/regulator-linear.ts';
import { preferredValues } from '../../../src/compute/quantity.ts';
import { buckCompanions, linearCompanions, settingResistors } from '../../../src/compute/supplies/regulator-parts.ts';

const ADJUSTABLE = linearRegulator('317');
const E96 = preferredValues('E96');
const isPreferred = (ohms: number): boolean => E96.some((value) => Math.abs(ohms / 10 ** Math.floor(Math.log10(ohms)) - value) < 1e-9);

describe('the small parts a regulator asks for', () => {
  it.each([3.3, 5, 6.3, 9, 12, 12.6, 24])('sets %s V within 1 % with two standard resistors that carry the least load', (outputVolts) => {
    const { r1Ohms, r2Ohms, outputVolts: reached } = settingResistors({ part: ADJUSTABLE, outputVolts });
    expect(isPreferred(r1Ohms) && isPreferred(r2Ohms)).toBe(true);
    expect(ADJUSTABLE.outputVolts / r1Ohms).toBeGreaterThanOrEqual(ADJUSTABLE.minLoadAmps);
    expect(Math.abs(reached / outputVolts - 1)).toBeLessThan(0.01);
    expect(adjustableOutput({ part: ADJUSTABLE, r1Ohms, r2Ohms })).toMatchObject({ minLoadMet: true, typical: reached });
  });

  it('names the capacitors of the sheet, and says which one keeps a low-dropout type from oscillating', () => {
    const fixed = linearCompanions({ part: linearRegulator('7812'), outputVolts: 12, railFarads: 0 });
    expect(fixed.map((part) => part.role)).toEqual(['regulator-capacitor', 'regulator-capacitor']);
    const lowDropout = linearCompanions({ part: linearRegulator('ldo-12'), outputVolts: 12, railFarads: 0 });
    expect(lowDropout.some((part) => part.why.includes('oscillates'))).toBe(true);
  });

  it('adds the diode for switch-off where the rail holds a large capacitor', () => {
    const roles = (railFarads: number): readonly string[] => linearCompanions({ part: linearRegulator('7812'), outputVolts: 12, railFarads }).map((part) => part.role);
    expect(roles(470e-6)).toContain('protection-diode');
    expect(roles(10e-6)).not.toContain('protection-diode');
  });

  it('puts a filter and a clamp behind a step-down module', () => {
    const [filter, clamp] = buckCompanions(12.6);
    expect(filter?.role).toBe('filter');
    expect(clamp?.numbers.map((each) => Number(each.value.toFixed(2)))).toEqual([13.86, 16.38]);
  });
});
