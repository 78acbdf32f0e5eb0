import { requireNumber } from '../errors.ts';
import type { Finding } from '../findings.ts';
import { addLoads } from '../loads/load-list.ts';
import type { LoadItem } from '../loads/load-types.ts';
import { COLD_INRUSH, heaterModel } from '../parts/heater.ts';
import type { HeaterModel } from '../parts/heater.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import type { ChainLoad } from './chain-types.ts';

/** What a plan's load list asks of the rail, at the rail's volts, its worst-case tolerances included. */
export interface LoadDraw {
  readonly chain: ChainLoad;
  /** Least that is always on. */
  readonly idleAmps: number;
  /** All DC heaters on the rail as one; undefined when there are none. */
  readonly heater: HeaterModel | undefined;
  /** Everything else at switch-on. */
  readonly otherAmps: number;
}

/** All heaters of the list as one lump: their watts added, their cold ratio weighted by watts. */
function heatersAsOne(items: readonly LoadItem[], railVolts: number): HeaterModel | undefined {
  let amps = 0;
  let weighted = 0;
  for (const item of items) {
    if (item.kind !== 'heater') continue;
    const each = item.amps * item.count;
    amps += each;
    weighted += each * (item.coldRatio ?? COLD_INRUSH.typical);
  }
  if (amps === 0) return undefined;
  return heaterModel({ volts: railVolts, amps: requireNumber('heater amps together', amps, { min: 0.01, max: 50 }), coldRatio: weighted / amps });
}

/** How far the plan lets its rail stray, as a ratio each way; a tenth unless it says otherwise. */
export const railTolerance = ({ rail }: Pick<SupplyPlan, 'rail'>): number => rail.toleranceRatio ?? 0.1;

/**
 * The plan's loads added up at the rail's nominal volts and the spread a regulator has: most amps running and with
 * everything on. With the load off nothing is drawn at all. Throws `InputError` for a load that the rail cannot drive.
 */
export function loadDraw(plan: Pick<SupplyPlan, 'loads' | 'rail' | 'amp'>): LoadDraw {
  const { loads, rail, amp } = plan;
  const sums = addLoads({ items: loads, railVolts: rail.volts, airCelsius: Math.min(110, amp.airCelsius) });
  const heater = heatersAsOne(loads, rail.volts);
  const others = addLoads({ items: loads.filter((item) => item.kind !== 'heater'), railVolts: rail.volts, airCelsius: Math.min(110, amp.airCelsius) });
  return {
    chain: { offAmps: 0, runningAmps: sums.running.max, everythingAmps: sums.everything.max },
    idleAmps: sums.idle.min,
    heater,
    otherAmps: others.switchOn.alwaysAmps,
  };
}

/** What coils and heaters make of the rail's lowest and highest volts, once these have been solved. */
export function loadFindingsAt(plan: Pick<SupplyPlan, 'loads' | 'rail' | 'amp'>, lowestVolts: number, highestVolts: number): readonly Finding[] {
  const { loads, rail, amp } = plan;
  // A rail that has collapsed is told by other findings; the load list needs one that drives its parts at all.
  const drivers = loads.map((item) => (item.kind === 'relay' ? (item.driverVolts ?? 0) + 0.01 : 0));
  const floor = Math.max(0.5, ...drivers);
  return addLoads({
    items: loads,
    railVolts: rail.volts,
    railMinVolts: Math.min(rail.volts, Math.max(floor, lowestVolts)),
    railMaxVolts: Math.min(200, Math.max(rail.volts, highestVolts)),
    airCelsius: Math.min(110, amp.airCelsius),
  }).findings;
}
