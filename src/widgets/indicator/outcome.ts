import type { Finding } from '../../compute/findings.ts';
import { checkResistorWatts } from '../../compute/findings/indicator.ts';
import { resistorAllowance, resistorFor } from '../../compute/parts/resistor.ts';
import { formatQuantity, nearestPreferred, nextPreferredUp } from '../../compute/quantity.ts';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { PlotData } from '../shared/plot-data.ts';
import type { Values } from './fields.ts';

/** What one of the three kinds comes to. */
export interface Outcome {
  /** The resistor by the sum, and the one that is reckoned with. */
  readonly exactOhms: number;
  readonly ohms: number;
  /** Most heat in it. */
  readonly watts: number;
  /** Low, nominal and high, in this order. */
  readonly corners: readonly [CornerFigure, CornerFigure, CornerFigure];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly plot: PlotData;
  readonly handOn: readonly HandOnLink[];
  /** After the resistor: "8.6 to 10.8 mA". */
  readonly words: string;
}

/** The resistor that stands: the one fitted, else a preferred value. An LED's goes up, to be kind to it; others to the nearest. */
export function resistorOf({ fittedOhms }: Values, exactOhms: number, round: 'up' | 'nearest'): number {
  if (fittedOhms !== undefined) return fittedOhms;
  const options = { value: exactOhms, series: 'E12' } as const;
  return round === 'up' ? nextPreferredUp(options) : nearestPreferred(options);
}

/** Rating of the resistor: as fitted, else the smallest usual one that stays at half of what it may take in this air. */
export function resistorFinding({ fittedWatts, airCelsius }: Values, watts: number, corner: string): { readonly finding: Finding; readonly rating: string } {
  const ratedWatts = fittedWatts ?? resistorFor({ watts, airCelsius })?.ratedWatts ?? 10;
  const finding = checkResistorWatts({ corner, restsOn: ['typical'], watts, ratedWatts, allowedWatts: resistorAllowance({ ratedWatts, airCelsius }) });
  return { finding, rating: formatQuantity({ value: ratedWatts, unit: 'W', prefix: '' }) };
}
