import { describe, expect, it } from 'vitest';
import { CONVERTERS, converter, converterHeatWatts, deratedOutput, ratingForHeaters, startUpLimit, yCapacitorAmps, yCapacitorFarads } from '../../../src/compute/parts/converter.ts';

describe('rows', () => {
  it('give no more than their watts, within the rounding of the printed amps', () => {
    for (const row of CONVERTERS) expect((row.outputVolts * row.ratedAmps) / row.ratedWatts, row.id).toBeLessThanOrEqual(1.11);
  });

  it('have a derating that only falls', () => {
    for (const row of CONVERTERS) row.derating.slice(1).forEach(([, share], at) => { expect(share).toBeLessThan(row.derating[at]?.[1] ?? 0); });
  });
});

describe('a converter in hot air', () => {
  const part = converter('module-10w-12v');

  it('gives its rating to 55 °C, less above, and nothing beyond its curve', () => {
    expect(deratedOutput({ part, airCelsius: 55 })).toEqual({ share: 1, watts: 10, amps: 0.9 });
    expect(deratedOutput({ part, airCelsius: 62.5 }).share).toBeCloseTo(0.8, 12);
    expect(deratedOutput({ part, airCelsius: 70 }).amps).toBeCloseTo(0.54, 12);
    expect(deratedOutput({ part, airCelsius: 70.1 }).amps).toBe(0);
  });

  it('turns the rest of its input into heat, and its standby when idle', () => {
    expect(converterHeatWatts({ part, amps: 0.9 })).toBeCloseTo(10.8 / 0.8 - 10.8, 12);
    expect(converterHeatWatts({ part, amps: 0 })).toBe(0.6);
  });
});

describe('leakage through a Y capacitor', () => {
  // Microamps by capacitance and mains, as printed.
  it.each([
    [1e-9, 120, 60, 45], [1e-9, 230, 50, 72], [1e-9, 253, 50, 79], [1e-9, 264, 60, 100], [2.2e-9, 120, 60, 100], [2.2e-9, 230, 50, 159],
    [2.2e-9, 253, 50, 175], [2.2e-9, 264, 60, 219], [4.7e-9, 120, 60, 213], [4.7e-9, 230, 50, 340], [4.7e-9, 253, 50, 374], [4.7e-9, 264, 60, 468],
  ])('of %d F at %d V %d Hz is %d µA', (farads, mainsVolts, hertz, microamps) => {
    expect(Math.abs(1e6 * yCapacitorAmps({ farads, mainsVolts, hertz }) - microamps)).toBeLessThanOrEqual(0.7);
  });

  it('is turned back into the capacitor', () => {
    const farads = yCapacitorFarads({ leakageAmps: 0.3e-3 });
    expect(yCapacitorAmps({ farads, mainsVolts: 230, hertz: 50 })).toBeCloseTo(0.3e-3, 12);
  });
});

describe('start-up', () => {
  const part = converter('module-12w-12v');

  it('is limited at 1.1 times its rating, in three kinds', () => {
    expect(startUpLimit({ part })).toMatchObject({ kind: 'hiccup', tripAmps: expect.closeTo(1.1, 12) as number });
    expect(startUpLimit({ part, kind: 'constant-current' })).toEqual({ kind: 'constant-current', amps: expect.closeTo(1.1, 12) as number });
    expect(startUpLimit({ part, kind: 'foldback' })).toMatchObject({ shortAmps: expect.closeTo(1.1 / 3, 12) as number });
  });

  it('wants a far larger rating for heaters where it hiccups', () => {
    expect(ratingForHeaters({ runningAmps: 0.3, limit: 'constant-current' }).least).toBeCloseTo(0.39, 12);
    expect(ratingForHeaters({ runningAmps: 0.3, limit: 'hiccup' }).comfortable).toBeCloseTo(1.2, 12);
  });
});
