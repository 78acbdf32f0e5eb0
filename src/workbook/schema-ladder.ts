import { readInteger, readObject } from './fields.ts';
import { accepted, refused } from './problem.ts';
import type { Outcome } from './problem.ts';

/** Takes a stored object from one schema version to the next. Pure; returns a new object. */
export type MigrationStep = (value: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/**
 * The versions of one kind of stored object. `steps[0]` goes from version 1 to 2, `steps[1]` from 2 to 3, and so on,
 * so the current version is the number of steps plus one and a version can be neither skipped nor forgotten.
 */
export interface SchemaLadder {
  /** What the objects are, as a reader calls them: "plan", "quiz answer". */
  readonly what: string;
  /** The field that names the version: `schemaVersion` unless said otherwise. */
  readonly field?: string;
  readonly steps: readonly MigrationStep[];
}

export const currentVersion = (ladder: SchemaLadder): number => ladder.steps.length + 1;

/**
 * Brings an object that names its version to the current version. The result still has to be read field by
 * field. An object without a version is `foreign`, one from a later version is `newer`, one that a step cannot take
 * is `damaged`.
 */
export function climb(value: unknown, ladder: SchemaLadder): Outcome<Readonly<Record<string, unknown>>> {
  const field = ladder.field ?? 'schemaVersion';
  let object: Readonly<Record<string, unknown>>;
  let version: number;
  try {
    object = readObject('', value);
    version = readInteger(field, object[field], { min: 1 });
  } catch {
    return refused('foreign', field, `This is not a ${ladder.what} that this site has written.`);
  }
  const current = currentVersion(ladder);
  if (version > current) {
    return refused('newer', field, `This ${ladder.what} was written by a later version of the site (${version}; this page knows ${current}). Reload the page to get the later version.`);
  }
  try {
    for (const [index, step] of ladder.steps.slice(version - 1).entries()) {
      object = { ...step(object), [field]: version + index + 1 };
    }
  } catch {
    return refused('damaged', '', `This ${ladder.what} of version ${version} cannot be brought to version ${current}.`);
  }
  return accepted(object);
}
