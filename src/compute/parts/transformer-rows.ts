import type { CurvePoint } from './interpolate.ts';
import type { CatalogueRow } from './row.ts';

export interface ConstructionRow extends CatalogueRow {
  /** Regulation over full load as a ratio, by VA: lowest and highest of catalogues. */
  readonly regulation: { readonly lowest: readonly CurvePoint[]; readonly highest: readonly CurvePoint[] };
  /** Magnetising inrush over rated current (peak over rated peak), first cycles: what makers print. */
  readonly inrushRatio: { readonly min: number; readonly max: number };
}

/** Small mains transformers by construction. Regulation typical of catalogues; read the part’s own no-load volts. */
export const CONSTRUCTIONS: readonly ConstructionRow[] = [
  {
    id: 'laminated', name: 'Laminated, potted for boards', basis: 'typical', source: { id: 'typical-small-transformers' },
    regulation: {
      lowest: [[1.5, 0.4], [3, 0.35], [5, 0.3], [10, 0.2], [16, 0.18], [25, 0.15], [50, 0.1], [100, 0.08]],
      highest: [[1.5, 0.7], [3, 0.45], [5, 0.35], [10, 0.3], [16, 0.22], [25, 0.2], [50, 0.13], [100, 0.11]],
    },
    inrushRatio: { min: 5, max: 15 },
    note: 'Figures at 100 VA and inrush are assumed.',
  },
  {
    id: 'toroid', name: 'Toroid', basis: 'typical', source: { id: 'typical-toroids' },
    regulation: {
      lowest: [[15, 0.15], [30, 0.12], [50, 0.1], [80, 0.09]],
      highest: [[15, 0.2], [30, 0.16], [50, 0.13], [80, 0.12]],
    },
    inrushRatio: { min: 8, max: 90 },
    note: 'Inrush of 8 to 15 times is printed by one maker, 30 to 90 by another; residual flux and mains resistance decide.',
  },
];

/** Secondary volts and VA that small transformers are commonly sold in. Typical of catalogues. */
export const COMMON_SECONDARY_VOLTS: readonly number[] = [6, 7.5, 9, 12, 15, 18, 21, 24];
export const COMMON_VOLT_AMPS: readonly number[] = [1.5, 3, 5, 6, 10, 12, 16, 20, 25, 30, 50, 80];

export interface InsulationClassRow extends CatalogueRow {
  /** Winding temperature limits, °C: normal running, and under overload or short circuit. */
  readonly normalCelsius: number;
  readonly overloadCelsius: number;
}

/** Winding temperature limits by insulation class. Normal limits of A and E read in an excerpt; B, F and H typical. */
export const INSULATION_CLASSES: readonly InsulationClassRow[] = [
  { id: 'a', name: 'Class A', normalCelsius: 100, overloadCelsius: 200, basis: 'rated', source: { id: 'iec-61558-1' } },
  { id: 'e', name: 'Class E', normalCelsius: 115, overloadCelsius: 215, basis: 'rated', source: { id: 'iec-61558-1' } },
  { id: 'b', name: 'Class B', normalCelsius: 120, overloadCelsius: 225, basis: 'typical', source: { id: 'iec-61558-1', at: 'table 1' } },
  { id: 'f', name: 'Class F', normalCelsius: 140, overloadCelsius: 240, basis: 'typical', source: { id: 'iec-61558-1', at: 'table 1' } },
  { id: 'h', name: 'Class H', normalCelsius: 165, overloadCelsius: 260, basis: 'typical', source: { id: 'iec-61558-1', at: 'table 1' } },
];

/** What a transformer's marking says of a shorted secondary. Never inferred from its size. */
export const SHORT_CIRCUIT_MARKS = {
  'inherently-proof': 'Bears a short for ever with no device.',
  'conditionally-proof': 'A fuse, thermal link, cut-out or PTC inside it ends a short.',
  'not-proof': 'Needs the fuse that its maker states outside it.',
  'fail-safe': 'Fails open and harmlessly; it is then scrap.',
  unknown: 'Nobody has read its marking.',
} as const;
export type ShortCircuitMark = keyof typeof SHORT_CIRCUIT_MARKS;

/** Most that the no-load output may exceed the rated one, as a ratio, by VA, other than for inherently proof types. */
export const NO_LOAD_EXCESS: readonly { readonly toVoltAmps: number; readonly ratio: number }[] = [
  { toVoltAmps: 10, ratio: 1 }, { toVoltAmps: 25, ratio: 0.5 }, { toVoltAmps: 63, ratio: 0.2 },
  { toVoltAmps: 250, ratio: 0.15 }, { toVoltAmps: 630, ratio: 0.1 }, { toVoltAmps: Infinity, ratio: 0.05 },
];
