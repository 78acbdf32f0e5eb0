import { beforeEach, describe, expect, it } from 'vitest';
import { openPlanShelf } from '../../../src/workbook/plans/open-plan-shelf.ts';
import type { NoteStorage } from '../../../src/workbook/plans/parting-note.ts';
import { editPlan } from '../../../src/workbook/plans/session.ts';
import type { PlanShelf } from '../../../src/workbook/plans/shelf.ts';
import { fillDevice, rawRows, tickingClock, useFreshDevice } from '../device.ts';
import { mutate, seededNumbers } from '../mutations.ts';
import { readSamplePlan, samplePlan } from '../sample-plan.ts';
import type { SamplePlan } from '../sample-plan.ts';

/** localStorage as far as notes use it. */
class MemoryStorage implements NoteStorage {
  readonly items = new Map<string, string>();
  get length(): number { return this.items.size; }
  key(index: number): string | null { return [...this.items.keys()][index] ?? null; }
  getItem(key: string): string | null { return this.items.get(key) ?? null; }
  setItem(key: string, value: string): void { this.items.set(key, value); }
  removeItem(key: string): void { this.items.delete(key); }
}

useFreshDevice();
let noteStorage = new MemoryStorage();
beforeEach(() => { noteStorage = new MemoryStorage(); });

const timing = { pauseMilliseconds: 60_000, longestMilliseconds: 60_000 };
const openTab = (): Promise<PlanShelf<SamplePlan>> => openPlanShelf({ readPlan: readSamplePlan, now: tickingClock(), noteStorage });
const draft = (mainsVolts: number) => ({ title: 'Quillon 20', plan: samplePlan(mainsVolts) });

/** A tab that is gone: whatever it still asks of the database comes to nothing. */
async function tabThatTyped(mainsVolts: number) {
  const shelf = await openTab();
  const { record } = await shelf.add('Quillon 20', samplePlan(100));
  const session = editPlan({ shelf, record, timing });
  session.change(draft(mainsVolts), 'mains');
  return { shelf, record, session };
}

describe('a page left in the midst of typing', () => {
  it('leaves a note that the next page saves as the next revision', async () => {
    const { shelf, record, session } = await tabThatTyped(111);
    shelf.close();
    session.leave();
    const next = await openTab();
    expect(next.recovered).toMatchObject([{ kind: 'saved', record: { id: record.id, revision: 2, plan: samplePlan(111) } }]);
    expect(noteStorage.length).toBe(0);
    expect((await openTab()).recovered).toEqual([]);
    expect(await rawRows('plans')).toMatchObject([{ plan: samplePlan(111) }]);
  });

  it('that was only hidden saves as usual and takes its note back', async () => {
    const { session } = await tabThatTyped(111);
    session.leave();
    expect(noteStorage.length).toBe(1);
    await session.flush();
    expect(noteStorage.length).toBe(0);
    expect(await rawRows('plans')).toMatchObject([{ plan: samplePlan(111), revision: 2 }]);
  });

  it('with nothing to save leaves no note', async () => {
    const { session } = await tabThatTyped(111);
    await session.flush();
    session.leave();
    expect(noteStorage.length).toBe(0);
  });

  it('does not overwrite what another tab saved since: the note becomes a copy', async () => {
    const { shelf, record, session } = await tabThatTyped(111);
    const other = await openTab();
    shelf.close();
    session.leave();
    await other.save({ id: record.id, ...draft(222), basedOn: 1 });
    expect((await openTab()).recovered).toMatchObject([{ kind: 'copied', because: 'changed elsewhere', record: { plan: samplePlan(111) } }]);
    expect(await rawRows('plans')).toHaveLength(2);
  });

  it('while a save was under way needs no copy when that save came through', async () => {
    const { record, session } = await tabThatTyped(111);
    const saving = session.flush();
    session.change(draft(112), 'mains');
    session.leave();
    const [key, text] = [...noteStorage.items][0] ?? ['', ''];
    await saving;
    // As it would lie there had the page ended after the first save and before the second.
    noteStorage.setItem(key, text);
    const shelf = await openTab();
    const kept = await shelf.open(record.id);
    expect(kept).toMatchObject({ ok: true, value: { plan: samplePlan(112) } });
    expect(shelf.recovered).toEqual([]);

    await shelf.save({ id: record.id, ...draft(111), basedOn: 3 });
    const note = JSON.parse(text) as { request: { basedOn: number } };
    noteStorage.setItem(key, JSON.stringify({ ...note, request: { ...note.request, basedOn: 3 } }));
    expect((await openTab()).recovered).toMatchObject([{ kind: 'saved', record: { id: record.id, plan: samplePlan(112), revision: 5 } }]);
  });

  it('keeps its note while the device is full, and the next page catches up', async () => {
    const { shelf, session } = await tabThatTyped(111);
    const makeRoom = fillDevice();
    session.leave();
    await session.flush();
    expect(session.view().problem?.kind).toBe('full');
    expect(noteStorage.length).toBe(1);
    const full = await openTab();
    expect(full.recovered).toMatchObject([{ kind: 'held' }]);
    makeRoom();
    shelf.close();
    expect((await openTab()).recovered).toMatchObject([{ kind: 'saved', record: { plan: samplePlan(111) } }]);
    expect(noteStorage.length).toBe(0);
  });

  it('does without notes where localStorage is full or refused', async () => {
    const { session } = await tabThatTyped(111);
    noteStorage.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); };
    session.leave();
    await session.flush();
    expect(await rawRows('plans')).toMatchObject([{ plan: samplePlan(111) }]);
    noteStorage.key = () => { throw new DOMException('no', 'SecurityError'); };
    noteStorage.items.set('second-rail-note:x', '{}');
    expect((await openTab()).recovered).toEqual([]);
  });
});

describe('a note that cannot be read', () => {
  it('is listed as set aside and stays, other things in localStorage are left alone', async () => {
    noteStorage.setItem('second-rail-note:x', '{"request":');
    noteStorage.setItem('theme', 'dark');
    const shelf = await openTab();
    expect((await shelf.list()).setAside).toMatchObject([{ from: 'notes', problem: { kind: 'not-json' }, verbatim: '{"request":' }]);
    expect(noteStorage.items.size).toBe(2);
  });

  it('does no harm, however it is made: 2000 mutations', async () => {
    const { shelf, record, session } = await tabThatTyped(111);
    shelf.close();
    session.leave();
    const [key, text] = [...noteStorage.items][0] ?? ['', ''];
    const pick = seededNumbers(5);
    for (let round = 0; round < 2000; round += 1) noteStorage.setItem(`${key}${round}`, mutate(text, pick));
    const next = await openTab();
    const listing = await next.list();
    expect(listing.setAside).toHaveLength(2000);
    expect(next.recovered).toHaveLength(1);
    expect(listing.plans).toMatchObject([{ id: record.id, plan: samplePlan(111) }]);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  }, 60_000);
});
