import type { BranchKind } from './circuit.ts';
import type { CircuitNode } from './ground-links.ts';
import { FAULT_AMPS } from './limits.ts';
import type { SolvedCircuit } from './solve-circuit.ts';

/** Current of one branch as the amp is connected, and what of it a single ground would not let flow. */
export interface BranchCurrent {
  readonly id: string;
  readonly kind: BranchKind;
  readonly name: string;
  readonly from: CircuitNode;
  readonly to: CircuitNode;
  readonly rmsAmps: number;
  readonly peakAmps: number;
  readonly meanAmps: number;
  /** Mean of volts times amps: heat for a diode or a resistor, negative for what delivers. */
  readonly watts: number;
  /** The same branch with one ground only. */
  readonly alone: { readonly rmsAmps: number; readonly peakAmps: number; readonly watts: number };
  /** RMS and peak of the difference between the two waveforms. */
  readonly excessRmsAmps: number;
  readonly excessPeakAmps: number;
  /** It carries current that would not flow with one ground only. */
  readonly isFault: boolean;
}

/**
 * Currents of every branch in `connected`, against `alone`, the same circuit with one ground only.
 * A branch counts as part of the fault when the difference exceeds a milliampere and a fiftieth of its own current,
 * which is well above what two solutions differ by in accuracy.
 */
export function branchCurrents(options: { readonly connected: SolvedCircuit; readonly alone: SolvedCircuit }): readonly BranchCurrent[] {
  const { connected, alone } = options;
  const same = connected === alone;
  const power = (solved: SolvedCircuit, id: string, from: CircuitNode, to: CircuitNode): number => {
    const volts = solved.volts(from, to);
    return solved.figures(solved.amps(id).map((amps, index) => amps * (volts[index] ?? 0))).mean;
  };
  return connected.circuit.branches.map((branch) => {
    const { id, kind, name, from, to } = branch;
    const values = connected.amps(id);
    const now = connected.figures(values);
    const watts = power(connected, id, from, to);
    const without = alone.amps(id);
    const before = same ? now : alone.figures(without);
    // Both solutions give the same even instants of the period, so their waves subtract sample by sample.
    const excess = same ? undefined : connected.figures(values.map((amps, index) => amps - (without[index] ?? 0)));
    const excessRmsAmps = excess?.rms ?? 0;
    return {
      id,
      kind,
      name,
      from,
      to,
      rmsAmps: now.rms,
      peakAmps: now.peak,
      meanAmps: now.mean,
      watts,
      alone: { rmsAmps: before.rms, peakAmps: before.peak, watts: same ? watts : power(alone, id, from, to) },
      excessRmsAmps,
      excessPeakAmps: excess?.peak ?? 0,
      isFault: excessRmsAmps > Math.max(FAULT_AMPS, now.rms / 50),
    };
  });
}
