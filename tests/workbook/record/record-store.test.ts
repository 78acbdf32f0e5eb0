import { describe, expect, it } from 'vitest';
import { exportRecord, importRecord } from '../../../src/workbook/record/exchange-record.ts';
import type { LearningRecord } from '../../../src/workbook/record/learning-record.ts';
import { EMPTY_RECORD } from '../../../src/workbook/record/learning-record.ts';
import { RECORD_DATABASE } from '../../../src/workbook/record/record-store.ts';
import type { RecordStore } from '../../../src/workbook/record/record-store.ts';
import { fillDevice, openRecordTab, putRaw, rawRows, untilHeard, useFreshDevice } from '../device.ts';

useFreshDevice();

const given = { lesson: 'working-dead', question: 'q1', sitting: 's', chosen: ['a'], correct: true, wrong: [], unsafe: [] };

/** A record with something of every kind. */
async function study(store: RecordStore): Promise<LearningRecord> {
  await store.lessonOpened('working-dead');
  await store.lessonPlace('working-dead', 'clip-link');
  await store.answered(given);
  await store.answered({ ...given, question: 'q2', chosen: ['b'], correct: false, wrong: ['b'], unsafe: ['b'] });
  await store.drilled({ drill: 'find-the-fault', case: '17', named: 'open diode', correct: true, readingsTaken: 3 });
  await store.gateOpenedByHand('M.');
  await store.lessonFinished('working-dead');
  return (await store.read()).record;
}

describe('the record of learning', () => {
  it('is there again for the next page', async () => {
    const record = await study(await openRecordTab());
    const kept = await (await openRecordTab()).read();
    expect(kept).toEqual({ record, setAside: [], problem: undefined });
    expect(record.answers.map(({ question }) => question).sort()).toEqual(['q1', 'q2']);
    expect(record.drills).toMatchObject([{ named: 'open diode', readingsTaken: 3 }]);
    expect(record.gateOpenings).toMatchObject([{ by: 'M.' }]);
  });

  it('knows when a lesson was first opened, last seen, where, and first finished', async () => {
    const store = await openRecordTab();
    await study(store);
    const [before] = (await store.read()).record.lessons;
    await store.lessonFinished('working-dead');
    const [after] = (await store.read()).record.lessons;
    expect(after).toEqual({ ...before, seenAt: after?.seenAt });
    expect(before).toMatchObject({ id: 'working-dead', place: 'clip-link' });
    expect((after?.seenAt ?? '') > (before?.seenAt ?? '')).toBe(true);
    expect((before?.openedAt ?? '') < (before?.finishedAt ?? '')).toBe(true);
  });

  it('takes answers from two tabs at once and loses none', async () => {
    const [one, two] = [await openRecordTab(), await openRecordTab()];
    await Promise.all(Array.from({ length: 20 }, (_, index) => (index % 2 === 0 ? one : two).answered({ ...given, question: `q${index}` })));
    await Promise.all([one.lessonPlace('quiet', 'star'), two.lessonFinished('quiet')]);
    const { record } = await one.read();
    expect(record.answers).toHaveLength(20);
    expect(record.lessons).toMatchObject([{ place: 'star', finishedAt: expect.any(String) }]);
  });

  it('refuses what it could not read back', async () => {
    const store = await openRecordTab();
    await expect(store.answered({ ...given, lesson: '' })).rejects.toMatchObject({ name: 'InputError', quantity: 'lesson' });
    await expect(store.gateOpenedByHand('')).rejects.toMatchObject({ quantity: 'by' });
    expect((await store.read()).record).toEqual(EMPTY_RECORD);
  });

  it('is wiped whole, here and for other tabs, held and set-aside things included', async () => {
    const [store, other] = [await openRecordTab(), await openRecordTab()];
    await study(store);
    await putRaw('answers', { id: 'odd' }, RECORD_DATABASE);
    await store.read();
    const makeRoom = fillDevice();
    await other.answered(given);
    makeRoom();
    let heard = 0;
    other.listen(() => { heard += 1; });
    expect(await store.wipe()).toBeUndefined();
    await untilHeard(() => heard > 0);
    for (const name of RECORD_DATABASE.stores) expect(await rawRows(name, RECORD_DATABASE), name).toEqual([]);
    expect((await other.read()).record).toEqual(EMPTY_RECORD);
  });
});

describe('a record that cannot be kept', () => {
  it('is held in the page, exported from there, and kept with the next thing that is', async () => {
    const store = await openRecordTab();
    await store.answered(given);
    const makeRoom = fillDevice();
    expect(await store.answered({ ...given, question: 'q2' })).toMatchObject({ kind: 'full' });
    expect(await store.lessonPlace('quiet', 'star')).toMatchObject({ kind: 'full' });
    expect(await store.lessonFinished('quiet')).toMatchObject({ kind: 'full' });
    const held = (await store.read()).record;
    expect(held.answers).toHaveLength(2);
    expect(held.lessons).toMatchObject([{ place: 'star', finishedAt: expect.any(String) }]);
    expect(await exportRecord(store)).toContain('"star"');
    makeRoom();
    expect(await store.answered({ ...given, question: 'q3' })).toBeUndefined();
    const kept = (await (await openRecordTab()).read()).record;
    expect(kept.answers).toHaveLength(3);
    expect(kept.lessons).toEqual(held.lessons);
  });

  it('lasts as long as the page where the browser keeps nothing, and says so', async () => {
    Reflect.deleteProperty(globalThis, 'indexedDB');
    const store = await openRecordTab();
    expect(await store.answered(given)).toMatchObject({ kind: 'denied' });
    expect(await store.read()).toMatchObject({ problem: { kind: 'denied' }, record: { answers: [{ question: 'q1' }] } });
    await store.wipe();
    expect((await store.read()).record).toEqual(EMPTY_RECORD);
  });

  it('sets aside what it cannot read and leaves a later version alone', async () => {
    const store = await openRecordTab();
    await store.answered(given);
    const newer = { id: 'quiet', schemaVersion: 9, badge: 'gold' };
    await putRaw('answers', { id: 'bad', schemaVersion: 1, lesson: 7 }, RECORD_DATABASE);
    await putRaw('lessons', newer, RECORD_DATABASE);
    await store.lessonFinished('quiet');
    const { record, setAside } = await store.read();
    expect(record.answers).toHaveLength(1);
    expect(setAside.map(({ key, problem }) => [key, problem.kind]).sort()).toEqual([['bad', 'damaged'], ['quiet', 'newer']]);
    expect(await rawRows('lessons', RECORD_DATABASE)).toEqual([newer]);
  });
});

describe('a record file', () => {
  it('brings everything to another device, and adds nothing there the second time', async () => {
    const store = await openRecordTab();
    const record = await study(store);
    const text = await exportRecord(store);
    globalThis.indexedDB = new IDBFactory();
    const other = await openRecordTab();
    expect(await importRecord(other, text)).toEqual({ ok: true, value: { added: 5, alreadyThere: 0, refused: [], problem: undefined } });
    expect((await other.read()).record).toEqual(record);
    expect(await importRecord(other, text)).toMatchObject({ value: { added: 0, alreadyThere: 5 } });
    expect((await other.read()).record).toEqual(record);
  });

  it('brings back what was wiped', async () => {
    const store = await openRecordTab();
    const record = await study(store);
    const text = await exportRecord(store);
    await store.wipe();
    await importRecord(store, text);
    expect((await store.read()).record).toEqual(record);
  });

  it('replaces nothing: a taken id gets a new one, progress is joined', async () => {
    const store = await openRecordTab();
    const record = await study(store);
    const [first] = record.answers;
    const text = JSON.stringify({
      ...(JSON.parse(await exportRecord(store)) as object),
      record: {
        answers: [{ ...first, question: 'another' }],
        lessons: [{ id: 'working-dead', openedAt: '2024-01-01T00:00:00.000Z', seenAt: '2024-01-02T00:00:00.000Z', place: 'old' }],
      },
    });
    expect(await importRecord(store, text)).toMatchObject({ value: { added: 2, refused: [] } });
    const after = (await store.read()).record;
    expect(after.answers).toEqual(expect.arrayContaining([...record.answers]));
    expect(after.answers).toHaveLength(3);
    expect(after.lessons).toEqual([{ ...record.lessons[0], openedAt: '2024-01-01T00:00:00.000Z' }]);
    expect(await importRecord(store, text)).toMatchObject({ value: { added: 0, alreadyThere: 2 } });
  });

  it('is refused fact by fact with the place, or whole with a sentence', async () => {
    const store = await openRecordTab();
    await study(store);
    const text = await exportRecord(store);
    const parsed = JSON.parse(text) as { record: { answers: object[] } };
    const [first, second] = parsed.record.answers;
    const broken = JSON.stringify({ ...parsed, record: { answers: [{ ...first, id: 'new', correct: 'yes' }, { ...second, chosen: [7] }, 1, { ...first, id: 'x', question: 'n' }, { ...first, id: 'x', question: 'm' }], drills: 'none' } });
    const outcome = await importRecord(store, broken);
    expect(outcome.ok && outcome.value.refused.map(({ place }) => place)).toEqual(['record.answers.0.correct', 'record.answers.1.chosen.0', 'record.answers.2', 'record.answers.4.id', 'record.drills']);
    expect(outcome.ok && outcome.value.added).toBe(1);
    expect(await importRecord(store, text.replace('"record"', '"plans"'))).toMatchObject({ ok: false, problem: { kind: 'foreign' } });
    expect(await importRecord(store, text.slice(0, -9))).toMatchObject({ ok: false, problem: { kind: 'not-json' } });
  });
});
