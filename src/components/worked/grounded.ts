import { analyseGrounding, diodePart, type BranchCurrent, type GroundConnections, type GroundingAnalysis, type GroundingDiode, type GroundingJob } from '../../compute/index.ts';
import { given } from '../shop.ts';

/** How well a diode sheds its heat: makers of one type differ this far. */
export type Cooling = 'best' | 'worst';

/** A diode of the catalogue with everything that a fault is held against. */
export function ratedDiode(id: string, cooling: Cooling): GroundingDiode {
  const part = diodePart(id);
  return {
    ...part.typical,
    ratedMeanAmps: part.averageAmps * part.capacitiveLoadFactor,
    surgeAmps: part.surgeAmps,
    kelvinPerWatt: cooling === 'best' ? part.junctionToAmbient.min : part.junctionToAmbient.max,
    maxJunctionCelsius: part.junctionMaxCelsius,
  };
}

/** The same job with other connections. */
export const regrounded = (job: GroundingJob, change: Partial<GroundConnections>): GroundingJob => ({ ...job, connections: { ...job.connections, ...change } });

/** An analysis, with its branches, stresses and failures by name. */
export interface SolvedGrounds extends GroundingAnalysis {
  readonly branch: (id: string) => BranchCurrent;
  readonly stress: (id: string) => GroundingAnalysis['stresses'][number];
  readonly fault: (kind: GroundingAnalysis['singleFaults'][number]['kind']) => GroundingAnalysis['singleFaults'][number];
}

export function grounds(job: GroundingJob): SolvedGrounds {
  const analysis = analyseGrounding(job);
  return {
    ...analysis,
    branch: (id) => given(analysis.branches.find((each) => each.id === id), `a branch "${id}"`),
    stress: (id) => given(analysis.stresses.find((each) => each.branchId === id), `what the fault does to "${id}"`),
    fault: (kind) => given(analysis.singleFaults.find((each) => each.kind === kind), `a single fault "${kind}"`),
  };
}

/** What hangs on the two poles of a rail as a jack sees it: potentials above the chassis, mean, RMS without the mean, and peak. */
export function poleAboveChassis(job: GroundingJob, pole: 'rail-negative' | 'rail-positive'): { readonly dcVolts: number; readonly acVolts: number; readonly peakVolts: number } {
  const watched = regrounded(job, {
    jacks: [{ name: 'watched', mounting: 'insulated', tip: { kind: pole }, sleeve: { kind: 'isolated' }, touchable: false, gear: { kind: 'none' } }],
  });
  return given(analyseGrounding(watched).jacks[0], 'the potential of the rail');
}
