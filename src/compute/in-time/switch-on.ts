import { InputError, requireNumber } from '../errors.ts';
import type { NetworkSolution } from '../network/solve-network.ts';
import { solveTransient } from '../network/solve-transient.ts';
import { chargingSurge, integralOfSquare } from './inrush.ts';
import type { ChargingSurge } from './inrush.ts';
import { settleRail } from './settled-rail.ts';
import type { SettledRail } from './settled-rail.ts';
import { checkTimedLoad, coilElement, loadElements, loadSiemens } from './timed-load.ts';
import type { TimedLoad } from './timed-load.ts';
import { RESERVOIR_NODE, WINDING_ELEMENT, checkTimedSupply, railNode, rectifierElements, regulatorElements } from './timed-supply.ts';
import type { TimedSupply } from './timed-supply.ts';
import { UP_SHARE, warmUpRail } from './warm-up.ts';
import type { RailWarmUp } from './warm-up.ts';

/** When a coil has the current that pulls its armature in. */
export interface CoilAtSwitchOn {
  readonly name: string;
  /** Left out when it does not within the window. Its armature moves some milliseconds later. */
  readonly pullsInSeconds?: number;
  /** Current at the end of the window, of one coil. */
  readonly endAmps: number;
}

export interface SwitchOn {
  /** Points at uneven times, thinned without losing an extreme. */
  readonly waveform: {
    readonly seconds: Float64Array;
    readonly reservoirVolts: Float64Array;
    readonly railVolts: Float64Array;
    readonly windingAmps: Float64Array;
  };
  /** The empty reservoir's charge at the worst phase, without load. */
  readonly surge: ChargingSurge;
  /** I²t in the winding from the start to the end of the window, and what of it exceeds the running current's. */
  readonly windowA2s: number;
  readonly surplusA2s: number;
  /** Rail at 95 % of its set volts, or of what it settles at without a regulator; left out when it is not reached. */
  readonly upSeconds?: number;
  /** Deepest fall of the rail from its highest so far, once it was up and within the window; 0 where it was not. */
  readonly deepestDipVolts: number;
  readonly highestRailVolts: number;
  readonly coils: readonly CoilAtSwitchOn[];
  /** Left out without heaters. */
  readonly warmUp?: RailWarmUp;
  /** Everything on and hot. */
  readonly settled: SettledRail;
}

const DEFAULT_CYCLES = 15;

/** First moment at which values reach a level, between samples by a straight line. */
export function firstReached(values: Float64Array, seconds: Float64Array, level: number): number | undefined {
  const at = values.findIndex((value) => value >= level);
  if (at < 0) return undefined;
  if (at === 0) return seconds[0];
  const [v0, v1, t0, t1] = [values[at - 1] as number, values[at] as number, seconds[at - 1] as number, seconds[at] as number];
  return v1 === v0 ? t1 : t0 + ((t1 - t0) * (level - v0)) / (v1 - v0);
}

/** Largest that ∫(i² − running²)dt ever is: the part of the I²t that the running current does not explain. */
function surplus(amps: Float64Array, seconds: Float64Array, runningAmps: number): number {
  let sum = 0;
  let most = 0;
  for (let k = 1; k < amps.length; k += 1) {
    const a = amps[k - 1] as number;
    const b = amps[k] as number;
    sum += ((seconds[k] as number) - (seconds[k - 1] as number)) * ((a * a + a * b + b * b) / 3 - runningAmps * runningAmps);
    most = Math.max(most, sum);
  }
  return most;
}

const series = (table: Readonly<Record<string, Float64Array>>, key: string): Float64Array => {
  const found = table[key];
  if (found === undefined) throw new InputError('supply', key, { expected: 'a circuit that has it' });
  return found;
};

/**
 * The first moments of a rail: reservoir empty, coils without current, heaters cold, the mains thrown on at the phase of
 * the largest current (or at `startDegrees`). The whole circuit is solved in time over `seconds` (default 15 mains cycles, 2 to
 * 100 cycles): winding, rectifier, reservoir, regulator with its dropout and current limit, output capacitor, load.
 * Slow heaters are then followed beyond the window by `warmUpRail`.
 *
 * Left out: leakage inductance and mains impedance (which would lower every peak), the core's inrush (bounded apart, by
 * `primarySurge`), diode heating, motion of the armatures: a coil keeps its inductance with the armature out.
 * Throws `InputError` for a supply or load out of range, `SolveError` as the solvers do.
 */
export function switchOn(options: {
  readonly supply: TimedSupply;
  readonly load: TimedLoad;
  readonly seconds?: number;
  readonly startDegrees?: number;
  readonly maxPoints?: number;
}): SwitchOn {
  const { supply, load, maxPoints = 1500 } = options;
  checkTimedSupply(supply);
  checkTimedLoad(load);
  const { hertz, regulator } = supply;
  const seconds = requireNumber('seconds', options.seconds ?? DEFAULT_CYCLES / hertz, { min: 2 / hertz, max: 100 / hertz });
  const settled = settleRail({ supply, siemens: loadSiemens(load) });
  const surge = chargingSurge(supply);
  const rail = railNode(supply);
  const solution: NetworkSolution = solveTransient({
    elements: [...rectifierElements(supply), ...regulatorElements(supply), ...loadElements(load, rail)],
    seconds,
    hertz,
    startPhaseDegrees: options.startDegrees ?? surge.peakDegrees,
    maxPoints,
  });
  const times = solution.seconds;
  const railVolts = series(solution.volts, rail);
  const windingAmps = series(solution.amps, WINDING_ELEMENT).map((amps) => -amps);
  const warmUp = load.heater === undefined ? undefined : warmUpRail({ supply, load });

  const upVolts = UP_SHARE * (regulator?.setVolts ?? settled.meanVolts);
  const upInWindow = firstReached(railVolts, times, upVolts);
  const upSeconds = upInWindow ?? (warmUp?.upSeconds === undefined ? undefined : Math.max(warmUp.upSeconds, seconds));
  let deepestDipVolts = 0;
  let highestRailVolts = -Infinity;
  railVolts.forEach((volts, k) => {
    highestRailVolts = Math.max(highestRailVolts, volts);
    if (upInWindow !== undefined && (times[k] as number) >= upInWindow) deepestDipVolts = Math.max(deepestDipVolts, highestRailVolts - volts);
  });
  const coils = (load.coils ?? []).map((coil, at): CoilAtSwitchOn => {
    const one = series(solution.amps, coilElement(at)).map((amps) => amps / coil.count);
    const pullsIn = firstReached(one, times, coil.operateAmps);
    return { name: coil.name, endAmps: one.at(-1) ?? 0, ...(pullsIn === undefined ? {} : { pullsInSeconds: pullsIn }) };
  });
  return {
    waveform: { seconds: times, reservoirVolts: series(solution.volts, RESERVOIR_NODE), railVolts, windingAmps },
    surge,
    windowA2s: integralOfSquare(windingAmps, times),
    surplusA2s: surplus(windingAmps, times, settled.rectifier.winding.rmsAmps),
    ...(upSeconds === undefined ? {} : { upSeconds }),
    deepestDipVolts,
    highestRailVolts,
    coils,
    ...(warmUp === undefined ? {} : { warmUp }),
    settled,
  };
}
