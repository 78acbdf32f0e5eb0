import type { Source } from '../findings.ts';
import type { CurvePoint } from './interpolate.ts';
import type { CatalogueRow } from './row.ts';

/** Standard rated voltages of small aluminium electrolytics. */
export const RATED_VOLTS: readonly number[] = [6.3, 10, 16, 25, 35, 50, 63, 100];

/** Largest tan δ at 120 Hz and 20 °C by rated volts, to 1000 µF; 0.02 more for every further 1000 µF. */
export const TAN_DELTA: readonly CurvePoint[] = [
  [6.3, 0.23], [10, 0.2], [16, 0.16], [25, 0.14], [35, 0.12], [50, 0.1], [63, 0.09], [100, 0.08],
];
export const TAN_DELTA_PER_MILLIFARAD = 0.02;
export const TAN_DELTA_SOURCE: Source = { id: 'ds-electrolytic-general' };

/**
 * Capacitance tolerance new, and what the life test allows besides: a further fifth of capacitance gone, tan δ (so
 * ESR) doubled.
 */
export const CAPACITANCE_TOLERANCE = 0.2;
export const END_OF_LIFE = { capacitanceFactor: 0.8, esrFactor: 2 } as const;

/** Surge voltage over rated; and the most a polarised part bears backwards, volts. */
export const SURGE_FACTOR = 1.15;
export const REVERSE_MAX_VOLTS = 1.5;

/** What a part of this class is really like, over its ESR limit: new parts measure a third to two thirds. */
export const TYPICAL_ESR_FRACTION = { min: 1 / 3, typical: 1 / 2, max: 2 / 3 } as const;

/** Factor on a 120 Hz ripple rating; the lowest that makers print. */
export const RIPPLE_FREQUENCY_FACTOR: readonly CurvePoint[] = [[50, 0.75], [100, 0.92], [120, 1], [1000, 1.05], [10_000, 1.1]];

export interface ElectrolyticRow extends CatalogueRow {
  readonly maxCelsius: number;
  readonly lifeHours: number;
  /** Factor on the ripple rating by air temperature; the rating itself holds where it is 1. */
  readonly rippleTemperatureFactor: readonly CurvePoint[];
  /** Ripple rating at 120 Hz of 25 V parts, amps, by farads: the lowest and highest of makers' tables. */
  readonly rippleAmps: { readonly lowest: readonly CurvePoint[]; readonly highest: readonly CurvePoint[] };
  /** ESR new, ohms, by farads (25 V parts), where it is far below the tan δ limit. */
  readonly esrOhms?: readonly CurvePoint[];
}

const GENERAL_RIPPLE = {
  lowest: [[470e-6, 0.4], [1000e-6, 0.6], [2200e-6, 1], [4700e-6, 1.5], [10_000e-6, 2.3]],
  highest: [[470e-6, 0.6], [1000e-6, 0.9], [2200e-6, 1.4], [4700e-6, 2.2], [10_000e-6, 3.2]],
} as const satisfies ElectrolyticRow['rippleAmps'];

/** Classes of radial and snap-in electrolytic. Factors are data-sheet figures; ripple ratings are typical of makers' tables. */
export const ELECTROLYTICS: readonly ElectrolyticRow[] = [
  {
    id: 'general-85', name: 'General purpose, 85 °C, 2000 h', basis: 'typical', source: { id: 'ds-electrolytic-factors' }, maxCelsius: 85, lifeHours: 2000,
    rippleTemperatureFactor: [[45, 2.3], [55, 2], [65, 1.7], [75, 1.4], [85, 1]], rippleAmps: GENERAL_RIPPLE,
  },
  {
    id: 'general-105', name: 'General purpose, 105 °C, 2000 h', basis: 'typical', source: { id: 'ds-electrolytic-factors' }, maxCelsius: 105, lifeHours: 2000,
    rippleTemperatureFactor: [[35, 1.9], [45, 1.7], [55, 1.6], [65, 1.4], [75, 1.2], [85, 1], [95, 0.7], [105, 0.4]], rippleAmps: GENERAL_RIPPLE,
    note: 'Ripple rated at 85 °C as some makers do; read whether yours is rated at 85 or at 105 °C. The factor at 105 °C is typical.',
  },
  {
    id: 'long-life-105', name: 'Low impedance, long life, 105 °C, 5000 h', basis: 'typical', source: { id: 'ds-electrolytic-low-z' }, maxCelsius: 105, lifeHours: 5000,
    rippleTemperatureFactor: [[35, 1.9], [45, 1.7], [55, 1.6], [65, 1.4], [75, 1.2], [85, 1], [95, 0.7], [105, 0.4]],
    rippleAmps: {
      lowest: [[1000e-6, 1.2], [2200e-6, 2], [4700e-6, 2.4]],
      highest: [[1000e-6, 2.2], [2200e-6, 3], [4700e-6, 3.6]],
    },
    esrOhms: [[1000e-6, 0.03], [2200e-6, 0.02], [4700e-6, 0.015]],
    note: 'Ripple and ESR are printed for 100 kHz; at 100 Hz the ESR is higher and the rating lower. 4700 µF figures typical.',
  },
];
