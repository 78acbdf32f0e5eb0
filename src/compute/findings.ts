/**
 * What a check says of a plan, and how strongly.
 *
 * `within` inside the limit at the worst corner; `marginal` inside it with less than the margin asked for;
 * `outside` beyond a limit: it will not work or will not last; `hazard` somebody can be hurt or something can burn;
 * `not assessed` a fact is missing that nobody has vouched for.
 */
export type Level = 'within' | 'marginal' | 'outside' | 'hazard' | 'not assessed';

/** What a figure stands on, strongest first. */
export type Basis = 'measured' | 'rated' | 'typical' | 'assumed';

/** The kind of harm a hazard courts. */
export type Harm = 'shock' | 'fire' | 'damage' | 'noise';

/** Where a figure or a rule comes from: a standard, a document, or the module's own solution. */
export interface Source {
  /** Key of an entry in content/sources, or `solved` for a figure that comes out of the circuit. */
  readonly id: string;
  /** Clause, table or page within it, where that helps. */
  readonly at?: string;
}

/** One number inside a finding, in SI units. */
export interface FindingNumber {
  readonly name: string;
  readonly value: number;
  /** SI unit symbol: V, A, Ω, F, H, Hz, W, s, J, K/W, °C, A²s, or '' for a ratio. */
  readonly unit: string;
}

/** One thing a check found. */
export interface Finding {
  /** Stable kebab-case name of the rule, e.g. `regulator-valley`. */
  readonly rule: string;
  readonly level: Level;
  /** What was found, one sentence, numbers included, as shown to the reader. */
  readonly what: string;
  readonly numbers: readonly FindingNumber[];
  /** The operating corner at which the figure is worst, in words: "low mains, everything on, aged reservoir". */
  readonly worstCorner?: string;
  /** Why it matters. */
  readonly why: string;
  /** What to do; for a `hazard`, what to do instead. */
  readonly todo: string;
  readonly restsOn: readonly Basis[];
  readonly source: Source;
  readonly harm?: Harm;
}

const RANK: Record<Level, number> = { hazard: 4, outside: 3, 'not assessed': 2, marginal: 1, within: 0 };

/** Compares two levels, the more serious first (for `Array.prototype.sort`). */
export const bySeverity = (a: { readonly level: Level }, b: { readonly level: Level }): number =>
  RANK[b.level] - RANK[a.level];

/** The most serious level among findings; `not assessed` when there are none, since nothing was checked. */
export function worstLevel(findings: readonly { readonly level: Level }[]): Level {
  return [...findings].sort(bySeverity)[0]?.level ?? 'not assessed';
}

/**
 * Level of a margin: `outside` below zero, `marginal` below `wanted`, `within` from there on.
 * `margin` and `wanted` in the same unit; a margin that is not a number is `not assessed`.
 */
export function levelOfMargin(options: { readonly margin: number; readonly wanted: number }): Level {
  const { margin, wanted } = options;
  if (!Number.isFinite(margin)) return 'not assessed';
  if (margin < 0) return 'outside';
  return margin < wanted ? 'marginal' : 'within';
}
