import { isInsulationKnown, reachesOutside } from './exposure.ts';
import type { GroundLink, GroundPoint } from './ground-links.ts';
import type { GroundingJob } from './job.ts';
import { FAULT_AMPS } from './limits.ts';
import type { SolvedCircuit } from './solve-circuit.ts';

/** One way to be rid of the fault: the ground that stays and those that go. */
export interface ClearingOption {
  readonly keep: GroundPoint;
  readonly remove: readonly GroundLink[];
  /** By solution: the most by which a winding, diode or load current departs from that with another single ground, RMS. */
  readonly remainingAmps: number;
  readonly clears: boolean;
  /** No other option takes away fewer. */
  readonly isSmallest: boolean;
  /** What must also be done for the ground that stays to be the one bond the rail should have; empty when nothing. */
  readonly then: string;
}

/**
 * Points in the order in which they should be kept. A rail that reaches a jack or a hand, or whose insulation nobody
 * vouches for, keeps its negative on the chassis; a heater winding's own reference is kept only for a rail that is
 * entirely internal, with insulation that is known.
 */
export function pointsByPreference(job: GroundingJob, points: readonly GroundPoint[]): readonly GroundPoint[] {
  const { connections, supply } = job;
  const internalHeater =
    supply.kind === 'winding' &&
    supply.windingKind === 'heater' &&
    !reachesOutside(connections) &&
    isInsulationKnown({ connections, mainsVolts: job.mainsVolts });
  const rank = (point: GroundPoint): number => {
    if (internalHeater && point.links.some((link) => link.kind === 'winding-reference')) return 0;
    if (point.node === 'negative') return 1;
    if (point.links.some((link) => link.kind === 'rail-reference')) return 2;
    if (point.links.some((link) => link.kind === 'winding-reference')) return 3;
    return 4;
  };
  return [...points].sort((a, b) => rank(a) - rank(b));
}

const followUp = (job: GroundingJob, keep: GroundPoint): string => {
  if (keep.node !== 'negative') {
    return reachesOutside(job.connections) ? 'the rail then has no bond of its own, so nothing of it may stay on a jack or within reach' : '';
  }
  const inside = keep.links.filter((link) => link.kind !== 'outside-sleeve' && link.isWire);
  if (inside.length === 0) return "bond the rail's negative to the chassis once, inside: the outside lead is not always plugged in";
  if (keep.links.length > 1) return 'leave one of the paths that join the negative to the chassis and take the others away, since they form a loop';
  return '';
};

const SUPPLY_PARTS = new Set(['winding', 'half-winding', 'diode', 'reservoir', 'load', 'converter']);

/** The most by which the RMS current of a part of the supply differs between two solutions. */
const departure = (a: SolvedCircuit, b: SolvedCircuit): number =>
  Math.max(
    ...a.circuit.branches
      .filter((branch) => SUPPLY_PARTS.has(branch.kind))
      .map((branch) => Math.abs(a.figures(a.amps(branch.id)).rms - b.figures(b.amps(branch.id)).rms)),
  );

/**
 * Every way of leaving one grounded point only, best first, each solved to see that the fault is gone: with one ground,
 * whichever it is, the supply's own currents must come out the same.
 * `solve` is given the links that stay. With one point or none there is nothing to clear.
 */
export function clearingOptions(options: {
  readonly job: GroundingJob;
  readonly points: readonly GroundPoint[];
  readonly solve: (links: readonly GroundLink[]) => SolvedCircuit;
}): readonly ClearingOption[] {
  const { job, points, solve } = options;
  if (points.length < 2) return [];
  const fewest = Math.min(...points.map((keep) => points.reduce((sum, point) => sum + (point === keep ? 0 : point.links.length), 0)));
  const ordered = pointsByPreference(job, points);
  return ordered.map((keep, index) => {
    const remove = points.filter((point) => point !== keep).flatMap((point) => point.links);
    const remainingAmps = departure(solve(keep.links), solve(ordered[index === 0 ? 1 : 0]?.links ?? []));
    return { keep, remove, remainingAmps, clears: remainingAmps < FAULT_AMPS, isSmallest: remove.length === fewest, then: followUp(job, keep) };
  });
}
