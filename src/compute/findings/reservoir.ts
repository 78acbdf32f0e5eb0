import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import { SURGE_FACTOR } from '../parts/capacitor.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Share of the rated volts to fill at the worst corner, and of the ripple rating to use. */
export const WANTED_CAPACITOR_SHARE = 0.8;

/**
 * Does the reservoir bear the rail's highest volts? Give high mains without load.
 * `within` to 0.8 of rated, `marginal` to rated, `outside` to 1.15 of rated (its surge rating), `hazard` beyond.
 */
export function checkCapacitorVolts(options: CheckContext & { readonly maxVolts: number; readonly ratedVolts: number }): Finding {
  const volts = requireNumber('maxVolts', options.maxVolts, { min: 0 });
  const rated = requireNumber('ratedVolts', options.ratedVolts, { min: 0 });
  const level: Level = volts > rated * SURGE_FACTOR ? 'hazard' : levelOfLoad({ value: volts, limit: rated, aim: WANTED_CAPACITOR_SHARE });
  return finding({
    rule: 'capacitor-volts', level, context: options, source: { id: 'ds-electrolytic-general' },
    what: `The reservoir reaches ${say(volts, 'V')} and is rated ${say(rated, 'V')}.`,
    numbers: [figure('highest', volts, 'V'), figure('rated', rated, 'V'), figure('surge', rated * SURGE_FACTOR, 'V')],
    why: 'With nothing drawn a small transformer’s rail stands far above its loaded figure; over its rating an electrolytic heats, vents and can burst.',
    todo: level === 'within' ? 'Nothing.' : level === 'marginal' ? 'Take the next voltage rating up if it fits.' : 'Fit the next voltage rating up before any power is applied.',
    ...(level === 'hazard' || level === 'outside' ? { harm: 'damage' as const } : {}),
  });
}

/**
 * Does the reservoir bear its ripple current? Give the solved RMS current of the worst corner and the limit at its
 * frequency and air temperature. `within` to 0.8 of the limit, `marginal` to the limit, else `outside`.
 */
export function checkRippleCurrent(options: CheckContext & { readonly rmsAmps: number; readonly limitAmps: number }): Finding {
  const amps = requireNumber('rmsAmps', options.rmsAmps, { min: 0 });
  const limit = requireNumber('limitAmps', options.limitAmps, { min: 0 });
  const level = levelOfLoad({ value: amps, limit, aim: WANTED_CAPACITOR_SHARE });
  return finding({
    rule: 'ripple-current', level, context: options, source: { id: 'ds-electrolytic-factors' },
    what: `The reservoir carries ${say(amps, 'A')} RMS of ripple; at this frequency and air temperature it may carry ${say(limit, 'A')}.`,
    numbers: [figure('ripple current', amps, 'A'), figure('limit', limit, 'A')],
    why: 'Ripple current heats the core; heat dries it out, and a dried-out reservoir ends in hum and drop-out.',
    todo: level === 'within' ? 'Nothing.' : 'Use a larger can or a low-impedance type, two in parallel, or cooler air.',
  });
}
