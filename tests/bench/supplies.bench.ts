import type { SupplyPlan } from '../../src/compute/plan.ts';
import { solveChain } from '../../src/compute/supplies/chain.ts';
import { compareSupplies } from '../../src/compute/supplies/compare-supplies.ts';
import { supplyFromConverter } from '../../src/compute/supplies/converter.ts';
import { supplyFromHeaterWinding } from '../../src/compute/supplies/heater-winding.ts';
import { supplyFromTransformer } from '../../src/compute/supplies/separate-transformer.ts';
import { supplyFromSpareWinding } from '../../src/compute/supplies/spare-winding.ts';
import { NINE_VOLT_JOB } from '../compute/supplies/chain-cases.ts';
import { SHOP_PLANS, shopPlan } from '../shop/read-shop-plan.ts';
import type { BenchCase } from './measure.ts';

/** One frame at 60 Hz, milliseconds: a comparison that takes less follows a dragged field. */
const FRAME = 1000 / 60;

const tarn = shopPlan('tarn-45');
const way = (name: string, feed: (plan: SupplyPlan) => unknown): BenchCase => ({ name: `tarn-45 ${name}`, run: () => feed(tarn) });

/** The whole comparison of each of the shop's jobs, then where the time of the fullest one goes. */
export const cases: readonly BenchCase[] = [
  ...SHOP_PLANS.map((name): BenchCase => {
    const plan = shopPlan(name);
    return { name: `${name} four ways, all corners`, targetMilliseconds: FRAME, run: () => compareSupplies(plan) };
  }),
  way('from its spare winding', supplyFromSpareWinding),
  way('from a converter, start solved in time', supplyFromConverter),
  way('from a separate transformer, sized', supplyFromTransformer),
  way('from the heater winding, four rectifiers tried', supplyFromHeaterWinding),
  { name: 'one chain at 15 corners', run: () => solveChain(NINE_VOLT_JOB) },
];
