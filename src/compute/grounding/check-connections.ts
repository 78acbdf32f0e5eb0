import { InputError, requireNumber } from '../errors.ts';
import type { GroundConnections, Insulation, Jack, JackContact, SupplyPoint, WindingCentre } from './connections.ts';
import type { GroundingSupply } from './job.ts';

const PART_OHMS = { min: 0.01, max: 1e8 } as const;
/** Cable and earth wiring; nought is a path without resistance of its own. */
const PATH_OHMS = { min: 0, max: 1e6 } as const;

/** Throws `InputError` unless the value is one of those allowed: plans reach this module as JSON, unchecked by types. */
export function requireOneOf(quantity: string, value: unknown, allowed: readonly string[]): void {
  if (!allowed.includes(value as string)) throw new InputError(quantity, value, { expected: allowed.join(', ') });
}

const checkCentre = (centre: WindingCentre, supply: GroundingSupply): void => {
  if (centre.kind === 'artificial-centre') {
    for (const [index, resistor] of centre.resistors.entries()) {
      requireNumber(`connections.winding.resistors[${index}].ohms`, resistor.ohms, PART_OHMS);
      requireNumber(`connections.winding.resistors[${index}].ratedWatts`, resistor.ratedWatts, { min: 0.01, max: 1000 });
    }
  } else if (supply.kind !== 'winding' || !supply.hasCentreTap) {
    throw new InputError('connections.winding.kind', centre.kind, { expected: 'a winding that has a centre tap' });
  }
};

const checkInsulation = (quantity: string, insulation: Insulation): void => {
  requireOneOf(`${quantity}.kind`, insulation.kind, ['unknown', 'test-voltage-only', 'basic', 'reinforced']);
  if (insulation.kind === 'test-voltage-only') requireNumber(`${quantity}.testVolts`, insulation.testVolts, { min: 1, max: 1e5 });
  else if (insulation.kind !== 'unknown') requireNumber(`${quantity}.workingVolts`, insulation.workingVolts, { min: 1, max: 1e5 });
};

const checkContact = (quantity: string, contact: JackContact): void => {
  requireOneOf(`${quantity}.kind`, contact.kind, ['rail-positive', 'rail-negative', 'coil', 'logic', 'led', 'chassis', 'isolated']);
  if ('ohms' in contact) requireNumber(`${quantity}.ohms`, contact.ohms, PART_OHMS);
};

const checkJack = (jack: Jack, index: number): void => {
  checkContact(`connections.jacks[${index}].tip`, jack.tip);
  checkContact(`connections.jacks[${index}].sleeve`, jack.sleeve);
  requireOneOf(`connections.jacks[${index}].mounting`, jack.mounting, ['insulated', 'chassis']);
  requireOneOf(`connections.jacks[${index}].gear.kind`, jack.gear.kind, ['none', 'sleeve-to-earth', 'isolated-contact', 'optocoupler']);
  if (jack.gear.kind !== 'sleeve-to-earth') return;
  requireNumber(`connections.jacks[${index}].gear.cableOhms`, jack.gear.cableOhms, PATH_OHMS);
  requireNumber(`connections.jacks[${index}].gear.earthOhms`, jack.gear.earthOhms, PATH_OHMS);
  if (jack.gear.earthDifferenceVolts !== undefined) {
    requireNumber(`connections.jacks[${index}].gear.earthDifferenceVolts`, jack.gear.earthDifferenceVolts, { min: 0, max: 500 });
  }
};

/** A further ground at a point that this supply does not have, or the same one twice, is no circuit. */
const checkFurther = (further: readonly SupplyPoint[], { winding }: GroundConnections, supply: GroundingSupply): void => {
  const quantity = 'connections.furtherGrounds';
  if (new Set(further).size < further.length) throw new InputError(quantity, further, { expected: 'each point once' });
  const centre = winding.kind === 'elevated' ? winding.centre : winding;
  for (const point of further) {
    requireOneOf(quantity, point, ['first', 'tap', 'centre', 'second', 'negative', 'positive']);
    if (point === 'negative' || point === 'positive') continue;
    if (supply.kind !== 'winding') throw new InputError(quantity, point, { expected: 'negative or positive, since a converter has no winding to ground' });
    if (point === 'tap' && !supply.hasCentreTap) throw new InputError(quantity, point, { expected: 'a winding that has a centre tap' });
    if (point === 'centre' && centre.kind !== 'artificial-centre') throw new InputError(quantity, point, { expected: 'two resistors across the winding' });
  }
};

/** Throws `InputError` for connections that are out of range or that contradict the supply they belong to. */
export function checkConnections(connections: GroundConnections, supply: GroundingSupply): void {
  const { winding, rail, highTensionVolts, bondOhms, converterCoupling } = connections;
  requireOneOf('connections.winding.kind', winding.kind, ['none', 'centre-tap', 'artificial-centre', 'one-leg', 'elevated']);
  requireOneOf('connections.rail.kind', rail.kind, ['floating', 'bonded', 'through-resistance']);
  if (rail.kind !== 'floating') requireOneOf('connections.rail.pole', rail.pole, ['negative', 'positive']);
  if (winding.kind === 'one-leg') requireOneOf('connections.winding.leg', winding.leg, ['first', 'second']);
  if (winding.kind === 'elevated') requireOneOf('connections.winding.centre.kind', winding.centre.kind, ['centre-tap', 'artificial-centre']);
  requireOneOf('connections.ampEarth', connections.ampEarth, ['verified', 'absent', 'not-checked']);
  if (converterCoupling) requireOneOf('connections.converterCoupling.kind', converterCoupling.kind, ['y-capacitor', 'rated-leakage', 'unknown']);
  if (highTensionVolts !== undefined) requireNumber('connections.highTensionVolts', highTensionVolts, { min: 30, max: 3000 });
  if (bondOhms !== undefined) requireNumber('connections.bondOhms', bondOhms, { min: 1e-5, max: 1000 });
  if (winding.kind !== 'none' && supply.kind === 'converter') {
    throw new InputError('connections.winding.kind', winding.kind, { expected: 'none, since a converter has no winding to ground' });
  }
  if (winding.kind === 'centre-tap' || winding.kind === 'artificial-centre') checkCentre(winding, supply);
  if (winding.kind === 'elevated') {
    checkCentre(winding.centre, supply);
    if (highTensionVolts === undefined) {
      throw new InputError('connections.highTensionVolts', undefined, { expected: 'the high voltage that the divider is fed from' });
    }
    requireNumber('connections.winding.volts', winding.volts, { min: 0.1, max: highTensionVolts * 0.99 });
    requireNumber('connections.winding.lowerOhms', winding.lowerOhms, PART_OHMS);
    if (winding.bypassFarads !== undefined) {
      requireNumber('connections.winding.bypassFarads', winding.bypassFarads, { min: 1e-12, max: 1 });
    }
  }
  if (rail.kind === 'through-resistance') {
    requireNumber('connections.rail.ohms', rail.ohms, PART_OHMS);
    if (rail.ratedWatts !== undefined) requireNumber('connections.rail.ratedWatts', rail.ratedWatts, { min: 1e-2, max: 1000 });
  }
  if (converterCoupling?.kind === 'y-capacitor') {
    requireNumber('connections.converterCoupling.farads', converterCoupling.farads, { min: 1e-13, max: 1e-6 });
  }
  if (converterCoupling?.kind === 'rated-leakage') {
    requireNumber('connections.converterCoupling.amps', converterCoupling.amps, { min: 1e-9, max: 0.1 });
  }
  checkFurther(connections.furtherGrounds ?? [], connections, supply);
  checkInsulation('connections.insulation.fromMains', connections.insulation.fromMains);
  checkInsulation('connections.insulation.fromHighTension', connections.insulation.fromHighTension);
  for (const [index, jack] of connections.jacks.entries()) checkJack(jack, index);
  for (const [index, relay] of connections.relays.entries()) {
    checkInsulation(`connections.relays[${index}].insulation`, relay.insulation);
    requireOneOf(`connections.relays[${index}].work.at`, relay.work.at, ['high-tension', 'output-anode', 'given']);
    if (relay.work.at === 'given') requireNumber(`connections.relays[${index}].work.volts`, relay.work.volts, { min: 0, max: 1e5 });
  }
}
