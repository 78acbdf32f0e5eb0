import { coilCheck } from './coil-check/state.ts';
import { groundCheck } from './ground-check/state.ts';
import { headroom } from './headroom/state.ts';
import { indicator } from './indicator/state.ts';
import { loadList } from './load-list/state.ts';
import { outsideGear } from './outside-gear/state.ts';
import { rectify } from './rectify/state.ts';
import { reservoir } from './reservoir/state.ts';
import { windingEstimate } from './winding-estimate/state.ts';
import { windingPick } from './winding-pick/state.ts';
import { heaterBudget } from './heater-budget/state.ts';
import { wireDrop } from './wire-drop/state.ts';
import { converterCheck } from './converter-check/state.ts';
import { fusePick } from './fuse-pick/state.ts';
import { switchOn } from './switch-on/state.ts';
import { benchSheet } from './bench-sheet/state.ts';
import type { Calculator, InitialCase } from './shared/definition.ts';
import { open } from './shared/evaluate.ts';

/** Every calculator that is built, in the order of a job. Its island stands in components/Calculator.astro. */
export const CALCULATORS = [
  loadList,
  coilCheck,
  indicator,
  windingEstimate,
  rectify,
  reservoir,
  headroom,
  windingPick,
  heaterBudget,
  groundCheck,
  outsideGear,
  wireDrop,
  converterCheck,
  fusePick,
  switchOn,
  benchSheet,
] as const;

export type CalculatorName = (typeof CALCULATORS)[number]['id'];

/** A calculator opened on a case and solved, as its island takes it. Throws on a case that an author got wrong. */
export function openedCase(name: CalculatorName, initial?: InitialCase): string {
  const calculator = CALCULATORS.find(({ id }) => id === name);
  if (calculator === undefined) throw new Error(`There is no calculator "${name}"; there are ${CALCULATORS.map(({ id }) => id).join(', ')}`);
  // Each has fields of its own type; opening needs only that they are fields.
  return JSON.stringify(open(calculator as unknown as Calculator, initial));
}
