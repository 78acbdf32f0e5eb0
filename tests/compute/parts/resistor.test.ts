import { describe, expect, it } from 'vitest';
import { resistorAllowance, resistorFor, resistorRow, resistorWattsAllowed } from '../../../src/compute/parts/resistor.ts';

describe('a resistor in hot air', () => {
  it('keeps its rating to 70 °C and loses it all by 155 °C', () => {
    const row = resistorRow('film-1w');
    expect(resistorWattsAllowed({ row, airCelsius: 70 })).toBe(1);
    expect(resistorWattsAllowed({ row, airCelsius: 112.5 })).toBeCloseTo(0.5, 12);
    expect(resistorWattsAllowed({ row, airCelsius: 200 })).toBe(0);
  });

  it('of any rating loses it as its kind does', () => {
    expect(resistorAllowance({ ratedWatts: 0.6, airCelsius: 112.5 })).toBeCloseTo(0.3, 12);
    expect(resistorAllowance({ ratedWatts: 7, airCelsius: 157.5 })).toBeCloseTo(3.5, 12);
  });

  it('is chosen to run at half of that', () => {
    expect(resistorFor({ watts: 0.125, airCelsius: 55 })?.id).toBe('film-0-25w');
    expect(resistorFor({ watts: 0.126, airCelsius: 55 })?.id).toBe('film-0-5w');
    expect(resistorFor({ watts: 0.126, airCelsius: 55, share: 1 })?.id).toBe('film-0-25w');
    expect(resistorFor({ watts: 50, airCelsius: 55 })).toBeUndefined();
  });
});
