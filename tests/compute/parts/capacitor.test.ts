import { describe, expect, it } from 'vitest';
import {
  capacitanceSpread, capacitorLeakageAmps, capacitorLife, electrolytic, esrLimitOhms, esrOhms, nextRatedVolts, rippleLimitAmps, typicalRippleAmps,
} from '../../../src/compute/parts/capacitor.ts';

describe('equivalent series resistance', () => {
  // Milliohms by farads, from the tan δ limits of the general-purpose sheet, printed to the milliohm, some of them cut off rather than rounded.
  it.each<[number, number[]]>([
    [16, [452, 212, 121, 68, 45]],
    [25, [395, 186, 109, 62, 42]],
    [35, [339, 159, 96, 56, 40]],
  ])('of %d V parts is at most what tan δ gives', (ratedVolts, milliohms) => {
    const computed = [470e-6, 1000e-6, 2200e-6, 4700e-6, 10_000e-6].map((farads) => 1000 * esrLimitOhms({ farads, ratedVolts }));
    computed.forEach((value, at) => { expect(Math.abs(value - (milliohms[at] ?? NaN))).toBeLessThanOrEqual(0.6); });
  });

  it('is expected at half the limit when new and at twice the limit when old', () => {
    const limit = esrLimitOhms({ farads: 2200e-6, ratedVolts: 25 });
    expect(esrOhms({ farads: 2200e-6, ratedVolts: 25 })).toEqual({ min: expect.closeTo(limit / 3, 12) as number, typical: limit / 2, max: limit * 2 });
  });
});

it('reckons capacitance from low and aged to high and new', () => {
  expect(capacitanceSpread({ farads: 1000e-6 })).toEqual({ min: expect.closeTo(640e-6, 12) as number, typical: 1000e-6, max: expect.closeTo(1200e-6, 12) as number });
});

describe('ripple rating', () => {
  const row = electrolytic('general-105');

  it('stands at 120 Hz and 85 °C, falls to 100 Hz and rises in cooler air', () => {
    expect(rippleLimitAmps({ row, ratedAmps: 1, rippleHertz: 120, celsius: 85 })).toBe(1);
    expect(rippleLimitAmps({ row, ratedAmps: 1, rippleHertz: 100, celsius: 85 })).toBeCloseTo(0.92, 12);
    expect(rippleLimitAmps({ row, ratedAmps: 1, rippleHertz: 120, celsius: 55 })).toBeCloseTo(1.6, 12);
    expect(rippleLimitAmps({ row, ratedAmps: 1, rippleHertz: 120, celsius: 106 })).toBe(0);
  });

  it('never rises with temperature', () => {
    for (const id of ['general-85', 'general-105', 'long-life-105']) {
      const limits = Array.from({ length: 66 }, (_, step) => rippleLimitAmps({ row: electrolytic(id), ratedAmps: 1, rippleHertz: 100, celsius: 40 + step }));
      limits.slice(1).forEach((limit, at) => { expect(limit).toBeLessThanOrEqual(limits[at] ?? 0); });
    }
  });

  it('is expected between the lowest and highest of makers’ tables', () => {
    expect(typicalRippleAmps({ row, farads: 2200e-6 })).toEqual({ lowest: expect.closeTo(1, 12) as number, highest: expect.closeTo(1.4, 12) as number });
    const between = typicalRippleAmps({ row, farads: 3300e-6 });
    expect(between.lowest).toBeGreaterThan(1);
    expect(between.lowest).toBeLessThan(1.5);
  });
});

describe('life', () => {
  it('doubles for every 10 K below the rating', () => {
    const life = (celsius: number) => capacitorLife({ ratedHours: 2000, ratedCelsius: 105, celsius, rippleRatio: 1 }).hours;
    expect(life(105)).toBeCloseTo(2000, 6);
    expect(life(75)).toBeCloseTo(16_000, 6);
    expect(life(65) / life(75)).toBeCloseTo(2, 12);
  });

  it('falls with ripple heat and is not credited beyond fifteen years', () => {
    const light = capacitorLife({ ratedHours: 5000, ratedCelsius: 105, celsius: 40 });
    const heavy = capacitorLife({ ratedHours: 5000, ratedCelsius: 105, celsius: 40, rippleRatio: 1.5 });
    expect(heavy.hours).toBeLessThan(light.hours);
    expect(heavy.coreCelsius).toBeCloseTo(51.25, 12);
    expect(light.creditedHours).toBe(130_000);
  });
});

describe('voltage', () => {
  it('is the next rating that the highest volts fill to no more than four fifths', () => {
    expect(nextRatedVolts({ volts: 12.8 })).toBe(16);
    expect(nextRatedVolts({ volts: 12.81 })).toBe(25);
    expect(nextRatedVolts({ volts: 35, share: 1 })).toBe(35);
    expect(nextRatedVolts({ volts: 90 })).toBeUndefined();
  });
});

it('leaks 0.01 CV or 3 µA', () => {
  expect(capacitorLeakageAmps({ farads: 4700e-6, volts: 25 })).toBeCloseTo(1.175e-3, 9);
  expect(capacitorLeakageAmps({ farads: 1e-6, volts: 10 })).toBe(3e-6);
});

it('refuses absurd capacitors', () => {
  expect(() => esrLimitOhms({ farads: 0, ratedVolts: 25 })).toThrow(RangeError);
  expect(() => capacitorLife({ ratedHours: 0, ratedCelsius: 105, celsius: 40 })).toThrow(RangeError);
  expect(() => electrolytic('paper')).toThrow(RangeError);
});
