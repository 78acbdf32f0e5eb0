import { InputError, requireNumber } from '../errors.ts';
import type { Unit } from './units.ts';

export interface FormatOptions {
  /** SI value; a ratio for `%`. */
  readonly value: number;
  readonly unit: Unit;
  /** Significant digits, 1 to 15. Default 3. */
  readonly digits?: number;
  /** Whether zeros behind the decimal point that only fill up the digits stay. Default: trimmed. */
  readonly trailingZeros?: 'keep' | 'trim';
  /** Holds one prefix for a column of figures: '' for none. Default: the prefix that suits the value. */
  readonly prefix?: string;
}

const EXPONENTS: Readonly<Record<string, number>> = { p: -12, n: -9, µ: -6, m: -3, '': 0, k: 3, M: 6, G: 9 };

/** Prefixes in use per unit, smallest first. Farads stop at µ below one farad: parts are sold as 4700 µF, not 4.7 mF. */
const IN_USE: Partial<Record<Unit, readonly string[]>> = {
  V: ['n', 'µ', 'm', '', 'k'],
  A: ['p', 'n', 'µ', 'm', '', 'k'],
  Ω: ['µ', 'm', '', 'k', 'M', 'G'],
  F: ['p', 'n', 'µ', ''],
  H: ['n', 'µ', 'm', ''],
  Hz: ['', 'k', 'M', 'G'],
  W: ['n', 'µ', 'm', '', 'k'],
  VA: ['m', '', 'k'],
  J: ['µ', 'm', '', 'k'],
  m: ['µ', 'm', '', 'k'],
};

interface Scale {
  readonly symbol: string;
  readonly factor: number;
  readonly exponent: number;
}

function scaleFor({ unit, prefix }: FormatOptions, rounded: number): Scale {
  const size = Math.abs(rounded);
  if (unit === '%') return { symbol: '%', factor: 1, exponent: -2 };
  if (unit === 'm²') return { symbol: 'mm²', factor: 1, exponent: -6 };
  if (unit === 's' && prefix === undefined) {
    if (size >= 7200) return { symbol: 'h', factor: 3600, exponent: 0 };
    if (size >= 120) return { symbol: 'min', factor: 60, exponent: 0 };
  }
  const usable = prefix === undefined ? (unit === 's' ? ['n', 'µ', 'm', ''] : (IN_USE[unit] ?? [''])) : [prefix];
  // Zero belongs to the plain unit. Anything else to the largest prefix it reaches, or the smallest in use.
  const fitting = size === 0 ? undefined : usable.filter((letter) => size >= Number(`1e${EXPONENTS[letter] ?? 0}`)).at(-1);
  const chosen = prefix ?? (size === 0 ? '' : (fitting ?? usable[0] ?? ''));
  return { symbol: chosen + unit, factor: 1, exponent: EXPONENTS[chosen] ?? 0 };
}

/** Digits with the whole part grouped from 10 000 on, by a narrow no-break space. */
function grouped(text: string): string {
  const [whole = '', fraction] = text.split('.');
  const spaced = whole.length > 4 ? whole.replace(/\B(?=(?:\d{3})+$)/g, '\u202F') : whole;
  return fraction === undefined ? spaced : `${spaced}.${fraction}`;
}

/** Plain decimal text of a positive number to so many significant digits, never with an exponent. */
function decimalText(value: number, digits: number, keep: boolean): string {
  const rounded = Number(value.toPrecision(digits));
  const places = rounded === 0 ? digits - 1 : digits - 1 - Math.floor(Math.log10(rounded) + 1e-12);
  const text = rounded.toFixed(Math.min(100, Math.max(0, places)));
  return keep || !text.includes('.') ? text : text.replace(/\.?0+$/, '');
}

/**
 * Writes a value for a reader: engineering notation, significant digits, true minus sign, no-break space before the
 * unit. Rounded before the prefix is chosen, so 999.7 mA to three digits is `1 A`. Times from two minutes on are in
 * minutes, from two hours on in hours; capacitances below a farad in µF, nF or pF; sections in mm².
 * `parseQuantity` reads back whatever this writes. Throws `InputError` for a value that is not finite, digits outside
 * 1 to 15 and an unknown prefix.
 */
export function formatQuantity(options: FormatOptions): string {
  const { digits = 3, trailingZeros = 'trim', prefix } = options;
  requireNumber('value', options.value);
  requireNumber('digits', digits, { min: 1, max: 15 });
  if (prefix !== undefined && EXPONENTS[prefix] === undefined) {
    throw new InputError('prefix', prefix, { expected: 'one of p n µ m k M G, or an empty text' });
  }
  const rounded = Number(options.value.toPrecision(digits));
  const { symbol, factor, exponent } = scaleFor(options, rounded);
  // Shifted as text: a product with 1e6 would put the binary error of the factor into the last digit.
  const [mantissa = '0', power = '0'] = Math.abs(rounded / factor).toExponential().split('e');
  const shifted = Number(`${mantissa}e${Number(power) - exponent}`);
  const text = grouped(decimalText(shifted, digits, trailingZeros === 'keep'));
  const minus = rounded < 0 && /[1-9]/.test(text) ? '\u2212' : '';
  return symbol === '' ? `${minus}${text}` : `${minus}${text}\u00A0${symbol}`;
}
