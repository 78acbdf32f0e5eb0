import { InputError, requireNumber } from '../errors.ts';
import { COLD_OHMS_AT_1A, COLD_OHMS_EXPONENT, FUSE_STANDARDS, IEC_FUSE_AMPS, MELTING_A2S, MELTING_EXPONENT, PULSE_SHARES } from './fuse-rows.ts';
import type { FuseGate, FuseStandard } from './fuse-rows.ts';
import { onLogCurve, onLogLogCurve } from './interpolate.ts';
import type { CurvePoint } from './interpolate.ts';

export { FUSE_STANDARDS, IEC_FUSE_AMPS } from './fuse-rows.ts';
export type { FuseGate, FuseStandard } from './fuse-rows.ts';

const RATED = { min: 0.01, max: 30 };

/** The standard with this id. Throws `InputError` when there is none. */
export function fuseStandard(id: string): FuseStandard {
  const found = FUSE_STANDARDS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('fuse', id, { expected: FUSE_STANDARDS.map((row) => row.id).join(', ') });
  return found;
}

/** The gates that apply to a rating. Throws `InputError` beyond the standard's range. */
export function fuseGates(options: { readonly standard: FuseStandard; readonly ratedAmps: number }): readonly FuseGate[] {
  const rated = requireNumber('ratedAmps', options.ratedAmps, RATED);
  const found = options.standard.gates.find(({ toAmps }) => rated <= toAmps);
  if (found === undefined) throw new InputError('ratedAmps', rated, { min: RATED.min, max: options.standard.gates.at(-1)?.toAmps ?? RATED.max });
  return found.points;
}

/** What a fuse promises at a current. */
export interface FuseTimes {
  /** It will not have opened before this; `undefined` where the standard promises nothing. */
  readonly minSeconds?: number;
  /** It will have opened by this; `undefined` where it need never open. */
  readonly maxSeconds?: number;
}

/** A gate limit as a curve of seconds over multiple, carried on beyond its last point with the same I²t. */
function limitAt(points: readonly CurvePoint[], multiple: number): number | undefined {
  const last = points.at(-1);
  if (last === undefined) return undefined;
  if (multiple > last[0]) return last[1] * (last[0] / multiple) ** 2;
  return onLogLogCurve(points, multiple);
}

/**
 * Shortest and longest time to open at a steady current, from the standard's gates, straight between them on
 * logarithmic scales and at constant I²t beyond the last. Below the first gate that demands opening it need never open;
 * above the last that forbids it nothing forbids it. Any single fuse lies somewhere between; heat shortens both.
 * Amps 0 to 10 kA. Throws `InputError` outside.
 */
export function fuseTimes(options: { readonly standard: FuseStandard; readonly ratedAmps: number; readonly amps: number }): FuseTimes {
  const gates = fuseGates(options);
  // 0.21 A over 0.1 A comes out a hair below 2.1: a current at a gate is at the gate.
  const exact = requireNumber('amps', options.amps, { min: 0, max: 1e4 }) / options.ratedAmps;
  const multiple = gates.find((gate) => Math.abs(gate.multiple - exact) < 1e-9)?.multiple ?? exact;
  const least = gates.flatMap((gate): CurvePoint[] => (gate.minSeconds === undefined ? [] : [[gate.multiple, gate.minSeconds]]));
  const most = gates.flatMap((gate): CurvePoint[] => (gate.maxSeconds === undefined ? [] : [[gate.multiple, gate.maxSeconds]]));
  const first = most[0]?.[0] ?? Infinity;
  // A standard whose only promise is to hold its rating says nothing of short times.
  const minSeconds = least.length > 1 || multiple <= (least[0]?.[0] ?? 0) ? (multiple > 0 ? limitAt(least, multiple) : least[0]?.[1]) : undefined;
  const maxSeconds = multiple < first ? undefined : limitAt(most, multiple);
  return { ...(minSeconds === undefined ? {} : { minSeconds }), ...(maxSeconds === undefined ? {} : { maxSeconds }) };
}

/**
 * Melting integral of a time-lag ceramic fuse, A²s: printed for 1 to 4 A, elsewhere by the power law fitted to those
 * (1.7·I^2.52), which is assumed. Read the sheet of the fuse in hand.
 */
export function meltingIntegral(ratedAmps: number): { readonly a2s: number; readonly basis: 'rated' | 'assumed' } {
  const rated = requireNumber('ratedAmps', ratedAmps, RATED);
  const printed = MELTING_A2S.find(([amps]) => Math.abs(amps - rated) < 1e-9);
  return printed === undefined ? { a2s: 1.7 * rated ** MELTING_EXPONENT, basis: 'assumed' } : { a2s: printed[1], basis: 'rated' };
}

/** Cold resistance of a time-lag fuse, ohms: 0.2 Ω at 1 A printed, others by an assumed power of the rating. Hot it is more. */
export function fuseColdOhms(ratedAmps: number): number {
  return COLD_OHMS_AT_1A * requireNumber('ratedAmps', ratedAmps, RATED) ** COLD_OHMS_EXPONENT;
}

/** A current pulse by its shape: I²t of a rectangle ip²t, half-sine or exponential ip²t/2 (t the time constant), triangle ip²t/3. */
export interface Pulse {
  readonly shape: 'rectangle' | 'half-sine' | 'triangle' | 'exponential';
  readonly peakAmps: number;
  readonly seconds: number;
}

/** I²t of a pulse, A²s. Peak 0–1e5 A, seconds 0–1000. Source: fuse maker's guide. */
export function pulseA2s(pulse: Pulse): number {
  const peak = requireNumber('peakAmps', pulse.peakAmps, { min: 0, max: 1e5 });
  const seconds = requireNumber('seconds', pulse.seconds, { min: 0, max: 1000 });
  const divisor = { rectangle: 1, 'half-sine': 2, exponential: 2, triangle: 3 }[pulse.shape] as number | undefined;
  if (divisor === undefined) throw new InputError('shape', pulse.shape, { expected: 'rectangle, half-sine, triangle or exponential' });
  return (peak * peak * seconds) / divisor;
}

/** I²t of charging an empty reservoir through a resistance to a peak, A²s: C·Vp²/(2R), an exponential from Vp/R with τ = RC. */
export function reservoirInrushA2s(options: { readonly farads: number; readonly peakVolts: number; readonly ohms: number }): number {
  const ohms = requireNumber('ohms', options.ohms, { min: 1e-4, max: 1e6 });
  const farads = requireNumber('farads', options.farads, { min: 0, max: 10 });
  return pulseA2s({ shape: 'exponential', peakAmps: requireNumber('peakVolts', options.peakVolts, { min: 0, max: 2000 }) / ohms, seconds: ohms * farads });
}

/** Share of its melting integral that a fuse bears at each of `pulses` switch-ons (100 to 100 000; level beyond). */
export function pulseShare(pulses: number): number {
  return onLogCurve(PULSE_SHARES, requireNumber('pulses', pulses, { min: 1, max: 1e9 }));
}

/** Breaking capacity of a rating, amps RMS at 250 V. Throws `InputError` beyond the standard's range. */
export function breakingCapacityAmps(options: { readonly standard: FuseStandard; readonly ratedAmps: number }): number {
  const rated = requireNumber('ratedAmps', options.ratedAmps, RATED);
  const found = options.standard.breaking.find(({ toAmps }) => rated <= toAmps);
  if (found === undefined) throw new InputError('ratedAmps', rated, { max: options.standard.breaking.at(-1)?.toAmps ?? RATED.max });
  return Math.max(found.amps, (found.timesRated ?? 0) * rated);
}

/** Smallest standard rating that carries a running RMS current for ever by the standard's philosophy; `undefined` above 10 A. */
export function fuseRatingFor(options: { readonly standard: FuseStandard; readonly rmsAmps: number }): number | undefined {
  const needed = requireNumber('rmsAmps', options.rmsAmps, { min: 0, max: 100 }) / options.standard.continuousShare;
  return IEC_FUSE_AMPS.find((amps) => amps >= needed * (1 - 1e-9));
}
