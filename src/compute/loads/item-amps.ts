import { InputError, requireNumber } from '../errors.ts';
import type { Basis, Source } from '../findings.ts';
import { COLD_INRUSH, heaterModel } from '../parts/heater.ts';
import { coilTemperature } from '../parts/relay.ts';
import type { CoilFigures } from '../parts/relay.ts';
import type { AmpsSpread, FixedAmpsLoad, FixedWattsLoad, HeaterLoad, LedLoad, LoadItem, LoadNature, LoadRail, RelayLoad } from './load-types.ts';

/** What one piece of an item takes. */
export interface PieceAmps extends AmpsSpread {
  /** At the moment the rail comes up, at the highest rail. */
  readonly coldAmps: number;
  readonly nature: LoadNature;
  /** The sum, in symbols, for the working. */
  readonly formula: string;
  readonly numbers: readonly { readonly symbol: string; readonly value: number; readonly unit: 'V' | 'Ω' | 'W' | 'A' | '' }[];
  readonly basis: Basis;
  readonly source: Source;
}

const VOLTS = { min: 0.5, max: 200 };

// Makers size coils for about the same rise at rated volts, whatever the watts.
const ASSUMED_RISE_KELVIN = 25;

/** A relay item's coil with the defaults filled in. Throws `InputError` when neither ohms nor watts are given. */
export function coilOf(item: RelayLoad): CoilFigures & { readonly maxRatio: { readonly at23: number; readonly at70: number } } {
  const ratedVolts = requireNumber('relay.volts', item.volts, VOLTS);
  if (item.ohms === undefined && item.watts === undefined) throw new InputError('relay.ohms', undefined, { expected: 'the coil’s ohms, or its watts' });
  const ohms = item.ohms ?? ratedVolts ** 2 / requireNumber('relay.watts', item.watts, { min: 1e-3, max: 20 });
  return {
    ratedVolts,
    ohms: requireNumber('relay.ohms', ohms, { min: 1, max: 1e5 }),
    tolerance: requireNumber('relay.tolerance', item.tolerance ?? 0.1, { min: 0, max: 0.5 }),
    mustOperateRatio: requireNumber('relay.mustOperateRatio', item.mustOperateRatio ?? 0.75, { min: 0.1, max: 1 }),
    mustReleaseRatio: 0.1,
    kelvinPerWatt:
      item.kelvinPerWatt === undefined ? (ASSUMED_RISE_KELVIN * ohms) / ratedVolts ** 2 : requireNumber('relay.kelvinPerWatt', item.kelvinPerWatt, { min: 0, max: 1000 }),
    maxRatio: item.maxRatio ?? { at23: 1.3, at70: 1.1 },
  };
}

function relayAmps(item: RelayLoad, rail: LoadRail, airCelsius: number): PieceAmps {
  const coil = coilOf(item);
  const dropper = requireNumber('relay.dropperOhms', item.dropperOhms ?? 0, { min: 0, max: 1e5 });
  const driver = requireNumber('relay.driverVolts', item.driverVolts ?? 0, { min: 0, max: rail.minVolts });
  // Most current: a new, cold coil of least resistance. Least: a hot one of most resistance.
  const hot = coilTemperature({ coil, volts: Math.min(rail.minVolts, coil.ratedVolts), airCelsius, within: 'max' });
  const max = (rail.maxVolts - driver) / (coil.ohms * (1 - coil.tolerance) + dropper);
  return {
    min: (rail.minVolts - driver) / (hot.ohms + dropper),
    typical: (rail.volts - driver) / (coil.ohms + dropper),
    max,
    coldAmps: max,
    nature: 'resistive',
    formula: `I = ${driver > 0 ? '(Vrail − Vdrv)' : 'Vrail'} / ${dropper > 0 ? '(Rcoil + Rs)' : 'Rcoil'}`,
    numbers: [
      { symbol: 'Vrail', value: rail.volts, unit: 'V' },
      { symbol: 'Rcoil', value: coil.ohms, unit: 'Ω' },
      ...(dropper > 0 ? [{ symbol: 'Rs', value: dropper, unit: 'Ω' } as const] : []),
      ...(driver > 0 ? [{ symbol: 'Vdrv', value: driver, unit: 'V' } as const] : []),
    ],
    basis: 'rated',
    source: { id: 'note-relay-temperature' },
  };
}

// Drop of an LED either way of typical; what a resistor sets its current by is the rest of the rail.
const LED_SPREAD_VOLTS = 0.3;

function ledAmps(item: LedLoad, rail: LoadRail): PieceAmps {
  const forward = requireNumber('led.forwardVolts', item.forwardVolts ?? (item.kind === 'indicator' ? 2 : 1.2), { min: 0.5, max: 100 });
  if (forward >= rail.volts) throw new InputError('led.forwardVolts', forward, { expected: `less than the rail’s ${rail.volts} V` });
  if (item.seriesOhms === undefined && item.amps === undefined) throw new InputError('led.amps', undefined, { expected: 'the current wanted, or the series resistor' });
  const ohms = item.seriesOhms ?? (rail.volts - forward) / requireNumber('led.amps', item.amps, { min: 1e-5, max: 1 });
  requireNumber('led.seriesOhms', ohms, { min: 0.1, max: 1e7 });
  const max = (rail.maxVolts - forward + LED_SPREAD_VOLTS) / ohms;
  return {
    min: Math.max(0, rail.minVolts - forward - LED_SPREAD_VOLTS) / ohms,
    typical: (rail.volts - forward) / ohms,
    max,
    coldAmps: max,
    nature: 'behind a diode drop',
    formula: 'I = (Vrail − Vf) / R',
    numbers: [{ symbol: 'Vrail', value: rail.volts, unit: 'V' }, { symbol: 'Vf', value: forward, unit: 'V' }, { symbol: 'R', value: ohms, unit: 'Ω' }],
    basis: 'typical',
    source: { id: 'typical-leds' },
  };
}

// Heater current at rated volts, either way: assumed from the ratings of a few types.
const HEATER_SPREAD = 0.05;

function heaterAmps(item: HeaterLoad, rail: LoadRail): PieceAmps {
  const inSeries = requireNumber('heater.inSeries', item.inSeries ?? 1, { min: 1, max: 20 });
  const model = heaterModel({ volts: item.volts, amps: item.amps, coldRatio: item.coldRatio ?? COLD_INRUSH.typical });
  const rated = model.volts * inSeries;
  // At balance V²/R ∝ T⁴ and R ∝ Tᵉ, so the current follows the volts to the power (4 − e)/(4 + e), about a half.
  const power = (4 - model.exponent) / (4 + model.exponent);
  const at = (volts: number): number => model.amps * (volts / rated) ** power;
  return {
    min: at(rail.minVolts) * (1 - HEATER_SPREAD),
    typical: at(rail.volts),
    max: at(rail.maxVolts) * (1 + HEATER_SPREAD),
    coldAmps: (model.amps * (1 + HEATER_SPREAD) * (item.coldRatio ?? COLD_INRUSH.typical) * rail.maxVolts) / rated,
    nature: 'heater',
    formula: 'I = Irated · (Vrail / Vrated)^p',
    numbers: [
      { symbol: 'Irated', value: model.amps, unit: 'A' }, { symbol: 'Vrail', value: rail.volts, unit: 'V' },
      { symbol: 'Vrated', value: rated, unit: 'V' }, { symbol: 'p', value: power, unit: '' },
    ],
    basis: 'typical',
    source: { id: 'heater-cold-current' },
  };
}

function fixedAmps(item: FixedAmpsLoad): PieceAmps {
  const amps = requireNumber('amps', item.amps, { min: 0, max: 100 });
  const tolerance = requireNumber('tolerance', item.tolerance ?? (item.kind === 'logic' ? 0.2 : 0), { min: 0, max: 1 });
  const max = amps * (1 + tolerance);
  return {
    min: amps * (1 - tolerance), typical: amps, max, coldAmps: max, nature: 'constant current', formula: 'I = Ieach', numbers: [{ symbol: 'Ieach', value: amps, unit: 'A' }],
    basis: 'assumed', source: { id: 'arithmetic' },
  };
}

function fixedWatts(item: FixedWattsLoad, rail: LoadRail): PieceAmps {
  const watts = requireNumber('watts', item.watts, { min: 0, max: 1000 });
  const max = watts / rail.minVolts;
  return {
    min: watts / rail.maxVolts, typical: watts / rail.volts, max, coldAmps: max, nature: 'constant power', formula: 'I = P / Vrail',
    numbers: [{ symbol: 'P', value: watts, unit: 'W' }, { symbol: 'Vrail', value: rail.volts, unit: 'V' }], basis: 'assumed', source: { id: 'arithmetic' },
  };
}

/** What one piece of an item takes on a rail: least, typical, most, and cold. Throws `InputError` for what it cannot use. */
export function pieceAmps(item: LoadItem, rail: LoadRail, airCelsius: number): PieceAmps {
  switch (item.kind) {
    case 'relay':
      return relayAmps(item, rail, airCelsius);
    case 'indicator':
    case 'optocoupler':
      return ledAmps(item, rail);
    case 'heater':
      return heaterAmps(item, rail);
    case 'fixed-amps':
    case 'logic':
      return fixedAmps(item);
    case 'fixed-watts':
      return fixedWatts(item, rail);
    default:
      throw new InputError('kind', (item as { kind: unknown }).kind, { expected: 'relay, indicator, optocoupler, heater, fixed-amps, logic or fixed-watts' });
  }
}
