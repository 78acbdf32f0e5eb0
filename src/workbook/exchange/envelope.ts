import { attempt, readObject } from '../fields.ts';
import type { Outcome } from '../problem.ts';
import { accepted, refused } from '../problem.ts';
import { climb, currentVersion } from '../schema-ladder.ts';
import type { SchemaLadder } from '../schema-ladder.ts';
import { FILE_LIMITS, parseUntrusted } from '../untrusted-json.ts';

/**
 * Every file this site writes is one JSON object:
 *
 *     { "format": "second-rail", "kind": "plans" | "record" | "set-aside", "version": 1, "exportedAt": "…Z", … }
 *
 * `plans`      plans: [{ title, savedAt, plan, readings: [{ point, value, unit, meter, takenAt, … }] }]
 * `record`     record: { lessons, answers, drills, gateOpenings }
 * `set-aside`  setAside: [{ from, foundAt, message, verbatim }]
 *
 * Identifiers of the device are not part of it: what is imported gets new ones.
 */
export const FORMAT = 'second-rail';

export type FileKind = 'plans' | 'record' | 'set-aside';

const NAMES: Record<FileKind, string> = { plans: 'file of plans', record: 'record of learning', 'set-aside': 'file of set-aside entries' };

const LADDERS: Record<FileKind, SchemaLadder> = {
  plans: { what: NAMES.plans, field: 'version', steps: [] },
  record: { what: NAMES.record, field: 'version', steps: [] },
  'set-aside': { what: NAMES['set-aside'], field: 'version', steps: [] },
};

export const fileVersion = (kind: FileKind): number => currentVersion(LADDERS[kind]);

/** The text of a file of this kind. `content` holds plain JSON values. */
export function writeEnvelope(kind: FileKind, exportedAt: string, content: Readonly<Record<string, unknown>>): string {
  return `${JSON.stringify({ format: FORMAT, kind, version: fileVersion(kind), exportedAt, ...content }, null, 2)}\n`;
}

/** Opens the text of a file of this kind, within `FILE_LIMITS`; the content still has to be read. Never throws. */
export function openEnvelope(kind: FileKind, text: string): Outcome<Readonly<Record<string, unknown>>> {
  const parsed = parseUntrusted(text, FILE_LIMITS);
  if (!parsed.ok) return parsed;
  const object = attempt({ at: '', kind: 'foreign', read: () => readObject('', parsed.value) });
  if (!object.ok || object.value['format'] !== FORMAT) {
    return refused('foreign', 'format', 'This file was not written by this site; nothing was read.');
  }
  const found = object.value['kind'];
  if (found !== kind) {
    const name = Object.entries(NAMES).find(([key]) => key === found)?.[1];
    return refused('foreign', 'kind', name === undefined ? `This is not a ${NAMES[kind]}; nothing was read.` : `This is a ${name}, not a ${NAMES[kind]}; nothing was read.`);
  }
  return climb(object.value, LADDERS[kind]);
}

/** Reads a chosen file, refusing it by its size before any of it is loaded. */
export async function readFileText(file: Blob): Promise<Outcome<string>> {
  if (file.size > FILE_LIMITS.characters) {
    return refused('too-large', '', `This file is larger than ${FILE_LIMITS.characters / 1e6} MB; nothing was read.`);
  }
  try {
    return accepted(await file.text());
  } catch {
    return refused('failed', '', 'The file cannot be read from where it lies. Copy it to this device and try again.');
  }
}

/** A written file as something to download, with a name that says what it is and when it was made. */
export function fileToDownload(kind: FileKind, exportedAt: string, text: string): { readonly name: string; readonly blob: Blob } {
  return {
    name: `second-rail-${kind}-${exportedAt.slice(0, 10)}.json`,
    blob: new Blob([text], { type: 'application/json' }),
  };
}
