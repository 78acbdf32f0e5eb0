import { WIRES } from '../../compute/parts/wire.ts';
import type { FieldSet, ValuesOf } from '../shared/definition.ts';
import { diodeFields, mainsFields, reservoirFields, topologyField, windingFields } from '../shared/supply-fields.ts';

export const fields = {
  wire: { kind: 'choice', label: 'Wire', options: WIRES.map(({ id, name }) => ({ value: id, label: name })), default: 'awg-22' },
  metres: { kind: 'quantity', label: 'Length to the load, one way', unit: 'm', default: 0.4, min: 0.01, max: 20, assume: 'mm', stepping: '1-2-5' },
  laid: { kind: 'choice', label: 'How it is laid', options: [{ value: 'bundle', label: 'in a hot bundle' }, { value: 'open', label: 'by itself in open air' }], default: 'bundle' },
  airCelsius: { kind: 'quantity', label: 'Air about the wire', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
  limitCelsius: { kind: 'quantity', label: 'Insulation is good for', unit: '°C', default: 80, min: 60, max: 250, stepping: 5, hint: 'printed on the wire or its reel' },
  wantedVolts: { kind: 'quantity', label: 'Drop to the load, at most', unit: 'V', default: 0.1, min: 0.001, max: 5, assume: 'mV', stepping: '1-2-5' },
  fuseAmps: { kind: 'quantity', label: 'Fuse at the winding', unit: 'A', default: 1.6, min: 0.032, max: 20, optional: true, blank: 'nothing', stepping: 'e12' },
  wiring: {
    kind: 'choice', label: 'Where the rectifier returns',
    options: [{ value: 'shared', label: 'along the first stage’s ground wire' }, { value: 'own', label: 'straight to the reservoir’s minus' }],
    default: 'shared',
  },
  sharedMetres: { kind: 'quantity', label: 'Length that is shared', unit: 'm', default: 0.1, min: 0.005, max: 5, assume: 'mm', stepping: '1-2-5' },
  toleratedVolts: { kind: 'quantity', label: 'Noise put up with there', unit: 'V', default: 1e-4, min: 1e-6, max: 1, assume: 'µV', stepping: '1-2-5', hint: 'peak; a guitar gives about 100 mV' },
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.47, min: 0.001, max: 10, assume: 'mA', stepping: 'e12', hint: 'DC, everything on' },
  ...windingFields,
  windingAmps: { ...windingFields.windingAmps, default: 2.5 },
  regulation: { ...windingFields.regulation, default: 0.08 },
  topology: topologyField,
  ...diodeFields,
  diode: { ...diodeFields.diode, default: '1n540x' },
  farads: { ...reservoirFields.farads, default: 4700e-6 },
  mainsVolts: { ...mainsFields.mainsVolts, default: 230 },
  mainsHertz: { ...mainsFields.mainsHertz, default: '50' },
  mainsSpread: mainsFields.mainsSpread,
} as const satisfies FieldSet;

export type Values = ValuesOf<typeof fields>;

/** What others need to lead here: everything but the solver. */
export const wireDropFace = { id: 'wire-drop', version: 1, question: 'Which wire, and what does a shared ground wire inject?', fields } as const;
