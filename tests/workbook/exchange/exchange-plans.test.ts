import { describe, expect, it } from 'vitest';
import { fileToDownload, readFileText } from '../../../src/workbook/exchange/envelope.ts';
import { exportPlans, exportSetAside, importPlans } from '../../../src/workbook/exchange/exchange-plans.ts';
import type { ImportReport } from '../../../src/workbook/exchange/exchange-plans.ts';
import type { PlanShelf } from '../../../src/workbook/plans/shelf.ts';
import { FILE_LIMITS } from '../../../src/workbook/untrusted-json.ts';
import { openTab, rawRows, useFreshDevice } from '../device.ts';
import { samplePlan } from '../sample-plan.ts';
import type { SamplePlan } from '../sample-plan.ts';

useFreshDevice();

const taken = { point: 'rail', value: 5.02, unit: 'V', meter: 'dc', mainsVolts: 118, takenAt: '2025-03-02T09:00:00.000Z' } as const;

async function shopTab(): Promise<PlanShelf<SamplePlan>> {
  const tab = await openTab();
  const { record } = await tab.add('Quillon 20', samplePlan(120));
  await tab.readings.add(record.id, taken);
  await tab.add('Tarn 45', samplePlan(230));
  await tab.add('Fennel 100', samplePlan(240));
  return tab;
}

async function report(tab: PlanShelf<SamplePlan>, text: string): Promise<ImportReport<SamplePlan>> {
  const outcome = await importPlans(tab, text);
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
}

const withPlans = (text: string, plans: readonly unknown[]): string => JSON.stringify({ ...(JSON.parse(text) as object), plans });
const plansOf = (text: string): Record<string, unknown>[] => (JSON.parse(text) as { plans: Record<string, unknown>[] }).plans;

describe('a file of plans', () => {
  it('says what it is and holds every plan with its readings, and no id of the device', async () => {
    const text = await exportPlans(await shopTab());
    expect(JSON.parse(text)).toMatchObject({ format: 'second-rail', kind: 'plans', version: 1, exportedAt: expect.stringMatching(/Z$/) });
    expect(plansOf(text).map(({ title }) => title)).toEqual(['Fennel 100', 'Tarn 45', 'Quillon 20']);
    expect(plansOf(text)[2]).toEqual({ title: 'Quillon 20', savedAt: expect.any(String), plan: samplePlan(120), readings: [taken] });
  });

  it('holds only the plans asked for', async () => {
    const tab = await shopTab();
    const id = (await tab.list()).plans[1]?.id ?? '';
    expect(plansOf(await exportPlans(tab, [id])).map(({ title }) => title)).toEqual(['Tarn 45']);
  });

  it('brings everything to another device, readings included', async () => {
    const text = await exportPlans(await shopTab());
    globalThis.indexedDB = new IDBFactory();
    const other = await openTab();
    expect((await report(other, text)).added).toHaveLength(3);
    const again = plansOf(await exportPlans(other)).map(({ title, plan, readings }) => ({ title, plan, readings }));
    expect(again).toEqual(expect.arrayContaining(plansOf(text).map(({ title, plan, readings }) => ({ title, plan, readings }))));
  });

  it('adds nothing where the same content is kept, and says so', async () => {
    const tab = await shopTab();
    const before = await rawRows('plans');
    const text = await exportPlans(tab);
    const { added, alreadyThere } = await report(tab, text);
    expect(added).toEqual([]);
    expect(alreadyThere.map(({ title }) => title).sort()).toEqual(['Fennel 100', 'Quillon 20', 'Tarn 45']);
    expect(await rawRows('plans')).toEqual(before);
  });

  it('never replaces: a plan of the same title with other content is added beside it', async () => {
    const tab = await shopTab();
    const before = await rawRows('plans');
    const [first] = plansOf(await exportPlans(tab));
    const changed = { ...first, plan: samplePlan(250) };
    const { added, alreadyThere } = await report(tab, withPlans(await exportPlans(tab), [changed, changed]));
    expect(added).toMatchObject([{ kind: 'saved', record: { title: 'Fennel 100', plan: samplePlan(250), revision: 1 } }]);
    expect(alreadyThere).toHaveLength(1);
    expect(await rawRows('plans')).toEqual(expect.arrayContaining([...before]));
    expect(await rawRows('plans')).toHaveLength(4);
  });

  it('refuses a broken plan with its place, and takes the others', async () => {
    const text = await exportPlans(await shopTab());
    globalThis.indexedDB = new IDBFactory();
    const other = await openTab();
    const [a, b, c] = plansOf(text);
    const { added, refused, leftOut } = await report(other, withPlans(text, [
      { ...a, plan: { ...samplePlan(), loads: [{ name: 'x', amps: -1 }] } },
      { ...b, plan: { ...samplePlan(230), sticker: 'fragile' } },
      { ...c, readings: [{ ...taken, unit: 'furlong' }] },
      'not a plan',
      { ...a, title: '' },
      { ...a, savedAt: '<script>' },
    ]));
    expect(added).toMatchObject([{ record: { title: 'Tarn 45', plan: samplePlan(230) } }]);
    expect(leftOut).toEqual(['plans.1.plan.sticker']);
    expect(refused.map(({ place }) => place)).toEqual(['plans.0.plan.loads.0.amps', 'plans.2.readings.0.unit', 'plans.3', 'plans.4.title', 'plans.5.savedAt']);
    for (const { message } of refused) expect(message).toMatch(/^plans\.\d.*: .+\.$/);
  });

  it('is refused whole, with a sentence, when it is something else', async () => {
    const tab = await openTab();
    const text = await exportPlans(await shopTab());
    const kinds = async (content: string) => {
      const outcome = await importPlans(tab, content);
      return outcome.ok ? 'accepted' : outcome.problem.kind;
    };
    expect(await kinds('')).toBe('not-json');
    expect(await kinds('[]')).toBe('foreign');
    expect(await kinds('{"format":"other"}')).toBe('foreign');
    expect(await kinds(text.replace('"plans"', '"record"'))).toBe('foreign');
    expect(await kinds(text.replace('"version": 1', '"version": 2'))).toBe('newer');
    expect(await kinds(text.replace('"version": 1', '"version": "1"'))).toBe('foreign');
    expect(await kinds(withPlans(text, [{ plan: { constructor: 1 } }]))).toBe('invalid');
    expect(await kinds(JSON.stringify({ ...(JSON.parse(text) as object), plans: 7 }))).toBe('invalid');
    expect(await kinds(withPlans(text, Array.from({ length: 1001 }, () => 1)))).toBe('too-large');
    expect(await kinds(' '.repeat(FILE_LIMITS.characters + 1))).toBe('too-large');
  });
});

describe('a chosen file', () => {
  it('is read as text, and refused by its size before that', async () => {
    expect(await readFileText(new Blob(['{}']))).toEqual({ ok: true, value: '{}' });
    const huge = { size: FILE_LIMITS.characters + 1, text: () => { throw new Error('it was read'); } } as unknown as Blob;
    expect(await readFileText(huge)).toMatchObject({ ok: false, problem: { kind: 'too-large' } });
    const gone = { size: 10, text: () => Promise.reject(new DOMException('gone', 'NotReadableError')) } as unknown as Blob;
    expect(await readFileText(gone)).toMatchObject({ ok: false, problem: { kind: 'failed' } });
  });

  it('is named by what it holds and the day', () => {
    const { name, blob } = fileToDownload('plans', '2025-03-02T09:00:00.000Z', '{}');
    expect(name).toBe('second-rail-plans-2025-03-02.json');
    expect([blob.type, blob.size]).toEqual(['application/json', 2]);
  });

  it('of what was set aside holds it as found, as far as JSON can', () => {
    const cycle: Record<string, unknown> = { id: 'x' };
    cycle['self'] = cycle;
    const problem = { kind: 'damaged', place: '', message: 'It is damaged.' } as const;
    const entries = [{ a: 1 }, cycle, undefined].map((verbatim, index) => ({ from: 'plans', key: index, problem, foundAt: '2025-03-02T09:00:00.000Z', verbatim }));
    const file = JSON.parse(exportSetAside('2025-03-02T09:00:00.000Z', entries)) as { kind: string; setAside: { verbatim: unknown }[] };
    expect(file.kind).toBe('set-aside');
    expect(file.setAside.map(({ verbatim }) => verbatim)).toEqual([{ a: 1 }, 'not a value that JSON can hold', null]);
  });
});
