import { describe, expect, it } from 'vitest';
import { windingEndurance } from '../../../src/compute/in-time/winding-endurance.ts';
import { windingHeat } from '../../../src/compute/in-time/winding-heating.ts';

const heat = windingHeat({ ratedAmps: 1 });
const at = (rmsAmps: number, limitCelsius = 200) => windingEndurance({ heat, rmsAmps, airCelsius: 55, startCelsius: 100, limitCelsius });

describe('how long a winding bears a current', () => {
  it('bears its rating for ever, and settles at its rated rise', () => {
    expect(at(1)).toBeUndefined();
    expect(windingEndurance({ heat, rmsAmps: 1, airCelsius: 55, limitCelsius: 101 })).toBeUndefined();
  });

  it('goes about with the square of a large current: ten times as much, a hundredth of the time', () => {
    const ten = at(10) ?? NaN;
    const hundred = at(100) ?? NaN;
    expect(ten / hundred).toBeGreaterThan(95);
    expect(ten / hundred).toBeLessThan(102);
  });

  it('agrees with heat stored in copper alone: (1/α)·ln of the resistance ratio over the rate', () => {
    // Without losses dT/dt = k·(1 + α(T − T0)), so t = ln(R2/R1)/(α·k); copper 0.00393 per kelvin at 20 °C.
    const perSecond = (heat.ratedKelvin / heat.timeConstantSeconds) * 100 ** 2;
    const resistance = (celsius: number): number => (234.5 + celsius) / (234.5 + 100);
    const seconds = ((234.5 + 100) * Math.log(resistance(200))) / perSecond;
    expect(at(100)).toBeCloseTo(seconds, 3);
  });

  it('is over at once where it is already there, and refuses nonsense', () => {
    expect(at(5, 90)).toBe(0);
    expect(() => at(-1)).toThrow(RangeError);
    expect(() => windingEndurance({ heat, rmsAmps: 1, airCelsius: Number.NaN, limitCelsius: 100 })).toThrow(RangeError);
  });
});
