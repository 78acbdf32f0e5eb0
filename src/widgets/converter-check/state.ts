import { InputError } from '../../compute/errors.ts';
import { worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { checkCreepage } from '../../compute/findings/creepage.ts';
import { startUpLimit, type ConverterRow } from '../../compute/parts/converter.ts';
import { startConverter, type ConverterStart } from '../../compute/supplies/converter-start.ts';
import type { ConverterSolution } from '../../compute/supplies/converter-types.ts';
import { supplyFromConverter } from '../../compute/supplies/converter.ts';
import { loadDraw } from '../../compute/supplies/load-draw.ts';
import { MOST_TRIES } from '../../compute/supplies/solve-converter.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { levelOfRule, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { PlotData } from '../shared/plot-data.ts';
import { railIsSet } from '../shared/stage-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { windingPickFace } from '../winding-pick/fields.ts';
import { converterCheckFace, PICKED } from './fields.ts';
import { planOf, railOf, type Values } from './plan.ts';

/** How one kind of limit would start the same load. */
export interface StartCard {
  readonly name: string;
  readonly taken: boolean;
  readonly outcome: string;
  readonly detail: string;
  readonly level: Level;
}

export interface ConverterCheckView extends ViewModel {
  readonly shows: { readonly railVolts: boolean; readonly module: boolean; readonly heaters: boolean };
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly starts: readonly StartCard[];
  readonly plot: PlotData;
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

const KINDS = ['hiccup', 'foldback', 'constant-current'] as const;
type Kind = (typeof KINDS)[number];
const KIND_NAMES: Readonly<Record<Kind, string>> = { hiccup: 'Hiccup', foldback: 'Foldback', 'constant-current': 'Constant current' };

function startOf(values: Values, part: ConverterRow, kind: Kind): ConverterStart {
  const plan = planOf(values);
  const draw = loadDraw(plan);
  const setVolts = values.regulator === 'none' ? part.outputVolts : plan.rail.volts;
  return startConverter({
    setVolts,
    limit: startUpLimit({ part, kind }),
    ...(draw.heater === undefined ? {} : { heater: draw.heater }),
    ...(draw.otherAmps > 0 ? { loadOhms: Math.max(1e-3, plan.rail.volts / draw.otherAmps) } : {}),
  });
}

const outcomeOf = ({ starts, seconds, tries }: ConverterStart): string =>
  !starts ? 'never starts' : seconds === 0 ? 'starts at once' : tries > 1 ? `${tries} tries, ${showQuantity(seconds, 's', 2)}` : `up after ${showQuantity(seconds, 's', 2)}`;

function cardsOf(values: Values, part: ConverterRow, taken: Kind): readonly StartCard[] {
  return KINDS.map((kind) => {
    const start = startOf(values, part, kind);
    return {
      name: kind === taken ? `${KIND_NAMES[kind]} (${values.startUp === 'unknown' || values.module === PICKED ? 'assumed' : 'read'})` : KIND_NAMES[kind],
      taken: kind === taken,
      outcome: outcomeOf(start),
      detail: start.starts ? 'then the rail stands' : `sits at ${showQuantity(start.volts, 'V')} after ${showQuantity(start.seconds, 's', 2)}`,
      level: !start.starts || start.tries > MOST_TRIES ? 'outside' : start.tries > 1 || start.seconds > 10 ? 'marginal' : 'within',
    };
  });
}

const MOST_POINTS = 200;
const rounded = (value: number): number => Number(value.toPrecision(4));

/** Places of a long course of which every stretch keeps its highest and its lowest: a hiccup must not look like a slope. */
function keptPlaces(values: readonly number[]): readonly number[] {
  const width = Math.ceil((2 * values.length) / MOST_POINTS);
  if (width <= 2) return values.map((_, index) => index);
  const kept: number[] = [];
  for (let from = 0; from < values.length; from += width) {
    let low = from;
    let high = from;
    for (let at = from; at < Math.min(values.length, from + width); at += 1) {
      if ((values[at] ?? 0) < (values[low] ?? 0)) low = at;
      if ((values[at] ?? 0) > (values[high] ?? 0)) high = at;
    }
    kept.push(...(low < high ? [low, high] : low > high ? [high, low] : [low]));
  }
  return [...kept, values.length - 1].filter((at, index, all) => at !== all[index - 1]);
}

/** Seconds shown after the rail has come up. */
const AFTER = 1;

function plotOf({ part, start }: ConverterSolution, setVolts: number): PlotData {
  const { trace } = start;
  const limitAmps = part.ratedAmps * part.overloadRatio;
  const seconds: number[] = [];
  const amps: number[] = [];
  const volts: number[] = [];
  const mark = (time: number, index: number): void => {
    seconds.push(rounded(time));
    amps.push(rounded(trace.amps[index] ?? 0));
    volts.push(rounded(trace.volts[index] ?? 0));
  };
  let last: number | undefined;
  for (const index of keptPlaces(trace.amps)) {
    const time = trace.seconds[index] ?? 0;
    // A hiccup goes on and off at once; each value of the course holds until the next.
    if (last !== undefined && (trace.volts[last] === 0) !== (trace.volts[index] === 0)) mark(time, last);
    mark(time, index);
    last = index;
  }
  if (start.starts) {
    // From here on the heaters only ask for less.
    seconds.push(rounded((seconds.at(-1) ?? 0) + AFTER));
    amps.push(amps.at(-1) ?? 0);
    volts.push(rounded(setVolts));
  }
  return {
    caption: start.starts
      ? start.seconds === 0
        ? 'The cold load asks for no more than the limit: the rail stands at once.'
        : 'What the load takes while its heaters warm, against the module’s limit, and the rail meanwhile.'
      : 'What the load takes, try after try, against the module’s limit; the rail never stands.',
    x: { name: 'time since switch-on', unit: 's', values: seconds },
    series: [
      { name: 'load', kind: 'amps', unit: 'A', values: amps },
      { name: 'the module’s limit', kind: 'limit', unit: 'A', values: seconds.map(() => rounded(limitAmps)) },
      { name: 'rail', kind: 'volts', unit: 'V', values: volts },
    ],
  };
}

function workingOf(values: Values, solution: ConverterSolution): readonly WorkingStep[] {
  const { part, loadAmps, derated, start, leakageAmps } = solution;
  const mainsVolts = values.mainsVolts * (1 + values.mainsSpread);
  return [
    workingStep({
      name: 'derated', words: `What it may give in this air, by its derating curve.`, formula: 'D = R × k',
      numbers: [{ symbol: 'R', value: part.ratedAmps, unit: 'A' }, { symbol: 'k', value: derated.share, unit: '%' }], result: { symbol: 'D', value: derated.amps, unit: 'A' }, source: part.source,
    }),
    workingStep({
      name: 'limit', words: 'Where its limit stands.', formula: 'L = R × o',
      numbers: [{ symbol: 'R', value: part.ratedAmps, unit: 'A' }, { symbol: 'o', value: part.overloadRatio, unit: '' }], result: { symbol: 'L', value: part.ratedAmps * part.overloadRatio, unit: 'A' }, source: part.source,
    }),
    workingStep({
      name: 'cold-demand', words: 'What the load would take cold at full volts, over that limit.', formula: 'Cold conductance of heaters and the rest, times the volts, over the limit',
      numbers: [], result: { symbol: 'c', value: start.coldDemandRatio, unit: '' }, source: { id: 'heater-cold-current' },
    }),
    workingStep({
      name: 'start', words: 'Until full volts: heaters as heat stores that radiate, fed within the limit, followed in time.', formula: 'Solved in time',
      numbers: [], result: { symbol: 't', value: start.seconds, unit: 's' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'heat', words: 'Heat of the module with everything on.', formula: 'P = V × I / e − V × I',
      numbers: [{ symbol: 'V', value: part.outputVolts, unit: 'V' }, { symbol: 'I', value: loadAmps.everything, unit: 'A' }, { symbol: 'e', value: part.efficiency, unit: '%' }],
      result: { symbol: 'P', value: solution.moduleWatts, unit: 'W' }, source: part.source,
    }),
    workingStep({
      name: 'leakage', words: 'Leakage at high mains: the printed one, by volts and hertz, since it comes through a capacitor.', formula: 'Y = A × M / 230 V × f / 50 Hz',
      numbers: [{ symbol: 'A', value: part.leakageAmps, unit: 'A' }, { symbol: 'M', value: mainsVolts, unit: 'V' }, { symbol: 'f', value: Number(values.mainsHertz), unit: 'Hz' }],
      result: { symbol: 'Y', value: leakageAmps, unit: 'A' }, source: { id: 'solved' },
    }),
  ];
}

const UNASKED = new Set(['room', 'insulation-from-high-tension']);

function cornersOf(values: Values, solution: ConverterSolution, findings: readonly Finding[]): readonly CornerFigure[] {
  const { part, start, loadAmps, derated, moduleWatts, leakageAmps, floatingVolts } = solution;
  const high = planOf(values).mains;
  return [
    {
      name: 'switch-on, heaters cold', value: start.seconds, unit: 's', of: start.starts ? 'until the rail stands' : 'and still not up', level: levelOfRule(findings, 'converter-start'),
      found: start.starts ? (start.tries > 1 ? `${start.tries} tries` : 'one try') : `asks for ${start.coldDemandRatio.toPrecision(2)} times its limit`,
      restsOn: values.startUp === 'unknown' || values.module === PICKED ? 'kind of limit assumed' : 'kind of limit as read',
    },
    {
      name: `everything on, air at ${showMarked(values.airCelsius, '°C')}`, value: loadAmps.everything, unit: 'A', of: 'out of it', level: levelOfRule(findings, 'converter-rating'),
      found: `may give ${showQuantity(derated.amps, 'A')} there, and warms by ${showQuantity(moduleWatts, 'W')}`, restsOn: `${part.basis} derating of ${showMarked(part.ratedAmps, 'A')}`,
    },
    { name: mainsName(high, 'high'), value: leakageAmps, unit: 'A', of: 'leakage', level: levelOfRule(findings, 'converter-leakage'), found: values.bond === 'bonded' ? 'into the bond' : `floats at up to ${showQuantity(floatingVolts, 'V')}`, restsOn: values.leakageAmps === undefined ? 'leakage usual for its class' : 'leakage as printed' },
  ];
}

function solve(values: Values): ConverterCheckView {
  const plan = planOf(values);
  if (plan.loads.length === 0) throw new InputError('switchedAmps', values.switchedAmps, { expected: 'some load, here or as lamps or heaters' });
  const supply = supplyFromConverter(plan);
  const solution = supply.converter;
  if (solution === undefined) throw new InputError('setVolts', values.setVolts, { expected: 'a rail that a usual module gives (5, 12 or 24 V), or a regulator behind one of more volts' });
  const { part, start, loadAmps, derated } = solution;
  const findings = [
    ...supply.findings.filter(({ rule }) => !UNASKED.has(rule)),
    checkCreepage({ corner: 'high mains', restsOn: ['measured'], workingVolts: plan.mains.highVolts, ...(values.creepageMetres === undefined ? {} : { metres: values.creepageMetres }) }),
  ];
  // What only a listening test can tell has no part in whether it starts and stays cool.
  const level = worstLevel(findings.filter(({ rule }) => rule !== 'switching-residue'));
  const setVolts = values.regulator === 'none' ? part.outputVolts : railOf(values);
  return {
    level,
    summary: `a ${part.name} ${start.starts ? (start.seconds === 0 ? 'starts this load at once' : `starts this load, ${outcomeOf(start)}`) : 'does not start this load'}; it then gives ${showQuantity(loadAmps.everything, 'A')} of the ${showQuantity(derated.amps, 'A')} it may in air of ${showMarked(values.airCelsius, '°C')}. Whether it is heard is for a listening test`,
    shows: { railVolts: values.regulator === 'none' ? values.module === PICKED : railIsSet(values), module: values.module !== PICKED, heaters: values.heaterAmps >= 0.01 },
    corners: cornersOf(values, solution, findings),
    findings,
    starts: cardsOf(values, part, part.startUpKind),
    plot: plotOf(solution, setVolts),
    working: workingOf(values, solution),
    handOn: [
      handOn(windingPickFace, {
        what: 'The same rail from a small transformer',
        from: { regulator: values.regulator, setVolts: values.setVolts, mainsVolts: values.mainsVolts, mainsHertz: values.mainsHertz, mainsSpread: values.mainsSpread, airCelsius: values.airCelsius },
        given: { loadAmps: rounded(loadAmps.everything) },
      }),
    ],
  };
}

export const converterCheck = defineCalculator({
  ...converterCheckFace,
  quantities: {
    outputVolts: 'setVolts', railVolts: 'setVolts', 'stage.outputVolts': 'setVolts', 'parts.converter.outputVolts': 'setVolts', 'heater.volts': 'heaterVolts', 'limit amps': 'overload', loadOhms: 'switchedAmps', 'heater amps together': 'heaterAmps',
    amps: 'switchedAmps', volts: 'heaterVolts',
  },
  solve,
});
