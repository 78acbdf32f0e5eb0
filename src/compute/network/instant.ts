import { SolveError } from '../errors.ts';
import type { Circuit } from './circuit.ts';
import { LinearSolver } from './linear-solver.ts';
import { LEAST_SIEMENS } from './node-equations.ts';

const MAX_ITERATIONS = 40;
/** Newton stops when no voltage moved by more than this (its error is then the square of it over a thermal voltage). */
const LEAST_VOLTS = 1e-7;
const LEAST_SHARE = 1e-9;
/** A floating level rests on the least conductances; rounding moves it by so much without meaning anything. */
const IDLE_VOLTS = 1e-4;
const IDLE_AFTER = 15;
/** No real circuit here has a kiloampere or a hundred kilovolts to the thousand: an answer beyond is a singular one. */
const ABSURD = 1e9;

/** Solves a circuit's equations at one instant by Newton's method, with fallbacks for a hard start. */
export class InstantSolver {
  readonly #circuit: Circuit;
  readonly linear: LinearSolver;
  readonly #step: Float64Array;

  constructor(circuit: Circuit) {
    this.#circuit = circuit;
    this.linear = new LinearSolver(circuit.equations.size);
    this.#step = new Float64Array(circuit.equations.size + 1);
  }

  /** Writes residual and Jacobian at the present unknowns. */
  assemble(): void {
    const { devices, equations, pins } = this.#circuit;
    equations.clear();
    for (const device of devices) device.stamp(equations);
    for (const pin of pins) equations.addBranch(pin, 0, equations.unknowns[pin] as number, 1);
  }

  /** Newton's method from the present unknowns; false when it does not settle. */
  #newton(): boolean {
    const { equations, nodes } = this.#circuit;
    const { unknowns, residual, size } = equations;
    const step = this.#step;
    for (let pass = 0; pass < MAX_ITERATIONS; pass += 1) {
      this.assemble();
      if (!this.linear.factor(equations.jacobian)) {
        throw new SolveError('singular', 'The circuit has no single answer: a loop of ideal sources or wires, or a current with no way back.');
      }
      step.set(residual);
      this.linear.solve(step);
      let settled = !equations.limited;
      let idle = settled && pass > IDLE_AFTER;
      for (let i = 1; i <= size; i += 1) {
        const change = step[i] as number;
        if (!Number.isFinite(change)) return false;
        const value = (unknowns[i] as number) - change;
        unknowns[i] = value;
        const bound = LEAST_VOLTS * (i <= nodes.length ? 1 : 1e-3) + LEAST_SHARE * Math.abs(value);
        if (Math.abs(change) > bound) settled = false;
        if (Math.abs(change) > IDLE_VOLTS) idle = false;
      }
      if (settled || idle) return true;
    }
    return false;
  }

  /**
   * Solves the instant set in the equations (time, bases, reach), starting from the unknowns they hold. False when
   * nothing converges; throws `SolveError` 'singular' when there is no single answer.
   */
  solve(): boolean {
    const { equations, devices } = this.#circuit;
    if (this.#newton()) return this.#sane();
    // A hard start: begin with every junction bridged by a healthy conductance, and take it away in tenths.
    equations.unknowns.fill(0);
    for (const device of devices) device.forget?.();
    for (let siemens = 1; siemens > LEAST_SIEMENS * 2; siemens /= 10) {
      equations.junctionSiemens = siemens;
      const solved = this.#newton();
      equations.junctionSiemens = LEAST_SIEMENS;
      if (!solved) return false;
    }
    return this.#newton() && this.#sane();
  }

  #sane(): boolean {
    const { unknowns } = this.#circuit.equations;
    for (const value of unknowns) {
      if (!(Math.abs(value) < ABSURD)) throw new SolveError('singular', 'A current has no way back: a voltage grows without limit.');
    }
    for (const pin of this.#circuit.pins) {
      if (Math.abs(unknowns[pin] as number) > 1e-6) {
        throw new SolveError('singular', 'A current flows into a part of the circuit that has no way back.');
      }
    }
    return true;
  }
}
