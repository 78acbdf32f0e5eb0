import { InputError } from '../../compute/errors.ts';
import type { Insulation, Jack, WindingReference } from '../../compute/grounding/connections.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { linearRegulator } from '../../compute/parts/regulator-linear.ts';
import { BUCKS } from '../../compute/parts/regulator-switching.ts';
import { PLAN_VERSION, type Regulation, type SupplyPlan } from '../../compute/plan/plan-types.ts';
import type { ValuesOf } from '../shared/definition.ts';
import { railVoltsOf } from '../shared/stage-fields.ts';
import { mainsOf } from '../shared/supply-fields.ts';
import { PICKED, type fields } from './fields.ts';

export type Values = ValuesOf<typeof fields>;

const BALANCE = { ohms: 100, ratedWatts: 0.5 };
/** Lower resistor of the usual divider; what it is made of does not enter what is asked here. */
const LOWER_OHMS = 47_000;
const ARTIFICIAL = { kind: 'artificial-centre', resistors: [BALANCE, BALANCE] } as const;

function referenceOf({ reference, liftVolts }: Values): WindingReference {
  switch (reference) {
    case 'artificial-centre':
      return ARTIFICIAL;
    case 'one-leg':
      return { kind: 'one-leg', leg: 'first' };
    case 'elevated':
      return { kind: 'elevated', volts: liftVolts, centre: ARTIFICIAL, lowerOhms: LOWER_OHMS };
    default:
      return { kind: reference };
  }
}

const insulationOf = (kind: Values['insulation'], workingVolts: number): Insulation => (kind === 'unknown' ? { kind } : { kind, workingVolts });

/** The simplest way out of the amp: a jack whose tip is on the rail through some resistance. */
const JACK: Jack = { name: 'Footswitch', mounting: 'insulated', tip: { kind: 'logic', ohms: 4700 }, sleeve: { kind: 'rail-negative' }, touchable: true, gear: { kind: 'none' } };

const regulationOf = (id: string): Regulation => (id === 'none' ? 'none' : BUCKS.some((row) => row.id === id) ? 'buck' : linearRegulator(id).family);

/** Room is not asked for here; a plan must have some. */
const AMPLE = { lengthMetres: 0.3, widthMetres: 0.3, heightMetres: 0.3 };

/** The fields as a plan for a rail from the heater winding. */
export function planOf(values: Values): SupplyPlan {
  const { topology, diode, regulator, highVolts, insulation, transformerVoltAmps, presentVoltAmps } = values;
  const mains = mainsOf(values);
  if (transformerVoltAmps !== undefined && presentVoltAmps !== undefined && presentVoltAmps > 10 * transformerVoltAmps) {
    throw new InputError('presentVoltAmps', presentVoltAmps, { max: 10 * transformerVoltAmps });
  }
  return {
    version: PLAN_VERSION,
    name: 'Heater winding',
    mains,
    amp: {
      protectiveEarth: values.earth,
      highTensionVolts: highVolts,
      transformer: {
        ...(transformerVoltAmps === undefined ? {} : { ratedVoltAmps: transformerVoltAmps }),
        ...(presentVoltAmps === undefined ? {} : { presentVoltAmps }),
      },
      heater: {
        openCircuitVolts: values.windingVolts,
        ohms: values.windingOhms,
        ...(values.ratedAmps === undefined ? {} : { ratedAmps: values.ratedAmps }),
        basis: 'measured',
        reference: referenceOf(values),
        insulation: { fromMains: insulationOf(insulation, mains.highVolts), fromHighTension: insulationOf(insulation, 2 * highVolts) },
        heaters: values.heaters.map(({ name, volts, amps, count }) => ({ name: name.trim() === '' ? 'valve' : name, volts, amps, count })),
      },
      room: AMPLE,
      airCelsius: values.airCelsius,
    },
    loads: [{ kind: 'fixed-amps', name: 'The rail’s load', count: 1, amps: values.loadAmps }],
    rail: { volts: railVoltsOf(values), regulation: regulationOf(regulator) },
    approach: 'heater-winding',
    parts: {
      ...(topology === PICKED ? {} : { topology }),
      ...(diode === PICKED ? {} : { diode: diodePart(diode).id }),
      ...(regulator === 'none' ? {} : { regulator }),
    },
    protections: {},
    grounds: {
      rail: values.bond === 'floating' ? { kind: 'floating' } : { kind: 'bonded', pole: 'negative' },
      jacks: values.reach === 'outside' ? [JACK] : [],
      touchableControls: false,
      relays: [],
    },
  };
}
