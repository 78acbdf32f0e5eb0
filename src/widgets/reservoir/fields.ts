import { ELECTROLYTICS } from '../../compute/parts/capacitor.ts';
import type { FieldSet, ValuesOf } from '../shared/definition.ts';
import { diodeFields, mainsFields, reservoirFields, topologyField, windingFields } from '../shared/supply-fields.ts';

export const fields = {
  farads: { ...reservoirFields.farads, min: 220e-6, max: 47e-3, stepping: 'e6' },
  ratedVolts: reservoirFields.ratedVolts,
  type: { kind: 'choice', label: 'Kind of electrolytic', options: ELECTROLYTICS.map(({ id, name }) => ({ value: id, label: name })), default: 'general-105' },
  ratedRipple: { kind: 'quantity', label: 'Ripple rating of the part', unit: 'A', min: 0.02, max: 30, optional: true, blank: 'the least of its kind', assume: 'mA', stepping: 'e12', hint: 'RMS at 120 Hz, from its sheet' },
  polarity: { kind: 'choice', label: 'Its plus end', options: [{ value: 'right', label: 'to the rail’s plus' }, { value: 'wrong', label: 'to the rail’s minus' }], default: 'right' },
  airCelsius: { kind: 'quantity', label: 'Air around the reservoir', unit: '°C', default: 55, min: -10, max: 105, stepping: 5 },
  wantedSeconds: { kind: 'quantity', label: 'Hours it must last', unit: 's', default: 36e6, min: 360_000, max: 36e8, assume: 'h', stepping: 36e5, hint: 'a thousand a year is three hours a day' },
  ...windingFields,
  topology: topologyField,
  ...diodeFields,
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.111, min: 0.001, max: 10, assume: 'mA', stepping: 'e12', hint: 'DC, everything on' },
  floorVolts: { kind: 'quantity', label: 'Volts that the rail must not dip below', unit: 'V', default: 15.1, min: 0.5, max: 200, stepping: 0.5, hint: 'for a regulator: its highest output and its worst dropout' },
  ...mainsFields,
} as const satisfies FieldSet;

export type Values = ValuesOf<typeof fields>;

/** What others need to lead here: everything but the solver. */
export const reservoirFace = { id: 'reservoir', version: 1, question: 'How big a reservoir, of what rating, for how many hours?', fields } as const;
