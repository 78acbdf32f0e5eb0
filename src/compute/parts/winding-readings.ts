import { InputError, requireNumber } from '../errors.ts';

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
  // Each result is monotonic in each error by itself, so its extremes lie at corners.
  const signs = [-1, 1];
  const corners = signs.flatMap((a) => signs.flatMap((b) => signs.flatMap((c) => signs.flatMap((d) => signs.map((e) => solve(a, b, c, d, e))))));
  const bounded = (pick: (each: { open: number; ohms: number }) => number): Bounded => ({
    value: pick(best),
    least: Math.min(...corners.map(pick)),
    most: Math.max(...corners.map(pick)),
  });
  const ohms = bounded((each) => each.ohms);
  return { openCircuitVolts: bounded((each) => each.open), ohms: { ...ohms, least: Math.max(0, ohms.least) }, telling: ohms.least > 0.5 * ohms.value && ohms.most < 1.5 * ohms.value };
}
