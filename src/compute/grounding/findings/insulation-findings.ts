import type { Finding, Level } from '../../findings.ts';
import type { Insulation } from '../connections.ts';
import { contactWorkingVolts, isInsulationKnown, reachesOutside } from '../exposure.ts';
import type { GroundingFacts } from '../grounding-result.ts';
import { isBeyondTouch } from '../jack-potentials.ts';
import { TOUCH_DC_VOLTS } from '../limits.ts';
import type { SingleFault } from '../single-faults.ts';
import { storedJoules } from '../../parts/stored-charge.ts';
import { capital, show } from './wording.ts';

const COORDINATION = { id: 'iec-62368-1', at: 'clause 5.4, insulation by working voltage' } as const;

const rectifierValve = (facts: GroundingFacts): readonly Finding[] => {
  const { supply, connections } = facts.job;
  if (supply.kind !== 'winding' || supply.windingKind !== 'rectifier-valve') return [];
  const volts = connections.highTensionVolts;
  return [
    {
      rule: 'rectifier-valve-winding',
      level: 'hazard',
      what: `This winding feeds a rectifier valve: with its valve fitted it stands at the high voltage${volts === undefined ? '' : `, ${show(volts, 'V')} or more above the chassis`}. It is not a spare winding.`,
      numbers: volts === undefined ? [] : [{ name: 'high-tension-volts', value: volts, unit: 'V' }],
      why: 'The valve’s cathode is the high voltage, and its heater is joined to the cathode or is the cathode. A rail made from the winding kills.',
      todo: 'Leave this winding alone. Use another winding, a small separate transformer or a converter.',
      restsOn: facts.job.restsOn ?? ['assumed'],
      source: { id: 'ds-5ar4', at: 'cathode joined to heater' },
      harm: 'shock',
    },
  ];
};

const barrier = (facts: GroundingFacts, from: 'mains' | 'high voltage', insulation: Insulation, workingVolts: number | undefined): Finding => {
  const outside = reachesOutside(facts.job.connections);
  const base = {
    rule: from === 'mains' ? 'insulation-from-mains' : 'insulation-from-high-tension',
    numbers: workingVolts === undefined ? [] : [{ name: 'working-volts', value: workingVolts, unit: 'V' }],
    why: 'A winding that gives a low voltage is not thereby a safety winding; what stands between it and its neighbours decides.',
    restsOn: facts.job.restsOn ?? (['assumed'] as const),
    source: COORDINATION,
  } as const;
  if (insulation.kind === 'unknown' || insulation.kind === 'test-voltage-only') {
    return {
      ...base,
      level: 'not assessed',
      what:
        insulation.kind === 'unknown'
          ? `Nobody vouches for the insulation between the ${from} and the rail.`
          : `Between the ${from} and the rail only a test voltage of ${show(insulation.testVolts, 'V')} is known, which says little of what the insulation stands for years.`,
      todo: 'Treat it as insulation that can fail: keep the rail inside, or bond it once to a verified protective earth. Have insulation resistance and electric strength tested by somebody equipped.',
    };
  }
  if (workingVolts === undefined) {
    return { ...base, level: 'not assessed', what: `The ${from} is not stated, so the insulation cannot be held against it.`, todo: 'Measure or look up the high voltage at no load.' };
  }
  const enough = insulation.workingVolts >= workingVolts;
  return {
    ...base,
    level: enough ? 'within' : outside ? 'hazard' : 'outside',
    what: enough
      ? `Between the ${from} and the rail stands ${insulation.kind} insulation for ${show(insulation.workingVolts, 'V')}; it works at ${show(workingVolts, 'V')}.`
      : `Between the ${from} and the rail stands insulation for ${show(insulation.workingVolts, 'V')} only; it works at ${show(workingVolts, 'V')}.`,
    todo: enough ? 'Keep the evidence with the build sheet.' : 'Use a source whose insulation is rated for this voltage.',
    ...(enough || !outside ? {} : { harm: 'shock' as const }),
  };
};

const relayBarriers = (facts: GroundingFacts): readonly Finding[] =>
  facts.job.connections.relays.map((relay, index) => {
    const { connections } = facts.job;
    const working = contactWorkingVolts(connections, index);
    const { insulation } = relay;
    const outside = reachesOutside(connections);
    const base = {
      rule: 'coil-to-contact',
      numbers: [
        ...(working === undefined ? [] : [{ name: 'working-volts', value: working, unit: 'V' }]),
        ...(insulation.kind === 'basic' || insulation.kind === 'reinforced' ? [{ name: 'rated-volts', value: insulation.workingVolts, unit: 'V' }] : []),
      ],
      why: 'The coil belongs to the rail and the contacts to what they switch. What lies between them is often the thinnest barrier between the high voltage and a footswitch.',
      restsOn: facts.job.restsOn ?? (['assumed'] as const),
      source: COORDINATION,
    } as const;
    const at = working === undefined ? '' : `${show(working, 'V')}${relay.work.at === 'output-anode' ? ' at the peak, twice the high voltage, as output anodes swing' : ''}`;
    if (working === undefined) {
      return { ...base, level: 'not assessed' as Level, what: `The contacts of ${relay.name} are at the high voltage, which is not stated.`, todo: 'Measure or look up the high voltage at no load.' };
    }
    if (working <= TOUCH_DC_VOLTS.value) {
      return { ...base, level: 'within' as Level, what: `The contacts of ${relay.name} work at ${at}: the barrier to its coil has nothing dangerous to hold.`, todo: 'Nothing, as long as those contacts stay on low-voltage signals.' };
    }
    if (insulation.kind === 'unknown') {
      return {
        ...base,
        level: 'not assessed' as Level,
        what: `The contacts of ${relay.name} work at ${at}, and nobody has read what insulates them from the coil.`,
        todo: 'Read the coil-to-contact insulation class and working voltage on the data sheet; until then treat the coil and its rail as able to reach the high voltage.',
      };
    }
    if (insulation.kind === 'test-voltage-only') {
      return {
        ...base,
        level: (outside ? 'hazard' : 'outside') as Level,
        what: `The contacts of ${relay.name} work at ${at}, and its data sheet promises only a test of ${show(insulation.testVolts, 'V')} for a minute${outside ? ', with the coil’s rail on a jack or within reach' : ''}: that is no barrier.`,
        todo: 'Use a relay with reinforced coil-to-contact insulation at this working voltage, or switch a point of the circuit that is at a low voltage.',
        ...(outside ? { harm: 'shock' as const } : {}),
      };
    }
    if (insulation.workingVolts < working) {
      return {
        ...base,
        level: 'hazard' as Level,
        what: `The contacts of ${relay.name} work at ${at}; between them and the coil stands insulation for ${show(insulation.workingVolts, 'V')}.`,
        todo: 'Use a relay whose coil-to-contact insulation is rated for this working voltage, or switch a point at a low voltage.',
        harm: 'shock' as const,
      };
    }
    return {
      ...base,
      level: 'within' as Level,
      what: `The contacts of ${relay.name} work at ${at}; ${insulation.kind} insulation for ${show(insulation.workingVolts, 'V')} stands between them and the coil.`,
      todo: insulation.kind === 'basic' && outside ? 'Basic insulation alone is not enough for a jack: keep the rail bonded once to protective earth.' : 'Keep the wiring of both sides apart as well.',
    };
  });

const NAMES: Record<SingleFault['kind'], string> = {
  'coil-to-contact': 'a relay’s insulation fails from contact to coil',
  'winding-to-winding': 'the transformer’s insulation fails from a high-voltage winding to this one',
  'divider-open': 'the lower resistor of the elevating divider opens',
};

const singleFault = (facts: GroundingFacts, fault: SingleFault): Finding => {
  const { connections, mainsVolts } = facts.job;
  const outside = reachesOutside(connections);
  const { touch } = fault;
  const beyond = isBeyondTouch(touch) || fault.contacts.some(isBeyondTouch);
  const elevated = fault.kind === 'divider-open';
  const known = isInsulationKnown({ connections, mainsVolts });
  const held = facts.links.some((link) => link.isWire && link.node !== 'centre');
  // Held only while the load draws: an idle rail charges towards the high voltage through the breakdown, its negative
  // bonded or not. So a bond alone is never the whole answer.
  const level: Level = !beyond ? (held ? 'marginal' : 'outside') : outside ? 'hazard' : elevated ? 'marginal' : known ? 'marginal' : 'not assessed';
  const { winding } = connections;
  // The resistors of a divider let little through; what its capacitor has stored comes all at once.
  const joules = elevated && winding.kind === 'elevated' && winding.bypassFarads !== undefined ? storedJoules({ farads: winding.bypassFarads, volts: Math.abs(touch.dcVolts) }) : 0;
  const stored = joules > 0 ? `, on top of ${show(joules, 'J')} from the divider's capacitor` : '';
  const behind = fault.ohms === undefined ? '' : ` (behind ${show(fault.ohms, 'Ω')})`;
  return {
    rule: elevated ? 'elevation-single-fault' : 'insulation-single-fault',
    level,
    what: beyond
      ? `If ${NAMES[fault.kind]}${behind}, the rail goes to ${show(touch.dcVolts, 'V')} above the chassis, and ${show(touch.hand?.dcAmps ?? 0, 'A')} flows through a hand${stored}; nothing blows.`
      : `If ${NAMES[fault.kind]}${behind} while the load draws, the rail is held at ${show(touch.dcVolts, 'V')} from the chassis and ${show(fault.faultAmps, 'A')} flows there by way of its ground${held ? '' : ', but no wire carries it: what does can burn open or be unplugged, and nothing holds the rail then'}.`,
    numbers: [
      { name: 'rail-dc-volts', value: touch.dcVolts, unit: 'V' },
      { name: 'rail-ac-volts', value: touch.acVolts, unit: 'V' },
      ...(touch.hand ? [{ name: 'hand-dc-amps', value: touch.hand.dcAmps, unit: 'A' }] : []),
      { name: 'fault-mean-amps', value: fault.faultAmps, unit: 'A' },
      ...(fault.ohms === undefined ? [] : [{ name: 'breakdown-ohms', value: fault.ohms, unit: 'Ω' }]),
      ...(joules > 0 ? [{ name: 'stored-joules', value: joules, unit: 'J' }] : []),
    ],
    why: 'Insulation and resistors fail one at a time and unannounced. What a single failure does decides whether a rail may be where a hand is.',
    todo: beyond
      ? outside
        ? 'Take the rail off the jack and away from hands, or bond its negative once to a verified protective earth with no other ground, so that the failure is held and blows a fuse.'
        : 'Keep it entirely inside, with parts and wire insulated for the high voltage, and labelled; better, bond its negative once.'
      : held
        ? 'Keep the bond sound, and put a clamp across the rail: with nothing drawing current its positive can rise towards the high voltage although its negative is bonded.'
        : "Bond the rail's negative to the chassis once, with a wire.",
    restsOn: ['assumed'],
    source: { id: 'solved' },
    ...(level === 'hazard' ? { harm: 'shock' as const } : {}),
  };
};

const breakdownNotTried = (facts: GroundingFacts): readonly Finding[] => {
  if (facts.job.connections.highTensionVolts !== undefined) return [];
  return [
    {
      rule: 'insulation-single-fault',
      level: 'not assessed',
      what: 'The high voltage is not stated, so what a breakdown from it would do to the rail has not been solved.',
      numbers: [],
      why: 'One breakdown, from a relay’s contact to its coil or from winding to winding, lifts a floating rail towards the high voltage.',
      todo: 'State the high voltage at no load.',
      restsOn: ['assumed'],
      source: { id: 'solved' },
    },
  ];
};

const elevation = (facts: GroundingFacts): readonly Finding[] => {
  const { connections } = facts.job;
  const { winding } = connections;
  // A rail that is bonded itself is not lifted any more: that the two then fight is a second ground's finding.
  if (winding.kind !== 'elevated' || facts.links.some((link) => link.kind !== 'winding-reference' && link.isWire)) return [];
  const outside = reachesOutside(connections);
  const { positiveVolts, negativeVolts } = facts.railAboveChassis;
  const most = Math.max(Math.abs(positiveVolts), Math.abs(negativeVolts));
  const beyond = most > TOUCH_DC_VOLTS.value;
  return [
    {
      rule: 'elevated-rail',
      level: outside ? 'hazard' : beyond ? 'outside' : 'marginal',
      what: `${capital(`a rail made from elevated heaters sits with them`)}: from ${show(negativeVolts, 'V')} to ${show(positiveVolts, 'V')} above the chassis${beyond ? `, past the ${show(TOUCH_DC_VOLTS.value, 'V')} DC limit` : ''}${outside ? ', and it is on a jack or within reach' : ''}.`,
      numbers: [
        { name: 'elevation-volts', value: winding.volts, unit: 'V' },
        { name: 'positive-above-chassis-volts', value: positiveVolts, unit: 'V' },
        { name: 'negative-above-chassis-volts', value: negativeVolts, unit: 'V' },
      ],
      why: 'The elevation and the rail add, and only one resistor of the divider holds both down.',
      todo: outside
        ? 'Never bring it to a jack: use contacts or an optocoupler as the interface, or another supply.'
        : 'Keep it internal, insulate it for the high voltage and label it; or use another supply.',
      restsOn: facts.job.restsOn ?? ['assumed'],
      source: TOUCH_DC_VOLTS.source,
      ...(outside ? { harm: 'shock' as const } : {}),
    },
  ];
};

/** Barriers to the mains and the high voltage, one by one, and what a single failure of one of them does. */
export function insulationFindings(facts: GroundingFacts): readonly Finding[] {
  const { connections, mainsVolts } = facts.job;
  return [
    ...rectifierValve(facts),
    barrier(facts, 'mains', connections.insulation.fromMains, mainsVolts),
    barrier(facts, 'high voltage', connections.insulation.fromHighTension, connections.highTensionVolts),
    ...relayBarriers(facts),
    ...elevation(facts),
    ...breakdownNotTried(facts),
    ...facts.singleFaults.map((fault) => singleFault(facts, fault)),
  ];
}
