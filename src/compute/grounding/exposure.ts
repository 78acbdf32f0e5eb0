import type { GroundConnections, Insulation, Jack } from './connections.ts';

/** A contact of the jack is on the rail, directly or through a coil, logic or an indicator. */
export const carriesRail = (jack: Jack): boolean =>
  jack.gear.kind !== 'optocoupler' && [jack.tip, jack.sleeve].some((contact) => contact.kind !== 'chassis' && contact.kind !== 'isolated');

/** The rail reaches a jack or metal that a hand can touch. */
export const reachesOutside = (connections: GroundConnections): boolean =>
  connections.touchableControls || connections.jacks.some(carriesRail);

/** Somebody vouches for reinforced insulation at this working voltage; an unknown working voltage is not vouched for. */
export const isReinforced = (insulation: Insulation, workingVolts: number | undefined): boolean =>
  insulation.kind === 'reinforced' && workingVolts !== undefined && insulation.workingVolts >= workingVolts;

/** Peak voltage across a relay's coil-to-contact insulation, or nothing when the high voltage is unknown. */
export function contactWorkingVolts(connections: GroundConnections, index: number): number | undefined {
  const relay = connections.relays[index];
  if (!relay) return undefined;
  if (relay.work.at === 'given') return relay.work.volts;
  if (connections.highTensionVolts === undefined) return undefined;
  // An output valve's anode swings to about twice the supply on the half cycle in which it is cut off.
  return relay.work.at === 'output-anode' ? 2 * connections.highTensionVolts : connections.highTensionVolts;
}

/**
 * The rail is proven separate: reinforced insulation from the mains, from the high voltage and across every relay that
 * switches more than extra-low voltage, each vouched for at its working voltage.
 */
export function isProvenSeparate(options: { readonly connections: GroundConnections; readonly mainsVolts: number }): boolean {
  const { connections, mainsVolts } = options;
  const { fromMains, fromHighTension } = connections.insulation;
  return (
    isReinforced(fromMains, mainsVolts) &&
    isReinforced(fromHighTension, connections.highTensionVolts) &&
    connections.relays.every((relay, index) => isReinforced(relay.insulation, contactWorkingVolts(connections, index)))
  );
}

/** Somebody vouches for at least basic insulation at its working voltage everywhere: enough to leave an internal rail floating. */
export function isInsulationKnown(options: { readonly connections: GroundConnections; readonly mainsVolts: number }): boolean {
  const { connections, mainsVolts } = options;
  const known = (insulation: Insulation, volts: number | undefined): boolean =>
    (insulation.kind === 'basic' || insulation.kind === 'reinforced') && volts !== undefined && insulation.workingVolts >= volts;
  return (
    known(connections.insulation.fromMains, mainsVolts) &&
    known(connections.insulation.fromHighTension, connections.highTensionVolts) &&
    connections.relays.every((relay, index) => known(relay.insulation, contactWorkingVolts(connections, index)))
  );
}
