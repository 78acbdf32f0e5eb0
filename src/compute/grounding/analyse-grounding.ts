import { bySeverity } from '../findings.ts';
import type { Finding } from '../findings.ts';
import { branchCurrents } from './branch-currents.ts';
import { clearingOptions, pointsByPreference } from './clearing.ts';
import { exposureFindings } from './findings/exposure-findings.ts';
import { fuseFindings } from './findings/fuse-findings.ts';
import { heaterFindings } from './findings/heater-findings.ts';
import { insulationFindings } from './findings/insulation-findings.ts';
import { leakageFindings } from './findings/leakage-findings.ts';
import { secondGroundFindings } from './findings/second-ground-findings.ts';
import { primaryCurrent, secondaryFuse } from './fuses-in-fault.ts';
import { groundLinks, groundPoints } from './ground-links.ts';
import type { GroundLink, GroundPoint } from './ground-links.ts';
import type { GroundingAnalysis, GroundingFacts, GroundingSolution } from './grounding-result.ts';
import { heaterBalance } from './heater-balance.ts';
import { jackPotentials } from './jack-potentials.ts';
import { checkJob } from './job.ts';
import type { GroundingJob } from './job.ts';
import { firstToOverheat, partStresses } from './overheating.ts';
import { breakdowns, dividerOpens, leakageTouch } from './single-faults.ts';
import { solveCircuit } from './solve-circuit.ts';
import type { SolvedCircuit } from './solve-circuit.ts';

/** Solves each set of links once, however often it is asked for. */
const solverOf = (job: GroundingJob): ((links: readonly GroundLink[]) => SolvedCircuit) => {
  const known = new Map<string, SolvedCircuit>();
  return (links) => {
    const key = links.map((link) => link.id).join(' ');
    const before = known.get(key);
    if (before) return before;
    const solved = solveCircuit({ job, links });
    known.set(key, solved);
    return solved;
  };
};

const compare = (job: GroundingJob, solve: (links: readonly GroundLink[]) => SolvedCircuit): GroundingSolution => {
  const links = groundLinks(job);
  const points = groundPoints(links);
  const kept: GroundPoint | undefined = pointsByPreference(job, points)[0];
  const connected = solve(links);
  const alone = points.length > 1 && kept ? solve(kept.links) : connected;
  const branches = branchCurrents({ connected, alone });
  const circulating = branches
    .filter((branch) => branch.kind === 'ground-link')
    .reduce((most, branch) => ({ rmsAmps: Math.max(most.rmsAmps, branch.excessRmsAmps), peakAmps: Math.max(most.peakAmps, branch.excessPeakAmps) }), {
      rmsAmps: 0,
      peakAmps: 0,
    });
  const railOf = (solved: SolvedCircuit) => solved.figures(solved.volts('positive', 'negative'));
  const rail = railOf(connected);
  const primary = primaryCurrent({ job, connected, alone });
  const fuse = secondaryFuse(job, connected);
  return {
    job,
    links,
    points,
    ...(kept ? { kept } : {}),
    branches,
    circulating,
    rail: { meanVolts: rail.mean, minVolts: rail.min, maxVolts: rail.max, aloneMeanVolts: railOf(alone).mean },
    railAboveChassis: {
      positiveVolts: connected.figures(connected.volts('positive')).mean,
      negativeVolts: connected.figures(connected.volts('negative')).mean,
    },
    jacks: jackPotentials(job, connected),
    ...(job.supply.kind === 'winding' && job.supply.heaterOhms !== undefined ? { heater: heaterBalance(connected) } : {}),
    ...(primary ? { primary } : {}),
    ...(fuse ? { secondaryFuse: fuse } : {}),
  };
};

/**
 * Where current flows with the grounds as connected: every branch, against the same circuit with one ground only.
 * Two solutions of the circuit and no judgement: quick enough to follow a reader who switches grounds on and off.
 * Throws `InputError` for a job out of range, `SolveError` for a circuit without a steady state.
 */
export function solveGrounding(job: GroundingJob): GroundingSolution {
  return compare(checkJob(job), solverOf(job));
}

const faultStresses = (job: GroundingJob, branches: GroundingSolution['branches']): GroundingFacts['stresses'] =>
  partStresses(
    job,
    branches.filter((branch) => branch.isFault),
  );

/**
 * What can be said of a solution without solving anything further: a second ground and what it burns, fuses, who can
 * touch the rail, the balance of heaters. Ways out of a second ground, leakage, insulation and single failures are left
 * to `analyseGrounding`, so this alone never shows that a rail is within its limits. Most serious first.
 */
export function firstGroundingFindings(solution: GroundingSolution): readonly Finding[] {
  const stresses = faultStresses(solution.job, solution.branches);
  const first = firstToOverheat(stresses);
  const facts: GroundingFacts = { ...solution, stresses, ...(first ? { firstToOverheat: first } : {}), options: [], singleFaults: [] };
  return [secondGroundFindings, fuseFindings, exposureFindings, heaterFindings].flatMap((rules) => rules(facts)).sort(bySeverity);
}

/**
 * The whole analysis of a job's grounds: currents, what overheats first and roughly when (estimates), which connection
 * is one too many, what removes the fault, what a converter's leakage and a single failure do, and the findings.
 *
 * Assumes the circuit of `groundingCircuit`; the voltages, ratings and insulation are those given, and what is not
 * given is `not assessed`. Volts are at the mains voltage given: ask at high mains for the worst.
 * Throws `InputError` for a job out of range, `SolveError` for a circuit without a steady state.
 * Source: solved circuit; limits with each finding.
 */
export function analyseGrounding(job: GroundingJob): GroundingAnalysis {
  checkJob(job);
  const solve = solverOf(job);
  const solution = compare(job, solve);
  const { links, points, branches } = solution;
  const stresses = faultStresses(job, branches);
  // A pressed switch returns its coil's current through the chassis, as it should; ways out are compared without it.
  const released = job.connections.jacks.map((jack) => ({ ...jack, pressed: false }));
  const anyPressed = job.connections.jacks.some((jack) => jack.pressed);
  const solveReleased = anyPressed ? solverOf({ ...job, connections: { ...job.connections, jacks: released } }) : solve;
  const first = firstToOverheat(stresses);
  const leakage = leakageTouch(job, links);
  const opened = dividerOpens(job, links);
  const facts: GroundingFacts = {
    ...solution,
    stresses,
    ...(first ? { firstToOverheat: first } : {}),
    options: clearingOptions({ job, points, solve: solveReleased }),
    ...(leakage ? { leakage } : {}),
    singleFaults: [...breakdowns(job, links), ...(opened ? [opened] : [])],
  };
  const findings = [secondGroundFindings, fuseFindings, exposureFindings, insulationFindings, leakageFindings, heaterFindings].flatMap((rules) => rules(facts));
  return { ...facts, findings: findings.sort(bySeverity) };
}
