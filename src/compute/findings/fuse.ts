import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import { breakingCapacityAmps, fuseTimes, pulseShare } from '../parts/fuse.ts';
import type { FuseStandard } from '../parts/fuse.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/**
 * Does the fuse carry the running current for ever? RMS, not DC: the winding's on the secondary side. `within` to 0.9 of
 * what its standard lets it carry (all of its rating for IEC, three quarters for UL), `marginal` to that, else `outside`.
 */
export function checkFuseRunning(options: CheckContext & { readonly standard: FuseStandard; readonly ratedAmps: number; readonly rmsAmps: number }): Finding {
  const amps = requireNumber('rmsAmps', options.rmsAmps, { min: 0 });
  const carried = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-3 }) * options.standard.continuousShare;
  const level = levelOfLoad({ value: amps, limit: carried, aim: 0.9 });
  return finding({
    rule: 'fuse-running', level, context: options, source: options.standard.source,
    what: `The fuse carries ${say(amps, 'A')} RMS and may carry ${say(carried, 'A')} for ever.`,
    numbers: [figure('running', amps, 'A'), figure('may carry', carried, 'A')],
    why: 'A fuse run near its rating tires and opens after weeks, and the next one fitted is then too large.',
    todo: level === 'within' ? 'Nothing.' : 'Find out whether the load is right; only then take the next rating up, if the fault still blows it.',
  });
}

/**
 * Does the fuse bear switch-on? `within` while the inrush I²t is at most its share of the melting integral for so many
 * switch-ons (default 10 000: 0.29), `marginal` up to 0.48 (a hundred), else `outside`.
 */
export function checkFuseInrush(options: CheckContext & { readonly inrushA2s: number; readonly meltingA2s: number; readonly pulses?: number }): Finding {
  const inrush = requireNumber('inrushA2s', options.inrushA2s, { min: 0 });
  const melting = requireNumber('meltingA2s', options.meltingA2s, { min: 1e-9 });
  const share = inrush / melting;
  const level: Level = share <= pulseShare(options.pulses ?? 10_000) ? 'within' : share <= pulseShare(100) ? 'marginal' : 'outside';
  return finding({
    rule: 'fuse-inrush', level, context: options, source: { id: 'note-fuse-guide' },
    what: `Switch-on puts ${say(inrush, 'A²s')} through the fuse, ${say(share, '%')} of the ${say(melting, 'A²s')} that melts it.`,
    numbers: [figure('inrush', inrush, 'A²s'), figure('melting', melting, 'A²s'), figure('share', share, '')],
    why: 'Each switch-on that comes near to melting it leaves the fuse weaker.',
    todo: level === 'within' ? 'Nothing.' : 'Use a time-lag type, or limit the inrush; do not raise the rating past what a fault blows.',
  });
}

/**
 * Does the fuse end a fault in time? `within` when its standard makes it open within `toleratedSeconds` (default 10: what a
 * small winding bears), `outside` when it may take longer, `hazard` (fire) when it need never open.
 */
export function checkFuseFault(options: CheckContext & {
  readonly standard: FuseStandard;
  readonly ratedAmps: number;
  readonly faultAmps: number;
  readonly toleratedSeconds?: number;
}): Finding {
  const { standard, ratedAmps, toleratedSeconds = 10 } = options;
  const fault = requireNumber('faultAmps', options.faultAmps, { min: 0 });
  const { maxSeconds } = fuseTimes({ standard, ratedAmps, amps: Math.min(fault, 1e4) });
  const level: Level = maxSeconds === undefined ? 'hazard' : maxSeconds <= toleratedSeconds ? 'within' : 'outside';
  return finding({
    rule: 'fuse-fault', level, context: options, source: standard.source,
    what: `The fault drives ${say(fault, 'A')} through a fuse of ${say(ratedAmps, 'A')}: it ${maxSeconds === undefined ? 'need never open' : `must open within ${say(maxSeconds, 's')}`}.`,
    numbers: [figure('fault', fault, 'A'), figure('rated', ratedAmps, 'A'), ...(maxSeconds === undefined ? [] : [figure('longest', maxSeconds, 's')])],
    why: 'What the fuse does not end burns on in the winding, which is slower and hotter than any fuse.',
    todo: level === 'within' ? 'Nothing.' : 'Fuse the secondary as well, take a transformer marked short-circuit proof or one with a thermal link; never count on the mains fuse alone.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/** Can the fuse break the largest current its place can drive? `within` to its breaking capacity, else `hazard` (fire). */
export function checkFuseBreaking(options: CheckContext & { readonly standard: FuseStandard; readonly ratedAmps: number; readonly prospectiveAmps: number }): Finding {
  const prospective = requireNumber('prospectiveAmps', options.prospectiveAmps, { min: 0 });
  const capacity = breakingCapacityAmps(options);
  const level: Level = prospective <= capacity ? 'within' : 'hazard';
  return finding({
    rule: 'fuse-breaking', level, context: options, source: options.standard.source,
    what: `Its place can drive ${say(prospective, 'A')}; the fuse breaks up to ${say(capacity, 'A')}.`,
    numbers: [figure('prospective', prospective, 'A'), figure('breaking capacity', capacity, 'A')],
    why: 'Beyond its breaking capacity a fuse can burst or hold an arc instead of opening.',
    todo: level === 'within' ? 'Nothing.' : 'Fit a high-breaking ceramic type.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}
