import { InputError, requireNumber } from '../errors.ts';
import { onCurve } from './interpolate.ts';
import { LINEAR_REGULATORS } from './regulator-linear-rows.ts';
import type { LinearRegulator } from './regulator-linear-rows.ts';
import type { Spread } from './row.ts';

export { LINEAR_REGULATORS } from './regulator-linear-rows.ts';
export type { LinearRegulator } from './regulator-linear-rows.ts';

/** The row with this id. Throws `InputError` when there is none. */
export function linearRegulator(id: string): LinearRegulator {
  const found = LINEAR_REGULATORS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('regulator', id, { expected: LINEAR_REGULATORS.map((row) => row.id).join(', ') });
  return found;
}

/**
 * Input over output at which regulation ends, volts: what to expect at a junction temperature (default 25 °C), and
 * what to plan with at the ripple valley. 0 to 10 A (level beyond the printed range), −40 to 150 °C.
 */
export function dropoutVolts(options: {
  readonly part: LinearRegulator;
  readonly amps: number;
  readonly junctionCelsius?: number;
}): { readonly typical: number; readonly planned: number } {
  const { part } = options;
  const amps = requireNumber('amps', options.amps, { min: 0, max: 10 });
  const celsius = requireNumber('junctionCelsius', options.junctionCelsius ?? 25, { min: -40, max: 200 });
  const typical = Math.max(0, onCurve(part.typicalDropout, amps) + part.dropoutVoltsPerKelvin * (celsius - 25));
  return { typical, planned: Math.max(typical, onCurve(part.plannedDropout.points, amps)) };
}

/** Output limits of a fixed regulator over line, load and temperature, volts. For an adjustable one see `adjustableOutput`. */
export function regulatedVolts(part: LinearRegulator): Spread {
  const { outputVolts, tolerance } = part;
  return { min: outputVolts * (1 - tolerance.overall), typical: outputVolts, max: outputVolts * (1 + tolerance.overall) };
}

/**
 * Output of an adjustable regulator, volts: Vref·(1 + R2/R1) + Iadj·R2, with the limits that the reference (1.20–1.30 V,
 * typical), its adjust current (up to 100 µA) and the resistors' tolerance (ratio, default 0.01) give.
 * R1 (output to adjust) 10 Ω–10 kΩ, R2 (adjust to ground) 0–1 MΩ.
 */
export function adjustableOutput(options: {
  readonly part: LinearRegulator;
  readonly r1Ohms: number;
  readonly r2Ohms: number;
  readonly resistorTolerance?: number;
}): Spread & { readonly minLoadMet: boolean } {
  const { part } = options;
  const r1 = requireNumber('r1Ohms', options.r1Ohms, { min: 10, max: 10_000 });
  const r2 = requireNumber('r2Ohms', options.r2Ohms, { min: 0, max: 1e6 });
  const tolerance = requireNumber('resistorTolerance', options.resistorTolerance ?? 0.01, { min: 0, max: 0.2 });
  const output = (reference: number, ratio: number, adjustAmps: number, upper: number): number => reference * (1 + ratio) + adjustAmps * upper;
  const reference = part.outputVolts;
  const spread = part.tolerance.overall;
  const adjust = onCurve(part.quiescentAmps.typical, 0);
  return {
    min: output(reference * (1 - spread), ((r2 / r1) * (1 - tolerance)) / (1 + tolerance), 0, r2),
    typical: output(reference, r2 / r1, adjust, r2),
    max: output(reference * (1 + spread), ((r2 / r1) * (1 + tolerance)) / (1 - tolerance), part.quiescentAmps.max, r2 * (1 + tolerance)),
    minLoadMet: reference / r1 >= part.minLoadAmps,
  };
}

/** Current into the ground pin at a load, amps, typical and largest. Draws more in dropout, which this leaves out. */
export function quiescentAmps(options: { readonly part: LinearRegulator; readonly amps: number }): { readonly typical: number; readonly max: number } {
  const amps = requireNumber('amps', options.amps, { min: 0, max: 10 });
  return { typical: onCurve(options.part.quiescentAmps.typical, amps), max: options.part.quiescentAmps.max };
}

/**
 * Heat in a linear regulator, watts: (Vin − Vout)·I + Vin·Iq. Uses the mean input volts, since ripple above the valley
 * is burnt too. Zero while the input is below the output.
 */
export function regulatorWatts(options: {
  readonly inputMeanVolts: number;
  readonly outputVolts: number;
  readonly amps: number;
  readonly quiescentAmps: number;
}): number {
  const input = requireNumber('inputMeanVolts', options.inputMeanVolts, { min: 0, max: 1000 });
  const output = requireNumber('outputVolts', options.outputVolts, { min: 0, max: 1000 });
  const amps = requireNumber('amps', options.amps, { min: 0, max: 100 });
  const quiescent = requireNumber('quiescentAmps', options.quiescentAmps, { min: 0, max: 1 });
  return Math.max(0, input - output) * amps + input * quiescent;
}

/**
 * Current a cold heater or a short gets from the regulator, amps: its peak limit with up to 10 V across it, folding
 * back in a straight line to the printed figure at its highest input. Typical; there are no printed limits between.
 */
export function currentLimitAmps(options: { readonly part: LinearRegulator; readonly voltsAcross: number }): number {
  const { peak, atMaxInput } = options.part.shortCircuitAmps;
  const across = requireNumber('voltsAcross', options.voltsAcross, { min: 0, max: 1000 });
  return onCurve([[10, peak], [options.part.maxInputVolts, atMaxInput]], across);
}

/** A diode that a linear regulator needs, where, and why. */
export interface ProtectionDiode {
  readonly anode: 'output' | 'adjust';
  readonly cathode: 'input' | 'output';
  readonly why: string;
}

/**
 * Diodes for switch-off: output to input when the output capacitor can outlast the input (more farads behind than
 * before, or above 25 µF, with an output above 6 V), and adjust to output with a capacitor on the adjust pin.
 * Thresholds typical of application notes.
 */
export function protectionDiodes(options: {
  readonly part: LinearRegulator;
  readonly outputVolts: number;
  readonly inputFarads: number;
  readonly outputFarads: number;
  readonly adjustFarads?: number;
}): readonly ProtectionDiode[] {
  const { part, adjustFarads = 0 } = options;
  const output = requireNumber('outputVolts', options.outputVolts, { min: 0, max: 1000 });
  const before = requireNumber('inputFarads', options.inputFarads, { min: 0, max: 10 });
  const behind = requireNumber('outputFarads', options.outputFarads, { min: 0, max: 10 });
  const diodes: ProtectionDiode[] = [];
  if (output > 6 && (behind >= before || behind > 25e-6)) {
    diodes.push({ anode: 'output', cathode: 'input', why: 'At switch-off, or with the input shorted, the output capacitor would discharge backwards through the regulator.' });
  }
  if (part.family === 'adjustable' && adjustFarads > 0) {
    diodes.push({ anode: 'adjust', cathode: 'output', why: 'With the output shorted, the capacitor on the adjust pin would discharge through the reference.' });
  }
  return diodes;
}
