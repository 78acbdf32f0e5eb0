import { showQuantity, type Unit } from './units.ts';

/** How a series is drawn; each kind has a line of its own besides its colour. */
export type SeriesKind = 'volts' | 'needed' | 'amps' | 'other' | 'limit' | 'faint';

export interface PlotSeries {
  readonly name: string;
  readonly kind: SeriesKind;
  readonly unit: Unit;
  readonly values: readonly number[];
  /** Where along x the values stand, for a series that is not drawn at every place of the plot's own x. */
  readonly at?: readonly number[];
  /** Single events, drawn as dots and not joined. */
  readonly dots?: true;
}

/** Curves over one axis, with the words that stand below. */
export interface PlotData {
  readonly caption: string;
  readonly x: { readonly name: string; readonly unit: Unit; readonly values: readonly number[] };
  /** Both axes by ratio, for what spans decades; every value must then be above zero. */
  readonly isLogarithmic?: true;
  readonly series: readonly PlotSeries[];
  /** The one place along x that matters now: the knob of the dial. */
  readonly markAt?: number;
}

const TABLE_ROWS = 13;

const NOTHING_THERE = '–';

/** Value of a series at a place along x; undefined where it is not drawn. */
function valueAt(series: PlotSeries, x: number, index: number): number | undefined {
  if (series.at === undefined) return series.values[index] ?? Number.NaN;
  const at = series.at.indexOf(x);
  return at < 0 ? undefined : series.values[at];
}

/** The plot as a table: its columns, and about a dozen rows evenly along it; single events have rows of their own. */
export function plotTable(data: PlotData): { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const last = data.x.values.length - 1;
  const count = Math.min(TABLE_ROWS, last + 1);
  const along = Array.from({ length: count }, (_, row) => (count === 1 ? 0 : Math.round((row * last) / (count - 1)))).map((index) => ({ x: data.x.values[index] ?? Number.NaN, index }));
  const events = data.series.flatMap((series) => (series.dots === true ? (series.at ?? []) : [])).map((x) => ({ x, index: -1 }));
  const places = events.length === 0 ? along : [...along, ...events].sort((a, b) => a.x - b.x);
  return {
    head: [data.x.name, ...data.series.map((series) => series.name)],
    rows: places.map(({ x, index }) => [
      showQuantity(x, data.x.unit),
      ...data.series.map((series) => {
        const value = index < 0 && series.at === undefined ? undefined : valueAt(series, x, index);
        return value === undefined ? NOTHING_THERE : showQuantity(value, series.unit);
      }),
    ]),
  };
}
