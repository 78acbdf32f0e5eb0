import { DIODES } from '../../compute/parts/diode.ts';
import type { Face, FieldSet } from '../shared/definition.ts';
import { stageFields } from '../shared/stage-fields.ts';
import { mainsFields } from '../shared/supply-fields.ts';

export const PICKED = 'picked';

export const fields = {
  windingVolts: { kind: 'quantity', label: 'Heater winding with nothing on it', unit: 'V', default: 6.7, min: 2, max: 30, stepping: 0.1, hint: 'RMS, measured at nominal mains' },
  windingOhms: { kind: 'quantity', label: 'Source resistance of the winding', unit: 'Ω', default: 0.1, min: 0.005, max: 10, stepping: 'e12', hint: 'from a load step, primary included' },
  ratedAmps: { kind: 'quantity', label: 'Rated current of the winding', unit: 'A', default: 4, min: 0.1, max: 30, optional: true, blank: 'nobody has read it', stepping: 0.5, hint: 'RMS' },
  heaters: {
    kind: 'rows',
    label: 'Valve heaters on the winding',
    noun: 'valve',
    row: {
      name: { kind: 'text', label: 'Valve', default: '12AX7', maxLength: 30 },
      count: { kind: 'quantity', label: 'How many', unit: '', default: 1, min: 1, max: 20, stepping: 1, whole: true },
      volts: { kind: 'quantity', label: 'Heater volts', unit: 'V', default: 6.3, min: 2, max: 30, stepping: 0.1 },
      amps: { kind: 'quantity', label: 'Heater current of one', unit: 'A', default: 0.3, min: 0.05, max: 5, stepping: 0.05 },
    },
    default: [
      { name: 'EL34', count: 2, amps: 1.5 },
      { name: '12AX7', count: 3, amps: 0.3 },
    ],
    min: 0,
    max: 10,
  },
  ...stageFields,
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.106, min: 0.001, max: 3, assume: 'mA', stepping: 'e12', hint: 'DC, everything on' },
  topology: {
    kind: 'choice',
    label: 'Rectifier',
    options: [{ value: PICKED, label: 'whichever rectifier' }, { value: 'bridge', label: 'a bridge' }, { value: 'doubler', label: 'a doubler' }],
    default: PICKED,
  },
  diode: { kind: 'choice', label: 'Diodes', options: [{ value: PICKED, label: 'whichever diodes' }, ...DIODES.map(({ id, name }) => ({ value: id, label: name }))], default: PICKED },
  reference: {
    kind: 'choice',
    label: 'What holds the heaters to the chassis',
    options: [
      { value: 'artificial-centre', label: 'two 100 Ω resistors' },
      { value: 'centre-tap', label: 'the winding’s centre tap' },
      { value: 'one-leg', label: 'one leg on the chassis' },
      { value: 'elevated', label: 'a divider that lifts them' },
      { value: 'none', label: 'nothing' },
    ],
    default: 'artificial-centre',
  },
  liftVolts: { kind: 'quantity', label: 'How far the heaters are lifted', unit: 'V', default: 45, min: 1, max: 150, stepping: 5, hint: 'DC above the chassis' },
  highVolts: { kind: 'quantity', label: 'B+ of the amp', unit: 'V', default: 420, min: 50, max: 900, stepping: 10, hint: 'unloaded' },
  bond: {
    kind: 'choice',
    label: 'The new rail’s negative',
    options: [{ value: 'floating', label: 'floats' }, { value: 'bonded', label: 'is bonded to the chassis' }],
    default: 'floating',
  },
  reach: {
    kind: 'choice',
    label: 'Where the new rail goes',
    options: [{ value: 'inside', label: 'stays entirely inside' }, { value: 'outside', label: 'reaches a jack or a hand' }],
    default: 'inside',
  },
  insulation: {
    kind: 'choice',
    label: 'Insulation of the winding from mains and B+',
    options: [{ value: 'unknown', label: 'nobody vouches for' }, { value: 'basic', label: 'somebody vouches for as basic' }, { value: 'reinforced', label: 'somebody vouches for as reinforced' }],
    default: 'unknown',
  },
  earth: {
    kind: 'choice',
    label: 'Protective earth of the chassis',
    options: [{ value: 'verified', label: 'is verified' }, { value: 'not-checked', label: 'has not been tested' }, { value: 'absent', label: 'is missing' }],
    default: 'verified',
  },
  transformerVoltAmps: { kind: 'quantity', label: 'Mains transformer, in all', unit: 'VA', default: 110, min: 10, max: 2000, optional: true, blank: 'not known', stepping: 10 },
  presentVoltAmps: { kind: 'quantity', label: 'What it feeds already', unit: 'VA', default: 92, min: 1, max: 2000, optional: true, blank: 'not known', stepping: 10 },
  ...mainsFields,
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
} as const satisfies FieldSet;

/** What other calculators need to hand a case on to this one. */
export const heaterBudgetFace = { id: 'heater-budget', version: 1, question: 'What is left on the heater winding, and what does a tap really cost it?', fields } as const satisfies Face;
