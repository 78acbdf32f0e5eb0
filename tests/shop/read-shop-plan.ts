import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readPlan } from '../../src/compute/plan.ts';
import type { SupplyPlan } from '../../src/compute/plan.ts';

export const SHOP_PLANS = ['quillon-20', 'tarn-45', 'fennel-100'] as const;
export type ShopPlan = (typeof SHOP_PLANS)[number];

/** A plan of the shop's, as parsed JSON that nobody has checked. */
export const shopPlanJson = (name: ShopPlan): unknown =>
  JSON.parse(readFileSync(join(import.meta.dirname, '../../content/shop/plans', `${name}.json`), 'utf8'));

/** The same, read. Throws with every problem when the file is not a plan. */
export function shopPlan(name: ShopPlan): SupplyPlan {
  const reading = readPlan(shopPlanJson(name));
  if (!reading.ok) throw new Error(reading.problems.map(({ path, message }) => `${name} ${path}: ${message}`).join('\n'));
  if (reading.dropped.length > 0) throw new Error(`${name} has keys that mean nothing: ${reading.dropped.join(', ')}`);
  return reading.plan;
}
