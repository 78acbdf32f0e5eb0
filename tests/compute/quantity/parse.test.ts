import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatQuantity, parseQuantity, UNITS } from '../../../src/compute/quantity.ts';
import type { RefusedQuantity, Unit } from '../../../src/compute/quantity.ts';

const read = (text: string, unit: Unit, assume?: string): number | RefusedQuantity['problem'] => {
  const result = parseQuantity({ text, unit, ...(assume === undefined ? {} : { assume }) });
  return result.ok ? result.value : result.problem;
};

describe('a value as a technician writes it', () => {
  it.each<[string, Unit, number]>([
    ['4k7', 'Ω', 4700], ['0R47', 'Ω', 0.47], ['R47', 'Ω', 0.47], ['4R7', 'Ω', 4.7], ['4r7', 'Ω', 4.7], ['1M5', 'Ω', 1.5e6],
    ['1K', 'Ω', 1000], ['1.5 k', 'Ω', 1500], ['4,7k', 'Ω', 4700], ['47R', 'Ω', 47], ['10 kilohms', 'Ω', 10_000],
    ['4k7 ohm', 'Ω', 4700], ['1 Mohm', 'Ω', 1e6], ['2 meg', 'Ω', 2e6], ['47 mΩ', 'Ω', 0.047], ['47 m\u2126', 'Ω', 0.047],
    ['100 Ohms', 'Ω', 100], ['2200u', 'F', 0.0022], ['4,700 µF', 'F', 0.0047], ['4 700 µF', 'F', 0.0047],
    ['4\u00A0700\u202F\u03BCF', 'F', 0.0047], ['4\u2009700 uF', 'F', 0.0047], ['2200UF', 'F', 0.0022], ['4n7', 'F', 4.7e-9],
    ['2m2', 'F', 0.0022], ['3p3', 'F', 3.3e-12], ['3p3F', 'F', 3.3e-12], ['1µ5', 'F', 1.5e-6], ['100 n', 'F', 1e-7], ['4700 MFD', 'F', 0.0047],
    ['12V', 'V', 12], ['6.3 V AC', 'V', 6.3], ['6.3VAC', 'V', 6.3], ['6,3 Vrms', 'V', 6.3], ['12 V dc', 'V', 12],
    ['5V1', 'V', 5.1], ['−5 V', 'V', -5], ['300 mA', 'A', 0.3], ['300 ma', 'A', 0.3], ['.5A', 'A', 0.5], [',5 A', 'A', 0.5],
    ['2A5', 'A', 2.5], ['1,500 mA', 'A', 1.5], ['0,470 A', 'A', 0.47], ['6 va', 'VA', 6], ['½ W', 'W', 0.5], ['1/4 W', 'W', 0.25],
    ['10 %', '%', 0.1], ['10', '%', 0.1], ['10 %', '', 0.1], ['2', '', 2], ['55C', '°C', 55], ['131 °F', '°C', 55], ['-40F', '°C', -40],
    ['0.5 mm²', 'm²', 5e-7], ['0.5mm2', 'm²', 5e-7], ['600 mm', 'm', 0.6], ['2 m', 'm', 2], ['9.5 K/W', 'K/W', 9.5], ['5 °C/W', 'K/W', 5],
    ['1.7 A2s', 'A²s', 1.7], ['2,000 h', 's', 7.2e6], ['20 s', 's', 20], ['3 min', 's', 180], ['65 khz', 'Hz', 65_000], ['1e-3', 'F', 0.001],
    ['1.5E+3', 'Ω', 1500], ["1'000 Ω", 'Ω', 1000],
  ])('%s as %s is %d', (text, unit, value) => {
    expect(read(text, unit)).toBe(value);
  });

  it('gives a bare number the unit that the field states, and says so', () => {
    expect(parseQuantity({ text: '4700', unit: 'F', assume: 'µF' })).toEqual({ ok: true, value: 0.0047, assumed: 'µF' });
    expect(parseQuantity({ text: '300', unit: 'A', assume: 'mA' })).toEqual({ ok: true, value: 0.3, assumed: 'mA' });
    expect(parseQuantity({ text: '0.3 A', unit: 'A', assume: 'mA' })).toEqual({ ok: true, value: 0.3 });
  });

  it('tells AC from DC where the text does', () => {
    expect(parseQuantity({ text: '6.3 V AC', unit: 'V' })).toMatchObject({ current: 'AC' });
    expect(parseQuantity({ text: '6.3 V AC', unit: 'V', expects: 'DC' })).toMatchObject({ ok: false, problem: 'wrong-unit' });
  });
});

describe('commas and dots', () => {
  it.each<[string, number]>([
    ['4,7', 4.7], ['4,75', 4.75], ['4,7000', 4.7], ['0,470', 0.47], ['1500,250', 1500.25], ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567], ['1,234.5', 1234.5], ['1.234,5', 1234.5], ['4.700', 4.7], ['12 000', 12_000], ['1,234,567.8', 1_234_567.8],
  ])('%s is %d', (text, value) => {
    expect(read(text, 'V')).toBe(value);
  });

  it('takes one comma before three digits as thousands only of units that are counted in thousands', () => {
    expect(read('4,700', 'F', 'µF')).toBe(0.0047);
    expect(read('4,700 Ω', 'Ω')).toBe(4700);
    expect(read('1,500', 'V')).toBe('ambiguous');
    expect(read('1,500 A', 'A')).toBe('ambiguous');
    expect(read('4,700 kΩ', 'Ω')).toBe('ambiguous');
    expect(read('12,500', '%')).toBe('ambiguous');
  });

  it.each(['1.2.3', '1,23,456', '1,234.567.8', '12,34.5', '1..2', '4 7 k', '1 2', '1 000 5', '5-10'])('%s is refused', (text) => {
    expect(read(text, 'V')).toBe('not-a-number');
  });
});

describe('what is refused, with a reason', () => {
  it.each<[string, Unit, RefusedQuantity['problem'], RegExp]>([
    ['', 'V', 'empty', /give volts, for example 12 V/],
    ['\u00A0 ', 'V', 'empty', /Nothing/],
    ['twelve', 'V', 'not-a-number', /twelve/],
    ['12 V', 'A', 'wrong-unit', /in volts; this asks for amps/],
    ['6 W', 'VA', 'wrong-unit', /in watts; this asks for volt-amps/],
    ['10 %', 'V', 'wrong-unit', /percent/],
    ['300 MA', 'A', 'ambiguous', /write mA/],
    ['5 MV', 'V', 'ambiguous', /write mV/],
    ['47 m', 'Ω', 'ambiguous', /mΩ or MΩ/],
    ['4m7', 'Ω', 'ambiguous', /mΩ or MΩ/],
    ['10 mHz', 'Hz', 'ambiguous', /MHz/],
    ['5m', 's', 'ambiguous', /ms or min/],
    ['4700 mf', 'F', 'ambiguous', /µF/],
    ['4700 MF', 'F', 'ambiguous', /µF/],
    ['4E7', 'Ω', 'ambiguous', /4R7/],
    ['8.9 Vpk', 'V', 'wrong-unit', /peak/],
    ['4k7k', 'Ω', 'not-a-number', /twice/],
    ['1e999', 'V', 'out-of-range', /beyond/],
    ['12 parsecs', 'V', 'wrong-unit', /parsecs/],
    ['0x10', 'V', 'not-a-number', /0x10/],
    ['1/0 W', 'W', 'not-a-number', /1\/0/],
  ])('“%s” as %s: %s', (text, unit, problem, reason) => {
    const result = parseQuantity({ text, unit });
    expect(result).toMatchObject({ ok: false, problem });
    expect(result.ok ? '' : result.reason).toMatch(reason);
  });

  it('names the allowed range', () => {
    const limits = { unit: 'F', assume: 'µF', above: 0, max: 0.1 } as const;
    expect(parseQuantity({ text: '0', ...limits })).toMatchObject({ reason: '0\u00A0F is out of range: give more than 0\u00A0F and at most 100\u202F000\u00A0µF' });
    expect(parseQuantity({ text: '-5', ...limits })).toMatchObject({ problem: 'out-of-range' });
    expect(parseQuantity({ text: '100000', ...limits })).toMatchObject({ ok: true, value: 0.1 });
    expect(parseQuantity({ text: '100001', ...limits })).toMatchObject({ problem: 'out-of-range' });
    expect(parseQuantity({ text: '-1', unit: 'A', min: 0 })).toMatchObject({ reason: '−1\u00A0A is out of range: give at least 0\u00A0A' });
  });

  it('throws only for a field that states no unit of its own kind', () => {
    expect(() => parseQuantity({ text: '1', unit: 'A', assume: 'V' })).toThrow(RangeError);
  });
});

const units = Object.keys(UNITS) as Unit[];

describe('properties', () => {
  it('reads back what is written, for every unit and any size', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units),
        fc.double({ min: 1, max: 10, maxExcluded: true, noNaN: true }),
        fc.integer({ min: -12, max: 9 }),
        fc.integer({ min: 2, max: 15 }),
        fc.boolean(),
        fc.constantFrom('keep', 'trim'),
        (unit, mantissa, power, digits, negative, trailingZeros) => {
          const value = Number(`${negative ? -mantissa : mantissa}e${power}`);
          const text = formatQuantity({ value, unit, digits, trailingZeros });
          const result = parseQuantity({ text, unit });
          expect(result.ok, text).toBe(true);
          // Half a unit in the last digit, once; twice for a time, which is rounded again in minutes or hours.
          const roundings = unit === 's' ? 2 : 1;
          if (result.ok) expect(Math.abs(result.value - value)).toBeLessThanOrEqual(Math.abs(value) * (roundings * 0.5 * 10 ** (1 - digits) + 1e-15));
        },
      ),
      { seed: 20, numRuns: 2000 },
    );
  });

  it('never throws and never gives a value that is not finite', () => {
    const alphabet = [...'0123456789.,- +eEkKmMuµΩRVAFHWhz%/\'\u00A0\u2009²°'];
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), fc.string({ unit: fc.constantFrom(...alphabet), maxLength: 12 })), fc.constantFrom(...units), (text, unit) => {
        const result = parseQuantity({ text, unit });
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
        else expect(result.reason.length).toBeGreaterThan(10);
      }),
      { seed: 21, numRuns: 5000 },
    );
  });

  it('reads a letter code as the same value written with its prefix behind', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 99 }), fc.constantFrom('k', 'M', 'G', 'R'), (whole, fraction, letter) => {
        expect(read(`${whole}${letter}${fraction}`, 'Ω')).toBe(read(`${whole}.${fraction} ${letter}`, 'Ω'));
      }),
      { seed: 22 },
    );
  });
});
