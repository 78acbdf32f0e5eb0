import { canonicalText } from '../canonical.ts';
import type { Outcome } from '../problem.ts';
import { copyTitle, PLAN_SCHEMA, tidyTitle } from './plan-record.ts';
import type { PlanRecord } from './plan-record.ts';

/** A wish to keep a plan, and the revision it was made from (0: never kept before). */
export interface SaveRequest<Plan> {
  readonly id: string;
  readonly title: string;
  readonly plan: Plan;
  readonly basedOn: number;
}

/** Why a save was kept as a separate copy. */
export type CopyReason = 'changed elsewhere' | 'deleted elsewhere' | 'unreadable here';

export type SaveDecision<Plan> =
  | { readonly kind: 'saved'; readonly record: PlanRecord<Plan> }
  /** What is kept is this content already: nothing to write. */
  | { readonly kind: 'unchanged'; readonly record: PlanRecord<Plan> }
  | { readonly kind: 'copied'; readonly because: CopyReason; readonly record: PlanRecord<Plan> };

interface DecideOptions<Plan> {
  readonly request: SaveRequest<Plan>;
  /** What is kept under the id now, read; `undefined` when nothing is. */
  readonly existing: Outcome<PlanRecord<Plan>> | undefined;
  readonly savedAt: string;
  readonly copyId: string;
}

/**
 * What to do with a save, given what is kept now. A save never replaces anything but the revision it was made from;
 * in every other case it becomes a plan of its own, and both are there to choose from.
 */
export function decideSave<Plan>(options: DecideOptions<Plan>): SaveDecision<Plan> {
  const { request, existing, savedAt, copyId } = options;
  const title = tidyTitle(request.title);
  const fresh = { id: request.id, title, savedAt, revision: request.basedOn + 1, schemaVersion: PLAN_SCHEMA, plan: request.plan };
  const copy = (because: CopyReason): SaveDecision<Plan> => ({
    kind: 'copied',
    because,
    record: { ...fresh, id: copyId, revision: 1, title: copyTitle(title, 'kept from another tab') },
  });
  if (existing === undefined) return request.basedOn === 0 ? { kind: 'saved', record: fresh } : copy('deleted elsewhere');
  if (!existing.ok) return copy('unreadable here');
  const kept = existing.value;
  if (kept.deletedAt !== undefined) return copy('deleted elsewhere');
  if (kept.title === title && canonicalText(kept.plan) === canonicalText(request.plan)) return { kind: 'unchanged', record: kept };
  return kept.revision === request.basedOn ? { kind: 'saved', record: fresh } : copy('changed elsewhere');
}

/** The record as it lies among the deleted plans, or taken from there: always the next revision. */
export function withDeletion<Plan>(record: PlanRecord<Plan>, deletedAt: string | undefined): PlanRecord<Plan> {
  const { id, title, savedAt, revision, schemaVersion, plan } = record;
  return { id, title, savedAt, revision: revision + 1, schemaVersion, plan, ...(deletedAt === undefined ? {} : { deletedAt }) };
}
