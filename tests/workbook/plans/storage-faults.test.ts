import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { importPlans, exportPlans } from '../../../src/workbook/exchange/exchange-plans.ts';
import { PLAN_DATABASE } from '../../../src/workbook/plans/open-plan-shelf.ts';
import { openRows } from '../../../src/workbook/storage/database-rows.ts';
import { fillDevice, openTab, putRaw, rawRows, useFreshDevice } from '../device.ts';
import { samplePlan } from '../sample-plan.ts';

useFreshDevice();
afterEach(() => { vi.restoreAllMocks(); });

const exported = async (tab: Awaited<ReturnType<typeof openTab>>): Promise<number[]> =>
  (JSON.parse(await exportPlans(tab)) as { plans: { plan: { mainsVolts: number } }[] }).plans.map(({ plan }) => plan.mainsVolts).sort();

describe('a browser that keeps nothing', () => {
  const refusals: readonly [string, () => void][] = [
    ['refuses to open', () => { vi.spyOn(globalThis.indexedDB, 'open').mockImplementation(() => { throw new DOMException('no', 'SecurityError'); }); }],
    ['has no storage at all', () => { Reflect.deleteProperty(globalThis, 'indexedDB'); }],
  ];

  it.each(refusals)('%s: everything works in the page, and the reader is told', async (_, refuse) => {
    refuse();
    const tab = await openTab();
    const { record, problem } = await tab.add('Quillon 20', samplePlan(120));
    expect(problem).toMatchObject({ kind: 'denied', message: expect.stringContaining('export') });
    await tab.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: record.revision });
    await tab.readings.add(record.id, { point: 'rail', value: 5, unit: 'V', meter: 'dc', takenAt: '2025-03-02T09:00:00.000Z' });
    await tab.remove(record.id);
    await tab.restore(record.id);
    const listing = await tab.list();
    expect(listing.problem?.kind).toBe('denied');
    expect(listing.plans.map(({ plan }) => plan)).toEqual([samplePlan(117)]);
    expect(await exported(tab)).toEqual([117]);
  });

  it('does not hold up the page when it never answers', async () => {
    // A tab that will not let go, and one that waits for it to: every later request queues behind them.
    const stubborn = await openDB(PLAN_DATABASE.name, 1);
    const upgrade = openDB(PLAN_DATABASE.name, 2);
    const rows = await openRows(PLAN_DATABASE, 20);
    expect(rows.problem).toMatchObject({ kind: 'failed', message: expect.stringContaining('does not answer') });
    stubborn.close();
    (await upgrade).close();
  });
});

describe('a full device', () => {
  it('holds the save in the page, says so, and keeps it when there is room again', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Quillon 20', samplePlan(120));
    const makeRoom = fillDevice();
    const save = await tab.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: 1 });
    expect(save).toMatchObject({ kind: 'held', problem: { kind: 'full', message: expect.stringContaining('export') }, record: { revision: 1, plan: samplePlan(117) } });
    // The last save that was kept is untouched; the page shows and exports the newer one.
    expect(await rawRows('plans')).toMatchObject([{ revision: 1, plan: samplePlan(120) }]);
    expect((await tab.list()).plans).toMatchObject([{ held: true, plan: samplePlan(117) }]);
    expect(await tab.open(record.id)).toMatchObject({ ok: true, value: { plan: samplePlan(117) } });
    expect(await exported(tab)).toEqual([117]);

    expect(await tab.keepHeld()).toMatchObject([{ kind: 'held' }]);
    makeRoom();
    expect(await tab.keepHeld()).toMatchObject([{ kind: 'saved', record: { revision: 2 } }]);
    expect((await tab.list()).plans).toMatchObject([{ held: false, plan: samplePlan(117) }]);
  });

  it('makes a copy of what was held when another tab went on meanwhile', async () => {
    const [desk, phone] = [await openTab(), await openTab()];
    const { record } = await desk.add('Quillon 20', samplePlan(120));
    const makeRoom = fillDevice();
    await desk.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: 1 });
    makeRoom();
    await phone.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(125), basedOn: 1 });
    expect(await desk.keepHeld()).toMatchObject([{ kind: 'copied', because: 'changed elsewhere' }]);
    expect(await exported(desk)).toEqual([117, 125]);
  });

  it('holds new plans, readings and imports as well, and deletes nothing', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Tarn 45', samplePlan(230));
    const file = await exportPlans(tab);
    const makeRoom = fillDevice();
    const added = await tab.add('Quillon 20', samplePlan(120));
    expect(added.kind).toBe('held');
    const taken = await tab.readings.add(added.record.id, { point: 'rail', value: 5, unit: 'V', meter: 'dc', takenAt: '2025-03-02T09:00:00.000Z' });
    expect(taken.problem?.kind).toBe('full');
    expect(await tab.remove(record.id)).toMatchObject({ ok: false, problem: { kind: 'full' } });
    const imported = await importPlans(tab, file.replace('Tarn 45', 'Fennel 100'));
    expect(imported).toMatchObject({ ok: true, value: { added: [{ kind: 'held', problem: { kind: 'full' } }] } });
    expect(await exported(tab)).toEqual([120, 230, 230]);
    makeRoom();
    await tab.keepHeld();
    await tab.readings.add(added.record.id, { point: 'rail', value: 5.1, unit: 'V', meter: 'dc', takenAt: '2025-03-02T09:01:00.000Z' });
    expect(await rawRows('plans')).toHaveLength(3);
    expect(await rawRows('readings')).toHaveLength(2);
  });
});

describe('a tab killed in the midst of a save', () => {
  it('leaves the last revision whole, at whichever request it dies', async () => {
    const survivor = await openTab();
    const { record } = await survivor.add('Quillon 20', samplePlan(120));
    const original = IDBObjectStore.prototype.put;
    for (const after of ['before the write', 'after the write']) {
      const tab = await openTab();
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, value: unknown) {
        const request = original.call(this, value);
        // What a browser does to the open transaction of a page that dies.
        if (after === 'before the write') this.transaction.abort();
        else request.addEventListener('success', () => { this.transaction.abort(); });
        return request;
      };
      const outcome = await tab.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: 1 });
      IDBObjectStore.prototype.put = original;
      expect(outcome.kind).toBe('held');
      expect(await survivor.open(record.id)).toEqual({ ok: true, value: record });
    }
    expect(await rawRows('plans')).toHaveLength(1);
  });

  it.each(['is aborted', 'runs out of room'])('imports all the plans of a file or none, when it %s after the first', async (manner) => {
    const tab = await openTab();
    for (const volts of [100, 110, 120]) await tab.add(`plan ${volts}`, samplePlan(volts));
    const file = await exportPlans(tab);
    globalThis.indexedDB = new IDBFactory();
    const other = await openTab();
    const original = IDBObjectStore.prototype.put;
    let writes = 0;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, value: unknown) {
      writes += 1;
      if (writes === 2 && manner === 'runs out of room') throw new DOMException('no room', 'QuotaExceededError');
      const request = original.call(this, value);
      if (writes === 2) this.transaction.abort();
      return request;
    };
    await importPlans(other, file);
    IDBObjectStore.prototype.put = original;
    expect(await rawRows('plans')).toEqual([]);
    expect((await other.list()).plans).toHaveLength(3);
  });
});

describe('what cannot be read', () => {
  const damaged = { id: 'damaged', title: 'Tarn 45', savedAt: '2025-03-01T12:00:00.000Z', revision: 3, schemaVersion: 1, plan: { version: 1, mainsVolts: 'lots', loads: [] } };
  const foreign = { id: 'foreign', recipe: 'bread', kneaded: new Date('2025-01-01') };
  const newer = { id: 'newer', schemaVersion: 99, tomorrow: true };
  const newerPlan = { ...damaged, id: 'newer-plan', plan: { version: 2 } };

  it('is set aside as it is, with its reason and place, while the rest is listed', async () => {
    await (await openTab()).add('Quillon 20', samplePlan());
    for (const row of [damaged, foreign, newer, newerPlan]) await putRaw('plans', row);
    const tab = await openTab();
    const listing = await tab.list();
    expect(listing.plans.map(({ title }) => title)).toEqual(['Quillon 20']);
    const byKey = Object.fromEntries(listing.setAside.map((entry) => [entry.key, entry]));
    expect(byKey['damaged']).toMatchObject({ problem: { kind: 'damaged', place: 'plan.mainsVolts' }, verbatim: damaged });
    expect(byKey['foreign']).toMatchObject({ problem: { kind: 'foreign' }, verbatim: foreign });
    expect(byKey['newer']).toMatchObject({ problem: { kind: 'newer' }, verbatim: newer });
    expect(byKey['newer-plan']).toMatchObject({ problem: { kind: 'newer', place: 'plan.version' }, verbatim: newerPlan });
    expect(await rawRows('set-aside')).toHaveLength(2);

    // Listed the same the second time, from where it lies now; and never erased.
    const again = (await tab.list()).setAside.map(({ key }) => key).sort();
    expect(again).toEqual(['damaged', 'foreign', 'newer', 'newer-plan']);
    expect((await rawRows('plans')).length + (await rawRows('set-aside')).length).toBe(5);
  });

  it('is never written over: a save under its id becomes a copy', async () => {
    const tab = await openTab();
    await putRaw('plans', newer);
    expect(await tab.save({ id: 'newer', title: 'Quillon 20', plan: samplePlan(), basedOn: 1 })).toMatchObject({ kind: 'copied', because: 'unreadable here' });
    expect(await rawRows('plans')).toContainEqual(newer);
  });

  it('comes back by itself once it can be read', async () => {
    const mended = { ...damaged, plan: samplePlan(230) };
    const tab = await openTab();
    await putRaw('plans', damaged);
    await tab.list();
    const [row] = (await rawRows('set-aside')) as Record<string, unknown>[];
    await putRaw('set-aside', { ...row, verbatim: mended });
    expect((await tab.list()).plans).toMatchObject([{ id: 'damaged', plan: samplePlan(230) }]);
    expect(await rawRows('set-aside')).toEqual([]);
    expect(await rawRows('plans')).toEqual([mended]);
  });

  it('is still listed when it lies unreadable among what was set aside', async () => {
    await openTab();
    await putRaw('set-aside', { id: 'odd', nothing: 'known' });
    expect((await (await openTab()).list()).setAside).toMatchObject([{ key: 'odd', verbatim: { id: 'odd', nothing: 'known' } }]);
  });

  it('does not hide the rest when the browser cannot give back one value', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Quillon 20', samplePlan());
    await putRaw('plans', { id: 'lost', schemaVersion: 1 });
    vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(() => { throw new DOMException('gone', 'DataError'); });
    const get = IDBObjectStore.prototype.get;
    vi.spyOn(IDBObjectStore.prototype, 'get').mockImplementation(function (this: IDBObjectStore, key) {
      if (key === 'lost') throw new DOMException('gone', 'DataError');
      return get.call(this, key);
    });
    const listing = await tab.list();
    expect(listing.plans.map(({ id }) => id)).toEqual([record.id]);
    expect(listing.setAside).toMatchObject([{ key: 'lost', verbatim: undefined }]);
  });
});

describe('a later version of the site in another tab', () => {
  it('is let through, and this tab then works in memory and says to reload', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Quillon 20', samplePlan(120));
    const later = await openDB(PLAN_DATABASE.name, PLAN_DATABASE.version + 1);
    const save = await tab.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: 1 });
    expect(save).toMatchObject({ kind: 'held', problem: { kind: 'newer', message: expect.stringContaining('Reload') } });
    expect(await exported(tab)).toEqual([117]);
    later.close();
  });

  it('has upgraded what is kept: this page works in memory from the start and says to reload', async () => {
    (await openDB(PLAN_DATABASE.name, PLAN_DATABASE.version + 1)).close();
    const tab = await openTab();
    expect(await tab.add('Quillon 20', samplePlan(120))).toMatchObject({ kind: 'saved', problem: { kind: 'newer', message: expect.stringContaining('Reload') } });
    expect(await exported(tab)).toEqual([120]);
  });
});
