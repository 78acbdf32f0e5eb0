import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { fuseInFault } from '../../../src/compute/in-time/fuse-in-fault.ts';
import { windingHeat } from '../../../src/compute/in-time/winding-heating.ts';
import { fuseColdOhms, fuseStandard, fuseTimes } from '../../../src/compute/parts/fuse.ts';

/** 12 V 10 VA of 25 % on 230 V: 0.83 A, 3.6 Ω. */
const SMALL = { winding: { openCircuitVolts: 15, ohms: 3.6 }, mainsVolts: 230, heat: windingHeat({ ratedAmps: 0.833 }), airCelsius: 45 } as const;
const SHEET_5 = fuseStandard('iec-sheet-5');
const SHEET_3 = fuseStandard('iec-sheet-3');
const UL = fuseStandard('ul-248-14');

describe('a dead short on the secondary of a small transformer', () => {
  const race = fuseInFault({ ...SMALL, standard: SHEET_5, ratedAmps: 0.1, place: 'primary' });

  it('draws two to three times a T100 mA in the primary, as the textbook trap says, and less as it warms', () => {
    expect(race.fuseAmps.first).toBeGreaterThan(0.2);
    expect(race.fuseAmps.first).toBeLessThan(0.3);
    expect(race.multiple).toBeCloseTo(2.7, 1);
    expect(race.fuseAmps.last).toBeLessThan(race.fuseAmps.first);
  });

  it('burns the winding before a fuse that may take half an hour has to open', () => {
    expect(race.latestSeconds).toBeUndefined();
    expect(race.protects).toBe(false);
    expect(race.normalLimitSeconds).toBeGreaterThan(20);
    expect(race.overloadLimitSeconds).toBeLessThan(600);
    expect(race.overloadLimitSeconds ?? 0).toBeGreaterThan(race.normalLimitSeconds ?? Infinity);
  });

  it('is ended by the sheet that demands two minutes at 2.1 times', () => {
    const quick = fuseInFault({ ...SMALL, standard: SHEET_3, ratedAmps: 0.1, place: 'primary' });
    expect(quick.protects).toBe(true);
    expect(quick.latestSeconds).toBeLessThan(60);
    expect(quick.windingCelsius).toBeLessThan(100);
  });

  it('tells a UL fuse from an IEC fuse of the same number: the one must open, the other need not', () => {
    const ul = fuseInFault({ ...SMALL, standard: UL, ratedAmps: 0.1, place: 'primary' });
    expect(ul.latestSeconds).toBeLessThan(300);
    expect(ul.earliestSeconds).toBeUndefined();
    expect(race.latestSeconds).toBeUndefined();
  });

  it('opens sooner with a smaller fuse, later with a larger one, and a stiff winding leaves no doubt', () => {
    const at = (ratedAmps: number): number => fuseInFault({ ...SMALL, standard: SHEET_3, ratedAmps, place: 'primary' }).latestSeconds ?? Infinity;
    expect(at(0.05)).toBeLessThan(at(0.08));
    expect(at(0.08)).toBeLessThan(at(0.1));
    const stiff = fuseInFault({ ...SMALL, winding: { openCircuitVolts: 6.9, ohms: 0.1 }, heat: windingHeat({ ratedAmps: 5 }), standard: SHEET_5, ratedAmps: 5, place: 'secondary' });
    expect(stiff.multiple).toBeGreaterThan(10);
    expect(stiff.latestSeconds).toBeLessThan(0.2);
    expect(stiff.protects).toBe(true);
  });

  it('at a current that does not change takes just the time of the curve', () => {
    // So cold and so quick that the copper has not warmed: ten times rated.
    const ohms = 15 / 20 - fuseColdOhms(2);
    const solved = fuseInFault({ ...SMALL, winding: { openCircuitVolts: 15, ohms }, heat: windingHeat({ ratedAmps: 5 }), standard: SHEET_5, ratedAmps: 2, place: 'secondary' });
    const { minSeconds = 0, maxSeconds = 0 } = fuseTimes({ standard: SHEET_5, ratedAmps: 2, amps: 20 });
    expect((solved.latestSeconds ?? 0) / maxSeconds).toBeCloseTo(1, 2);
    expect((solved.earliestSeconds ?? 0) / minSeconds).toBeCloseTo(1, 2);
  });

  it('refuses what cannot be', () => {
    expect(() => fuseInFault({ ...SMALL, standard: SHEET_5, ratedAmps: 0, place: 'secondary' })).toThrow(InputError);
    const { mainsVolts, ...noMains } = SMALL;
    expect(mainsVolts).toBe(230);
    expect(() => fuseInFault({ ...noMains, standard: SHEET_5, ratedAmps: 0.1, place: 'primary' })).toThrow(InputError);
  });
});
