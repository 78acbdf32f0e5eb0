import { fuseStandard, fuseTimes } from '../parts/fuse.ts';
import type { GroundingFuse, GroundingJob } from './job.ts';
import type { SolvedCircuit } from './solve-circuit.ts';

/** A fuse in the current that it carries. */
export interface FuseLoading {
  readonly ratedAmps: number;
  readonly amps: number;
  readonly ratio: number;
  /** Its standard says that it has opened by then; left out when it need never open. */
  readonly opensWithinSeconds?: number;
}

/** What the mains side sees of the winding that feeds the rail. */
export interface PrimaryCurrent {
  /** Reflected by the turns ratio, RMS, as connected and with one ground only (heaters on the same winding included). */
  readonly rmsAmps: number;
  readonly aloneRmsAmps: number;
  /** With what the rest of the amp draws added on, which is the most that it can be. */
  readonly fuse?: FuseLoading;
}

const loading = (fuse: GroundingFuse, amps: number): FuseLoading => {
  const { maxSeconds } = fuseTimes({ standard: fuseStandard(fuse.standard), ratedAmps: fuse.ratedAmps, amps: Math.min(amps, 1e4) });
  return { ratedAmps: fuse.ratedAmps, amps, ratio: amps / fuse.ratedAmps, ...(maxSeconds === undefined ? {} : { opensWithinSeconds: maxSeconds }) };
};

const reflected = (job: GroundingJob, solved: SolvedCircuit): number => {
  const { supply } = job;
  if (supply.kind !== 'winding') return 0;
  const ratio = supply.openCircuitVolts / job.mainsVolts;
  const primary = supply.hasCentreTap
    ? solved.amps('half-1').map((amps, index) => ((amps + (solved.amps('half-2')[index] ?? 0)) * ratio) / 2)
    : solved.amps('winding').map((amps) => amps * ratio);
  // A transformer passes no direct current: what a one-sided load draws as DC stays on its own side, in the core.
  return solved.figures(primary).acRms;
};

/**
 * Current that the winding's currents draw through the primary, by the ratio of mains volts to open-circuit volts.
 * Magnetising current is not included. A fault that is large on a 6 V winding is small here, often less than an amp.
 */
export function primaryCurrent(options: {
  readonly job: GroundingJob;
  readonly connected: SolvedCircuit;
  readonly alone: SolvedCircuit;
}): PrimaryCurrent | undefined {
  const { job, connected, alone } = options;
  if (job.supply.kind !== 'winding') return undefined;
  const rmsAmps = reflected(job, connected);
  const aloneRmsAmps = connected === alone ? rmsAmps : reflected(job, alone);
  return { rmsAmps, aloneRmsAmps, ...(job.mainsFuse ? { fuse: loading(job.mainsFuse, rmsAmps + job.mainsFuse.otherAmps) } : {}) };
}

/** The fuse between the winding's first end and the rectifier, in the current of the diodes at that end. */
export function secondaryFuse(job: GroundingJob, connected: SolvedCircuit): FuseLoading | undefined {
  if (job.supply.kind !== 'winding' || !job.secondaryFuse) return undefined;
  const back = connected.amps('diode-negative-to-first');
  const through = connected.amps('diode-first-to-positive').map((amps, index) => amps - (back[index] ?? 0));
  return loading(job.secondaryFuse, connected.figures(through).rms);
}
