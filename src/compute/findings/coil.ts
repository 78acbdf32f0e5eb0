import { requireNumber } from '../errors.ts';
import { levelOfMargin } from '../findings.ts';
import type { Finding } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Margin over the hot pull-in to ask for, as a share of the coil's rated volts. */
export const WANTED_PULL_IN_SHARE = 0.025;

/**
 * Will the relay pull in when hot at the lowest rail? Margin = lowest volts across the coil − pull-in of the hot coil.
 * `within` from 2.5 % of rated volts on, `marginal` from 0, else `outside`. Give the coil's own volts: less the drop of
 * its driver and any dropping resistor.
 */
export function checkCoilPullIn(options: CheckContext & {
  readonly coil: string;
  readonly coilMinVolts: number;
  readonly operateVolts: number;
  readonly ratedVolts: number;
  readonly coilCelsius: number;
}): Finding {
  const lowest = requireNumber('coilMinVolts', options.coilMinVolts);
  const operate = requireNumber('operateVolts', options.operateVolts, { min: 0 });
  const rated = requireNumber('ratedVolts', options.ratedVolts, { min: 1e-3 });
  const margin = lowest - operate;
  const level = levelOfMargin({ margin, wanted: WANTED_PULL_IN_SHARE * rated });
  return finding({
    rule: 'coil-pull-in', level, context: options, source: { id: 'note-relay-temperature' },
    what: `${options.coil} is sure to pull in from ${say(operate, 'V')} with its coil at ${say(options.coilCelsius, '°C')}, and gets at least ${say(lowest, 'V')}: ${say(Math.abs(margin), 'V')} ${margin < 0 ? 'short' : 'to spare'}.`,
    numbers: [figure('pull-in hot', operate, 'V'), figure('lowest at the coil', lowest, 'V'), figure('margin', margin, 'V'), figure('coil', options.coilCelsius, '°C')],
    why: 'A relay needs its current; hot copper takes more volts for the same current, so a relay that clicks when cold can stay silent on stage.',
    todo: level === 'within' ? 'Nothing; prove it by lowering the mains with the amp hot.' : 'Raise the rail, use coils of a lower rated voltage with a resistor, or more sensitive ones; keep them out of the hottest air.',
  });
}

/**
 * Does the coil bear the highest rail? `within` to 0.95 of its limit at the air temperature, `marginal` to the limit,
 * else `outside`.
 */
export function checkCoilVolts(options: CheckContext & { readonly coil: string; readonly coilMaxVolts: number; readonly limitVolts: number }): Finding {
  const highest = requireNumber('coilMaxVolts', options.coilMaxVolts, { min: 0 });
  const limit = requireNumber('limitVolts', options.limitVolts, { min: 0 });
  const level = levelOfLoad({ value: highest, limit, aim: 0.95 });
  return finding({
    rule: 'coil-volts', level, context: options, source: { id: 'ds-relay-telecom' },
    what: `${options.coil} gets up to ${say(highest, 'V')}; in this air its coil bears ${say(limit, 'V')}.`,
    numbers: [figure('highest at the coil', highest, 'V'), figure('limit', limit, 'V')],
    why: 'Coil heat goes by the square of the volts and stays in the chassis.',
    todo: level === 'within' ? 'Nothing.' : 'Regulate the rail, or put a resistor in series with the coil.',
  });
}
