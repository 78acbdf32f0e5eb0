import { InputError, SolveError, requireNumber } from '../errors.ts';
import { makeCircuit } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { GROUND } from './elements.ts';
import type { Element } from './elements.ts';
import { solveWhatIsDetermined } from './null-solve.ts';
import { runPeriod } from './periodic-pass.ts';
import type { PassReport } from './periodic-pass.ts';
import { Stepper } from './stepper.ts';

export interface NetworkOptions {
  /** Frequency of the period, 0.1 Hz to 100 kHz; every sine runs at it or at a harmonic. */
  readonly hertz: number;
  readonly elements: readonly Element[];
  /** Equal intervals of the period in the result, 16 to 4096; default 512. Fewer are quicker, and no less accurate each. */
  readonly intervals?: number | undefined;
}

/** A circuit's quantities at shared instants. */
export interface NetworkSolution {
  readonly seconds: Float64Array;
  /** By node name; `ground` is there too, at zero. */
  readonly volts: Readonly<Record<string, Float64Array>>;
  /** By element name, from its first node to its second. */
  readonly amps: Readonly<Record<string, Float64Array>>;
}

/** Equal intervals of the period in the result, unless asked otherwise. */
export const NETWORK_INTERVALS = 512;

const SEARCH_INTERVALS = 48;
const SEARCH_TOLERANCE = 3e-5;
/** Volts or amps per period below which a state is at rest. */
const LEAST_TRAVEL = 1e-7;
/** A state below this (volts, amps) is as good as none. */
const LEAST_SIZE = 1e-6;
const WARM_UP_PERIODS = 2;
const MAX_PASSES = 80;
/** Relative size of a correction that ends the search. */
const SETTLED = 1e-6;
/** A pivot of (1 − sensitivity) this small belongs to a charge that nothing can ever change. */
const UNDETERMINED = 1e-12;
/** What such a charge may seem to move in a period, relative to its size, from rounding alone. */
const DRIFT = 1e-8;

/**
 * The periodic steady state of any small circuit: one period in even samples, both ends included.
 *
 * Found directly: after two periods of running in, Newton's method on the map from the states (capacitor voltages,
 * inductor currents) at the start of a period to those at its end, with the exact derivative of that map; so a circuit
 * that takes minutes to settle costs no more than one that takes a cycle. Node voltages and element currents at each
 * sample satisfy Kirchhoff's laws and the element laws together (about 1e-9 relative).
 *
 * A part that nothing joins to ground is solved with its first-named node at zero volts; capacitors whose charge
 * nothing can change (a node between two capacitors only) keep the charge zero they begin with. Across every diode lies
 * 1e-12 S, so that a node between blocked diodes keeps an equation.
 *
 * Every element kind except `heater` and `behaviour`, which have no period: those are for `solveTransient`, as are the
 * times of a switch. Up to 120 unknowns (nodes plus ideal sources and switches).
 *
 * Throws `InputError` for a value out of range; `SolveError` 'singular' (a loop of ideal sources, a current with no way
 * back), 'no-convergence' or 'too-large'. Source: T. J. Aprille and T. N. Trick, Proc. IEEE 60 (1972) 108-114; node
 * equations: C.-W. Ho, A. E. Ruehli and P. A. Brennan, IEEE Trans. Circuits Syst. 22 (1975) 504-509.
 */
export function solveNetwork({ hertz, elements, intervals = NETWORK_INTERVALS }: NetworkOptions): NetworkSolution {
  requireNumber('hertz', hertz, { min: 0.1, max: 1e5 });
  requireNumber('intervals', intervals, { min: 16, max: 4096 });
  if (!Number.isInteger(intervals)) throw new InputError('intervals', intervals, { expected: 'a whole number' });
  const circuit = makeCircuit(elements, hertz);
  for (const element of elements) {
    if (element.kind === 'heater' || element.kind === 'behaviour') {
      throw new InputError(`${element.name}.kind`, element.kind, { expected: 'an element without memory of its own; use solveTransient' });
    }
    if (element.kind === 'switch' && (element.closesAt !== undefined || element.opensAt !== undefined)) {
      throw new InputError(`${element.name}`, 'a switching time', { expected: 'no switching time; use solveTransient' });
    }
  }
  const stepper = new Stepper(circuit);
  const count = stepper.states.length;
  stepper.states.fill(0);
  const scales = count > 0 ? findPeriodicStates(stepper, hertz) : new Float64Array(0);
  return sampleOnePeriod({ circuit, stepper, hertz, scales, intervals });
}

/**
 * Scales of error: what a state travels in a period, however large it stands, but not so little that the error allowed
 * would drown in the rounding of the largest state.
 */
function scalesFrom({ largest, travel }: PassReport): Float64Array {
  const top = largest.reduce((a, b) => Math.max(a, b), 1e-6);
  return travel.map((t, k) => Math.max(t, 1e-6 * (largest[k] as number), 1e-8 * top, LEAST_TRAVEL));
}

/** Leaves the stepper at states that repeat; gives the scales that errors of the period are judged by. */
function findPeriodicStates(stepper: Stepper, hertz: number): Float64Array {
  const { states } = stepper;
  const count = states.length;
  let scales: Float64Array = new Float64Array(count).fill(1);
  let mesh: readonly number[] | undefined;
  const pass = (tolerance: number): PassReport =>
    runPeriod({ stepper, hertz, intervals: SEARCH_INTERVALS, tolerance, scales, mesh });
  for (let i = 0; i < WARM_UP_PERIODS; i += 1) {
    scales = scalesFrom(pass(1e-2));
  }
  let unit: Float64Array = new Float64Array(count).fill(LEAST_SIZE);
  let start: Float64Array = Float64Array.from(states);
  let step: Float64Array = new Float64Array(count);
  let goodStart = start;
  let goodMiss = Infinity;
  let shortened = 0;
  for (let i = 0; i < MAX_PASSES; i += 1) {
    const sensitivity = new Float64Array(count * count);
    for (let k = 0; k < count; k += 1) sensitivity[k * count + k] = 1;
    stepper.sensitivity = sensitivity;
    states.set(start);
    const report = pass(SEARCH_TOLERANCE);
    // The first mesh was made for a cycle that has since moved; from the second on the cycle is nearly the right one.
    if (i > 0) mesh = report.mesh;
    stepper.sensitivity = undefined;
    const { largest } = report;
    const miss = states.map((v, k) => v - (start[k] as number));
    // In units of the largest each state has ever been, so that volts and amps stand side by side.
    unit = unit.map((v, k) => Math.max(v, largest[k] as number));
    const size = Math.sqrt(miss.reduce((s, v, k) => s + (v / (unit[k] as number)) ** 2, 0));
    if (size > goodMiss && shortened < 3) {
      // Too long a step: halve it. After three halvings simply going on from here, as the real circuit would, is better.
      shortened += 1;
      step = step.map((s) => s / 2);
      start = goodStart.map((v, k) => v + (step[k] as number));
      continue;
    }
    if (shortened >= 3 && size > goodMiss) {
      shortened = 0;
      goodMiss = Infinity;
      start = Float64Array.from(states);
      continue;
    }
    shortened = 0;
    goodMiss = size;
    goodStart = start;
    scales = scalesFrom(report);
    const matrix = sensitivity.map((v, e) => {
      const row = Math.floor(e / count);
      const column = e % count;
      return ((row === column ? 1 : 0) - v) * ((unit[column] as number) / (unit[row] as number));
    });
    const { x, contradiction } = solveWhatIsDetermined(matrix, miss.map((v, k) => v / (unit[k] as number)), UNDETERMINED);
    step = x.map((v, k) => v * (unit[k] as number));
    const settled = x.every((v) => Math.abs(v) <= SETTLED);
    if (settled && contradiction > DRIFT) {
      throw new SolveError('singular', 'The circuit never repeats: a direct current charges a capacitor, or a direct voltage an inductor.');
    }
    start = goodStart.map((v, k) => v + (step[k] as number));
    if (settled) {
      states.set(start);
      return scales;
    }
  }
  throw new SolveError('no-convergence', 'The repeating cycle of the circuit was not found.');
}

function sampleOnePeriod(options: {
  readonly circuit: Circuit;
  readonly stepper: Stepper;
  readonly hertz: number;
  readonly scales: Float64Array;
  readonly intervals: number;
}): NetworkSolution {
  const { circuit, stepper, hertz, scales, intervals } = options;
  const { nodes, devices, equations } = circuit;
  const samples = intervals + 1;
  const seconds = Float64Array.from({ length: samples }, (_, i) => i / intervals / hertz);
  const volts: Record<string, Float64Array> = { [GROUND]: new Float64Array(samples) };
  for (const node of nodes) volts[node] = new Float64Array(samples);
  const amps: Record<string, Float64Array> = {};
  for (const device of devices) amps[device.name] = new Float64Array(samples);
  const write = (index: number): void => {
    nodes.forEach((node, i) => {
      (volts[node] as Float64Array)[index] = equations.unknowns[i + 1] as number;
    });
    for (const device of devices) (amps[device.name] as Float64Array)[index] = device.settle(equations);
  };
  runPeriod({ stepper, hertz, intervals, tolerance: 3e-5, scales, onGrid: write });
  // The period closes on itself: its first sample is its last.
  for (const series of [...Object.values(volts), ...Object.values(amps)]) series[0] = series[intervals] as number;
  return { seconds, volts, amps };
}
