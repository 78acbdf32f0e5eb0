/** Values the module may be given for one quantity, as a reader is told them. */
export interface AllowedRange {
  readonly min?: number;
  readonly max?: number;
  /** Words instead of limits, for a value that is not a number or not one of a set. */
  readonly expected?: string;
}

const describeRange = ({ min, max, expected }: AllowedRange): string => {
  if (expected !== undefined) return expected;
  if (min !== undefined && max !== undefined) return `${min} to ${max}`;
  if (min !== undefined) return `at least ${min}`;
  if (max !== undefined) return `at most ${max}`;
  return 'a finite number';
};

/**
 * A value that the module was given and cannot use.
 * `quantity` is the name of the option (dotted for a nested one: `winding.ohms`), `given` the value itself,
 * `allowed` what would have been accepted, in SI units.
 */
export class InputError extends RangeError {
  override readonly name = 'InputError';
  readonly quantity: string;
  readonly given: unknown;
  readonly allowed: AllowedRange;

  constructor(quantity: string, given: unknown, allowed: AllowedRange) {
    super(`${quantity}: ${String(given)} is not allowed; give ${describeRange(allowed)}`);
    this.quantity = quantity;
    this.given = given;
    this.allowed = allowed;
  }
}

/** Why a circuit could not be solved. */
export type SolveFailureReason =
  /** The equations have no unique answer: a loop of ideal voltage sources, a cut set of current sources. */
  | 'singular'
  /** Newton's method or the periodic search did not settle within its limits. */
  | 'no-convergence'
  /** The supply cannot deliver the load asked of it: no steady state exists. */
  | 'overloaded'
  /** The work asked for exceeds the stated limits of the solver. */
  | 'too-large';

/** A circuit that was well stated but has no answer, or none that could be found; never a wrong number. */
export class SolveError extends Error {
  override readonly name = 'SolveError';
  readonly reason: SolveFailureReason;

  constructor(reason: SolveFailureReason, message: string) {
    super(message);
    this.reason = reason;
  }
}

/** Throws `InputError` unless `value` is a finite number within the inclusive limits; gives the value back. */
export function requireNumber(quantity: string, value: unknown, allowed: AllowedRange = {}): number {
  if (
    typeof value !== 'number' ||
    !Number.isFinite(value) ||
    (allowed.min !== undefined && value < allowed.min) ||
    (allowed.max !== undefined && value > allowed.max)
  ) {
    throw new InputError(quantity, value, allowed);
  }
  return value;
}
