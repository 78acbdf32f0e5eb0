import { HAND_HELD_METER } from '../../compute/parts/winding-readings.ts';
import type { FieldSet } from '../shared/definition.ts';

const mainsRead = { kind: 'quantity', unit: 'V', min: 80, max: 300, optional: true, blank: 'not read', stepping: 1 } as const;

export const fields = {
  purpose: {
    kind: 'choice', label: 'What the winding was made for',
    options: [
      { value: 'spare', label: 'spare low-voltage' }, { value: 'heater', label: 'heater' }, { value: 'rectifier-valve', label: 'rectifier-valve' }, { value: 'unknown', label: 'nobody knows what' },
    ],
    default: 'spare',
  },
  lighterVolts: { kind: 'quantity', label: 'Volts, little or no load', unit: 'V', default: 16.2, min: 0.5, max: 100, stepping: 0.1, hint: 'RMS, true-RMS meter' },
  lighterAmps: { kind: 'quantity', label: 'Current at that reading', unit: 'A', default: 0, min: 0, max: 50, assume: 'A', stepping: 0.1 },
  lighterMains: { ...mainsRead, label: 'Mains at that reading', default: 230 },
  heavierVolts: { kind: 'quantity', label: 'Volts, loaded', unit: 'V', default: 15.2, min: 0.5, max: 100, stepping: 0.1, hint: 'RMS, into a resistor' },
  heavierAmps: { kind: 'quantity', label: 'Current, loaded', unit: 'A', default: 2, min: 0.01, max: 50, assume: 'A', stepping: 0.1, hint: 'RMS' },
  heavierMains: { ...mainsRead, label: 'Mains, loaded', default: 229.5 },
  mainsVolts: { kind: 'quantity', label: 'Mains, nominal', unit: 'V', default: 230, min: 90, max: 260, stepping: 5 },
  mainsSpread: { kind: 'quantity', label: 'Mains, give or take', unit: '%', default: 0.1, min: 0, max: 0.2, stepping: 0.01 },
  voltsGain: { kind: 'quantity', label: 'Voltmeter, out by a share of the reading', unit: '%', default: HAND_HELD_METER.voltsGain, min: 0, max: 0.1, stepping: 0.001 },
  voltsCounts: { kind: 'quantity', label: 'Voltmeter, out by counts besides', unit: 'V', default: HAND_HELD_METER.voltsCounts, min: 0, max: 2, stepping: 0.01 },
  ampsGain: { kind: 'quantity', label: 'Current reading, out by', unit: '%', default: HAND_HELD_METER.ampsGain, min: 0, max: 0.2, stepping: 0.005 },
  ohmmeterOhms: { kind: 'quantity', label: 'Ohmmeter across the winding', unit: 'Ω', default: 0.3, min: 0, max: 500, optional: true, blank: 'not measured', stepping: 'e12', hint: 'leads subtracted' },
  proved: {
    kind: 'choice', label: 'Before the ohmmeter', options: [{ value: 'dead', label: 'proved dead' }, { value: 'not', label: 'not proved dead' }], default: 'dead',
  },
  ratedAmps: { kind: 'quantity', label: 'Rating of the winding', unit: 'A', min: 0.02, max: 50, optional: true, blank: 'a rating nobody knows', stepping: 'e12', hint: 'RMS' },
  carriedAmps: { kind: 'quantity', label: 'Carried already', unit: 'A', default: 0, min: 0, max: 50, stepping: 0.1, hint: 'RMS' },
  wantedAmps: { kind: 'quantity', label: 'Wanted besides', unit: 'A', default: 1.4, min: 0, max: 50, stepping: 0.1, hint: 'RMS, as the rectifier calculator gives it' },
} as const satisfies FieldSet;
