import { describe, expect, it } from 'vitest';
import { readPlan } from '../../../src/compute/plan.ts';
import { checksumOf, deflate, toBase64Url } from '../../../src/workbook/exchange/bytes.ts';
import { exportPlans, importPlans } from '../../../src/workbook/exchange/exchange-plans.ts';
import { readPlanLink, writePlanLink } from '../../../src/workbook/exchange/plan-link.ts';
import { readPlansFile } from '../../../src/workbook/exchange/plans-file.ts';
import { openPlanShelf } from '../../../src/workbook/plans/open-plan-shelf.ts';
import { rawRows, useFreshDevice } from '../device.ts';
import { mutate, seededNumbers } from '../mutations.ts';
import { SHOP_PLANS } from '../shop-plans.ts';

useFreshDevice();

const MUTATIONS = 5000;
const { name, plan } = SHOP_PLANS[0] as (typeof SHOP_PLANS)[number];
const TIMEOUT_MILLISECONDS = 120_000;

const expectNothingRan = (): void => {
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  expect((globalThis as Record<string, unknown>)['ran']).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
};

const expectClear = (problem: { readonly kind: string; readonly message: string }): void => {
  expect(problem.message.length).toBeGreaterThan(10);
  expect(problem.message.length).toBeLessThanOrEqual(401);
};

describe(`${MUTATIONS} mutations`, () => {
  it('of a file: each is read or refused in words, and what is kept stays as it was', async () => {
    const tab = await openPlanShelf({ readPlan });
    for (const { name, plan } of SHOP_PLANS) await tab.add(name, plan);
    await tab.readings.add((await tab.list()).plans[0]?.id ?? '', { point: 'rail', value: 5.02, unit: 'V', meter: 'dc', takenAt: '2025-03-02T09:00:00.000Z', note: 'warm' });
    const [plans, readings] = [await rawRows('plans'), await rawRows('readings')];
    const text = await exportPlans(tab);
    const pick = seededNumbers(20_250_302);
    let [whole, partly, read] = [0, 0, 0];
    for (let round = 0; round < MUTATIONS; round += 1) {
      const outcome = readPlansFile(mutate(text, pick), readPlan);
      if (!outcome.ok) {
        whole += 1;
        expectClear(outcome.problem);
        continue;
      }
      for (const problem of outcome.value.refused) expectClear(problem);
      if (outcome.value.refused.length > 0) partly += 1;
      for (const entry of outcome.value.entries) {
        read += 1;
        expect(readPlan(entry.plan)).toEqual({ ok: true, plan: entry.plan, dropped: [] });
      }
    }
    // The stream of edits reaches every way out; otherwise this test would prove nothing.
    expect(Math.min(whole, partly, read)).toBeGreaterThan(50);
    for (let round = 0; round < 200; round += 1) await importPlans(tab, mutate(text, pick));
    expect(await rawRows('plans')).toEqual(expect.arrayContaining([...plans]));
    expect(await rawRows('readings')).toEqual(expect.arrayContaining([...readings]));
    tab.close();
    expectNothingRan();
  }, TIMEOUT_MILLISECONDS);

  it('of a link: each gives the same plan or is refused in words', async () => {
    const written = await writePlanLink({ title: name, plan });
    const link = written.ok ? written.value : '';
    const pick = seededNumbers(7);
    let refusals = 0;
    for (let round = 0; round < MUTATIONS; round += 1) {
      const outcome = await readPlanLink(mutate(link, pick), readPlan);
      if (outcome.ok) expect(outcome.value).toEqual({ title: name, plan });
      else {
        refusals += 1;
        expectClear(outcome.problem);
      }
    }
    expect(refusals).toBeGreaterThan(MUTATIONS / 2);
    expectNothingRan();
  }, TIMEOUT_MILLISECONDS);

  it('of what a link holds, under a right checksum: each is read or refused in words', async () => {
    const text = JSON.stringify({ title: name, plan });
    const pick = seededNumbers(11);
    let [read, refusals] = [0, 0];
    for (let round = 0; round < MUTATIONS; round += 1) {
      const packed = await deflate(new TextEncoder().encode(mutate(text, pick)));
      const outcome = await readPlanLink(`#plan=1.${checksumOf(packed)}.${toBase64Url(packed)}`, readPlan);
      if (outcome.ok) {
        read += 1;
        expect(readPlan(outcome.value.plan)).toMatchObject({ ok: true });
      } else {
        refusals += 1;
        expectClear(outcome.problem);
      }
    }
    expect(Math.min(read, refusals)).toBeGreaterThan(50);
    expectNothingRan();
  }, TIMEOUT_MILLISECONDS);
});
