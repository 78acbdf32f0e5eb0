import { requireNumber } from '../errors.ts';
import { levelOfMargin } from '../findings.ts';
import type { Finding } from '../findings.ts';
import { JUNCTION_AIM_CELSIUS, JUNCTION_LIMIT_CELSIUS } from '../parts/heatsink.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Volts asked for between valley and drop-out before a verdict is `within`: the spread of meters, diodes and mains shape. */
export const WANTED_VALLEY_MARGIN_VOLTS = 0.3;

/**
 * Does the rail's valley clear what the regulator needs? Margin = valley − (highest output + dropout), volts.
 *
 * Give the lowest valley (low mains, everything on, smallest and oldest reservoir), the output at the top of its
 * tolerance, and the dropout to plan with. `within` from 0.3 V on (`wantedVolts`), `marginal` from 0, else `outside`.
 */
export function checkRegulatorValley(options: CheckContext & {
  readonly valleyVolts: number;
  readonly outputMaxVolts: number;
  readonly dropoutVolts: number;
  readonly wantedVolts?: number;
}): Finding {
  const valley = requireNumber('valleyVolts', options.valleyVolts);
  const needed = requireNumber('outputMaxVolts', options.outputMaxVolts, { min: 0 }) + requireNumber('dropoutVolts', options.dropoutVolts, { min: 0 });
  const margin = valley - needed;
  const level = levelOfMargin({ margin, wanted: options.wantedVolts ?? WANTED_VALLEY_MARGIN_VOLTS });
  return finding({
    rule: 'regulator-valley', level, context: options, source: { id: 'ds-78xx' },
    what: `The rail dips to ${say(valley, 'V')} and the regulator needs ${say(needed, 'V')}: ${say(Math.abs(margin), 'V')} ${margin < 0 ? 'short' : 'to spare'}.`,
    numbers: [figure('valley', valley, 'V'), figure('needed', needed, 'V'), figure('margin', margin, 'V')],
    why: 'Below that the regulator follows the ripple: hum on the rail, and relays that chatter when the mains is low.',
    todo: level === 'within'
      ? 'Nothing; prove it by lowering the mains on the bench.'
      : 'Raise the winding’s volts, use diodes that drop less, a regulator of lower dropout or output, or a larger reservoir.',
  });
}

/**
 * Is the junction cool enough? `within` to the aim (110 °C), `marginal` to the limit (125 °C), else `outside`.
 *
 * Give the heat and junction temperature of the worst corner: high mains, everything on. `limitCelsius` and
 * `aimCelsius` for parts with other limits.
 */
export function checkJunction(options: CheckContext & {
  readonly part: string;
  readonly watts: number;
  readonly junctionCelsius: number;
  readonly airCelsius: number;
  readonly limitCelsius?: number;
  readonly aimCelsius?: number;
}): Finding {
  const { part, limitCelsius: limit = JUNCTION_LIMIT_CELSIUS, aimCelsius: aim = JUNCTION_AIM_CELSIUS } = options;
  const watts = requireNumber('watts', options.watts, { min: 0 });
  const junction = requireNumber('junctionCelsius', options.junctionCelsius);
  const level = levelOfMargin({ margin: limit - junction, wanted: limit - aim });
  return finding({
    rule: 'junction-temperature', level, context: options, source: { id: 'ds-78xx' },
    what: `${part} turns ${say(watts, 'W')} into heat and its junction reaches ${say(junction, '°C')} in air of ${say(options.airCelsius, '°C')}; the limit is ${say(limit, '°C')}, the aim ${say(aim, '°C')}.`,
    numbers: [figure('heat', watts, 'W'), figure('junction', junction, '°C'), figure('air', options.airCelsius, '°C'), figure('limit', limit, '°C')],
    why: 'A junction at its limit shuts down in the middle of a set, ages fast, and bakes the electrolytics beside it.',
    todo: level === 'within'
      ? 'Nothing; measure the tab after two hours to prove it.'
      : 'Give it a larger heatsink or cooler air, start from fewer volts, or use a switching regulator.',
  });
}

/**
 * Does the input stay under the regulator's absolute maximum? Give the highest input: high mains, no load.
 * `within` to nine tenths of the maximum, `marginal` to the maximum, else `outside`.
 */
export function checkRegulatorInput(options: CheckContext & { readonly inputMaxVolts: number; readonly ratedMaxVolts: number }): Finding {
  const input = requireNumber('inputMaxVolts', options.inputMaxVolts, { min: 0 });
  const rated = requireNumber('ratedMaxVolts', options.ratedMaxVolts, { min: 0 });
  const level = levelOfLoad({ value: input, limit: rated, aim: 0.9 });
  return finding({
    rule: 'regulator-input', level, context: options, source: { id: 'ds-78xx' },
    what: `The regulator’s input reaches ${say(input, 'V')}; it bears at most ${say(rated, 'V')}.`,
    numbers: [figure('input', input, 'V'), figure('maximum', rated, 'V')],
    why: 'Beyond its maximum a regulator can fail shorted, and then its whole input is on the load.',
    todo: level === 'within' ? 'Nothing.' : 'Use a winding of fewer volts, or a part that bears more.',
    ...(level === 'outside' ? { harm: 'damage' as const } : {}),
  });
}
