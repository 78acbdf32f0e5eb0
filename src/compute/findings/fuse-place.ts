import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import type { FuseInFault } from '../in-time/fuse-in-fault.ts';
import type { FuseStandard } from '../parts/fuse.ts';
import type { ShortCircuitMark } from '../parts/transformer.ts';
import { figure, finding, say } from './check.ts';
import type { CheckContext } from './check.ts';

const BEARS_A_SHORT: readonly ShortCircuitMark[] = ['inherently-proof', 'conditionally-proof', 'fail-safe'];

/**
 * Who wins on a dead short, fuse or winding? `within` when the slowest fuse of its standard opens before the winding
 * passes the limit of its class in a fault, or when the transformer's marking says that it bears or ends a short by
 * itself. Otherwise the winding burns first: a `hazard` (fire), or `not assessed` while nobody has read the marking. `race` as `fuseInFault` gives it.
 */
export function checkFuseRace(options: CheckContext & {
  readonly race: FuseInFault;
  readonly standard: FuseStandard;
  readonly ratedAmps: number;
  readonly mark: ShortCircuitMark;
  readonly place: 'secondary' | 'primary';
}): Finding {
  const { race, standard, ratedAmps, mark, place } = options;
  const proof = BEARS_A_SHORT.includes(mark);
  const { latestSeconds, overloadLimitSeconds } = race;
  const level: Level = race.protects || proof ? 'within' : mark === 'unknown' ? 'not assessed' : 'hazard';
  const opens = latestSeconds === undefined ? 'need never open' : `may take ${say(latestSeconds, 's')} to open`;
  const burns = overloadLimitSeconds === undefined ? `the winding is then at ${say(Math.min(race.windingCelsius, 400), '°C')}` : `the winding passes its limit after ${say(overloadLimitSeconds, 's')}`;
  return finding({
    rule: 'fuse-race', level, context: options, source: standard.source,
    what:
      `A dead short drives ${say(race.fuseAmps.first, 'A')} through the fuse of ${say(ratedAmps, 'A')}, ${say(race.multiple, '')} times its rating: it ${opens}; ${burns}.` +
      `${race.protects ? '' : proof ? ' The transformer’s marking says that it bears or ends a short by itself; this fuse does not save it.' : mark === 'unknown' ? ' Nobody has read whether the transformer bears or ends a short by itself.' : ''}`,
    numbers: [
      figure('fault', race.fuseAmps.first, 'A'), figure('rating', ratedAmps, 'A'),
      ...(latestSeconds === undefined ? [] : [figure('slowest fuse', latestSeconds, 's')]),
      ...(overloadLimitSeconds === undefined ? [] : [figure('winding at its limit', overloadLimitSeconds, 's')]),
    ],
    why: place === 'primary' ? 'A small transformer with its secondary shorted draws a few times its rated current from the mains: too little to hurry a fuse, enough to burn the winding.' : 'What the fuse does not end burns on in the winding, which has nobody else to save it.',
    todo: level === 'within' ? 'Nothing.' : 'Take a transformer marked short-circuit-proof, or one with a thermal link stated by its maker, or fuse the secondary; a small transformer cannot be saved by a fuse in its primary.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/**
 * A fuse that is larger than what the place asks for, or none at all. No fuse is a `hazard` (fire). A larger one is a
 * `hazard` when it does not beat the winding, `marginal` when it still does. Amps.
 */
export function checkFuseFitted(options: CheckContext & { readonly fittedAmps?: number; readonly pickedAmps: number; readonly protects: boolean }): readonly Finding[] {
  const picked = requireNumber('pickedAmps', options.pickedAmps, { min: 1e-3 });
  const base = { rule: 'fuse-fitted', context: options, source: { id: 'note-fuse-guide' } } as const;
  if (options.fittedAmps === undefined) {
    return [
      finding({
        ...base, level: 'hazard', numbers: [figure('wanted', picked, 'A')], harm: 'fire',
        what: `There is no fuse here; ${say(picked, 'A')} is wanted.`,
        why: 'A shorted diode or reservoir then burns in the winding until somebody smells it.',
        todo: `Fit a holder and a fuse of ${say(picked, 'A')} before this is powered.`,
      }),
    ];
  }
  const fitted = requireNumber('fittedAmps', options.fittedAmps, { min: 1e-3 });
  if (fitted <= picked * 1.001) return [];
  const harmless = options.protects;
  return [
    finding({
      ...base, level: harmless ? 'marginal' : 'hazard', numbers: [figure('fitted', fitted, 'A'), figure('wanted', picked, 'A')],
      what: `The fuse is of ${say(fitted, 'A')}, and ${say(picked, 'A')} carries this load and its switch-on.`,
      why: harmless ? 'It still ends a dead short, and no longer anything less.' : 'A bigger fuse in place of one that blew turns the fault into smoke.',
      todo: `Fit ${say(picked, 'A')}, and if that blows, find out why.`,
      ...(harmless ? {} : { harm: 'fire' as const }),
    }),
  ];
}

/** What stands on the mains side of a transformer whose secondary is fused. */
export type MainsSide = 'own-fuse' | 'amp-fuse' | 'nothing' | 'amp-winding';

/** A secondary's fuse does nothing for the primary and its leads: what does? `nothing` is a `hazard` (fire). */
export function checkMainsSide(options: CheckContext & { readonly mainsSide: MainsSide }): Finding {
  const { mainsSide } = options;
  const base = { rule: 'mains-side', context: { ...options, restsOn: ['assumed'] as const }, numbers: [], source: { id: 'iec-61558-1', at: 'short-circuit classes' } } as const;
  const why = 'A fault in the primary, or in the leads to it, is seen by nothing behind the transformer.';
  switch (mainsSide) {
    case 'own-fuse':
      return finding({ ...base, level: 'within', what: 'The added transformer has a fuse of its own on the mains side.', why, todo: 'Check it here too: choose the primary as the place.' });
    case 'amp-winding':
      return finding({ ...base, level: 'within', what: 'The winding belongs to the amp’s own transformer, which its mains fuse stands before; that fuse will not see a fault on this winding.', why: 'A shorted low-voltage winding reflects as well under the amp’s mains current.', todo: 'Count on the fuse in this winding alone.' });
    case 'amp-fuse':
      return finding({ ...base, level: 'outside', what: 'Only the amp’s mains fuse stands before the added transformer.', why: `${why} The amp’s fuse is many times too large for it.`, todo: 'Give the added transformer a fuse of its own, behind the amp’s switch.', harm: 'fire' });
    case 'nothing':
      return finding({ ...base, level: 'hazard', what: 'Nothing stands between the mains and the added transformer.', why, todo: 'Do not power it. Wire it behind the amp’s switch and a fuse of its own, by somebody licensed for mains wiring where you live.', harm: 'fire' });
  }
}
