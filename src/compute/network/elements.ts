/** The node that everything is measured against. */
export const GROUND = 'ground';

interface TwoTerminal {
  /** Unique in the circuit; the key of its current in the result. */
  readonly name: string;
  /** Node names, first and second. An element's current is positive from first to second, through the element. */
  readonly between: readonly [string, string];
}

/** A resistance, 0 Ω (an ideal wire) to 1 TΩ. */
export interface ResistorElement extends TwoTerminal {
  readonly kind: 'resistor';
  readonly ohms: number;
}

/** A capacitance, 1 pF to 100 F, with its series resistance if given. */
export interface CapacitorElement extends TwoTerminal {
  readonly kind: 'capacitor';
  readonly farads: number;
  readonly ohms?: number | undefined;
  /** Voltage (first node positive) at the start of a transient; default 0. No effect on a periodic steady state. */
  readonly initialVolts?: number | undefined;
}

/** An inductance, 1 nH to 10 kH, with the resistance of its winding if given. */
export interface InductorElement extends TwoTerminal {
  readonly kind: 'inductor';
  readonly henries: number;
  readonly ohms?: number | undefined;
  /** Current (first to second) at the start of a transient; default 0. */
  readonly initialAmps?: number | undefined;
}

/** A mains-frequency source, first node positive at its positive peak; a delivering source has negative `amps`. */
export interface SineElement extends TwoTerminal {
  readonly kind: 'sine';
  readonly peakVolts: number;
  /** Phase lead in degrees; default 0 (rising through zero at time zero). */
  readonly degrees?: number | undefined;
  readonly ohms?: number | undefined;
  /** Multiple of the mains frequency, a whole number; default 1. */
  readonly harmonic?: number | undefined;
  /** Peak over RMS, 1.05 to √2 (default): below √2 the top is clipped, `peakVolts` remaining the peak. */
  readonly crestFactor?: number | undefined;
}

/** A direct voltage, first node positive, behind `ohms` if given. */
export interface DcElement extends TwoTerminal {
  readonly kind: 'dc';
  readonly volts: number;
  readonly ohms?: number | undefined;
}

/** A constant current from first to second node, through the element: a load from rail to ground is positive. */
export interface CurrentElement extends TwoTerminal {
  readonly kind: 'current';
  readonly amps: number;
}

/** i = Is·(exp(v/(n·VT)) − 1) behind `ohms`, VT = 25.852 mV; anode first, cathode second. */
export interface DiodeElement extends TwoTerminal {
  readonly kind: 'diode';
  readonly saturationAmps: number;
  readonly emission: number;
  readonly ohms?: number | undefined;
  /** Reverse voltage at which 1 mA flows backwards (a zener, or an avalanche); none by default. */
  readonly breakdownVolts?: number | undefined;
}

/** A contact. In a transient it may change over at given times. */
export interface SwitchElement extends TwoTerminal {
  readonly kind: 'switch';
  /** At the start. */
  readonly closed: boolean;
  /** Resistance of the closed contact; default 1 mΩ. */
  readonly ohms?: number | undefined;
  /** Transient only: seconds at which it closes, opens. */
  readonly closesAt?: number | undefined;
  readonly opensAt?: number | undefined;
}

/**
 * A constant-power load (a switching regulator): below `minVolts` it behaves as the resistance it had there. Supply and
 * load may then have two steady states; the one reached from empty reservoirs is found.
 */
export interface LoadElement extends TwoTerminal {
  readonly kind: 'load';
  readonly watts: number;
  readonly minVolts: number;
}

/**
 * A series regulator from its input (first node) to its output (second), that holds the output at `setVolts` above its
 * `reference` node. What it draws for itself is not in it: lay a load of its own from input to reference.
 */
export interface RegulatorElement extends TwoTerminal {
  readonly kind: 'regulator';
  /** Node that its output is held against. */
  readonly reference: string;
  readonly setVolts: number;
  /** Fall of the output per amp, 0.1 mΩ to 1 kΩ; default 10 mΩ. */
  readonly outputOhms?: number | undefined;
  /** Input over output below which it passes nothing more, and the rise of that per amp (default 50 mΩ). */
  readonly dropoutVolts: number;
  readonly dropoutOhms?: number | undefined;
  /** `peakAmps` with up to `foldVolts` across it, falling to `foldedAmps` at `foldedVolts`; none when left out. */
  readonly limit?:
    | { readonly peakAmps: number; readonly foldVolts: number; readonly foldedAmps: number; readonly foldedVolts: number }
    | undefined;
}

/**
 * A filament that warms up (transient only): its resistance follows its temperature, which follows its power.
 * See `heater.ts` for the law.
 */
export interface HeaterElement extends TwoTerminal {
  readonly kind: 'heater';
  readonly hotVolts: number;
  readonly hotAmps: number;
  /** Cold resistance over hot resistance, 0.05 to 1. */
  readonly coldRatio: number;
  /** Seconds from cold to 90 % of hot resistance at `hotVolts`. */
  readonly warmUpSeconds: number;
  /** 0 cold (default) to 1 hot, at the start. */
  readonly initialWarmth?: number | undefined;
}

/** What a behaviour given from outside is told. */
export interface BehaviourInput {
  readonly volts: number;
  readonly seconds: number;
  readonly state: readonly number[];
}

/**
 * An element whose behaviour is given as pure functions (transient only): a converter that limits and hiccups, a
 * relay that pulls in, a switch driven by a voltage.
 *
 * `amps` must be continuous in `volts` between two calls of `next`. `rates` gives the time derivatives of `state`.
 * `crossing` gives a value whose change of sign calls for `next`, which answers with the state that follows; the
 * moment is found to within `eventSeconds` (of `solveTransient`).
 */
export interface BehaviourElement extends TwoTerminal {
  readonly kind: 'behaviour';
  readonly initialState: readonly number[];
  readonly amps: (input: BehaviourInput) => number;
  readonly rates?: ((input: BehaviourInput & { readonly amps: number }) => readonly number[]) | undefined;
  readonly crossing?: ((input: BehaviourInput & { readonly amps: number }) => number) | undefined;
  readonly next?: ((input: BehaviourInput & { readonly amps: number }) => readonly number[]) | undefined;
}

/** Everything that a circuit may hold. */
export type Element =
  | ResistorElement
  | CapacitorElement
  | InductorElement
  | SineElement
  | DcElement
  | CurrentElement
  | DiodeElement
  | SwitchElement
  | LoadElement
  | RegulatorElement
  | HeaterElement
  | BehaviourElement;
