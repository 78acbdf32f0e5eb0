import { requireNumber } from '../errors.ts';
import type { Finding } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Rated over solved reverse voltage to ask for: mains spikes are not in the solution. */
export const WANTED_REVERSE_FACTOR = 2;

/**
 * Do the diodes bear the reverse voltage? Give the solved peak at high mains without load.
 * `within` when rated for twice as much, `marginal` when rated for at least as much, else `outside`.
 */
export function checkReverseVolts(options: CheckContext & { readonly reverseVolts: number; readonly ratedVolts: number }): Finding {
  const reverse = requireNumber('reverseVolts', options.reverseVolts, { min: 0 });
  const rated = requireNumber('ratedVolts', options.ratedVolts, { min: 0 });
  const level = levelOfLoad({ value: reverse, limit: rated, aim: 1 / WANTED_REVERSE_FACTOR });
  return finding({
    rule: 'reverse-volts', level, context: options, source: { id: 'ds-1n400x' },
    what: `Each diode holds off ${say(reverse, 'V')} at the peak and is rated ${say(rated, 'V')}.`,
    numbers: [figure('reverse peak', reverse, 'V'), figure('rated', rated, 'V')],
    why: 'Mains spikes come on top of the solved peak, and a diode that breaks down puts the winding across the reservoir.',
    todo: level === 'within' ? 'Nothing.' : 'Fit a type rated for at least twice the solved peak.',
  });
}

/**
 * Do the diodes bear the mean current? Give the solved mean of one diode and its rating with a reservoir behind
 * (usually 0.8 of the printed mean). `within` to 0.8 of that, `marginal` to it, else `outside`.
 */
export function checkDiodeCurrent(options: CheckContext & { readonly meanAmps: number; readonly ratedMeanAmps: number }): Finding {
  const mean = requireNumber('meanAmps', options.meanAmps, { min: 0 });
  const rated = requireNumber('ratedMeanAmps', options.ratedMeanAmps, { min: 0 });
  const level = levelOfLoad({ value: mean, limit: rated, aim: 0.8 });
  return finding({
    rule: 'diode-current', level, context: options, source: { id: 'ds-1n400x' },
    what: `Each diode carries ${say(mean, 'A')} on average; with a reservoir behind it may carry ${say(rated, 'A')}.`,
    numbers: [figure('mean current', mean, 'A'), figure('rated', rated, 'A')],
    why: 'The rating holds on leads in free air at moderate temperature; in a hot chassis less is left.',
    todo: level === 'within' ? 'Nothing.' : 'Fit the next larger diode.',
  });
}
