import type { CatalogueRow } from './row.ts';

export interface WireRow extends CatalogueRow {
  readonly squareMetres: number;
  /** At 20 °C. */
  readonly ohmsPerMetre: number;
  /** Single wire in open air, generous; or a cord's conventional rating. */
  readonly openAirAmps: number;
  /** Cautious figure: 700 circular mils per amp. */
  readonly cautiousAmps?: number;
}

const awg = (gauge: number, squareMillimetres: number, ohmsPerKilometre: number, openAirAmps: number, cautiousAmps: number): WireRow => ({
  id: `awg-${gauge}`, name: `AWG ${gauge}`, basis: 'rated', source: { id: 'wire-table-awg' }, squareMetres: squareMillimetres * 1e-6,
  ohmsPerMetre: ohmsPerKilometre / 1000, openAirAmps, cautiousAmps,
});

const metric = (squareMillimetres: number, ohmsPerKilometre: number, openAirAmps: number): WireRow => ({
  id: `metric-${String(squareMillimetres).replace('.', '-')}`, name: `${squareMillimetres} mm² stranded`, basis: 'typical', source: { id: 'iec-60228', at: 'class 5' },
  squareMetres: squareMillimetres * 1e-6, ohmsPerMetre: ohmsPerKilometre / 1000, openAirAmps,
  note: 'Largest resistance of plain class 5 strands; amps by the convention for cords.',
});

/** Hook-up wire. Resistances and amps of the gauges are of published tables; the metric rows are typical. */
export const WIRES: readonly WireRow[] = [
  awg(26, 0.128, 133.9, 2.2, 0.36), awg(24, 0.205, 84.2, 3.5, 0.58), awg(22, 0.324, 52.9, 7, 0.92), awg(20, 0.518, 33.3, 11, 1.5),
  awg(18, 0.82, 20.9, 16, 2.3), awg(16, 1.31, 13.2, 22, 3.7), awg(14, 2.08, 8.28, 32, 5.9),
  metric(0.5, 39, 3), metric(0.75, 26, 6), metric(1, 19.5, 10), metric(1.5, 13.3, 16),
];
