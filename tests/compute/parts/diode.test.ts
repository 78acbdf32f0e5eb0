import { describe, expect, it } from 'vitest';
import { DIODES, diodeForwardVolts, diodeLeakageAmps, diodePart, diodeTypeFor, diodeWatts } from '../../../src/compute/parts/diode.ts';

describe('forward drop', () => {
  // The printed figures of the fits, in millivolts; the parameters are printed to three digits, which moves the last one.
  it.each<[string, 'typical' | 'upperLimit', [number, number][]]>([
    ['1n400x', 'typical', [[0.1, 0.769], [0.5, 0.856], [1, 0.905], [3, 1.026], [10, 1.329]]],
    ['1n540x', 'typical', [[0.1, 0.679], [0.5, 0.764], [1, 0.803], [3, 0.877], [10, 1.001]]],
    ['bridge-4a', 'typical', [[0.1, 0.699], [0.5, 0.79], [1, 0.835], [3, 0.925], [10, 1.101]]],
    ['1n5817-19', 'typical', [[0.1, 0.288], [0.5, 0.363], [1, 0.423], [3, 0.619]]],
    ['1n5817-19', 'upperLimit', [[0.1, 0.346], [0.5, 0.49], [1, 0.592], [3, 0.902]]],
    ['1n5820-22', 'typical', [[0.1, 0.241], [0.5, 0.299], [1, 0.337], [3, 0.443]]],
    ['1n5820-22', 'upperLimit', [[0.5, 0.336], [1, 0.384], [3, 0.533], [9.4, 0.948]]],
  ])('of %s, %s, as fitted', (id, set, points) => {
    const model = diodePart(id)[set];
    expect(model).toBeDefined();
    if (model === undefined) return;
    for (const [amps, volts] of points) expect(Math.abs(diodeForwardVolts({ model, amps }) - volts)).toBeLessThanOrEqual(0.001);
  });

  it('of the 3 A Schottky is 0.72 V at 9.4 A, printed to two places', () => {
    expect(diodeForwardVolts({ model: diodePart('1n5820-22').typical, amps: 9.4 })).toBeCloseTo(0.72, 2);
  });

  it('is nothing at no current, and higher for the worst part than the typical one where both were fitted', () => {
    for (const row of DIODES) {
      expect(diodeForwardVolts({ model: row.typical, amps: 0 })).toBe(0);
      if (row.upperLimit !== undefined) {
        for (const amps of [0.5, 1, 3]) expect(diodeForwardVolts({ model: row.upperLimit, amps })).toBeGreaterThan(diodeForwardVolts({ model: row.typical, amps }));
      }
    }
  });
});

describe('heat in a diode', () => {
  const model = diodePart('1n400x').typical;

  it('is exact for steady current', () => {
    expect(diodeWatts({ model, meanAmps: 0.5, rmsAmps: 0.5 })).toBeCloseTo(0.5 * diodeForwardVolts({ model, amps: 0.5 }), 12);
  });

  it('bounds the average over half-sine pulses closely from above', () => {
    const peak = 2;
    const width = 0.2;
    const steps = 20_000;
    let [power, mean, square] = [0, 0, 0];
    for (let step = 0; step < steps; step += 1) {
      const amps = peak * Math.sin((Math.PI * (step + 0.5)) / steps);
      power += (width * amps * diodeForwardVolts({ model, amps })) / steps;
      mean += (width * amps) / steps;
      square += (width * amps * amps) / steps;
    }
    const bound = diodeWatts({ model, meanAmps: mean, rmsAmps: Math.sqrt(square) });
    expect(bound).toBeGreaterThan(power);
    expect(bound / power).toBeLessThan(1.02);
  });

  it('refuses an RMS current below the mean', () => {
    expect(() => diodeWatts({ model, meanAmps: 1, rmsAmps: 0.5 })).toThrow(RangeError);
    expect(diodeWatts({ model, meanAmps: 0, rmsAmps: 0 })).toBe(0);
  });
});

describe('ratings', () => {
  it('doubles the leakage every 10 K and never goes below the cold limit', () => {
    const part = diodePart('1n5820-22');
    expect(diodeLeakageAmps({ part, celsius: 110 })).toBeCloseTo(2 * diodeLeakageAmps({ part, celsius: 100 }), 12);
    expect(diodeLeakageAmps({ part, celsius: 25 })).toBe(0.002);
  });

  it('picks the type that bears twice the solved reverse voltage', () => {
    expect(diodeTypeFor({ part: diodePart('1n400x'), reverseVolts: 25 })?.name).toBe('1N4001');
    expect(diodeTypeFor({ part: diodePart('1n400x'), reverseVolts: 25.1 })?.name).toBe('1N4002');
    expect(diodeTypeFor({ part: diodePart('1n5820-22'), reverseVolts: 32 })).toBeUndefined();
    expect(diodeTypeFor({ part: diodePart('1n5820-22'), reverseVolts: 32, factor: 1.25 })?.name).toBe('1N5822');
  });

  it('names the rows it knows when asked for another', () => {
    expect(() => diodePart('1n914')).toThrow(/1n400x/);
  });
});
