import { SolveError } from '../../compute/errors.ts';
import { worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../../compute/findings/regulator.ts';
import { WANTED_WINDING_SHARE, WINDING_HAZARD_RATIO } from '../../compute/findings/winding.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import type { ChainInput, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import { supplyFromHeaterWinding, type HeaterSupply, type HeaterVariant } from '../../compute/supplies/heater-winding.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { decidingCorners, expectedCorner, levelOfRule, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { PlotData } from '../shared/plot-data.ts';
import { railIsSet, railVoltsOf } from '../shared/stage-fields.ts';
import { mainsOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { windingPickFace } from '../winding-pick/fields.ts';
import { heaterBudgetFace, PICKED } from './fields.ts';
import { planOf, type Values } from './plan.ts';

/** One line of the winding's ledger, amps RMS at the corner of most current. */
export interface LedgerLine {
  readonly name: string;
  readonly amps: number;
  readonly isResult?: true;
}

/** One way of rectifying, beside the others. */
export interface VariantCard {
  readonly name: string;
  readonly taken: boolean;
  readonly spare: string;
  readonly cost: string;
  readonly level: Level;
}

export interface HeaterBudgetView extends ViewModel {
  readonly shows: { readonly railVolts: boolean; readonly lift: boolean };
  readonly corners: readonly CornerFigure[];
  readonly ledger: { readonly corner: string; readonly lines: readonly LedgerLine[]; readonly left: string };
  readonly variants: readonly VariantCard[];
  readonly findings: readonly Finding[];
  readonly plot: PlotData;
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

/** The tap's own pulses and the heaters beside them, at a solved corner. */
function shares(at: SolvedCorner): { readonly heaters: number; readonly before: number; readonly tap: number; readonly total: number; readonly sum: number; readonly squares: number } {
  const tap = at.rectifier.winding.rmsAmps;
  const heaters = at.across?.rmsAmps ?? 0;
  const before = at.across?.rmsAmpsBefore ?? 0;
  return { heaters, before, tap, total: at.windingRmsAmps, sum: before + tap, squares: Math.hypot(before, tap) };
}

function ledgerOf(at: SolvedCorner, ratedAmps: number | undefined): HeaterBudgetView['ledger'] {
  const { before, tap, total, sum, squares } = shares(at);
  return {
    corner: at.corner.words,
    lines: [
      { name: 'the valves’ heaters alone', amps: before },
      { name: 'the rail’s charging pulses alone', amps: tap },
      { name: 'the two added up', amps: sum },
      { name: 'the two added by their squares', amps: squares },
      { name: 'what the winding really carries, solved', amps: total, isResult: true },
      ...(ratedAmps === undefined ? [] : [{ name: 'what it is rated for', amps: ratedAmps }]),
    ],
    left:
      ratedAmps === undefined
        ? 'Nobody has read what the winding is rated for: what is left on it cannot be told, whatever its volts and ohms.'
        : ratedAmps >= before
          ? `Before the rail the heaters left ${showQuantity(ratedAmps - before, 'A')}; with it ${total > ratedAmps ? `the winding is over its rating by ${showQuantity(total - ratedAmps, 'A')}` : `${showQuantity(ratedAmps - total, 'A')} is left`}.`
          : `The heaters alone take the winding over its rating by ${showQuantity(before - ratedAmps, 'A')}.`,
  };
}

const DIODE_NAMES = { silicon: 'silicon', schottky: 'Schottky' } as const;

function variantLevel({ marginVolts, windingRmsAmps }: HeaterVariant, ratedAmps: number | undefined): Level {
  if (marginVolts === undefined || windingRmsAmps === undefined || marginVolts < 0) return 'outside';
  if (ratedAmps === undefined) return 'not assessed';
  if (windingRmsAmps > ratedAmps * WINDING_HAZARD_RATIO) return 'hazard';
  if (windingRmsAmps > ratedAmps) return 'outside';
  return windingRmsAmps > WANTED_WINDING_SHARE * ratedAmps || marginVolts < WANTED_VALLEY_MARGIN_VOLTS ? 'marginal' : 'within';
}

function variantCards({ variants, chainInput }: HeaterSupply, values: Values): readonly VariantCard[] {
  const named = values.diode === PICKED ? undefined : diodePart(values.diode);
  const takenKind = named?.kind ?? variantKind(chainInput);
  return variants
    .filter(({ kind }) => named === undefined || kind === named.kind)
    .map((variant) => {
      const { topology, kind, marginVolts, windingRmsAmps, heaterVolts } = variant;
      return {
        name: `${topology === 'bridge' ? 'Bridge' : 'Doubler'}, ${named?.name ?? DIODE_NAMES[kind]}`,
        taken: topology === chainInput?.topology && kind === takenKind,
        spare: marginVolts === undefined ? 'cannot feed it' : `${showQuantity(Math.abs(marginVolts), 'V')} ${marginVolts < 0 ? 'short' : 'to spare'}`,
        cost: windingRmsAmps === undefined ? 'No steady rail.' : `At low mains the winding carries ${showQuantity(windingRmsAmps, 'A')}${heaterVolts === undefined ? '' : ` and the heaters keep ${showQuantity(heaterVolts, 'V')}`}.`,
        level: variantLevel(variant, values.ratedAmps),
      };
    });
}

/** Silicon drops much more than Schottky at any current: its saturation current tells them apart. */
const variantKind = (input: ChainInput | undefined): HeaterVariant['kind'] => ((input?.diode.saturationAmps ?? 0) > 1e-6 ? 'schottky' : 'silicon');

const PLOT_POINTS = 12;

/** The next 1, 2 or 5 of a decade: where a plot's axis ends evenly. */
function roundedUp(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 5, 10].find((rung) => rung * decade >= value * 0.999) ?? 10) * decade;
}

function plotOf(input: ChainInput, at: SolvedCorner, values: Values): PlotData {
  const most = Math.min(5, roundedUp(1.5 * values.loadAmps));
  const solved = Array.from({ length: PLOT_POINTS }, (_, index) => (most * (index + 1)) / PLOT_POINTS).flatMap((amps) => {
    const corner = solveCorner({ ...input, load: { offAmps: 0, runningAmps: amps, everythingAmps: amps } }, at.corner);
    return corner.solved ? [{ amps, ...shares(corner) }] : [];
  });
  const { ratedAmps } = values;
  return {
    caption: `What the winding carries as the rail’s load grows, at ${at.corner.words}. Neither sum tells it: the pulses sit on the crest of the current that the heaters draw.`,
    x: { name: 'load on the rail, DC', unit: 'A', values: solved.map(({ amps }) => amps) },
    series: [
      { name: 'solved', kind: 'amps', unit: 'A', values: solved.map(({ total }) => total) },
      { name: 'added up', kind: 'other', unit: 'A', values: solved.map(({ sum }) => sum) },
      { name: 'added by squares', kind: 'faint', unit: 'A', values: solved.map(({ squares }) => squares) },
      ...(ratedAmps === undefined ? [] : [{ name: 'rated', kind: 'limit' as const, unit: 'A' as const, values: solved.map(() => ratedAmps) }]),
    ],
    markAt: values.loadAmps,
  };
}

function ledgerSteps(at: SolvedCorner): readonly WorkingStep[] {
  const { before, tap, total, sum, squares } = shares(at);
  const numbers = [{ symbol: 'H', value: before, unit: 'A' as const }, { symbol: 'T', value: tap, unit: 'A' as const }];
  return [
    workingStep({ name: 'added-up', words: 'Heaters and pulses added as if both were always at their RMS: too much.', formula: 'S = H + T', numbers, result: { symbol: 'S', value: sum, unit: 'A' }, source: { id: 'arithmetic' } }),
    workingStep({ name: 'by-squares', words: 'Added by squares, as if they had nothing to do with each other: too little, since both peak together.', formula: 'Q = √(H² + T²)', numbers, result: { symbol: 'Q', value: squares, unit: 'A' }, source: { id: 'arithmetic' } }),
    workingStep({ name: 'total-solved', words: `The root of the mean of the squared sum, out of the solved wave at ${at.corner.words}.`, formula: 'Solved with heaters and rectifier in one circuit', numbers: [], result: { symbol: 'I', value: total, unit: 'A' }, source: { id: 'solved' } }),
    ...(at.across === undefined
      ? []
      : [
          workingStep({
            name: 'heater-sag', words: 'What the rail takes from the heaters there, RMS.', formula: 'd = B − A',
            numbers: [{ symbol: 'B', value: at.across.rmsVoltsBefore, unit: 'V' }, { symbol: 'A', value: at.across.rmsVolts, unit: 'V' }],
            result: { symbol: 'd', value: at.across.rmsVoltsBefore - at.across.rmsVolts, unit: 'V' }, source: { id: 'solved' },
          }),
        ]),
  ];
}

/** Steps of the chain's working that tell of winding and valley; regulator and reservoir have calculators of their own. */
const ABOUT_THE_WINDING = new Set(['winding-at-the-corner', 'winding-with-heaters', 'winding-peak', 'ripple-solved', 'valley', 'input-needed', 'headroom']);

/** Room is not asked for here. */
const UNASKED = new Set(['room']);

function cornersOf(supply: HeaterSupply, chain: NonNullable<HeaterSupply['chain']>, findings: readonly Finding[], values: Values): readonly CornerFigure[] {
  const mains = mainsOf(values);
  const { valley, windingCurrent } = decidingCorners(chain);
  const nominal = expectedCorner(chain, 'nominal') ?? valley;
  const spare = supply.measures.holds.marginVolts ?? valley.headroomVolts ?? 0;
  const across = nominal.across;
  const { total } = shares(windingCurrent);
  return [
    { name: mainsName(mains, 'low'), value: valley.rectifier.rail.minVolts, unit: 'V', of: 'valley', level: supply.measures.holds.level, found: `${showQuantity(Math.abs(spare), 'V')} ${spare < 0 ? 'short' : 'to spare'}`, restsOn: 'smallest and oldest reservoir, flat-topped mains' },
    across === undefined
      ? { name: mainsName(mains, 'nominal'), value: nominal.rectifier.rail.meanVolts, unit: 'V', of: 'mean', found: 'no heaters on the winding' }
      : { name: mainsName(mains, 'nominal'), value: across.rmsVolts, unit: 'V', of: 'at the heaters', level: levelOfRule(findings, 'heaters-left'), found: `${showQuantity(across.rmsVoltsBefore, 'V')} without the rail`, restsOn: `flattened to a peak of ${across.crestFactor.toFixed(2)} times RMS` },
    { name: `worst · ${windingCurrent.corner.mains} mains`, value: total, unit: 'A', of: 'RMS in all', level: levelOfRule(findings, 'winding-current'), found: values.ratedAmps === undefined ? 'rating not read' : `rated ${showMarked(values.ratedAmps, 'A')}` },
  ];
}

function solve(values: Values): HeaterBudgetView {
  const supply = supplyFromHeaterWinding(planOf(values));
  const { chain, chainInput } = supply;
  if (chain === undefined || chainInput === undefined) throw new SolveError('no-convergence', 'the heater winding could not be solved.');
  const findings = supply.findings.filter(({ rule }) => !UNASKED.has(rule));
  const { windingCurrent } = decidingCorners(chain);
  const { before, tap, total } = shares(windingCurrent);
  const corners = cornersOf(supply, chain, findings, values);
  const rail = railVoltsOf(values);
  const share = values.ratedAmps === undefined ? 'which nobody has read the rating of' : `rated ${showMarked(values.ratedAmps, 'A')}`;
  return {
    level: worstLevel(findings),
    summary: `a tap of ${showMarked(values.loadAmps, 'A')} DC draws ${showQuantity(tap, 'A')} RMS of its own and takes the winding, ${share}, from ${showQuantity(before, 'A')} to ${showQuantity(total, 'A')}; the ${showMarked(rail, 'V')} rail is ${corners[0]?.found ?? ''}. The heater winding stays the last choice`,
    shows: { railVolts: railIsSet(values), lift: values.reference === 'elevated' },
    corners,
    ledger: ledgerOf(windingCurrent, values.ratedAmps),
    variants: variantCards(supply, values),
    findings,
    plot: plotOf(chainInput, windingCurrent, values),
    working: [...ledgerSteps(windingCurrent), ...chain.working.filter(({ name }) => ABOUT_THE_WINDING.has(name))],
    handOn: [handOn(windingPickFace, { what: 'Another source first: a small transformer', from: { regulator: values.regulator, setVolts: values.setVolts, loadAmps: values.loadAmps, mainsVolts: values.mainsVolts, mainsHertz: values.mainsHertz, mainsSpread: values.mainsSpread, airCelsius: values.airCelsius } })],
  };
}

export const heaterBudget = defineCalculator({
  ...heaterBudgetFace,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts', 'winding.ohms': 'windingOhms', 'winding.ratedAmps': 'ratedAmps', 'winding.acrossOhms': 'heaters',
    'stage.outputVolts': 'setVolts', 'stage.designVolts': 'setVolts', outputVolts: 'setVolts', railVolts: 'setVolts', 'load.everythingAmps': 'loadAmps', 'cooling.airCelsius': 'airCelsius',
  },
  solve,
});
