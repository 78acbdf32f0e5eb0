import type { Basis } from '../findings.ts';
import type { CatalogueRow } from './row.ts';

/** i = Is·(exp(v/(n·VT)) − 1) behind a series resistance, VT = 25.852 mV. */
export interface DiodeModel {
  readonly saturationAmps: number;
  readonly emission: number;
  readonly ohms: number;
  /** Highest current of the points it was fitted to. */
  readonly fittedToAmps: number;
  readonly basis: Basis;
}

export interface DiodePart extends CatalogueRow {
  readonly kind: 'silicon' | 'schottky';
  /** Fit to points of typical curves: for what to expect. */
  readonly typical: DiodeModel;
  /** Fit to data-sheet maxima, where there are enough: for the worst drop. */
  readonly upperLimit?: DiodeModel;
  /** Members of the family, by rising repetitive reverse voltage. */
  readonly types: readonly { readonly name: string; readonly reverseVolts: number }[];
  /** Mean forward current, of one diode, resistive load. */
  readonly averageAmps: number;
  /** Factor on `averageAmps` that the sheets ask for with a reservoir behind. */
  readonly capacitiveLoadFactor: number;
  /** One half-sine of 8.3 ms; the lowest that makers of the type print. */
  readonly surgeAmps: number;
  /** Largest leakage cold (25 °C) and hot, at rated reverse voltage. */
  readonly leakage: { readonly coldAmps: number; readonly hotAmps: number; readonly hotCelsius: number };
  /** Junction to ambient on leads or board: makers differ this far for like mountings. */
  readonly junctionToAmbient: { readonly min: number; readonly max: number };
  readonly junctionMaxCelsius: number;
}

const volts = (names: readonly string[], ratings: readonly number[]): DiodePart['types'] =>
  names.map((name, at) => ({ name, reverseVolts: ratings[at] ?? 0 }));

/**
 * Rectifier diodes. Ratings are data-sheet figures (the lowest where makers differ); the typical drop models are
 * least-squares fits to typical-curve readings and are to be taken as plausible, give or take 50 mV from part to part.
 */
export const DIODES: readonly DiodePart[] = [
  {
    id: '1n400x', name: '1N4001–1N4007, 1 A silicon', basis: 'rated', source: { id: 'ds-1n400x' }, kind: 'silicon',
    typical: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355, fittedToAmps: 10, basis: 'typical' },
    types: volts(['1N4001', '1N4002', '1N4003', '1N4004', '1N4005', '1N4006', '1N4007'], [50, 100, 200, 400, 600, 800, 1000]),
    averageAmps: 1, capacitiveLoadFactor: 0.8, surgeAmps: 30,
    leakage: { coldAmps: 5e-6, hotAmps: 50e-6, hotCelsius: 100 }, junctionToAmbient: { min: 45, max: 100 }, junctionMaxCelsius: 150,
    note: 'Forward drop at 1 A at most 1.0 or 1.1 V by maker. Junction limit typical.',
  },
  {
    id: '1n540x', name: '1N5400–1N5408, 3 A silicon', basis: 'rated', source: { id: 'ds-1n540x' }, kind: 'silicon',
    typical: { saturationAmps: 1.46e-7, emission: 1.9517, ohms: 0.009, fittedToAmps: 10, basis: 'typical' },
    types: volts(['1N5400', '1N5401', '1N5402', '1N5404', '1N5406', '1N5407', '1N5408'], [50, 100, 200, 400, 600, 800, 1000]),
    averageAmps: 3, capacitiveLoadFactor: 0.8, surgeAmps: 120,
    leakage: { coldAmps: 5e-6, hotAmps: 500e-6, hotCelsius: 100 }, junctionToAmbient: { min: 8, max: 50 }, junctionMaxCelsius: 150,
    note: 'Surge 200 A for the classic part, 120 to 125 A for glass-passivated versions. Leakage and junction limit typical.',
  },
  {
    id: 'bridge-4a', name: '4 A bridge, in-line', basis: 'rated', source: { id: 'ds-bridge-4a' }, kind: 'silicon',
    typical: { saturationAmps: 1.95e-7, emission: 2.0511, ohms: 0.016, fittedToAmps: 10, basis: 'typical' },
    types: volts(['50 V', '100 V', '200 V', '400 V', '600 V', '800 V'], [50, 100, 200, 400, 600, 800]),
    averageAmps: 2, capacitiveLoadFactor: 0.8, surgeAmps: 150,
    leakage: { coldAmps: 10e-6, hotAmps: 1e-3, hotCelsius: 125 }, junctionToAmbient: { min: 19, max: 19 }, junctionMaxCelsius: 150,
    note: 'The module carries 4 A DC at 50 °C air, half of it in each diode. Drop per element at most 1.0 V at 3 A to 1.1 V at 2 or 4 A by maker. Leakage, voltage steps and junction limit typical.',
  },
  {
    id: '1n5817-19', name: '1N5817–1N5819, 1 A Schottky', basis: 'rated', source: { id: 'ds-1n5817' }, kind: 'schottky',
    typical: { saturationAmps: 1.88e-6, emission: 0.9937, ohms: 0.084, fittedToAmps: 3, basis: 'typical' },
    upperLimit: { saturationAmps: 3.57e-4, emission: 2.2856, ohms: 0.123, fittedToAmps: 3, basis: 'rated' },
    types: volts(['1N5817', '1N5818', '1N5819'], [20, 30, 40]),
    averageAmps: 1, capacitiveLoadFactor: 0.8, surgeAmps: 25,
    leakage: { coldAmps: 1e-3, hotAmps: 10e-3, hotCelsius: 100 }, junctionToAmbient: { min: 50, max: 100 }, junctionMaxCelsius: 125,
    note: 'Drop models are those of the 40 V type. Thermal resistance typical.',
  },
  {
    id: '1n5820-22', name: '1N5820–1N5822, 3 A Schottky', basis: 'rated', source: { id: 'ds-1n5820' }, kind: 'schottky',
    typical: { saturationAmps: 1.39e-5, emission: 1.0315, ohms: 0.0384, fittedToAmps: 9.4, basis: 'typical' },
    upperLimit: { saturationAmps: 3.37e-6, emission: 0.9937, ohms: 0.0603, fittedToAmps: 9.4, basis: 'rated' },
    types: volts(['1N5820', '1N5821', '1N5822'], [20, 30, 40]),
    averageAmps: 3, capacitiveLoadFactor: 0.8, surgeAmps: 80,
    leakage: { coldAmps: 2e-3, hotAmps: 20e-3, hotCelsius: 100 }, junctionToAmbient: { min: 28, max: 50 }, junctionMaxCelsius: 125,
    note: 'Drop models are those of the 40 V type. Thermal resistance typical. Leakage can run away in a hot chassis.',
  },
];
