import { requireNumber } from '../errors.ts';
import { levelOfMargin } from '../findings.ts';
import type { Finding, Level } from '../findings.ts';
import { REVERSE_MAX_VOLTS, SURGE_FACTOR } from '../parts/capacitor.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from './regulator.ts';

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

/** Does the valley clear the volts asked for? Give the lowest valley. `within` from 0.3 V over them on, `marginal` from 0, else `outside`. */
export function checkReservoirValley(options: CheckContext & { readonly valleyVolts: number; readonly floorVolts: number }): Finding {
  const valley = requireNumber('valleyVolts', options.valleyVolts);
  const floor = requireNumber('floorVolts', options.floorVolts, { min: 0 });
  const margin = valley - floor;
  const level = levelOfMargin({ margin, wanted: WANTED_VALLEY_MARGIN_VOLTS });
  return finding({
    rule: 'reservoir-valley', level, context: options, source: { id: 'solved' },
    what: `The rail dips to ${say(valley, 'V')} and must not dip below ${say(floor, 'V')}: ${say(Math.abs(margin), 'V')} ${margin < 0 ? 'short' : 'to spare'}.`,
    numbers: [figure('valley', valley, 'V'), figure('asked for', floor, 'V'), figure('margin', margin, 'V')],
    why: 'The valley, not the mean that a meter shows, is what a regulator or a relay has to work with.',
    todo: level === 'within' ? 'Nothing.' : 'Take a larger reservoir while it still gains; after that, more volts from the winding or diodes that drop less.',
  });
}

/** Does it last? Give the hours credited to it. `within` from the hours wanted on, `marginal` from half of them, else `outside`. */
export function checkCapacitorLife(options: CheckContext & { readonly hours: number; readonly wantedHours: number; readonly coreCelsius: number }): Finding {
  const hours = requireNumber('hours', options.hours, { min: 0 });
  const wanted = requireNumber('wantedHours', options.wantedHours, { min: 1e-9 });
  const level: Level = hours >= wanted ? 'within' : hours >= wanted / 2 ? 'marginal' : 'outside';
  return finding({
    rule: 'capacitor-life', level, context: options, source: { id: 'note-capacitor-life' },
    what: `Its core sits at ${say(options.coreCelsius, '°C')}, where the maker’s rule gives ${say(hours * 3600, 's')}; ${say(wanted * 3600, 's')} is wanted.`,
    numbers: [figure('core', options.coreCelsius, '°C'), figure('life', hours * 3600, 's'), figure('wanted', wanted * 3600, 's')],
    why: 'Life doubles with every 10 K cooler. At its end a fifth of the capacitance is gone and the series resistance has doubled; nothing bangs, the hum comes back.',
    todo: level === 'within' ? 'Nothing.' : 'Move it out of the heat of the output valves, or take a 105 °C long-life part.',
  });
}

/** Is it the right way round? Backwards it bears 1.5 V for a moment: with more across it, a `hazard` (damage). */
export function checkCapacitorPolarity(options: CheckContext & { readonly reversed: boolean; readonly volts: number }): Finding {
  const volts = requireNumber('volts', options.volts, { min: 0 });
  const level: Level = options.reversed && volts > REVERSE_MAX_VOLTS ? 'hazard' : options.reversed ? 'outside' : 'within';
  return finding({
    rule: 'capacitor-polarity', level, context: options, source: { id: 'ds-electrolytic-low-z' },
    what: options.reversed ? `The reservoir is the wrong way round: ${say(volts, 'V')} stand against it, and it bears ${say(REVERSE_MAX_VOLTS, 'V')} backwards.` : `Its plus end is on the rail’s plus, ${say(volts, 'V')} above its minus.`,
    numbers: [figure('across it', volts, 'V'), figure('bears backwards', REVERSE_MAX_VOLTS, 'V')],
    why: 'Backwards its oxide dissolves: it draws amps, boils, and vents hot electrolyte, at once or within minutes.',
    todo: options.reversed ? 'Do not power it. Turn it round, or throw it away if it was ever powered like this. Check polarity with a meter before the first power-up, eyes covered.' : 'Check it once more before the first power-up.',
    ...(level === 'hazard' ? { harm: 'damage' as const } : {}),
  });
}
