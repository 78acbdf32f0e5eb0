import type { NodeEquations } from './node-equations.ts';

/** How a state follows the voltage across its device: what the sensitivity of a cycle is built from. */
export interface LinearState {
  /** ∂amps/∂base, ∂rate/∂volts, ∂rate/∂base at the present `reach`. */
  ampsByBase: number;
  rateByVolts: number;
  rateByBase: number;
}

/**
 * An element made ready to be solved. One file per kind; a new kind is a new file that returns one of these, and a
 * line in `make-device.ts`.
 *
 * A device has at most one branch unknown and any number of states. A state is a quantity with memory (a capacitor's
 * voltage, an inductor's current, a filament's warmth); inside a time step it is `bases[k] + reach·rate`, so a device
 * never needs to know the integration method.
 */
export interface Device {
  readonly name: string;
  readonly first: number;
  readonly second: number;
  /** Place of the branch unknown and of the first state, when there are any; given out by the compiler. */
  readonly needsBranch?: boolean;
  branch?: number;
  readonly initialStates?: readonly number[];
  state?: number;
  /** Whether it joins its nodes, so that one fixes the level of the other. */
  connects(): boolean;
  /** Adds its currents and slopes at the present unknowns. */
  stamp(equations: NodeEquations): void;
  /** Its current at the present unknowns; with states, also writes their rates. */
  settle(equations: NodeEquations): number;
  /** For a device with one linear state. */
  linearState?(equations: NodeEquations): LinearState;
  /** Forgets the last Newton iterate, before a fresh start. */
  forget?(): void;
  /** Instants in (from, to] at which its law changes or has a corner. */
  corners?(from: number, to: number): readonly number[];
  /** Called when a time in `corners` has been reached: changes over if it is due. True when something changed. */
  changeOver?(seconds: number): boolean;
  /** A value whose change of sign within a step asks for `happen`. */
  crossing?(equations: NodeEquations): number;
  happen?(equations: NodeEquations, states: Float64Array): void;
}
