import type { Basis } from '../findings.ts';
import type { SolveFailureReason } from '../errors.ts';
import type { CurvePoint } from '../parts/interpolate.ts';
import type { RectifierSolution, RectifierTopology } from '../rectifier/rectifier-types.ts';
import type { Mains, OperatingCorner } from './corners.ts';
import type { VoltageStair } from './voltage-stairs.ts';
import type { WorkingStep } from './working.ts';

/** A winding as the rectifier sees it, at nominal mains. */
export interface ChainWinding {
  /** RMS with nothing connected, at nominal mains; of one half for a centre-tap rectifier. */
  readonly openCircuitVolts: number;
  /** Source resistance seen from this winding, primary included; of one half for a centre-tap rectifier. */
  readonly ohms: number;
  /** Set when `ohms` was measured on a cold winding: it is then raised for warm copper where that is worse. */
  readonly ohmsMeasuredCold?: boolean;
  /** RMS current the winding may carry; left out when nobody knows it. */
  readonly ratedAmps?: number;
  /** Hot resistance of the valve heaters that hang across the winding besides the rectifier; none when left out. */
  readonly acrossOhms?: number;
  /** What the volts and ohms stand on. */
  readonly basis: Basis;
}

/** A rectifier diode: its exponential model with the ratings it is checked against. */
export interface ChainDiode {
  readonly name: string;
  readonly saturationAmps: number;
  readonly emission: number;
  readonly ohms: number;
  /** Mean forward current allowed into a capacitor load. */
  readonly ratedMeanAmps: number;
  readonly ratedReverseVolts: number;
  readonly basis: Basis;
}

/** The reservoir capacitor as marked; each of the two for a doubler. */
export interface ChainReservoir {
  readonly farads: number;
  /** Series resistance of a new part, upper limit. */
  readonly ohms: number;
  readonly ratedVolts: number;
  /** Ripple current allowed at the rectifier's ripple frequency and in this air; left out when unknown. */
  readonly ratedRippleAmps?: number;
  readonly basis: Basis;
}

/** A series regulator: fixed, low-dropout or adjustable. */
export interface LinearStage {
  readonly kind: 'fixed' | 'low-dropout' | 'adjustable';
  readonly name: string;
  readonly outputVolts: number;
  /** Worst-case spread of the output over line, load and temperature, each way, over `outputVolts`. */
  readonly outputToleranceRatio: number;
  /** Worst-case input-output difference needed, volts by output amps; straight between points, level beyond them. */
  readonly dropout: readonly CurvePoint[];
  /** Largest current it draws for itself. */
  readonly quiescentAmps: number;
  readonly maxInputVolts: number;
  readonly ratedAmps: number;
  readonly junctionToCaseKelvinPerWatt: number;
  /** Without a heatsink. */
  readonly junctionToAirKelvinPerWatt: number;
  readonly maxJunctionCelsius: number;
  /** Current into a dead short with little, and with `maxInputVolts`, across it; left out when unknown. */
  readonly shortCircuitAmps?: { readonly peak: number; readonly atMaxInput: number };
  readonly basis: Basis;
}

/** A step-down switching regulator. */
export interface BuckStage {
  readonly kind: 'buck';
  readonly name: string;
  readonly outputVolts: number;
  readonly outputToleranceRatio: number;
  /** Volts that its switch, diode and coil eat, as if in series with the output. */
  readonly lossVolts: number;
  /** Input must stay this far above the output, and above `minInputVolts`. */
  readonly headroomVolts: number;
  readonly minInputVolts: number;
  readonly maxInputVolts: number;
  /** Drawn at its input with nothing connected, and besides under load. */
  readonly quiescentAmps: number;
  readonly ratedAmps: number;
  /** Rise of its hottest part over the air per watt lost, board in still air. */
  readonly junctionToAirKelvinPerWatt: number;
  readonly maxJunctionCelsius: number;
  readonly basis: Basis;
}

/** No regulator: the load sits on the reservoir. */
export interface NoStage {
  readonly kind: 'none';
  /** Volts at which the load's currents are stated; it is solved as the resistance that draws them there. */
  readonly designVolts: number;
  /** The load draws its amps at any volts, as what hangs behind a linear regulator does. */
  readonly steady?: true;
}

export type ChainStage = NoStage | LinearStage | BuckStage;

/** Amps drawn from the rail in each state of the load, worst-case part tolerance included. */
export interface ChainLoad {
  readonly offAmps: number;
  readonly runningAmps: number;
  readonly everythingAmps: number;
}

/** What the regulator is cooled by. */
export interface Cooling {
  /** Hottest air around the parts inside the chassis. */
  readonly airCelsius: number;
  /** Heatsink to air; left out when there is none. */
  readonly heatsinkKelvinPerWatt?: number;
  /** Pad or compound between case and heatsink; 0.5 when left out (bare, with compound; typical). */
  readonly interfaceKelvinPerWatt?: number;
}

export interface ChainInput {
  readonly mains: Mains;
  readonly winding: ChainWinding;
  readonly topology: RectifierTopology;
  readonly diode: ChainDiode;
  readonly reservoir: ChainReservoir;
  readonly stage: ChainStage;
  readonly load: ChainLoad;
  readonly cooling: Cooling;
}

/** The rail as its load sees it. */
export interface RailVolts {
  readonly meanVolts: number;
  readonly minVolts: number;
  readonly maxVolts: number;
  readonly rippleVolts: number;
}

/** One corner, solved. */
export interface SolvedCorner {
  readonly solved: true;
  readonly corner: OperatingCorner;
  /** Resistance of the source behind the rectifier: the winding's, in parallel with what hangs across it. */
  readonly sourceOhms: number;
  /** Peak of the winding before the rectifier draws anything, heaters across it included. */
  readonly windingPeakVolts: number;
  /** All the winding carries; of one half for a centre tap. */
  readonly windingRmsAmps: number;
  /** What hangs across the winding; undefined when nothing does. */
  readonly across: AcrossWinding | undefined;
  /** Winding, diodes and reservoir; its `rail` is what enters the regulator. */
  readonly rectifier: RectifierSolution;
  readonly rail: RailVolts;
  /** Amps the load takes from the rail. */
  readonly loadAmps: number;
  /** Volts the regulator needs at its input: highest output plus worst dropout. 0 without a regulator. */
  readonly neededVolts: number;
  /** Valley less `neededVolts`; undefined without a regulator. */
  readonly headroomVolts: number | undefined;
  /** Heat in the regulator with its lowest output; 0 without one. */
  readonly regulatorWatts: number;
  /** Of the regulator; undefined without one. */
  readonly junctionCelsius: number | undefined;
  /** Where the power taken from the ideal source goes. */
  readonly watts: WattsTaken;
}

/** Power per part. What enters from the source is the sum of the rest. */
export interface WattsTaken {
  readonly source: number;
  readonly winding: number;
  readonly diodes: number;
  readonly reservoir: number;
  readonly regulator: number;
  readonly load: number;
  /** In the heaters across the winding. */
  readonly across: number;
}

/** Valve heaters across the winding that the rectifier shares. */
export interface AcrossWinding {
  /** At the heaters, with and without the rectifier. */
  readonly rmsVolts: number;
  readonly rmsVoltsBefore: number;
  /** Peak over RMS at the heaters: the pulses flatten the wave. */
  readonly crestFactor: number;
  readonly rmsAmps: number;
  readonly watts: number;
  /** In the winding, heaters and rectifier together: root of the mean of the squared sum. */
  readonly totalRmsAmps: number;
  /** In the winding without the rectifier. */
  readonly rmsAmpsBefore: number;
}

/** A corner that has no steady state, or none that could be found. */
export interface UnsolvedCorner {
  readonly solved: false;
  readonly corner: OperatingCorner;
  readonly reason: SolveFailureReason;
  readonly message: string;
}

export type ChainCorner = SolvedCorner | UnsolvedCorner;

/** The chain at every corner, with the corners that decide. */
export interface ChainSolution {
  readonly corners: readonly ChainCorner[];
  /** Corners without an answer; when there are any the supply does not hold. */
  readonly unsolved: readonly UnsolvedCorner[];
  /** The corner that decides each figure; undefined when nothing could be solved. */
  readonly worst: WorstCorners | undefined;
  /** Where every volt goes at the corner of least headroom. */
  readonly stairs: readonly VoltageStair[];
  /** How the deciding figures come about, step by step. */
  readonly working: readonly WorkingStep[];
}

export interface WorstCorners {
  /** Least headroom; lowest valley without a regulator. */
  readonly valley: SolvedCorner;
  /** Hottest regulator. */
  readonly heat: SolvedCorner;
  /** Most current in the winding. */
  readonly windingCurrent: SolvedCorner;
  /** Most current in the reservoir. */
  readonly rippleCurrent: SolvedCorner;
  /** Highest volts on the reservoir. */
  readonly peak: SolvedCorner;
  /** Most ripple at the reservoir. */
  readonly ripple: SolvedCorner;
  /** Highest reverse volts across a diode. */
  readonly reverse: SolvedCorner;
  /** Most mean current in a diode. */
  readonly diodeCurrent: SolvedCorner;
}
