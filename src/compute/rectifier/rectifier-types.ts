/** The four standard capacitor-input rectifiers; 'doubler' is the full-wave one, two equal reservoirs in series. */
export type RectifierTopology = 'bridge' | 'centre-tap' | 'half-wave' | 'doubler';

/** What the rail feeds: a constant current, a resistance, or a constant power (a switching regulator). */
export type RectifierLoad = { readonly amps: number } | { readonly ohms: number } | { readonly watts: number };

/** What `solveRectifier` is given. SI units, volts RMS. */
export interface RectifierOptions {
  readonly topology: RectifierTopology;
  readonly winding: {
    /** RMS with no load, at the mains of the corner being solved; per half for a centre-tapped winding. 0.1 to 2000 V. */
    readonly openCircuitVolts: number;
    /** Everything in series seen from the secondary (both copper losses); per half for a centre tap. 0 to 100 kΩ. */
    readonly ohms: number;
  };
  /** Mains frequency, 1 to 1000 Hz. */
  readonly hertz: number;
  /** Peak over RMS of the source, 1.05 to √2; default √2. Below √2 the source is a clipped sine of the same RMS. */
  readonly crestFactor?: number | undefined;
  readonly diode: {
    /** 1e-18 to 0.1 A. */
    readonly saturationAmps: number;
    /** Emission coefficient, 0.01 to 10. */
    readonly emission: number;
    /** Bulk resistance of one diode, 0 to 1 kΩ. */
    readonly ohms: number;
  };
  readonly reservoir: {
    /** Each of the two for a doubler. 1 nF to 10 F. */
    readonly farads: number;
    /** Equivalent series resistance, 0 to 1 kΩ; each of the two for a doubler. */
    readonly ohms: number;
  };
  readonly load: RectifierLoad;
}

/** One mains cycle from the positive-going zero crossing of the source, evenly sampled, both ends included. */
export interface RectifierWaveform {
  readonly seconds: Float64Array;
  /** At the load's terminals. */
  readonly railVolts: Float64Array;
  /** Out of the winding; for a centre tap, out of the half that the source's positive half-cycle drives. */
  readonly windingAmps: Float64Array;
  /** Open-circuit voltage of the winding; for a centre tap, of that same half. */
  readonly sourceVolts: Float64Array;
}

/** What `solveRectifier` gives. RMS unless the name says otherwise. */
export interface RectifierSolution {
  /** At the load's terminals; `rippleVolts` is peak to peak. */
  readonly rail: {
    readonly meanVolts: number;
    readonly minVolts: number;
    readonly maxVolts: number;
    readonly rippleVolts: number;
  };
  /** Per half for a centre tap. `peakAmps` is the largest magnitude. */
  readonly winding: { readonly rmsAmps: number; readonly peakAmps: number };
  /** One diode (all are alike). */
  readonly diode: {
    readonly meanAmps: number;
    readonly rmsAmps: number;
    readonly peakAmps: number;
    /** Largest reverse voltage across it. */
    readonly reverseVolts: number;
    /** Degrees of one mains cycle during which its current is above `CONDUCTION_FRACTION` of its own peak. */
    readonly conductionDegrees: number;
  };
  /** RMS of the current through a reservoir: its ripple current. */
  readonly reservoir: { readonly rmsAmps: number };
  readonly load: { readonly meanAmps: number };
  readonly waveform: RectifierWaveform;
}

/** A diode counts as conducting above this part of its peak current. */
export const CONDUCTION_FRACTION = 0.01;
