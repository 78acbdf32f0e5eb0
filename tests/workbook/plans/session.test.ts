import { describe, expect, it } from 'vitest';
import { editPlan } from '../../../src/workbook/plans/session.ts';
import { fillDevice, openTab, rawRows, untilHeard, useFreshDevice } from '../device.ts';
import { samplePlan } from '../sample-plan.ts';

useFreshDevice();

const timing = { pauseMilliseconds: 5, longestMilliseconds: 20 };

describe('a plan open in a tab', () => {
  it('keeps each change, undo and redo on the device', async () => {
    const shelf = await openTab();
    const { record } = await shelf.add('Quillon 20', samplePlan(100));
    const session = editPlan({ shelf, record, timing });
    session.change({ title: 'Quillon 20', plan: samplePlan(110) }, 'mains');
    session.change({ title: 'Quillon 20', plan: samplePlan(120) }, 'loads');
    session.undo();
    expect(session.view()).toMatchObject({ draft: { plan: samplePlan(110) }, canUndo: true, canRedo: true });
    await session.flush();
    expect(await rawRows('plans')).toMatchObject([{ plan: samplePlan(110) }]);
    session.redo();
    await session.close();
    expect(await rawRows('plans')).toMatchObject([{ plan: samplePlan(120) }]);
  });

  it('shows when it waits, saves and has saved', async () => {
    const shelf = await openTab();
    const { record } = await shelf.add('Quillon 20', samplePlan(100));
    const session = editPlan({ shelf, record, timing });
    const seen: string[] = [];
    session.watch(({ saving }) => seen.push(saving));
    session.change({ title: 'Quillon 20', plan: samplePlan(110) }, 'mains');
    await session.flush();
    expect([...new Set(seen)]).toEqual(['waiting', 'saving', 'idle']);
    await session.close();
  });

  it('goes on with a copy, and says so, when another tab saved in between', async () => {
    const [shelf, other] = [await openTab(), await openTab()];
    const { record } = await shelf.add('Quillon 20', samplePlan(100));
    const session = editPlan({ shelf, record, timing: { pauseMilliseconds: 10_000, longestMilliseconds: 10_000 } });
    session.change({ title: 'Quillon 20', plan: samplePlan(110) }, 'mains');
    await other.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(125), basedOn: 1 });
    await session.flush();
    expect(session.view()).toMatchObject({ copied: { because: 'changed elsewhere', from: record.id }, draft: { plan: samplePlan(110) } });
    expect(session.view().id).not.toBe(record.id);
    session.change({ title: 'Quillon 20', plan: samplePlan(111) }, 'mains');
    await session.close();
    expect((await shelf.list()).plans.map(({ plan }) => plan.mainsVolts).sort()).toEqual([111, 125]);
  });

  it('follows another tab while nothing of its own waits, and can undo that', async () => {
    const [shelf, other] = [await openTab(), await openTab()];
    const { record } = await shelf.add('Quillon 20', samplePlan(100));
    const session = editPlan({ shelf, record, timing });
    await other.save({ id: record.id, title: 'Quillon 20', plan: samplePlan(125), basedOn: 1 });
    await untilHeard(() => session.view().draft.plan.mainsVolts === 125);
    session.undo();
    await session.close();
    expect((await shelf.list()).plans.map(({ plan }) => plan.mainsVolts)).toEqual([100]);
    expect(session.view().copied).toBeUndefined();
  });

  it('goes on in the page when the device is full, and catches up', async () => {
    const shelf = await openTab();
    const { record } = await shelf.add('Quillon 20', samplePlan(100));
    const session = editPlan({ shelf, record, timing });
    const makeRoom = fillDevice();
    session.change({ title: 'Quillon 20', plan: samplePlan(110) }, 'mains');
    await session.flush();
    expect(session.view().problem).toMatchObject({ kind: 'full' });
    makeRoom();
    session.change({ title: 'Quillon 20', plan: samplePlan(120) }, 'mains');
    await session.flush();
    expect(session.view()).toMatchObject({ problem: undefined, id: record.id });
    expect(await rawRows('plans')).toMatchObject([{ plan: samplePlan(120), revision: 2 }]);
    await session.close();
  });
});
