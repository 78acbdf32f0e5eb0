import { describe, expect, it } from 'vitest';
import { bleedSeconds, bleederWatts, storedJoules } from '../../../src/compute/parts/stored-charge.ts';

describe('stored charge', () => {
  it('at 450 V is 4.8 J in 47 µF and 10.1 J in 100 µF', () => {
    expect(storedJoules({ farads: 47e-6, volts: 450 })).toBeCloseTo(4.76, 2);
    expect(storedJoules({ farads: 100e-6, volts: 450 })).toBeCloseTo(10.125, 9);
  });

  it('bleeds to 60 V in 21 s (47 µF, 220 kΩ, 0.9 W) and 20 s (100 µF, 100 kΩ, 2 W)', () => {
    expect(bleedSeconds({ farads: 47e-6, ohms: 220e3, fromVolts: 450 })).toBeCloseTo(20.8, 1);
    expect(bleedSeconds({ farads: 100e-6, ohms: 100e3, fromVolts: 450 })).toBeCloseTo(20.1, 1);
    expect(bleederWatts({ ohms: 220e3, volts: 450 })).toBeCloseTo(0.92, 2);
    expect(bleederWatts({ ohms: 100e3, volts: 450 })).toBeCloseTo(2.025, 9);
  });

  it('of 4,700 µF at 12 to 35 V is 0.3 to 2.9 J, and takes some 6 s through 240 Ω', () => {
    expect(storedJoules({ farads: 4700e-6, volts: 12 })).toBeCloseTo(0.338, 3);
    expect(storedJoules({ farads: 4700e-6, volts: 35 })).toBeCloseTo(2.88, 2);
    expect(bleedSeconds({ farads: 4700e-6, ohms: 240, fromVolts: 35, toVolts: 0.2 })).toBeGreaterThan(5);
    expect(bleedSeconds({ farads: 4700e-6, ohms: 240, fromVolts: 35, toVolts: 0.2 })).toBeLessThan(7);
  });

  it('needs no time when it is already below, and refuses a target of nothing', () => {
    expect(bleedSeconds({ farads: 1e-3, ohms: 1000, fromVolts: 50 })).toBe(0);
    expect(() => bleedSeconds({ farads: 1e-3, ohms: 1000, fromVolts: 50, toVolts: 0 })).toThrow(RangeError);
  });
});
