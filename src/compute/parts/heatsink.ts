import { InputError, requireNumber } from '../errors.ts';
import type { CatalogueRow } from './row.ts';

export interface InsulatorRow extends CatalogueRow {
  readonly kelvinPerWatt: number;
  /** Whether the tab is electrically apart from what it is screwed to. */
  readonly insulates: boolean;
}

/** What sits between a TO-220 tab and the metal. Typical: torque, flatness and age decide. */
export const INSULATORS: readonly InsulatorRow[] = [
  { id: 'bare-compound', name: 'Bare, with compound', kelvinPerWatt: 0.5, insulates: false, basis: 'typical', source: { id: 'typical-heatsinking' } },
  { id: 'bare-dry', name: 'Bare, dry', kelvinPerWatt: 1, insulates: false, basis: 'typical', source: { id: 'typical-heatsinking' } },
  { id: 'mica-compound', name: 'Mica with compound, bushed screw', kelvinPerWatt: 1.2, insulates: true, basis: 'typical', source: { id: 'typical-heatsinking' } },
  { id: 'pad', name: 'Silicone pad, bushed screw', kelvinPerWatt: 1.5, insulates: true, basis: 'typical', source: { id: 'typical-heatsinking' } },
];

/** Air inside a chassis to design for where it has not been measured, °C; 50 to 70 is seen near output valves. Typical. */
export const CHASSIS_AIR_CELSIUS = 55;

/** Junction limits for silicon regulators, °C: the operating limit, and what to aim at. */
export const JUNCTION_LIMIT_CELSIUS = 125;
export const JUNCTION_AIM_CELSIUS = 110;

/** The row with this id. Throws `InputError` when there is none. */
export function insulator(id: string): InsulatorRow {
  const found = INSULATORS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('insulator', id, { expected: INSULATORS.map((row) => row.id).join(', ') });
  return found;
}

/** The way heat takes out of a junction, K/W each: through a sink, or straight to air. */
export type HeatPath =
  | { readonly junctionToCase: number; readonly insulator: number; readonly sinkToAir: number }
  | { readonly junctionToAir: number };

const total = (path: HeatPath): number => {
  const parts = 'junctionToAir' in path ? [path.junctionToAir] : [path.junctionToCase, path.insulator, path.sinkToAir];
  return parts.reduce((sum, each) => sum + requireNumber('path', each, { min: 0, max: 1000 }), 0);
};

/** Junction temperature in the steady state, °C: air plus watts times the thermal resistances in series. 0–1000 W, −40 to 150 °C air. */
export function junctionCelsius(options: { readonly watts: number; readonly airCelsius: number; readonly path: HeatPath }): number {
  const watts = requireNumber('watts', options.watts, { min: 0, max: 1000 });
  return requireNumber('airCelsius', options.airCelsius, { min: -40, max: 150 }) + watts * total(options.path);
}

/** Most heat that keeps a junction at or below `limitCelsius`, watts; zero when the air alone is hotter. */
export function wattsAllowed(options: { readonly airCelsius: number; readonly limitCelsius?: number; readonly path: HeatPath }): number {
  const air = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 150 });
  const limit = requireNumber('limitCelsius', options.limitCelsius ?? JUNCTION_LIMIT_CELSIUS, { min: 0, max: 200 });
  const kelvinPerWatt = total(options.path);
  if (kelvinPerWatt === 0) throw new InputError('path', 0, { expected: 'a thermal resistance above zero' });
  return Math.max(0, limit - air) / kelvinPerWatt;
}

/**
 * Thermal resistance that the heatsink must not exceed, K/W: (limit − air)/P − junction to case − insulator. Zero or
 * less means that no heatsink is enough. `watts` above zero. Throws `InputError` otherwise.
 */
export function heatsinkNeeded(options: {
  readonly watts: number;
  readonly airCelsius: number;
  readonly limitCelsius?: number;
  readonly junctionToCase: number;
  readonly insulator: number;
}): number {
  const watts = requireNumber('watts', options.watts, { min: 1e-6, max: 1000 });
  const air = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 150 });
  const limit = requireNumber('limitCelsius', options.limitCelsius ?? JUNCTION_AIM_CELSIUS, { min: 0, max: 200 });
  const inner = requireNumber('junctionToCase', options.junctionToCase, { min: 0, max: 100 }) + requireNumber('insulator', options.insulator, { min: 0, max: 100 });
  return (limit - air) / watts - inner;
}
