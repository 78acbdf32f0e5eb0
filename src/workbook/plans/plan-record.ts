import { attempt, readInstant, readInteger, readOptional, readText } from '../fields.ts';
import { accepted, refused } from '../problem.ts';
import type { Outcome, ProblemKind } from '../problem.ts';
import { climb, currentVersion } from '../schema-ladder.ts';
import type { SchemaLadder } from '../schema-ladder.ts';

/**
 * Reads a plan out of anything, field by field: `readPlan` of the computation, or a stand-in in tests. It gives a
 * fresh plan and the paths it left out because they mean nothing, or every problem with its path. Never throws.
 */
export type ReadPlan<Plan> = (value: unknown) =>
  | { readonly ok: true; readonly plan: Plan; readonly dropped: readonly string[] }
  | { readonly ok: false; readonly problems: readonly { readonly path: string; readonly message: string }[] };

/** A plan that was read, with the places of what was left out of it. */
export interface PlanReadAt<Plan> {
  readonly plan: Plan;
  readonly leftOut: readonly string[];
}

/** Reads the plan at `place` of a record, a file or a link; a refusal names the places in that whole. */
export function readPlanAt<Plan>(options: {
  readonly place: string;
  readonly value: unknown;
  readonly readPlan: ReadPlan<Plan>;
  readonly kind: ProblemKind;
}): Outcome<PlanReadAt<Plan>> {
  const { place, value, readPlan, kind } = options;
  const placeOf = (path: string): string => (path === '' ? place : `${place}.${path}`);
  const reading = readPlan(value);
  if (reading.ok) return accepted({ plan: reading.plan, leftOut: reading.dropped.map(placeOf) });
  const [first = { path: '', message: 'a plan is expected' }, ...others] = reading.problems;
  // A plan that stumbles at its version is taken for a later one: it is left alone, for the page that knows it.
  const refusal = refused(first.path === 'version' ? 'newer' : kind, placeOf(first.path), `${placeOf(first.path)}: ${first.message}.`);
  if (others.length === 0) return refusal;
  const also = others.map((problem) => ({ place: placeOf(problem.path), message: problem.message }));
  return { ok: false, problem: { ...refusal.problem, also } };
}

export const TITLE_CHARACTERS = 120;

/**
 * The versions of a kept plan. The plan inside has a version of its own, which `ReadPlan` looks after; this ladder
 * is about the record around it.
 */
export const PLAN_LADDER: SchemaLadder = { what: 'plan', steps: [] };

export const PLAN_SCHEMA = currentVersion(PLAN_LADDER);

/** One plan as it is kept on the device. */
export interface PlanRecord<Plan> {
  readonly id: string;
  readonly title: string;
  /** When this revision was saved, ISO in UTC. */
  readonly savedAt: string;
  /** 1 at first, one more with each save: what a save is checked against. */
  readonly revision: number;
  readonly schemaVersion: number;
  /** Set while the plan lies among the deleted ones, from where it can be restored. */
  readonly deletedAt?: string;
  readonly plan: Plan;
}

/** Reads a stored plan: brings it to the current schema and validates every field. Never throws. */
export function readPlanRecord<Plan>(value: unknown, readPlan: ReadPlan<Plan>): Outcome<PlanRecord<Plan>> {
  const climbed = climb(value, PLAN_LADDER);
  if (!climbed.ok) return climbed;
  const stored = climbed.value;
  const record = attempt({
    at: '',
    kind: 'damaged',
    read: () => ({
      id: readText('id', stored['id'], { max: 64 }),
      title: readText('title', stored['title'], { max: TITLE_CHARACTERS }),
      savedAt: readInstant('savedAt', stored['savedAt']),
      revision: readInteger('revision', stored['revision'], { min: 1 }),
      schemaVersion: PLAN_SCHEMA,
      ...readOptional('deletedAt', stored['deletedAt'], (at) => readInstant('deletedAt', at)),
    }),
  });
  if (!record.ok) return record;
  const read = readPlanAt({ place: 'plan', value: stored['plan'], readPlan, kind: 'damaged' });
  return read.ok ? accepted({ ...record.value, plan: read.value.plan }) : read;
}

/** A title as it may be kept: trimmed, cut to length, never empty. */
export function tidyTitle(title: string): string {
  return title.trim().slice(0, TITLE_CHARACTERS).trim() || 'Untitled plan';
}

/** The title of a copy: the end is marked, so the start is what gives way. */
export const copyTitle = (title: string, mark: string): string =>
  `${title.slice(0, TITLE_CHARACTERS - mark.length - 3)} (${mark})`;
