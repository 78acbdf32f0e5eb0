import { requireNumber } from '../errors.ts';
import { heaterKelvinPerSecond, heaterOhms } from '../parts/heater.ts';
import { settleRail } from './settled-rail.ts';
import type { SettledRail } from './settled-rail.ts';
import { loadSiemens } from './timed-load.ts';
import type { TimedLoad } from './timed-load.ts';
import type { TimedSupply } from './timed-supply.ts';

/** Heaters warming on the rail, mains cycle by mains cycle averaged out. */
export interface RailWarmUp {
  readonly seconds: readonly number[];
  readonly railVolts: readonly number[];
  /** RMS in the winding; of one half of a centre tap. */
  readonly windingRmsAmps: readonly number[];
  readonly loadAmps: readonly number[];
  /** First moment at which the rail is up; left out when it never is within the time. */
  readonly upSeconds?: number;
  /** Most that the winding carries on the way, and its last value. */
  readonly mostRmsAmps: number;
  readonly endRmsAmps: number;
  /** What holds the rail at the beginning and at the end. */
  readonly heldAtFirst: SettledRail['held'];
  readonly heldAtLast: SettledRail['held'];
}

/** The rail counts as up from this share of what it ends at (or is set to). */
export const UP_SHARE = 0.95;
/** A step changes the heaters' temperature by this share at most. */
const STEP_SHARE = 0.03;
const LONGEST_STEP = 1;
const MAX_STEPS = 400;

/**
 * Cold heaters on a rail, from the moment the reservoir has charged: at each step the supply's repeating cycle is solved
 * with the heaters' present resistance, and the heaters warm on what they get. A regulator's current limit holds the
 * rail down meanwhile. Steps are 3 % of the heaters' temperature or a second, whichever is less; midpoint rule.
 *
 * Assumes heaters follow their thermal model, and that a mains cycle is short against their warming (some seconds).
 * `seconds` 0.1 to 300 (default 60). Throws `InputError` outside, `SolveError` when the supply has no steady state.
 */
export function warmUpRail(options: { readonly supply: TimedSupply; readonly load: TimedLoad; readonly seconds?: number }): RailWarmUp {
  const { supply, load } = options;
  const end = requireNumber('seconds', options.seconds ?? 60, { min: 0.1, max: 300 });
  const { heater } = load;
  const hot = settleRail({ supply, siemens: loadSiemens(load) });
  const upVolts = UP_SHARE * (supply.regulator?.setVolts ?? hot.meanVolts);
  const at = (kelvin: number): SettledRail => settleRail({ supply, siemens: loadSiemens(load, kelvin) });
  const track = { seconds: [] as number[], railVolts: [] as number[], windingRmsAmps: [] as number[], loadAmps: [] as number[] };
  let kelvin = heater?.airKelvin ?? 300;
  let now = at(kelvin);
  const heldAtFirst = now.held;
  let upSeconds: number | undefined;
  let seconds = 0;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    track.seconds.push(seconds);
    track.railVolts.push(now.meanVolts);
    track.windingRmsAmps.push(now.rectifier.winding.rmsAmps);
    track.loadAmps.push(now.loadAmps);
    if (upSeconds === undefined && now.meanVolts >= upVolts) upSeconds = seconds;
    if (heater === undefined || seconds >= end) break;
    const rate = (volts: number, hotness: number): number =>
      heaterKelvinPerSecond({ model: heater, kelvin: hotness, watts: (volts * volts) / heaterOhms({ model: heater, kelvin: hotness }) });
    const first = rate(now.meanVolts, kelvin);
    const length = Math.min(LONGEST_STEP, end - seconds, (STEP_SHARE * kelvin) / Math.max(Math.abs(first), 1e-6));
    // Half a step on, the rail itself has barely moved: the heaters' temperature has.
    kelvin += length * rate(now.meanVolts, kelvin + (length / 2) * first);
    seconds += length;
    now = at(kelvin);
  }
  return {
    ...track,
    ...(upSeconds === undefined ? {} : { upSeconds }),
    mostRmsAmps: Math.max(...track.windingRmsAmps),
    endRmsAmps: track.windingRmsAmps.at(-1) ?? 0,
    heldAtFirst,
    heldAtLast: now.held,
  };
}
