import { yCapacitorFarads } from '../parts/converter.ts';
import { THERMAL_VOLTS } from '../parts/diode.ts';
import { circuitNodes } from './ground-links.ts';
import type { CircuitNode, CircuitNodes, GroundLink } from './ground-links.ts';
import type { ConverterSupply, GroundingJob, WindingSupply } from './job.ts';
import type { Element } from '../network/elements.ts';

/** What a branch of the circuit is, for a drawing and for judging its current. */
export type BranchKind =
  | 'half-winding'
  | 'winding'
  | 'heaters'
  | 'diode'
  | 'reservoir'
  | 'load'
  | 'centre-resistor'
  | 'divider'
  | 'converter'
  | 'converter-coupling'
  | 'jack-contact'
  | 'ground-link';

/** One branch: an element of the circuit that the reader would recognise in the amp. */
export interface CircuitBranch {
  /** Stable name: `half-1`, `diode-first-to-positive`, `winding-reference`, … Also the element's name. */
  readonly id: string;
  readonly kind: BranchKind;
  /** In words, to follow "the". */
  readonly name: string;
  readonly from: CircuitNode;
  readonly to: CircuitNode;
}

/** A circuit ready to be solved, and what its elements stand for. */
export interface GroundingCircuit {
  readonly elements: readonly Element[];
  readonly branches: readonly CircuitBranch[];
  readonly nodes: CircuitNodes;
}

/** A silicon diode that has melted through, with its leads. Assumed. */
const SHORTED_DIODE_OHMS = 0.01;

/** From a converter's terminal to the rail: only for its current to be read. */
const CONVERTER_LEAD_OHMS = 1e-3;

/** Collects elements and what they are called, side by side. */
class Builder {
  readonly elements: Element[] = [];
  readonly branches: CircuitBranch[] = [];

  add(kind: BranchKind, name: string, element: Element): void {
    this.elements.push(element);
    this.branches.push({ id: element.name, kind, name, from: element.between[0], to: element.between[1] });
  }
}

const windingParts = (builder: Builder, supply: WindingSupply, nodes: CircuitNodes): void => {
  const peakVolts = supply.openCircuitVolts * Math.SQRT2;
  if (supply.hasCentreTap) {
    const half = { kind: 'sine', peakVolts: peakVolts / 2, ohms: supply.ohms / 2 } as const;
    builder.add('half-winding', 'first half of the winding', { ...half, name: 'half-1', between: [nodes.first, nodes.tap] });
    builder.add('half-winding', 'second half of the winding', { ...half, name: 'half-2', between: [nodes.tap, nodes.second] });
  } else {
    builder.add('winding', 'winding', { kind: 'sine', name: 'winding', between: [nodes.first, nodes.second], peakVolts, ohms: supply.ohms });
  }
  if (supply.heaterOhms !== undefined) {
    builder.add('heaters', 'valve heaters', { kind: 'resistor', name: 'heaters', between: [nodes.first, nodes.second], ohms: supply.heaterOhms });
  }
};

const rectifierParts = (builder: Builder, supply: WindingSupply, nodes: CircuitNodes): void => {
  const { saturationAmps, emission, ohms } = supply.diode;
  const diode = (leg: 'first' | 'second', pole: 'positive' | 'negative'): void => {
    const between: [string, string] = pole === 'positive' ? [nodes[leg], nodes.positive] : [nodes.negative, nodes[leg]];
    const name = pole === 'positive' ? `diode-${leg}-to-positive` : `diode-negative-to-${leg}`;
    const words = pole === 'positive' ? `diode from the winding's ${leg} end to the positive rail` : `diode from the negative rail to the winding's ${leg} end`;
    builder.add('diode', words, { kind: 'diode', name, between, saturationAmps, emission, ohms });
  };
  const reservoir = (name: string, words: string, between: [string, string]): void =>
    builder.add('reservoir', words, { kind: 'capacitor', name, between, farads: supply.reservoir.farads, ohms: supply.reservoir.ohms });
  diode('first', 'positive');
  switch (supply.topology) {
    case 'bridge':
      diode('second', 'positive');
      diode('first', 'negative');
      diode('second', 'negative');
      break;
    case 'centre-tap':
      diode('second', 'positive');
      break;
    case 'half-wave':
      break;
    case 'doubler':
      diode('first', 'negative');
      reservoir('reservoir-upper', 'upper reservoir', [nodes.positive, nodes.second]);
      reservoir('reservoir-lower', 'lower reservoir', [nodes.second, nodes.negative]);
      return;
  }
  reservoir('reservoir', 'reservoir', [nodes.positive, nodes.negative]);
};

/**
 * Constant voltage up to a current limit: a source of the limiting current whose surplus is taken off by a diode
 * into the output voltage. Only what it does at its two terminals is meant.
 */
const converterParts = (builder: Builder, job: GroundingJob, supply: ConverterSupply, nodes: CircuitNodes): void => {
  const clamp = { saturationAmps: 1e-9, emission: 1, ohms: 0.01 };
  const surplusAmps = Math.max(supply.limitAmps - supply.outputVolts / job.loadOhms, supply.limitAmps * 1e-3);
  const clampVolts = clamp.emission * THERMAL_VOLTS * Math.log1p(surplusAmps / clamp.saturationAmps) + surplusAmps * clamp.ohms;
  builder.elements.push(
    { kind: 'current', name: 'converter-limit', between: [nodes.negative, 'converter-inside'], amps: supply.limitAmps },
    { kind: 'diode', name: 'converter-regulation', between: ['converter-inside', 'regulated'], ...clamp },
    { kind: 'dc', name: 'converter-set-point', between: ['regulated', nodes.negative], volts: supply.outputVolts - clampVolts },
  );
  builder.add('converter', "converter's output", { kind: 'resistor', name: 'converter-output', between: ['converter-inside', nodes.positive], ohms: CONVERTER_LEAD_OHMS });
  const coupling = couplingOf(job);
  if (coupling) {
    builder.elements.push({ kind: 'sine', name: 'mains-behind-coupling', between: ['mains-side', 'ground'], peakVolts: coupling.volts * Math.SQRT2 });
    builder.add('converter-coupling', "converter's capacitance from the mains", {
      kind: 'capacitor',
      name: 'converter-coupling',
      between: ['mains-side', nodes.negative],
      farads: coupling.farads,
    });
  }
};

/**
 * Capacitance from the mains to a converter's output and the voltage that drives it: all of the mains for a capacitor
 * from the line, half of it for one from the middle. A rated leakage alone
 * (at 230 V 50 Hz, as data sheets have it) is taken as coming from the middle.
 * Nothing when there is no converter or nobody has read it.
 */
export function couplingOf(job: GroundingJob): { readonly farads: number; readonly volts: number } | undefined {
  const coupling = job.connections.converterCoupling;
  if (job.supply.kind !== 'converter' || !coupling || coupling.kind === 'unknown') return undefined;
  if (coupling.kind === 'y-capacitor') {
    return { farads: coupling.farads, volts: coupling.from === 'line' ? job.mainsVolts : job.mainsVolts / 2 };
  }
  // The printed current is what all of the mains drives; from the middle of it, twice the capacitance passes the same.
  return { farads: 2 * yCapacitorFarads({ leakageAmps: coupling.amps }), volts: job.mainsVolts / 2 };
}

/** What holds the winding's centre, whether or not it is grounded there. */
const centreParts = (builder: Builder, job: GroundingJob, nodes: CircuitNodes, grounded: boolean): void => {
  const { winding, highTensionVolts } = job.connections;
  const centre = winding.kind === 'elevated' ? winding.centre : winding;
  const centreNode = centre.kind === 'artificial-centre' ? 'centre' : nodes.tap;
  if (centre.kind === 'artificial-centre') {
    const resistor = (name: string, words: string, leg: CircuitNode, ohms: number): void =>
      builder.add('centre-resistor', words, { kind: 'resistor', name, between: [leg, 'centre'], ohms });
    resistor('centre-resistor-1', "centre resistor at the winding's first end", nodes.first, centre.resistors[0].ohms);
    resistor('centre-resistor-2', "centre resistor at the winding's second end", nodes.second, centre.resistors[1].ohms);
  }
  if (winding.kind !== 'elevated' || highTensionVolts === undefined || !grounded) return;
  const upperOhms = (winding.lowerOhms * (highTensionVolts - winding.volts)) / winding.volts;
  // The high voltage stands above the chassis, behind the upper resistor: one branch, chassis to centre.
  builder.add('divider', "divider's upper resistor, from the high voltage", {
    kind: 'dc',
    name: 'divider-upper',
    between: ['ground', centreNode],
    volts: -highTensionVolts,
    ohms: upperOhms,
  });
  if (winding.bypassFarads !== undefined) {
    builder.add('divider', "capacitor across the divider's lower resistor", {
      kind: 'capacitor',
      name: 'divider-bypass',
      between: [centreNode, 'ground'],
      farads: winding.bypassFarads,
    });
  }
};

/** Contacts that reach the rail through something, and a switch outside that joins tip and sleeve. */
const jackParts = (builder: Builder, job: GroundingJob, nodes: CircuitNodes): void => {
  for (const [index, jack] of job.connections.jacks.entries()) {
    if (jack.gear.kind === 'optocoupler') continue;
    for (const side of ['tip', 'sleeve'] as const) {
      const contact = jack[side];
      if (!('ohms' in contact)) continue;
      const name = `jack-${index + 1}-${side}`;
      builder.add('jack-contact', `${contact.kind} at the ${side} of ${jack.name}`, {
        kind: 'resistor',
        name,
        between: [nodes.positive, name],
        ohms: contact.ohms,
      });
    }
    const tip = contactNode(job, index, 'tip');
    const sleeve = contactNode(job, index, 'sleeve');
    if (!jack.pressed || jack.gear.kind === 'none' || tip === undefined || sleeve === undefined || tip === sleeve) continue;
    builder.add('jack-contact', `switch plugged into ${jack.name}`, {
      kind: 'resistor',
      name: `jack-${index + 1}-switch`,
      between: [tip, sleeve],
      // A small signal contact, at the most that its data sheet allows new.
      ohms: 0.1,
    });
  }
};

/** Node of the circuit that a contact of a jack is on; nothing for one that touches neither rail nor chassis. */
export function contactNode(job: GroundingJob, index: number, side: 'tip' | 'sleeve'): CircuitNode | undefined {
  const jack = job.connections.jacks[index];
  if (!jack || jack.gear.kind === 'optocoupler') return undefined;
  const nodes = circuitNodes(job);
  switch (jack[side].kind) {
    case 'rail-negative':
      return nodes.negative;
    case 'rail-positive':
      return nodes.positive;
    case 'chassis':
      return 'ground';
    case 'isolated':
      return undefined;
    default:
      return `jack-${index + 1}-${side}`;
  }
}

/**
 * The circuit of a job with the given links to the chassis made (all of them, or fewer for comparison) and with
 * further elements added: a meter, a hand, a breakdown.
 * Assumes: windings as a sine behind a resistance per half (no leakage inductance, no saturation), the load as a
 * resistance, wires as resistances. Range and errors: those of `checkJob`, which the caller has run.
 */
export function groundingCircuit(options: {
  readonly job: GroundingJob;
  readonly links: readonly GroundLink[];
  readonly extra?: readonly Element[];
  /** The lower resistor of an elevating divider has failed open. */
  readonly dividerOpen?: boolean;
  /** A diode, by its branch, that has failed as a short circuit. */
  readonly shortedDiode?: string;
}): GroundingCircuit {
  const { job, links, extra = [], dividerOpen = false, shortedDiode } = options;
  const { supply } = job;
  const nodes = circuitNodes(job);
  const builder = new Builder();
  if (supply.kind === 'winding') {
    windingParts(builder, supply, nodes);
    rectifierParts(builder, supply, nodes);
    centreParts(builder, job, nodes, links.some((link) => link.kind === 'winding-reference'));
  } else {
    converterParts(builder, job, supply, nodes);
  }
  builder.add('load', 'load on the rail', { kind: 'resistor', name: 'load', between: [nodes.positive, nodes.negative], ohms: job.loadOhms });
  jackParts(builder, job, nodes);
  for (const link of links) {
    if (dividerOpen && link.kind === 'winding-reference') continue;
    const gear = link.kind === 'outside-sleeve' ? job.connections.jacks[link.jack ?? -1]?.gear : undefined;
    const driven = gear?.kind === 'sleeve-to-earth' ? (gear.earthDifferenceVolts ?? 0) : 0;
    builder.add(
      'ground-link',
      link.name,
      driven > 0
        ? { kind: 'sine', name: link.id, between: [link.node, 'ground'], peakVolts: driven * Math.SQRT2, ohms: link.ohms }
        : { kind: 'resistor', name: link.id, between: [link.node, 'ground'], ohms: link.ohms },
    );
  }
  builder.elements.push(...extra);
  const elements = builder.elements.map((element): Element =>
    element.name === shortedDiode ? { kind: 'resistor', name: element.name, between: element.between, ohms: SHORTED_DIODE_OHMS } : element,
  );
  return { elements, branches: builder.branches, nodes };
}
