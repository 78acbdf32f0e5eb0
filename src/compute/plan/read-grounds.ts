import type {
  Insulation,
  Jack,
  JackContact,
  OutsideGear,
  RailReference,
  RelayContacts,
  WindingCentre,
  WindingReference,
} from '../grounding/connections.ts';
import type { PlanGrounds } from './plan-types.ts';
import { flag, list, number, oneOf, optional, record, tagged, text } from './readers.ts';
import type { Reader } from './readers.ts';

/** Bounds within which a ground connection can be solved. */
const bondOhms = number({ min: 1e-5, max: 1000, unit: 'Ω' });
const partOhms = number({ min: 0.01, max: 1e8, unit: 'Ω' });
const partWatts = number({ min: 0.01, max: 1000, unit: 'W' });

const resistor = record({ ohms: partOhms, ratedWatts: partWatts });

/** `list` cannot say that there are exactly two; the tuple is made here. */
const twoResistors: Reader<readonly [{ ohms: number; ratedWatts: number }, { ohms: number; ratedWatts: number }]> = (value, path, reading) => {
  const [first, second] = list(resistor, { least: 2, most: 2 })(value, path, reading) ?? [];
  return first === undefined || second === undefined ? undefined : [first, second];
};

const centre: Reader<WindingCentre> = tagged('kind', {
  'centre-tap': record({}),
  'artificial-centre': record({ resistors: twoResistors }),
});

export const readWindingReference: Reader<WindingReference> = tagged('kind', {
  none: record({}),
  'centre-tap': record({}),
  'artificial-centre': record({ resistors: twoResistors }),
  'one-leg': record({ leg: oneOf(['first', 'second']) }),
  elevated: record({
    volts: number({ min: 1, max: 500, unit: 'V' }),
    centre,
    lowerOhms: partOhms,
    bypassFarads: optional(number({ min: 1e-9, max: 0.1, unit: 'F' })),
  }),
});

const insulationVolts = record({ workingVolts: number({ min: 1, max: 20_000, unit: 'V' }) });

export const readInsulation: Reader<Insulation> = tagged('kind', {
  unknown: record({}),
  'test-voltage-only': record({ testVolts: number({ min: 1, max: 20_000, unit: 'V' }) }),
  basic: insulationVolts,
  reinforced: insulationVolts,
});

const pole = oneOf(['negative', 'positive']);

const railReference: Reader<RailReference> = tagged('kind', {
  floating: record({}),
  bonded: record({ pole }),
  'through-resistance': record({ pole, ohms: partOhms, ratedWatts: optional(partWatts) }),
});

const throughOhms = record({ ohms: partOhms });

const contact: Reader<JackContact> = tagged('kind', {
  'rail-positive': record({}),
  'rail-negative': record({}),
  coil: throughOhms,
  logic: throughOhms,
  led: throughOhms,
  chassis: record({}),
  isolated: record({}),
});

const gear: Reader<OutsideGear> = tagged('kind', {
  none: record({}),
  'sleeve-to-earth': record({
    cableOhms: number({ min: 1e-4, max: 1e4, unit: 'Ω' }),
    earthOhms: number({ min: 1e-4, max: 1e4, unit: 'Ω' }),
    earthDifferenceVolts: optional(number({ min: 0, max: 300, unit: 'V' })),
  }),
  'isolated-contact': record({}),
  optocoupler: record({}),
});

const jack: Reader<Jack> = record({
  name: text({ most: 80 }),
  mounting: oneOf(['insulated', 'chassis']),
  tip: contact,
  sleeve: contact,
  touchable: flag,
  gear,
  pressed: optional(flag),
});

const relayContacts: Reader<RelayContacts> = record({
  name: text({ most: 80 }),
  work: tagged('at', {
    'high-tension': record({}),
    'output-anode': record({}),
    given: record({ volts: number({ min: 0, max: 10_000, unit: 'V' }) }),
  }),
  insulation: readInsulation,
});

export const readGrounds: Reader<PlanGrounds> = record({
  rail: railReference,
  jacks: list(jack, { most: 20 }),
  touchableControls: flag,
  relays: list(relayContacts, { most: 50 }),
  bondOhms: optional(bondOhms),
});
