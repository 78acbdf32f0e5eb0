import { InputError, requireNumber } from '../errors.ts';
import { copperRatio } from './copper.ts';
import { RELAY_COILS, RELAY_KINDS } from './relay-rows.ts';
import type { RelayCoil } from './relay-rows.ts';

export { RELAY_COILS, RELAY_KINDS } from './relay-rows.ts';
export type { RelayCoil, RelayContacts } from './relay-rows.ts';

/** Temperature that coil resistances and pull-in figures are printed for, °C. */
export const COIL_REFERENCE_CELSIUS = 23;

/** The row with this id. Throws `InputError` when there is none. */
export function relayCoil(id: string): RelayCoil {
  const found = RELAY_COILS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('coil', id, { expected: RELAY_COILS.map((row) => row.id).join(', ') });
  return found;
}

/**
 * A relay of a class for any rated volts (3 to 110 V): the catalogue row where there is one, else one of the class's
 * watts at those volts, typical. What is printed on the part in hand (`ohms`, `mustOperateRatio`) stands before the
 * class. Throws `InputError` for an unknown class and for values out of range.
 */
export function relayOfKind(options: { readonly kind: string; readonly ratedVolts: number; readonly ohms?: number; readonly mustOperateRatio?: number }): RelayCoil {
  const ratedVolts = requireNumber('ratedVolts', options.ratedVolts, { min: 3, max: 110 });
  const kin = RELAY_COILS.filter((row) => row.id.startsWith(`${options.kind}-`));
  const [first] = kin;
  if (first === undefined || !RELAY_KINDS.some(({ id }) => id === options.kind)) throw new InputError('kind', options.kind, { expected: RELAY_KINDS.map(({ id }) => id).join(', ') });
  // All coils of a class take about the same watts; the 12 V one is the one most often measured.
  const model = kin.find((row) => row.ratedVolts === 12) ?? first;
  const printed = kin.find((row) => row.ratedVolts === ratedVolts);
  const row: RelayCoil = printed ?? {
    ...model, id: `${options.kind}-as-rated`, name: `${RELAY_KINDS.find(({ id }) => id === options.kind)?.name ?? model.name}, ${ratedVolts} V`, basis: 'typical',
    ratedVolts, ohms: model.ohms * (ratedVolts / model.ratedVolts) ** 2,
  };
  return {
    ...row,
    ohms: options.ohms === undefined ? row.ohms : requireNumber('ohms', options.ohms, { min: 1, max: 1e5 }),
    mustOperateRatio: options.mustOperateRatio === undefined ? row.mustOperateRatio : requireNumber('mustOperateRatio', options.mustOperateRatio, { min: 0.1, max: 1 }),
  };
}

/** What a coil is, for reckoning: a catalogue row or a reader's own figures. */
export type CoilFigures = Pick<RelayCoil, 'ratedVolts' | 'ohms' | 'tolerance' | 'mustOperateRatio' | 'mustReleaseRatio' | 'kelvinPerWatt'>;

/** Resistance of a coil at a copper temperature, ohms: least, marked and most within its tolerance. */
export function coilOhms(options: { readonly coil: CoilFigures; readonly celsius: number }): { readonly min: number; readonly typical: number; readonly max: number } {
  const { ohms, tolerance } = options.coil;
  const typical = ohms * copperRatio({ fromCelsius: COIL_REFERENCE_CELSIUS, toCelsius: options.celsius });
  return { min: typical * (1 - tolerance), typical, max: typical * (1 + tolerance) };
}

/**
 * Steady temperature of a coil's copper, °C, and its resistance there, with `volts` across it in air of `airCelsius`.
 *
 * Heat warms the coil, which raises its resistance, which lowers the heat: solved exactly (a quadratic). The coil of
 * least resistance heats most and is taken by default (`within: 'min'`). Volts 0–10 times rated, air −40 to 120 °C. Throws
 * `InputError` outside, and where the copper would pass 1000 °C.
 */
export function coilTemperature(options: {
  readonly coil: CoilFigures;
  readonly volts: number;
  readonly airCelsius: number;
  readonly within?: 'min' | 'typical' | 'max';
}): { readonly celsius: number; readonly ohms: number; readonly watts: number } {
  const { coil, within = 'min' } = options;
  const volts = requireNumber('volts', options.volts, { min: 0, max: 10 * coil.ratedVolts });
  const air = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 120 });
  // T = air + θ·V²/R(T), R linear in T from a zero at −234.5 °C: x² − a·x − θV²k = 0 in x = T + 234.5.
  const x0 = air + 234.5;
  const slope = coilOhms({ coil, celsius: COIL_REFERENCE_CELSIUS })[within] / (COIL_REFERENCE_CELSIUS + 234.5);
  const heating = (coil.kelvinPerWatt * volts * volts) / slope;
  const x = (x0 + Math.sqrt(x0 * x0 + 4 * heating)) / 2;
  if (x - 234.5 > 1000) throw new InputError('volts', volts, { expected: 'fewer volts: the coil would burn' });
  const ohms = slope * x;
  return { celsius: x - 234.5, ohms, watts: (volts * volts) / ohms };
}

export interface PullIn {
  /** Volts that are sure to pull the coil in at its copper temperature. */
  readonly operateVolts: number;
  /** Volts at which it is sure to have let go, at that temperature. */
  readonly releaseVolts: number;
  readonly coilCelsius: number;
}

/**
 * Pull-in of a hot coil. The relay needs its amps: the guaranteed volts at 23 °C rise with the copper's resistance.
 *
 * The coil is hot from having been on at `heatingVolts` (the highest the rail holds; default rated) in air of
 * `airCelsius`, was released, and must pull in again. The guarantee at 23 °C already covers the tolerance of its
 * resistance, so only the self-heating takes the least resistance. Source: relay maker's note on coil temperature;
 * the temperature rise per watt is assumed where the row says so.
 */
export function coilPullIn(options: { readonly coil: CoilFigures; readonly airCelsius: number; readonly heatingVolts?: number }): PullIn {
  const { coil, airCelsius, heatingVolts = coil.ratedVolts } = options;
  const coilCelsius = coilTemperature({ coil, volts: heatingVolts, airCelsius }).celsius;
  const ratio = copperRatio({ fromCelsius: COIL_REFERENCE_CELSIUS, toCelsius: coilCelsius });
  return { operateVolts: coil.ratedVolts * coil.mustOperateRatio * ratio, releaseVolts: coil.ratedVolts * coil.mustReleaseRatio * ratio, coilCelsius };
}

/**
 * Inductance of a coil, henries, with the armature in and out: resistance times the row's time constant, and half of it,
 * as the one type that prints both has. Assumed for every other row.
 */
export function coilHenries(coil: Pick<RelayCoil, 'ohms' | 'operatedSeconds'>): { readonly operated: number; readonly released: number } {
  const operated = requireNumber('coil.ohms', coil.ohms, { min: 0.1, max: 1e6 }) * requireNumber('coil.operatedSeconds', coil.operatedSeconds, { min: 1e-6, max: 1 });
  return { operated, released: operated / 2 };
}

/**
 * Highest volts allowed across a coil at an air temperature: the printed ratios at 23 and 70 °C, straight between, on
 * beyond 70 °C to nothing at all. −40 to 125 °C (23 °C figure below 23 °C).
 */
export function coilMaxVolts(options: { readonly coil: Pick<RelayCoil, 'ratedVolts' | 'maxRatio'>; readonly airCelsius: number }): number {
  const { ratedVolts, maxRatio } = options.coil;
  const air = Math.max(COIL_REFERENCE_CELSIUS, requireNumber('airCelsius', options.airCelsius, { min: -40, max: 125 }));
  return ratedVolts * Math.max(0, maxRatio.at23 + ((maxRatio.at70 - maxRatio.at23) * (air - 23)) / (70 - 23));
}

/**
 * Resistor in series that gives coils their rated volts from a higher rail: ohms and the heat in it. `coils` equal
 * coils in parallel behind it (default 1). Note that with one coil off, the others get more. Rail above coil volts.
 */
export function coilDropper(options: { readonly coil: Pick<RelayCoil, 'ratedVolts' | 'ohms'>; readonly railVolts: number; readonly coils?: number }): { readonly ohms: number; readonly watts: number; readonly amps: number } {
  const { ratedVolts, ohms } = options.coil;
  const rail = requireNumber('railVolts', options.railVolts, { min: ratedVolts, max: 1000 });
  const amps = (requireNumber('coils', options.coils ?? 1, { min: 1, max: 100 }) * ratedVolts) / ohms;
  return { ohms: (rail - ratedVolts) / amps, watts: (rail - ratedVolts) * amps, amps };
}
