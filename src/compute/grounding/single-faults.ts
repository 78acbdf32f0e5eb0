import type { Element } from '../network/elements.ts';
import { couplingOf } from './circuit.ts';
import type { CircuitNode, GroundLink } from './ground-links.ts';
import type { GroundingJob } from './job.ts';
import { isBeyondTouch, jackPotentials } from './jack-potentials.ts';
import type { ContactPotential } from './jack-potentials.ts';
import { BREAKDOWN_OHMS, TOUCH_DC_VOLTS } from './limits.ts';
import { LEVEL_INTERVALS, handFrom, handOnDcFrom, meterFrom, solveCircuit } from './solve-circuit.ts';

/** What flows through a hand. RMS of AC without the mean. */
export interface HandCurrent {
  readonly dcAmps: number;
  readonly acAmps: number;
  readonly peakAmps: number;
}

/** What a 10 MΩ meter reads between one terminal of the rail (or a chassis without earth) and the chassis or earth. */
export interface TouchReading {
  readonly dcVolts: number;
  /** RMS without the mean. */
  readonly acVolts: number;
  readonly peakVolts: number;
  /** What a hand in the meter's place then passes; solved only where the volts are beyond what may be touched. */
  readonly hand?: HandCurrent;
}

/** One failure tried out on the circuit as it is connected. */
export interface SingleFault {
  readonly kind: 'coil-to-contact' | 'winding-to-winding' | 'divider-open';
  /** Resistance of the breakdown; left out for a part that opens. */
  readonly ohms?: number;
  readonly touch: TouchReading;
  /** Current that the failure drives into the low-voltage circuit, mean, with no hand there. */
  readonly faultAmps: number;
  readonly contacts: readonly ContactPotential[];
}

const reading = (options: {
  readonly job: GroundingJob;
  readonly links: readonly GroundLink[];
  readonly node: CircuitNode;
  readonly extra: readonly Element[];
  readonly dividerOpen?: boolean;
  /** Element whose mean current is the fault's. */
  readonly through?: string;
  readonly hand: (node: CircuitNode) => readonly Element[];
}): { readonly touch: TouchReading; readonly faultAmps: number; readonly contacts: readonly ContactPotential[] } => {
  const { job, links, node, extra, dividerOpen = false, through, hand } = options;
  const intervals = LEVEL_INTERVALS;
  const metered = solveCircuit({ job, links, dividerOpen, intervals, extra: [...extra, ...meterFrom(node)] });
  const { mean, acRms, peak } = metered.figures(metered.volts(node));
  const touch: TouchReading = { dcVolts: mean, acVolts: acRms, peakVolts: peak };
  const contacts = jackPotentials(job, metered);
  const faultAmps = through === undefined ? 0 : Math.abs(metered.figures(metered.amps(through)).mean);
  if (!isBeyondTouch(touch) && !contacts.some(isBeyondTouch)) return { touch, faultAmps, contacts };
  const touched = solveCircuit({ job, links, dividerOpen, intervals, extra: [...extra, ...hand(node)] });
  const amps = touched.figures(touched.amps('hand'));
  return { touch: { ...touch, hand: { dcAmps: amps.mean, acAmps: amps.acRms, peakAmps: amps.peak } }, faultAmps, contacts };
};

/**
 * Leakage of a converter through its capacitance from the mains, met by a hand that bridges the rail (where it
 * floats) or the chassis (where the rail is bonded to one that has no earth) and earth.
 * Nothing for other supplies, for a rail bonded to an earthed chassis, or where nobody has read the coupling.
 */
export function leakageTouch(job: GroundingJob, links: readonly GroundLink[]): TouchReading | undefined {
  if (!couplingOf(job)) return undefined;
  if (links.length > 0 && job.connections.ampEarth !== 'absent') return undefined;
  return reading({ job, links: [], node: 'negative', extra: [], hand: handFrom }).touch;
}

/**
 * A single insulation breakdown from the high voltage into the low-voltage circuit: at a relay, from contact to coil
 * (onto the positive rail), or from winding to winding (onto the first end); the hand is on the rail's positive. The
 * high voltage is taken as a DC source behind the breakdown's resistance; its own sag is left out, so potentials are the
 * most that can be. Nothing when the high voltage is unknown: the caller names it instead.
 */
export function breakdowns(job: GroundingJob, links: readonly GroundLink[]): readonly SingleFault[] {
  const { highTensionVolts, relays } = job.connections;
  const ohms = job.breakdownOhms ?? BREAKDOWN_OHMS;
  const fault = (kind: SingleFault['kind'], node: CircuitNode, volts: number): SingleFault => {
    const extra: Element[] = [{ kind: 'dc', name: 'breakdown', between: [node, 'ground'], volts, ohms }];
    return { kind, ohms, ...reading({ job, links, node: 'positive', extra, through: 'breakdown', hand: handOnDcFrom }) };
  };
  const result: SingleFault[] = [];
  // An anode's swing above the supply is alternating; what it brings through a breakdown for good is the supply.
  const contactVolts = Math.max(0, ...relays.map((relay) => (relay.work.at === 'given' ? relay.work.volts : (highTensionVolts ?? 0))));
  if (contactVolts > TOUCH_DC_VOLTS.value) result.push(fault('coil-to-contact', 'positive', contactVolts));
  if (job.supply.kind === 'winding' && job.supply.ownTransformer !== true && highTensionVolts !== undefined) result.push(fault('winding-to-winding', 'first', highTensionVolts));
  return result;
}

/** The lower resistor of an elevating divider opens: winding and rail head for the high voltage. Nothing without elevation. */
export function dividerOpens(job: GroundingJob, links: readonly GroundLink[]): SingleFault | undefined {
  if (job.connections.winding.kind !== 'elevated') return undefined;
  return { kind: 'divider-open', ...reading({ job, links, node: 'positive', extra: [], dividerOpen: true, through: 'divider-upper', hand: handOnDcFrom }) };
}
