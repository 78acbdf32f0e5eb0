/* Fields that several calculators ask for, and the parts that their values stand for. */
import { DIODES, diodePart } from '../../compute/parts/diode.ts';
import { windingFromRating } from '../../compute/parts/winding.ts';
import type { RectifierTopology } from '../../compute/rectifier/rectifier-types.ts';
import { chainDiode } from '../../compute/supplies/chain-parts.ts';
import type { ChainDiode, ChainWinding } from '../../compute/supplies/chain-types.ts';
import type { Mains } from '../../compute/supplies/corners.ts';
import type { ChoiceField, FieldSet } from './definition.ts';

export const mainsFields = {
  mainsVolts: { kind: 'quantity', label: 'Mains, nominal', unit: 'V', default: 120, min: 90, max: 260, stepping: 5 },
  mainsHertz: {
    kind: 'choice',
    label: 'Mains frequency',
    options: [{ value: '60', label: '60 Hz' }, { value: '50', label: '50 Hz' }],
    default: '60',
  },
  mainsSpread: { kind: 'quantity', label: 'Mains, give or take', unit: '%', default: 0.1, min: 0, max: 0.2, stepping: 0.01 },
} as const satisfies FieldSet;

/** The mains that the three fields stand for. */
export function mainsOf(values: { readonly mainsVolts: number; readonly mainsHertz: '60' | '50'; readonly mainsSpread: number }): Mains {
  const { mainsVolts, mainsSpread } = values;
  return {
    nominalVolts: mainsVolts,
    lowVolts: mainsVolts * (1 - mainsSpread),
    highVolts: mainsVolts * (1 + mainsSpread),
    hertz: Number(values.mainsHertz),
  };
}

export const windingFields = {
  windingVolts: { kind: 'quantity', label: 'Winding, rated volts', unit: 'V', default: 15, min: 1, max: 60, stepping: 0.5, hint: 'RMS, of one half for a centre tap' },
  windingAmps: { kind: 'quantity', label: 'Winding, rated current', unit: 'A', default: 0.333, min: 0.02, max: 20, assume: 'mA', stepping: 'e12', hint: 'RMS' },
  regulation: { kind: 'quantity', label: 'Rise of the winding unloaded', unit: '%', default: 0.3, min: 0.01, max: 0.7, stepping: 0.01, hint: 'over its rated volts' },
} as const satisfies FieldSet;

/** The winding that the three fields stand for. */
export function windingOf(values: { readonly windingVolts: number; readonly windingAmps: number; readonly regulation: number }): ChainWinding {
  const { windingVolts: ratedVolts, windingAmps: ratedAmps, regulation } = values;
  return { ...windingFromRating({ ratedVolts, ratedAmps, regulation }), ratedAmps, basis: 'rated' };
}

export const topologyField = {
  kind: 'choice',
  label: 'Rectifier',
  options: [
    { value: 'bridge', label: 'bridge' },
    { value: 'centre-tap', label: 'centre-tap pair' },
    { value: 'half-wave', label: 'single diode' },
    { value: 'doubler', label: 'doubler' },
  ],
  default: 'bridge',
} as const satisfies ChoiceField & { readonly options: readonly { readonly value: RectifierTopology; readonly label: string }[] };

const diodeField = {
  kind: 'choice',
  label: 'Diodes',
  options: DIODES.map(({ id, name }) => ({ value: id, label: name })),
  default: '1n400x',
} as const satisfies ChoiceField;

export const diodeFields = {
  diode: diodeField,
  diodeVolts: { kind: 'quantity', label: 'Reverse rating of each diode', unit: 'V', default: 100, min: 20, max: 1000, stepping: '1-2-5' },
} as const satisfies FieldSet;

/** A diode of the family, with the reverse rating of the type that is fitted. */
export function diodeOf(values: { readonly diode: string; readonly diodeVolts: number }): ChainDiode {
  return { ...chainDiode(diodePart(values.diode)), ratedReverseVolts: values.diodeVolts };
}

export const reservoirFields = {
  farads: { kind: 'quantity', label: 'Reservoir', unit: 'F', default: 470e-6, min: 10e-6, max: 0.1, assume: 'µF', stepping: 'e12', hint: 'each of the two for a doubler' },
  ratedVolts: { kind: 'quantity', label: 'Voltage rating of the reservoir', unit: 'V', default: 50, min: 6.3, max: 450, stepping: 1 },
} as const satisfies FieldSet;
