import { describe, expect, it } from 'vitest';
import { INSULATORS, heatsinkNeeded, insulator, junctionCelsius, wattsAllowed } from '../../../src/compute/parts/heatsink.ts';

describe('the thermal chain', () => {
  it('lets a TO-220 in free air at 50 °C give off 1.15 W at 65 K/W and 1.5 W at 50 K/W to 125 °C', () => {
    expect(wattsAllowed({ airCelsius: 50, path: { junctionToAir: 65 } })).toBeCloseTo(1.154, 3);
    expect(wattsAllowed({ airCelsius: 50, path: { junctionToAir: 50 } })).toBeCloseTo(1.5, 12);
    expect(wattsAllowed({ airCelsius: 130, path: { junctionToAir: 50 } })).toBe(0);
  });

  it.each([[2, 32], [3, 19.5], [5, 9.5]])('asks for the printed heatsink at %d W: %d K/W', (watts, kelvinPerWatt) => {
    expect(heatsinkNeeded({ watts, airCelsius: 50, limitCelsius: 125, junctionToCase: 5, insulator: insulator('bare-compound').kelvinPerWatt })).toBeCloseTo(kelvinPerWatt, 9);
  });

  it('is consistent: the heatsink asked for puts the junction exactly at the limit', () => {
    const sinkToAir = heatsinkNeeded({ watts: 4, airCelsius: 60, limitCelsius: 110, junctionToCase: 5, insulator: 1.5 });
    expect(junctionCelsius({ watts: 4, airCelsius: 60, path: { junctionToCase: 5, insulator: 1.5, sinkToAir } })).toBeCloseTo(110, 9);
  });

  it('can find that no heatsink is enough', () => {
    expect(heatsinkNeeded({ watts: 15, airCelsius: 60, junctionToCase: 5, insulator: 1.5 })).toBeLessThan(0);
  });

  it('knows which mountings part the tab from the metal', () => {
    expect(INSULATORS.filter((row) => row.insulates).every((row) => row.kelvinPerWatt >= 1)).toBe(true);
    expect(() => wattsAllowed({ airCelsius: 20, path: { junctionToAir: 0 } })).toThrow(RangeError);
    expect(() => junctionCelsius({ watts: -1, airCelsius: 20, path: { junctionToAir: 50 } })).toThrow(RangeError);
  });
});
