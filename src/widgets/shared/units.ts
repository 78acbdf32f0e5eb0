import type { AllowedRange } from '../../compute/errors.ts';
import { formatQuantity, parseQuantity, type Unit } from '../../compute/quantity.ts';

export type { Unit };

/** A value as it would be typed into a field: four digits, ordinary spaces. */
export const writeQuantity = (value: number, unit: Unit): string =>
  Number.isFinite(value) ? formatQuantity({ value, unit, digits: 4 }).replace(/[\u00A0\u202F]/g, ' ') : String(value);

/**
 * A solved value for a sentence or a figure: three digits unless told, zeros kept, since they were solved too. Volts stay
 * volts with at most two decimals: rails are not known closer, and `0.95 V` is compared with `12.0 V` at a glance.
 */
export function showQuantity(value: number, unit: Unit, digits = 3): string {
  if (!Number.isFinite(value)) return 'unknown';
  if (unit === 'V') {
    const decimals = Math.abs(value) >= 99.95 ? 0 : Math.abs(value) >= 9.995 ? 1 : 2;
    return `${value.toFixed(Math.min(decimals, Math.max(0, digits - 1))).replace('-', '\u2212')}\u00A0V`;
  }
  return formatQuantity({ value, unit, digits, trailingZeros: unit === '%' ? 'trim' : 'keep' });
}

/** A value that somebody chose or a part is marked with: no zeros that nobody wrote. */
export const showMarked = (value: number, unit: Unit): string =>
  Number.isFinite(value) ? formatQuantity({ value, unit, digits: 4 }) : 'unknown';

/** Figure and unit apart, for the big figure of a result. */
export function figureOf(value: number, unit: Unit, digits = 3): { readonly figure: string; readonly unit: string } {
  const [figure = '', symbol = ''] = showQuantity(value, unit, digits).split('\u00A0');
  return { figure, unit: symbol };
}

/** "12 V", or "between 1 V and 100 V", for the end of a message. */
export function describeLimits({ unit, min, max }: { readonly unit: Unit; readonly min: number; readonly max: number }): string {
  return `between ${writeQuantity(min, unit)} and ${writeQuantity(max, unit)}`;
}

/** What the module would have accepted, as a reader is told it. */
export function describeAllowed({ min, max, expected }: AllowedRange, unit: Unit = ''): string {
  if (expected !== undefined) return expected;
  const write = (value: number): string => writeQuantity(value, unit);
  if (min !== undefined && max !== undefined) return `a value between ${write(min)} and ${write(max)}`;
  if (min !== undefined) return `at least ${write(min)}`;
  return max === undefined ? 'a finite number' : `at most ${write(max)}`;
}

/** Reads what a technician wrote; a reason when it cannot be told. */
export function readQuantity(text: string, unit: Unit, assume?: string): { readonly value: number } | { readonly reason: string } {
  const read = parseQuantity({ text, unit, ...(assume === undefined ? {} : { assume }) });
  return read.ok ? { value: read.value } : { reason: `${read.reason}.` };
}
