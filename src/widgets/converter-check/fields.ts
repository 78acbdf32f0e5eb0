import { CONVERTERS } from '../../compute/parts/converter.ts';
import type { Face, FieldSet } from '../shared/definition.ts';
import { stageFields } from '../shared/stage-fields.ts';
import { mainsFields } from '../shared/supply-fields.ts';

export const PICKED = 'picked';

export const fields = {
  module: { kind: 'choice', label: 'Converter', options: [{ value: PICKED, label: 'whichever module serves' }, ...CONVERTERS.map(({ id, name }) => ({ value: id, label: name }))], default: 'module-12w-12v' },
  startUp: {
    kind: 'choice',
    label: 'What its sheet says it does beyond its limit',
    options: [
      { value: 'unknown', label: 'not read: taken to hiccup' },
      { value: 'hiccup', label: 'hiccups' },
      { value: 'foldback', label: 'folds back' },
      { value: 'constant-current', label: 'holds its current' },
    ],
    default: 'unknown',
  },
  overload: { kind: 'quantity', label: 'Its limit, over its rating', unit: '%', default: 1.1, min: 1, max: 2.5, stepping: 0.05 },
  leakageAmps: { kind: 'quantity', label: 'Its leakage at 230 V', unit: 'A', min: 0, max: 5e-3, optional: true, blank: 'usual for its class', assume: 'mA', stepping: 5e-5, hint: 'printed as leakage or touch current' },
  maxLoadFarads: { kind: 'quantity', label: 'Most capacitance it starts into', unit: 'F', min: 1e-6, max: 0.1, optional: true, blank: 'usual for its class', assume: 'µF', stepping: 'e6' },
  minLoadAmps: { kind: 'quantity', label: 'Least load its sheet asks for', unit: 'A', min: 0, max: 1, optional: true, blank: 'usual for its class', assume: 'mA', stepping: 0.005 },
  ...stageFields,
  regulator: { ...stageFields.regulator, default: 'none' },
  setVolts: { ...stageFields.setVolts, default: 12, hint: 'where neither module nor regulator fixes it' },
  heaterVolts: { kind: 'quantity', label: 'Heaters, rated volts', unit: 'V', default: 12.6, min: 2, max: 40, stepping: 0.1, hint: 'of the string, if they stand in series' },
  heaterAmps: { kind: 'quantity', label: 'DC heaters on the rail, hot', unit: 'A', default: 0.3, min: 0, max: 5, assume: 'mA', stepping: 0.05 },
  coldRatio: { kind: 'quantity', label: 'Cold current of the heaters, over hot', unit: '', default: 6, min: 2, max: 7.5, stepping: 0.5, hint: '2.7 to 7.2 have been measured' },
  idleAmps: { kind: 'quantity', label: 'Lamps and logic, always on', unit: 'A', default: 0.024, min: 0, max: 5, assume: 'mA', stepping: 0.005 },
  switchedAmps: { kind: 'quantity', label: 'Relays, all of them on', unit: 'A', default: 0.167, min: 0, max: 5, assume: 'mA', stepping: 'e12' },
  railFarads: { kind: 'quantity', label: 'Capacitance across the rail', unit: 'F', default: 470e-6, min: 0, max: 0.05, assume: 'µF', stepping: 100e-6, hint: 'filters included' },
  earth: {
    kind: 'choice',
    label: 'Protective earth of the chassis',
    options: [{ value: 'verified', label: 'is verified' }, { value: 'not-checked', label: 'has not been tested' }, { value: 'absent', label: 'is missing' }],
    default: 'verified',
  },
  bond: {
    kind: 'choice',
    label: 'The output’s negative',
    options: [{ value: 'bonded', label: 'is bonded to the chassis once' }, { value: 'floating', label: 'floats' }],
    default: 'bonded',
  },
  reach: {
    kind: 'choice',
    label: 'Where the rail goes',
    options: [{ value: 'inside', label: 'stays entirely inside' }, { value: 'outside', label: 'reaches a jack or a hand' }],
    default: 'outside',
  },
  insulation: {
    kind: 'choice',
    label: 'Printed of its insulation from the mains',
    options: [{ value: 'test', label: 'only a test voltage' }, { value: 'reinforced', label: 'reinforced insulation' }],
    default: 'test',
  },
  creepageMetres: { kind: 'quantity', label: 'From mains to rail, along the surface', unit: 'm', default: 0.008, min: 0, max: 0.1, optional: true, blank: 'not measured', assume: 'm', stepping: 1e-3, hint: 'pins, solder and wire ends included' },
  ...mainsFields,
  mainsVolts: { ...mainsFields.mainsVolts, default: 230 },
  mainsHertz: { ...mainsFields.mainsHertz, default: '50' },
  airCelsius: { kind: 'quantity', label: 'Air about the module', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
} as const satisfies FieldSet;

/** What other calculators need to hand a case on to this one. */
export const converterCheckFace = { id: 'converter-check', version: 1, question: 'Will this converter start the load, stay cool and stay quiet?', fields } as const satisfies Face;
