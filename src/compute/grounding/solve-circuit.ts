import { solveNetwork } from '../network/solve-network.ts';
import type { Element } from '../network/elements.ts';
import { waveformMax, waveformMean, waveformMin, waveformRms } from '../network/waveform.ts';
import { groundingCircuit } from './circuit.ts';
import type { GroundingCircuit } from './circuit.ts';
import type { CircuitNode, GroundLink } from './ground-links.ts';
import type { GroundingJob } from './job.ts';
import { HAND, METER_OHMS } from './limits.ts';

/** Figures of one period of a wave. */
export interface WaveFigures {
  readonly mean: number;
  readonly rms: number;
  /** RMS of what is left without the mean. */
  readonly acRms: number;
  readonly min: number;
  readonly max: number;
  /** Largest magnitude. */
  readonly peak: number;
}

/** A charging pulse of a tenth of the cycle still has a dozen samples: its RMS is right to a few parts in a thousand. */
const PULSE_INTERVALS = 128;
/** Enough for potentials and their means, which have no narrow pulses. */
export const LEVEL_INTERVALS = 48;

const figuresOf = (values: Float64Array): WaveFigures => {
  const mean = waveformMean(values);
  const rms = waveformRms(values);
  const min = waveformMin(values);
  const max = waveformMax(values);
  return { mean, rms, acRms: Math.sqrt(Math.max(rms * rms - mean * mean, 0)), min, max, peak: Math.max(-min, max) };
};

/** A solved circuit of the grounding analysis, one period in even samples. */
export interface SolvedCircuit {
  readonly circuit: GroundingCircuit;
  /** Current through a branch or added element, first node to second. */
  readonly amps: (name: string) => Float64Array;
  /** Potential of one node above another; above the chassis when the second is left out. */
  readonly volts: (node: CircuitNode, above?: CircuitNode) => Float64Array;
  readonly figures: (values: Float64Array) => WaveFigures;
}

/**
 * Solves a job's circuit in its periodic steady state with the given links made.
 * Where no link is made, a 10 MΩ meter from the rail's negative to the chassis stands in for one, so that "the
 * potential of the rail" is what such a meter would read.
 * Throws `SolveError` where the network has no steady state.
 */
export function solveCircuit(options: {
  readonly job: GroundingJob;
  readonly links: readonly GroundLink[];
  readonly extra?: readonly Element[];
  readonly dividerOpen?: boolean;
  readonly shortedDiode?: string;
  /** Samples of the period; as many as pulses of current need when left out. */
  readonly intervals?: number;
}): SolvedCircuit {
  const { job, links, intervals = PULSE_INTERVALS } = options;
  const needsMeter = links.length === 0 && options.extra === undefined;
  const circuit = groundingCircuit(needsMeter ? { ...options, extra: meterFrom('negative') } : options);
  const solution = solveNetwork({ hertz: job.hertz, elements: circuit.elements, intervals });
  const zero = new Float64Array(solution.seconds.length);
  const volts = (node: CircuitNode, above: CircuitNode = 'ground'): Float64Array => {
    const upper = solution.volts[node] ?? zero;
    const lower = above === 'ground' ? zero : (solution.volts[above] ?? zero);
    return upper.map((value, index) => value - (lower[index] ?? 0));
  };
  return {
    circuit,
    amps: (name) => solution.amps[name] ?? zero,
    volts,
    figures: figuresOf,
  };
}

/** A usual multimeter from a node to the chassis. */
export const meterFrom = (node: CircuitNode): readonly Element[] => [
  { kind: 'resistor', name: 'meter', between: [node, 'ground'], ohms: METER_OHMS },
];

/** A hand on direct voltage, where its capacitance takes no part; `hand` carries the current. */
export const handOnDcFrom = (node: CircuitNode): readonly Element[] => [
  { kind: 'resistor', name: 'hand', between: [node, 'ground'], ohms: HAND.skinOhms + HAND.bodyOhms },
];

/** A hand from a node to the chassis or to earth, as the touch-current network has it; `hand` carries the current. */
export const handFrom = (node: CircuitNode): readonly Element[] => [
  { kind: 'resistor', name: 'hand-skin', between: [node, 'hand'], ohms: HAND.skinOhms },
  { kind: 'capacitor', name: 'hand-skin-capacitance', between: [node, 'hand'], farads: HAND.skinFarads },
  { kind: 'resistor', name: 'hand', between: ['hand', 'ground'], ohms: HAND.bodyOhms },
];
