import type { CurvePoint } from './interpolate.ts';
import type { CatalogueRow } from './row.ts';

/** What a converter does when asked for more than it gives. */
export type StartUpLimit =
  | { readonly kind: 'constant-current'; readonly amps: number }
  /** Collapses, pauses, tries again. */
  | { readonly kind: 'hiccup'; readonly tripAmps: number; readonly onSeconds: number; readonly pauseSeconds: number }
  /** Gives the less the lower its output is pulled. */
  | { readonly kind: 'foldback'; readonly tripAmps: number; readonly shortAmps: number };

export interface ConverterRow extends CatalogueRow {
  readonly build: 'board module' | 'plug-in adaptor';
  readonly ratedWatts: number;
  readonly outputVolts: number;
  readonly ratedAmps: number;
  /** Ratio, all causes. Assumed where sheets differ. */
  readonly outputTolerance: number;
  readonly inputVolts: { readonly min: number; readonly max: number };
  readonly efficiency: number;
  /** Peak to peak, 20 MHz bandwidth. */
  readonly rippleVolts: number;
  readonly switchingHertz: number;
  /** First half-cycle, peak amps, at 115 and 230 V. */
  readonly inrushAmps: { readonly at115: number; readonly at230: number };
  readonly holdUpSeconds: { readonly at115: number; readonly at230: number };
  /** Into its output from mains, through its Y capacitor, at 230 V 50 Hz, amps RMS. */
  readonly leakageAmps: number;
  readonly protectionClass: 'II';
  readonly isolationTestVolts: number;
  /** Most capacitance at its output for it to start. */
  readonly maxLoadFarads: number;
  readonly minLoadAmps: number;
  readonly overloadRatio: number;
  /** Sheets seldom say which kind; a hiccup is the one that fails to start cold heaters, so it is assumed. */
  readonly startUpKind: StartUpLimit['kind'];
  readonly standbyWatts: number;
  /** Share of rated power by air temperature. */
  readonly derating: readonly CurvePoint[];
  /** Fuse that its maker advises in the line. */
  readonly advisedFuseAmps: number;
}

interface Family {
  readonly watts: number;
  readonly outputs: readonly { readonly volts: number; readonly amps: number; readonly efficiency: number; readonly farads: number }[];
  readonly holdUpSeconds: ConverterRow['holdUpSeconds'];
  readonly leakageAmps: number;
  readonly isolationTestVolts: number;
  readonly standbyWatts: number;
  readonly switchingHertz: number;
  readonly derating: readonly CurvePoint[];
}

const FROM_50: readonly CurvePoint[] = [[50, 1], [70, 0.5]];

const FAMILIES: readonly Family[] = [
  {
    watts: 5, holdUpSeconds: { at115: 0.015, at230: 0.08 }, leakageAmps: 0.3e-3, isolationTestVolts: 3000, standbyWatts: 0.3, switchingHertz: 65e3, derating: FROM_50,
    outputs: [{ volts: 5, amps: 1, efficiency: 0.75, farads: 30_000e-6 }, { volts: 12, amps: 0.42, efficiency: 0.79, farads: 2500e-6 }, { volts: 24, amps: 0.23, efficiency: 0.82, farads: 800e-6 }],
  },
  {
    watts: 10, holdUpSeconds: { at115: 0.015, at230: 0.08 }, leakageAmps: 0.3e-3, isolationTestVolts: 3000, standbyWatts: 0.6, switchingHertz: 65e3, derating: [[55, 1], [70, 0.6]],
    outputs: [{ volts: 5, amps: 2, efficiency: 0.76, farads: 12_000e-6 }, { volts: 12, amps: 0.9, efficiency: 0.8, farads: 2000e-6 }, { volts: 24, amps: 0.45, efficiency: 0.82, farads: 500e-6 }],
  },
  {
    watts: 12, holdUpSeconds: { at115: 0.024, at230: 0.12 }, leakageAmps: 0.1e-3, isolationTestVolts: 4000, standbyWatts: 0.3, switchingHertz: 100e3, derating: FROM_50,
    outputs: [{ volts: 5, amps: 2.4, efficiency: 0.78, farads: 10_000e-6 }, { volts: 12, amps: 1, efficiency: 0.82, farads: 5400e-6 }, { volts: 24, amps: 0.5, efficiency: 0.83, farads: 1500e-6 }],
  },
];

/**
 * Encapsulated mains converters for boards, and plug-in adaptors. Electrical figures are those of data sheets of one
 * module family per size; derating above its knee, output tolerance, minimum load and the kind of overload protection
 * are typical or assumed and must be read on the part in hand.
 */
export const CONVERTERS: readonly ConverterRow[] = [
  ...FAMILIES.flatMap((family) =>
    family.outputs.map(({ volts, amps, efficiency, farads }): ConverterRow => ({
      id: `module-${family.watts}w-${volts}v`, name: `${family.watts} W module, ${volts} V ${amps} A`, basis: 'typical', source: { id: 'ds-converter-modules' },
      build: 'board module', ratedWatts: family.watts, outputVolts: volts, ratedAmps: amps, outputTolerance: 0.02, inputVolts: { min: 85, max: 264 }, efficiency,
      rippleVolts: 0.1, switchingHertz: family.switchingHertz, inrushAmps: { at115: 10, at230: 20 }, holdUpSeconds: family.holdUpSeconds, leakageAmps: family.leakageAmps,
      protectionClass: 'II', isolationTestVolts: family.isolationTestVolts, maxLoadFarads: farads, minLoadAmps: 0, overloadRatio: 1.1, startUpKind: 'hiccup',
      standbyWatts: family.standbyWatts, derating: family.derating, advisedFuseAmps: 2,
      note: 'Derating, output tolerance and hiccup protection typical or assumed. Hold-up and standby of the 10 W size, and standby of the 5 W size, as its sisters.',
    })),
  ),
  {
    id: 'adaptor-12w-12v', name: '12 W plug-in adaptor, 12 V 1 A', basis: 'typical', source: { id: 'ds-plug-adaptor' }, build: 'plug-in adaptor', ratedWatts: 12, outputVolts: 12,
    ratedAmps: 1, outputTolerance: 0.05, inputVolts: { min: 90, max: 264 }, efficiency: 0.83, rippleVolts: 0.12, switchingHertz: 65e3, inrushAmps: { at115: 30, at230: 60 },
    holdUpSeconds: { at115: 0.01, at230: 0.01 }, leakageAmps: 0.25e-3, protectionClass: 'II', isolationTestVolts: 3000, maxLoadFarads: 1000e-6, minLoadAmps: 0.01, overloadRatio: 1.1,
    startUpKind: 'hiccup', standbyWatts: 0.1, derating: [[40, 1], [55, 0.8], [70, 0.6]], advisedFuseAmps: 2,
    note: 'Rated for 40 °C air, which no amplifier chassis has. Not built to be fixed inside an appliance. Leakage, hold-up and load capacitance typical.',
  },
];
