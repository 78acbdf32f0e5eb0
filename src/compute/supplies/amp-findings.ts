import type { Finding } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from '../findings/check.ts';
import type { GroundConnections } from '../grounding/connections.ts';
import type { Approach, SupplyPlan } from '../plan/plan-types.ts';

const mainsWork: Record<Approach, boolean> = { 'spare-winding': false, 'heater-winding': false, converter: true, 'separate-transformer': true };

/** Whether an approach adds parts to the mains side of the amp. */
export const touchesMains = (approach: Approach): boolean => mainsWork[approach];

/** Protective earth of the amp, for the approach in question: verified, unknown, or absent, which refuses the job. */
export function earthFinding({ amp }: SupplyPlan, approach: Approach): Finding {
  const base = { rule: 'amp-earth', numbers: [], source: { id: 'iec-62368-1', at: 'class I equipment' } } as const;
  if (amp.protectiveEarth === 'verified') {
    return {
      ...base,
      level: 'within',
      what: 'Protective earth reaches the chassis, by test.',
      why: 'What the rail is bonded to is only as good as this.',
      todo: 'Test and record it again when the work is done.',
      restsOn: ['measured'],
    };
  }
  if (amp.protectiveEarth === 'not-checked') {
    return {
      ...base,
      level: 'not assessed',
      what: 'Nobody has tested that protective earth reaches the chassis.',
      why: 'Without it leakage and breakdowns go to the strings instead of home.',
      todo: 'Measure from the plug’s earth pin to the chassis before anything else.',
      restsOn: ['assumed'],
    };
  }
  return {
    ...base,
    level: 'hazard',
    what:
      approach === 'converter' ? 'The amp has no protective earth: the leakage of a converter, and any breakdown of it, reaches the chassis and every lead plugged in.'
      : touchesMains(approach) ? 'The amp has no protective earth, and a new mains part is to go into it.'
      : 'The amp has no protective earth: a rail bonded to its chassis is bonded to nothing.',
    why: 'The player holds strings that are joined to this chassis.',
    todo: 'Have a three-core lead and a verified protective earth fitted first, by somebody licensed for it where you live, or refuse the job.',
    restsOn: ['measured'],
    harm: 'shock',
  };
}

/** Insulation of the source that nobody vouches for, from the mains and from the high voltage. */
export function insulationFindings(connections: GroundConnections, approach: Approach): readonly Finding[] {
  const { fromMains, fromHighTension } = connections.insulation;
  return (
    [
      ['mains', fromMains],
      ['high voltage', fromHighTension],
    ] as const
  ).flatMap(([from, insulation]): Finding[] => {
    if (insulation.kind === 'basic' || insulation.kind === 'reinforced') return [];
    return [
      {
        rule: from === 'mains' ? 'insulation-from-mains' : 'insulation-from-high-tension',
        level: 'not assessed',
        what:
          insulation.kind === 'test-voltage-only' ?
            `Between this source and the ${from} only a test voltage of ${say(insulation.testVolts, 'V')} is known, not a class of insulation.`
          : from === 'high voltage' && touchesMains(approach) ? 'Between this source and the high voltage stand only the spacing and the sleeving that its builder keeps.'
          : `Nobody vouches for the insulation between this source and the ${from}.`,
        numbers: [],
        why: 'A low voltage at its terminals says nothing of what one breakdown would put there; what separates it from its neighbours decides.',
        todo: 'Read the class on the marking or the sheet; until then bond the rail once to a verified protective earth, keep it off jacks and hands, and have insulation tested by somebody equipped.',
        restsOn: ['assumed'],
        source: { id: 'iec-62368-1', at: 'insulation by working voltage' },
      },
    ];
  });
}

/** The amp's own transformer: what it feeds already and what the rail adds, against its VA. */
export function transformerFinding(plan: SupplyPlan, addedVoltAmps: number, corner: string): Finding {
  const { ratedVoltAmps, presentVoltAmps } = plan.amp.transformer;
  const known = ratedVoltAmps !== undefined && presentVoltAmps !== undefined;
  const total = (presentVoltAmps ?? 0) + addedVoltAmps;
  const level = known ? levelOfLoad({ value: total, limit: ratedVoltAmps, aim: 0.9 }) : 'not assessed';
  return finding({
    rule: 'transformer-volt-amps',
    level,
    what:
      known ? `The transformer would give ${say(total, 'VA')} of its ${say(ratedVoltAmps, 'VA')}; the rail adds ${say(addedVoltAmps, 'VA')}.`
      : `The rail adds ${say(addedVoltAmps, 'VA')} to the amp’s own transformer, of which ${ratedVoltAmps === undefined ? 'the VA is' : 'the present load is'} not known.`,
    numbers: [figure('added', addedVoltAmps, 'VA'), ...(known ? [figure('together', total, 'VA'), figure('rated', ratedVoltAmps, 'VA')] : [])],
    why: 'A winding may be within its own rating while the transformer as a whole is not: all of it heats one core and one primary.',
    todo: level === 'within' ? 'Nothing; measure its temperature rise by resistance to prove it.' : 'Measure the transformer’s temperature rise by resistance with everything on for two hours, or use another source.',
    context: { corner, restsOn: known ? ['rated'] : ['assumed'] },
    source: { id: 'solved' },
    ...(level === 'outside' ? { harm: 'fire' as const } : {}),
  });
}

/** The rail's lowest and highest volts against what the plan lets it stray. */
export function railFinding(options: { readonly plan: SupplyPlan; readonly lowestVolts: number; readonly highestVolts: number; readonly corner: string }): Finding {
  const { plan, lowestVolts, highestVolts, corner } = options;
  const { volts, toleranceRatio = 0.1 } = plan.rail;
  const off = Math.max((volts - lowestVolts) / volts, (highestVolts - volts) / volts);
  const level = levelOfLoad({ value: off, limit: toleranceRatio, aim: 0.8 });
  return finding({
    rule: 'rail-volts',
    level,
    what: `The rail stands between ${say(lowestVolts, 'V')} and ${say(highestVolts, 'V')}; ${say(volts, 'V')} ± ${say(toleranceRatio, '%')} is asked for.`,
    numbers: [figure('lowest', lowestVolts, 'V'), figure('highest', highestVolts, 'V'), figure('asked for', volts, 'V')],
    why: 'Relays, lamps and heaters are chosen for these volts.',
    todo: level === 'within' ? 'Nothing.' : 'See which end is off: a valley that is too low, or a tolerance that is too wide.',
    context: { corner, restsOn: ['typical'] },
    source: { id: 'solved' },
  });
}
