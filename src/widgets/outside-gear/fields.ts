import { OPTOCOUPLERS } from '../../compute/parts/optocoupler.ts';
import type { ChoiceField, FieldSet, ValuesOf } from '../shared/definition.ts';
import { mainsFields } from '../shared/supply-fields.ts';

const CONTACTS = [
  { value: 'coil', label: 'a relay coil' },
  { value: 'logic', label: 'a logic input’s pull-up' },
  { value: 'led', label: 'an indicator' },
] as const satisfies ChoiceField['options'];

/** The worked case is the Fennel 100’s: three relays on a converter, and the player’s own switcher on a jack. */
export const fields = {
  feed: {
    kind: 'choice', label: 'What feeds the rail',
    options: [
      { value: 'converter', label: 'a converter module' },
      { value: 'low-voltage', label: 'a low-voltage winding' },
      { value: 'heater', label: 'the heater winding' },
    ],
    default: 'converter',
  },
  railVolts: { kind: 'quantity', label: 'Rail', unit: 'V', default: 12, min: 3, max: 60, stepping: 1 },
  limitAmps: { kind: 'quantity', label: 'Most that it gives', unit: 'A', default: 0.46, min: 0.01, max: 20, assume: 'mA', stepping: 'e12', hint: 'beyond that the rail falls' },
  loadAmps: { kind: 'quantity', label: 'Load besides', unit: 'A', default: 0.12, min: 0.001, max: 10, assume: 'mA', stepping: 'e12' },
  leakageAmps: { kind: 'quantity', label: 'Leakage of the converter', unit: 'A', default: 0.3e-3, min: 1e-6, max: 0.01, assume: 'mA', stepping: 'e6', optional: true, blank: 'not read', hint: 'RMS at 230 V 50 Hz, off its sheet' },
  windingVolts: { kind: 'quantity', label: 'Winding, open-circuit volts', unit: 'V', default: 10, min: 2, max: 60, stepping: 0.5, hint: 'RMS, end to end, at nominal mains; the rail is then what a bridge and a reservoir make of it' },
  windingOhms: { kind: 'quantity', label: 'Winding, source resistance', unit: 'Ω', default: 0.5, min: 0.01, max: 200, stepping: 'e12' },
  windingGround: {
    kind: 'choice', label: 'Ground of the winding itself',
    options: [
      { value: 'none', label: 'no ground' },
      { value: 'centre-tap', label: 'its tap on the chassis' },
      { value: 'artificial-centre', label: 'two resistors of 100 Ω to the chassis' },
      { value: 'one-leg', label: 'one end on the chassis' },
      { value: 'elevated', label: 'its tap lifted by a divider from B+' },
    ],
    default: 'none',
  },
  liftVolts: { kind: 'quantity', label: 'Lifted by', unit: 'V', default: 45, min: 5, max: 120, stepping: 5 },
  railGround: {
    kind: 'choice', label: 'Rail’s negative',
    options: [{ value: 'bonded', label: 'bonded to the chassis' }, { value: 'resistor', label: 'on the chassis through a resistor' }, { value: 'floating', label: 'left floating' }],
    default: 'bonded',
  },
  bondOhms: { kind: 'quantity', label: 'That resistor', unit: 'Ω', default: 100, min: 0.5, max: 1e6, stepping: 'e12' },
  ampEarth: {
    kind: 'choice', label: 'Protective earth of the chassis',
    options: [{ value: 'verified', label: 'verified' }, { value: 'not-checked', label: 'not checked' }, { value: 'absent', label: 'not there' }],
    default: 'verified',
  },
  mounting: { kind: 'choice', label: 'Jack', options: [{ value: 'insulated', label: 'insulated from the panel' }, { value: 'chassis', label: 'bolted bare to the panel' }], default: 'insulated' },
  tip: { kind: 'choice', label: 'On the tip', options: [...CONTACTS, { value: 'rail-positive', label: 'the rail’s positive itself' }], default: 'coil' },
  tipOhms: { kind: 'quantity', label: 'Resistance of what is on the tip', unit: 'Ω', default: 360, min: 5, max: 1e6, stepping: 'e12' },
  ring: { kind: 'choice', label: 'On the ring', options: [{ value: 'none', label: 'nothing' }, ...CONTACTS, { value: 'rail-positive', label: 'the rail’s positive itself' }], default: 'none' },
  ringOhms: { kind: 'quantity', label: 'Resistance of what is on the ring', unit: 'Ω', default: 2200, min: 5, max: 1e6, stepping: 'e12' },
  sleeve: {
    kind: 'choice', label: 'On the sleeve',
    options: [
      { value: 'rail-negative', label: 'the rail’s negative' },
      { value: 'rail-positive', label: 'the rail’s positive' },
      { value: 'chassis', label: 'the chassis' },
      { value: 'isolated', label: 'nothing of the rail' },
    ],
    default: 'rail-negative',
  },
  entryOhms: { kind: 'quantity', label: 'Resistor at the jack, in each contact', unit: 'Ω', default: 10, min: 0, max: 100_000, stepping: 'e12' },
  entryWatts: { kind: 'quantity', label: 'Rating of that resistor', unit: 'W', default: 0.25, min: 0.05, max: 10, stepping: '1-2-5' },
  entryFarads: { kind: 'quantity', label: 'Capacitor at the input', unit: 'F', default: 100e-9, min: 0, max: 100e-6, assume: 'nF', stepping: 'e6' },
  gear: {
    kind: 'choice', label: 'Plugged in',
    options: [
      { value: 'none', label: 'nothing' },
      { value: 'footswitch', label: 'a footswitch, no supply of its own' },
      { value: 'sleeve-to-earth', label: 'a box whose sleeve is on its own earth' },
      { value: 'isolated-contact', label: 'a box with a dry, isolated contact' },
      { value: 'optocoupler', label: 'a box that drives an optocoupler in the amp' },
    ],
    default: 'sleeve-to-earth',
  },
  cableMetres: { kind: 'quantity', label: 'Cable, length', unit: 'm', default: 6, min: 0.1, max: 100, stepping: 1 },
  cableOhms: { kind: 'quantity', label: 'Cable, there and back', unit: 'Ω', default: 0.5, min: 0.01, max: 100, stepping: 'e6' },
  cableFarads: { kind: 'quantity', label: 'Cable, for each metre', unit: 'F', default: 100e-12, min: 1e-12, max: 10e-9, assume: 'pF', stepping: 'e6', hint: 'about 100 pF, typical' },
  earthOhms: { kind: 'quantity', label: 'Its earth, back to this amp’s', unit: 'Ω', default: 0.3, min: 0.001, max: 1000, stepping: 'e6', hint: 'through the building' },
  earthVolts: { kind: 'quantity', label: 'Between the two earths', unit: 'V', default: 0.05, min: 0, max: 50, stepping: '1-2-5', hint: 'RMS at mains frequency, before they are joined' },
  part: { kind: 'choice', label: 'Optocoupler', options: OPTOCOUPLERS.map(({ id, name }) => ({ value: id, label: name })), default: '817b' },
  driveVolts: { kind: 'quantity', label: 'The box drives it with', unit: 'V', default: 9, min: 2, max: 48, stepping: 1 },
  driveSpread: { kind: 'quantity', label: 'That, give or take', unit: '%', default: 0.1, min: 0, max: 0.4, stepping: 0.01 },
  ledAmps: { kind: 'quantity', label: 'Current of its LED', unit: 'A', default: 0.005, min: 2e-4, max: 0.05, assume: 'mA', stepping: 'e12' },
  pullOhms: { kind: 'quantity', label: 'Its output pulls down', unit: 'Ω', default: 10_000, min: 100, max: 1e6, stepping: 'e12', hint: 'a resistance to the rail' },
  highVolts: { kind: 'quantity', label: 'B+ with no load', unit: 'V', default: 470, min: 60, max: 1500, stepping: 10, optional: true, blank: 'not known' },
  insulation: {
    kind: 'choice', label: 'Insulation of the rail from mains and B+',
    options: [
      { value: 'unknown', label: 'vouched for by nobody' },
      { value: 'basic', label: 'vouched for as basic' },
      { value: 'reinforced', label: 'vouched for as reinforced' },
    ],
    default: 'basic', hint: 'at these voltages',
  },
  contacts: {
    kind: 'choice', label: 'Contacts of its relays',
    options: [{ value: 'signal', label: 'small signals' }, { value: 'high-tension', label: 'B+' }, { value: 'output-anode', label: 'an output anode' }],
    default: 'signal',
  },
  ...mainsFields,
  mainsVolts: { ...mainsFields.mainsVolts, default: 240 },
  mainsHertz: { ...mainsFields.mainsHertz, default: '50' },
} as const satisfies FieldSet;

export type Values = ValuesOf<typeof fields>;
