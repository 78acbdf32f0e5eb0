import type { Basis, Source } from '../findings.ts';

/** What every catalogue row carries beside its figures. */
export interface CatalogueRow {
  /** Stable kebab-case key, kept in plans and addresses. */
  readonly id: string;
  /** What a reader picks it by. */
  readonly name: string;
  /** How far its figures may be trusted: `rated` from data sheets, `typical` where to be checked on the part in hand. */
  readonly basis: Basis;
  readonly source: Source;
  /** What to know before relying on it. */
  readonly note?: string;
}

/** A figure with its limits, all in the unit of the field's name. */
export interface Spread {
  readonly min: number;
  readonly typical: number;
  readonly max: number;
}
