import { RELAY_KINDS } from '../../compute/parts/relay.ts';
import type { Face, FieldSet } from '../shared/definition.ts';
import { stageFields } from '../shared/stage-fields.ts';
import { diodeFields, mainsFields, reservoirFields, topologyField, windingFields } from '../shared/supply-fields.ts';

export const fields = {
  ...windingFields,
  windingAmps: { ...windingFields.windingAmps, default: 2.5 },
  regulation: { ...windingFields.regulation, default: 0.08 },
  topology: topologyField,
  diode: { ...diodeFields.diode, default: '1n540x' },
  farads: { ...reservoirFields.farads, default: 4700e-6 },
  ...stageFields,
  regulator: { ...stageFields.regulator, default: '317' },
  setVolts: { ...stageFields.setVolts, default: 12.6 },
  outputFarads: { kind: 'quantity', label: 'Capacitor behind the regulator', unit: 'F', default: 100e-6, min: 1e-7, max: 0.02, assume: 'µF', stepping: 'e6' },
  heaterAmps: { kind: 'quantity', label: 'DC heaters on the rail, hot', unit: 'A', default: 0.3, min: 0, max: 5, assume: 'mA', stepping: 0.05 },
  coldRatio: { kind: 'quantity', label: 'Cold current of the heaters, over hot', unit: '', default: 6, min: 2, max: 7.5, stepping: 0.5, hint: '2.7 to 7.2 have been measured' },
  steadyAmps: { kind: 'quantity', label: 'Lamps and logic', unit: 'A', default: 0.024, min: 0, max: 5, assume: 'mA', stepping: 0.005 },
  coils: { kind: 'quantity', label: 'Relays on from the start', unit: '', default: 3, min: 0, max: 30, stepping: 1, whole: true },
  coilKind: { kind: 'choice', label: 'Kind of relay', options: RELAY_KINDS.map(({ id, name }) => ({ value: id, label: name })), default: 'power-400' },
  coilVolts: { kind: 'quantity', label: 'Coils, rated volts', unit: 'V', default: 12, min: 3, max: 60, stepping: 1 },
  ...mainsFields,
  mainsVolts: { ...mainsFields.mainsVolts, default: 230 },
  mainsHertz: { ...mainsFields.mainsHertz, default: '50' },
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
} as const satisfies FieldSet;

/** What other calculators need to hand a case on to this one. */
export const switchOnFace = { id: 'switch-on', version: 1, question: 'What happens in the first seconds?', fields } as const satisfies Face;
