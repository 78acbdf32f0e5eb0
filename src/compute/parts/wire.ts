import { InputError, requireNumber } from '../errors.ts';
import { COPPER_OHM_METRES, copperRatio } from './copper.ts';
import { WIRES } from './wire-rows.ts';
import type { WireRow } from './wire-rows.ts';

export { WIRES } from './wire-rows.ts';
export type { WireRow } from './wire-rows.ts';

/** The row with this id. Throws `InputError` when there is none. */
export function wire(id: string): WireRow {
  const found = WIRES.find((row) => row.id === id);
  if (found === undefined) throw new InputError('wire', id, { expected: WIRES.map((row) => row.id).join(', ') });
  return found;
}

/** Diameter of an AWG conductor, metres: 0.127 mm · 92^((36 − n)/39) (ASTM B258). Gauge 0 to 40. */
export function gaugeMetres(gauge: number): number {
  return 0.127e-3 * 92 ** ((36 - requireNumber('gauge', gauge, { min: 0, max: 40 })) / 39);
}

/** Resistance of a solid copper conductor, ohms, from its section: ρl/A at 20 °C brought to `celsius` (default 20). */
export function copperOhms(options: { readonly squareMetres: number; readonly metres: number; readonly celsius?: number }): number {
  const area = requireNumber('squareMetres', options.squareMetres, { min: 1e-9, max: 1e-3 });
  const metres = requireNumber('metres', options.metres, { min: 0, max: 1000 });
  return ((COPPER_OHM_METRES * metres) / area) * copperRatio({ fromCelsius: 20, toCelsius: options.celsius ?? 20 });
}

/** Resistance of a length of a table's wire, ohms, at `celsius` (default 20). Metres 0–1000, one way. */
export function wireOhms(options: { readonly row: WireRow; readonly metres: number; readonly celsius?: number }): number {
  const metres = requireNumber('metres', options.metres, { min: 0, max: 1000 });
  return options.row.ohmsPerMetre * metres * copperRatio({ fromCelsius: 20, toCelsius: options.celsius ?? 20 });
}

/** Drop over a run there and back, volts; `metres` is the distance one way. */
export function loopDropVolts(options: { readonly row: WireRow; readonly metres: number; readonly amps: number; readonly celsius?: number }): number {
  const amps = requireNumber('amps', options.amps, { min: 0, max: 1000 });
  return 2 * amps * wireOhms(options);
}

/** Share of its open-air figure that a wire keeps in a hot bundle. Practice. */
export const BUNDLE_SHARE = 0.5;

/** What a wire may carry, amps RMS: its open-air figure, halved in a hot bundle. */
export function wireCapacityAmps(options: { readonly row: WireRow; readonly hotBundle: boolean }): number {
  return options.row.openAirAmps * (options.hotBundle ? BUNDLE_SHARE : 1);
}

/** The thinnest of the gauges (or of the metric wires) that carries `amps` and drops at most `dropVolts` there and back; `undefined` when none does. */
export function wireFor(options: {
  readonly system: 'awg' | 'metric';
  readonly amps: number;
  /** Current that the drop is reckoned with, where heat and drop come of different ones; `amps` when left out. */
  readonly dropAmps?: number;
  readonly metres: number;
  readonly dropVolts: number;
  readonly hotBundle: boolean;
  readonly celsius?: number;
}): WireRow | undefined {
  const { system, amps, dropAmps = amps, metres, hotBundle, celsius = 60 } = options;
  const allowed = requireNumber('dropVolts', options.dropVolts, { min: 0, max: 1000 });
  return WIRES.filter((row) => row.id.startsWith(system))
    .toSorted((a, b) => a.squareMetres - b.squareMetres)
    .find((row) => wireCapacityAmps({ row, hotBundle }) >= amps && loopDropVolts({ row, metres, amps: dropAmps, celsius }) <= allowed);
}
