import { InputError, requireNumber } from '../errors.ts';
import { copperRatio } from './copper.ts';

/** A winding as the solver takes it: what it gives unloaded, and the resistance seen looking into it. RMS. */
export interface WindingModel {
  readonly openCircuitVolts: number;
  /** Secondary resistance plus the primary's, reflected. */
  readonly ohms: number;
}

const VOLTS = { min: 0.1, max: 1000 };

/**
 * Winding from what is printed on it: rated volts at rated amps, and regulation as a ratio (0.2 for 20 %).
 *
 * Regulation is (no-load − full-load)/full-load unless `regulationOver` is `no-load`, as some makers print it.
 * The resistance holds for a winding at its rated temperature; nominal mains. Throws `InputError` outside
 * 0.1–1000 V, 1 mA–1000 A, regulation 0–1 (below 1 over no-load). Source: makers' definition of regulation.
 */
export function windingFromRating(options: {
  readonly ratedVolts: number;
  readonly ratedAmps: number;
  readonly regulation: number;
  readonly regulationOver?: 'full-load' | 'no-load';
}): WindingModel {
  const { regulationOver = 'full-load' } = options;
  const ratedVolts = requireNumber('ratedVolts', options.ratedVolts, VOLTS);
  const ratedAmps = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-3, max: 1000 });
  const regulation = requireNumber('regulation', options.regulation, { min: 0, max: regulationOver === 'no-load' ? 0.9 : 1 });
  const openCircuitVolts = regulationOver === 'no-load' ? ratedVolts / (1 - regulation) : ratedVolts * (1 + regulation);
  return { openCircuitVolts, ohms: (openCircuitVolts - ratedVolts) / ratedAmps };
}

/**
 * Winding from direct resistances: the secondary's, and the primary's reflected by the square of the turns ratio.
 *
 * `reading` is one AC reading of the winding at a known current (0 for open circuit); the open-circuit voltage is taken
 * from it with the resistance found. Without `primary` the primary is assumed to lose as much as the secondary (a
 * usual design balance), and the result says so. Resistances cold at `coldCelsius` (default 20) are brought to
 * `hotCelsius` (default equal). Subtract the meter leads first: a bench meter cannot read 50 mΩ.
 * Throws `InputError` for volts, amps or ohms that are negative or absurd.
 */
export function windingFromResistance(options: {
  readonly secondaryOhms: number;
  readonly primary?: { readonly ohms: number; readonly volts: number };
  readonly reading: { readonly volts: number; readonly amps: number };
  readonly coldCelsius?: number;
  readonly hotCelsius?: number;
  /** Total over secondary resistance where the primary was not measured; 2 when left out. */
  readonly totalOverSecondary?: number;
}): WindingModel & { readonly restsOn: 'measured' | 'assumed' } {
  const { primary, coldCelsius = 20, hotCelsius = coldCelsius } = options;
  const secondaryOhms = requireNumber('secondaryOhms', options.secondaryOhms, { min: 0, max: 1e5 });
  const volts = requireNumber('reading.volts', options.reading.volts, VOLTS);
  const amps = requireNumber('reading.amps', options.reading.amps, { min: 0, max: 1000 });
  const hot = copperRatio({ fromCelsius: coldCelsius, toCelsius: hotCelsius });
  if (primary === undefined) {
    const ohms = requireNumber('totalOverSecondary', options.totalOverSecondary ?? 2, { min: 1, max: 5 }) * secondaryOhms * hot;
    return { openCircuitVolts: volts + amps * ohms, ohms, restsOn: 'assumed' };
  }
  const primaryOhms = requireNumber('primary.ohms', primary.ohms, { min: 0, max: 1e6 });
  const primaryVolts = requireNumber('primary.volts', primary.volts, { min: 1, max: 1000 });
  // The turns ratio is that of open-circuit volts to primary volts, and the reading may be a loaded one: two rounds
  // of substitution leave an error far below the meter's.
  let openCircuitVolts = volts;
  let ohms = 0;
  for (let round = 0; round < 8; round += 1) {
    ohms = (secondaryOhms + primaryOhms * (openCircuitVolts / primaryVolts) ** 2) * hot;
    openCircuitVolts = volts + amps * ohms;
    if (openCircuitVolts > 10 * VOLTS.max) throw new InputError('reading.amps', amps, { expected: 'a current that the winding of these resistances can give' });
  }
  return { openCircuitVolts, ohms, restsOn: 'measured' };
}

/** The same winding at other mains: its open-circuit volts follow in proportion. Throws `InputError` outside 1–1000 V. */
export function windingAtMains(options: {
  readonly winding: WindingModel;
  /** Mains the winding's volts are stated for. */
  readonly nominalVolts: number;
  readonly mainsVolts: number;
}): WindingModel {
  const nominal = requireNumber('nominalVolts', options.nominalVolts, { min: 1, max: 1000 });
  const mains = requireNumber('mainsVolts', options.mainsVolts, { min: 1, max: 1000 });
  return { openCircuitVolts: (options.winding.openCircuitVolts * mains) / nominal, ohms: options.winding.ohms };
}

/** Two equal secondaries joined: in series twice the volts and ohms, in parallel (in phase only) half the ohms. */
export function joinSecondaries(options: { readonly winding: WindingModel; readonly as: 'series' | 'parallel' }): WindingModel {
  const { openCircuitVolts, ohms } = options.winding;
  return options.as === 'series' ? { openCircuitVolts: 2 * openCircuitVolts, ohms: 2 * ohms } : { openCircuitVolts, ohms: ohms / 2 };
}

/** Regulation over full load of a winding at a current, as a ratio. Throws `InputError` when the current would take all its volts. */
export function windingRegulation(options: { readonly winding: WindingModel; readonly amps: number }): number {
  const { openCircuitVolts, ohms } = options.winding;
  const amps = requireNumber('amps', options.amps, { min: 0, max: (0.999 * openCircuitVolts) / Math.max(ohms, 1e-12) });
  return (amps * ohms) / (openCircuitVolts - amps * ohms);
}
