import { InputError, SolveError, requireNumber } from '../errors.ts';
import { findPins, makeCircuit } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { GROUND } from './elements.ts';
import type { Element } from './elements.ts';
import type { NetworkSolution } from './solve-network.ts';
import { Stepper } from './stepper.ts';
import { TracePoints } from './trace-points.ts';

export interface TransientOptions {
  readonly elements: readonly Element[];
  /** Time to cover, 1 ns to 10 000 s. */
  readonly seconds: number;
  /** Frequency of the sines, 0.1 Hz to 100 kHz; default 50. */
  readonly hertz?: number | undefined;
  /** Where in the mains cycle time zero lies, degrees; added to each sine's own (times its harmonic). Default 0. */
  readonly startPhaseDegrees?: number | undefined;
  /** Volts of capacitors and amps of inductors at the start, by element name; they override the elements' own. */
  readonly initial?: Readonly<Record<string, number>> | undefined;
  /** Most points in the result, 100 to 100 000; default 4000. Fewer if fewer steps were needed. */
  readonly maxPoints?: number | undefined;
  /** How closely the moment of a behaviour's `crossing` is found; default a millionth of `seconds`. */
  readonly eventSeconds?: number | undefined;
}

/** Error allowed in one step, as a part of the largest size the state has had. */
const STEP_TOLERANCE = 1e-4;
/** A state is judged as if it had had at least this size (volts, amps, or a behaviour's own unit). */
const LEAST_SIZE = 1e-3;
const STEPS_PER_CYCLE = 48;
const LEAST_STEPS = 60;
const MAX_STEPS = 300_000;
const MAX_EVENTS = 20_000;
/** Just after a change the circuit is solved with the capacitors standing still for this part of the whole time. */
const MOMENT = 1e-10;

/**
 * A circuit followed in time from a stated start: switch-on, coil release, cold heaters, a converter that hiccups.
 *
 * Implicit fourth-order steps that adapt to the states' own pace (and never skip a mains cycle); a switch's times and
 * the corners of a clipped source are always step ends, and a behaviour's `crossing` is run down to `eventSeconds`
 * before `next` is asked. A sudden change leaves two points at (nearly) one time. Points are uneven in time; when there
 * are more than `maxPoints` they are thinned so that no voltage or current loses an extreme. States are exact to about
 * 1e-3 of their size over the run.
 *
 * Floating parts and blocked nodes as in `solveNetwork`. Throws `InputError` for a value out of range; `SolveError`
 * 'singular', 'no-convergence', or 'too-large' when the run needs more than 300 000 steps or 20 000 events (a relay that
 * buzzes for ever, a period far shorter than the run).
 */
export function solveTransient(options: TransientOptions): NetworkSolution {
  const { elements, seconds, hertz = 50, startPhaseDegrees = 0, initial = {}, maxPoints = 4000 } = options;
  requireNumber('seconds', seconds, { min: 1e-9, max: 1e4 });
  requireNumber('hertz', hertz, { min: 0.1, max: 1e5 });
  requireNumber('startPhaseDegrees', startPhaseDegrees, { min: -3600, max: 3600 });
  requireNumber('maxPoints', maxPoints, { min: 100, max: 1e5 });
  const { eventSeconds = seconds * 1e-6 } = options;
  requireNumber('eventSeconds', eventSeconds, { min: seconds * 1e-9, max: seconds });
  const circuit = makeCircuit(elements.map((element) => shifted(element, startPhaseDegrees)), hertz);
  const stepper = new Stepper(circuit);
  for (const [name, value] of Object.entries(initial)) {
    requireNumber(`initial.${name}`, value, { min: -1e5, max: 1e5 });
    const index = elements.findIndex((element) => element.name === name);
    const kind = elements[index]?.kind;
    if (kind !== 'capacitor' && kind !== 'inductor') {
      throw new InputError(`initial.${name}`, value, { expected: 'the name of a capacitor or an inductor' });
    }
    stepper.states[circuit.devices[index]?.state as number] = value;
  }
  let longest = seconds / LEAST_STEPS;
  for (const element of elements) {
    if (element.kind === 'sine') longest = Math.min(longest, 1 / (hertz * (element.harmonic ?? 1) * STEPS_PER_CYCLE));
  }
  if (seconds / longest > MAX_STEPS) {
    throw new SolveError('too-large', `The run covers more than ${MAX_STEPS / STEPS_PER_CYCLE} cycles; ask for a shorter time.`);
  }
  return new TransientRun(circuit, stepper, seconds, longest, eventSeconds).run(maxPoints);
}

function shifted(element: Element, degrees: number): Element {
  if (element.kind !== 'sine' || degrees === 0) return element;
  return { ...element, degrees: (element.degrees ?? 0) + degrees * (element.harmonic ?? 1) };
}

class TransientRun {
  readonly #circuit: Circuit;
  readonly #stepper: Stepper;
  readonly #seconds: number;
  readonly #longest: number;
  readonly #eventSeconds: number;
  readonly #points: TracePoints;
  readonly #sizes: Float64Array;

  constructor(circuit: Circuit, stepper: Stepper, seconds: number, longest: number, eventSeconds: number) {
    this.#circuit = circuit;
    this.#stepper = stepper;
    this.#seconds = seconds;
    this.#longest = longest;
    this.#eventSeconds = eventSeconds;
    this.#points = new TracePoints(1 + circuit.nodes.length + circuit.devices.length);
    this.#sizes = stepper.states.map((v) => Math.max(Math.abs(v), LEAST_SIZE));
  }

  run(maxPoints: number): NetworkSolution {
    const { devices } = this.#circuit;
    const stepper = this.#stepper;
    const corners = devices
      .flatMap((d) => d.corners?.(-this.#seconds * 1e-12, this.#seconds) ?? [])
      .filter((t) => t >= 0)
      .sort((a, b) => a - b);
    const shortest = this.#seconds * 1e-13;
    const firstStep = this.#longest * 1e-4;
    let t = 0;
    let corner = 0;
    while (corner < corners.length && (corners[corner] as number) <= 0) {
      for (const device of devices) device.changeOver?.(corners[corner] as number);
      corner += 1;
    }
    this.#regard(0);
    let levels = this.#crossings();
    let step = firstStep;
    let events = 0;
    for (let count = 0; t < this.#seconds; count += 1) {
      if (count > MAX_STEPS) throw new SolveError('too-large', `The run needs more than ${MAX_STEPS} steps; ask for a shorter time.`);
      if (step < shortest) throw new SolveError('no-convergence', `The circuit could not be followed beyond ${t} s.`);
      const end = corners[corner] ?? this.#seconds;
      const left = end - t;
      let h = Math.min(step, this.#longest, left);
      if (h < left && h > left / 2) h = left / 2;
      if (!stepper.attempt(t, h)) {
        step = h / 4;
        continue;
      }
      let error = 0;
      for (let k = 0; k < this.#sizes.length; k += 1) {
        error = Math.max(error, Math.abs(stepper.errors[k] as number) / (STEP_TOLERANCE * (this.#sizes[k] as number)));
      }
      const growth = Math.min(4, 0.85 * Math.max(error, 1e-6) ** -0.25);
      if (error > 1 && h > shortest) {
        stepper.retreat();
        // A state forced to jump (a capacitor switched onto an ideal source) errs however short the step.
        step = Math.max(shortest, h * Math.max(0.1, growth));
        continue;
      }
      const after = this.#crossings();
      const crossed = this.#crossed(levels, after);
      if (crossed && h > this.#eventSeconds) {
        stepper.retreat();
        step = Math.max(this.#eventSeconds, h * crossed.share);
        continue;
      }
      stepper.accept(h);
      t = h === left ? end : t + h;
      this.#note(t, false);
      for (let k = 0; k < this.#sizes.length; k += 1) {
        this.#sizes[k] = Math.max(this.#sizes[k] as number, Math.abs(stepper.states[k] as number));
      }
      step = h < step ? Math.max(step, h * growth) : h * Math.max(1, growth);
      levels = after;
      let changed = false;
      if (crossed) {
        events += 1;
        if (events > MAX_EVENTS) throw new SolveError('too-large', `More than ${MAX_EVENTS} events happened before ${t} s.`);
        for (const device of crossed.devices) device.happen?.(this.#circuit.equations, stepper.states);
        changed = true;
      }
      while (corner < corners.length && (corners[corner] as number) <= t) {
        for (const device of devices) if (device.changeOver?.(corners[corner] as number) === true) changed = true;
        corner += 1;
      }
      if (changed) {
        this.#regard(t);
        levels = this.#crossings();
        step = firstStep;
      }
    }
    return this.#result(maxPoints);
  }

  /** Solves the circuit as it stands at a start or just after a sudden change, and notes it. */
  #regard(t: number): void {
    const circuit = this.#circuit;
    const { equations, nodes, devices } = circuit;
    circuit.pins = findPins(nodes.length, devices);
    equations.seconds = t;
    equations.reach = this.#seconds * MOMENT;
    equations.bases.set(this.#stepper.states);
    if (!this.#stepper.instant.solve()) {
      throw new SolveError('no-convergence', `The circuit has no settled state at ${t} s.`);
    }
    this.#note(t, true);
  }

  #note(t: number, edge: boolean): void {
    const { equations, nodes, devices } = this.#circuit;
    const row = this.#points.add(edge);
    row[0] = t;
    for (let i = 1; i <= nodes.length; i += 1) row[i] = equations.unknowns[i] as number;
    devices.forEach((device, k) => {
      row[1 + nodes.length + k] = device.settle(equations);
    });
  }

  #crossings(): readonly number[] {
    return this.#circuit.devices.map((device) => device.crossing?.(this.#circuit.equations) ?? 0);
  }

  /** Devices whose crossing changed sign within the step, and the part of the step at which the first one did. */
  #crossed(before: readonly number[], after: readonly number[]) {
    let share = 1;
    const devices = this.#circuit.devices.filter((device, k) => {
      const a = before[k] as number;
      const b = after[k] as number;
      if (!device.crossing || !((a < 0 && b >= 0) || (a > 0 && b <= 0))) return false;
      // A straight line's guess, kept off the ends so that a curved one cannot stall it.
      share = Math.min(share, Math.min(0.9, Math.max(0.1, a / (a - b))));
      return true;
    });
    return devices.length > 0 ? { devices, share } : undefined;
  }

  #result(maxPoints: number): NetworkSolution {
    const { nodes, devices } = this.#circuit;
    const [seconds = new Float64Array(0), ...series] = this.#points.series(maxPoints);
    const volts: Record<string, Float64Array> = { [GROUND]: new Float64Array(seconds.length) };
    nodes.forEach((node, i) => {
      volts[node] = series[i] as Float64Array;
    });
    const amps: Record<string, Float64Array> = {};
    devices.forEach((device, k) => {
      amps[device.name] = series[nodes.length + k] as Float64Array;
    });
    return { seconds, volts, amps };
  }
}
