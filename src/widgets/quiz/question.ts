import type { HazardHarm } from '../shared/hazard-box.tsx';

/** What choosing an option would do to a person, a building or an amp; noise is the mildest harm. */
export interface Unsafe {
  readonly harm: HazardHarm | 'noise';
  /** What would have happened, as shown to whoever chooses it. */
  readonly consequence: string;
}

export interface Option {
  readonly text: string;
  /** Why it is right or wrong; every option has one. */
  readonly reason: string;
  readonly correct?: boolean | undefined;
  readonly unsafe?: Unsafe | undefined;
}

interface Asked {
  readonly id: string;
  /** Aims of the lesson that it tests, by id. */
  readonly aims: readonly string[];
  readonly ask: string;
}

/** One option is right. */
export interface OneQuestion extends Asked {
  readonly kind: 'one';
  readonly options: readonly Option[];
}

/** All the right options are wanted and no other. */
export interface SeveralQuestion extends Asked {
  readonly kind: 'several';
  readonly options: readonly Option[];
}

/** Steps to be put in order; they are written in the right one. */
export interface OrderQuestion extends Asked {
  readonly kind: 'order';
  readonly steps: readonly string[];
  readonly reason: string;
  /** What goes wrong when a step comes before one that must precede it. */
  readonly unsafe?: (Unsafe & { readonly before: readonly [string, string] }) | undefined;
}

/** A figure that the module computes when the site is built. */
export interface NumericQuestion extends Asked {
  readonly kind: 'numeric';
  /** Unit the reader answers in, as written: V, mA, W, µF. */
  readonly unit: string;
  /** Accepted distance from the answer, as a fraction of it; said to the reader. */
  readonly tolerance: number;
  readonly reason: string;
  /** In SI units; absent in the data, filled in when the site is built. */
  readonly answer?: number | undefined;
}

export type Question = OneQuestion | SeveralQuestion | OrderQuestion | NumericQuestion;
