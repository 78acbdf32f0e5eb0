import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import type { Insulation } from '../grounding/connections.ts';
import { TOUCH_LIMIT_VOLTS } from '../parts/stored-charge.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Output anodes swing to about this many times B+. */
export const ANODE_SWING = 2;

interface ContactContext extends CheckContext {
  /** Most volts between the contacts and the coil's rail. */
  readonly workingVolts: number;
}

/**
 * Does the relay keep what its contacts switch from its coil? `within` up to 60 V, where nothing dangerous has to be held,
 * and where reinforced insulation is rated for the volts. Basic insulation for the volts is enough only inside; with the
 * rail on a jack it rests on an earth bond that is not asked here: `not assessed`, as is insulation nobody has read. A test
 * voltage alone is no barrier, nor is insulation rated for less: `outside` inside the amp, `hazard` (shock) with the rail
 * on a jack or within reach. Rules as of the grounding analysis. Source: IEC 62368-1.
 */
export function checkCoilToContact(options: ContactContext & { readonly insulation: Insulation; readonly railOutside: boolean }): Finding {
  const { insulation, railOutside } = options;
  const volts = requireNumber('workingVolts', options.workingVolts, { min: 0 });
  const rated = 'workingVolts' in insulation ? requireNumber('insulation.workingVolts', insulation.workingVolts, { min: 0 }) : undefined;
  const reach = railOutside ? ', and its rail is on a jack or within reach' : '';
  const say60 = volts <= TOUCH_LIMIT_VOLTS;
  const tooLittle: Level = railOutside ? 'hazard' : 'outside';
  const level: Level =
    say60 ? 'within'
    : insulation.kind === 'unknown' ? 'not assessed'
    : insulation.kind === 'test-voltage-only' || (rated ?? 0) < volts ? tooLittle
    : insulation.kind === 'basic' && railOutside ? 'not assessed'
    : 'within';
  const held =
    say60 ? 'the barrier to its coil has nothing dangerous to hold'
    : insulation.kind === 'unknown' ? 'nobody has read what insulates them from the coil'
    : insulation.kind === 'test-voltage-only' ? `all that is printed is a test of ${say(insulation.testVolts, 'V')} for a minute${reach}`
    : `between them and the coil stands ${insulation.kind} insulation for ${say(insulation.workingVolts, 'V')}${reach}`;
  return finding({
    rule: 'coil-to-contact', level, context: options, source: { id: 'iec-62368-1', at: 'clause 5.4, insulation by working voltage' },
    what: `The contacts work at ${say(volts, 'V')}: ${held}.`,
    numbers: [figure('working', volts, 'V'), ...(rated === undefined ? [] : [figure('rated', rated, 'V')])],
    why: 'A relay’s coil belongs to the rail. What lies between it and the contacts is often the thinnest barrier between the high voltage and a footswitch, and a signal relay is none.',
    todo:
      say60 ? 'Nothing, as long as those contacts stay on low-voltage signals.'
      : level === 'within' ? 'Keep the wiring of both sides apart as well.'
      : insulation.kind === 'unknown' ? 'Read the coil-to-contact insulation class and working voltage on the data sheet; until then treat the coil and its rail as able to reach the high voltage.'
      : level === 'not assessed' ? 'Basic insulation alone is not enough for a jack: it needs the rail bonded once to a verified protective earth, or a relay with reinforced insulation.'
      : 'Use a relay with reinforced coil-to-contact insulation rated for this working voltage, or switch a point of the circuit that is at a low voltage.',
    ...(level === 'hazard' ? { harm: 'shock' as const } : {}),
  });
}

/**
 * Do the open contacts bear their volts, and may they part them? Beyond the DC rating they are `outside` even when moved
 * only with the amp off, and a `hazard` (fire) when moved live: a direct-current arc has no zero at which to end.
 */
export function checkContactVolts(options: ContactContext & { readonly ratedVolts: number; readonly movedLive: boolean }): Finding {
  const { movedLive } = options;
  const volts = requireNumber('workingVolts', options.workingVolts, { min: 0 });
  const rated = requireNumber('ratedVolts', options.ratedVolts, { min: 0 });
  const held = levelOfLoad({ value: volts, limit: rated, aim: 0.8 });
  const level: Level = held === 'outside' && movedLive ? 'hazard' : held;
  return finding({
    rule: 'contact-volts', level, context: options, source: { id: 'ds-relay-telecom' },
    what: `The contacts part ${say(volts, 'V')}${movedLive && volts > TOUCH_LIMIT_VOLTS ? ' while the amp plays' : ''} and are rated ${say(rated, 'V')} DC.`,
    numbers: [figure('across the contacts', volts, 'V'), figure('rated', rated, 'V')],
    why: 'Direct current does not pass through zero: above its rating an arc stands between the contacts, welds or burns them, and carries on into whatever lies beside.',
    todo: level === 'within' ? 'Nothing.' : 'Switch a point at a low voltage, take a relay rated for these volts DC, and move high-voltage contacts only with the amp off and proved dead.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/**
 * Will the contacts stay clean on so little? Audio carries next to no current: below the least load that is printed a
 * contact can film over. `within` when the contact is meant for dry signals (least load of at most 10 mW), else `marginal`.
 */
export function checkContactLoad(options: CheckContext & { readonly minLoad: { readonly volts: number; readonly amps: number } }): Finding {
  const watts = requireNumber('minLoad.volts', options.minLoad.volts, { min: 0 }) * requireNumber('minLoad.amps', options.minLoad.amps, { min: 0 });
  const level: Level = watts <= 0.01 ? 'within' : 'marginal';
  return finding({
    rule: 'contact-load', level, context: options, source: { id: 'ds-relay-telecom' },
    what: `The contacts ask for at least ${say(options.minLoad.volts, 'V')} at ${say(options.minLoad.amps, 'A')}; a guitar signal gives far less.`,
    numbers: [figure('least volts', options.minLoad.volts, 'V'), figure('least amps', options.minLoad.amps, 'A')],
    why: 'Film on a contact is broken by a little current. With none, a power relay’s contact turns into a crackle within months.',
    todo: level === 'within' ? 'Prefer gold-clad twin contacts for signals at grid level.' : 'Take a signal relay with gold-clad contacts for audio.',
  });
}
