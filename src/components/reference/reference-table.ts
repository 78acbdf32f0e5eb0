import type { Basis } from '../../compute/findings.ts';

/** One row of a table that technicians look up: its cells in the order of the columns, and what they stand on. */
export interface ReferenceRow {
  readonly cells: readonly string[];
  readonly sourceId: string;
  readonly basis: Basis;
}

/** A table made from the module's own catalogue, so that it cannot differ from what the calculators use. */
export interface ReferenceTable {
  readonly id: string;
  readonly title: string;
  /** What to know before relying on it. */
  readonly note: string;
  readonly columns: readonly string[];
  readonly rows: readonly ReferenceRow[];
}
