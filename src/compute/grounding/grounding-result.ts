import type { Finding } from '../findings.ts';
import type { BranchCurrent } from './branch-currents.ts';
import type { ClearingOption } from './clearing.ts';
import type { GroundLink, GroundPoint } from './ground-links.ts';
import type { HeaterBalance } from './heater-balance.ts';
import type { ContactPotential } from './jack-potentials.ts';
import type { GroundingJob } from './job.ts';
import type { PartStress } from './overheating.ts';
import type { FuseLoading, PrimaryCurrent } from './fuses-in-fault.ts';
import type { SingleFault, TouchReading } from './single-faults.ts';

/** Where current flows with the grounds as they are connected, against one ground only. */
export interface GroundingSolution {
  readonly job: GroundingJob;
  /** Every path to the chassis, and the same gathered by the point of the circuit that they ground. */
  readonly links: readonly GroundLink[];
  readonly points: readonly GroundPoint[];
  /** The point that the comparison keeps; left out when nothing is grounded. */
  readonly kept?: GroundPoint;
  /** Every branch, for a drawing to light: nodes are named as in `CircuitNodes`, `ground` is the chassis. */
  readonly branches: readonly BranchCurrent[];
  /** The largest current to the chassis that one ground only would not let flow. */
  readonly circulating: { readonly rmsAmps: number; readonly peakAmps: number };
  /** Between the rail's terminals, as a meter reads it, and what it would read with one ground only. */
  readonly rail: { readonly meanVolts: number; readonly minVolts: number; readonly maxVolts: number; readonly aloneMeanVolts: number };
  /** Mean potential of each rail terminal above the chassis; a 10 MΩ meter's reading where nothing is grounded. */
  readonly railAboveChassis: { readonly positiveVolts: number; readonly negativeVolts: number };
  readonly jacks: readonly ContactPotential[];
  /** Only for a winding that feeds valve heaters as well. */
  readonly heater?: HeaterBalance;
  readonly primary?: PrimaryCurrent;
  readonly secondaryFuse?: FuseLoading;
}

/** The solution judged: what burns, what removes the fault, what a single failure does. */
export interface GroundingAnalysis extends GroundingSolution {
  /** Parts that carry the fault, against their ratings. */
  readonly stresses: readonly PartStress[];
  readonly firstToOverheat?: PartStress;
  /** Ways to be rid of the fault, best first; empty when there is none. */
  readonly options: readonly ClearingOption[];
  readonly leakage?: TouchReading;
  readonly singleFaults: readonly SingleFault[];
  /** Most serious first. */
  readonly findings: readonly Finding[];
}

/** What the rules of the findings look at. */
export type GroundingFacts = Omit<GroundingAnalysis, 'findings'>;
