import { describe, expect, it } from 'vitest';
import { withDeletion } from '../../../src/workbook/plans/decide.ts';
import type { BenchReading } from '../../../src/workbook/plans/reading.ts';
import { openTab, rawRows, tickingClock, untilHeard, useFreshDevice } from '../device.ts';
import { samplePlan } from '../sample-plan.ts';

const reading = (value: number): BenchReading => ({
  point: 'reservoir, everything on', value, unit: 'V', meter: 'dc', mainsVolts: 118.5, ambientCelsius: 24, takenAt: '2025-03-02T09:30:00.000Z',
});

useFreshDevice();

describe('plans on the device', () => {
  it('are there again for the next tab, latest first', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Quillon 20', samplePlan(120));
    await tab.add('Tarn 45', samplePlan(230));
    tab.close();
    const listing = await (await openTab()).list();
    expect(listing.problem).toBeUndefined();
    expect(listing.plans.map(({ title, held }) => [title, held])).toEqual([['Tarn 45', false], ['Quillon 20', false]]);
    expect(listing.plans[1]).toEqual({ ...record, held: false });
  });

  it('are saved revision by revision', async () => {
    const tab = await openTab();
    const first = (await tab.add('Quillon 20', samplePlan(120))).record;
    const second = await tab.save({ id: first.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: first.revision });
    expect(second).toMatchObject({ kind: 'saved', record: { revision: 2 }, problem: undefined });
    expect(await tab.save({ id: first.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: 2 })).toMatchObject({ kind: 'unchanged', record: { revision: 2 } });
    expect(await tab.open(first.id)).toEqual({ ok: true, value: second.record });
  });

  it('are duplicated as a plan of their own', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Quillon 20', samplePlan());
    await tab.readings.add(record.id, reading(9.4));
    const copy = await tab.duplicate(record.id);
    expect(copy).toMatchObject({ ok: true, value: { kind: 'saved', record: { title: 'Quillon 20 (copy)', plan: record.plan, revision: 1 } } });
    if (copy.ok) expect((await tab.readings.of(copy.value.record.id)).readings).toEqual([]);
  });

  it('are deleted, restored, and only then erased, with their readings', async () => {
    const tab = await openTab();
    const { record } = await tab.add('Quillon 20', samplePlan());
    const other = (await tab.add('Tarn 45', samplePlan(230))).record;
    await tab.readings.add(record.id, reading(9.4));
    await tab.readings.add(other.id, reading(11));

    expect(await tab.erase(record.id)).toMatchObject({ kind: 'invalid' });
    await tab.remove(record.id);
    expect((await tab.list()).plans.map(({ title }) => title)).toEqual(['Tarn 45']);
    expect((await tab.list()).deleted.map(({ title }) => title)).toEqual(['Quillon 20']);

    expect(await tab.restore(record.id)).toMatchObject({ ok: true, value: { plan: record.plan, title: record.title } });
    expect((await tab.list()).deleted).toEqual([]);
    expect((await tab.readings.of(record.id)).readings).toHaveLength(1);

    await tab.remove(record.id);
    expect(await tab.erase(record.id)).toBeUndefined();
    expect(await tab.open(record.id)).toMatchObject({ ok: false });
    expect((await tab.readings.all()).readings.map(({ planId }) => planId)).toEqual([other.id]);
  });
});

describe('two tabs with the same plan', () => {
  it('do not overwrite each other: the second save becomes a copy, with the readings', async () => {
    const [desk, phone] = [await openTab(), await openTab(tickingClock('2025-03-01T13:00:00.000Z'))];
    const { record } = await desk.add('Quillon 20', samplePlan(120));
    await desk.readings.add(record.id, reading(9.4));
    const request = { id: record.id, title: record.title, basedOn: record.revision };
    expect(await desk.save({ ...request, plan: samplePlan(117) })).toMatchObject({ kind: 'saved' });
    const second = await phone.save({ ...request, plan: samplePlan(125) });
    expect(second).toMatchObject({ kind: 'copied', because: 'changed elsewhere', record: { plan: samplePlan(125) } });
    expect(await desk.open(record.id)).toMatchObject({ ok: true, value: { plan: samplePlan(117) } });
    expect(await desk.open(second.record.id)).toMatchObject({ ok: true, value: { plan: samplePlan(125) } });
    expect((await desk.readings.of(second.record.id)).readings).toMatchObject([{ value: 9.4 }]);
  });

  it('lose nothing when both save at the same instant, many times over', async () => {
    const [desk, phone] = [await openTab(), await openTab()];
    const { record } = await desk.add('Quillon 20', samplePlan(100));
    let [left, right] = [record, record];
    const written = new Set<number>();
    for (let turn = 1; turn <= 20; turn += 1) {
      const [a, b] = await Promise.all([
        desk.save({ id: left.id, title: left.title, plan: samplePlan(100 + turn), basedOn: left.revision }),
        phone.save({ id: right.id, title: right.title, plan: samplePlan(200 + turn), basedOn: right.revision }),
      ]);
      if (turn === 1) expect([a.kind, b.kind].sort()).toEqual(['copied', 'saved']);
      [left, right] = [a.record, b.record];
      written.add(a.record.plan.mainsVolts).add(b.record.plan.mainsVolts);
    }
    expect(written.size).toBe(40);
    const kept = (await desk.list()).plans;
    expect(kept.map(({ plan }) => plan.mainsVolts).sort()).toEqual([120, 220]);
  });

  it('hear of each other', async () => {
    const [desk, phone] = [await openTab(), await openTab()];
    const heard: string[] = [];
    phone.listen((notice) => heard.push(`${notice.kind} ${notice.revision}`));
    const { record } = await desk.add('Quillon 20', samplePlan());
    await desk.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(117), basedOn: 1 });
    await desk.remove(record.id);
    await desk.restore(record.id);
    await untilHeard(() => heard.length === 4);
    expect(heard).toEqual(['saved 1', 'saved 2', 'removed 3', 'restored 4']);
  });

  it('keep what one types into a plan that the other deleted', async () => {
    const [desk, phone] = [await openTab(), await openTab()];
    const { record } = await desk.add('Quillon 20', samplePlan(120));
    await desk.remove(record.id);
    const saved = await phone.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(125), basedOn: 1 });
    expect(saved).toMatchObject({ kind: 'copied', because: 'deleted elsewhere' });
    expect((await desk.list()).deleted.map(({ id }) => id)).toEqual([record.id]);
  });

  it('add readings to one plan without meeting', async () => {
    const [desk, phone] = [await openTab(), await openTab()];
    const { record } = await desk.add('Quillon 20', samplePlan());
    await Promise.all([...Array.from({ length: 10 }, (_, n) => desk.readings.add(record.id, reading(n))), ...Array.from({ length: 10 }, (_, n) => phone.readings.add(record.id, reading(100 + n)))]);
    expect((await desk.readings.of(record.id)).readings).toHaveLength(20);
  });
});

describe('bench readings', () => {
  it('keep what was noted, in the order taken, and nothing that was not', async () => {
    const tab = await openTab();
    await tab.readings.add('plan', { ...reading(9.4), takenAt: '2025-03-02T10:00:00.000Z' });
    await tab.readings.add('plan', { point: 'regulator output', value: 5.02, unit: 'V', meter: 'dc', takenAt: '2025-03-02T09:00:00.000Z', note: 'cold' });
    const { readings } = await tab.readings.of('plan');
    expect(readings.map(({ value }) => value)).toEqual([5.02, 9.4]);
    expect(readings[0]).not.toHaveProperty('mainsVolts');
    expect(readings[1]).toMatchObject({ mainsVolts: 118.5, ambientCelsius: 24 });
  });

  it('are taken away one by one', async () => {
    const tab = await openTab();
    const { record } = await tab.readings.add('plan', reading(1));
    await tab.readings.add('plan', reading(2));
    await tab.readings.remove(record.id);
    expect((await tab.readings.of('plan')).readings.map(({ value }) => value)).toEqual([2]);
  });

  it('are refused with the field named when a value makes no sense', async () => {
    const tab = await openTab();
    await expect(tab.readings.add('plan', { ...reading(1), mainsVolts: NaN })).rejects.toMatchObject({ name: 'InputError', quantity: 'mainsVolts' });
    await expect(tab.readings.add('plan', { ...reading(1), takenAt: 'yesterday' })).rejects.toMatchObject({ quantity: 'takenAt' });
    expect(await rawRows('readings')).toEqual([]);
  });
});

describe('deletion', () => {
  it('is the next revision either way, so that no tab mistakes one for the other', () => {
    const record = { id: 'p', title: 't', savedAt: '2025-03-01T12:00:00.000Z', revision: 4, schemaVersion: 1, plan: samplePlan() };
    const deleted = withDeletion(record, '2025-03-01T12:30:00.000Z');
    expect(deleted).toEqual({ ...record, revision: 5, deletedAt: '2025-03-01T12:30:00.000Z' });
    expect(withDeletion(deleted, undefined)).toEqual({ ...record, revision: 6 });
  });
});
