import { SHORT_CIRCUIT_MARKS, type ShortCircuitMark } from '../../compute/parts/transformer.ts';
import type { Face, FieldSet } from '../shared/definition.ts';
import { stageFields } from '../shared/stage-fields.ts';
import { diodeFields, mainsFields, topologyField } from '../shared/supply-fields.ts';

const MARK_LABELS: Readonly<Record<ShortCircuitMark, string>> = {
  'inherently-proof': 'bears a short for ever',
  'conditionally-proof': 'ends a short by a device inside',
  'not-proof': 'not proof against a short',
  'fail-safe': 'fails open and harmlessly',
  unknown: 'not read yet',
};

const marks = Object.keys(SHORT_CIRCUIT_MARKS) as readonly ShortCircuitMark[];

export const fields = {
  ...stageFields,
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.106, min: 0.001, max: 3, assume: 'mA', stepping: 'e12', hint: 'DC, everything on' },
  topology: topologyField,
  ...diodeFields,
  which: {
    kind: 'choice',
    label: 'Transformer',
    options: [{ value: 'pick', label: 'picked here' }, { value: 'this', label: 'the one in hand' }],
    default: 'pick',
  },
  secondaryVolts: { kind: 'quantity', label: 'One secondary, rated volts', unit: 'V', default: 15, min: 3, max: 60, stepping: 0.5, hint: 'RMS, at its rated load' },
  secondaries: {
    kind: 'choice',
    label: 'Secondaries',
    options: [
      { value: 'one', label: 'one secondary' },
      { value: 'two-in-series', label: 'two secondaries in series' },
      { value: 'two-in-parallel', label: 'two secondaries in parallel' },
    ],
    default: 'one',
    hint: 'a centre-tap pair takes two with their joint as the tap',
  },
  voltAmps: { kind: 'quantity', label: 'Size', unit: 'VA', default: 5, min: 0.5, max: 160, stepping: 'e6', hint: 'of the whole transformer' },
  rise: { kind: 'quantity', label: 'Rise unloaded', unit: '%', default: 0.3, min: 0.01, max: 0.7, stepping: 0.01, optional: true, blank: 'usual for its size', hint: 'over its rated volts' },
  freeEndVolts: { kind: 'quantity', label: 'Volts between the free ends', unit: 'V', min: 0, max: 200, optional: true, blank: 'not measured', stepping: 1, hint: 'one end of each joined, nothing behind' },
  madeFor: {
    kind: 'choice',
    label: 'Marked for',
    options: [{ value: 'both', label: '50/60 Hz' }, { value: '60', label: '60 Hz only' }, { value: '50', label: '50 Hz only' }],
    default: 'both',
  },
  mark: { kind: 'choice', label: 'Short-circuit marking', options: marks.map((value) => ({ value, label: MARK_LABELS[value] })), default: 'inherently-proof', hint: 'read on the part, never inferred' },
  ...mainsFields,
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
  heatsink: { kind: 'quantity', label: 'Heatsink, to the air', unit: 'K/W', default: 21, min: 0.5, max: 100, optional: true, blank: 'no heatsink', stepping: 'e6' },
} as const satisfies FieldSet;

/** What other calculators need to hand a case on to this one. */
export const windingPickFace = { id: 'winding-pick', version: 1, question: 'Which secondary voltage and VA should I buy?', fields } as const satisfies Face;
