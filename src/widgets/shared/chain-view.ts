/* What the calculators on a solved chain (winding, rectifier, reservoir, regulator or none) show alike. */
import { SolveError } from '../../compute/errors.ts';
import type { Finding, Level } from '../../compute/findings.ts';
import type { ChainSolution, SolvedCorner, WorstCorners } from '../../compute/supplies/chain-types.ts';
import type { Mains, MainsState } from '../../compute/supplies/corners.ts';
import type { VoltageStair } from '../../compute/supplies/voltage-stairs.ts';
import type { Stair } from './stairs.tsx';
import { showMarked, showQuantity } from './units.ts';

/** "low mains · 108 V" */
export function mainsName(mains: Mains, state: MainsState): string {
  const volts = { low: mains.lowVolts, nominal: mains.nominalVolts, high: mains.highVolts }[state];
  return `${state} mains · ${showMarked(volts, 'V')}`;
}

/** The verdict of a rule among findings; `not assessed` when the rule was not applied. */
export function levelOfRule(findings: readonly Finding[], rule: string): Level {
  return findings.find((finding) => finding.rule === rule)?.level ?? 'not assessed';
}

/** The corners that decide. Throws `SolveError` when not one corner could be solved: there is nothing to show then. */
export function decidingCorners(chain: ChainSolution): WorstCorners {
  if (chain.worst === undefined) {
    const [first] = chain.unsolved;
    throw new SolveError(first?.reason ?? 'no-convergence', first?.message ?? 'no corner could be solved.');
  }
  return chain.worst;
}

/** Everything on, the reservoir as marked, at one state of the mains: what a meter would show. */
export function expectedCorner(chain: ChainSolution, state: MainsState): SolvedCorner | undefined {
  return chain.corners
    .filter((at) => at.solved)
    .find(({ corner }) => corner.mains === state && corner.load === 'everything' && corner.reservoir === (state === 'high' ? 'largest' : 'marked'));
}

const LEVEL_NAMES: Partial<Record<VoltageStair['name'], string>> = {
  'winding-peak': 'peak of the winding',
  'reservoir-top': 'after copper and diodes',
  valley: 'ripple valley',
  rail: 'rail',
};

/**
 * The chain's stairs as levels to draw, what is needed of the valley behind it. Losses between two levels become the
 * words of the lower one.
 */
export function levelsOf(stairs: readonly VoltageStair[], needed?: { readonly name: string; readonly volts: number }): readonly Stair[] {
  const levels: Stair[] = [];
  let lost: string[] = [];
  const valley = stairs.find(({ name }) => name === 'valley')?.volts ?? 0;
  // A rail that is not reached is only asked for.
  const short = needed !== undefined && valley < needed.volts;
  for (const stair of stairs) {
    if (stair.kind === 'loss') {
      if (Math.abs(stair.volts) >= 0.005) lost.push(`${stair.words.toLowerCase()} ${showQuantity(stair.volts, 'V')}`);
      continue;
    }
    const usual = LEVEL_NAMES[stair.name];
    if (usual === undefined) continue;
    const name = stair.name === 'rail' && short ? 'rail asked for' : usual;
    const words = stair.name === 'rail' || lost.length === 0 ? {} : { lost: lost.join(', ') };
    levels.push({ name, volts: stair.volts, ...words });
    if (stair.name === 'valley' && needed !== undefined) levels.push({ ...needed, needed: true });
    lost = [];
  }
  return levels;
}
