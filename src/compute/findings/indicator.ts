import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Share of an LED's rated current to use in a hot chassis. */
export const WANTED_LED_SHARE = 0.8;

/** Does the LED bear its most current? `within` to 0.8 of its rating, `marginal` to it, else `outside`. On AC give the mean. */
export function checkLedCurrent(options: CheckContext & { readonly amps: number; readonly ratedAmps: number }): Finding {
  const amps = requireNumber('amps', options.amps, { min: 0 });
  const rated = requireNumber('ratedAmps', options.ratedAmps, { min: 0 });
  const level = levelOfLoad({ value: amps, limit: rated, aim: WANTED_LED_SHARE });
  return finding({
    rule: 'led-current', level, context: options, source: { id: 'typical-leds' },
    what: `The LED takes up to ${say(amps, 'A')} and may carry ${say(rated, 'A')}.`,
    numbers: [figure('most', amps, 'A'), figure('rated', rated, 'A')],
    why: 'An LED run near its rating in warm air fades within a year or two; most modern ones are bright at 1 to 2 mA.',
    todo: level === 'within' ? 'Nothing.' : 'Take the next larger resistor.',
  });
}

/** Does it stay lit? `within` while the least current is at least half the usual one, `marginal` below, `outside` when it goes dark. */
export function checkLedLit(options: CheckContext & { readonly leastAmps: number; readonly usualAmps: number }): Finding {
  const least = requireNumber('leastAmps', options.leastAmps, { min: 0 });
  const usual = requireNumber('usualAmps', options.usualAmps, { min: 0 });
  const level: Level = least <= 0 ? 'outside' : least < usual / 2 ? 'marginal' : 'within';
  return finding({
    rule: 'led-lit', level, context: options, source: { id: 'typical-leds' },
    what: least <= 0 ? `At the lowest supply it can go dark: its drop takes all the volts. It usually takes ${say(usual, 'A')}.` : `It keeps at least ${say(least, 'A')} of its usual ${say(usual, 'A')}.`,
    numbers: [figure('least', least, 'A'), figure('usual', usual, 'A')],
    why: 'The resistor sets the current with what the LEDs leave over. When that is little, every tenth of a volt shows.',
    todo: level === 'within' ? 'Nothing.' : 'Fewer LEDs in series, a colour that drops less, or more volts.',
  });
}

/** Does the LED bear the half-cycle against it? `within` to 0.8 of its reverse limit, `marginal` to it, else `outside` (damage). */
export function checkLedReverse(options: CheckContext & { readonly reverseVolts: number; readonly limitVolts: number }): Finding {
  const volts = requireNumber('reverseVolts', options.reverseVolts, { min: 0 });
  const limit = requireNumber('limitVolts', options.limitVolts, { min: 0 });
  const level = levelOfLoad({ value: volts, limit, aim: 0.8 });
  return finding({
    rule: 'led-reverse', level, context: options, source: { id: 'typical-leds' },
    what: `On the half-cycle against it each LED holds off ${say(volts, 'V')}; most bear ${say(limit, 'V')}.`,
    numbers: [figure('reverse', volts, 'V'), figure('limit', limit, 'V')],
    why: 'An LED is a poor rectifier: driven into reverse breakdown at every cycle it fades, then fails, open or shorted.',
    todo: level === 'within' ? 'Nothing.' : 'Put a small silicon diode across it the other way round; the resistor then carries both half-cycles.',
    ...(level === 'outside' ? { harm: 'damage' as const } : {}),
  });
}

/**
 * Does a resistor bear its heat? Give what it may dissipate in its air. `within` to half of that, `marginal` to all of it,
 * `hazard` (fire) beyond: an overheated resistor scorches what it lies on.
 */
export function checkResistorWatts(options: CheckContext & { readonly watts: number; readonly ratedWatts: number; readonly allowedWatts: number }): Finding {
  const watts = requireNumber('watts', options.watts, { min: 0 });
  const allowed = requireNumber('allowedWatts', options.allowedWatts, { min: 0 });
  const level: Level = watts > allowed ? 'hazard' : levelOfLoad({ value: watts, limit: allowed, aim: 0.5 });
  return finding({
    rule: 'resistor-watts', level, context: options, source: { id: 'typical-resistors' },
    what: `The resistor turns up to ${say(watts, 'W')} into heat; one of ${say(options.ratedWatts, 'W')} may take ${say(allowed, 'W')} in this air.`,
    numbers: [figure('heat', watts, 'W'), figure('rated', options.ratedWatts, 'W'), figure('allowed', allowed, 'W')],
    why: 'A resistor at its full rating is hot enough to blister skin and brown its board; beyond it, it can burn.',
    todo: level === 'within' ? 'Nothing.' : level === 'hazard' ? 'Do not power it. Fit a larger resistor, or share the heat between several, clear of wiring and board.' : 'Take the next larger size, and stand it clear of the board.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/**
 * Can the optocoupler's output be relied on to pull its load down? Give the collector current that is left after ageing at
 * the least LED current. `within` while the load takes 0.8 of it, `marginal` to all of it, else `outside`.
 */
export function checkOptocouplerSink(options: CheckContext & { readonly loadAmps: number; readonly collectorAmps: number }): Finding {
  const load = requireNumber('loadAmps', options.loadAmps, { min: 0 });
  const sink = requireNumber('collectorAmps', options.collectorAmps, { min: 0 });
  const level = levelOfLoad({ value: load, limit: sink, aim: 0.8 });
  return finding({
    rule: 'optocoupler-sink', level, context: options, source: { id: 'ds-opto-817' },
    what: `Its output must sink ${say(load, 'A')}; when old it is sure of ${say(sink, 'A')}.`,
    numbers: [figure('load', load, 'A'), figure('sure of', sink, 'A')],
    why: 'The transfer ratio on the sheet is a spread of new parts at one current. Half of the least is what years and heat leave.',
    todo: level === 'within' ? 'Nothing.' : 'More LED current, a better grade, a larger pull-up, or a transistor behind it.',
  });
}

/** Is the LED driven near the current its transfer ratio is stated at? `within` from half of it on, else `marginal`. */
export function checkOptocouplerDrive(options: CheckContext & { readonly leastAmps: number; readonly testAmps: number }): Finding {
  const least = requireNumber('leastAmps', options.leastAmps, { min: 0 });
  const test = requireNumber('testAmps', options.testAmps, { min: 0 });
  const level: Level = least >= test / 2 ? 'within' : 'marginal';
  return finding({
    rule: 'optocoupler-drive', level, context: options, source: { id: 'ds-opto-817' },
    what: `Its LED gets ${say(least, 'A')} at least; the sheet states the transfer ratio at ${say(test, 'A')}.`,
    numbers: [figure('least', least, 'A'), figure('stated at', test, 'A')],
    why: 'The ratio falls off at small currents, by how much nobody promises.',
    todo: level === 'within' ? 'Nothing.' : 'Drive it nearer to the current it is stated at.',
  });
}
