import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinSecondaries, windingAtMains, windingFromRating, windingFromResistance, windingRegulation } from '../../../src/compute/parts/winding.ts';
import { HAND_HELD_METER, windingFromOhmmeter, windingFromReadings } from '../../../src/compute/parts/winding-readings.ts';

describe('a winding from its rating', () => {
  it('gives the shop-floor examples: 9 V 6 VA of 20 %, 15 V 50 VA of 12 %, 12 V 20 VA of 15 %', () => {
    expect(windingFromRating({ ratedVolts: 9, ratedAmps: 6 / 9, regulation: 0.2 })).toEqual({ openCircuitVolts: expect.closeTo(10.8, 10) as number, ohms: expect.closeTo(2.7, 10) as number });
    expect(windingFromRating({ ratedVolts: 15, ratedAmps: 50 / 15, regulation: 0.12 }).ohms).toBeCloseTo(0.54, 10);
    expect(windingFromRating({ ratedVolts: 12, ratedAmps: 20 / 12, regulation: 0.15 }).openCircuitVolts).toBeCloseTo(13.8, 10);
  });

  it('reads both ways in which makers print regulation', () => {
    const over = windingFromRating({ ratedVolts: 9, ratedAmps: 1, regulation: 0.25 });
    expect(windingFromRating({ ratedVolts: 9, ratedAmps: 1, regulation: 0.2, regulationOver: 'no-load' }).openCircuitVolts).toBeCloseTo(over.openCircuitVolts, 12);
  });

  it('gives back its regulation at rated current', () => {
    const winding = windingFromRating({ ratedVolts: 18, ratedAmps: 0.5, regulation: 0.15 });
    expect(windingRegulation({ winding, amps: 0.5 })).toBeCloseTo(0.15, 12);
    expect(() => windingRegulation({ winding, amps: 100 })).toThrow(RangeError);
  });

  it('follows the mains, and joins in series and in parallel', () => {
    const winding = { openCircuitVolts: 10, ohms: 2 };
    expect(windingAtMains({ winding, nominalVolts: 230, mainsVolts: 207 })).toEqual({ openCircuitVolts: 9, ohms: 2 });
    expect(joinSecondaries({ winding, as: 'series' })).toEqual({ openCircuitVolts: 20, ohms: 4 });
    expect(joinSecondaries({ winding, as: 'parallel' })).toEqual({ openCircuitVolts: 10, ohms: 1 });
  });

  it.each([{ ratedVolts: 0 }, { ratedVolts: NaN }, { ratedAmps: -1 }, { regulation: 2 }])('refuses %j', (bad) => {
    expect(() => windingFromRating({ ratedVolts: 9, ratedAmps: 1, regulation: 0.2, ...bad })).toThrow(RangeError);
  });
});

describe('a winding from resistances', () => {
  it('adds the primary by the square of the turns ratio', () => {
    const winding = windingFromResistance({ secondaryOhms: 0.05, primary: { ohms: 3, volts: 120 }, reading: { volts: 6.6, amps: 0 } });
    expect(winding).toEqual({ openCircuitVolts: 6.6, ohms: expect.closeTo(0.05 + 3 * (6.6 / 120) ** 2, 12) as number, restsOn: 'measured' });
  });

  it('recovers the open-circuit volts from a loaded reading', () => {
    const ohms = 0.05 + 3 * (6.6 / 120) ** 2;
    const winding = windingFromResistance({ secondaryOhms: 0.05, primary: { ohms: 3, volts: 120 }, reading: { volts: 6.6 - 4 * ohms, amps: 4 } });
    expect(winding.openCircuitVolts).toBeCloseTo(6.6, 9);
  });

  it('says that it assumed the primary’s share when nobody measured it, and warms the copper', () => {
    const cold = windingFromResistance({ secondaryOhms: 1, reading: { volts: 10, amps: 0 } });
    expect(cold).toEqual({ openCircuitVolts: 10, ohms: 2, restsOn: 'assumed' });
    expect(windingFromResistance({ secondaryOhms: 1, reading: { volts: 10, amps: 0 }, hotCelsius: 70 }).ohms).toBeCloseTo((2 * 304.5) / 254.5, 12);
  });
});

describe('a winding from two readings', () => {
  it('finds the source that a bench supply of 14.1, 13.6 and 12.6 V at 0, 1 and 3 A has, within its limits', () => {
    const estimate = windingFromReadings({ lighter: { volts: 14.1, amps: 0 }, heavier: { volts: 12.6, amps: 3 }, nominalMainsVolts: 230 });
    expect(estimate.ohms.value).toBeCloseTo(0.5, 12);
    expect(estimate.openCircuitVolts.value).toBeCloseTo(14.1, 12);
    expect(estimate.telling).toBe(true);
  });

  it('brings each reading to nominal mains first', () => {
    const truth = { open: 6.93, ohms: 0.1 };
    // A resistive load: the current falls with the volts.
    const at = (mains: number, loadOhms: number) => {
      const amps = (truth.open * mains) / 120 / (truth.ohms + loadOhms);
      return { volts: amps * loadOhms, amps, mainsVolts: mains };
    };
    const estimate = windingFromReadings({ lighter: at(118, 6), heavier: at(123, 1.5), nominalMainsVolts: 120 });
    expect(estimate.ohms.value).toBeCloseTo(truth.ohms, 10);
    expect(estimate.openCircuitVolts.value).toBeCloseTo(truth.open, 10);
  });

  it('holds the truth inside its limits whatever the meter’s error within its sheet', () => {
    const error = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 5, max: 30, noNaN: true }), fc.double({ min: 0.05, max: 3, noNaN: true }), error, error, error, error, (open, ohms, gain, first, second, amps) => {
        const load = (factor: number, count: number) => {
          const current = open / (ohms * (1 + factor));
          const volts = (open - current * ohms) / (1 + gain * HAND_HELD_METER.voltsGain) - count * HAND_HELD_METER.voltsCounts * 0.98;
          return { volts, amps: current / (1 + amps * HAND_HELD_METER.ampsGain) };
        };
        const estimate = windingFromReadings({ lighter: load(40, first), heavier: load(3, second), nominalMainsVolts: 120 });
        expect(estimate.ohms.least).toBeLessThanOrEqual(ohms);
        expect(estimate.ohms.most).toBeGreaterThanOrEqual(ohms);
        expect(estimate.openCircuitVolts.least).toBeLessThanOrEqual(open);
        expect(estimate.openCircuitVolts.most).toBeGreaterThanOrEqual(open);
      }),
      { seed: 30 },
    );
  });

  it('says when the step drowns in the meter’s error', () => {
    expect(windingFromReadings({ lighter: { volts: 6.6, amps: 0.3 }, heavier: { volts: 6.57, amps: 0.6 }, nominalMainsVolts: 120 }).telling).toBe(false);
  });

  it('refuses readings that cannot be: volts rising with load, no step, negative amps', () => {
    const lighter = { volts: 6.6, amps: 1 };
    for (const heavier of [{ volts: 6.7, amps: 2 }, { volts: 6.5, amps: 1 }, { volts: 6.5, amps: -2 }, { volts: NaN, amps: 2 }]) {
      expect(() => windingFromReadings({ lighter, heavier, nominalMainsVolts: 120 })).toThrow(RangeError);
    }
  });
});

describe('a winding from an ohmmeter and one reading', () => {
  const winding = { secondaryOhms: 2, primaryOhms: 300, reading: { volts: 18, amps: 0, mainsVolts: 225 }, nominalMainsVolts: 230 } as const;

  it('is told well enough where the copper is thin', () => {
    const found = windingFromOhmmeter(winding);
    const open = (18 * 230) / 225;
    expect(found.openCircuitVolts.value).toBeCloseTo(open, 12);
    expect(found.ohms.value).toBeCloseTo(2 + 300 * (open / 230) ** 2, 12);
    expect(found).toMatchObject({ telling: true, restsOn: 'measured' });
    expect(found.ohms.least).toBeLessThan(found.ohms.value);
    expect(found.ohms.most).toBeGreaterThan(found.ohms.value);
  });

  it('is not told for a heater winding: the leads are larger than the copper', () => {
    expect(windingFromOhmmeter({ secondaryOhms: 0.05, primaryOhms: 3, reading: { volts: 6.6, amps: 0 }, nominalMainsVolts: 120 }).telling).toBe(false);
  });

  it('is wider, and says why, where the primary was not measured', () => {
    const { primaryOhms, ...secondaryOnly } = winding;
    const assumed = windingFromOhmmeter(secondaryOnly);
    expect(primaryOhms).toBe(300);
    expect(assumed.restsOn).toBe('assumed');
    expect(assumed.ohms.value).toBeCloseTo(4, 12);
    expect((assumed.ohms.most - assumed.ohms.least) / assumed.ohms.value).toBeGreaterThan((windingFromOhmmeter(winding).ohms.most - windingFromOhmmeter(winding).ohms.least) / windingFromOhmmeter(winding).ohms.value);
  });

  it('holds the truth inside its limits whatever the errors within the meters’ sheets', () => {
    const error = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20, noNaN: true }), fc.double({ min: 10, max: 500, noNaN: true }), error, error, error, error, (secondary, primary, ohmsGain, second, first, volts) => {
        const truth = secondary + primary * (18 / 230) ** 2;
        const read = (ohms: number, count: number) => Math.max(0, (ohms - count * 0.2) / (1 + ohmsGain * 0.01));
        const found = windingFromOhmmeter({
          secondaryOhms: read(secondary, second), primaryOhms: read(primary, first), reading: { volts: 18 / (1 + volts * HAND_HELD_METER.voltsGain), amps: 0 }, nominalMainsVolts: 230,
        });
        expect(found.ohms.least).toBeLessThanOrEqual(truth * (1 + 1e-12));
        expect(found.ohms.most).toBeGreaterThanOrEqual(truth * (1 - 1e-12));
      }),
      { seed: 31 },
    );
  });
});
