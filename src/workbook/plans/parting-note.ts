import { canonicalText } from '../canonical.ts';
import { attempt, readInteger, readObject, readText } from '../fields.ts';
import type { Outcome } from '../problem.ts';
import { accepted, refused } from '../problem.ts';
import type { SetAside } from '../storage/set-aside.ts';
import { LINK_LIMITS, parseUntrusted } from '../untrusted-json.ts';
import type { SaveRequest } from './decide.ts';
import { readPlanAt, TITLE_CHARACTERS } from './plan-record.ts';
import type { PlanRecord, ReadPlan } from './plan-record.ts';

/**
 * A page that is being left has no time for a transaction, which has to read before it writes: the browser closes the
 * database under it. What was typed last is therefore left as a note in localStorage, which writes at once, and the
 * next page that opens the plans saves it by the ordinary rules.
 */
export interface PartingNote<Plan> {
  readonly request: SaveRequest<Plan>;
  /** What was being saved at that moment, if anything: finding it kept means that nobody else came in between. */
  readonly underWay?: { readonly title: string; readonly plan: Plan };
}

export type NoteStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const PREFIX = 'second-rail-note:';

/** The browser's, or none where even asking for it is refused. */
export function browserNoteStorage(): NoteStorage | undefined {
  try {
    return (globalThis as { readonly localStorage?: Storage }).localStorage;
  } catch {
    return undefined;
  }
}

/** Leaves a note, replacing an earlier one about the same plan. Synchronous. False when there was no room or no storage. */
export function leaveNote<Plan>(storage: NoteStorage | undefined, note: PartingNote<Plan>): boolean {
  if (storage === undefined) return false;
  try {
    storage.setItem(PREFIX + note.request.id, JSON.stringify(note));
    return true;
  } catch {
    return false;
  }
}

export function removeNote(storage: NoteStorage | undefined, id: string): void {
  try {
    storage?.removeItem(PREFIX + id);
  } catch {
    // It stays until a later page can take it; taken twice it changes nothing.
  }
}

function readNote<Plan>(text: string, readPlan: ReadPlan<Plan>): Outcome<PartingNote<Plan>> {
  const parsed = parseUntrusted(text, LINK_LIMITS);
  if (!parsed.ok) return parsed;
  const fields = attempt({
    at: '',
    kind: 'damaged',
    read: () => {
      const note = readObject('', parsed.value);
      const request = readObject('request', note['request']);
      return {
        id: readText('request.id', request['id'], { max: 64 }),
        title: readText('request.title', request['title'], { max: TITLE_CHARACTERS * 4, empty: true }),
        basedOn: readInteger('request.basedOn', request['basedOn'], { min: 0 }),
        plan: request['plan'],
        underWay: note['underWay'],
      };
    },
  });
  if (!fields.ok) return fields;
  const { id, title, basedOn, underWay } = fields.value;
  const plan = readPlanAt({ place: 'request.plan', value: fields.value.plan, readPlan, kind: 'damaged' });
  if (!plan.ok) return plan;
  const request = { id, title, basedOn, plan: plan.value.plan };
  const earlier = attempt({
    at: '',
    kind: 'damaged',
    read: () => {
      const draft = readObject('underWay', underWay);
      return { title: readText('underWay.title', draft['title'], { max: TITLE_CHARACTERS * 4, empty: true }), plan: draft['plan'] };
    },
  });
  // A note without this part, or with a broken one, is still good: at worst it becomes a copy.
  const before = earlier.ok ? readPlanAt({ place: 'underWay.plan', value: earlier.value.plan, readPlan, kind: 'damaged' }) : earlier;
  if (!earlier.ok || !before.ok) return accepted({ request });
  return accepted({ request, underWay: { title: earlier.value.title, plan: before.value.plan } });
}

/** Every note there is; those that cannot be read are listed as set aside and stay where they are. */
export function readNotes<Plan>(options: {
  readonly storage: NoteStorage | undefined;
  readonly readPlan: ReadPlan<Plan>;
  readonly now: () => Date;
}): { readonly notes: readonly PartingNote<Plan>[]; readonly setAside: readonly SetAside[] } {
  const { storage, readPlan, now } = options;
  const notes: PartingNote<Plan>[] = [];
  const setAside: SetAside[] = [];
  try {
    for (let index = 0; index < (storage?.length ?? 0); index += 1) {
      const key = storage?.key(index) ?? '';
      const text = key.startsWith(PREFIX) ? storage?.getItem(key) : undefined;
      if (text === undefined || text === null) continue;
      const read = readNote(text, readPlan);
      const note = read.ok && PREFIX + read.value.request.id !== key ? refused('foreign', 'request.id', 'This note is not about the plan it is filed under.') : read;
      if (note.ok) notes.push(note.value);
      else setAside.push({ from: 'notes', key, problem: note.problem, foundAt: now().toISOString(), verbatim: text });
    }
  } catch {
    // Refused half-way: what was read so far is all there is to be had.
  }
  return { notes, setAside };
}

/** The save a note asks for, seen against what is kept now. */
export function requestFrom<Plan>(note: PartingNote<Plan>, kept: Outcome<PlanRecord<Plan>>): SaveRequest<Plan> {
  const { request, underWay } = note;
  if (!kept.ok || underWay === undefined || kept.value.revision !== request.basedOn + 1) return request;
  const ours = canonicalText({ title: kept.value.title, plan: kept.value.plan }) === canonicalText({ title: underWay.title, plan: underWay.plan });
  return ours ? { ...request, basedOn: kept.value.revision } : request;
}
