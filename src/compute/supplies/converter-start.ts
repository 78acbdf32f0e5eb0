import { requireNumber } from '../errors.ts';
import type { StartUpLimit } from '../parts/converter.ts';
import { heaterKelvinPerSecond, heaterOhms } from '../parts/heater.ts';
import type { HeaterModel } from '../parts/heater.ts';

export interface ConverterStartOptions {
  /** Output volts it regulates to. */
  readonly setVolts: number;
  readonly limit: StartUpLimit;
  /** Cold heaters on its output; none when left out. */
  readonly heater?: HeaterModel;
  /** Everything else on its output at switch-on, as a resistance; nothing when left out. */
  readonly loadOhms?: number;
  /** Given up after this time; 60 s when left out. */
  readonly seconds?: number;
}

export interface ConverterStart {
  /** Whether its output reached full volts in the time given. */
  readonly starts: boolean;
  /** When it did; the time given when it did not. */
  readonly seconds: number;
  /** Times a hiccup tried; 1 otherwise. */
  readonly tries: number;
  /** Current wanted at full volts in the first instant, over the limit. */
  readonly coldDemandRatio: number;
  /** Output volts at the end, and heater volts over rated at the end. */
  readonly volts: number;
  /** The course of it, for a plot: output volts and amps against time. */
  readonly trace: { readonly seconds: readonly number[]; readonly volts: readonly number[]; readonly amps: readonly number[] };
}

const tripOf = (limit: StartUpLimit): number => (limit.kind === 'constant-current' ? limit.amps : limit.tripAmps);

/** Output volts into `ohms` while the load asks for more than the limit. */
function limitedVolts(limit: StartUpLimit, setVolts: number, ohms: number): number {
  if (limit.kind === 'foldback') {
    // The limit falls in a straight line from the trip current at full volts to the short-circuit current at none.
    const slope = (limit.tripAmps - limit.shortAmps) / setVolts;
    return Math.min(setVolts, limit.shortAmps / Math.max(1 / ohms - slope, 1e-12));
  }
  return Math.min(setVolts, tripOf(limit) * ohms);
}

/**
 * A converter starting into cold heaters, solved in time: the heaters warm on what its limit lets through until they
 * ask for no more than it gives, or do not.
 *
 * Constant current: it holds its limit at reduced volts. Foldback: the less volts, the less current. Hiccup: it gives
 * its trip current for a moment, then nothing for a pause, over and over. Electrical time constants are left out (they
 * are milliseconds against seconds); heaters follow their thermal model, the rest of the load is a resistance. It ends
 * when full volts are reached, since from there on the heaters only ask for less.
 * Volts 0.5 to 100, time 0.1 to 300 s. Throws `InputError` outside.
 */
export function startConverter(options: ConverterStartOptions): ConverterStart {
  const { limit, heater, loadOhms = Infinity } = options;
  const setVolts = requireNumber('setVolts', options.setVolts, { min: 0.5, max: 100 });
  const end = requireNumber('seconds', options.seconds ?? 60, { min: 0.1, max: 300 });
  if (loadOhms !== Infinity) requireNumber('loadOhms', loadOhms, { min: 1e-3, max: 1e9 });
  const trip = requireNumber('limit amps', tripOf(limit), { min: 1e-4, max: 1000 });

  let kelvin = heater?.airKelvin ?? 0;
  const ohmsAt = (at: number): number => {
    const conductance = 1 / loadOhms + (heater === undefined ? 0 : 1 / heaterOhms({ model: heater, kelvin: at }));
    return conductance > 0 ? 1 / conductance : Infinity;
  };
  const trace = { seconds: [] as number[], volts: [] as number[], amps: [] as number[] };
  const mark = (seconds: number, volts: number): void => {
    trace.seconds.push(seconds);
    trace.volts.push(volts);
    trace.amps.push(volts / ohmsAt(kelvin));
  };
  const coldDemandRatio = setVolts / ohmsAt(kelvin) / trip;

  let seconds = 0;
  let tries = 1;
  let volts = 0;
  // Within a hiccup's cycle: time left of the try (positive) or of the pause (negative).
  let phase = limit.kind === 'hiccup' ? limit.onSeconds : Infinity;
  while (seconds < end) {
    const trying = phase > 0;
    const ohms = ohmsAt(kelvin);
    if (trying && setVolts / ohms <= trip) {
      mark(seconds, setVolts);
      return { starts: true, seconds, tries, coldDemandRatio, volts: setVolts, trace };
    }
    volts = trying ? limitedVolts(limit, setVolts, ohms) : 0;
    mark(seconds, volts);
    const slope = (at: number): number => {
      if (heater === undefined) return 0;
      const here = trying ? limitedVolts(limit, setVolts, ohmsAt(at)) : 0;
      return heaterKelvinPerSecond({ model: heater, kelvin: at, watts: (here * here) / heaterOhms({ model: heater, kelvin: at }) });
    };
    const rate = slope(kelvin);
    // A step warms or cools by 1 % at most, and does not run past the end of a try or a pause.
    const step = Math.min(0.25, Math.abs(phase), end - seconds + 1e-9, (0.01 * Math.max(kelvin, 1)) / Math.max(Math.abs(rate), 1e-9));
    kelvin += step * slope(kelvin + (step / 2) * rate);
    seconds += step;
    if (limit.kind === 'hiccup') {
      phase += trying ? -step : step;
      if (Math.abs(phase) < 1e-9) {
        phase = trying ? -limit.pauseSeconds : limit.onSeconds;
        if (!trying) tries += 1;
      }
    }
    // Nothing changes any more: it would sit there for ever.
    if (limit.kind !== 'hiccup' && Math.abs(rate) < 0.05) break;
  }
  return { starts: false, seconds: Math.min(seconds, end), tries, coldDemandRatio, volts, trace };
}
