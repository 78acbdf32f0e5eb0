/**
 * The equations of a circuit at one instant, as devices write them: for each node the currents that leave it sum to
 * zero; for each branch that needs one (an ideal source) its own law. Unknowns are node voltages, then branch currents.
 * The reference node has place 0 in every array, is held at zero, and its row and column are ignored.
 */
export class NodeEquations {
  /** Unknowns without the reference node. */
  readonly size: number;
  readonly stride: number;
  readonly unknowns: Float64Array;
  readonly residual: Float64Array;
  readonly jacobian: Float64Array;
  /** Time of the instant, and the implicit step's own share: a state is `bases[k] + reach · (its rate)`. */
  seconds = 0;
  reach = 0;
  readonly bases: Float64Array;
  readonly rates: Float64Array;
  /** Conductance laid across every junction, so that a blocked node keeps an equation; raised only to find a start. */
  junctionSiemens = LEAST_SIEMENS;
  /** Set by a device that had to shorten its step: the solution is not one yet. */
  limited = false;

  constructor(size: number, states: number) {
    this.size = size;
    this.stride = size + 1;
    this.unknowns = new Float64Array(size + 1);
    this.residual = new Float64Array(size + 1);
    this.jacobian = new Float64Array((size + 1) * (size + 1));
    this.bases = new Float64Array(states);
    this.rates = new Float64Array(states);
  }

  clear(): void {
    this.residual.fill(0);
    this.jacobian.fill(0);
    this.limited = false;
  }

  volts(first: number, second: number): number {
    return (this.unknowns[first] as number) - (this.unknowns[second] as number);
  }

  /** A current from first to second node with its slope against the voltage between them. */
  addBranch(first: number, second: number, amps: number, siemens: number): void {
    const { residual, jacobian, stride } = this;
    residual[first] = (residual[first] as number) + amps;
    residual[second] = (residual[second] as number) - amps;
    const a = first * stride;
    const b = second * stride;
    jacobian[a + first] = (jacobian[a + first] as number) + siemens;
    jacobian[b + second] = (jacobian[b + second] as number) + siemens;
    jacobian[a + second] = (jacobian[a + second] as number) - siemens;
    jacobian[b + first] = (jacobian[b + first] as number) - siemens;
  }

  /** A branch whose current is an unknown of its own, held to volts − ohms·amps = emf (or, when open, to no current). */
  addConstrained(first: number, second: number, branch: number, emf: number, ohms: number, open: boolean): void {
    const { residual, jacobian, stride, unknowns } = this;
    const amps = unknowns[branch] as number;
    residual[first] = (residual[first] as number) + amps;
    residual[second] = (residual[second] as number) - amps;
    jacobian[first * stride + branch] = (jacobian[first * stride + branch] as number) + 1;
    jacobian[second * stride + branch] = (jacobian[second * stride + branch] as number) - 1;
    const row = branch * stride;
    if (open) {
      residual[branch] = amps;
      jacobian[row + branch] = 1;
      return;
    }
    residual[branch] = this.volts(first, second) - ohms * amps - emf;
    jacobian[row + first] = (jacobian[row + first] as number) + 1;
    jacobian[row + second] = (jacobian[row + second] as number) - 1;
    jacobian[row + branch] = (jacobian[row + branch] as number) - ohms;
  }
}

/** Across every junction, always: a thousandth of the leakage of a small silicon diode at a few volts. */
export const LEAST_SIEMENS = 1e-12;
