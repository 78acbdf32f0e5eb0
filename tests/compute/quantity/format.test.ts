import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../../../src/compute/quantity.ts';
import type { Unit } from '../../../src/compute/quantity.ts';

const spaced = (text: string): string => text.replace(' ', '\u00A0');

describe('a value as a reader sees it', () => {
  it.each<[number, Unit, string]>([
    [0.3, 'A', '300 mA'], [4700, 'Ω', '4.7 kΩ'], [0.0047, 'F', '4700 µF'], [1e-7, 'F', '100 nF'], [12, 'V', '12 V'], [0, 'V', '0 V'],
    [0.83, 'V', '830 mV'], [-5, 'V', '−5 V'], [0.1, '%', '10 %'], [5e-7, 'm²', '0.5 mm²'], [55, '°C', '55 °C'], [19.46, 'K/W', '19.5 K/W'],
    [20.12, 's', '20.1 s'], [0.0155, 's', '15.5 ms'], [300, 's', '5 min'], [7.2e6, 's', '2000 h'], [0.022, 'F', '22\u202F000 µF'], [1.5, 'F', '1.5 F'],
    [65_000, 'Hz', '65 kHz'], [2.29, 'H', '2.29 H'], [1234567, 'Ω', '1.23 MΩ'],
  ])('%d %s is %s', (value, unit, text) => {
    expect(formatQuantity({ value, unit })).toBe(spaced(text));
  });

  it('has no unit and no space for a plain number', () => {
    expect(formatQuantity({ value: 1.6894, unit: '' })).toBe('1.69');
  });

  it('rounds before it picks the prefix', () => {
    expect(formatQuantity({ value: 0.9997, unit: 'A' })).toBe('1\u00A0A');
    expect(formatQuantity({ value: 999.6, unit: 'Ω' })).toBe('1\u00A0kΩ');
    expect(formatQuantity({ value: 9.9996e-7, unit: 'F' })).toBe('1\u00A0µF');
    expect(formatQuantity({ value: 0.9997, unit: 'A', digits: 4 })).toBe('999.7\u00A0mA');
    expect(formatQuantity({ value: 119.97, unit: 's' })).toBe('2\u00A0min');
  });

  it('keeps filling zeros only when asked', () => {
    expect(formatQuantity({ value: 12, unit: 'V', digits: 4, trailingZeros: 'keep' })).toBe('12.00\u00A0V');
    expect(formatQuantity({ value: 12, unit: 'V', digits: 4 })).toBe('12\u00A0V');
    expect(formatQuantity({ value: 100, unit: 'V', digits: 2 })).toBe('100\u00A0V');
  });

  it('holds a prefix for a column', () => {
    expect(formatQuantity({ value: 1.2, unit: 'A', prefix: 'm' })).toBe('1200\u00A0mA');
    expect(formatQuantity({ value: 0.0004, unit: 'A', prefix: '' })).toBe('0.0004\u00A0A');
  });

  it('writes no minus before a zero', () => {
    expect(formatQuantity({ value: -0, unit: 'V' })).toBe('0\u00A0V');
  });

  it('refuses what cannot be written', () => {
    expect(() => formatQuantity({ value: NaN, unit: 'V' })).toThrow(RangeError);
    expect(() => formatQuantity({ value: Infinity, unit: 'V' })).toThrow(RangeError);
    expect(() => formatQuantity({ value: 1, unit: 'V', digits: 0 })).toThrow(RangeError);
    expect(() => formatQuantity({ value: 1, unit: 'V', prefix: 'q' })).toThrow(RangeError);
  });

  it('shows between 1 and 999 in front of a prefix that is neither the smallest nor the largest', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-8, max: 1e5, noNaN: true }), (value) => {
        const shown = Number((formatQuantity({ value, unit: 'V' }).split('\u00A0')[0] ?? ''));
        expect(shown).toBeGreaterThanOrEqual(1);
        expect(shown).toBeLessThan(1000);
      }),
      { seed: 23 },
    );
  });
});
