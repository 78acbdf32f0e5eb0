import type { Finding } from '../../findings.ts';
import { carriesRail, isInsulationKnown, isProvenSeparate, reachesOutside } from '../exposure.ts';
import type { GroundingFacts } from '../grounding-result.ts';
import { isBeyondTouch } from '../jack-potentials.ts';
import { PROTECTIVE_BOND_OHMS, TOUCH_DC_VOLTS } from '../limits.ts';
import { capital, list, show } from './wording.ts';

const ONE_BOND = { id: 'iec-62368-1', at: 'protection by earthing or by reinforced insulation' } as const;

/** Why the rail is not bonded once to protective earth, in words; empty when it is. */
const bondFaults = (facts: GroundingFacts): readonly string[] => {
  const { connections } = facts.job;
  if (facts.points.length === 0) return ['the rail floats'];
  const faults: string[] = [];
  const onRail = facts.points.filter((point) => point.node === 'negative' || point.node === 'positive');
  const bonds = onRail.flatMap((point) => point.links).filter((link) => link.isWire);
  if (bonds.length === 0) {
    const resistance = onRail.flatMap((point) => point.links).find((link) => link.kind === 'rail-reference');
    if (resistance) {
      faults.push(`it reaches the chassis only through ${show(resistance.ohms, 'Ω')}, which is no bond (${show(PROTECTIVE_BOND_OHMS.value, 'Ω')} at most)`);
    } else if (facts.links.some((link) => link.kind === 'outside-sleeve')) {
      faults.push('only what is plugged in joins it to an earth');
    } else {
      faults.push("the rail itself is not bonded: only the winding's own ground holds it, by way of the rectifier");
    }
  }
  if (facts.points.length > 1) faults.push(`the circuit is grounded at ${facts.points.length} points instead of one`);
  if (connections.ampEarth === 'absent') faults.push('the chassis has no protective earth');
  return faults;
};

const railBond = (facts: GroundingFacts): Finding => {
  const { connections, mainsVolts } = facts.job;
  const separate = isProvenSeparate({ connections, mainsVolts });
  const faults = bondFaults(facts);
  const where = [
    ...connections.jacks.filter(carriesRail).map((jack) => `the ${jack.name} jack`),
    ...(connections.touchableControls ? ['a metal control on the panel'] : []),
  ];
  const base = { rule: 'rail-bond', numbers: [], restsOn: facts.job.restsOn ?? (['assumed'] as const), source: ONE_BOND } as const;
  if (where.length === 0) return internalRail(facts, faults);
  if (faults.length === 0 && connections.ampEarth === 'not-checked') {
    return {
      ...base,
      level: 'not assessed',
      what: `The rail reaches ${list(where)} and is bonded to the chassis once, but nobody has tested that the chassis has its protective earth.`,
      why: 'A bond to a chassis is a bond to earth only if the chassis is.',
      todo: 'Measure the protective earth from the plug to the chassis before the rail meets a jack.',
    };
  }
  if (faults.length === 0) {
    return {
      ...base,
      level: 'within',
      what: `The rail reaches ${list(where)} and is bonded once to a chassis whose protective earth is verified.`,
      why: 'Leakage and a breakdown from the high voltage then have somewhere to go that holds the rail near the chassis.',
      todo: 'Keep that bond the only one, mechanically sound, and label it.',
    };
  }
  if (separate && facts.points.length === 0) {
    return {
      ...base,
      level: 'within',
      what: `The rail reaches ${list(where)} and floats, behind reinforced insulation from the mains, from the high voltage and at every relay that somebody vouches for.`,
      why: 'Proven separation takes the place of the bond.',
      todo: 'Keep the evidence with the build sheet; insulation is proven by its marking and by test, not by looking.',
    };
  }
  if (separate) {
    return {
      ...base,
      level: 'marginal',
      what: `The rail reaches ${list(where)} behind insulation that is proven separate, yet it is not left alone: ${list(faults)}.`,
      why: 'Proven separation protects from the mains and the high voltage, not from what a second ground does.',
      todo: "Bond the rail's negative to the chassis once, or let it float entirely.",
    };
  }
  return {
    ...base,
    level: 'hazard',
    what: `The rail reaches ${list(where)} but is not bonded once to protective earth, since ${list(faults)}. It is not proven separate from the mains and the high voltage either.`,
    why: 'Leakage, or one breakdown from the high voltage, brings whatever a hand finds there to that voltage, with nothing to blow.',
    todo: "Verify protective earth, bond the rail's negative to the chassis exactly once, inside, and lift every other ground of the circuit; or keep the rail off the jack with an isolated contact or an optocoupler.",
    harm: 'shock',
  };
};

const internalRail = (facts: GroundingFacts, faults: readonly string[]): Finding => {
  const { connections, mainsVolts } = facts.job;
  const base = { rule: 'rail-bond', numbers: [], restsOn: facts.job.restsOn ?? (['assumed'] as const), source: ONE_BOND } as const;
  if (facts.points.length === 0) {
    const known = isInsulationKnown({ connections, mainsVolts });
    return {
      ...base,
      level: known ? 'marginal' : 'not assessed',
      what: known
        ? 'The rail floats and stays inside. It rests on insulation alone, which somebody vouches for.'
        : 'The rail floats and stays inside. It rests on insulation alone, and nobody vouches for all of it.',
      why: 'Floating is not harmless: leakage sets its potential, and one breakdown lifts all of it towards the high voltage with nothing to blow.',
      todo: "Bond the rail's negative to the chassis once if the winding can be freed of its own ground; otherwise leave it floating only with known insulation, and label it so.",
    };
  }
  const earthed = connections.ampEarth === 'verified';
  return {
    ...base,
    level: facts.points.length > 1 ? 'outside' : earthed ? 'within' : 'not assessed',
    what:
      facts.points.length > 1
        ? `The rail stays inside, but ${list(faults)}.`
        : `The rail stays inside and the circuit has one ground: the ${facts.points[0]?.links[0]?.name ?? ''}.${earthed ? '' : ' That the chassis has its protective earth is not shown.'}`,
    why: 'One ground gives leakage a way home and no supply current a second one.',
    todo: facts.points.length > 1 ? 'Leave one of them.' : 'Keep it the only one.',
  };
};

const heaterRailOutside = (facts: GroundingFacts): readonly Finding[] => {
  const { connections, supply, mainsVolts } = facts.job;
  if (supply.kind !== 'winding' || supply.windingKind !== 'heater' || isProvenSeparate({ connections, mainsVolts })) return [];
  return [
    {
      rule: 'heater-rail-outside',
      level: 'outside',
      what: 'A rail made from the heater winding reaches a jack or a metal control.',
      numbers: [],
      why: 'A heater winding lies beside the high-voltage ones and is not presumed a safety winding. However well the rail is bonded, that bond is all that stands between a breakdown and a hand.',
      todo: 'Keep such a rail entirely inside, with contacts or an optocoupler as the interface; or feed what leaves the amp from a separate transformer or a converter.',
      restsOn: facts.job.restsOn ?? ['assumed'],
      source: ONE_BOND,
    },
  ];
};

const ampEarth = (facts: GroundingFacts): Finding => {
  const { connections, supply } = facts.job;
  const converter = supply.kind === 'converter';
  const source = { id: 'iec-62368-1', at: 'class I equipment' } as const;
  const base = { rule: 'amp-earth', numbers: [], source } as const;
  switch (connections.ampEarth) {
    case 'verified':
      return {
        ...base,
        level: 'within',
        what: 'Protective earth reaches the chassis, by test.',
        why: 'Everything else about grounding stands on it.',
        todo: 'Test and record it again when the work is done.',
        restsOn: ['measured'],
      };
    case 'not-checked':
      return {
        ...base,
        level: 'not assessed',
        what: 'Nobody has tested that protective earth reaches the chassis.',
        why: 'A bond to a chassis without earth carries leakage to the strings and the microphone instead of home.',
        todo: 'Measure from the plug’s earth pin to the chassis before anything else.',
        restsOn: ['assumed'],
      };
    case 'absent':
      return {
        ...base,
        level: 'hazard',
        what: converter
          ? 'The amp has no protective earth, and a converter is to go into it: its leakage, and any breakdown of it, then reaches the chassis and every lead plugged into it.'
          : 'The amp has no protective earth: a bond of the rail to its chassis protects nobody, and any breakdown reaches every lead plugged into it.',
        why: 'With no earth, the chassis is at whatever leakage or a fault gives it, and the player holds strings that are joined to it.',
        todo: 'Have a three-core lead and a verified protective earth fitted first, by somebody licensed for it where you live, or refuse the job.',
        restsOn: facts.job.restsOn ?? ['assumed'],
        harm: 'shock',
      };
  }
};

const jackVoltages = (facts: GroundingFacts): readonly Finding[] =>
  facts.job.connections.jacks.flatMap((jack, index) => {
    const contacts = facts.jacks.filter((contact) => contact.jack === index);
    if (contacts.length === 0) return [];
    const worst = [...contacts].sort((a, b) => b.peakVolts - a.peakVolts)[0];
    if (!worst) return [];
    const beyond = contacts.some(isBeyondTouch);
    const floats = facts.points.length === 0 && facts.job.supply.kind === 'winding';
    const reads = `${show(worst.dcVolts, 'V')} DC and ${show(worst.acVolts, 'V')} RMS of AC above the chassis at the ${worst.side} of ${jack.name}`;
    return [
      {
        rule: 'jack-voltage',
        level: beyond ? 'hazard' : floats ? 'not assessed' : 'within',
        what: beyond
          ? `${capital(reads)}: more than extra-low voltage on a jack.`
          : floats
            ? `What ${jack.name} has above the chassis is not set by the circuit, which floats; only leakage decides it.`
            : `${capital(reads)}, as connected.`,
        numbers: contacts.flatMap((contact) => [
          { name: `${contact.side}-dc-volts`, value: contact.dcVolts, unit: 'V' },
          { name: `${contact.side}-ac-volts`, value: contact.acVolts, unit: 'V' },
          { name: `${contact.side}-peak-volts`, value: contact.peakVolts, unit: 'V' },
        ]),
        why: `${show(TOUCH_DC_VOLTS.value, 'V')} DC, or 30 V RMS of AC, is the most that an ordinary person may be given to touch, dry; it is a limit and not a comfort.`,
        todo: beyond
          ? 'Take it off the jack. Feed the footswitch from a rail that is bonded once and lies below those limits, or meet it through an isolated contact or an optocoupler.'
          : floats
            ? "Bond the rail's negative once, or take the rail off the jack."
            : 'Nothing at this mains voltage; look at the single faults as well.',
        restsOn: facts.job.restsOn ?? ['assumed'],
        source: TOUCH_DC_VOLTS.source,
        ...(beyond ? { harm: 'shock' as const } : {}),
      } satisfies Finding,
    ];
  });

/** A sleeve this far from the chassis is live, V: more than the drop of a bond, less than any diode's. */
const LIVE_SLEEVE_VOLTS = 0.3;

const liveShields = (facts: GroundingFacts): readonly Finding[] =>
  facts.job.connections.jacks.flatMap((jack, index) => {
    const sleeve = facts.jacks.find((contact) => contact.jack === index && contact.side === 'sleeve');
    if (!sleeve || jack.sleeve.kind === 'chassis') return [];
    const wiredLive = jack.sleeve.kind !== 'rail-negative';
    const floats = facts.points.length === 0;
    if (!wiredLive && (floats || sleeve.peakVolts < LIVE_SLEEVE_VOLTS)) return [];
    const beyond = isBeyondTouch(sleeve);
    return [
      {
        rule: 'live-shield',
        level: jack.touchable || beyond ? 'hazard' : 'outside',
        what: `The sleeve of ${jack.name} is live: ${wiredLive ? "it is wired to the rail's positive side" : `it stands ${show(sleeve.peakVolts, 'V')} from the chassis at the peak`}${jack.touchable ? ', on metal that a hand can reach' : ''}.`,
        numbers: [
          { name: 'sleeve-dc-volts', value: sleeve.dcVolts, unit: 'V' },
          { name: 'sleeve-peak-volts', value: sleeve.peakVolts, unit: 'V' },
        ],
        why: 'A plug’s shield meets chassis, other plugs and hands. The first earthed metal it touches shorts the supply through it.',
        todo: "Put the rail's negative, bonded once to the chassis, on the sleeve and the switched side on the tip.",
        restsOn: facts.job.restsOn ?? ['assumed'],
        source: { id: 'solved' },
        harm: beyond ? 'shock' : 'damage',
      } satisfies Finding,
    ];
  });

/** Who can touch the rail, whether it is bonded once to protective earth, and what stands on each jack. */
export function exposureFindings(facts: GroundingFacts): readonly Finding[] {
  return [railBond(facts), ampEarth(facts), ...(reachesOutside(facts.job.connections) ? [...heaterRailOutside(facts), ...jackVoltages(facts), ...liveShields(facts)] : [])];
}
