import { InputError, requireNumber } from '../errors.ts';
import { windingFromResistance } from './winding.ts';

/** One AC reading of a winding under a steady resistive load (or none), true RMS. */
export interface WindingReading {
  readonly volts: number;
  readonly amps: number;
  /** Mains at that moment; nominal when it was not read. */
  readonly mainsVolts?: number;
}

/** Limits of error of the meter, as its sheet states them. */
export interface MeterError {
  /** Ratio of reading, the same in both readings of one meter on one range. */
  readonly voltsGain: number;
  /** Counts, in volts, free to differ between readings. */
  readonly voltsCounts: number;
  /** Ratio of the current readings. */
  readonly ampsGain: number;
  /** Ratio by which the mains may have moved unnoticed between the readings. */
  readonly mainsDrift: number;
}

/** A hand-held true-RMS meter on a 60 V range, mains watched with a second one: typical, to be replaced by your own. */
export const HAND_HELD_METER: MeterError = { voltsGain: 0.01, voltsCounts: 0.03, ampsGain: 0.015, mainsDrift: 0.002 };

/** A value with the least and most it can be within the meter's limits of error. */
export interface Bounded {
  readonly value: number;
  readonly least: number;
  readonly most: number;
}

export interface WindingEstimate {
  /** Open-circuit volts RMS at nominal mains. */
  readonly openCircuitVolts: Bounded;
  /** Resistance seen looking into the winding, at the temperature it had. */
  readonly ohms: Bounded;
  /** False when the step between the readings drowns in the meter's error: load it more. */
  readonly telling: boolean;
}

/**
 * Winding from two readings of volts and amps at known mains: source resistance from the step, open-circuit volts by
 * extension to no current, both brought to nominal mains.
 *
 * Assumes a winding that acts as a source behind a resistance (true within a few percent below rated current) and
 * that did not warm between readings. The limits are exact: every combination of extreme errors is tried.
 * It tells nothing of how much more current the winding may give: that needs a rating, the transformer's VA, or its
 * temperature rise, and is `not assessed`. Throws `InputError` unless the currents differ and the volts fall with load.
 */
export function windingFromReadings(options: {
  readonly lighter: WindingReading;
  readonly heavier: WindingReading;
  readonly nominalMainsVolts: number;
  readonly meter?: MeterError;
}): WindingEstimate {
  const { lighter, heavier, meter = HAND_HELD_METER } = options;
  const nominal = requireNumber('nominalMainsVolts', options.nominalMainsVolts, { min: 1, max: 1000 });
  for (const [name, reading] of [['lighter', lighter], ['heavier', heavier]] as const) {
    requireNumber(`${name}.volts`, reading.volts, { min: 0.1, max: 1000 });
    requireNumber(`${name}.amps`, reading.amps, { min: 0, max: 1000 });
    requireNumber(`${name}.mainsVolts`, reading.mainsVolts ?? nominal, { min: 1, max: 1000 });
  }
  for (const name of ['voltsGain', 'voltsCounts', 'ampsGain', 'mainsDrift'] as const) requireNumber(`meter.${name}`, meter[name], { min: 0, max: 0.5 });
  if (heavier.amps <= lighter.amps) throw new InputError('heavier.amps', heavier.amps, { expected: 'more current than the lighter reading' });

  const solve = (gain: number, lightCount: number, heavyCount: number, amps: number, drift: number): { open: number; ohms: number } => {
    const scaled = (reading: WindingReading, count: number, mainsFactor: number): { v: number; i: number } => {
      const ratio = nominal / ((reading.mainsVolts ?? nominal) * mainsFactor);
      return { v: (reading.volts * (1 + gain * meter.voltsGain) + count * meter.voltsCounts) * ratio, i: reading.amps * (1 + amps * meter.ampsGain) * ratio };
    };
    const light = scaled(lighter, lightCount, 1);
    const heavy = scaled(heavier, heavyCount, 1 + drift * meter.mainsDrift);
    const ohms = (light.v - heavy.v) / (heavy.i - light.i);
    return { open: light.v + light.i * ohms, ohms };
  };
  const best = solve(0, 0, 0, 0, 0);
  if (!(best.ohms > 0) || !Number.isFinite(best.ohms)) {
    throw new InputError('heavier.volts', heavier.volts, { expected: 'fewer volts, at the same mains, than the lighter reading' });
  }
  return estimate(best, everySign(5).map(([a = 0, b = 0, c = 0, d = 0, e = 0]) => solve(a, b, c, d, e)));
}

/** Every combination of so many signs. */
const everySign = (count: number): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** count }, (_, bits) => Array.from({ length: count }, (_unused, at) => ((bits >> at) & 1 ? 1 : -1)));

/** Best values with their extremes. Each result is monotonic in each error by itself, so its extremes lie at corners. */
function estimate(best: { open: number; ohms: number }, corners: readonly { open: number; ohms: number }[]): WindingEstimate {
  const bounded = (pick: (each: { open: number; ohms: number }) => number): Bounded => ({
    value: pick(best),
    least: Math.min(...corners.map(pick)),
    most: Math.max(...corners.map(pick)),
  });
  const ohms = bounded((each) => each.ohms);
  return {
    openCircuitVolts: bounded((each) => each.open),
    ohms: { ...ohms, least: Math.max(0, ohms.least) },
    telling: ohms.least > 0.5 * ohms.value && ohms.most < 1.5 * ohms.value,
  };
}

/** Limits of error of an ohmmeter: ratio of reading, and counts with what is left of the leads, in ohms. */
export interface OhmmeterError {
  readonly ohmsGain: number;
  readonly ohmsCounts: number;
}

/** A hand-held meter on its lowest range with the leads subtracted: typical. A four-wire meter does a thousand times better. */
export const HAND_HELD_OHMMETER: OhmmeterError = { ohmsGain: 0.01, ohmsCounts: 0.2 };

// Where nobody measured the primary: total over secondary resistance of transformers of usual balance. Assumed.
const ASSUMED_TOTAL = { least: 1.6, value: 2, most: 2.6 } as const;

/**
 * Winding from measured resistances and one AC reading at a known current (0 for open circuit) and known mains, with
 * the limits of both meters. Without `primary` the reflected part is assumed (1.6 to 2.6 times the secondary in all).
 * Not telling for a heater winding on a hand-held ohmmeter, which is the point. Spare current stays `not assessed`.
 * Measure only with the plug out and every reservoir proved empty. Throws `InputError` for values out of range.
 */
export function windingFromOhmmeter(options: {
  readonly secondaryOhms: number;
  readonly primaryOhms?: number;
  readonly reading: WindingReading;
  readonly nominalMainsVolts: number;
  readonly coldCelsius?: number;
  readonly hotCelsius?: number;
  readonly meter?: MeterError;
  readonly ohmmeter?: OhmmeterError;
}): WindingEstimate & { readonly restsOn: 'measured' | 'assumed' } {
  const { secondaryOhms, primaryOhms, reading, meter = HAND_HELD_METER, ohmmeter = HAND_HELD_OHMMETER, coldCelsius = 20, hotCelsius = coldCelsius } = options;
  const nominal = requireNumber('nominalMainsVolts', options.nominalMainsVolts, { min: 1, max: 1000 });
  const toNominal = nominal / requireNumber('reading.mainsVolts', reading.mainsVolts ?? nominal, { min: 1, max: 1000 });
  for (const name of ['voltsGain', 'voltsCounts', 'ampsGain', 'mainsDrift'] as const) requireNumber(`meter.${name}`, meter[name], { min: 0, max: 0.5 });
  for (const name of ['ohmsGain', 'ohmsCounts'] as const) requireNumber(`ohmmeter.${name}`, ohmmeter[name], { min: 0, max: 10 });

  const solve = ([gain = 0, count = 0, amps = 0, ohmsGain = 0, secondCount = 0, firstCount = 0, balance = 0]: readonly number[]): { open: number; ohms: number } => {
    const resistance = (ohms: number, sign: number): number => Math.max(0, ohms * (1 + ohmsGain * ohmmeter.ohmsGain) + sign * ohmmeter.ohmsCounts);
    const found = windingFromResistance({
      secondaryOhms: resistance(secondaryOhms, secondCount),
      ...(primaryOhms === undefined ? {} : { primary: { ohms: resistance(primaryOhms, firstCount), volts: nominal } }),
      reading: { volts: (reading.volts * (1 + gain * meter.voltsGain) + count * meter.voltsCounts) * toNominal, amps: reading.amps * (1 + amps * meter.ampsGain) * toNominal },
      coldCelsius,
      hotCelsius,
      totalOverSecondary: balance < 0 ? ASSUMED_TOTAL.least : balance > 0 ? ASSUMED_TOTAL.most : ASSUMED_TOTAL.value,
    });
    return { open: found.openCircuitVolts, ohms: found.ohms };
  };
  return { ...estimate(solve([]), everySign(7).map(solve)), restsOn: primaryOhms === undefined ? 'assumed' : 'measured' };
}
