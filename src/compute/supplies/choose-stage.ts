import { InputError } from '../errors.ts';
import { BUCKS, buck } from '../parts/regulator-switching.ts';
import { LINEAR_REGULATORS, linearRegulator } from '../parts/regulator-linear.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import { buckStage, linearStage } from './chain-parts.ts';
import type { ChainStage } from './chain-types.ts';
import { SMALL_VOLUMES } from './part-volumes.ts';
import type { SizedPart } from './supply-types.ts';

export interface StageChoice {
  readonly stage: ChainStage;
  /** Undefined without a regulator. */
  readonly part: SizedPart | undefined;
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

/** A catalogue row by its name in either list. */
function named(id: string, railVolts: number): ChainStage {
  if (BUCKS.some((row) => row.id === id)) return buckStage(buck(id), railVolts);
  const row = linearRegulator(id);
  if (row.family === 'adjustable') return linearStage(row, railVolts);
  if (!isRail(row.outputVolts, railVolts)) throw new InputError('parts.regulator', id, { expected: `a regulator that gives ${railVolts} V` });
  return linearStage(row);
}

/**
 * Picks the regulator for the plan's rail: the named one, or the catalogue's of the kind asked for; the adjustable one
 * where that kind is not made for these volts. Throws `InputError` for a name that is not in the catalogue or does not
 * give the rail's volts.
 */
export function chooseStage({ rail, parts }: Pick<SupplyPlan, 'rail' | 'parts'>, everythingAmps: number): StageChoice {
  const { regulation, volts } = rail;
  if (parts.regulator !== undefined) {
    const stage = named(parts.regulator, volts);
    return { stage, part: stage.kind === 'none' ? undefined : partOf(stage, 'plan', 'Named in the plan.') };
  }
  if (regulation === 'none') return { stage: { kind: 'none', designVolts: volts }, part: undefined };
  if (regulation === 'buck') {
    const row = BUCKS.find((each) => each.realisticAmps >= everythingAmps) ?? buck('buck-150k');
    const stage = buckStage(row, volts);
    return { stage, part: partOf(stage, 'sized', 'The first step-down module that bears the load; it draws little from the winding and stays cool, and needs a filter behind it.') };
  }
  const row = LINEAR_REGULATORS.find((each) => each.family === regulation && isRail(each.outputVolts, volts));
  if (row !== undefined) {
    const stage = linearStage(row);
    return { stage, part: partOf(stage, 'sized', `The ${regulation === 'fixed' ? 'fixed' : 'low-dropout'} type made for ${volts} V.`) };
  }
  const stage = linearStage(linearRegulator('317'), volts);
  const why = regulation === 'adjustable' ? 'Adjustable, as asked for; its tab is the output and must be insulated.' : `No ${regulation} type is made for ${volts} V: the adjustable one stands in. Its tab is the output and must be insulated.`;
  return { stage, part: partOf(stage, 'sized', why) };
}
