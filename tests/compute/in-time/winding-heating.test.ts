import { describe, expect, it } from 'vitest';
import { windingHeat, windingKelvinPerSecond } from '../../../src/compute/in-time/winding-heating.ts';

describe('a winding’s heat', () => {
  const heat = windingHeat({ ratedAmps: 1 });
  it('rests at its rated rise at its rated current, and starts at J²ρ/(c·d)', () => {
    expect(windingKelvinPerSecond({ heat, celsius: 40 + 45, airCelsius: 40, rmsAmps: 1 })).toBeCloseTo(0, 9);
    const start = windingKelvinPerSecond({ heat, celsius: 40, airCelsius: 40, rmsAmps: 5 });
    // 15 A/mm² in copper at about 70 °C: 1.3 K/s.
    expect(start).toBeGreaterThan(1);
    expect(start).toBeLessThan(1.6);
  });
});
