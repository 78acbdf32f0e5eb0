import type { Basis } from '../findings.ts';
import type { CurvePoint } from './interpolate.ts';
import type { CatalogueRow } from './row.ts';

/** A linear regulator as a part to choose: its limits, and what it asks of the rail before it. */
export interface LinearRegulator extends CatalogueRow {
  readonly family: 'fixed' | 'low-dropout' | 'adjustable';
  /** Fixed output; for an adjustable part the reference voltage. */
  readonly outputVolts: number;
  /** Output limits at 25 °C and over line, load and temperature, as ratios of nominal. */
  readonly tolerance: { readonly cold: number; readonly overall: number };
  readonly maxAmps: number;
  /** Most at the input; for the adjustable part, most across it. */
  readonly maxInputVolts: number;
  /** Lowest input the sheet specifies the output for, where it prints one. */
  readonly specifiedInputVolts?: number;
  /** Input over output at which it stops regulating, 25 °C, by amps. */
  readonly typicalDropout: readonly CurvePoint[];
  /** Change of the typical dropout per kelvin of junction temperature. */
  readonly dropoutVoltsPerKelvin: number;
  /** What to plan with at the ripple valley, by amps. */
  readonly plannedDropout: { readonly points: readonly CurvePoint[]; readonly basis: Basis };
  /** Current into its ground (or adjust) pin, by load amps. */
  readonly quiescentAmps: { readonly typical: readonly CurvePoint[]; readonly max: number };
  /** Ripple rejection at 120 Hz, dB, where printed. */
  readonly rejectionDecibels?: { readonly min: number; readonly typical: number };
  readonly junctionToCase: number;
  /** TO-220 in free air; the higher of the printed figures. */
  readonly junctionToAir: number;
  readonly junctionAbsoluteCelsius: number;
  /** What the metal tab is joined to inside. */
  readonly tab: 'ground' | 'output';
  /** Current into a dead short with little, and with `maxInputVolts`, across it. */
  readonly shortCircuitAmps: { readonly peak: number; readonly atMaxInput: number };
  /** Lowest load for the output to stay in regulation. */
  readonly minLoadAmps: number;
  readonly inputFarads: number;
  readonly outputFarads: number;
  /** Whether `outputFarads` with an ESR inside the sheet's band is what keeps it from oscillating. */
  readonly outputCapacitorStabilises: boolean;
}

const FIXED = {
  family: 'fixed', basis: 'rated', tolerance: { cold: 0.04, overall: 0.05 }, maxAmps: 1,
  typicalDropout: [[0, 1.55], [0.2, 1.65], [0.5, 1.8], [1, 2]], dropoutVoltsPerKelvin: -0.003,
  plannedDropout: { points: [[0, 2.5], [1, 2.5]], basis: 'typical' },
  quiescentAmps: { typical: [[0, 0.0045], [1, 0.0051]], max: 0.008 },
  junctionToCase: 5, junctionToAir: 65, junctionAbsoluteCelsius: 150, tab: 'ground',
  shortCircuitAmps: { peak: 2.2, atMaxInput: 0.23 }, minLoadAmps: 0.005, inputFarads: 0.33e-6, outputFarads: 0.1e-6, outputCapacitorStabilises: false,
} as const;

const fixed = (
  outputVolts: number,
  more: Partial<Pick<LinearRegulator, 'specifiedInputVolts' | 'rejectionDecibels' | 'note' | 'maxInputVolts'>>,
): LinearRegulator => ({
  ...FIXED, id: `78${String(outputVolts).padStart(2, '0')}`, name: `78${String(outputVolts).padStart(2, '0')}, ${outputVolts} V 1 A`,
  source: { id: 'ds-78xx' }, outputVolts, maxInputVolts: 35, ...more,
});

const LOW_DROPOUT = {
  family: 'low-dropout', basis: 'rated', tolerance: { cold: 0.03, overall: 0.05 }, maxAmps: 1, maxInputVolts: 26,
  typicalDropout: [[0, 0.05], [0.1, 0.11], [1, 0.5]], dropoutVoltsPerKelvin: 0.001,
  plannedDropout: { points: [[0, 0.15], [0.1, 0.2], [1, 1]], basis: 'typical' },
  quiescentAmps: { typical: [[0, 0.01], [1, 0.03]], max: 0.045 },
  junctionToCase: 4, junctionToAir: 65, junctionAbsoluteCelsius: 150, tab: 'ground',
  shortCircuitAmps: { peak: 1.9, atMaxInput: 1.9 }, minLoadAmps: 0.005, inputFarads: 0.47e-6, outputFarads: 22e-6, outputCapacitorStabilises: true,
} as const;

const lowDropout = (outputVolts: number): LinearRegulator => ({
  ...LOW_DROPOUT, id: `ldo-${outputVolts}`, name: `2940-class low-dropout, ${outputVolts} V 1 A`, source: { id: 'ds-ldo-1a' }, outputVolts,
  note: 'Dropout at 1 A is the sheet’s limit over temperature; below 1 A, tolerance, thermal and short-circuit figures are typical. Draws more ground current in dropout. Oscillates without at least 22 µF of the right ESR at its output.',
});

/**
 * Linear regulators in TO-220. The 78xx rows: “2 V dropout” is a typical figure at 25 °C, no sheet limits it; 2.5 V at
 * the valley is the prudent allowance. Dropout below 1 A and its fall with temperature are read off typical curves.
 */
export const LINEAR_REGULATORS: readonly LinearRegulator[] = [
  fixed(5, { specifiedInputVolts: 7, rejectionDecibels: { min: 62, typical: 68 }, note: 'Specified input and rejection typical.' }),
  fixed(6, { specifiedInputVolts: 8, rejectionDecibels: { min: 58, typical: 65 } }),
  fixed(8, {}),
  fixed(9, { specifiedInputVolts: 11.5, note: 'Specified input typical.' }),
  fixed(10, {}),
  fixed(12, { specifiedInputVolts: 14.5, rejectionDecibels: { min: 55, typical: 71 } }),
  fixed(15, { specifiedInputVolts: 17.5, rejectionDecibels: { min: 54, typical: 58 } }),
  fixed(18, { specifiedInputVolts: 21, rejectionDecibels: { min: 53, typical: 57 } }),
  fixed(24, { specifiedInputVolts: 27, rejectionDecibels: { min: 50, typical: 54 }, maxInputVolts: 40 }),
  ...[5, 8, 9, 10, 12, 15].map(lowDropout),
  {
    ...FIXED, id: '317', name: '317-class adjustable, 1.5 A', family: 'adjustable', source: { id: 'ds-317' }, outputVolts: 1.25,
    tolerance: { cold: 0.04, overall: 0.04 }, maxAmps: 1.5, maxInputVolts: 40,
    typicalDropout: [[0, 1.6], [0.5, 1.9], [1, 2.1], [1.5, 2.3]], dropoutVoltsPerKelvin: -0.001,
    plannedDropout: { points: [[0, 2.5], [0.5, 2.5], [1.5, 3]], basis: 'typical' },
    quiescentAmps: { typical: [[0, 50e-6]], max: 100e-6 }, rejectionDecibels: { min: 60, typical: 65 }, junctionToAir: 50, junctionAbsoluteCelsius: 125,
    tab: 'output', shortCircuitAmps: { peak: 2.2, atMaxInput: 0.4 }, minLoadAmps: 0.01, inputFarads: 0.1e-6, outputFarads: 1e-6,
    note: 'Rejection, dropout curve, reference limits and short-circuit figures typical; 80 dB with 10 µF on the adjust pin. The tab is the output: insulate it.',
  },
];
