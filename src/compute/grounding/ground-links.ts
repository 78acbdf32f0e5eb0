import type { GroundConnections, RailPole, SupplyPoint } from './connections.ts';
import type { GroundingJob } from './job.ts';
import { PROTECTIVE_BOND_OHMS } from './limits.ts';

/** A short wire from the circuit to the chassis, when the plan does not say: a few centimetres of hook-up wire and two joints. */
export const BOND_OHMS = 1e-3;

/** A node of the circuit that solves the grounding; `ground` is the chassis. */
export type CircuitNode = string;

/** One path from the low-voltage circuit to the chassis. */
export interface GroundLink {
  /** Also the name of the branch that carries its current: `winding-reference`, `rail-reference`, `further-second`, `jack-1-bush`, `jack-1-outside`. */
  readonly id: string;
  readonly kind: 'winding-reference' | 'rail-reference' | 'further' | 'jack-bush' | 'outside-sleeve';
  /** In words, to follow "the": "grounded centre tap", "rail's negative bonded to the chassis". */
  readonly name: string;
  /** How to take it away, as an instruction. */
  readonly removal: string;
  readonly node: CircuitNode;
  /** Resistance of the path itself; the divider's lower resistor for an elevated winding. */
  readonly ohms: number;
  /** A wire good enough for a protective bond, rather than something with a resistance of its own. */
  readonly isWire: boolean;
  /** Which jack it belongs to, by position. */
  readonly jack?: number;
}

/** Which nodes the winding and the rail have in a circuit; for some topologies two of them are the same point. */
export interface CircuitNodes {
  readonly first: CircuitNode;
  readonly second: CircuitNode;
  readonly tap: CircuitNode;
  readonly positive: CircuitNode;
  readonly negative: CircuitNode;
}

/**
 * Names of the nodes. The half-wave rectifier's negative is the winding's second end, the centre-tap rectifier's
 * negative is the tap: grounding one grounds the other, which is no second ground.
 */
export function circuitNodes(job: GroundingJob): CircuitNodes {
  const { supply } = job;
  const topology = supply.kind === 'winding' ? supply.topology : undefined;
  return {
    first: 'first',
    second: topology === 'half-wave' ? 'negative' : 'second',
    tap: topology === 'centre-tap' ? 'negative' : 'tap',
    positive: 'positive',
    negative: 'negative',
  };
}

const isBond = (ohms: number): boolean => ohms <= PROTECTIVE_BOND_OHMS.value;

const poleName = (pole: RailPole): string => (pole === 'negative' ? "rail's negative" : "rail's positive");

const windingLink = (connections: GroundConnections, nodes: CircuitNodes, bond: number): GroundLink | undefined => {
  const { winding } = connections;
  const base = { id: 'winding-reference', kind: 'winding-reference', ohms: bond, isWire: isBond(bond) } as const;
  switch (winding.kind) {
    case 'none':
      return undefined;
    case 'centre-tap':
      return { ...base, node: nodes.tap, name: 'grounded centre tap of the winding', removal: "lift the winding's centre tap from the chassis and insulate its end" };
    case 'artificial-centre':
      return { ...base, node: 'centre', name: 'grounded centre of the two resistors across the winding', removal: 'lift the joint of the two resistors from the chassis' };
    case 'one-leg':
      return {
        ...base,
        node: nodes[winding.leg],
        name: `grounded ${winding.leg} end of the winding`,
        removal: `lift the ${winding.leg} end of the winding from the chassis`,
      };
    case 'elevated':
      return {
        ...base,
        node: winding.centre.kind === 'centre-tap' ? nodes.tap : 'centre',
        ohms: winding.lowerOhms,
        isWire: false,
        name: 'divider that lifts the winding above the chassis',
        removal: "take the divider off the winding's centre and insulate the end that comes from the high voltage",
      };
  }
};

const railLink = (connections: GroundConnections, nodes: CircuitNodes, bond: number): GroundLink | undefined => {
  const { rail } = connections;
  if (rail.kind === 'floating') return undefined;
  const isWire = rail.kind === 'bonded';
  return {
    id: 'rail-reference',
    kind: 'rail-reference',
    node: nodes[rail.pole],
    ohms: isWire ? bond : rail.ohms,
    isWire: isWire && isBond(bond),
    name: isWire ? `bond of the ${poleName(rail.pole)} to the chassis` : `resistance from the ${poleName(rail.pole)} to the chassis`,
    removal: `take the ${poleName(rail.pole)} off the chassis`,
  };
};

const FURTHER: Record<SupplyPoint, { readonly name: string; readonly point: string }> = {
  first: { name: 'wire from the first end of the winding to the chassis', point: 'first end of the winding' },
  tap: { name: "wire from the winding's centre tap to the chassis", point: "winding's centre tap" },
  centre: { name: 'wire from the joint of the two resistors to the chassis', point: 'joint of the two resistors' },
  second: { name: 'wire from the second end of the winding to the chassis', point: 'second end of the winding' },
  negative: { name: "wire from the rail's negative to the chassis", point: "rail's negative" },
  positive: { name: "wire from the rail's positive to the chassis", point: "rail's positive" },
};

const furtherLinks = (connections: GroundConnections, nodes: CircuitNodes, bond: number): readonly GroundLink[] =>
  (connections.furtherGrounds ?? []).map((point) => ({
    id: `further-${point}`,
    kind: 'further',
    node: point === 'centre' ? 'centre' : nodes[point],
    ohms: bond,
    isWire: isBond(bond),
    name: FURTHER[point].name,
    removal: `take the ${FURTHER[point].point} off the chassis`,
  }));

/** Node that a jack's sleeve is on, or nothing when the sleeve is no part of the rail. */
export function sleeveNode(job: GroundingJob, index: number): CircuitNode | undefined {
  const jack = job.connections.jacks[index];
  if (!jack || jack.gear.kind === 'optocoupler') return undefined;
  const nodes = circuitNodes(job);
  switch (jack.sleeve.kind) {
    case 'rail-negative':
      return nodes.negative;
    case 'rail-positive':
      return nodes.positive;
    case 'chassis':
    case 'isolated':
      return undefined;
    default:
      return `jack-${index + 1}-sleeve`;
  }
}

/**
 * Every path from the low-voltage circuit to the chassis that the connections make, the winding's first, then the
 * rail's, then the jacks'. An outside box's sleeve is a path only if this amp is earthed (an earth that nobody has
 * checked is taken to be there, which is the worse case for a second ground).
 */
export function groundLinks(job: GroundingJob): readonly GroundLink[] {
  const { connections } = job;
  const nodes = circuitNodes(job);
  const bond = connections.bondOhms ?? BOND_OHMS;
  const links: GroundLink[] = [];
  const winding = windingLink(connections, nodes, bond);
  if (winding) links.push(winding);
  const rail = railLink(connections, nodes, bond);
  if (rail) links.push(rail);
  links.push(...furtherLinks(connections, nodes, bond));
  for (const [index, jack] of connections.jacks.entries()) {
    const node = sleeveNode(job, index);
    if (node === undefined) continue;
    if (jack.mounting === 'chassis') {
      links.push({
        id: `jack-${index + 1}-bush`,
        kind: 'jack-bush',
        node,
        ohms: bond,
        isWire: isBond(bond),
        jack: index,
        name: `bush of the ${jack.name} jack on the chassis`,
        removal: `fit an insulated jack at ${jack.name}`,
      });
    }
    if (jack.gear.kind === 'sleeve-to-earth' && connections.ampEarth !== 'absent') {
      links.push({
        id: `jack-${index + 1}-outside`,
        kind: 'outside-sleeve',
        node,
        ohms: Math.max(jack.gear.cableOhms + jack.gear.earthOhms, bond),
        isWire: false,
        jack: index,
        name: `sleeve of what is plugged into ${jack.name}, by way of its own earth`,
        removal: `meet the outside box at ${jack.name} through an isolated contact or an optocoupler`,
      });
    }
  }
  return links;
}

/** Links that meet the circuit at one and the same node: electrically one ground, however many wires. */
export interface GroundPoint {
  readonly node: CircuitNode;
  readonly links: readonly GroundLink[];
}

/** The links gathered by the point of the circuit that they ground. More than one point is one too many. */
export function groundPoints(links: readonly GroundLink[]): readonly GroundPoint[] {
  const byNode = new Map<CircuitNode, GroundLink[]>();
  for (const link of links) {
    const there = byNode.get(link.node);
    if (there) there.push(link);
    else byNode.set(link.node, [link]);
  }
  return [...byNode].map(([node, gathered]) => ({ node, links: gathered }));
}
