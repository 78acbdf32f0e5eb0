import { InputError } from '../errors.ts';
import { LINEAR_REGULATORS, linearRegulator } from '../parts/regulator-linear.ts';
import type { LinearRegulator } from '../parts/regulator-linear.ts';
import { BUCKS, buck } from '../parts/regulator-switching.ts';
import type { BuckRow } from '../parts/regulator-switching.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import { buckStage, linearStage } from './chain-parts.ts';
import type { ChainStage } from './chain-types.ts';
import { SMALL_VOLUMES } from './part-volumes.ts';
import { buckCompanions, linearCompanions } from './regulator-parts.ts';
import type { SizedPart } from './supply-types.ts';

export interface StageChoice {
  readonly stage: ChainStage;
  /** The regulator and the small parts its sheet asks for; empty without one. */
  readonly parts: readonly SizedPart[];
}

const partOf = (stage: Exclude<ChainStage, { kind: 'none' }>, chosenBy: SizedPart['chosenBy'], why: string): SizedPart => ({
  role: 'regulator',
  name: stage.name,
  count: 1,
  chosenBy,
  why,
  numbers: [
    { name: 'output', value: stage.outputVolts, unit: 'V' },
    { name: 'rated current', value: stage.ratedAmps, unit: 'A' },
  ],
  basis: stage.basis,
  cubicMetres: stage.kind === 'buck' ? SMALL_VOLUMES.stepDown : SMALL_VOLUMES.regulator,
});

const isRail = (volts: number, rail: number): boolean => Math.abs(volts - rail) < 0.01 * rail;

/** What is chosen, as a stage of the chain and as parts to buy. */
const linear = (row: LinearRegulator, railVolts: number, railFarads: number, chosenBy: SizedPart['chosenBy'], why: string): StageChoice => {
  const stage = row.family === 'adjustable' ? linearStage(row, railVolts) : linearStage(row);
  return { stage, parts: [partOf(stage, chosenBy, why), ...linearCompanions({ part: row, outputVolts: stage.outputVolts, railFarads })] };
};

const stepDown = (row: BuckRow, railVolts: number, chosenBy: SizedPart['chosenBy'], why: string): StageChoice => {
  const stage = buckStage(row, railVolts);
  return { stage, parts: [partOf(stage, chosenBy, why), ...buckCompanions(railVolts)] };
};

/** A catalogue row by its name in either list. */
function named(id: string, railVolts: number, railFarads: number): StageChoice {
  if (BUCKS.some((row) => row.id === id)) return stepDown(buck(id), railVolts, 'plan', 'Named in the plan.');
  const row = linearRegulator(id);
  if (row.family !== 'adjustable' && !isRail(row.outputVolts, railVolts)) {
    throw new InputError('parts.regulator', id, { expected: `a regulator that gives ${railVolts} V` });
  }
  return linear(row, railVolts, railFarads, 'plan', 'Named in the plan.');
}

/**
 * Picks the regulator for the plan's rail: the named one, or the catalogue's of the kind asked for; the adjustable one
 * where that kind is not made for these volts. Throws `InputError` for a name that is not in the catalogue or does not
 * give the rail's volts.
 */
export function chooseStage({ rail, parts }: Pick<SupplyPlan, 'rail' | 'parts'>, everythingAmps: number): StageChoice {
  const { regulation, volts } = rail;
  const railFarads = parts.railFarads ?? 0;
  if (parts.regulator !== undefined) return named(parts.regulator, volts, railFarads);
  if (regulation === 'none') return { stage: { kind: 'none', designVolts: volts }, parts: [] };
  if (regulation === 'buck') {
    const row = BUCKS.find((each) => each.realisticAmps >= everythingAmps) ?? buck('buck-150k');
    return stepDown(row, volts, 'sized', 'The first step-down module that bears the load; it draws little from the winding and stays cool.');
  }
  const row = LINEAR_REGULATORS.find((each) => each.family === regulation && isRail(each.outputVolts, volts));
  if (row !== undefined) return linear(row, volts, railFarads, 'sized', `The ${regulation === 'fixed' ? 'fixed' : 'low-dropout'} type made for ${volts} V.`);
  const why = regulation === 'adjustable' ? 'Adjustable, as asked for; its tab is the output and must be insulated.' : `No ${regulation} type is made for ${volts} V: the adjustable one stands in. Its tab is the output and must be insulated.`;
  return linear(linearRegulator('317'), volts, railFarads, 'sized', why);
}
