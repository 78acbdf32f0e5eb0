import type { MeterKind } from './meter-reading.ts';

/** Places and ways of measuring that the bench sheet knows; a job has those that its circuit has. */
export type TestPointId =
  | 'mains'
  | 'winding-open'
  | 'winding-loaded'
  | 'winding-loaded-averaging'
  | 'winding-amps'
  | 'reservoir-mean'
  | 'reservoir-ripple'
  | 'reservoir-ripple-averaging'
  | 'reservoir-ripple-peaks'
  | 'reservoir-valley'
  | 'ripple-frequency'
  | 'converter-output'
  | 'rail'
  | 'rail-ripple'
  | 'load-amps'
  | 'regulator-celsius'
  | 'winding-celsius'
  | 'coil-release'
  | 'ground-wire';

export interface TestPoint {
  readonly id: TestPointId;
  /** Where to put the probes and what to set the meter to. */
  readonly words: string;
  readonly unit: 'V' | 'A' | 'Hz' | '°C' | 's';
  /** A meter's range, or what else it takes. */
  readonly instrument: MeterKind | 'scope' | 'clamp' | 'thermometer' | 'resistance';
  /** Error of a hand-held instrument: ratio of reading, and a share that is always there, in the unit. Typical. */
  readonly error: { readonly ratio: number; readonly least: number };
  /** Figures that no circuit gives to more than an order of size. */
  readonly estimate?: true;
}

const DC = { ratio: 0.005, least: 0.01 } as const;
const AC = { ratio: 0.01, least: 0.01 } as const;
const RIPPLE = { ratio: 0.02, least: 0.003 } as const;

/** In the order in which a bench sheet takes them: mains side first, cold before hot. */
export const TEST_POINTS: readonly TestPoint[] = [
  { id: 'mains', words: 'Mains at the amp, on its own meter', unit: 'V', instrument: 'true-rms-ac', error: { ratio: 0.01, least: 0.3 } },
  { id: 'winding-open', words: 'Winding, rectifier unplugged', unit: 'V', instrument: 'true-rms-ac', error: AC },
  { id: 'winding-loaded', words: 'Winding, everything connected, true-RMS meter', unit: 'V', instrument: 'true-rms-ac', error: AC },
  { id: 'winding-loaded-averaging', words: 'Winding, everything connected, averaging meter', unit: 'V', instrument: 'averaging-ac', error: AC },
  { id: 'winding-amps', words: 'Winding current, RMS', unit: 'A', instrument: 'clamp', error: { ratio: 0.03, least: 0.02 } },
  { id: 'reservoir-mean', words: 'Reservoir, DC', unit: 'V', instrument: 'dc', error: DC },
  { id: 'reservoir-ripple', words: 'Reservoir, AC range, true-RMS meter', unit: 'V', instrument: 'true-rms-ac', error: RIPPLE },
  { id: 'reservoir-ripple-averaging', words: 'Reservoir, AC range, averaging meter', unit: 'V', instrument: 'averaging-ac', error: RIPPLE },
  { id: 'reservoir-ripple-peaks', words: 'Reservoir, ripple peak to peak, AC-coupled', unit: 'V', instrument: 'scope', error: { ratio: 0.03, least: 0.005 } },
  { id: 'reservoir-valley', words: 'Reservoir, lowest point of the ripple', unit: 'V', instrument: 'scope', error: { ratio: 0.03, least: 0.05 } },
  { id: 'ripple-frequency', words: 'Reservoir, frequency of the ripple', unit: 'Hz', instrument: 'scope', error: { ratio: 0.02, least: 1 } },
  { id: 'converter-output', words: 'Converter’s output, DC', unit: 'V', instrument: 'dc', error: DC },
  { id: 'rail', words: 'Rail at the load, DC', unit: 'V', instrument: 'dc', error: DC },
  { id: 'rail-ripple', words: 'Rail at the load, AC range, true-RMS meter', unit: 'V', instrument: 'true-rms-ac', error: RIPPLE, estimate: true },
  { id: 'load-amps', words: 'Rail current, DC', unit: 'A', instrument: 'dc', error: { ratio: 0.015, least: 0.001 } },
  { id: 'regulator-celsius', words: 'Regulator’s tab after half an hour', unit: '°C', instrument: 'thermometer', error: { ratio: 0, least: 3 }, estimate: true },
  { id: 'winding-celsius', words: 'Winding by its resistance after two hours', unit: '°C', instrument: 'resistance', error: { ratio: 0, least: 6 }, estimate: true },
  { id: 'coil-release', words: 'Coil current, time to a tenth after release', unit: 's', instrument: 'scope', error: { ratio: 0.05, least: 0.0003 } },
  { id: 'ground-wire', words: 'Along the ground wire to the star, AC range', unit: 'V', instrument: 'true-rms-ac', error: { ratio: 0.02, least: 0.0003 }, estimate: true },
];

/** The test point with this id. */
export function testPoint(id: TestPointId): TestPoint {
  const found = TEST_POINTS.find((point) => point.id === id);
  if (found === undefined) throw new RangeError(`no test point ${id}`);
  return found;
}

/** Values by test point; those that a circuit has not are missing. */
export type Readings = Readonly<Partial<Record<TestPointId, number>>>;
