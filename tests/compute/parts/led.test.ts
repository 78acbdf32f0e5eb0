import { describe, expect, it } from 'vitest';
import { LEDS, ledAmps, ledResistor, ledResistorOnAc, ledRow } from '../../../src/compute/parts/led.ts';

describe('an indicator on DC', () => {
  it('takes 1,160 Ω at 7.5 V and 5 mA with a drop of 1.7 V', () => {
    expect(ledResistor({ railVolts: 7.5, forwardVolts: 1.7, amps: 0.005 })).toEqual({ ohms: expect.closeTo(1160, 9) as number, watts: expect.closeTo(0.029, 12) as number });
  });

  it('gives back its current from the resistor, and none below its drop', () => {
    const { ohms } = ledResistor({ railVolts: 12, forwardVolts: 2, amps: 0.01, count: 3 });
    expect(ledAmps({ railVolts: 12, forwardVolts: 2, ohms, count: 3 })).toBeCloseTo(0.01, 12);
    expect(ledAmps({ railVolts: 5, forwardVolts: 2, ohms, count: 3 })).toBe(0);
  });

  it('says that a rail below the string’s drop will not do', () => {
    expect(() => ledResistor({ railVolts: 5, forwardVolts: 3.1, amps: 0.01, count: 2 })).toThrow(/6.2 V/);
  });
});

describe('an indicator on AC', () => {
  const options = { rmsVolts: 6.3, forwardVolts: 1.8, amps: 0.005, antiparallel: true };

  it('has the mean and the heat of its half-cycles', () => {
    const found = ledResistorOnAc(options);
    const steps = 100_000;
    let [mean, watts, lit, peak] = [0, 0, 0, 0];
    for (let step = 0; step < steps; step += 1) {
      const volts = 6.3 * Math.SQRT2 * Math.sin((2 * Math.PI * (step + 0.5)) / steps);
      const amps = volts > 1.8 ? (volts - 1.8) / found.ohms : volts < -0.7 ? (volts + 0.7) / found.ohms : 0;
      mean += Math.max(0, amps) / steps;
      watts += (amps * amps * found.ohms) / steps;
      lit += amps > 0 ? 1 / steps : 0;
      peak = Math.max(peak, amps);
    }
    expect(mean).toBeCloseTo(0.005, 8);
    expect(found.watts).toBeCloseTo(watts, 8);
    expect(found.litShare).toBeCloseTo(lit, 4);
    expect(found.peakAmps).toBeCloseTo(peak, 8);
  });

  it('needs about half the DC resistor, is lit less than half the cycle, and needs a diode across it', () => {
    const found = ledResistorOnAc(options);
    const { ohms } = ledResistor({ railVolts: 6.3 * 1.19, forwardVolts: 1.8, amps: 0.005 });
    expect(found.ohms / ohms).toBeGreaterThan(0.3);
    expect(found.ohms / ohms).toBeLessThan(0.5);
    expect(found.litShare).toBeLessThan(0.5);
    expect(ledResistorOnAc({ ...options, antiparallel: false }).reverseVolts).toBeCloseTo(8.91, 2);
    expect(ledRow('red').reverseMaxVolts).toBe(5);
  });
});

it('rows run from least to most drop', () => {
  for (const { forwardVolts } of LEDS) expect(forwardVolts.min < forwardVolts.typical && forwardVolts.typical < forwardVolts.max).toBe(true);
});
