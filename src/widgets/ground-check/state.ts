import { worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { analyseGrounding, firstGroundingFindings, solveGrounding } from '../../compute/grounding/analyse-grounding.ts';
import type { ClearingOption } from '../../compute/grounding/clearing.ts';
import type { GroundingAnalysis, GroundingSolution } from '../../compute/grounding/grounding-result.ts';
import type { HeaterBalance } from '../../compute/grounding/heater-balance.ts';
import type { ContactPotential } from '../../compute/grounding/jack-potentials.ts';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import { showQuantity } from '../shared/units.ts';
import { fields, type Values } from './fields.ts';
import { jobOf, loadOhmsOf, mainsVoltsAt } from './job.ts';
import { closedPoints, FIELD_OF, isWinding, namesOf, pointOfLink, type GroundField } from './points.ts';
import { drawnSheet, faultCarriers, pointStates, type DrawnSheet, type PointState } from './sheet.ts';
import { showAmps } from './show-amps.ts';
import { workingOf } from './working.ts';

/** A change of switches that is rid of the fault. */
export interface Cure {
  readonly label: string;
  /** What must be done besides; empty when nothing. */
  readonly then: string;
  readonly open: readonly GroundField[];
}

/** The same at one state of the mains. */
export interface AtMains {
  readonly name: string;
  readonly betweenAmps: number;
  readonly railVolts: number;
}

export interface GroundCheckView extends ViewModel {
  readonly points: readonly PointState[];
  readonly sheet: DrawnSheet;
  /** The drawing in words. */
  readonly description: string;
  readonly corners: readonly CornerFigure[];
  readonly contacts: readonly ContactPotential[];
  readonly heater?: HeaterBalance;
  readonly cures: readonly Cure[];
  /** Empty in the quick answer. */
  readonly atMains: readonly AtMains[];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

const list = (words: readonly string[]): string => (words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`);

const grounded = (values: Values): readonly string[] => [...closedPoints(values)].filter((point) => point !== 'gear' || values.jack !== 'chassis').map((point) => `the ${namesOf(point, values).name}`);

/** What flows, in one sentence. */
function flowWords(values: Values, solution: GroundingSolution): string {
  const { points, circulating, rail, primary } = solution;
  if (points.length === 0) return 'nothing is grounded, so no current has a second way; the rail floats, and leakage alone decides where';
  if (points.length === 1) return `one ground, ${list(grounded(values))}: no supply current has a second way, and the rail reads ${showQuantity(rail.meanVolts, 'V')}`;
  const fuse = primary?.fuse === undefined ? '' : `, and the mains fuse carries ${showAmps(primary.fuse.amps)}`;
  return `grounded at ${list(grounded(values))}, ${showAmps(circulating.rmsAmps)} RMS flows that would not with one ground; the rail still reads ${showQuantity(rail.meanVolts, 'V')}${fuse}`;
}

/** Two grounds are the hazard that their currents tell of; with one or none any other comes first. */
const summaryOf = (values: Values, solution: GroundingSolution, findings: readonly Finding[]): string => {
  const flow = flowWords(values, solution);
  return solution.points.length > 1 ? flow : leadWithHazard(findings, flow);
};

const hottestOf = ({ branches }: GroundingSolution) =>
  branches.filter(({ kind }) => kind === 'winding' || kind === 'half-winding' || kind === 'converter').reduce<GroundingSolution['branches'][number] | undefined>((most, each) => (most === undefined || each.rmsAmps > most.rmsAmps * 1.01 ? each : most), undefined);

function cornersOf(values: Values, solution: GroundingSolution, findings: readonly Finding[]): readonly CornerFigure[] {
  const { points, circulating, rail, primary, job } = solution;
  const hottest = hottestOf(solution);
  const rated = job.supply.kind === 'winding' ? job.supply.ratedAmps : job.supply.limitAmps;
  const two = points.length > 1;
  const ratio = hottest === undefined || rated === undefined ? undefined : hottest.rmsAmps / rated;
  const windingLevel: Level = ratio === undefined ? 'not assessed' : ratio <= 1 ? 'within' : 'outside';
  return [
    {
      name: `between grounds · ${isWinding(values) ? 'high mains' : 'as connected'}`, value: circulating.rmsAmps, unit: 'A', of: 'RMS',
      level: two ? levelOfRule(findings, 'second-ground') : points.length === 1 ? 'within' : 'not assessed',
      found: two ? `${showAmps(circulating.peakAmps)} at the peak` : points.length === 1 ? 'one ground' : 'no ground at all',
    },
    ...(hottest === undefined ? [] : [{
      name: job.supply.kind === 'converter' ? 'converter’s output' : hottest.kind === 'half-winding' ? 'in half of the winding' : 'in the winding', value: hottest.rmsAmps, unit: 'A', of: 'RMS',
      // A converter limits itself; what a winding may carry is its rating, and that of its halves the same.
      ...(job.supply.kind === 'converter' ? { found: `it gives ${showAmps(rated ?? 0)} into a short` } : { level: windingLevel, found: ratio === undefined ? 'no rating known' : ratio > 1 ? `${ratio.toPrecision(2)} times its rating` : `${showQuantity(ratio, '%', 2)} of its rating` }),
    } as const satisfies CornerFigure]),
    { name: 'rail, as a meter reads it', value: rail.meanVolts, unit: 'V', of: 'mean', found: two ? `${showQuantity(rail.aloneMeanVolts, 'V')} with one ground` : 'over the cycle' },
    ...(primary === undefined ? [] : [{
      name: 'mains fuse', value: primary.fuse?.amps ?? primary.rmsAmps, unit: 'A', of: 'RMS',
      found: primary.fuse === undefined ? 'this winding’s part; no fuse stated' : `${primary.fuse.ratio.toFixed(2)} of its rating, ${primary.fuse.opensWithinSeconds === undefined ? 'it need never open' : `may take ${showQuantity(primary.fuse.opensWithinSeconds, 's', 2)}`}`,
    } as const satisfies CornerFigure]),
  ];
}

function describe(points: readonly PointState[], solution: GroundingSolution, flow: string): string {
  const closed = points.filter(({ isClosed }) => isClosed).map(({ name, ampsText, isFault }) => `the ${name}${ampsText === undefined ? '' : ` with ${ampsText}${isFault ? ', part of the fault' : ''}`}`);
  const carriers = faultCarriers(solution).map(({ name, rmsAmps }) => `the ${name} ${showAmps(rmsAmps)}`);
  return `On the chassis: ${closed.length === 0 ? 'nothing' : list(closed)}. ${carriers.length === 0 ? 'No part carries a fault.' : `The fault runs through ${list(carriers)}.`} In short: ${flow}.`;
}

/** Everything that the two solutions alone decide. */
function viewOf(values: Values, solution: GroundingSolution, findings: readonly Finding[]): Omit<GroundCheckView, 'level'> {
  const points = pointStates(values, solution);
  return {
    summary: summaryOf(values, solution, findings),
    points,
    sheet: drawnSheet(values, solution),
    description: describe(points, solution, flowWords(values, solution)),
    corners: cornersOf(values, solution, findings),
    contacts: solution.jacks,
    ...(solution.heater === undefined ? {} : { heater: solution.heater }),
    cures: [],
    atMains: [],
    findings,
    working: workingOf(values, solution),
    handOn: [],
  };
}

const cureOf = (option: ClearingOption, values: Values): Cure => {
  const points = option.remove.flatMap((link) => pointOfLink(link, values) ?? []);
  return { label: `Take off the chassis: ${list(points.map((point) => namesOf(point, values).name))}`, then: option.then, open: points.map((point) => FIELD_OF[point]) };
};

/** The best way out, and the one of fewest changes where that is another. */
function curesOf({ options }: GroundingAnalysis, values: Values): readonly Cure[] {
  const working = options.filter(({ clears }) => clears);
  const [best] = working;
  const smallest = working.find((option) => option.isSmallest && best !== undefined && option.remove.length < best.remove.length);
  return [best, smallest].flatMap((option) => (option === undefined ? [] : [cureOf(option, values)]));
}

function solve(values: Values): GroundCheckView {
  const { ohms } = loadOhmsOf(values);
  const analysis = analyseGrounding(jobOf(values, 'high', ohms));
  const { findings } = analysis;
  const states = isWinding(values) && values.mainsSpread > 0 ? (['low', 'nominal', 'high'] as const) : [];
  return {
    ...viewOf(values, analysis, findings),
    level: worstLevel(findings),
    cures: curesOf(analysis, values),
    atMains: states.map((state) => {
      const solution = state === 'high' ? analysis : solveGrounding(jobOf(values, state, ohms));
      return { name: `${state} mains, ${showQuantity(mainsVoltsAt(values, state), 'V')}`, betweenAmps: solution.circulating.rmsAmps, railVolts: solution.rail.meanVolts };
    }),
  };
}

/** The currents at once; what breakdowns and leakage do, and the ways out, follow. */
function quick(values: Values): GroundCheckView {
  const solution = solveGrounding(jobOf(values, 'high', loadOhmsOf(values).ohms));
  const findings = firstGroundingFindings(solution);
  const worst = worstLevel(findings);
  return { ...viewOf(values, solution, findings), level: worst === 'hazard' || worst === 'outside' ? worst : 'not assessed' };
}

export const groundCheck = defineCalculator({
  id: 'ground-check',
  version: 1,
  question: 'If I ground it here and there, where does the current flow?',
  fields,
  quantities: {
    'supply.topology': 'topology', 'supply.openCircuitVolts': 'windingVolts', 'winding.openCircuitVolts': 'windingVolts', 'supply.ohms': 'windingOhms',
    'connections.winding.kind': 'centre', 'connections.winding.volts': 'liftVolts', 'connections.highTensionVolts': 'highVolts', 'connections.furtherGrounds': 'centre',
    'load.amps': 'loadAmps', loadOhms: 'loadAmps', ratedAmps: 'mainsFuse', 'mainsFuse.otherAmps': 'otherAmps', 'supply.outputVolts': 'railVolts', 'supply.limitAmps': 'limitAmps',
  },
  solve,
  quick,
});
