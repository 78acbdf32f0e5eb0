/** The shop's three jobs as plans, with the parts that lie on its bench: what lessons compute their figures from. */
import bench from '../../content/shop/bench.json';
import fennel from '../../content/shop/plans/fennel-100.json';
import quillon from '../../content/shop/plans/quillon-20.json';
import tarn from '../../content/shop/plans/tarn-45.json';
import { readPlan, type SupplyPlan } from '../compute/plan.ts';

/** A plan with the approach and the parts that the shop has settled on, read as strictly as a stranger's file. */
function planOf(json: object, settled: object = {}): SupplyPlan {
  const reading = readPlan({ ...json, ...settled });
  if (!reading.ok) throw new Error(`content/shop: ${reading.problems.map(({ path, message }) => `${path}: ${message}`).join('; ')}`);
  if (reading.dropped.length > 0) throw new Error(`content/shop has keys that mean nothing: ${reading.dropped.join(', ')}`);
  return reading.plan;
}

export const shop = {
  /** Two relays and a lamp from a small transformer, added. */
  quillon20: planOf(quillon, bench.quillon20),
  /** DC heaters and five relays from a spare winding. */
  tarn45: planOf(tarn, bench.tarn45),
  /** Relays that follow an outside switcher; how it is fed is not settled yet. */
  fennel100: planOf(fennel),
} as const;

export type Shop = typeof shop;

/** What a plan holds at a place that a lesson builds on; throws when the shop's data has lost it. */
export function given<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`the shop's plans no longer give ${what}`);
  return value;
}
