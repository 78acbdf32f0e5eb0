import { requireNumber } from '../errors.ts';

const OHMS = { min: 1, max: 1e8 };
const STRAY = { min: 0, max: 1e-6 };
const HERTZ = { min: 1, max: 1e8 };

/**
 * Volts RMS that a stray capacitance puts onto a node of `ohms` to ground: V·ωCR/√(1 + (ωCR)²). Estimate: the capacitance is a
 * guess to a factor of two (1 to 2 pF between a relay's coil and contact, or between neighbouring wires).
 * Throws `InputError` outside 0–1 µF, 1 Ω–100 MΩ, 1 Hz–100 MHz.
 */
export function capacitiveVolts(options: { readonly farads: number; readonly volts: number; readonly hertz: number; readonly ohms: number }): number {
  const x = 2 * Math.PI * requireNumber('hertz', options.hertz, HERTZ) * requireNumber('farads', options.farads, STRAY) * requireNumber('ohms', options.ohms, OHMS);
  return (requireNumber('volts', options.volts, { min: 0, max: 1e4 }) * x) / Math.hypot(1, x);
}

/**
 * Peak that an edge puts onto a grid through a stray capacitance: a ramp of `stepVolts` in `riseSeconds` into R to ground with
 * the grid's own capacitance beside it, R·C·(ΔV/t)·(1 − e^(−t/(R(C+Cg)))); a step as such is divided by the two capacitances.
 * Estimate. Rise 1 ns to 10 s; the grid's capacitance 100 pF when left out (a stage's Miller capacitance, typical). Throws `InputError` outside.
 */
export function edgePeakVolts(options: {
  readonly farads: number;
  readonly stepVolts: number;
  readonly riseSeconds: number;
  readonly gridOhms: number;
  readonly gridFarads?: number;
}): number {
  const farads = requireNumber('farads', options.farads, STRAY);
  const step = requireNumber('stepVolts', options.stepVolts, { min: 0, max: 1e4 });
  const rise = requireNumber('riseSeconds', options.riseSeconds, { min: 1e-9, max: 10 });
  const ohms = requireNumber('gridOhms', options.gridOhms, OHMS);
  const grid = requireNumber('gridFarads', options.gridFarads ?? 100e-12, { min: 1e-13, max: 1e-6 });
  const tau = ohms * (farads + grid);
  return -((ohms * farads * step) / rise) * Math.expm1(-rise / tau);
}

const MU0_OVER_2PI = 2e-7;

/**
 * Volts RMS that a long wire's current induces in a flat loop beside it: 2πf·M·I with M = (μ₀l/2π)·ln((d + w)/d). With
 * `returnSpacingMetres` its return runs that much further off, and only the difference is left: why a twisted pair
 * (spacing of two insulations, less still for the twist) is worth its while. `metres` the loop's length along the wire, `widthMetres`
 * away from it, `distanceMetres` to its near side. Estimate: free air, no steel. Throws `InputError` outside 0.1 mm to 100 m.
 */
export function magneticVolts(options: {
  readonly amps: number;
  readonly hertz: number;
  readonly metres: number;
  readonly widthMetres: number;
  readonly distanceMetres: number;
  readonly returnSpacingMetres?: number;
}): number {
  const size = { min: 1e-4, max: 100 };
  const length = requireNumber('metres', options.metres, size);
  const width = requireNumber('widthMetres', options.widthMetres, size);
  const distance = requireNumber('distanceMetres', options.distanceMetres, size);
  const linked = (from: number): number => Math.log1p(width / from);
  const back = options.returnSpacingMetres === undefined ? 0 : linked(distance + requireNumber('returnSpacingMetres', options.returnSpacingMetres, size));
  const henries = MU0_OVER_2PI * length * (linked(distance) - back);
  return 2 * Math.PI * requireNumber('hertz', options.hertz, HERTZ) * henries * requireNumber('amps', options.amps, { min: 0, max: 1000 });
}

/**
 * Volts RMS at a cathode from leakage between heater and cathode: I·|R ∥ 1/jωC|, without a bypass capacitor I·R.
 * Estimate: leakage of a good valve is a few µA, of a poor one ten times that. Throws `InputError` outside 0–10 mA, 1 Ω–100 MΩ, 0–0.1 F.
 */
export function heaterLeakageVolts(options: { readonly leakageAmps: number; readonly cathodeOhms: number; readonly hertz: number; readonly bypassFarads?: number }): number {
  const amps = requireNumber('leakageAmps', options.leakageAmps, { min: 0, max: 0.01 });
  const ohms = requireNumber('cathodeOhms', options.cathodeOhms, OHMS);
  const x = 2 * Math.PI * requireNumber('hertz', options.hertz, HERTZ) * ohms * requireNumber('bypassFarads', options.bypassFarads ?? 0, { min: 0, max: 0.1 });
  return (amps * ohms) / Math.hypot(1, x);
}
