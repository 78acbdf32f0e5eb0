import { worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { checkFuseBreaking, checkFuseInrush, checkFuseRunning } from '../../compute/findings/fuse.ts';
import { checkFuseFitted, checkFuseRace, checkMainsSide } from '../../compute/findings/fuse-place.ts';
import { windingEndurance } from '../../compute/in-time/winding-endurance.ts';
import { FUSE_STANDARDS, fuseGates, fuseTimes, pulseShare } from '../../compute/parts/fuse.ts';
import { insulationClass } from '../../compute/parts/transformer.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { headroom } from '../headroom/state.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { PlotData, PlotSeries } from '../shared/plot-data.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { fuseIn, fusePlace, warmCelsius, type FuseCase, type Values } from './case.ts';
import { fusePickFace } from './fields.ts';

/** One standard's fuse for the same place. */
export interface StandardCard {
  readonly name: string;
  readonly taken: boolean;
  readonly rating: string;
  readonly words: string;
  readonly level: Level;
}

export interface FusePickView extends ViewModel {
  readonly shows: { readonly fitted: boolean; readonly primary: boolean };
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly standards: readonly StandardCard[];
  readonly plot: PlotData;
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

const WORST_START = 'switch-on at the worst instant, high mains, largest reservoir';
const SHORT = 'dead short, winding warm';

function inrushFinding(values: Values, at: FuseCase): Finding {
  const { meltingA2s, meltingBasis = 'assumed' } = at.atSwitchOn;
  if (meltingA2s !== undefined) {
    return checkFuseInrush({ corner: WORST_START, restsOn: [meltingBasis, values.place === 'primary' ? 'assumed' : 'rated'], inrushA2s: at.surgeA2s, meltingA2s, pulses: values.starts });
  }
  return {
    rule: 'fuse-inrush', level: 'not assessed', numbers: [{ name: 'inrush', value: at.surgeA2s, unit: 'A²s' }], worstCorner: WORST_START, restsOn: ['assumed'], source: at.standard.source,
    what: `Switch-on puts ${showQuantity(at.surgeA2s, 'A²s')} through the fuse; its standard promises nothing of times that short.`,
    why: 'A fuse that switch-on wears out blows one evening for no fault, and is then replaced by a bigger one.',
    todo: 'Read the melting integral on the sheet of the fuse in hand, and hold it against this.',
  };
}

function breakingFinding(values: Values, at: FuseCase): Finding {
  const prospective = values.place === 'secondary' ? at.secondaryShortAmps : values.prospectiveAmps;
  if (prospective !== undefined) return checkFuseBreaking({ corner: SHORT, restsOn: [values.place === 'secondary' ? 'rated' : 'measured'], standard: at.standard, ratedAmps: at.amps, prospectiveAmps: prospective });
  return {
    rule: 'fuse-breaking', level: 'not assessed', numbers: [], worstCorner: SHORT, restsOn: ['assumed'], source: at.standard.source,
    what: 'What the mains can drive into a short here is not known, so neither is whether the fuse can break it.',
    why: 'Beyond its breaking capacity a fuse can burst or hold an arc instead of opening.',
    todo: 'Fit a high-breaking ceramic type, or have the prospective current of the outlet measured by somebody equipped.',
  };
}

/** A winding of the amp’s own transformer is not one that bears a short, whatever small transformers are marked. */
const markOf = ({ place, mainsSide, mark }: Values): Values['mark'] => (place === 'secondary' && mainsSide === 'amp-winding' ? 'not-proof' : mark);

function findingsOf(values: Values, at: FuseCase): readonly Finding[] {
  const { standard, amps, race } = at;
  const isPrimary = values.place === 'primary';
  const fitted = checkFuseFitted({ corner: SHORT, restsOn: ['rated'], pickedAmps: at.pickedAmps, protects: race.protects, ...(at.fitted === undefined ? {} : { fittedAmps: at.fitted }) });
  const mainsSide = isPrimary ? [] : [checkMainsSide({ corner: SHORT, restsOn: ['assumed'], mainsSide: values.mainsSide })];
  // Nothing is promised of a fuse that is not there.
  if (at.fitted === undefined) return [...fitted, ...mainsSide];
  return [
    ...fitted,
    checkFuseRace({ corner: SHORT, restsOn: [standard.basis, 'assumed'], race, standard, ratedAmps: amps, mark: markOf(values), place: values.place }),
    inrushFinding(values, at),
    checkFuseRunning({ corner: at.worstCorner, restsOn: ['rated', standard.basis], standard, ratedAmps: amps, rmsAmps: at.runningAmps }),
    breakingFinding(values, at),
    ...mainsSide,
  ];
}

const POINTS = 44;
const MOST_SECONDS = 7200;
const LEAST_SECONDS = 1e-4;
const shown = (value: number): number => Number(value.toPrecision(4));

function plotOf(values: Values, at: FuseCase): PlotData {
  const { standard, amps, race, heat, ratio } = at;
  const halfCycle = 1 / (2 * Number(values.mainsHertz));
  const surgeAmps = Math.sqrt(at.surgeA2s / halfCycle);
  const least = 1.2 * amps;
  const most = Math.max(12 * amps, 1.6 * race.fuseAmps.first, 1.6 * surgeAmps);
  const gates = fuseGates({ standard, ratedAmps: amps }).map(({ multiple }) => multiple * amps).filter((each) => each > least && each < most);
  const grid = Array.from({ length: POINTS }, (_, index) => least * (most / least) ** (index / (POINTS - 1)));
  const x = [...new Set([...grid, ...gates].map(shown))].sort((a, b) => a - b);
  const limit = insulationClass(values.insulationClass).overloadCelsius;
  const curve = (name: string, kind: PlotSeries['kind'], of: (amps: number) => number | undefined): PlotSeries[] => {
    const points = x.flatMap((each) => {
      const seconds = of(each);
      return seconds === undefined || seconds > MOST_SECONDS || seconds < LEAST_SECONDS ? [] : [{ each, seconds: shown(seconds) }];
    });
    return points.length < 2 ? [] : [{ name, kind, unit: 's', values: points.map(({ seconds }) => seconds), at: points.map(({ each }) => each) }];
  };
  const times = (each: number) => fuseTimes({ standard, ratedAmps: amps, amps: Math.min(each, 1e4) });
  return {
    caption:
      'A fuse of this rating opens somewhere between the two fuse lines. Along the winding’s line its temperature passes the limit of its class: the slowest fuse must stay below it. ' +
      'The dot is switch-on, as its I²t spread over half a mains cycle; the upright line is a dead short, first moment.',
    x: { name: 'RMS through the fuse', unit: 'A', values: x },
    isLogarithmic: true,
    series: [
      ...curve('slowest fuse of the standard', 'amps', (each) => times(each).maxSeconds),
      ...curve('earliest it may open', 'faint', (each) => times(each).minSeconds),
      ...curve('winding passes its limit', 'limit', (each) => windingEndurance({ heat, rmsAmps: Math.min(1e4, each / ratio), airCelsius: values.airCelsius, startCelsius: warmCelsius(values, heat), limitCelsius: limit })),
      ...(surgeAmps > least ? [{ name: 'switch-on', kind: 'volts' as const, unit: 's' as const, values: [halfCycle], at: [shown(surgeAmps)], dots: true as const }] : []),
    ],
    markAt: race.fuseAmps.first,
  };
}

function cardOf(values: Values, id: string, taken: FuseCase): StandardCard {
  const at = id === values.standard ? taken : fuseIn(taken, { ...values, standard: id as Values['standard'], fuse: 'pick' });
  const findings = findingsOf({ ...values, standard: id as Values['standard'] }, at).filter(({ rule }) => rule.startsWith('fuse-'));
  const { latestSeconds } = at.race;
  return {
    name: at.standard.name.split(':')[0] ?? id,
    taken: id === values.standard,
    rating: showMarked(at.amps, 'A'),
    words: `${at.standard.action}; on a dead short it ${latestSeconds === undefined ? 'need never open' : `opens within ${showQuantity(latestSeconds, 's', 2)}`}`,
    level: worstLevel(findings),
  };
}

function workingOf(values: Values, at: FuseCase): readonly WorkingStep[] {
  const { standard, amps, race, atSwitchOn } = at;
  return [
    workingStep({
      name: 'rms-over-dc', words: `RMS through the fuse at ${at.worstCorner}, for ${showMarked(values.loadAmps, 'A')} DC: the fuse is heated by this.`, formula: 'Root of the mean of the squared current',
      numbers: [], result: { symbol: 'I', value: at.runningAmps, unit: 'A' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'may-carry', words: 'What a fuse of this rating may carry for ever.', formula: 'C = R × p',
      numbers: [{ symbol: 'R', value: amps, unit: 'A' }, { symbol: 'p', value: standard.continuousShare, unit: '%' }], result: { symbol: 'C', value: amps * standard.continuousShare, unit: 'A' }, source: standard.source,
    }),
    workingStep({
      name: 'surge', words: values.place === 'primary' ? 'I²t at switch-on from above: the reservoir’s through the turns ratio and the saturated core’s.' : 'I²t of the empty reservoir’s charge, at the worst phase of the mains.',
      formula: values.place === 'primary' ? '(√A + √B)² of both' : 'Solved in time at every 15° of the cycle', numbers: [], result: { symbol: 'J', value: at.surgeA2s, unit: 'A²s' }, source: { id: 'solved' },
    }),
    ...(values.place === 'primary'
      ? []
      : [workingStep({ name: 'surge-bound', words: 'What the textbook has for it, charging from a steady peak.', formula: 'C × V² / (2 × R), from above', numbers: [], result: { symbol: 'B', value: at.surge.boundA2s, unit: 'A²s' }, source: { id: 'note-fuse-guide' } })]),
    ...(atSwitchOn.meltingA2s === undefined
      ? []
      : [
          workingStep({
            name: 'surge-allowed', words: `What it bears ${showMarked(values.starts, '')} times.`, formula: 'a = M × s',
            numbers: [{ symbol: 'M', value: atSwitchOn.meltingA2s, unit: 'A²s' }, { symbol: 's', value: pulseShare(values.starts), unit: '%' }], result: { symbol: 'a', value: atSwitchOn.meltingA2s * pulseShare(values.starts), unit: 'A²s' }, source: { id: 'note-fuse-guide' },
          }),
        ]),
    workingStep({
      name: 'fault', words: 'A dead short of the secondary, first moment, as the fuse sees it; its own resistance counted.', formula: values.place === 'primary' ? 'Open-circuit volts over winding ohms, times the turns ratio' : 'Open-circuit volts over winding and fuse ohms',
      numbers: [], result: { symbol: 'F', value: race.fuseAmps.first, unit: 'A' }, source: { id: 'solved' },
    }),
    workingStep({ name: 'fault-multiple', words: 'That over the rating.', formula: 'm = F / R', numbers: [{ symbol: 'F', value: race.fuseAmps.first, unit: 'A' }, { symbol: 'R', value: amps, unit: 'A' }], result: { symbol: 'm', value: race.multiple, unit: '' }, source: { id: 'arithmetic' } }),
  ];
}

function cornersOf(at: FuseCase, findings: readonly Finding[]): readonly CornerFigure[] {
  const { race, atSwitchOn, amps, standard } = at;
  return [
    { name: 'running, worst corner', value: at.runningAmps, unit: 'A', of: 'RMS', level: levelOfRule(findings, 'fuse-running'), found: `may carry ${showQuantity(amps * standard.continuousShare, 'A')} for ever` },
    { name: 'switch-on, worst phase', value: at.surgeA2s, unit: 'A²s', of: '', level: levelOfRule(findings, 'fuse-inrush'), found: atSwitchOn.meltingA2s === undefined ? 'melting integral not promised' : `melts at ${showQuantity(atSwitchOn.meltingA2s, 'A²s')}`, restsOn: `${atSwitchOn.meltingBasis ?? 'no'} melting integral` },
    {
      name: 'dead short, winding warm', value: race.fuseAmps.first, unit: 'A', of: 'in the fuse', level: levelOfRule(findings, 'fuse-race'),
      found: race.latestSeconds === undefined ? 'it need never open' : `opens within ${showQuantity(race.latestSeconds, 's', 2)}`,
      restsOn: race.overloadLimitSeconds === undefined ? 'winding’s heating assumed' : `winding at its limit after ${showQuantity(race.overloadLimitSeconds, 's', 2)}, assumed`,
    },
  ];
}

function solve(values: Values): FusePickView {
  const at = fuseIn(fusePlace(values), values);
  const findings = findingsOf(values, at);
  const where = values.place === 'primary' ? 'in the primary' : 'between winding and rectifier';
  const rating = showMarked(at.amps, 'A');
  const ending = at.race.protects ? `and on a dead short it opens within ${showQuantity(at.race.latestSeconds ?? 0, 's', 2)}, before the winding passes its limit` : 'but on a dead short the winding passes its limit first';
  return {
    level: worstLevel(findings),
    summary: at.fitted === undefined ? `there is no fuse ${where}; ${showMarked(at.pickedAmps, 'A')} is wanted` : `${rating} ${at.standard.action} ${where}: it carries ${showQuantity(at.runningAmps, 'A')} RMS for ${showMarked(values.loadAmps, 'A')} DC, ${ending}`,
    shows: { fitted: values.fuse === 'this', primary: values.place === 'primary' },
    corners: cornersOf(at, findings),
    findings,
    standards: values.fuse === 'none' ? [] : FUSE_STANDARDS.map(({ id }) => cardOf(values, id, at)),
    plot: plotOf(values, at),
    working: workingOf(values, at),
    handOn: [handOn(headroom, { what: 'The rail behind this fuse', from: { ...values, loadAmps: Math.min(5, values.loadAmps) } })],
  };
}

export const fusePick = defineCalculator({
  ...fusePickFace,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts', 'winding.ohms': 'regulation', 'winding.ratedAmps': 'windingAmps', ratedAmps: 'fuseAmps', voltAmps: 'windingAmps', 'load.everythingAmps': 'loadAmps',
    'cooling.airCelsius': 'airCelsius', 'stage.designVolts': 'windingVolts', rmsAmps: 'loadAmps', surgeA2s: 'farads', secondaryVolts: 'windingVolts', startCelsius: 'airCelsius', runningRmsAmps: 'loadAmps',
  },
  solve,
});
