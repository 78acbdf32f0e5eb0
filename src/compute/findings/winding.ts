import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Share of a winding's rating to use, and the excess from which it is called a hazard: a third more copper heat. */
export const WANTED_WINDING_SHARE = 0.9;
export const WINDING_HAZARD_RATIO = 1.15;

/**
 * Does the winding carry its solved RMS current? Everything on it counts, heaters included, as the RMS of the sum.
 * `not assessed` without a rating; `within` to 0.9 of it, `marginal` to it, `outside` to 1.15 of it, `hazard` beyond
 * (fire). The shares are this module's own choice.
 */
export function checkWindingCurrent(options: CheckContext & { readonly rmsAmps: number; readonly ratedAmps?: number }): Finding {
  const amps = requireNumber('rmsAmps', options.rmsAmps, { min: 0 });
  const why = 'A winding heats by the square of its RMS current, and charging pulses make that far more than the DC current. No mains fuse sees it.';
  if (options.ratedAmps === undefined) {
    return finding({
      rule: 'winding-current', level: 'not assessed', context: options, source: { id: 'solved' }, why,
      what: `The winding carries ${say(amps, 'A')} RMS, and nobody knows what it is rated for.`,
      numbers: [figure('winding current', amps, 'A')],
      todo: 'Find its rating, or measure the temperature rise by resistance with everything on for two hours.',
    });
  }
  const rated = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-6 });
  const level: Level = amps > rated * WINDING_HAZARD_RATIO ? 'hazard' : levelOfLoad({ value: amps, limit: rated, aim: WANTED_WINDING_SHARE });
  return finding({
    rule: 'winding-current', level, context: options, source: { id: 'solved' }, why,
    what: `The winding carries ${say(amps, 'A')} RMS of its rated ${say(rated, 'A')}; its copper gives ${say((amps / rated) ** 2, '%')} of its rated heat.`,
    numbers: [figure('winding current', amps, 'A'), figure('rated', rated, 'A'), figure('copper heat over rated', (amps / rated) ** 2, '')],
    todo: level === 'within' ? 'Nothing.' : level === 'hazard' ? 'Do not run it: feed the rail from a separate transformer or a converter.' : 'Draw less, or feed the rail from something else.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/**
 * How much more current may a winding give? Two readings cannot tell: without a rating, or the transformer's total VA,
 * or its temperature rise, this is `not assessed`. With a rating and what it carries now, the rest by arithmetic of
 * heat: √(rated² − carried²), an upper bound, since added pulses fall on the crest of the current already there.
 */
export function checkSpareCurrent(options: CheckContext & { readonly carriedRmsAmps: number; readonly ratedAmps?: number; readonly wantedRmsAmps: number }): Finding {
  const carried = requireNumber('carriedRmsAmps', options.carriedRmsAmps, { min: 0 });
  const wanted = requireNumber('wantedRmsAmps', options.wantedRmsAmps, { min: 0 });
  const why = 'Volts and resistance say how a winding sags, not how warm it may get.';
  if (options.ratedAmps === undefined) {
    return finding({
      rule: 'winding-spare', level: 'not assessed', context: options, source: { id: 'solved' }, why,
      what: 'The winding has no known rating: its spare current cannot be told from volts and ohms.',
      numbers: [figure('carried now', carried, 'A'), figure('wanted besides', wanted, 'A')],
      todo: 'Find its rating or the transformer’s VA, or measure its temperature rise by resistance; until then take nothing from it.',
    });
  }
  const rated = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-6 });
  const spare = Math.sqrt(Math.max(0, rated * rated - carried * carried));
  const level = levelOfLoad({ value: wanted, limit: spare, aim: WANTED_WINDING_SHARE });
  return finding({
    rule: 'winding-spare', level, context: options, source: { id: 'solved' }, why,
    what: `At most ${say(spare, 'A')} RMS is left beside ${say(carried, 'A')} of the rated ${say(rated, 'A')}; ${say(wanted, 'A')} is wanted.`,
    numbers: [figure('spare at most', spare, 'A'), figure('carried now', carried, 'A'), figure('rated', rated, 'A'), figure('wanted besides', wanted, 'A')],
    todo: level === 'within' ? 'Solve both loads together before relying on it.' : 'Feed the rail from something else.',
  });
}
