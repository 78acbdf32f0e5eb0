import { InputError } from '../../compute/errors.ts';
import type { GroundConnections, Insulation, Jack, JackContact, OutsideGear, RailReference, WindingReference } from '../../compute/grounding/connections.ts';
import type { GroundingJob, GroundingSupply } from '../../compute/grounding/job.ts';
import { esrLimitOhms } from '../../compute/parts/capacitor.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { solveRectifier } from '../../compute/rectifier/solve-rectifier.ts';
import { mainsOf } from '../shared/supply-fields.ts';
import type { Values } from './fields.ts';

/** The rectifier that a winding is taken to have: 3 A silicon diodes and 4700 µF. Assumed. */
const DIODE = diodePart('1n540x');
const RESERVOIR = { farads: 4700e-6, ohms: esrLimitOhms({ farads: 4700e-6, ratedVolts: 25 }) };

/** Share of the volts that a winding has at high mains. */
const highRatio = (values: Values): number => mainsOf(values).highVolts / values.mainsVolts;

/** The rail that a jack may show, and the load as a resistance: at high mains, everything else on. */
export function railOf(values: Values): { readonly volts: number; readonly loadOhms: number } {
  const { feed, railVolts, loadAmps, limitAmps } = values;
  if (feed === 'converter') {
    if (loadAmps > limitAmps) throw new InputError('loadAmps', loadAmps, { expected: 'no more than the supply gives' });
    return { volts: railVolts, loadOhms: railVolts / loadAmps };
  }
  const { rail } = solveRectifier({
    topology: 'bridge', hertz: mainsOf(values).hertz, diode: DIODE.typical, reservoir: RESERVOIR, load: { amps: loadAmps },
    winding: { openCircuitVolts: values.windingVolts * highRatio(values), ohms: values.windingOhms },
  });
  if (rail.meanVolts < 0.5) throw new InputError('loadAmps', loadAmps, { expected: 'a load that this winding can feed' });
  return { volts: rail.meanVolts, loadOhms: rail.meanVolts / loadAmps };
}

function supplyOf(values: Values): GroundingSupply {
  const { feed, windingVolts, windingOhms, windingGround } = values;
  if (feed === 'converter') return { kind: 'converter', outputVolts: values.railVolts, limitAmps: values.limitAmps };
  const { saturationAmps, emission, ohms } = DIODE.typical;
  return {
    kind: 'winding', windingKind: feed, topology: 'bridge', openCircuitVolts: windingVolts * highRatio(values), ohms: windingOhms,
    hasCentreTap: windingGround === 'centre-tap' || windingGround === 'elevated',
    diode: { saturationAmps, emission, ohms, ratedMeanAmps: DIODE.averageAmps * DIODE.capacitiveLoadFactor, surgeAmps: DIODE.surgeAmps },
    reservoir: RESERVOIR,
  };
}

function windingReference(values: Values): WindingReference {
  const resistor = { ohms: 100, ratedWatts: 0.5 };
  switch (values.windingGround) {
    case 'artificial-centre':
      return { kind: 'artificial-centre', resistors: [resistor, resistor] };
    case 'one-leg':
      return { kind: 'one-leg', leg: 'second' };
    case 'elevated':
      if (values.highVolts === undefined) throw new InputError('highVolts', undefined, { expected: 'the B+ that the divider hangs on' });
      return { kind: 'elevated', volts: values.liftVolts, centre: { kind: 'centre-tap' }, lowerOhms: 47_000, bypassFarads: 47e-6 };
    default:
      return { kind: values.windingGround };
  }
}

const RAILS: Record<Values['railGround'], (values: Values) => RailReference> = {
  bonded: () => ({ kind: 'bonded', pole: 'negative' }),
  floating: () => ({ kind: 'floating' }),
  resistor: ({ bondOhms }) => ({ kind: 'through-resistance', pole: 'negative', ohms: bondOhms }),
};

/** What a contact is wired to, the resistor at the jack included. */
function contactOf(kind: Values['tip'] | Values['ring'], ohms: number, entryOhms: number): JackContact {
  if (kind === 'none') return { kind: 'isolated' };
  if (kind === 'rail-positive') return entryOhms > 0 ? { kind: 'logic', ohms: Math.max(0.01, entryOhms) } : { kind: 'rail-positive' };
  return { kind, ohms: ohms + entryOhms };
}

function gearOf(values: Values): OutsideGear {
  const { gear, cableOhms, earthOhms, earthVolts } = values;
  if (gear === 'sleeve-to-earth') return { kind: gear, cableOhms: cableOhms / 2, earthOhms, earthDifferenceVolts: earthVolts };
  // A footswitch without a supply is a dry contact, whatever its box is made of.
  return gear === 'footswitch' || gear === 'isolated-contact' ? { kind: 'isolated-contact' } : { kind: gear };
}

/** How far the plug is in, and what the foot does. */
export type Moment = 'unplugged' | 'plugged' | 'pressed';

function jacksOf(values: Values, moment: Moment): readonly Jack[] {
  const { tip, tipOhms, ring, ringOhms, sleeve, entryOhms, mounting } = values;
  const gear = gearOf(values);
  const plugged: OutsideGear = moment === 'unplugged' && gear.kind !== 'optocoupler' ? { kind: 'none' } : gear;
  const switched = moment === 'pressed' && gear.kind !== 'none' ? { pressed: true } : {};
  const jack: Jack = { name: 'Footswitch', mounting, touchable: true, tip: contactOf(tip, tipOhms, entryOhms), sleeve: { kind: sleeve }, gear: plugged, ...switched };
  if (ring === 'none') return [jack];
  // A jack has one sleeve: its ring stands as a contact of its own, with no second way to the chassis or outside.
  const second: Jack = { name: 'Footswitch ring', mounting: 'insulated', touchable: true, tip: contactOf(ring, ringOhms, entryOhms), sleeve: { kind: 'isolated' }, gear: gear.kind === 'optocoupler' ? gear : { kind: 'none' } };
  return [jack, second];
}

const insulationOf = ({ insulation }: Values, workingVolts: number | undefined): Insulation =>
  insulation === 'unknown' || workingVolts === undefined ? { kind: 'unknown' } : { kind: insulation, workingVolts };

function connectionsOf(values: Values, moment: Moment): GroundConnections {
  const { feed, highVolts, contacts, leakageAmps } = values;
  const contactVolts = highVolts === undefined ? undefined : contacts === 'output-anode' ? 2 * highVolts : highVolts;
  return {
    winding: feed === 'converter' ? { kind: 'none' } : windingReference(values),
    rail: RAILS[values.railGround](values),
    jacks: jacksOf(values, moment),
    touchableControls: false,
    ampEarth: values.ampEarth,
    insulation: { fromMains: insulationOf(values, mainsOf(values).highVolts), fromHighTension: insulationOf(values, highVolts) },
    relays: [{ name: 'its relays', work: contacts === 'signal' ? { at: 'given', volts: 0 } : { at: contacts }, insulation: insulationOf(values, contactVolts) }],
    ...(highVolts === undefined ? {} : { highTensionVolts: highVolts }),
    ...(feed === 'converter' ? { converterCoupling: leakageAmps === undefined ? { kind: 'unknown' } : { kind: 'rated-leakage', amps: leakageAmps } } : {}),
  };
}

/** The case as the grounding analysis takes it, at high mains. */
export function jobOf(values: Values, moment: Moment, loadOhms: number): GroundingJob {
  const mains = mainsOf(values);
  return { hertz: mains.hertz, mainsVolts: mains.highVolts, supply: supplyOf(values), loadOhms, restsOn: ['typical', 'assumed'], connections: connectionsOf(values, moment) };
}

/** The same with nothing on the chassis and no earth: what is felt once the bond, or the earth, is lost. */
export const withoutBond = (job: GroundingJob): GroundingJob => ({
  ...job,
  connections: { ...job.connections, rail: { kind: 'floating' }, jacks: job.connections.jacks.map((jack) => ({ ...jack, mounting: 'insulated', gear: jack.gear.kind === 'optocoupler' ? jack.gear : { kind: 'none' } })) },
});
