/** A reader's whole job as one value: its form, and reading it from anything. */
export { PLAN_VERSION } from './plan/plan-types.ts';
export type {
  Approach,
  Barriers,
  HeaterWinding,
  PlanAmp,
  PlanConverter,
  PlanFuse,
  PlanGrounds,
  PlanParts,
  PlanProtections,
  PlanRail,
  PlanTransformer,
  PlanWinding,
  PresentHeater,
  Regulation,
  Room,
  SpareWinding,
  SupplyPlan,
} from './plan/plan-types.ts';
export { readPlan } from './plan/read-plan.ts';
export type { PlanReading } from './plan/read-plan.ts';
export { migratePlan } from './plan/migrate-plan.ts';
export type { Migration, MigrationResult } from './plan/migrate-plan.ts';
export type { ReadProblem } from './plan/readers.ts';
