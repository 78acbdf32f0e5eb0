import type { Level } from '../../compute/findings.ts';
import { groundLinks } from '../../compute/grounding/ground-links.ts';
import type { GroundingJob } from '../../compute/grounding/job.ts';
import { AUDIO_TOUCH_PEAK_AMPS, TOUCH_RMS_AMPS, UNEARTHED_TOUCH_RMS_AMPS, type Limit } from '../../compute/grounding/limits.ts';
import { leakageTouch } from '../../compute/grounding/single-faults.ts';
import { withoutBond } from './job.ts';

/** One standard's limit, and what a hand would pass against it. */
export interface TouchRow {
  readonly what: string;
  readonly amps: number;
  readonly limitAmps: number;
  readonly source: Limit['source'];
  readonly level: Level;
}

/** What a hand passes from a converter's output to earth. */
export interface TouchCurrent {
  /** `now`: as it is connected. `bond-lost`: only once the bond, or the earth, is gone. */
  readonly when: 'now' | 'bond-lost';
  readonly openVolts: number;
  readonly rmsAmps: number;
  readonly peakAmps: number;
  readonly rows: readonly TouchRow[];
}

const row = (what: string, amps: number, { value, source }: Limit): TouchRow => ({ what, amps, limitAmps: value, source, level: amps > value ? 'outside' : amps > value / 2 ? 'marginal' : 'within' });

/** Solved with the hand of IEC 60990; nothing without a converter, or where nobody has read its leakage. */
export function touchCurrent(job: GroundingJob): TouchCurrent | undefined {
  const now = leakageTouch(job, groundLinks(job));
  const touch = now ?? leakageTouch(withoutBond(job), []);
  if (touch === undefined) return undefined;
  const rmsAmps = touch.hand?.acAmps ?? 0;
  const peakAmps = touch.hand?.peakAmps ?? 0;
  return {
    when: now === undefined ? 'bond-lost' : 'now', openVolts: touch.acVolts, rmsAmps, peakAmps,
    rows: [
      row('part that is not earthed, RMS', rmsAmps, UNEARTHED_TOUCH_RMS_AMPS),
      row('class 1 source, RMS', rmsAmps, TOUCH_RMS_AMPS),
      row('audio apparatus, peak', peakAmps, AUDIO_TOUCH_PEAK_AMPS),
    ],
  };
}
