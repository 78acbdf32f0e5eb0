import { canonicalText } from '../canonical.ts';
import { attempt, readInstant, readList, readObject, readText } from '../fields.ts';
import type { ReadPlan } from '../plans/plan-record.ts';
import { readPlanAt, TITLE_CHARACTERS } from '../plans/plan-record.ts';
import type { BenchReading } from '../plans/reading.ts';
import { readReading } from '../plans/reading.ts';
import type { Outcome, Problem } from '../problem.ts';
import { accepted, refused } from '../problem.ts';
import { openEnvelope, writeEnvelope } from './envelope.ts';

/** One plan in a file, with what was measured for it. */
export interface PlanEntry<Plan> {
  readonly title: string;
  readonly savedAt: string;
  readonly plan: Plan;
  readonly readings: readonly BenchReading[];
}

export const PLANS_PER_FILE = 1000;
export const READINGS_PER_PLAN = 2000;

/** The text of a file with these plans. */
export function writePlansFile<Plan>(exportedAt: string, entries: readonly PlanEntry<Plan>[]): string {
  return writeEnvelope('plans', exportedAt, { plans: entries });
}

/** A plan read from a file, with the places of what was left out because it means nothing to this version. */
export interface ReadEntry<Plan> extends PlanEntry<Plan> {
  readonly leftOut: readonly string[];
}

export interface PlansFile<Plan> {
  readonly entries: readonly ReadEntry<Plan>[];
  /** The plans of the file that cannot be read, each with its place. */
  readonly refused: readonly Problem[];
}

function readEntry<Plan>(place: string, value: unknown, readPlan: ReadPlan<Plan>): Outcome<ReadEntry<Plan>> {
  const fields = attempt({ at: place, kind: 'invalid', read: () => readObject('', value) });
  if (!fields.ok) return fields;
  const entry = fields.value;
  const read = readPlanAt({ place: `${place}.plan`, value: entry['plan'], readPlan, kind: 'invalid' });
  if (!read.ok) return read;
  const { plan, leftOut } = read.value;
  return attempt({
    at: place,
    kind: 'invalid',
    read: () => ({
      title: readText('title', entry['title'], { max: TITLE_CHARACTERS }),
      savedAt: readInstant('savedAt', entry['savedAt']),
      plan,
      leftOut,
      readings: readList('readings', entry['readings'] ?? [], READINGS_PER_PLAN, (at, reading) => readReading(at, readObject(at, reading))),
    }),
  });
}

/**
 * Reads a file of plans field by field. A plan that cannot be read is refused with its place and does not hold up
 * the others; a text that is no such file is refused whole. Never throws.
 */
export function readPlansFile<Plan>(text: string, readPlan: ReadPlan<Plan>): Outcome<PlansFile<Plan>> {
  const envelope = openEnvelope('plans', text);
  if (!envelope.ok) return envelope;
  const list = envelope.value['plans'];
  if (!Array.isArray(list)) return refused('invalid', 'plans', 'plans: this file holds no list of plans; nothing was read.');
  if (list.length > PLANS_PER_FILE) {
    return refused('too-large', 'plans', `plans: this file holds ${list.length} plans, more than ${PLANS_PER_FILE}; nothing was read.`);
  }
  const outcomes = list.map((value: unknown, index) => readEntry(`plans.${index}`, value, readPlan));
  return accepted({
    entries: outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])),
    refused: outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.problem])),
  });
}

/** Equal for two plans that are the same to a reader: title, plan and readings, whenever and wherever they were saved. */
export function contentOf<Plan>(entry: Pick<PlanEntry<Plan>, 'title' | 'plan' | 'readings'>): string {
  const readings = entry.readings.map((reading) => canonicalText(reading)).sort();
  return canonicalText({ title: entry.title, plan: entry.plan, readings });
}
