import type { PlanRecord } from '../plans/plan-record.ts';
import { bareReading } from '../plans/reading-shelf.ts';
import type { PlanShelf, SaveResult } from '../plans/shelf.ts';
import type { Outcome, Problem } from '../problem.ts';
import { accepted } from '../problem.ts';
import type { SetAside } from '../storage/set-aside.ts';
import { writeEnvelope } from './envelope.ts';
import type { PlanEntry, ReadEntry } from './plans-file.ts';
import { contentOf, readPlansFile, writePlansFile } from './plans-file.ts';

/** The kept plans with their readings, as they stand in a file, each with the id it has on this device. */
async function entriesOf<Plan>(shelf: PlanShelf<Plan>, ids?: readonly string[]): Promise<readonly { readonly id: string; readonly entry: PlanEntry<Plan> }[]> {
  const [{ plans }, { readings }] = await Promise.all([shelf.list(), shelf.readings.all()]);
  return plans
    .filter(({ id }) => ids === undefined || ids.includes(id))
    .map(({ id, title, savedAt, plan }) => ({
      id,
      entry: { title, savedAt, plan, readings: readings.filter(({ planId }) => planId === id).map(bareReading) },
    }));
}

/** The text of a file with every plan, or with those of the given ids; what is held in the page only is in it too. */
export async function exportPlans<Plan>(shelf: PlanShelf<Plan>, ids?: readonly string[]): Promise<string> {
  const entries = await entriesOf(shelf, ids);
  return writePlansFile(shelf.now().toISOString(), entries.map(({ entry }) => entry));
}

export interface ImportReport<Plan> {
  readonly added: readonly SaveResult<Plan>[];
  /** Plans of the file whose title, content and readings are kept already: nothing was added for them. */
  readonly alreadyThere: readonly Pick<PlanRecord<Plan>, 'title' | 'id'>[];
  /** Plans of the file that were refused, each with its place. */
  readonly refused: readonly Problem[];
  /** Places of fields that mean nothing to this version and are not part of what was added. */
  readonly leftOut: readonly string[];
}

/**
 * Adds the plans of a file, each under a new id, so that nothing kept is replaced. The same content, there already or
 * twice in the file, is reported and not added again. Never throws for what the text holds.
 */
export async function importPlans<Plan>(shelf: PlanShelf<Plan>, text: string): Promise<Outcome<ImportReport<Plan>>> {
  const file = readPlansFile(text, shelf.readPlan);
  if (!file.ok) return file;
  const kept = new Map((await entriesOf(shelf)).map(({ id, entry }) => [contentOf(entry), id]));
  const fresh = new Map<string, ReadEntry<Plan>>();
  const alreadyThere: { title: string; id: string }[] = [];
  for (const entry of file.value.entries) {
    const content = contentOf(entry);
    const id = kept.get(content);
    if (id === undefined && !fresh.has(content)) fresh.set(content, entry);
    else alreadyThere.push({ title: entry.title, id: id ?? '' });
  }
  const added = fresh.size === 0 ? [] : await shelf.addAll([...fresh.values()]);
  const leftOut = [...fresh.values()].flatMap((entry) => entry.leftOut);
  return accepted({ added, alreadyThere, refused: file.value.refused, leftOut });
}

/** JSON has no place for some values a database can hold; they are named instead. */
function asJson(value: unknown): unknown {
  try {
    return JSON.parse(JSON.stringify(value) ?? 'null') as unknown;
  } catch {
    return 'not a value that JSON can hold';
  }
}

/** The text of a file with everything set aside, as it was found, for whoever can repair it. */
export function exportSetAside(exportedAt: string, entries: readonly SetAside[]): string {
  return writeEnvelope('set-aside', exportedAt, {
    setAside: entries.map(({ from, foundAt, problem, verbatim }) => ({ from, foundAt, message: problem.message, verbatim: asJson(verbatim) })),
  });
}
