import { worstLevel, type Finding } from '../../compute/findings.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import type { PlotData } from '../shared/plot-data.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { coilOutcome } from './coil.ts';
import { fields, type Values } from './fields.ts';
import { ledOutcome } from './led.ts';
import { optocouplerOutcome } from './optocoupler.ts';
import { resistorFinding, type Outcome } from './outcome.ts';

export interface IndicatorView extends ViewModel {
  readonly what: Values['what'];
  readonly ac: boolean;
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly plot: PlotData;
  readonly handOn: readonly HandOnLink[];
}

const OUTCOMES: Record<Values['what'], (values: Values) => Outcome> = { led: ledOutcome, coil: coilOutcome, optocoupler: optocouplerOutcome };

function solve(values: Values): IndicatorView {
  const outcome = OUTCOMES[values.what](values);
  const { ohms, exactOhms, watts } = outcome;
  const { finding, rating } = resistorFinding(values, watts, outcome.findings[0]?.worstCorner?.includes('lowest') === true ? 'the highest rail' : (outcome.findings[0]?.worstCorner ?? 'the highest rail'));
  const findings = [...outcome.findings, finding];
  return {
    level: worstLevel(findings),
    summary: leadWithHazard(findings, `${showMarked(ohms, 'Ω')}, ${rating}, for ${outcome.words}`),
    what: values.what,
    ac: values.what === 'led' && values.feed === 'ac',
    corners: [
      {
        name: values.fittedOhms === undefined ? 'resistor' : 'resistor, as fitted', value: ohms, unit: 'Ω', of: '',
        level: finding.level, found: `${showQuantity(watts, 'W', 2)} at most, ${values.fittedWatts === undefined ? 'take' : 'rated'} ${rating}`, restsOn: `by sum ${showQuantity(exactOhms, 'Ω')}; typical derating`,
      },
      ...outcome.corners,
    ],
    findings,
    working: [
      ...outcome.working.slice(0, 1),
      workingStep({
        name: 'fitted', words: values.fittedOhms === undefined ? 'The preferred value that stands for it, out of twelve to the decade.' : 'What is fitted.', formula: values.fittedOhms === undefined ? 'Preferred value' : 'As given',
        numbers: [], result: { symbol: 'R', value: ohms, unit: 'Ω' }, source: { id: 'iec-60063' },
      }),
      ...outcome.working.slice(1),
    ],
    plot: outcome.plot,
    handOn: outcome.handOn,
  };
}

export const indicator = defineCalculator({
  id: 'indicator',
  version: 1,
  question: 'Which resistor, and how many watts?',
  fields,
  quantities: { rmsVolts: 'windingVolts', driveVolts: 'railVolts', volts: 'railVolts', ratedVolts: 'coilVolts', ohms: 'fittedOhms', watts: 'railVolts', highestVolts: 'railVolts', value: 'railVolts', forwardVolts: 'inSeries', 'led.ohms': 'fittedOhms' },
  solve,
});
