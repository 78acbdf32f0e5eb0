import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/compute/plan.ts';
import type { SupplyPlan } from '../../src/compute/plan.ts';
import { exportPlans, importPlans } from '../../src/workbook/exchange/exchange-plans.ts';
import { readPlanLink, writePlanLink } from '../../src/workbook/exchange/plan-link.ts';
import { readPlansFile, writePlansFile } from '../../src/workbook/exchange/plans-file.ts';
import { openPlanShelf } from '../../src/workbook/plans/open-plan-shelf.ts';
import { useFreshDevice } from './device.ts';
import { SHOP_PLANS } from './shop-plans.ts';

useFreshDevice();

describe("the shop's plans", () => {
  it('are there to be kept', () => expect(SHOP_PLANS.length).toBeGreaterThanOrEqual(3));

  it('come back from the device, from a file and from a second device as they were', async () => {
    const shelf = await openPlanShelf({ readPlan });
    for (const { name, plan } of SHOP_PLANS) await shelf.add(name, plan);
    const file = await exportPlans(shelf);
    const kept = (await shelf.list()).plans;
    shelf.close();
    globalThis.indexedDB = new IDBFactory();
    const other = await openPlanShelf({ readPlan });
    expect(await importPlans(other, file)).toMatchObject({ ok: true, value: { refused: [], leftOut: [], alreadyThere: [] } });
    const brought = (await other.list()).plans;
    other.close();
    for (const { name, plan } of SHOP_PLANS) {
      expect(kept.find(({ title }) => title === name)?.plan, name).toEqual(plan);
      expect(brought.find(({ title }) => title === name)?.plan, name).toEqual(plan);
    }
  });

  it.each(SHOP_PLANS)('$name fits in a link that any messenger takes, and comes back from it', async ({ name, plan }) => {
    const link = await writePlanLink({ title: name, plan });
    if (!link.ok) throw new Error(link.problem.message);
    expect(link.value.length).toBeLessThan(2000);
    expect(await readPlanLink(link.value, readPlan)).toEqual({ ok: true, value: { title: name, plan } });
  });

  it('say where a file or a link is wrong', async () => {
    const [first] = SHOP_PLANS;
    const plan = { ...first?.plan, mains: { ...first?.plan.mains, nominalVolts: 'plenty' } } as unknown as SupplyPlan;
    const link = await writePlanLink({ title: 'odd', plan });
    expect(link.ok && (await readPlanLink(link.value, readPlan))).toMatchObject({ ok: false, problem: { kind: 'invalid', place: 'plan.mains.nominalVolts' } });
    const file = readPlansFile(writePlansFile('2025-03-02T12:00:00.000Z', [{ title: 'odd', savedAt: '2025-03-02T12:00:00.000Z', plan, readings: [] }]), readPlan);
    expect(file.ok && file.value.refused).toMatchObject([{ kind: 'invalid', place: 'plans.0.plan.mains.nominalVolts' }]);
  });
});
