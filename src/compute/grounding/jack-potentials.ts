import { contactNode } from './circuit.ts';
import type { CircuitNode } from './ground-links.ts';
import type { GroundingJob } from './job.ts';
import { TOUCH_DC_VOLTS, TOUCH_PEAK_VOLTS, TOUCH_RMS_VOLTS } from './limits.ts';
import type { SolvedCircuit } from './solve-circuit.ts';

/** Potential of one contact of a jack above the chassis. */
export interface ContactPotential {
  /** Position of the jack in the connections. */
  readonly jack: number;
  readonly jackName: string;
  readonly side: 'tip' | 'sleeve';
  readonly node: CircuitNode;
  readonly dcVolts: number;
  /** RMS without the mean. */
  readonly acVolts: number;
  readonly peakVolts: number;
}

/** Potentials of every contact that is wired to the rail or the chassis, switches outside as they stand in the job. */
export function jackPotentials(job: GroundingJob, solved: SolvedCircuit): readonly ContactPotential[] {
  return job.connections.jacks.flatMap((jack, index) =>
    (['tip', 'sleeve'] as const).flatMap((side) => {
      const node = contactNode(job, index, side);
      if (node === undefined) return [];
      const { mean, acRms, peak } = solved.figures(solved.volts(node));
      return [{ jack: index, jackName: jack.name, side, node, dcVolts: mean, acVolts: acRms, peakVolts: peak }];
    }),
  );
}

/**
 * A contact is beyond extra-low voltage: its DC, RMS or peak passes what may be touched dry (IEC 62368-1, class 1).
 * With both present each is held to its own limit and their shares of it are added, as the standard adds them.
 */
export function isBeyondTouch(potential: { readonly dcVolts: number; readonly acVolts: number; readonly peakVolts: number }): boolean {
  const share = Math.abs(potential.dcVolts) / TOUCH_DC_VOLTS.value + potential.acVolts / TOUCH_RMS_VOLTS.value;
  const peakOfAc = potential.peakVolts - Math.abs(potential.dcVolts);
  return share > 1 || peakOfAc > TOUCH_PEAK_VOLTS.value;
}
