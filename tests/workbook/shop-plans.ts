import { globSync, readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { readPlan } from '../../src/compute/plan.ts';
import type { SupplyPlan } from '../../src/compute/plan.ts';

const shop = resolve(import.meta.dirname, '../../content/shop/plans');

/** The shop's plans as the module reads them. */
export const SHOP_PLANS: readonly { readonly name: string; readonly plan: SupplyPlan }[] = globSync('*.json', { cwd: shop }).map((file) => {
  const reading = readPlan(JSON.parse(readFileSync(resolve(shop, file), 'utf8')));
  if (!reading.ok) throw new Error(`${file}: ${JSON.stringify(reading.problems)}`);
  return { name: basename(file, '.json'), plan: reading.plan };
});
