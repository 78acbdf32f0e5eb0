import { InputError } from '../errors.ts';
import { branchCurrents } from './branch-currents.ts';
import type { BranchCurrent } from './branch-currents.ts';
import { groundLinks } from './ground-links.ts';
import { checkJob } from './job.ts';
import type { GroundingJob } from './job.ts';
import { solveCircuit } from './solve-circuit.ts';

/**
 * What a fault goes on to do once it has ruined a diode: silicon that overheats fails as a short circuit, and the
 * winding that was shorted for half of each cycle is shorted for all of it. Every branch, against the same circuit with
 * the diode whole. `diode` is the id of its branch. The failed diode is taken as 10 mΩ (assumed).
 * Throws `InputError` for a job out of range or a diode that it does not have, `SolveError` without a steady state.
 */
export function solveShortedDiode(options: { readonly job: GroundingJob; readonly diode: string }): readonly BranchCurrent[] {
  const job = checkJob(options.job);
  const links = groundLinks(job);
  const whole = solveCircuit({ job, links });
  const diodes = whole.circuit.branches.filter((branch) => branch.kind === 'diode').map((branch) => branch.id);
  if (!diodes.includes(options.diode)) throw new InputError('diode', options.diode, { expected: diodes.join(', ') || 'a supply with a rectifier' });
  return branchCurrents({ connected: solveCircuit({ job, links, shortedDiode: options.diode }), alone: whole });
}
