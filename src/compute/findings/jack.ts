import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import type { EntryTimes, JoinedContact } from '../parts/jack-entry.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** A plug of two poles in a jack of three holds the ring on the sleeve for as long as it is in. */
const HELD = 'As a plug slides in, its shoulder joins the contacts for a moment; a plug of two poles in a jack of three joins them for good.';

/**
 * What happens when plug or switch joins a contact to the sleeve. `outside` when the supply gives no more than it has to
 * spare, or the resistor at the jack may not bear it for good; `marginal` above half of either; a bare rail behind nothing
 * at all is `outside` with damage.
 */
export function checkJoinedContact(
  options: CheckContext & {
    /** "tip", "ring". */
    readonly contact: string;
    /** What it reaches the rail through, in words: "a coil of 360 Ω". */
    readonly through: string;
    readonly joined: JoinedContact;
    readonly spareAmps: number;
    /** Of the resistor at the jack; 0 where there is none. */
    readonly entryOhms: number;
    readonly entryRatedWatts: number;
  },
): Finding {
  const { contact, through, joined, entryOhms } = options;
  const spare = requireNumber('spareAmps', options.spareAmps, { min: 0 });
  const rated = requireNumber('entryRatedWatts', options.entryRatedWatts, { min: 0 });
  const collapses = joined.amps > spare;
  const heat = entryOhms > 0 ? levelOfLoad({ value: joined.entryWatts, limit: rated, aim: 0.5 }) : 'within';
  const drain: Level = collapses ? 'outside' : joined.amps > spare / 2 ? 'marginal' : 'within';
  const level: Level = drain === 'outside' || heat === 'outside' ? 'outside' : drain === 'marginal' || heat === 'marginal' ? 'marginal' : 'within';
  const warm = entryOhms > 0 ? ` The resistor at the jack turns ${say(joined.entryWatts, 'W')} into heat and is rated ${say(rated, 'W')}.` : '';
  return finding({
    rule: `plug-in-${contact}`, level, context: options, source: { id: 'arithmetic' },
    what: `Joined to the sleeve, the ${contact} passes ${say(joined.amps, 'A')} ${through}; the supply has ${say(spare, 'A')} to spare${collapses ? ', so the rail falls' : ''}.${warm}`,
    numbers: [figure('joined', joined.amps, 'A'), figure('to spare', spare, 'A'), ...(entryOhms > 0 ? [figure('heat', joined.entryWatts, 'W'), figure('rated', rated, 'W')] : [])],
    why: HELD,
    todo: level === 'within' ? 'Nothing.' : collapses ? 'Put a resistor in series with the contact, so large that the supply bears the short for good.' : 'A larger resistor, of more ohms or more watts.',
    ...(collapses ? { harm: 'damage' as const } : {}),
  });
}

/**
 * What an optocoupler at the jack keeps apart. Its sheet prints a test, not what the barrier stands for years: `within`
 * only where the rail behind it is bonded once to verified earth, so that nothing rests on the barrier alone; else
 * `not assessed`.
 */
export function checkOptocouplerBarrier(options: CheckContext & { readonly testVolts: number | undefined; readonly isRailBonded: boolean }): Finding {
  const { testVolts, isRailBonded } = options;
  const test = testVolts === undefined ? 'no test voltage that anybody has read' : `${say(testVolts, 'V')} RMS for a minute`;
  return finding({
    rule: 'optocoupler-barrier', level: isRailBonded ? 'within' : 'not assessed', context: options, source: { id: 'iec-62368-1', at: 'clause 5.4, insulation by working voltage' },
    what: isRailBonded
      ? `The optocoupler parts the jack from a rail that is bonded once to verified earth; its barrier is tested with ${test}.`
      : `Only the optocoupler parts the jack from a rail that is not bonded once to verified earth; known of its barrier is ${test}.`,
    numbers: testVolts === undefined ? [] : [figure('test', testVolts, 'V')],
    why: 'A test of a minute says little of what a barrier stands for years, and the board round it, its creepage and its solder, is part of it.',
    todo: isRailBonded ? 'Keep the wiring and the board of both sides apart all the way.' : 'Bond the rail; or take a part with reinforced insulation certified at the voltage behind it, on a board whose creepage fits.',
  });
}

/** Share of the rail's volts that a coil or lamp at the end of a cable should keep. Assumed. */
const WANTED_SHARE = 0.9;

/** Does what the contact feeds get its volts through resistor and cable? `within` from 0.9 of the rail on, `marginal` from 0.8, else `outside`. */
export function checkSwitchedShare(options: CheckContext & { readonly contact: string; readonly feeds: string; readonly volts: number; readonly share: number }): Finding {
  const { contact, feeds, share } = options;
  const volts = requireNumber('volts', options.volts, { min: 0 });
  const level: Level = share >= WANTED_SHARE ? 'within' : share >= 0.8 ? 'marginal' : 'outside';
  return finding({
    rule: `switched-${contact}`, level, context: options, source: { id: 'arithmetic' },
    what: `Through the resistor at the jack and the cable, the ${feeds} at the ${contact} gets ${say(volts * share, 'V')} of ${say(volts, 'V')}.`,
    numbers: [figure('gets', volts * share, 'V'), figure('of', volts, 'V')],
    why: 'A relay needs most of its rated volts to be sure to pull in, and the more the warmer its coil is.',
    todo: level === 'within' ? 'Nothing.' : 'Let the footswitch carry a logic signal and drive the coil inside; or a smaller resistor at the jack.',
  });
}

/** A switch is felt as prompt up to here. Assumed. */
const PROMPT_SECONDS = 20e-3;
/** Contacts bounce for about this long. Typical. */
const BOUNCE_SECONDS = 10e-3;

/**
 * Does the input follow its switch? `outside` when the closed switch leaves it above a third of the rail; `marginal` when
 * it lags by more than 20 ms; else `within`.
 */
export function checkEntryTimes(options: CheckContext & { readonly times: EntryTimes }): Finding {
  const { riseSeconds, fallSeconds, cornerHertz, lowRatio } = options.times;
  const deaf = lowRatio > 1 / 3;
  const slow = Math.max(riseSeconds, fallSeconds) > PROMPT_SECONDS;
  const level: Level = deaf ? 'outside' : slow ? 'marginal' : 'within';
  const keepsOut = cornerHertz === undefined ? 'nothing at the jack keeps out what the cable picks up' : `it keeps out what the cable picks up above ${say(cornerHertz, 'Hz')}`;
  return finding({
    rule: 'entry-filter', level, context: options, source: { id: 'arithmetic' },
    what: deaf
      ? `With the switch closed the input still stands at ${say(lowRatio, '%')} of the rail: it may not be taken for closed.`
      : `The input follows the switch ${say(fallSeconds, 's')} after it closes and ${say(riseSeconds, 's')} after it opens; ${keepsOut}.`,
    numbers: [figure('low', lowRatio, ''), figure('rise', riseSeconds, 's'), ...(Number.isFinite(fallSeconds) ? [figure('fall', fallSeconds, 's')] : []), ...(cornerHertz === undefined ? [] : [figure('corner', cornerHertz, 'Hz')])],
    why: `Contacts bounce for about ${say(BOUNCE_SECONDS, 's')}, and a long lead beside a stage is an aerial. What is slower than a few tens of milliseconds is felt.`,
    todo: level === 'within' ? 'Take no decision on a single edge: wait out the bounce.' : deaf ? 'A smaller resistor at the jack, or a larger pull-up.' : 'A smaller capacitor or pull-up.',
  });
}
