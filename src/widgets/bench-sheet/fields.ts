import { RELAY_KINDS } from '../../compute/parts/relay.ts';
import { TEST_POINTS, type TestPointId } from '../../compute/tolerance/test-points.ts';
import type { Face, FieldSet } from '../shared/definition.ts';
import { stageFields } from '../shared/stage-fields.ts';
import { diodeFields, mainsFields, reservoirFields, topologyField, windingFields } from '../shared/supply-fields.ts';

type Unit = 'V' | 'A' | 'Hz' | '°C' | 's';

/** A reading: blank until somebody has taken it. */
interface ReadingField {
  readonly kind: 'quantity';
  readonly label: string;
  readonly unit: Unit;
  readonly min: number;
  readonly max: number;
  readonly default?: number;
  readonly optional: true;
  readonly blank: string;
}

const MOST: Readonly<Record<Unit, number>> = { V: 600, A: 100, Hz: 1000, '°C': 400, s: 10 };

/** Mains has a field of its own: the day's, which all the rest is held against. */
const EXAMPLE: Partial<Record<TestPointId, number>> = { 'winding-open': 19.8, 'reservoir-mean': 20.2, 'reservoir-ripple': 1.45, 'reservoir-ripple-averaging': 1.4, rail: 12.04 };

const READ_APART: readonly TestPointId[] = ['mains'];

export const READ_POINTS = TEST_POINTS.filter(({ id }) => !READ_APART.includes(id));

const reading = (id: TestPointId, label: string, unit: Unit): ReadingField => {
  const given = EXAMPLE[id];
  return { kind: 'quantity', label, unit, min: 0, max: MOST[unit], optional: true, blank: 'not read', ...(given === undefined ? {} : { default: given }) };
};

const readings = Object.fromEntries(READ_POINTS.map(({ id, words, unit }) => [id, reading(id, words, unit)])) as Readonly<Record<Exclude<TestPointId, 'mains'>, ReadingField>>;

/** Every reading still to be taken: how another calculator, or a lesson, opens the sheet on a supply of its own. */
export const blankReadings: Readonly<Record<string, ''>> = Object.fromEntries(READ_POINTS.map(({ id }) => [id, ''] as const));

export const fields = {
  mainsRead: { kind: 'quantity', label: 'Mains of the day, as read', unit: 'V', default: 121, min: 60, max: 300, optional: true, blank: 'not read', stepping: 1 },
  ...mainsFields,
  meter: { kind: 'choice', label: 'Meter', options: [{ value: 'true-rms', label: 'a true-RMS meter' }, { value: 'averaging', label: 'an averaging meter' }], default: 'true-rms' },
  scope: { kind: 'choice', label: 'Oscilloscope', options: [{ value: 'no', label: 'no scope' }, { value: 'yes', label: 'a scope' }], default: 'no' },
  feed: { kind: 'choice', label: 'What feeds the rail', options: [{ value: 'winding', label: 'a winding' }, { value: 'converter', label: 'a converter' }], default: 'winding' },
  ...windingFields,
  topology: topologyField,
  diode: diodeFields.diode,
  farads: reservoirFields.farads,
  converterVolts: { kind: 'quantity', label: 'Converter’s output', unit: 'V', default: 12, min: 3, max: 48, stepping: 1 },
  converterAmps: { kind: 'quantity', label: 'Converter’s limit', unit: 'A', default: 1.1, min: 0.05, max: 10, stepping: 0.1 },
  ...stageFields,
  heatsink: { kind: 'quantity', label: 'Heatsink, to the air', unit: 'K/W', default: 21, min: 0.5, max: 100, optional: true, blank: 'no heatsink', stepping: 'e6' },
  loadAmps: { kind: 'quantity', label: 'Load on during the readings', unit: 'A', default: 0.076, min: 0, max: 5, assume: 'mA', stepping: 'e12' },
  coilKind: { kind: 'choice', label: 'Relay that is let go', options: [{ value: 'none', label: 'no relay' }, ...RELAY_KINDS.map(({ id, name }) => ({ value: id, label: name }))], default: 'none' },
  coilVolts: { kind: 'quantity', label: 'Coil, rated volts', unit: 'V', default: 12, min: 3, max: 60, stepping: 1 },
  zenerVolts: { kind: 'quantity', label: 'Zener in series with its diode', unit: 'V', min: 2.4, max: 100, optional: true, blank: 'a bare diode', stepping: 'e12' },
  groundMetres: { kind: 'quantity', label: 'Ground wire to the star, 0.5 mm²', unit: 'm', min: 0.02, max: 5, optional: true, blank: 'not looked at', stepping: 0.05 },
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 35, min: -10, max: 100, stepping: 5 },
  ...readings,
} as const satisfies FieldSet;

/** What other calculators need to hand a case on to this one. */
export const benchSheetFace = { id: 'bench-sheet', version: 1, question: 'What should I read, where, with which meter?', fields } as const satisfies Face;
