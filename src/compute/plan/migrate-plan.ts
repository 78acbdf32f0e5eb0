import { PLAN_VERSION } from './plan-types.ts';
import type { ReadProblem } from './readers.ts';

/** Takes a plan of one version to the next. It may count on nothing: what it is given has not been checked. */
export type Migration = (plan: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** `MIGRATIONS[n]` takes version n to n + 1. Empty while there has been one version only. */
const MIGRATIONS: Readonly<Record<number, Migration>> = {};

export type MigrationResult =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problem: ReadProblem };

/**
 * Brings a stored plan to the present version, step by step, without checking anything else of it. `steps` and
 * `present` are for tests of the mechanism; leave them out otherwise. Refuses a version that is missing, not a whole
 * number from 1, or newer than this module.
 */
export function migratePlan(
  value: unknown,
  steps: Readonly<Record<number, Migration>> = MIGRATIONS,
  present: number = PLAN_VERSION,
): MigrationResult {
  const problem = (message: string): MigrationResult => ({ ok: false, problem: { path: 'version', message } });
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return { ok: false, problem: { path: '', message: 'an object is expected' } };
  }
  let plan = value as Readonly<Record<string, unknown>>;
  const version = Object.hasOwn(plan, 'version') ? plan.version : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return problem(`a whole number from 1 to ${present} is expected`);
  }
  if (version > present) return problem(`this plan was made by a newer version (${version}) than is known here (${present})`);
  for (let from = version; from < present; from++) {
    const step = steps[from];
    if (step === undefined) return problem(`no way is known from version ${from} to ${from + 1}`);
    plan = { ...step(plan), version: from + 1 };
  }
  return { ok: true, value: plan };
}
