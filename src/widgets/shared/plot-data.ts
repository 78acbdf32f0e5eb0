import { showQuantity, type Unit } from './units.ts';

/** How a series is drawn; each kind has a line of its own besides its colour. */
export type SeriesKind = 'volts' | 'needed' | 'amps' | 'other';

export interface PlotSeries {
  readonly name: string;
  readonly kind: SeriesKind;
  readonly unit: Unit;
  readonly values: readonly number[];
}

/** Curves over one axis, with the words that stand below. */
export interface PlotData {
  readonly caption: string;
  readonly x: { readonly name: string; readonly unit: Unit; readonly values: readonly number[] };
  readonly series: readonly PlotSeries[];
  /** The one place along x that matters now: the knob of the dial. */
  readonly markAt?: number;
}

const TABLE_ROWS = 13;

/** The plot as a table: its columns, and about a dozen rows evenly along it. */
export function plotTable(data: PlotData): { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const last = data.x.values.length - 1;
  const count = Math.min(TABLE_ROWS, last + 1);
  const at = Array.from({ length: count }, (_, row) => (count === 1 ? 0 : Math.round((row * last) / (count - 1))));
  return {
    head: [data.x.name, ...data.series.map((series) => series.name)],
    rows: at.map((index) => [
      showQuantity(data.x.values[index] ?? Number.NaN, data.x.unit),
      ...data.series.map((series) => showQuantity(series.values[index] ?? Number.NaN, series.unit)),
    ]),
  };
}
