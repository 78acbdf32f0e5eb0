import type { Circuit } from './circuit.ts';
import { InstantSolver } from './instant.ts';
import { DIAGONAL, ERROR_WEIGHTS, SOLUTION_WEIGHTS, STAGES, STAGE_TIMES, STAGE_WEIGHTS } from './sdirk4.ts';

/** Advances a circuit's states by implicit steps; the unknowns are left at the end of the last step. */
export class Stepper {
  readonly circuit: Circuit;
  readonly instant: InstantSolver;
  readonly states: Float64Array;
  /** Estimated error of each state over the last step tried, and the states it would lead to. */
  readonly errors: Float64Array;
  readonly #next: Float64Array;
  readonly #rates: Float64Array;
  readonly #keptUnknowns: Float64Array;
  /** When given (states × states, row by row): ∂states/∂start, carried along every accepted step. */
  sensitivity: Float64Array | undefined;
  readonly #rateSensitivity: Float64Array;
  readonly #column: Float64Array;

  constructor(circuit: Circuit) {
    const count = circuit.initialStates.length;
    this.circuit = circuit;
    this.instant = new InstantSolver(circuit);
    this.states = Float64Array.from(circuit.initialStates);
    this.errors = new Float64Array(count);
    this.#next = new Float64Array(count);
    this.#rates = new Float64Array(count * STAGES);
    this.#keptUnknowns = new Float64Array(circuit.equations.unknowns.length);
    this.#rateSensitivity = new Float64Array(count * count * STAGES);
    this.#column = new Float64Array(circuit.equations.unknowns.length);
  }

  /** Tries a step; false when some stage does not converge (the circuit is then as before, and a shorter one is due). */
  attempt(from: number, step: number): boolean {
    const { equations, devices } = this.circuit;
    const { bases, rates, unknowns } = equations;
    const count = this.states.length;
    this.#keptUnknowns.set(unknowns);
    equations.reach = DIAGONAL * step;
    for (let i = 0; i < STAGES; i += 1) {
      equations.seconds = from + (STAGE_TIMES[i] as number) * step;
      for (let k = 0; k < count; k += 1) {
        let sum = 0;
        for (let j = 0; j < i; j += 1) sum += (STAGE_WEIGHTS[i * STAGES + j] as number) * (this.#rates[j * count + k] as number);
        bases[k] = (this.states[k] as number) + step * sum;
      }
      if (!this.instant.solve()) {
        unknowns.set(this.#keptUnknowns);
        for (const device of devices) device.forget?.();
        return false;
      }
      for (const device of devices) if (device.state !== undefined) device.settle(equations);
      for (let k = 0; k < count; k += 1) this.#rates[i * count + k] = rates[k] as number;
      if (this.sensitivity) this.#senseStage(i, step);
    }
    for (let k = 0; k < count; k += 1) {
      let sum = 0;
      let error = 0;
      for (let i = 0; i < STAGES; i += 1) {
        sum += (SOLUTION_WEIGHTS[i] as number) * (this.#rates[i * count + k] as number);
        error += (ERROR_WEIGHTS[i] as number) * (this.#rates[i * count + k] as number);
      }
      this.#next[k] = (this.states[k] as number) + step * sum;
      this.errors[k] = step * error;
    }
    this.#filterErrors();
    return true;
  }

  /**
   * Passes the raw error through the last stage once more: a state that follows a stiff part of the circuit forgets an
   * error within the step, and only what survives should shorten the step.
   * Source: E. Hairer and G. Wanner, "Solving Ordinary Differential Equations II" (1996), equation IV.8.19.
   */
  #filterErrors(): void {
    const { equations, devices } = this.circuit;
    const column = this.#column;
    column.fill(0);
    for (const device of devices) {
      if (!device.linearState) continue;
      const push = device.linearState(equations).ampsByBase * (this.errors[device.state as number] as number);
      column[device.first] = (column[device.first] as number) - push;
      column[device.second] = (column[device.second] as number) + push;
    }
    this.instant.linear.solve(column);
    column[0] = 0;
    for (const device of devices) {
      if (!device.linearState) continue;
      const k = device.state as number;
      const link = device.linearState(equations);
      const volts = (column[device.first] as number) - (column[device.second] as number);
      const raw = this.errors[k] as number;
      this.errors[k] = raw + equations.reach * (link.rateByVolts * volts + link.rateByBase * raw);
    }
  }

  /** Returns to the start of the last step tried. */
  retreat(): void {
    this.circuit.equations.unknowns.set(this.#keptUnknowns);
    for (const device of this.circuit.devices) device.forget?.();
  }

  /** Takes the step last tried. */
  accept(step: number): void {
    const count = this.states.length;
    this.states.set(this.#next);
    const m = this.sensitivity;
    if (!m) return;
    const block = count * count;
    for (let e = 0; e < block; e += 1) {
      let sum = 0;
      for (let i = 0; i < STAGES; i += 1) sum += (SOLUTION_WEIGHTS[i] as number) * (this.#rateSensitivity[i * block + e] as number);
      m[e] = (m[e] as number) + step * sum;
    }
  }

  /** The response of one stage's rates to the starting states: a linear solve per state with the stage's own factors. */
  #senseStage(i: number, step: number): void {
    const { equations, devices } = this.circuit;
    const count = this.states.length;
    const block = count * count;
    const m = this.sensitivity as Float64Array;
    const s = this.#rateSensitivity;
    const column = this.#column;
    for (let c = 0; c < count; c += 1) {
      column.fill(0);
      const base = (k: number): number => {
        let sum = 0;
        for (let j = 0; j < i; j += 1) sum += (STAGE_WEIGHTS[i * STAGES + j] as number) * (s[j * block + k * count + c] as number);
        return (m[k * count + c] as number) + step * sum;
      };
      for (const device of devices) {
        if (!device.linearState) continue;
        const push = device.linearState(equations).ampsByBase * base(device.state as number);
        column[device.first] = (column[device.first] as number) - push;
        column[device.second] = (column[device.second] as number) + push;
      }
      this.instant.linear.solve(column);
      column[0] = 0;
      for (const device of devices) {
        if (!device.linearState) continue;
        const k = device.state as number;
        const link = device.linearState(equations);
        const volts = (column[device.first] as number) - (column[device.second] as number);
        s[i * block + k * count + c] = link.rateByVolts * volts + link.rateByBase * base(k);
      }
    }
  }
}
