import { requireNumber } from '../errors.ts';
import { copperRatio } from './copper.ts';
import { COIL_REFERENCE_CELSIUS, coilHenries, coilMaxVolts, coilOhms, coilTemperature } from './relay.ts';
import type { RelayCoil } from './relay.ts';
import { coilRelease } from './suppression.ts';
import type { Suppression } from './suppression.ts';

/** A coil with what feeds it. */
export interface CoilOnRail {
  readonly coil: Pick<RelayCoil, 'ratedVolts' | 'ohms' | 'tolerance' | 'mustOperateRatio' | 'mustReleaseRatio' | 'kelvinPerWatt' | 'maxRatio'>;
  /** The rail's lowest and highest volts. */
  readonly lowestVolts: number;
  readonly highestVolts: number;
  /** Drop of the transistor or switch that turns it on; 0 when left out. */
  readonly dropVolts?: number;
  /** Resistor in series with the coil; 0 when left out. */
  readonly seriesOhms?: number;
  readonly airCelsius: number;
}

export interface CoilMargin {
  /** Copper of a coil that has been on at the highest rail. */
  readonly coilCelsius: number;
  readonly coilWatts: number;
  /** Hot resistance of the coil that gets fewest volts. */
  readonly hotOhms: number;
  /** Volts that are sure to pull it in again, hot. */
  readonly operateVolts: number;
  /** Fewest volts it gets, and the difference: negative when it can stay silent. */
  readonly lowestAtCoil: number;
  readonly marginVolts: number;
  /** Most volts across it, and what it bears in this air. */
  readonly highestAtCoil: number;
  readonly limitVolts: number;
}

const divided = (volts: number, ohms: number, seriesOhms: number): number => (volts * ohms) / (ohms + seriesOhms);

/** Copper temperature behind a resistor: the coil's share of the volts and its resistance settle together. */
function heated({ coil, highestVolts, airCelsius }: CoilOnRail, seriesOhms: number, within: 'min' | 'max'): { readonly celsius: number; readonly ohms: number; readonly watts: number; readonly volts: number } {
  let ohms = coilOhms({ coil, celsius: airCelsius })[within];
  let volts = divided(highestVolts, ohms, seriesOhms);
  let at = coilTemperature({ coil, volts, airCelsius, within });
  // The resistance moves by a few tenths per hundred volts' share: a dozen rounds leave nothing to see.
  for (let round = 0; round < (seriesOhms > 0 ? 12 : 0); round += 1) {
    ohms = at.ohms;
    volts = divided(highestVolts, ohms, seriesOhms);
    at = coilTemperature({ coil, volts, airCelsius, within });
  }
  return { ...at, volts };
}

/**
 * Pull-in margin of a coil on a rail: hot from having been on at the highest rail, then asked to pull in at the lowest.
 *
 * The guaranteed pull-in at 23 °C rises with the copper's resistance. Behind a resistor the coil of least resistance
 * gets least of the volts, and is still only guaranteed at the same ones; the coil of most resistance gets most. At the
 * highest rail the driver is taken to drop nothing. Steady temperatures in still air of `airCelsius` (−40 to 120 °C);
 * the rise per watt is assumed for most types. Throws `InputError` for volts outside 0.1 to 1000, a lowest above the
 * highest, a drop above the lowest, or a coil that would burn.
 * Source: relay maker's note on coil temperature.
 */
export function coilOnRail(options: CoilOnRail): CoilMargin {
  const { coil, airCelsius } = options;
  const highestVolts = requireNumber('highestVolts', options.highestVolts, { min: 0.1, max: 1000 });
  const lowestVolts = requireNumber('lowestVolts', options.lowestVolts, { min: 0.1, max: highestVolts });
  const dropVolts = requireNumber('dropVolts', options.dropVolts ?? 0, { min: 0, max: lowestVolts });
  const seriesOhms = requireNumber('seriesOhms', options.seriesOhms ?? 0, { min: 0, max: 1e6 });
  const least = heated(options, seriesOhms, 'min');
  const most = heated(options, seriesOhms, 'max');
  // Without a resistor the coil of least resistance is hottest; behind a large one it can be the other.
  const hottest = most.celsius > least.celsius ? most : least;
  const hotOhms = coilOhms({ coil, celsius: hottest.celsius }).min;
  const ratio = copperRatio({ fromCelsius: COIL_REFERENCE_CELSIUS, toCelsius: hottest.celsius });
  const operateVolts = coil.ratedVolts * coil.mustOperateRatio * ratio;
  const lowestAtCoil = divided(lowestVolts - dropVolts, hotOhms, seriesOhms);
  return {
    coilCelsius: hottest.celsius,
    coilWatts: hottest.watts,
    hotOhms,
    operateVolts,
    lowestAtCoil,
    marginVolts: lowestAtCoil - operateVolts,
    highestAtCoil: Math.max(least.volts, most.volts),
    limitVolts: coilMaxVolts({ coil, airCelsius }),
  };
}

export interface DroppedCoils {
  /** All on: what each gets hot at the lowest rail. */
  readonly together: CoilMargin;
  /** One on by itself: the others' share is its own. */
  readonly alone: CoilMargin;
  /** At a coil at the nominal rail: cold, as marked, all on. */
  readonly usualVolts: number;
  /** Most heat in the resistor: highest rail, coils of least resistance, all on. */
  readonly resistorWatts: number;
}

/**
 * Equal coils in parallel behind one resistor. To each of them that resistor looks as large as their number times
 * itself while all are on. 1 to 100 coils, resistor 1 mΩ to 1 MΩ; else as `coilOnRail`. Source: solved.
 */
export function droppedCoils(options: Omit<CoilOnRail, 'seriesOhms' | 'dropVolts'> & { readonly nominalVolts: number; readonly coils: number; readonly resistorOhms: number }): DroppedCoils {
  const { coil, highestVolts, nominalVolts } = options;
  const coils = requireNumber('coils', options.coils, { min: 1, max: 100 });
  const resistorOhms = requireNumber('resistorOhms', options.resistorOhms, { min: 1e-3, max: 1e6 });
  const leastOhms = (coil.ohms * (1 - coil.tolerance)) / coils;
  return {
    together: coilOnRail({ ...options, seriesOhms: resistorOhms * coils }),
    alone: coilOnRail({ ...options, seriesOhms: resistorOhms }),
    usualVolts: divided(nominalVolts, coil.ohms, resistorOhms * coils),
    resistorWatts: (highestVolts / (leastOhms + resistorOhms)) ** 2 * resistorOhms,
  };
}

/** What most relays do, over their rated current; the sheet promises only the must-release ratio. Typical. */
export const USUAL_RELEASE_RATIO = 0.25;

export interface ReleaseSpread {
  /** From the switch opening until it is sure to have let go: cold coil of least resistance, highest rail, must-release. */
  readonly longestSeconds: number;
  /** A coil as marked at the middle of the rail, letting go at a quarter of its rated current. */
  readonly usualSeconds: number;
  /** Most the open switch sees, the rail included. */
  readonly switchVolts: number;
  readonly joules: number;
}

/**
 * How long a coil holds on after its switch has opened, by its suppression: at worst, and as usual.
 *
 * The inductance is held constant at its operated value, though it falls as the armature leaves: indicative, and assumed
 * from the relay's size for most types. A resistor in series shortens the decay; it is left out, on the slow side.
 * Without suppression the times are 0, of an arc. Throws `InputError` for values out of range. Source: solved.
 */
export function releaseSpread(options: Pick<CoilOnRail, 'lowestVolts' | 'highestVolts'> & {
  readonly coil: Pick<RelayCoil, 'ratedVolts' | 'ohms' | 'tolerance' | 'mustReleaseRatio' | 'operatedSeconds'>;
  /** Most volts across the coil, behind a resistor. */
  readonly highestAtCoil?: number;
  readonly suppression: Suppression;
}): ReleaseSpread {
  const { coil, suppression, highestVolts } = options;
  const henries = coilHenries(coil).operated;
  const ratedAmps = coil.ratedVolts / coil.ohms;
  const release = (ohms: number, volts: number, ratio: number): ReturnType<typeof coilRelease> =>
    coilRelease({ henries, ohms, railVolts: volts, releaseRatio: Math.min(0.999, (ratio * ratedAmps * ohms) / volts), suppression });
  const leastOhms = coil.ohms * (1 - coil.tolerance);
  const across = Math.min(options.highestAtCoil ?? highestVolts, highestVolts);
  const worst = release(leastOhms, across, coil.mustReleaseRatio);
  const middle = Math.min(across, (options.lowestVolts + highestVolts) / 2);
  const usual = release(coil.ohms, middle, USUAL_RELEASE_RATIO);
  return {
    longestSeconds: worst.seconds,
    usualSeconds: usual.seconds,
    switchVolts: Math.max(worst.switchVolts, worst.switchVolts - across + highestVolts),
    joules: worst.joules,
  };
}
