import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { capacitiveVolts, edgePeakVolts, heaterLeakageVolts, magneticVolts } from '../../../src/compute/noise/stray-coupling.ts';

describe('strays, against the table of hum figures', () => {
  it('1 pF from 3.15 V at 50 Hz: 1 mV into 1 MΩ, 0.07 mV into 68 kΩ', () => {
    const at = (ohms: number): number => 1000 * capacitiveVolts({ farads: 1e-12, volts: 3.15, hertz: 50, ohms });
    expect(at(1e6)).toBeCloseTo(0.99, 2);
    expect(at(68e3)).toBeCloseTo(0.067, 3);
    // Never more than the source itself.
    expect(capacitiveVolts({ farads: 1e-6, volts: 3.15, hertz: 1e6, ohms: 1e8 })).toBeCloseTo(3.15, 3);
  });

  it('3 A at 50 Hz beside a loop of 10 by 2 cm: 13 µV from one wire, 0.7 µV from a pair', () => {
    const loop = { amps: 3, hertz: 50, metres: 0.1, widthMetres: 0.02, distanceMetres: 0.02 };
    expect(1e6 * magneticVolts(loop)).toBeCloseTo(13.07, 1);
    expect(1e6 * magneticVolts({ ...loop, returnSpacingMetres: 0.0015 })).toBeCloseTo(0.67, 1);
    expect(magneticVolts(loop) / magneticVolts({ ...loop, returnSpacingMetres: 0.0015 })).toBeCloseTo(20, -0.5);
  });

  it('10 µA of heater leakage into 1.5 kΩ: 15 mV, and with 22 µF about what 145 Ω would have', () => {
    const at = (bypassFarads?: number): number => 1000 * heaterLeakageVolts({ leakageAmps: 10e-6, cathodeOhms: 1500, hertz: 50, ...(bypassFarads === undefined ? {} : { bypassFarads }) });
    expect(at()).toBeCloseTo(15, 9);
    expect(at(22e-6)).toBeCloseTo(1.44, 2);
  });

  it('a coil’s edge: the capacitive divider when sudden, R·C·dV/dt when slow', () => {
    const edge = { farads: 1.5e-12, stepVolts: 12, gridOhms: 1e6, gridFarads: 100e-12 };
    expect(edgePeakVolts({ ...edge, riseSeconds: 1e-9 })).toBeCloseTo((12 * 1.5) / 101.5, 4);
    expect(edgePeakVolts({ ...edge, riseSeconds: 0.01 })).toBeCloseTo((1e6 * 1.5e-12 * 12) / 0.01, 6);
    const peaks = [1e-6, 1e-5, 1e-4, 1e-3].map((riseSeconds) => edgePeakVolts({ ...edge, riseSeconds }));
    expect(peaks).toEqual([...peaks].sort((a, b) => b - a));
  });

  it('refuse what cannot be', () => {
    expect(() => capacitiveVolts({ farads: -1, volts: 1, hertz: 50, ohms: 1e6 })).toThrow(InputError);
    expect(() => magneticVolts({ amps: 1, hertz: 50, metres: 0, widthMetres: 1, distanceMetres: 1 })).toThrow(InputError);
    expect(() => edgePeakVolts({ farads: 1e-12, stepVolts: 12, riseSeconds: 0, gridOhms: 1e6 })).toThrow(InputError);
  });
});
