import { InputError, requireNumber } from '../errors.ts';
import { temperatureByResistance } from './copper.ts';
import { onLogCurve } from './interpolate.ts';
import type { Spread } from './row.ts';
import { CONSTRUCTIONS, INSULATION_CLASSES, NO_LOAD_EXCESS } from './transformer-rows.ts';
import type { ConstructionRow, InsulationClassRow } from './transformer-rows.ts';

export { COMMON_SECONDARY_VOLTS, COMMON_VOLT_AMPS, CONSTRUCTIONS, INSULATION_CLASSES, SHORT_CIRCUIT_MARKS } from './transformer-rows.ts';
export type { ConstructionRow, InsulationClassRow, ShortCircuitMark } from './transformer-rows.ts';

const VOLT_AMPS = { min: 0.5, max: 5000 };

/** The construction with this id. Throws `InputError` when there is none. */
export function construction(id: string): ConstructionRow {
  const found = CONSTRUCTIONS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('construction', id, { expected: CONSTRUCTIONS.map((row) => row.id).join(', ') });
  return found;
}

/**
 * Regulation to expect of a size, ratio over full load: lowest, middle and highest of catalogues, straight between
 * table entries on a logarithmic scale of VA, level beyond. Typical: the part's own no-load volts decide.
 */
export function typicalRegulation(options: { readonly construction: ConstructionRow; readonly voltAmps: number }): Spread {
  const voltAmps = requireNumber('voltAmps', options.voltAmps, VOLT_AMPS);
  const { lowest, highest } = options.construction.regulation;
  const min = onLogCurve(lowest, voltAmps);
  const max = onLogCurve(highest, voltAmps);
  return { min, typical: (min + max) / 2, max };
}

/**
 * Largest no-load excess that the safety-transformer standard allows for a rating, ratio of rated volts.
 * Not for inherently short-circuit-proof types, which may exceed it. Typical: check in the standard.
 */
export function allowedNoLoadExcess(voltAmps: number): number {
  const value = requireNumber('voltAmps', voltAmps, VOLT_AMPS);
  return NO_LOAD_EXCESS.find(({ toVoltAmps }) => value <= toVoltAmps)?.ratio ?? 0;
}

/** Rated primary current, amps RMS: VA over mains, losses left out (they add a tenth to a third in small parts). */
export function ratedPrimaryAmps(options: { readonly voltAmps: number; readonly mainsVolts: number }): number {
  return requireNumber('voltAmps', options.voltAmps, VOLT_AMPS) / requireNumber('mainsVolts', options.mainsVolts, { min: 50, max: 500 });
}

/**
 * Upper bound of the magnetising inrush of a small transformer, peak amps in the winding of `ratedAmps`: with the core
 * saturated only winding resistance is left, half of it in the primary, so 2/regulation times the rated peak.
 * Regulation as a ratio, 0.01 to 1. Mains resistance and the core's remaining inductance make it less.
 */
export function inrushBoundAmps(options: { readonly ratedAmps: number; readonly regulation: number }): number {
  const rated = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-4, max: 1000 });
  const regulation = requireNumber('regulation', options.regulation, { min: 0.01, max: 1 });
  return (2 / regulation) * rated * Math.SQRT2;
}

/**
 * Steady RMS current of a shorted secondary, amps: open-circuit volts over the resistance seen from it; cold copper.
 * It falls as the winding heats. Ohms above zero.
 */
export function shortCircuitAmps(options: { readonly openCircuitVolts: number; readonly ohms: number }): number {
  return requireNumber('openCircuitVolts', options.openCircuitVolts, { min: 0, max: 1000 }) / requireNumber('ohms', options.ohms, { min: 1e-4, max: 1e6 });
}

/**
 * Temperature rise of a winding over its air, K, and the winding's temperature, by resistance: cold with everything
 * soaked at room temperature, hot read at once after switching off. `classId` adds the margin to that insulation class.
 */
export function temperatureRise(options: {
  readonly coldOhms: number;
  readonly coldCelsius: number;
  readonly hotOhms: number;
  readonly airCelsius: number;
  readonly classId?: string;
}): { readonly windingCelsius: number; readonly riseKelvin: number; readonly marginKelvin?: number } {
  const airCelsius = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 120 });
  const windingCelsius = temperatureByResistance(options);
  const riseKelvin = windingCelsius - airCelsius;
  if (options.classId === undefined) return { windingCelsius, riseKelvin };
  return { windingCelsius, riseKelvin, marginKelvin: insulationClass(options.classId).normalCelsius - windingCelsius };
}

/** The insulation class with this id (a, e, b, f, h). Throws `InputError` when there is none. */
export function insulationClass(id: string): InsulationClassRow {
  const found = INSULATION_CLASSES.find((row) => row.id === id);
  if (found === undefined) throw new InputError('insulationClass', id, { expected: INSULATION_CLASSES.map((row) => row.id).join(', ') });
  return found;
}

/**
 * Winding temperature at another load, °C, from one known point: the rise goes about with copper heat, RMS current
 * squared, and `ironShare` of the known rise (default 0.3, assumed) does not change.
 */
export function windingCelsiusAt(options: {
  readonly knownRiseKelvin: number;
  readonly knownRmsAmps: number;
  readonly rmsAmps: number;
  readonly airCelsius: number;
  readonly ironShare?: number;
}): number {
  const rise = requireNumber('knownRiseKelvin', options.knownRiseKelvin, { min: 0, max: 300 });
  const known = requireNumber('knownRmsAmps', options.knownRmsAmps, { min: 1e-4, max: 1000 });
  const amps = requireNumber('rmsAmps', options.rmsAmps, { min: 0, max: 1000 });
  const iron = requireNumber('ironShare', options.ironShare ?? 0.3, { min: 0, max: 1 });
  return requireNumber('airCelsius', options.airCelsius, { min: -40, max: 120 }) + rise * (iron + (1 - iron) * (amps / known) ** 2);
}

/**
 * What a transformer made for `ratedHertz` may be used for at `mainsHertz`. Made for 60 Hz only, it must not run on
 * 50 Hz: the flux is a fifth higher and the core saturates. Made for 50 Hz it runs on 60 Hz, where the same core would
 * be rated for about 1.2 times the VA; its own rating still holds.
 */
export function frequencyUse(options: { readonly ratedHertz: 50 | 60; readonly mainsHertz: 50 | 60 }): { readonly allowed: boolean; readonly fluxRatio: number } {
  const fluxRatio = options.ratedHertz / options.mainsHertz;
  return { allowed: fluxRatio <= 1, fluxRatio };
}
