import type { Finding } from '../findings.ts';
import { isInsulationKnown, isProvenSeparate, reachesOutside } from '../grounding/exposure.ts';
import { groundLinks, groundPoints } from '../grounding/ground-links.ts';
import type { GroundPoint } from '../grounding/ground-links.ts';
import type { GroundingJob } from '../grounding/job.ts';

const RULE = {
  rule: 'ground-situation',
  numbers: [],
  restsOn: ['assumed'],
  source: { id: 'iec-62368-1', at: 'protection by earthing or by reinforced insulation' },
} as const;

/** The names of what grounds the circuit, for a sentence. */
const named = (points: readonly GroundPoint[]): string => points.flatMap((point) => point.links.map((link) => `the ${link.name}`)).join(' and ');

function tooMany(points: readonly GroundPoint[]): Finding {
  // A wire to the chassis at two points of a rectifier lets its diodes short the winding; a resistance limits that.
  const wires = points.filter((point) => point.links.some((link) => link.isWire));
  const burns = wires.length > 1;
  return {
    ...RULE,
    level: burns ? 'hazard' : 'outside',
    what: `The circuit would be grounded at ${points.length} points: ${named(points)}.`,
    why: burns ? 'The rectifier’s diodes then short part of the winding through the chassis: many amps, which the mains fuse does not see.' : 'Current that belongs in the supply flows through the chassis, and the heaters lose their balance.',
    todo: 'Keep one: the rail’s negative. Solve the others in the ground check before anything is connected.',
    ...(burns ? { harm: 'fire' as const } : {}),
  };
}

/** No wire of its own from the rail to the chassis: it floats, or hangs on the winding's ground, or on a resistance. */
function unbonded(job: GroundingJob, points: readonly GroundPoint[]): Finding {
  const { connections, mainsVolts } = job;
  const outside = reachesOutside(connections);
  const separate = isProvenSeparate({ connections, mainsVolts });
  const how = points.length === 0 ? 'The rail floats' : `The rail is held only by ${named(points)}`;
  if (outside && !(separate && points.length === 0)) {
    return {
      ...RULE,
      level: 'hazard',
      what: `${how}, and it reaches a jack or metal that a hand can touch.`,
      why: 'Leakage, or one breakdown from the high voltage, brings what a hand finds there to that voltage, with nothing to blow.',
      todo: 'Bond the rail’s negative once to a verified protective earth and lift every other ground of it; or keep the rail inside and switch by an isolated contact or an optocoupler.',
      harm: 'shock',
    };
  }
  const known = isInsulationKnown({ connections, mainsVolts });
  return {
    ...RULE,
    level: separate ? 'within' : known ? 'marginal' : 'not assessed',
    what: `${how} and stays inside. It rests on insulation ${separate ? 'that is reinforced and vouched for' : known ? 'that somebody vouches for' : 'that nobody vouches for'}.`,
    why: 'Floating is not harmless: one breakdown from the high voltage lifts all of the rail, with nothing to blow.',
    todo: separate ? 'Keep the evidence with the build sheet.' : 'Bond the rail’s negative once if the winding has no ground of its own.',
  };
}

/**
 * How an approach meets the chassis, told from its connections alone: how many grounds the circuit would have, whether
 * the rail is bonded once, who can touch it, and what its insulation is worth. Quick enough for four approaches side by
 * side; where current would flow is for `analyseGrounding`, with the same job.
 */
export function groundSituation(job: GroundingJob): Finding {
  const { connections } = job;
  const points = groundPoints(groundLinks(job));
  if (points.length > 1) return tooMany(points);
  const bond = points[0]?.links.find((link) => link.kind === 'rail-reference' && link.isWire);
  if (bond === undefined) return unbonded(job, points);
  if (connections.ampEarth !== 'verified') {
    return {
      ...RULE,
      level: connections.ampEarth === 'absent' ? 'hazard' : 'not assessed',
      what: `The circuit has one ground, the ${bond.name}, ${connections.ampEarth === 'absent' ? 'but the chassis has no protective earth' : 'but nobody has tested that the chassis has its protective earth'}.`,
      why: 'A bond to a chassis is a bond to earth only if the chassis is.',
      todo: connections.ampEarth === 'absent' ? 'Have protective earth fitted and verified first, or refuse the job.' : 'Measure the protective earth before anything else.',
      ...(connections.ampEarth === 'absent' ? { harm: 'shock' as const } : {}),
    };
  }
  return {
    ...RULE,
    level: 'within',
    what: `The circuit has one ground, the ${bond.name}, whose protective earth is verified.`,
    why: 'Leakage and a breakdown have somewhere to go, and no supply current has a second way.',
    todo: 'Keep that bond the only one.',
  };
}
