import type { Basis, Finding, FindingNumber, Level, Source } from '../findings.ts';
import { formatQuantity } from '../quantity.ts';
import type { Unit } from '../quantity.ts';

/** What every check is told beside its numbers. */
export interface CheckContext {
  /** The operating corner that the figures are of, in words: "low mains, everything on, aged reservoir". */
  readonly corner: string;
  /** What the figures rest on. */
  readonly restsOn: readonly Basis[];
  /** Where the limit comes from; each check has its own default. */
  readonly source?: Source;
}

/** Words of a finding that differ with its level. */
export type Advice = Readonly<Record<'within' | 'marginal' | 'outside' | 'hazard', string>>;

/** A quantity in a sentence. */
export const say = (value: number, unit: Unit): string => formatQuantity({ value, unit });

/** A number of a finding. */
export const figure = (name: string, value: number, unit: string): FindingNumber => ({ name, value, unit });

/** Puts a finding together. */
export function finding(options: {
  readonly rule: string;
  readonly level: Level;
  readonly what: string;
  readonly numbers: readonly FindingNumber[];
  readonly why: string;
  readonly todo: string;
  readonly context: CheckContext;
  readonly source: Source;
  readonly harm?: Finding['harm'];
}): Finding {
  const { rule, level, what, numbers, why, todo, context, harm } = options;
  return {
    rule, level, what, numbers, worstCorner: context.corner, why, todo, restsOn: context.restsOn, source: context.source ?? options.source,
    ...(harm === undefined ? {} : { harm }),
  };
}

/** Level of a load against its limit: `within` up to `aim` (a ratio of the limit), `marginal` up to the limit, then `outside`. */
export function levelOfLoad(options: { readonly value: number; readonly limit: number; readonly aim: number }): Level {
  const { value, limit, aim } = options;
  if (!Number.isFinite(value) || !Number.isFinite(limit)) return 'not assessed';
  if (value > limit) return 'outside';
  return value > limit * aim ? 'marginal' : 'within';
}
