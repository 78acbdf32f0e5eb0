import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { diodePart } from '../../../src/compute/parts/diode.ts';
import { linearRegulator } from '../../../src/compute/parts/regulator-linear.ts';
import { chainDiode, chainReservoir, linearStage } from '../../../src/compute/supplies/chain-parts.ts';
import { neededInputVolts } from '../../../src/compute/supplies/regulator-stage.ts';

describe('catalogue parts in the chain', () => {
  it('take the mean rating of a diode with the capacitor-load derating, and the named reverse rating', () => {
    const diode = chainDiode(diodePart('1n400x'), '1N4002');
    expect(diode.ratedMeanAmps).toBeCloseTo(0.8, 12);
    expect(diode.ratedReverseVolts).toBe(100);
    expect(chainDiode(diodePart('1n5820-22')).ratedReverseVolts).toBe(40);
    expect(() => chainDiode(diodePart('1n400x'), '1N5404')).toThrow(InputError);
  });

  it('plan a 5 V fixed regulator with 7.75 V at the valley: 5 V and 5 %, and 2.5 V of dropout', () => {
    expect(neededInputVolts(linearStage(linearRegulator('7805')), 0.25)).toBeCloseTo(7.75, 9);
  });

  it('widen the tolerance of an adjustable output by its resistors', () => {
    const stage = linearStage(linearRegulator('317'), 12);
    expect(stage.outputVolts).toBe(12);
    expect(stage.outputToleranceRatio).toBeGreaterThan(0.055);
    expect(stage.outputToleranceRatio).toBeLessThan(0.062);
    expect(() => linearStage(linearRegulator('317'))).toThrow(InputError);
    expect(() => linearStage(linearRegulator('7805'), 6)).toThrow(InputError);
  });

  it('rate a reservoir for its ripple frequency: less at 100 Hz than at 120 Hz, less again half-wave', () => {
    const rated = (topology: 'bridge' | 'half-wave', hertz: number): number =>
      chainReservoir({ farads: 2200e-6, ratedVolts: 25, ratedRippleAmps: 1, topology, hertz, airCelsius: 85 }).ratedRippleAmps ?? 0;
    expect(rated('bridge', 60)).toBeCloseTo(1, 9);
    expect(rated('bridge', 50)).toBeCloseTo(0.92, 9);
    expect(rated('half-wave', 50)).toBeLessThan(rated('bridge', 50));
  });

  it('say that a ripple rating is typical when nobody read one', () => {
    const options = { farads: 2200e-6, ratedVolts: 25, topology: 'bridge', hertz: 50, airCelsius: 55 } as const;
    expect(chainReservoir(options).basis).toBe('typical');
    expect(chainReservoir({ ...options, ratedRippleAmps: 1.2 }).basis).toBe('rated');
  });
});
