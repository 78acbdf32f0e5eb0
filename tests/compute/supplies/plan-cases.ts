import type { SupplyPlan } from '../../../src/compute/plan.ts';
import { shopPlan } from '../../shop/read-shop-plan.ts';

/** Plans that the tests of the approaches start from: the shop's, with one thing changed. */
export const quillon = (change: Partial<SupplyPlan> = {}): SupplyPlan => ({ ...shopPlan('quillon-20'), ...change });
export const tarn = (change: Partial<SupplyPlan> = {}): SupplyPlan => ({ ...shopPlan('tarn-45'), ...change });
export const fennel = (change: Partial<SupplyPlan> = {}): SupplyPlan => ({ ...shopPlan('fennel-100'), ...change });

/** The same plan with the amp's facts changed. */
export const withAmp = (plan: SupplyPlan, change: Partial<SupplyPlan['amp']>): SupplyPlan => ({ ...plan, amp: { ...plan.amp, ...change } });
export const withGrounds = (plan: SupplyPlan, change: Partial<SupplyPlan['grounds']>): SupplyPlan => ({ ...plan, grounds: { ...plan.grounds, ...change } });

/** A copy without one key: what nobody knows is left out, not undefined. */
export function without<T extends object, K extends keyof T>(value: T, key: K): Omit<T, K> {
  const copy: T = { ...value };
  Reflect.deleteProperty(copy, key);
  return copy;
}

/** A plan that only asks for so many amps at the rail's volts. */
export const drawing = (plan: SupplyPlan, amps: number, running = amps): SupplyPlan => ({
  ...plan,
  loads: [
    { kind: 'fixed-amps', name: 'running', count: 1, amps: running },
    ...(amps > running ? [{ kind: 'fixed-amps', name: 'besides', count: 1, onAtOnce: 0, amps: amps - running } as const] : []),
  ],
});
