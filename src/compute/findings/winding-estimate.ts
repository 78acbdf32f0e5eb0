import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import type { Bounded } from '../parts/winding-readings.ts';
import { figure, finding, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** What a winding was made for, as far as anybody knows. */
export type WindingPurpose = 'spare' | 'heater' | 'rectifier-valve' | 'unknown';

/** A winding of unknown purpose that gives this is taken for a rectifier valve's until it is proved not to be one. */
const RECTIFIER_VALVE_VOLTS = { min: 4.5, max: 6 } as const;

/**
 * May the winding be used at all? A rectifier valve's winding stands at the high voltage: `hazard` (shock), as is one
 * near 5 V of which nobody knows the purpose. Any other unknown one is `not assessed`.
 */
export function checkWindingPurpose(options: CheckContext & { readonly purpose: WindingPurpose; readonly openCircuitVolts: number }): Finding {
  const { purpose } = options;
  const volts = requireNumber('openCircuitVolts', options.openCircuitVolts, { min: 0 });
  const likely = purpose === 'unknown' && volts >= RECTIFIER_VALVE_VOLTS.min && volts <= RECTIFIER_VALVE_VOLTS.max;
  const level: Level = purpose === 'rectifier-valve' || likely ? 'hazard' : purpose === 'unknown' ? 'not assessed' : 'within';
  return finding({
    rule: 'winding-purpose', level, context: options, source: { id: 'ds-5ar4', at: 'cathode joined to heater' },
    what:
      purpose === 'rectifier-valve' ? `This winding of ${say(volts, 'V')} feeds a rectifier valve: with its valve fitted the whole of it stands at the high voltage.`
      : likely ? `A winding of ${say(volts, 'V')} that nobody can name is most likely a rectifier valve’s, and stands at the high voltage.`
      : purpose === 'unknown' ? `Nobody can say what this winding of ${say(volts, 'V')} was made for, or what it is joined to.`
      : `A ${purpose} winding of ${say(volts, 'V')}: not a rectifier valve’s.`,
    numbers: [figure('open circuit', volts, 'V')],
    why: 'The valve’s cathode is the high voltage, and its heater is joined to the cathode or is the cathode. A few volts across the winding say nothing of where it stands against the chassis.',
    todo:
      level === 'hazard' ? 'Leave it alone: do not measure on it with the amp on, and take nothing from it. Feed the rail from another winding, a small transformer or a converter.'
      : level === 'not assessed' ? 'Trace it to what it feeds with the amp dead and proved dead, before anything is joined to it.'
      : 'Make sure by tracing it, with the amp dead and proved dead.',
    ...(level === 'hazard' ? { harm: 'shock' as const } : {}),
  });
}

/** Do the two readings tell? `within` when the resistance is known to half of itself either way, else `not assessed`. */
export function checkReadingsTell(options: CheckContext & { readonly ohms: Bounded; readonly telling: boolean }): Finding {
  const { ohms, telling } = options;
  return finding({
    rule: 'readings-tell', level: telling ? 'within' : 'not assessed', context: options, source: { id: 'solved' },
    what: telling
      ? `The meter leaves the resistance between ${say(ohms.least, 'Ω')} and ${say(ohms.most, 'Ω')}.`
      : `The step between the readings drowns in what the meter may be out by: anything from ${say(ohms.least, 'Ω')} to ${say(ohms.most, 'Ω')} would read the same.`,
    numbers: [figure('least', ohms.least, 'Ω'), figure('most', ohms.most, 'Ω')],
    why: 'The resistance is a small difference of two large readings; a count of the meter, or a flicker of the mains between them, is a large part of it.',
    todo: telling ? 'Nothing.' : 'Load it more, read the mains with each reading, and use the same range for both.',
  });
}

/**
 * What is wrong with an ohmmeter here? Measured on a winding that was not proved dead it is a `hazard` (shock). Otherwise
 * it is set beside the readings: an ohmmeter sees the secondary alone, and misses the primary's share.
 */
export function checkOhmmeter(options: CheckContext & { readonly secondaryOhms: number; readonly ohms: number; readonly provedDead: boolean }): Finding {
  const secondary = requireNumber('secondaryOhms', options.secondaryOhms, { min: 0 });
  const ohms = requireNumber('ohms', options.ohms, { min: 0 });
  const { provedDead } = options;
  const missing = ohms - secondary;
  return finding({
    rule: 'ohmmeter', level: provedDead ? 'within' : 'hazard', context: options, source: { id: provedDead ? 'solved' : 'en-50110-1' },
    what: provedDead
      ? missing > 0
        ? `The ohmmeter reads ${say(secondary, 'Ω')} and misses ${say(missing, 'Ω')} of the ${say(ohms, 'Ω')} that the load feels: the primary’s share.`
        : `The ohmmeter reads ${say(secondary, 'Ω')}, more than the ${say(ohms, 'Ω')} that the load feels: leads and contacts are in its reading.`
      : `An ohmmeter on a winding of ${say(ohms, 'Ω')} that was not proved dead.`,
    numbers: [figure('ohmmeter', secondary, 'Ω'), figure('felt by the load', ohms, 'Ω')],
    why: provedDead
      ? 'The primary’s resistance stands in the way too, smaller by the square of the turns. The voltage step under load sees both.'
      : 'With the plug in, or a reservoir still charged behind a rectifier or a bleeder that has failed, the meter’s leads join your hands to it.',
    todo: provedDead
      ? 'Reckon with the readings under load.'
      : 'Pull the plug and keep it in sight, bleed every reservoir itself, prove the meter, the circuit and the meter again; only then measure ohms.',
    ...(provedDead ? {} : { harm: 'shock' as const }),
  });
}

/** What volts and ohms can never tell: what insulates the winding. Always `not assessed`. */
export function noteWindingInsulation(options: CheckContext & { readonly openCircuitVolts: number }): Finding {
  return finding({
    rule: 'winding-insulation', level: 'not assessed', context: options, source: { id: 'iec-62368-1', at: 'clause 5.4, insulation by working voltage' },
    what: `${say(options.openCircuitVolts, 'V')} across the winding says nothing of what insulates it from the mains and from the high voltage.`,
    numbers: [figure('open circuit', options.openCircuitVolts, 'V')],
    why: 'A winding that gives a low voltage is not thereby a safety winding.',
    todo: 'Take it for insulation that can fail: keep the rail inside, or bond it once to a verified protective earth, and have it tested by somebody equipped.',
  });
}
