import { InputError } from '../../compute/errors.ts';
import type { GroundConnections, Insulation, Jack, JackContact, RailReference, SupplyPoint, WindingCentre, WindingReference } from '../../compute/grounding/connections.ts';
import type { GroundingJob, GroundingSupply } from '../../compute/grounding/job.ts';
import { esrLimitOhms } from '../../compute/parts/capacitor.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { solveRectifier } from '../../compute/rectifier/solve-rectifier.ts';
import type { MainsState } from '../../compute/supplies/corners.ts';
import { mainsOf } from '../shared/supply-fields.ts';
import type { Values } from './fields.ts';
import { closedPoints, isRailOnSleeve, isWinding } from './points.ts';

const RESERVOIR_RATED_VOLTS = 25;

export const mainsVoltsAt = (values: Values, state: MainsState): number => {
  const { lowVolts, nominalVolts, highVolts } = mainsOf(values);
  return { low: lowVolts, nominal: nominalVolts, high: highVolts }[state];
};

function diodeOf(values: Values) {
  const part = diodePart(values.diode);
  const { saturationAmps, emission, ohms } = part.typical;
  return {
    saturationAmps, emission, ohms,
    ratedMeanAmps: part.averageAmps * part.capacitiveLoadFactor,
    surgeAmps: part.surgeAmps,
    // Makers differ; a warm chassis with no wind is at the far end.
    kelvinPerWatt: part.junctionToAmbient.max,
    maxJunctionCelsius: part.junctionMaxCelsius,
  };
}

const reservoirOf = ({ farads }: Values) => ({ farads, ohms: esrLimitOhms({ farads, ratedVolts: RESERVOIR_RATED_VOLTS }) });

/** The rail's volts over its amps at nominal mains with one ground: what the load is in a fault, whose amps are not known. */
export function loadOhmsOf(values: Values): { readonly volts: number; readonly ohms: number } {
  const { topology, loadAmps, railVolts, windingVolts, windingOhms } = values;
  if (!isWinding(values)) {
    if (loadAmps > values.limitAmps) throw new InputError('loadAmps', loadAmps, { expected: 'no more than the converter gives' });
    return { volts: railVolts, ohms: railVolts / loadAmps };
  }
  const halves = topology === 'centre-tap' ? 2 : 1;
  const { rail } = solveRectifier({
    topology,
    winding: { openCircuitVolts: windingVolts / halves, ohms: windingOhms / halves },
    hertz: mainsOf(values).hertz,
    diode: diodeOf(values),
    reservoir: reservoirOf(values),
    load: { amps: loadAmps },
  });
  if (rail.meanVolts < 0.2) throw new InputError('loadAmps', loadAmps, { expected: 'a load that this winding can feed' });
  return { volts: rail.meanVolts, ohms: rail.meanVolts / loadAmps };
}

function supplyOf(values: Values, state: MainsState): GroundingSupply {
  const { source, topology, centre, windingVolts, windingOhms, windingAmps, heaterAmps, heaterVolts } = values;
  if (source === 'converter') return { kind: 'converter', outputVolts: values.railVolts, limitAmps: values.limitAmps };
  const isHeater = source === 'heater-winding';
  return {
    kind: 'winding',
    windingKind: isHeater ? 'heater' : 'low-voltage',
    topology,
    openCircuitVolts: (windingVolts * mainsVoltsAt(values, state)) / values.mainsVolts,
    ohms: windingOhms,
    hasCentreTap: centre === 'tap' || topology === 'centre-tap',
    ...(windingAmps === undefined ? {} : { ratedAmps: windingAmps }),
    ...(isHeater && heaterAmps !== undefined ? { heaterOhms: heaterVolts / heaterAmps } : {}),
    diode: diodeOf(values),
    reservoir: reservoirOf(values),
  };
}

function centreOf(values: Values): WindingCentre {
  const resistor = { ohms: values.centreOhms, ratedWatts: values.centreWatts };
  return values.centre === 'resistors' ? { kind: 'artificial-centre', resistors: [resistor, resistor] } : { kind: 'centre-tap' };
}

/** The winding's own ground, and its other ends that are on the chassis as well. */
function windingGrounds(values: Values, highVolts: number | undefined): { readonly reference: WindingReference; readonly further: readonly SupplyPoint[] } {
  const closed = closedPoints(values);
  const ends = (['first', 'second'] as const).filter((leg) => closed.has(leg));
  if (closed.has('centre')) {
    const centre = centreOf(values);
    if (values.lift === 'straight') return { reference: centre, further: ends };
    if (highVolts === undefined) throw new InputError('highVolts', undefined, { expected: 'the B+ that the divider hangs on' });
    const lifted = { kind: 'elevated', volts: values.liftVolts, centre, lowerOhms: values.liftOhms } as const;
    return { reference: values.liftFarads === undefined ? lifted : { ...lifted, bypassFarads: values.liftFarads }, further: ends };
  }
  const [leg, ...others] = ends;
  return leg === undefined ? { reference: { kind: 'none' }, further: [] } : { reference: { kind: 'one-leg', leg }, further: others };
}

function railGrounds(values: Values): { readonly reference: RailReference; readonly further: readonly SupplyPoint[] } {
  const closed = closedPoints(values);
  if (!closed.has('negative')) return { reference: closed.has('positive') ? { kind: 'bonded', pole: 'positive' } : { kind: 'floating' }, further: [] };
  const reference: RailReference = values.bond === 'resistor' ? { kind: 'through-resistance', pole: 'negative', ohms: values.bondOhms } : { kind: 'bonded', pole: 'negative' };
  return { reference, further: closed.has('positive') ? ['positive'] : [] };
}

function jackOf(values: Values): Jack | undefined {
  const { jack, tipOhms, cableOhms, earthOhms } = values;
  if (jack === 'none') return undefined;
  const closed = closedPoints(values);
  const sleeves: Record<typeof jack, JackContact> = { negative: { kind: 'rail-negative' }, positive: { kind: 'rail-positive' }, chassis: { kind: 'chassis' } };
  return {
    name: 'Footswitch',
    mounting: closed.has('bush') && isRailOnSleeve(values) ? 'chassis' : 'insulated',
    // With the positive on the sleeve, the tip is the coil's low side, which a switch joins to it: nothing else is there.
    tip: jack === 'positive' ? { kind: 'isolated' } : { kind: 'logic', ohms: tipOhms },
    sleeve: sleeves[jack],
    touchable: true,
    gear: closed.has('gear') ? { kind: 'sleeve-to-earth', cableOhms, earthOhms } : { kind: 'none' },
  };
}

/** The insulation as somebody vouches for it, at the voltages that it works at here. */
function insulationOf(values: Values, workingVolts: number | undefined): Insulation {
  return values.insulation === 'unknown' || workingVolts === undefined ? { kind: 'unknown' } : { kind: values.insulation, workingVolts };
}

/** Every connection that the fields and switches stand for. */
function connectionsOf(values: Values): GroundConnections {
  const { highVolts, contacts, leakageAmps } = values;
  const winding = isWinding(values) ? windingGrounds(values, highVolts) : ({ reference: { kind: 'none' }, further: [] } as const);
  const rail = railGrounds(values);
  const jack = jackOf(values);
  const contactVolts = highVolts === undefined ? undefined : contacts === 'output-anode' ? 2 * highVolts : highVolts;
  return {
    winding: winding.reference,
    rail: rail.reference,
    furtherGrounds: [...winding.further, ...rail.further],
    jacks: jack === undefined ? [] : [jack],
    touchableControls: false,
    ampEarth: values.ampEarth,
    insulation: { fromMains: insulationOf(values, mainsVoltsAt(values, 'high')), fromHighTension: insulationOf(values, highVolts) },
    relays: [
      { name: 'its relays', work: contacts === 'signal' ? { at: 'given', volts: 0 } : { at: contacts }, insulation: insulationOf(values, contactVolts) },
    ],
    ...(highVolts === undefined ? {} : { highTensionVolts: highVolts }),
    ...(isWinding(values) ? {} : { converterCoupling: leakageAmps === undefined ? { kind: 'unknown' } : { kind: 'rated-leakage', amps: leakageAmps } }),
  };
}

/** The case as the grounding analysis takes it, at one state of the mains. */
export function jobOf(values: Values, state: MainsState, loadOhms: number): GroundingJob {
  const { mainsFuse, windingFuse, otherAmps, fuseKind: standard } = values;
  return {
    hertz: mainsOf(values).hertz,
    mainsVolts: mainsVoltsAt(values, state),
    ...(mainsFuse === undefined ? {} : { mainsFuse: { ratedAmps: mainsFuse, standard, otherAmps } }),
    ...(windingFuse === undefined || !isWinding(values) ? {} : { secondaryFuse: { ratedAmps: windingFuse, standard } }),
    supply: supplyOf(values, state),
    loadOhms,
    restsOn: ['typical', 'assumed'],
    connections: connectionsOf(values),
  };
}
