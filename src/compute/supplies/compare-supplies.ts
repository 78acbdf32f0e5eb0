import type { Finding, Level } from '../findings.ts';
import type { Approach, SupplyPlan } from '../plan/plan-types.ts';
import { supplyFromConverter } from './converter.ts';
import { supplyFromHeaterWinding } from './heater-winding.ts';
import type { HeaterSupply } from './heater-winding.ts';
import { supplyFromTransformer } from './separate-transformer.ts';
import { supplyFromSpareWinding } from './spare-winding.ts';
import type { Supply } from './supply-types.ts';

/** One approach's place in the order of preference. */
export interface Preference {
  readonly approach: Approach;
  /** In words: what speaks for it, or what stops it. */
  readonly reason: string;
}

/** The four ways for one job, by the same measures. */
export interface SupplyComparison {
  readonly supplies: {
    readonly 'spare-winding': Supply;
    readonly converter: Supply;
    readonly 'separate-transformer': Supply;
    readonly 'heater-winding': HeaterSupply;
  };
  /** Most preferred first. The heater winding is never first. */
  readonly order: readonly Preference[];
  /** The first that can be built as it stands; undefined when none can, and the job must change. */
  readonly recommended: Approach | undefined;
  readonly words: string;
}

const NAMES: Record<Approach, string> = {
  'spare-winding': 'The spare winding',
  converter: 'A converter module',
  'separate-transformer': 'A small separate transformer',
  'heater-winding': 'The heater winding',
};

/** Where nothing else decides: what exists already, then iron, then a switching part near an input. */
const HABIT: Record<Approach, number> = { 'spare-winding': 0, 'separate-transformer': 1, converter: 2, 'heater-winding': 3 };

/** 0 can be built as it stands, 1 a limit is passed, 2 somebody can be hurt or something burn, 3 it is not there. */
function tier(supply: Supply): number {
  const has = (level: Level): boolean => supply.findings.some((each) => each.level === level);
  if (!supply.available && !has('hazard')) return 3;
  return has('hazard') ? 2 : has('outside') ? 1 : 0;
}

/** How many of the measures are short of their margin. */
const blemishes = ({ measures }: Supply): number =>
  [measures.holds, measures.heat, measures.loading, measures.room, measures.ground].filter((each) => each.level === 'marginal').length;

function compare(a: Supply, b: Supply): number {
  // The heater winding comes behind whatever else is there at all, whatever its figures say.
  const last = (supply: Supply): number => (supply.available ? (supply.approach === 'heater-winding' ? 1 : 0) : 2);
  return last(a) - last(b) || tier(a) - tier(b) || blemishes(a) - blemishes(b) || HABIT[a.approach] - HABIT[b.approach];
}

/** The first of the most serious findings, which are sorted so. */
const most = (supply: Supply, levels: readonly Level[]): Finding | undefined => supply.findings.find((each) => levels.includes(each.level));

function reasonFor(supply: Supply): string {
  const { approach, measures } = supply;
  const name = NAMES[approach];
  const serious = most(supply, ['hazard', 'outside']);
  if (!supply.available) return `${name}: ${serious?.what ?? most(supply, ['not assessed'])?.what ?? 'it is not there.'}`;
  const last = approach === 'heater-winding' ? ' It is the last choice in any case: its pulses run past every grid, its ground is the valves’, and its loss ends the amp.' : '';
  if (serious !== undefined) return `${name} ${serious.level === 'hazard' ? 'is a hazard as it stands' : 'passes a limit'}: ${serious.what}${last}`;
  const open = supply.findings.filter((each) => each.level === 'not assessed').length;
  const unknown = open === 0 ? '' : ` ${open === 1 ? 'One thing is' : `${open} things are`} not assessed until somebody reads or measures ${open === 1 ? 'it' : 'them'}.`;
  return `${name} holds. ${measures.holds.words} It puts ${measures.heat.words} ${measures.mainsSide.words}${unknown}${last}`;
}

/**
 * The same job fed in all four ways, each sized where the plan leaves parts open, solved at every corner and judged, and
 * set side by side: does it hold, heat and where, loading, room, the mains side, grounds, hazards; with an order of
 * preference and its reasons in words.
 *
 * The order: what can be built as it stands before what passes a limit, that before what is a hazard, and what is not
 * there last; among equals the one with fewer thin margins, then what the amp already has, then iron before a switching
 * module. The heater winding comes behind the others, whatever its figures say.
 *
 * Parts and fuses named in a plan belong to the approach it has decided on; the other three are sized on their own
 * beside it (`openJob`). While nothing is decided they are used by all four. Throws `InputError` for parts that do not
 * exist or do not fit each other, and for loads the rail cannot drive.
 */
export function compareSupplies(job: SupplyPlan): SupplyComparison {
  const supplies = {
    'spare-winding': supplyFromSpareWinding(jobFor(job, 'spare-winding')),
    converter: supplyFromConverter(jobFor(job, 'converter')),
    'separate-transformer': supplyFromTransformer(jobFor(job, 'separate-transformer')),
    'heater-winding': supplyFromHeaterWinding(jobFor(job, 'heater-winding')),
  };
  const order = Object.values<Supply>(supplies).sort(compare);
  const first = order.find((supply) => tier(supply) === 0 && supply.approach !== 'heater-winding');
  return {
    supplies,
    order: order.map((supply) => ({ approach: supply.approach, reason: reasonFor(supply) })),
    recommended: first?.approach,
    words:
      first === undefined ?
        'None of the three better ways can be built for this job as it stands: change the load, the rail, the room or the grounds, not the rules.'
      : `${NAMES[first.approach]} suits this job best. ${reasonFor(first)}`,
  };
}

/**
 * The plan with its parts and fuses left open to be sized. What the regulator may be bolted to stays: it is a fact of
 * the amp.
 */
export function openJob(plan: SupplyPlan): SupplyPlan {
  const { heatsink } = plan.parts;
  return { ...plan, parts: heatsink === undefined ? {} : { heatsink }, protections: {} };
}

const jobFor = (plan: SupplyPlan, approach: Approach): SupplyPlan => (plan.approach === approach || plan.approach === 'undecided' ? plan : openJob(plan));
