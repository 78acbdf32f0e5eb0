import { DIODES } from '../../compute/parts/diode.ts';
import { FUSE_STANDARDS } from '../../compute/parts/fuse.ts';
import type { ChoiceField, FieldSet, ValuesOf } from '../shared/definition.ts';
import { mainsFields, topologyField } from '../shared/supply-fields.ts';

/** One way to the chassis: worked by a switch in the drawing and by a box in the list. */
const ground = (label: string, isClosed: boolean) =>
  ({ kind: 'choice', label, options: [{ value: 'open', label: 'open' }, { value: 'chassis', label: 'to the chassis' }], default: isClosed ? 'chassis' : 'open' }) as const satisfies ChoiceField;

/** The worked case is the Tarn 45’s heater winding as somebody may have found it: tapped, grounded there, and a rail hung on it and bonded. */
export const fields = {
  source: {
    kind: 'choice',
    label: 'What feeds the rail',
    options: [
      { value: 'heater-winding', label: 'the heater winding' },
      { value: 'spare-winding', label: 'a spare winding' },
      { value: 'separate-transformer', label: 'a small separate transformer' },
      { value: 'converter', label: 'a converter module' },
    ],
    default: 'heater-winding',
  },
  windingVolts: { kind: 'quantity', label: 'Winding, open-circuit volts', unit: 'V', default: 6.6, min: 1, max: 60, stepping: 0.1, hint: 'RMS, end to end, at nominal mains' },
  windingOhms: { kind: 'quantity', label: 'Winding, source resistance', unit: 'Ω', default: 0.07, min: 0.005, max: 500, stepping: 'e12', hint: 'end to end, primary included' },
  windingAmps: { kind: 'quantity', label: 'Winding, rated current', unit: 'A', default: 6, min: 0.02, max: 30, stepping: 'e12', optional: true, blank: 'nobody knows' },
  centre: {
    kind: 'choice',
    label: 'Centre of the winding',
    options: [{ value: 'tap', label: 'a centre tap' }, { value: 'resistors', label: 'two resistors across it' }, { value: 'none', label: 'no centre' }],
    default: 'tap',
  },
  centreOhms: { kind: 'quantity', label: 'Each of the two resistors', unit: 'Ω', default: 100, min: 1, max: 10_000, stepping: 'e12' },
  centreWatts: { kind: 'quantity', label: 'Rating of each resistor', unit: 'W', default: 0.5, min: 0.1, max: 20, stepping: '1-2-5' },
  lift: {
    kind: 'choice',
    label: 'From the centre to the chassis',
    options: [{ value: 'straight', label: 'by a wire' }, { value: 'lifted', label: 'through a divider that lifts it' }],
    default: 'straight',
  },
  liftVolts: { kind: 'quantity', label: 'Lifted by', unit: 'V', default: 45, min: 5, max: 120, stepping: 5 },
  liftOhms: { kind: 'quantity', label: 'Lower resistor of the divider', unit: 'Ω', default: 47_000, min: 1000, max: 1e6, stepping: 'e12' },
  liftFarads: { kind: 'quantity', label: 'Capacitor across it', unit: 'F', default: 47e-6, min: 1e-7, max: 1e-3, assume: 'µF', stepping: 'e6', optional: true, blank: 'none' },
  heaterAmps: { kind: 'quantity', label: 'Valve heaters on the same winding', unit: 'A', default: 3, min: 0.1, max: 20, stepping: 0.5, optional: true, blank: 'no heaters', hint: 'hot' },
  heaterVolts: { kind: 'quantity', label: 'Rated volts of the heaters', unit: 'V', default: 6.3, min: 1, max: 40, stepping: 0.1 },
  topology: topologyField,
  diode: { kind: 'choice', label: 'Diodes', options: DIODES.map(({ id, name }) => ({ value: id, label: name })), default: '1n5820-22' },
  farads: { kind: 'quantity', label: 'Reservoir', unit: 'F', default: 4700e-6, min: 100e-6, max: 0.05, assume: 'µF', stepping: 'e6', hint: 'each of the two for a doubler' },
  windingFuse: { kind: 'quantity', label: 'Fuse at the winding’s first end', unit: 'A', min: 0.032, max: 10, stepping: 'e6', optional: true, blank: 'no fuse' },
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.2, min: 0.001, max: 10, assume: 'mA', stepping: 'e12', hint: 'DC, at nominal mains with one ground' },
  railVolts: { kind: 'quantity', label: 'Output of the converter', unit: 'V', default: 12, min: 3, max: 60, stepping: 1 },
  limitAmps: { kind: 'quantity', label: 'Into a short it gives', unit: 'A', default: 0.46, min: 0.02, max: 20, stepping: 'e12' },
  leakageAmps: { kind: 'quantity', label: 'Leakage of the converter', unit: 'A', default: 0.3e-3, min: 1e-6, max: 0.01, assume: 'mA', stepping: 'e6', optional: true, blank: 'not read', hint: 'RMS at 230 V 50 Hz, off its sheet' },
  bond: {
    kind: 'choice',
    label: 'From the rail’s negative to the chassis',
    options: [{ value: 'wire', label: 'a wire' }, { value: 'resistor', label: 'a resistor' }],
    default: 'wire',
  },
  bondOhms: { kind: 'quantity', label: 'That resistor', unit: 'Ω', default: 100, min: 0.5, max: 1e6, stepping: 'e12' },
  jack: {
    kind: 'choice',
    label: 'Jack for a footswitch',
    options: [
      { value: 'none', label: 'no jack' },
      { value: 'negative', label: 'a jack, its sleeve on the rail’s negative' },
      { value: 'positive', label: 'a jack, its sleeve on the rail’s positive' },
      { value: 'chassis', label: 'a jack, its sleeve on the chassis' },
    ],
    default: 'none',
  },
  tipOhms: { kind: 'quantity', label: 'From the rail’s positive to its tip', unit: 'Ω', default: 4700, min: 10, max: 1e6, stepping: 'e12' },
  cableOhms: { kind: 'quantity', label: 'Cable of what is plugged in', unit: 'Ω', default: 0.2, min: 0, max: 100, stepping: 'e6' },
  earthOhms: { kind: 'quantity', label: 'Its earth, back to this amp’s', unit: 'Ω', default: 0.3, min: 0, max: 1000, stepping: 'e6' },
  ampEarth: {
    kind: 'choice',
    label: 'Protective earth of the chassis',
    options: [{ value: 'verified', label: 'verified' }, { value: 'not-checked', label: 'not checked' }, { value: 'absent', label: 'not there' }],
    default: 'verified',
  },
  highVolts: { kind: 'quantity', label: 'B+ with no load', unit: 'V', default: 450, min: 60, max: 1500, stepping: 10, optional: true, blank: 'not known' },
  insulation: {
    kind: 'choice',
    label: 'Insulation of the rail from mains and B+',
    options: [
      { value: 'unknown', label: 'vouched for by nobody' },
      { value: 'basic', label: 'vouched for as basic' },
      { value: 'reinforced', label: 'vouched for as reinforced' },
    ],
    default: 'unknown',
    hint: 'at these voltages',
  },
  contacts: {
    kind: 'choice',
    label: 'Contacts of its relays',
    options: [{ value: 'signal', label: 'small signals' }, { value: 'high-tension', label: 'B+' }, { value: 'output-anode', label: 'an output anode' }],
    default: 'signal',
  },
  ...mainsFields,
  mainsVolts: { ...mainsFields.mainsVolts, default: 230 },
  mainsHertz: { ...mainsFields.mainsHertz, default: '50' },
  mainsFuse: { kind: 'quantity', label: 'Mains fuse', unit: 'A', default: 2, min: 0.1, max: 10, stepping: 'e6', optional: true, blank: 'not read' },
  fuseKind: { kind: 'choice', label: 'Standard of the fuses', options: FUSE_STANDARDS.map(({ id, name }) => ({ value: id, label: name })), default: 'iec-sheet-5' },
  otherAmps: { kind: 'quantity', label: 'What the rest of the amp draws from the mains', unit: 'A', default: 0.55, min: 0, max: 10, stepping: 0.05 },
  groundFirst: ground('Winding, first end', false),
  groundCentre: ground('Winding, centre', true),
  groundSecond: ground('Winding, second end', false),
  groundNegative: ground('Rail, negative', true),
  groundPositive: ground('Rail, positive', false),
  groundBush: ground('Bush of the jack', false),
  groundGear: ground('Sleeve of what is plugged in, by its own earth', false),
} as const satisfies FieldSet;

export type Values = ValuesOf<typeof fields>;
