import type { Source } from '../findings.ts';
import { formatQuantity } from '../quantity.ts';
import type { Unit } from '../quantity.ts';

/** A figure that enters or leaves a step of the working. */
export interface WorkingNumber {
  /** As it stands in the formula. */
  readonly symbol: string;
  readonly value: number;
  readonly unit: Unit;
  /** Significant digits as printed, where three would hide a small difference of large numbers. */
  readonly digits?: number;
}

/** One step of how a figure comes about, for a reader who checks it by hand. */
export interface WorkingStep {
  /** Stable kebab-case name. */
  readonly name: string;
  /** What is worked out, in a sentence. */
  readonly words: string;
  /** The formula in symbols, or what was solved when no formula gives it. */
  readonly formula: string;
  /** What stands for each symbol. */
  readonly numbers: readonly WorkingNumber[];
  /** The formula with the numbers in place of the symbols, ready to print. */
  readonly substituted: string;
  readonly result: WorkingNumber;
  readonly source: Source;
}

/** A number of the working as printed: three significant digits unless told. */
export const printed = ({ value, unit, digits = 3 }: Pick<WorkingNumber, 'value' | 'unit' | 'digits'>): string => formatQuantity({ value, unit, digits });

/**
 * Puts the numbers into the formula's right-hand side, longest symbol first so that `Vmax` is not taken for `V`, and
 * the result behind it. The formula must have the form `symbol = expression` or be plain words.
 */
export function workingStep(step: Omit<WorkingStep, 'substituted'>): WorkingStep {
  const [, expression] = step.formula.split(' = ');
  const result = printed(step.result);
  if (expression === undefined) return { ...step, substituted: result };
  const bySymbol = new Map(step.numbers.map((number) => [number.symbol, printed(number)]));
  const symbols = [...bySymbol.keys()].sort((a, b) => b.length - a.length).map((symbol) => symbol.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const filled =
    symbols.length === 0 ? expression
    : expression.replace(new RegExp(`(?<![\\p{L}\\p{N}])(?:${symbols.join('|')})(?![\\p{L}\\p{N}])`, 'gu'), (symbol) => bySymbol.get(symbol) ?? symbol);
  return { ...step, substituted: `${filled} = ${result}` };
}
