import { requireNumber } from '../errors.ts';
import type { Level } from '../findings.ts';
import { fuseGates, fuseTimes, meltingIntegral, pulseShare } from '../parts/fuse.ts';
import type { FuseStandard } from '../parts/fuse.ts';

/** A course of RMS current, slow against the mains: heaters that warm. */
export interface SlowCurrent {
  readonly seconds: readonly number[];
  readonly rmsAmps: readonly number[];
}

export interface FuseAtSwitchOn {
  /** Surge over what melts the fuse at once; left out where the melting integral is unknown. */
  readonly pulseRatio?: number;
  /** Share of it that so many switch-ons allow. */
  readonly allowedShare: number;
  readonly meltingA2s?: number;
  readonly meltingBasis?: 'rated' | 'assumed';
  /** Share of the shortest opening time that the warming heaters use up; left out where the standard promises none. */
  readonly slowShare?: number;
  /** Running RMS over what the standard lets it carry for ever. */
  readonly runningRatio: number;
  readonly pulse: Level;
  readonly slow: Level;
  readonly running: Level;
}

const DEFAULT_STARTS = 10_000;

/**
 * What melts a fuse at once, A²s: printed (or fitted) for the time-lag ceramic type; for the other IEC types the least that
 * their gates promise to bear, the last forbidden time times the square of its current. A UL fuse has no gate that short: unknown.
 */
export function leastMeltingA2s(options: { readonly standard: FuseStandard; readonly ratedAmps: number }): { readonly a2s: number; readonly basis: 'rated' | 'assumed' } | undefined {
  const { standard, ratedAmps } = options;
  if (standard.id === 'iec-sheet-5') return meltingIntegral(ratedAmps);
  const gates = fuseGates({ standard, ratedAmps }).filter(({ minSeconds, multiple }) => minSeconds !== undefined && multiple > 2);
  const last = gates.at(-1);
  if (last?.minSeconds === undefined) return undefined;
  return { a2s: (last.multiple * ratedAmps) ** 2 * last.minSeconds, basis: 'assumed' };
}

const levelOf = (value: number | undefined, allowed: number, most: number): Level =>
  value === undefined ? 'not assessed' : value <= allowed ? 'within' : value <= most ? 'marginal' : 'outside';

/**
 * Does a fuse live through switch-on, day after day? Its surge against the share of its melting integral that `starts`
 * switch-ons allow (default 10 000; `marginal` to the share for a hundred); a slow overcurrent (heaters warming) against the
 * shortest time in which the standard lets it open, used up bit by bit; and the running current against what it may
 * carry for ever (`marginal` above nine tenths of it).
 *
 * `surgeA2s` 0 to 1e6, currents to 1000 A. Throws `InputError` outside. What a standard does not promise is `not assessed`.
 */
export function fuseAtSwitchOn(options: {
  readonly standard: FuseStandard;
  readonly ratedAmps: number;
  readonly surgeA2s: number;
  readonly runningRmsAmps: number;
  readonly slow?: SlowCurrent;
  readonly starts?: number;
}): FuseAtSwitchOn {
  const { standard, slow } = options;
  const ratedAmps = requireNumber('ratedAmps', options.ratedAmps, { min: 0.01, max: 30 });
  const surge = requireNumber('surgeA2s', options.surgeA2s, { min: 0, max: 1e6 });
  const running = requireNumber('runningRmsAmps', options.runningRmsAmps, { min: 0, max: 1000 });
  const allowedShare = pulseShare(options.starts ?? DEFAULT_STARTS);
  const melting = leastMeltingA2s({ standard, ratedAmps });
  const pulseRatio = melting === undefined ? undefined : surge / melting.a2s;
  const slowShare = slow === undefined ? 0 : shareUsed(standard, ratedAmps, slow);
  const runningRatio = running / (ratedAmps * standard.continuousShare);
  return {
    ...(pulseRatio === undefined ? {} : { pulseRatio }),
    allowedShare,
    ...(melting === undefined ? {} : { meltingA2s: melting.a2s, meltingBasis: melting.basis }),
    ...(slowShare === undefined ? {} : { slowShare }),
    runningRatio,
    pulse: levelOf(pulseRatio, allowedShare, pulseShare(100)),
    slow: levelOf(slowShare, 0.5, 1),
    running: levelOf(runningRatio, 0.9, 1),
  };
}

/** Sum of time over shortest opening time; undefined when some of the current lies where the standard promises nothing. */
function shareUsed(standard: FuseStandard, ratedAmps: number, { seconds, rmsAmps }: SlowCurrent): number | undefined {
  let used = 0;
  for (let k = 1; k < seconds.length; k += 1) {
    const amps = Math.max(rmsAmps[k - 1] as number, rmsAmps[k] as number);
    if (amps <= ratedAmps * standard.continuousShare) continue;
    const { minSeconds } = fuseTimes({ standard, ratedAmps, amps });
    if (minSeconds === undefined) return undefined;
    used += ((seconds[k] as number) - (seconds[k - 1] as number)) / minSeconds;
  }
  return used;
}
