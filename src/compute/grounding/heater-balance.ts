import type { SolvedCircuit } from './solve-circuit.ts';
import { harmonicPeak } from './harmonic.ts';

/** How one end of the winding moves about the chassis. */
export interface LegSwing {
  readonly meanVolts: number;
  /** RMS without the mean. */
  readonly acVolts: number;
  readonly minVolts: number;
  readonly maxVolts: number;
}

/** How evenly the two ends of the winding, and the heaters between them, move about the chassis. */
export interface HeaterBalance {
  readonly first: LegSwing;
  readonly second: LegSwing;
  /** Half of the sum of both ends, without its mean, RMS: zero where they balance; what couples into a grid as hum. */
  readonly commonVolts: number;
  /** Its amplitude at the mains frequency: hum. */
  readonly humPeakVolts: number;
  /** Its amplitude at twice the mains frequency: buzz. */
  readonly buzzPeakVolts: number;
}

/**
 * Swing of each end of the winding about the chassis and what does not cancel between them.
 * Holds where the circuit is grounded somewhere; where it floats, the balance is set by strays that are not modelled.
 */
export function heaterBalance(solved: SolvedCircuit): HeaterBalance {
  const { nodes } = solved.circuit;
  const first = solved.volts(nodes.first);
  const second = solved.volts(nodes.second);
  const swing = (values: Float64Array): LegSwing => {
    const { mean, acRms, min, max } = solved.figures(values);
    return { meanVolts: mean, acVolts: acRms, minVolts: min, maxVolts: max };
  };
  const common = first.map((value, index) => (value + (second[index] ?? 0)) / 2);
  return {
    first: swing(first),
    second: swing(second),
    commonVolts: solved.figures(common).acRms,
    humPeakVolts: harmonicPeak({ values: common, order: 1 }),
    buzzPeakVolts: harmonicPeak({ values: common, order: 2 }),
  };
}
