import { GROUND } from '../network/elements.ts';
import type { Element } from '../network/elements.ts';
import { solveNetwork } from '../network/solve-network.ts';
import { solveRectifier } from '../rectifier/solve-rectifier.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import { settleRail } from '../in-time/settled-rail.ts';
import { OTHER_HALF_ELEMENT, RESERVOIR_NODE, WINDING_ELEMENT, railNode, rectifierElements, regulatorElements } from '../in-time/timed-supply.ts';
import type { TimedSupply } from '../in-time/timed-supply.ts';
import { loopAmps } from '../noise/pulse-spectrum.ts';
import type { BenchCircuit } from './bench-circuit.ts';

/** One mains cycle of a built supply, even samples, the last repeating the first. */
export interface BenchWaves {
  readonly reservoirVolts: Float64Array;
  readonly railVolts: Float64Array;
  /** At the winding's terminals (one half of a centre tap), and in it, what hangs across it included. */
  readonly windingVolts: Float64Array;
  readonly windingAmps: Float64Array;
  /** Through the rectifier: pulses that also run in a ground wire joined on the wrong side of the reservoir. */
  readonly pulseAmps: Float64Array;
}

type WindingSource = Extract<BenchCircuit['source'], { kind: 'winding' }>;

/** Resistance of what has failed short or been grounded twice: a joint. */
const JOINT_OHMS = 0.02;
/** Stray capacitance and what a regulator has at its input: all that is left without a reservoir. */
const NO_RESERVOIR_FARADS = 1e-6;
const NETWORK_SAMPLES = 256;

/** Solves the built circuit's repeating cycle: with the rectifier's own solver, or, where a defect has changed the circuit, as a network. */
export function benchWaves(circuit: BenchCircuit, source: WindingSource): BenchWaves {
  if (source.defect !== undefined) return networkWaves(circuit, source);
  const { supply } = source;
  const stage = circuit.stage?.of;
  if (stage?.kind === 'buck') {
    const { topology, winding, hertz, crestFactor, diode, reservoir } = supply;
    const amps = circuit.siemens * stage.outputVolts;
    const peak = winding.openCircuitVolts * (crestFactor ?? Math.SQRT2);
    const rectifier = solveRectifier({ topology, winding, hertz, crestFactor, diode, reservoir, load: { watts: (stage.outputVolts + stage.lossVolts) * amps + stage.quiescentAmps * peak } });
    const railVolts = rectifier.waveform.railVolts.map((volts) => Math.max(0, Math.min(stage.outputVolts, volts - stage.headroomVolts)));
    return wavesOf(source, topology, rectifier, railVolts);
  }
  const settled = settleRail({ supply, siemens: circuit.siemens });
  return wavesOf(source, supply.topology, settled.rectifier, settled.railVolts);
}

function wavesOf(source: WindingSource, topology: RectifierTopology, rectifier: ReturnType<typeof solveRectifier>, railVolts: Float64Array): BenchWaves {
  const { waveform } = rectifier;
  const { supply, acrossOhms } = source;
  const windingVolts = waveform.sourceVolts.map((volts, k) => volts - supply.winding.ohms * (waveform.windingAmps[k] as number));
  const windingAmps = acrossOhms === undefined ? waveform.windingAmps : waveform.windingAmps.map((amps, k) => amps + (windingVolts[k] as number) / acrossOhms);
  return { reservoirVolts: waveform.railVolts, railVolts, windingVolts, windingAmps, pulseAmps: loopAmps({ topology, rectifier }).rectified };
}

/** The winding as two equal halves, so that its middle can be grounded. */
function halvedWinding(elements: readonly Element[]): Element[] {
  return elements.flatMap((element): Element[] => {
    if (element.name !== WINDING_ELEMENT || element.kind !== 'sine') return [element];
    const half = { ...element, peakVolts: element.peakVolts / 2, ohms: (element.ohms ?? 0) / 2 };
    return [
      { ...half, between: [element.between[0], 'middle'] },
      { ...half, name: OTHER_HALF_ELEMENT, between: ['middle', element.between[1]] },
    ];
  });
}

/**
 * The circuit with a diode shorted, its winding's middle grounded besides its negative, or no reservoir. A winding that a
 * centre-tap rectifier uses is grounded in its middle already: there the second ground is at its end.
 */
function networkWaves(circuit: BenchCircuit, source: WindingSource): BenchWaves {
  const { supply, defect, acrossOhms } = source;
  const bare: TimedSupply = defect === 'missing-reservoir' ? { ...supply, reservoir: { farads: NO_RESERVOIR_FARADS, ohms: 0 } } : supply;
  const rail = railNode(supply);
  let elements: Element[] = rectifierElements(bare);
  if (defect === 'shorted-diode') {
    elements = elements.map((element): Element => (element.name === 'd1' ? { kind: 'resistor', name: 'd1', between: element.between, ohms: JOINT_OHMS } : element));
  }
  const { topology } = supply;
  const halved = defect === 'second-ground' && topology === 'bridge';
  if (halved) elements = halvedWinding(elements);
  if (defect === 'second-ground') elements.push({ kind: 'resistor', name: 'second ground', between: [halved ? 'middle' : 'a', GROUND], ohms: JOINT_OHMS });
  // What a regulator draws for itself, as a resistor: the periodic solver knows no behaviours.
  const own = (supply.regulator?.quiescentAmps ?? 0) / ((supply.regulator?.setVolts ?? 0) + 3);
  const solution = solveNetwork({
    hertz: supply.hertz,
    intervals: NETWORK_SAMPLES,
    elements: [
      ...elements,
      ...regulatorElements(supply).filter(({ kind }) => kind !== 'behaviour'),
      { kind: 'resistor', name: 'regulator own', between: [RESERVOIR_NODE, GROUND], ohms: 1 / Math.max(own, 1e-9) },
      { kind: 'resistor', name: 'load', between: [rail, GROUND], ohms: 1 / Math.max(circuit.siemens, 1e-9) },
    ],
  });
  const zero = new Float64Array(NETWORK_SAMPLES + 1);
  const volts = (node: string): Float64Array => (node === GROUND ? zero : (solution.volts[node] ?? zero));
  const out = (name: string): Float64Array => (solution.amps[name] ?? zero).map((amps) => -amps);
  const far = { bridge: 'b', 'centre-tap': GROUND, 'half-wave': GROUND, doubler: 'middle' }[topology];
  const windingVolts = volts('a').map((value, k) => value - (volts(far)[k] as number));
  const first = out(WINDING_ELEMENT);
  const second = out(OTHER_HALF_ELEMENT);
  // Of two halves the one that carries more is the one that burns.
  const square = (values: Float64Array): number => values.reduce((sum, value) => sum + value * value, 0);
  const worse = halved && square(second) > square(first) ? second : first;
  const windingAmps = acrossOhms === undefined ? worse : worse.map((amps, k) => amps + (windingVolts[k] as number) / acrossOhms);
  return { reservoirVolts: volts(RESERVOIR_NODE), railVolts: volts(rail), windingVolts, windingAmps, pulseAmps: worse.map(Math.abs) };
}
