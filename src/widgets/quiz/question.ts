import type { Unit } from '../../compute/quantity.ts';
import type { Harm } from '../../compute/findings.ts';

/** What choosing an option would do to a person, a building or an amp; noise is the mildest harm. */
export interface Unsafe {
  readonly harm: Harm;
  /** What would have happened, as shown to whoever chooses it. */
  readonly consequence: string;
  /** The hazard of the lesson that it courts, by id, where it is one of them. */
  readonly hazard?: string | undefined;
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
  /** Sources of the figures it quotes, by id; figures from the lesson's module need none. */
  readonly sources?: readonly string[] | undefined;
}

/** `one`: one option is right. `several`: all the right ones are wanted, and no other. */
export interface ChoiceQuestion extends Asked {
  readonly kind: 'one' | 'several';
  readonly options: readonly Option[];
}

/** Steps to be put in order; they are written in the right one. */
export interface OrderQuestion extends Asked {
  readonly kind: 'order';
  readonly steps: readonly string[];
  readonly reason: string;
  /** Two steps, the first of which does harm when it is put before the second. */
  readonly unsafe?: (Unsafe & { readonly before: readonly [string, string] }) | undefined;
}

/** A figure that the module computes when the site is built. */
export interface NumericQuestion extends Asked {
  readonly kind: 'numeric';
  readonly unit: Unit;
  /** Unit of a bare number, and of the answer shown, where it is not the SI unit: mA, µF. */
  readonly writtenIn?: string | undefined;
  /** Accepted distance from the answer, as a fraction of it; said to the reader. */
  readonly tolerance: number;
  readonly reason: string;
}

/** A question as content/quizzes holds it. */
export type Question = ChoiceQuestion | OrderQuestion | NumericQuestion;

/** A numeric question with its answer in SI units, solved when the site was built. */
export interface SolvedNumericQuestion extends NumericQuestion {
  readonly answer: number;
}

/** A question ready to be asked. */
export type SolvedQuestion = ChoiceQuestion | OrderQuestion | SolvedNumericQuestion;
