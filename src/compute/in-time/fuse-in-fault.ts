import { requireNumber } from '../errors.ts';
import { copperRatio } from '../parts/copper.ts';
import { fuseColdOhms, fuseTimes } from '../parts/fuse.ts';
import type { FuseStandard } from '../parts/fuse.ts';
import { insulationClass } from '../parts/transformer.ts';
import { windingKelvinPerSecond } from './winding-heating.ts';
import type { WindingHeat } from './winding-heating.ts';

/** A dead short across a secondary, followed until the fuse must have opened or the winding is past saving. */
export interface FuseInFault {
  /** RMS in the winding and in the fuse at the first moment, and at the end of what was followed. */
  readonly windingAmps: { readonly first: number; readonly last: number };
  readonly fuseAmps: { readonly first: number; readonly last: number };
  /** Its current over its rating at the first moment. */
  readonly multiple: number;
  /** No fuse of the standard opens before; left out when the standard promises nothing or it may hold. */
  readonly earliestSeconds?: number;
  /** Every fuse of the standard has opened; left out when it need never open within the time. */
  readonly latestSeconds?: number;
  /** Winding temperature when the last fuse has opened, or at the end; and when it passes each limit of its class. */
  readonly windingCelsius: number;
  readonly normalLimitSeconds?: number;
  readonly overloadLimitSeconds?: number;
  /** Whether the slowest fuse opens before the winding passes the limit that its class allows in a fault. */
  readonly protects: boolean;
  readonly trace: { readonly seconds: readonly number[]; readonly windingAmps: readonly number[]; readonly windingCelsius: readonly number[] };
}

const LONGEST_SECONDS = 7200;
const FIRST_STEP = 1e-4;
const GROWTH = 1.03;
/** Nobody has an interest in a winding beyond this. */
const END_CELSIUS = 400;

/**
 * The race between fuse and winding on a dead short of the secondary. The current is open-circuit volts over resistance,
 * falls as the copper warms, and each current uses up its share of the time that the fuse's gates give it (the time-current
 * curve taken along with the changing current). With the fuse in the primary its current is the secondary's times the turns
 * ratio; in the secondary its own cold resistance lowers the fault a little.
 *
 * Assumptions: winding resistance only (no leakage inductance, so the current is the most there can be); the winding warms
 * as `windingHeat` says, an estimate; the gates bracket every fuse of the standard at 23 °C. Primary and secondary share the
 * temperature. Volts 0.5–500, ohms 1 mΩ–10 kΩ at `startCelsius`. Throws `InputError` outside.
 */
export function fuseInFault(options: {
  readonly standard: FuseStandard;
  readonly ratedAmps: number;
  readonly place: 'secondary' | 'primary';
  readonly winding: { readonly openCircuitVolts: number; readonly ohms: number };
  /** Needed with the fuse in the primary. */
  readonly mainsVolts?: number;
  readonly heat: WindingHeat;
  readonly airCelsius: number;
  /** Temperature at which the short happens, and at which `winding.ohms` holds; the air's when left out. */
  readonly startCelsius?: number;
  /** Insulation class of the winding; a when left out, the most cautious. */
  readonly classId?: string;
}): FuseInFault {
  const { standard, place, heat } = options;
  const ratedAmps = requireNumber('ratedAmps', options.ratedAmps, { min: 0.01, max: 30 });
  const volts = requireNumber('winding.openCircuitVolts', options.winding.openCircuitVolts, { min: 0.5, max: 500 });
  const coldOhms = requireNumber('winding.ohms', options.winding.ohms, { min: 1e-3, max: 1e4 });
  const airCelsius = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 120 });
  const startCelsius = requireNumber('startCelsius', options.startCelsius ?? airCelsius, { min: -40, max: 250 });
  const ratio = place === 'secondary' ? 1 : volts / requireNumber('mainsVolts', options.mainsVolts, { min: 50, max: 500 });
  const limits = insulationClass(options.classId ?? 'a');
  const fuseOhms = fuseColdOhms(ratedAmps) * (place === 'secondary' ? 1 : ratio * ratio);
  const currentAt = (celsius: number): number => volts / (coldOhms * copperRatio({ fromCelsius: startCelsius, toCelsius: celsius }) + fuseOhms);

  const trace = { seconds: [] as number[], windingAmps: [] as number[], windingCelsius: [] as number[] };
  let celsius = startCelsius;
  let seconds = 0;
  let step = FIRST_STEP;
  let usedOfMin = 0;
  let usedOfMax = 0;
  const found: Record<'earliest' | 'latest' | 'normal' | 'overload', number | undefined> = { earliest: undefined, latest: undefined, normal: undefined, overload: undefined };
  const first = currentAt(celsius);
  let amps = first;
  while (seconds < LONGEST_SECONDS && celsius < END_CELSIUS && found.latest === undefined) {
    amps = currentAt(celsius);
    trace.seconds.push(seconds);
    trace.windingAmps.push(amps);
    trace.windingCelsius.push(celsius);
    const { minSeconds, maxSeconds } = fuseTimes({ standard, ratedAmps, amps: Math.min(amps * ratio, 1e4) });
    const rate = windingKelvinPerSecond({ heat, celsius, airCelsius, rmsAmps: amps });
    const length = Math.min(step, 5 / Math.max(Math.abs(rate), 1e-6), LONGEST_SECONDS - seconds + 1e-9);
    if (minSeconds !== undefined) {
      if (found.earliest === undefined && usedOfMin + length / minSeconds >= 1) found.earliest = seconds + (1 - usedOfMin) * minSeconds;
      usedOfMin += length / minSeconds;
    }
    if (maxSeconds !== undefined) {
      if (usedOfMax + length / maxSeconds >= 1) found.latest = seconds + (1 - usedOfMax) * maxSeconds;
      usedOfMax += length / maxSeconds;
    }
    const before = celsius;
    const taken = found.latest === undefined ? length : found.latest - seconds;
    celsius += taken * rate;
    const passes = (limit: number): number | undefined => (before < limit && celsius >= limit ? seconds + (taken * (limit - before)) / (celsius - before) : undefined);
    found.normal ??= startCelsius >= limits.normalCelsius ? 0 : passes(limits.normalCelsius);
    found.overload ??= passes(limits.overloadCelsius);
    seconds += taken;
    step *= GROWTH;
  }
  return {
    windingAmps: { first, last: amps },
    fuseAmps: { first: first * ratio, last: amps * ratio },
    multiple: (first * ratio) / ratedAmps,
    ...(found.earliest === undefined ? {} : { earliestSeconds: found.earliest }),
    ...(found.latest === undefined ? {} : { latestSeconds: found.latest }),
    windingCelsius: celsius,
    ...(found.normal === undefined ? {} : { normalLimitSeconds: found.normal }),
    ...(found.overload === undefined ? {} : { overloadLimitSeconds: found.overload }),
    protects: found.latest !== undefined && found.overload === undefined,
    trace,
  };
}
