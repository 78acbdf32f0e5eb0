import { InputError, requireNumber } from '../errors.ts';

/** Preferred-number series of IEC 60063. */
export type PreferredSeries = 'E3' | 'E6' | 'E12' | 'E24' | 'E48' | 'E96' | 'E192';

// The standard's E24 values are not all the rounded geometric series (it has 27, 30, 33 … where rounding gives 26, 29,
// 32 …), so they are a table, and E3, E6 and E12 are taken from it.
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

const geometric = (count: number): number[] =>
  Array.from({ length: count }, (_, step) => Math.round(100 * 10 ** (step / count)));

// The one value of E192 that the standard does not round as the series would: 920 for 919.
const E192 = geometric(192).map((value) => (value === 919 ? 920 : value));

const DECADE: Readonly<Record<PreferredSeries, { readonly values: readonly number[]; readonly digits: number }>> = {
  E3: { values: E24.filter((_, step) => step % 8 === 0), digits: 1 },
  E6: { values: E24.filter((_, step) => step % 4 === 0), digits: 1 },
  E12: { values: E24.filter((_, step) => step % 2 === 0), digits: 1 },
  E24: { values: E24, digits: 1 },
  E48: { values: geometric(48), digits: 2 },
  E96: { values: geometric(96), digits: 2 },
  E192: { values: E192, digits: 2 },
};

/** The values of one decade, from 1 to below 10, as IEC 60063 prints them. Throws `InputError` for an unknown series. */
export function preferredValues(series: PreferredSeries): readonly number[] {
  const decade = DECADE[series];
  // Callers in plain JavaScript can ask for anything.
  if ((decade as typeof decade | undefined) === undefined) {
    throw new InputError('series', series, { expected: Object.keys(DECADE).join(', ') });
  }
  return decade.values.map((value) => Number(`${value}e-${decade.digits}`));
}

/** Preferred values around `value`, ascending, three decades of them. */
function around(value: number, series: PreferredSeries): readonly number[] {
  const { values, digits } = DECADE[series];
  const decade = Math.floor(Math.log10(value));
  return [decade - 1, decade, decade + 1].flatMap((power) => values.map((each) => Number(`${each}e${power - digits}`)));
}

/** What preferred-value choices take: a positive finite SI value between 1e-15 and 1e15, and the series. */
export interface PreferredOptions {
  readonly value: number;
  readonly series: PreferredSeries;
}

const SAME = 1e-9;

const checked = ({ value, series }: PreferredOptions): readonly number[] => {
  preferredValues(series);
  return around(requireNumber('value', value, { min: 1e-15, max: 1e15 }), series);
};

/** The preferred value nearest in ratio (IEC 60063); of two equally near the larger. Throws `InputError` as documented. */
export function nearestPreferred(options: PreferredOptions): number {
  const distance = (candidate: number): number => Math.abs(Math.log(candidate / options.value));
  return checked(options).reduce((best, candidate) => (distance(candidate) <= distance(best) + 1e-12 ? candidate : best));
}

/** The smallest preferred value not below `value` (a value that is itself preferred stays). */
export function nextPreferredUp(options: PreferredOptions): number {
  const found = checked(options).find((candidate) => candidate >= options.value * (1 - SAME));
  return found ?? options.value;
}

/** The largest preferred value not above `value` (a value that is itself preferred stays). */
export function nextPreferredDown(options: PreferredOptions): number {
  const found = checked(options).findLast((candidate) => candidate <= options.value * (1 + SAME));
  return found ?? options.value;
}
