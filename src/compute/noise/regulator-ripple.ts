import { requireNumber } from '../errors.ts';
import { harmonicsOf, waveOf } from './harmonics.ts';
import type { Harmonic } from './harmonics.ts';

/** Frequency from which a linear regulator's rejection falls by 20 dB for each decade. Typical of the families' curves; check the sheet. */
const CORNER_HERTZ = 1000;

/** Rejection of a linear regulator at a frequency, dB: level to its corner, then falling 20 dB a decade, never below none. Typical. */
export function rejectionDecibels(options: { readonly at120Hertz: number; readonly hertz: number; readonly cornerHertz?: number }): number {
  const flat = requireNumber('at120Hertz', options.at120Hertz, { min: 0, max: 140 });
  const corner = requireNumber('cornerHertz', options.cornerHertz ?? CORNER_HERTZ, { min: 120, max: 1e6 });
  const hertz = requireNumber('hertz', options.hertz, { min: 1, max: 1e8 });
  return Math.max(0, flat - 10 * Math.log10(1 + (hertz / corner) ** 2));
}

/** Ripple behind a regulator. An estimate. */
export interface RegulatorRipple {
  readonly rmsVolts: number;
  readonly peakToPeakVolts: number;
  readonly harmonics: readonly Harmonic[];
  /** One period at the output, volts, to plot. */
  readonly outputVolts: Float64Array;
  /** Part of the period during which the input does not suffice: the sawtooth comes through there. */
  readonly dropoutShare: number;
  readonly basis: 'typical';
}

/**
 * Ripple behind a linear regulator from one period at its input (even samples, the last repeating the first): each
 * harmonic lowered by the rejection at its frequency while the input suffices; where the valley falls below set volts
 * plus dropout the output follows the input, unlowered: the sawtooth that a scope shows on a rail in dropout.
 *
 * `rejectionAt120Hertz` in dB, a row's least for the worst case. The rejection of a part close to its dropout is worse
 * than printed, which is left out. An estimate. Throws `InputError` for values out of range.
 */
export function rippleBehindRegulator(options: {
  readonly inputVolts: ArrayLike<number>;
  readonly hertz: number;
  readonly setVolts: number;
  readonly dropoutVolts: number;
  readonly rejectionAt120Hertz: number;
  readonly cornerHertz?: number;
}): RegulatorRipple {
  const { inputVolts, hertz, rejectionAt120Hertz, cornerHertz } = options;
  const setVolts = requireNumber('setVolts', options.setVolts, { min: 0.1, max: 1000 });
  const dropoutVolts = requireNumber('dropoutVolts', options.dropoutVolts, { min: 0, max: 100 });
  const input = harmonicsOf({ values: inputVolts, hertz });
  const lowered = input.harmonics.map((each) => ({
    ...each,
    rms: each.rms * 10 ** (-rejectionDecibels({ at120Hertz: rejectionAt120Hertz, hertz: each.hertz, ...(cornerHertz === undefined ? {} : { cornerHertz }) }) / 20),
  }));
  const samples = inputVolts.length - 1;
  const regulated = waveOf({ harmonics: lowered, mean: setVolts, samples });
  let short = 0;
  const outputVolts = regulated.map((volts, k) => {
    const most = Math.max(0, (inputVolts[k] as number) - dropoutVolts);
    if (k < samples && most < volts) short += 1;
    return Math.min(volts, most);
  });
  const out = harmonicsOf({ values: outputVolts, hertz });
  let least = Infinity;
  let most = -Infinity;
  for (const volts of outputVolts) {
    least = Math.min(least, volts);
    most = Math.max(most, volts);
  }
  return { rmsVolts: out.alternatingRms, peakToPeakVolts: most - least, harmonics: out.harmonics, outputVolts, dropoutShare: short / samples, basis: 'typical' };
}
