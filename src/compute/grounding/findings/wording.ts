import { formatQuantity } from '../../quantity.ts';
import type { Unit } from '../../quantity.ts';

/** What is nought for a technician: less is left over from the arithmetic. */
const NOUGHT: Partial<Record<Unit, number>> = { V: 1e-3, A: 1e-7 };

/** A figure as a finding prints it: two significant digits are what such a solution is good for; three from a hundred up. */
export const show = (value: number, unit: Unit): string =>
  formatQuantity({ value: Math.abs(value) < (NOUGHT[unit] ?? 0) ? 0 : value, unit, digits: Math.abs(value) >= 100 ? 3 : 2 });

/** "a", "a and b", "a, b and c". */
export const list = (words: readonly string[]): string => {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
};

/** The same sentence with its first letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A span that a standard allows. */
export const atMost = (seconds: number): string => `up to ${show(seconds, 's')}`;

/** A time that is only an estimate, said so that nobody takes it for more. */
export const roughly = (seconds: number): string =>
  seconds < 1 ? 'at once' : `after about ${seconds < 100 ? `${Number(seconds.toPrecision(1))} s` : `${Number((seconds / 60).toPrecision(1))} min`} (estimate)`;
