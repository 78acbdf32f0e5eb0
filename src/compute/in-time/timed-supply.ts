import { requireNumber } from '../errors.ts';
import { GROUND } from '../network/elements.ts';
import type { Element } from '../network/elements.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import type { ChainInput, ChainStage } from '../supplies/chain-types.ts';
import { operatingCorners } from '../supplies/corners.ts';
import type { OperatingCorner } from '../supplies/corners.ts';
import { dropoutOf } from '../supplies/regulator-stage.ts';
import { windingSource } from '../supplies/winding-source.ts';

/** A linear regulator as it acts in time. */
export interface TimedRegulator {
  readonly setVolts: number;
  /** Input over output at which it stops regulating. */
  readonly dropoutVolts: number;
  /** Drawn for itself. */
  readonly quiescentAmps: number;
  /** Most it gives: `peak` with up to 10 V across it, less beyond, `atMaxInput` with `maxInputVolts`; unlimited when left out. */
  readonly limit?: { readonly peak: number; readonly atMaxInput: number; readonly maxInputVolts: number };
  /** Capacitor at its output. */
  readonly outputFarads: number;
}

/** Winding, rectifier, reservoir and regulator at one mains, ready to be followed in time. */
export interface TimedSupply {
  readonly hertz: number;
  /** RMS with nothing connected, at the mains of the moment; one half of a centre tap. */
  readonly winding: { readonly openCircuitVolts: number; readonly ohms: number };
  /** Peak over RMS of the mains; √2 when left out. */
  readonly crestFactor?: number;
  readonly topology: RectifierTopology;
  readonly diode: { readonly saturationAmps: number; readonly emission: number; readonly ohms: number };
  /** Each of the two for a doubler. */
  readonly reservoir: { readonly farads: number; readonly ohms: number };
  /** Left out when the load hangs on the reservoir. */
  readonly regulator?: TimedRegulator;
}

/** Least volts across a linear regulator from which its limit begins to fold back. Typical; see `currentLimitAmps`. */
const FOLD_VOLTS = 10;
/** Capacitor behind a regulator where none is stated. */
const OUTPUT_FARADS = 100e-6;
/** Volts at which a regulator's own current has about come up. */
const QUIESCENT_KNEE_VOLTS = 1;

function timedRegulator(stage: ChainStage, amps: number, outputFarads: number): TimedRegulator | undefined {
  if (stage.kind === 'none') return undefined;
  if (stage.kind === 'buck') {
    // A switcher's input is another matter; as the load sees it, it is a regulator that wants its headroom.
    return { setVolts: stage.outputVolts, dropoutVolts: stage.headroomVolts, quiescentAmps: stage.quiescentAmps, outputFarads };
  }
  return {
    setVolts: stage.outputVolts,
    dropoutVolts: dropoutOf(stage, amps),
    quiescentAmps: stage.quiescentAmps,
    outputFarads,
    ...(stage.shortCircuitAmps === undefined ? {} : { limit: { ...stage.shortCircuitAmps, maxInputVolts: stage.maxInputVolts } }),
  };
}

/**
 * A chain as it stands at one of its operating corners. Without a corner it takes the one that is hardest at switch-on:
 * high mains, pure sine, cold copper, the largest reservoir, everything on. Heaters that hang across the winding are
 * taken hot into the source. A step-down switcher is followed as if its input current were its output current, which
 * overstates what it draws once it runs.
 *
 * `outputFarads` behind the regulator, 100 µF when left out. Throws `InputError` for what the chain refuses.
 */
export function timedSupply(options: { readonly chain: ChainInput; readonly corner?: OperatingCorner; readonly outputFarads?: number }): TimedSupply {
  const { chain } = options;
  const corner = options.corner ?? hardestAtSwitchOn(chain);
  const source = windingSource(chain.winding, corner);
  const outputFarads = requireNumber('outputFarads', options.outputFarads ?? OUTPUT_FARADS, { min: 1e-9, max: 1 });
  const regulator = timedRegulator(chain.stage, chain.load.everythingAmps, outputFarads);
  return {
    hertz: corner.hertz,
    winding: { openCircuitVolts: source.openCircuitVolts, ohms: source.ohms },
    crestFactor: corner.crestFactor,
    topology: chain.topology,
    diode: { saturationAmps: chain.diode.saturationAmps, emission: chain.diode.emission, ohms: chain.diode.ohms },
    reservoir: { farads: chain.reservoir.farads * corner.faradsRatio, ohms: chain.reservoir.ohms * corner.esrRatio },
    ...(regulator === undefined ? {} : { regulator }),
  };
}

function hardestAtSwitchOn(chain: ChainInput): OperatingCorner {
  const corners = operatingCorners(chain.mains);
  const found = corners.find(({ mains, load, reservoir }) => mains === 'high' && load === 'everything' && reservoir === 'largest');
  if (found === undefined) throw new RangeError('the corners hold no high mains with the largest reservoir');
  return found;
}

/** Nodes of the drawn supply: the rail's negative is ground, `rail` is the reservoir's node without a regulator. */
export const RESERVOIR_NODE = 'reservoir';
export const railNode = ({ regulator }: Pick<TimedSupply, 'regulator'>): string => (regulator === undefined ? RESERVOIR_NODE : 'rail');
/** Elements whose currents make up the winding's; the second is the other half of a centre tap. */
export const WINDING_ELEMENT = 'winding';
export const OTHER_HALF_ELEMENT = 'other half';
export const REGULATOR_ELEMENT = 'regulator';

/** Winding, diodes and reservoir(s) as elements for the network solver, negative at ground. */
export function rectifierElements(supply: Omit<TimedSupply, 'regulator'>, startVolts = 0): Element[] {
  const { winding, crestFactor, topology, diode, reservoir } = supply;
  const peakVolts = winding.openCircuitVolts * (crestFactor ?? Math.SQRT2);
  const source = (name: string, first: string, second: string): Element => ({ kind: 'sine', name, between: [first, second], peakVolts, ohms: winding.ohms, crestFactor });
  const valve = (name: string, anode: string, cathode: string): Element => ({ kind: 'diode', name, between: [anode, cathode], ...diode });
  const store = (name: string, first: string, second: string, initialVolts: number): Element => ({
    kind: 'capacitor', name, between: [first, second], farads: reservoir.farads, ohms: reservoir.ohms, initialVolts,
  });
  const top = RESERVOIR_NODE;
  switch (topology) {
    case 'bridge':
      return [
        source(WINDING_ELEMENT, 'a', 'b'), valve('d1', 'a', top), valve('d2', 'b', top), valve('d3', GROUND, 'a'), valve('d4', GROUND, 'b'),
        store('reservoir', top, GROUND, startVolts),
      ];
    case 'centre-tap':
      return [
        source(WINDING_ELEMENT, 'a', GROUND), source(OTHER_HALF_ELEMENT, GROUND, 'b'), valve('d1', 'a', top), valve('d2', 'b', top),
        store('reservoir', top, GROUND, startVolts),
      ];
    case 'half-wave':
      return [source(WINDING_ELEMENT, 'a', GROUND), valve('d1', 'a', top), store('reservoir', top, GROUND, startVolts)];
    case 'doubler':
      return [
        source(WINDING_ELEMENT, 'a', 'middle'), valve('d1', 'a', top), valve('d2', GROUND, 'a'),
        store('reservoir', top, 'middle', startVolts / 2), store('reservoir 2', 'middle', GROUND, startVolts / 2),
      ];
  }
}

/** The regulator with its own current and its output capacitor; none when the supply has none. */
export function regulatorElements({ regulator }: Pick<TimedSupply, 'regulator'>, startVolts = 0): Element[] {
  if (regulator === undefined) return [];
  const { setVolts, dropoutVolts, quiescentAmps, limit, outputFarads } = regulator;
  const rail = railNode({ regulator });
  return [
    {
      kind: 'regulator', name: REGULATOR_ELEMENT, between: [RESERVOIR_NODE, rail], reference: GROUND, setVolts, dropoutVolts,
      ...(limit === undefined ? {} : { limit: { peakAmps: limit.peak, foldVolts: FOLD_VOLTS, foldedAmps: limit.atMaxInput, foldedVolts: Math.max(limit.maxInputVolts, FOLD_VOLTS + 1) } }),
    },
    {
      kind: 'behaviour', name: 'regulator own', between: [RESERVOIR_NODE, GROUND], initialState: [],
      amps: ({ volts }) => quiescentAmps * Math.tanh(volts / QUIESCENT_KNEE_VOLTS),
    },
    { kind: 'capacitor', name: 'output', between: [rail, GROUND], farads: outputFarads, ohms: 0.05, initialVolts: startVolts },
  ];
}

/** The regulator's limit with so many volts across it, amps; Infinity when it has none. */
export function limitAt(regulator: TimedRegulator, across: number): number {
  const { limit } = regulator;
  if (limit === undefined) return Infinity;
  const share = Math.min(1, Math.max(0, (across - FOLD_VOLTS) / (Math.max(limit.maxInputVolts, FOLD_VOLTS + 1) - FOLD_VOLTS)));
  return limit.peak + (limit.atMaxInput - limit.peak) * share;
}

/** Throws `InputError` for a supply out of range; what lies below is checked by the solvers. */
export function checkTimedSupply({ hertz, winding, regulator }: TimedSupply): void {
  requireNumber('hertz', hertz, { min: 10, max: 1000 });
  requireNumber('winding.openCircuitVolts', winding.openCircuitVolts, { min: 0.5, max: 500 });
  // An ideal source charging an empty reservoir would give current without end.
  requireNumber('winding.ohms', winding.ohms, { min: 1e-3, max: 10_000 });
  if (regulator === undefined) return;
  requireNumber('regulator.setVolts', regulator.setVolts, { min: 0.5, max: 100 });
  requireNumber('regulator.dropoutVolts', regulator.dropoutVolts, { min: 0, max: 20 });
  requireNumber('regulator.quiescentAmps', regulator.quiescentAmps, { min: 0, max: 1 });
}
