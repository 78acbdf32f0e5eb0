import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import type { CoilAtSwitchOn } from '../in-time/switch-on.ts';
import type { RailWarmUp } from '../in-time/warm-up.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';
import { WINDING_HAZARD_RATIO } from './winding.ts';

/** Share of a diode's single-surge rating to use at each switch-on: the rating is for a rare event. Choice. */
const SURGE_AIM = 0.5;
/** Seconds of overload while heaters warm that a winding does not notice: minutes are what its heat takes (choice). */
const WARM_UP_SECONDS = 30;
/** Rail in relays' first seconds: dips beyond this share of the rail rattle what has pulled in (choice). */
const DIP_SHARE = 0.2;

/** The first charging pulse against the single-surge rating of a diode, half a mains cycle: `within` to half, `marginal` to it. Amps, peak. */
export function checkDiodeSurge(options: CheckContext & { readonly peakAmps: number; readonly ratedAmps: number }): Finding {
  const peak = requireNumber('peakAmps', options.peakAmps, { min: 0 });
  const rated = requireNumber('ratedAmps', options.ratedAmps, { min: 0.1 });
  const level = levelOfLoad({ value: peak, limit: rated, aim: SURGE_AIM });
  return finding({
    rule: 'diode-surge', level, context: options, source: { id: 'rectifier-textbook' },
    what: `The first charging pulse reaches ${say(peak, 'A')}; each diode bears a single one of ${say(rated, 'A')}.`,
    numbers: [figure('first pulse', peak, 'A'), figure('single surge', rated, 'A')],
    why: 'An empty reservoir is a short for its first half-cycle, and only copper, diodes and its own resistance limit it.',
    todo: level === 'within' ? 'Nothing.' : 'Take larger diodes, a smaller reservoir, or a resistance before the rectifier.',
  });
}

/** Does the rail come up? `outside` when it does not within the time followed, `marginal` from 5 s on: until then all of it is undefined. Seconds. */
export function checkRailRise(options: CheckContext & { readonly upSeconds?: number; readonly followedSeconds: number; readonly held: RailWarmUp['heldAtLast'] }): Finding {
  const { upSeconds, held } = options;
  const base = { rule: 'rail-rise', context: options, source: { id: 'solved' }, why: 'Until the rail stands, nothing on it is where its data sheet puts it: relays hang between, logic starts wrong, heaters warm on less.' } as const;
  if (upSeconds === undefined) {
    return finding({
      ...base, level: 'outside', numbers: [figure('followed', options.followedSeconds, 's')],
      what: held === 'limited' ? `Within ${say(options.followedSeconds, 's')} the rail does not come up: the regulator sits in its current limit.` : `Within ${say(options.followedSeconds, 's')} the rail does not come up.`,
      todo: held === 'limited' ? 'Feed the heaters from a regulator of higher current, a soft start, or a rail of their own.' : 'Find out in the headroom calculator what keeps it down.',
    });
  }
  const level: Level = upSeconds <= 5 ? 'within' : 'marginal';
  return finding({
    ...base, level, numbers: [figure('up after', upSeconds, 's')],
    what: `The rail stands ${say(upSeconds, 's')} after switch-on.`,
    todo: level === 'within' ? 'Nothing; time it on the bench.' : 'Feed the heaters apart, or let nothing depend on the rail until it stands.',
  });
}

/** What relays do on the way: pulled in or not, and whether the rail dips once it has been up. Volts and seconds. */
export function checkCoilsAtSwitchOn(options: CheckContext & { readonly coils: readonly CoilAtSwitchOn[]; readonly deepestDipVolts: number; readonly railVolts: number; readonly windowSeconds: number }): readonly Finding[] {
  const { coils, windowSeconds } = options;
  const rail = requireNumber('railVolts', options.railVolts, { min: 0.1 });
  const dip = requireNumber('deepestDipVolts', options.deepestDipVolts, { min: 0 });
  return coils.map((coil) => {
    const base = { rule: 'coil-at-switch-on', context: options, source: { id: 'solved' } } as const;
    if (coil.pullsInSeconds === undefined) {
      return finding({
        ...base, level: 'marginal', numbers: [figure('watched', windowSeconds, 's')],
        what: `${coil.name}: not pulled in within ${say(windowSeconds, 's')} of switch-on.`,
        why: 'While the rail creeps up a coil hangs short of its pull-in, and its contacts may buzz or rest half closed.',
        todo: 'Switch the coils on only once the rail stands: a delay, or logic that waits.',
      });
    }
    const dips = dip > DIP_SHARE * rail;
    return finding({
      ...base, level: dips ? 'marginal' : 'within', numbers: [figure('current for pull-in after', coil.pullsInSeconds, 's'), figure('deepest dip', dip, 'V')],
      what: `${coil.name}: current enough to pull in ${say(coil.pullsInSeconds, 's')} after switch-on, armature some milliseconds later${dips ? `; the rail then dips by ${say(dip, 'V')}` : ''}.`,
      why: dips ? 'A dip after pull-in lets an armature go and come again: a rattle, and pops on the signal.' : 'What it switches changes over then, valves cold: a moment of its own for a thump once they are not.',
      todo: dips ? 'A larger reservoir, or coils switched one after another.' : 'Nothing while the valves are cold; after a standby switch or a dip of the mains, listen for a thump.',
    });
  });
}

/**
 * The winding while heaters warm: over its rating for seconds is nothing (`within` to half a minute), for longer it is
 * `marginal`; for good it is `outside`, and beyond 1.15 times its rating a `hazard` (fire). RMS amps.
 */
export function checkWarmUpCurrent(options: CheckContext & { readonly warmUp: RailWarmUp; readonly ratedAmps: number }): Finding {
  const { warmUp } = options;
  const rated = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-3 });
  const over = warmUp.seconds.filter((_, index) => (warmUp.windingRmsAmps[index] ?? 0) > rated).at(-1) ?? 0;
  const level: Level = warmUp.mostRmsAmps <= rated ? 'within' : warmUp.endRmsAmps > WINDING_HAZARD_RATIO * rated ? 'hazard' : warmUp.endRmsAmps > rated ? 'outside' : over <= WARM_UP_SECONDS ? 'within' : 'marginal';
  return finding({
    rule: 'warm-up-current', level, context: options, source: { id: 'heater-cold-current' },
    what: `While the heaters warm the winding carries up to ${say(warmUp.mostRmsAmps, 'A')} RMS of its rated ${say(rated, 'A')}${over > 0 ? `, over it for ${say(over, 's')}` : ''}, and ${say(warmUp.endRmsAmps, 'A')} in the end.`,
    numbers: [figure('most', warmUp.mostRmsAmps, 'A'), figure('in the end', warmUp.endRmsAmps, 'A'), figure('rated', rated, 'A')],
    why: 'Cold heaters take several times their hot current. A winding bears seconds of it; a fuse may not.',
    todo: level === 'within' ? 'Nothing; check the fuse against it.' : level === 'hazard' ? 'Do not leave it running: draw less, or feed the heaters from a separate transformer.' : 'Draw less, or feed the heaters from something else.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}
