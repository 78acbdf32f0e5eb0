import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import type { Suppression } from '../parts/suppression.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/**
 * Does the relay let go in time? `within` to 0.8 of the time wanted at worst, `marginal` to it, else `outside`.
 * Without suppression the time is that of an arc: `not assessed`.
 */
export function checkRelease(options: CheckContext & { readonly suppression: Suppression; readonly longestSeconds: number; readonly wantedSeconds: number }): Finding {
  const longest = requireNumber('longestSeconds', options.longestSeconds, { min: 0 });
  const wanted = requireNumber('wantedSeconds', options.wantedSeconds, { min: 1e-6 });
  const arc = options.suppression.kind === 'none';
  const level: Level = arc ? 'not assessed' : levelOfLoad({ value: longest, limit: wanted, aim: 0.8 });
  return finding({
    rule: 'coil-release', level, context: options, source: { id: 'solved' },
    what: arc
      ? 'With nothing across it the coil’s current ends in an arc at whatever opens it, and that time is not reckoned here.'
      : `It has let go after ${say(longest, 's')} at the latest; ${say(wanted, 's')} is wanted.`,
    numbers: [figure('longest', longest, 's'), figure('wanted', wanted, 's')],
    why: 'The current dies away in its own time round whatever is across the coil. The lower the voltage it is held to, the longer the armature hangs on, and the slower the contacts part.',
    todo: level === 'within' ? 'Nothing.' : arc ? 'Put a diode, or a diode and a zener, across the coil.' : 'Put a zener in series with the diode, of about the rail’s volts, and check that the switch bears the sum.',
  });
}

/**
 * Does what switches the coil bear its kick? Give the most volts on the open switch. `within` to 0.9 of the rating,
 * `marginal` to it, else `outside`. A transistor with nothing across the coil is a `hazard` (damage): it breaks down at
 * every release and, failed short, holds the relay on.
 */
export function checkDriverVolts(options: CheckContext & {
  readonly suppression: Suppression;
  readonly switchedBy: 'transistor' | 'contact';
  readonly switchVolts: number;
  readonly ratedVolts: number;
}): Finding {
  const { suppression, switchedBy } = options;
  const volts = requireNumber('switchVolts', options.switchVolts, { min: 0 });
  const rated = requireNumber('ratedVolts', options.ratedVolts, { min: 0 });
  const bare = suppression.kind === 'none';
  const name = switchedBy === 'transistor' ? 'transistor' : 'switch';
  const level: Level = bare ? (switchedBy === 'transistor' ? 'hazard' : 'outside') : levelOfLoad({ value: volts, limit: rated, aim: 0.9 });
  return finding({
    rule: 'driver-volts', level, context: options, source: { id: 'note-relay-suppression' },
    what: bare
      ? `With nothing across the coil the ${name} that opens it meets ${say(volts, 'V')} and more; it is rated ${say(rated, 'V')}.`
      : `The ${name} meets ${say(volts, 'V')} as it opens, and is rated ${say(rated, 'V')}.`,
    numbers: [figure('on the open switch', volts, 'V'), figure('rated', rated, 'V')],
    why: bare && switchedBy === 'contact'
      ? 'The arc eats the contact, and its burst of interference is heard in the amp.'
      : 'A transistor beyond its rating breaks down at each release until it fails, usually shorted: the relay then stays on whatever the control says.',
    todo: bare
      ? 'Put a diode across the coil, its cathode to the rail’s plus, or a diode and a zener where it must let go faster.'
      : level === 'within' ? 'Nothing.' : 'Take a part that bears more, or a zener of fewer volts.',
    ...(level === 'hazard' ? { harm: 'damage' as const } : {}),
  });
}
