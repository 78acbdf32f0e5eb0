/** A number as written, ready for `Number()`; or why it cannot be told. */
export type Numeral =
  | { readonly decimal: string; readonly ambiguous?: { readonly thousands: string; readonly fraction: string } }
  | { readonly unclear: string };

/** Brings the many code points for space, minus, micro and ohm to one of each, and drops what only decorates. */
export function plainText(text: string): string {
  return text
    .replace(/[\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000\t\r\n]/g, ' ')
    .replace(/[\u200B\u200E\u200F\u2060\uFEFF]/g, '')
    .replace(/[\u2212\u2013\uFE63\uFF0D]/g, '-')
    .replace(/\u03BC/g, 'µ')
    .replace(/\u2126/g, 'Ω')
    .replace(/[\u2019\u02BC]/g, "'")
    .replace(/[½¼¾]/g, (fraction) => ({ '½': '1/2', '¼': '1/4', '¾': '3/4' })[fraction] ?? fraction)
    .trim();
}

const GROUPED = /^\d{1,3}(?:[ ']\d{3})+$/;
const PLAIN = /^\d+$/;

const digitsOf = (integer: string): string | undefined =>
  integer === '' || PLAIN.test(integer) ? integer : GROUPED.test(integer) ? integer.replace(/[ ']/g, '') : undefined;

const fractionOf = (fraction: string): string | undefined =>
  PLAIN.test(fraction) || /^\d{3}(?: \d{3})* \d{1,3}$/.test(fraction) ? fraction.replaceAll(' ', '') : undefined;

const joined = (integer: string, fraction: string): Numeral | undefined => {
  const whole = digitsOf(integer);
  const part = fraction === '' && integer !== '' ? '0' : fractionOf(fraction);
  return whole === undefined || part === undefined ? undefined : { decimal: `${whole === '' ? '0' : whole}.${part}` };
};

const unreadable = (body: string): Numeral => ({ unclear: `“${body}” is not a number` });

/**
 * Reads the digits of a number, without sign, exponent or unit.
 *
 * Rules: a single dot is the decimal point. A comma is the decimal comma unless exactly three digits follow it and
 * one to three digits, not a lone 0, stand before it; that case (`4,700`) is read as thousands and marked
 * `ambiguous`, for the unit to decide. Repeated separators are thousands and must group by three. With both, the
 * last kind is the decimal mark. Spaces and apostrophes group by three.
 */
export function readDigits(body: string): Numeral {
  const dots = body.split('.').length - 1;
  const commas = body.split(',').length - 1;
  if (dots === 0 && commas === 0) {
    const whole = digitsOf(body);
    if (whole !== undefined && whole !== '') return { decimal: whole };
    return /^[\d ']+$/.test(body) ? { unclear: `“${body}” looks like two numbers; give one` } : unreadable(body);
  }
  if (dots > 0 && commas > 0) {
    const mark = body.lastIndexOf('.') > body.lastIndexOf(',') ? '.' : ',';
    const group = mark === '.' ? ',' : '.';
    const [integer = '', fraction = '', ...more] = body.split(mark);
    const grouped = new RegExp(`^\\d{1,3}(?:\\${group}\\d{3})+$`).test(integer);
    return more.length === 0 && grouped && PLAIN.test(fraction)
      ? { decimal: `${integer.replaceAll(group, '')}.${fraction}` }
      : unreadable(body);
  }
  const mark = dots > 0 ? '.' : ',';
  if (dots + commas > 1) {
    return new RegExp(`^\\d{1,3}(?:\\${mark}\\d{3})+$`).test(body) ? { decimal: body.replaceAll(mark, '') } : unreadable(body);
  }
  const [integer = '', fraction = ''] = body.split(mark);
  const decimal = joined(integer, fraction) ?? unreadable(body);
  if (mark === ',' && /^[1-9]\d{0,2}$/.test(integer) && /^\d{3}$/.test(fraction)) {
    return { decimal: integer + fraction, ambiguous: { thousands: integer + fraction, fraction: `${integer}.${fraction}` } };
  }
  return decimal;
}

/** Reads a simple fraction such as `1/4`, as resistor wattages are written. */
export function readFraction(body: string): Numeral | undefined {
  const match = /^(?:(\d{1,3}) )?(\d{1,3}) ?\/ ?(\d{1,3})$/.exec(body);
  if (match === null) return undefined;
  const [, whole = '0', over = '', under = ''] = match;
  return Number(under) === 0 ? unreadable(body) : { decimal: String(Number(whole) + Number(over) / Number(under)) };
}
