import { worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { checkPhasing } from '../../compute/findings/phasing.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../../compute/findings/regulator.ts';
import { COMMON_SECONDARY_VOLTS, construction, typicalRegulation } from '../../compute/parts/transformer.ts';
import type { PlanTransformer } from '../../compute/plan/plan-types.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import { chainFindings } from '../../compute/supplies/chain-findings.ts';
import type { ChainInput, ChainSolution, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import { solveChain } from '../../compute/supplies/chain.ts';
import { operatingCorners } from '../../compute/supplies/corners.ts';
import { neededInputVolts } from '../../compute/supplies/regulator-stage.ts';
import { primaryFuse } from '../../compute/supplies/size-fuses.ts';
import { decidingCorner, sizeReservoir } from '../../compute/supplies/size-reservoir.ts';
import { sizeAtVolts, sizeTransformer, transformerWinding, type SizedAtVolts } from '../../compute/supplies/size-transformer.ts';
import { checkFrequency, strayField, transformerFindings } from '../../compute/supplies/transformer-findings.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { fusePickFace } from '../fuse-pick/fields.ts';
import { headroom } from '../headroom/state.ts';
import { rectify } from '../rectify/state.ts';
import { decidingCorners, levelOfRule, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { PlotData } from '../shared/plot-data.ts';
import { railIsSet, railVoltsOf, stageOf } from '../shared/stage-fields.ts';
import { diodeOf, mainsOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { switchOnFace } from '../switch-on/fields.ts';
import { windingPickFace } from './fields.ts';

type Values = ValuesOf<typeof windingPickFace.fields>;

/** One secondary voltage beside its neighbours. */
export interface Rung {
  readonly name: string;
  readonly picked: boolean;
  readonly spare: string;
  readonly heat: string;
  readonly level: Level;
}

export interface WindingPickView extends ViewModel {
  readonly shows: { readonly railVolts: boolean; readonly inHand: boolean; readonly joined: boolean };
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  /** The voltages about the one taken, the same rows for each. */
  readonly rungs: readonly Rung[];
  readonly reservoir: string;
  readonly plot: PlotData;
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

type Bare = Omit<ChainInput, 'reservoir' | 'winding'>;

/** A transformer with the chain built on it. */
interface Taken {
  readonly transformer: PlanTransformer;
  readonly input: ChainInput;
  readonly found: boolean;
}

function bareOf(values: Values): Bare {
  const { topology, loadAmps, airCelsius, heatsink } = values;
  return {
    mains: mainsOf(values),
    topology,
    diode: diodeOf(values),
    stage: stageOf(values),
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius, ...(heatsink === undefined ? {} : { heatsinkKelvinPerWatt: heatsink }) },
  };
}

function inHand({ secondaryVolts, secondaries, voltAmps, rise, topology, mark }: Values): PlanTransformer {
  return {
    secondaryVolts,
    secondaries: topology === 'centre-tap' ? 'two-as-centre-tap' : secondaries,
    voltAmps,
    regulationRatio: rise ?? typicalRegulation({ construction: construction('laminated'), voltAmps }).typical,
    shortCircuitMark: mark,
    basis: rise === undefined ? 'typical' : 'rated',
  };
}

function take(values: Values, bare: Bare): Taken {
  if (values.which === 'this') {
    const transformer = inHand(values);
    const winding = transformerWinding(transformer);
    return { transformer, input: { ...bare, winding, reservoir: sizeReservoir({ ...bare, winding }).reservoir }, found: true };
  }
  const sized = sizeTransformer(bare);
  return {
    transformer: { ...sized.transformer, shortCircuitMark: values.mark },
    input: { ...bare, winding: sized.winding, reservoir: sized.reservoir.reservoir },
    found: sized.found,
  };
}

const twice = ({ secondaries }: PlanTransformer): string => (secondaries === 'one' ? '' : '2 × ');

const nameOf = (transformer: PlanTransformer): string =>
  `${twice(transformer)}${showMarked(transformer.secondaryVolts, 'V')}, ${showMarked(transformer.voltAmps, 'VA')}`;

/** The corner of most heat in the regulator that a transformer meets: high mains, everything on. */
function hotCorner(bare: Bare, at: SizedAtVolts): SolvedCorner | undefined {
  const corner = operatingCorners(bare.mains).find(({ mains, load, reservoir }) => mains === 'high' && load === 'everything' && reservoir === 'largest');
  const solved = corner === undefined ? undefined : solveCorner({ ...bare, winding: at.winding, reservoir: at.reservoir.reservoir }, corner);
  return solved?.solved === true ? solved : undefined;
}

function rungOf(bare: Bare, at: SizedAtVolts, picked: boolean): Rung {
  const { marginVolts } = at;
  const holds = marginVolts >= WANTED_VALLEY_MARGIN_VOLTS;
  const hot = hotCorner(bare, at);
  return {
    name: nameOf(at.transformer),
    picked,
    spare: Number.isFinite(marginVolts) ? `${showQuantity(Math.abs(marginVolts), 'V')} ${marginVolts < 0 ? 'short' : 'to spare'}` : 'cannot feed it',
    heat: `at low mains${hot === undefined || bare.stage.kind === 'none' ? '' : `; ${showQuantity(hot.regulatorWatts, 'W')} in the regulator at high mains`}`,
    level: !at.carries || marginVolts < 0 ? 'outside' : holds ? 'within' : 'marginal',
  };
}

/** The rungs about the volts taken: one lower, these, one higher. */
function rungsOf(bare: Bare, ladder: readonly SizedAtVolts[], volts: number): readonly Rung[] {
  const at = ladder.findIndex(({ transformer }) => transformer.secondaryVolts >= volts - 1e-9);
  const middle = at < 0 ? ladder.length - 1 : at;
  const from = Math.min(Math.max(0, middle - 1), Math.max(0, ladder.length - 3));
  return ladder.slice(from, from + 3).map((each) => rungOf(bare, each, Math.abs(each.transformer.secondaryVolts - volts) < 1e-9));
}

function plotOf(bare: Bare, ladder: readonly SizedAtVolts[], markAt: number): PlotData {
  const needed = bare.stage.kind === 'none' ? 0.9 * bare.stage.designVolts : neededInputVolts(bare.stage, bare.load.everythingAmps);
  const solved = ladder.flatMap((each) => (each.reservoir.at.solved ? [{ volts: each.transformer.secondaryVolts, at: each.reservoir.at, winding: each.winding }] : []));
  const doubled = bare.topology === 'doubler' ? 2 : 1;
  const highest = (openCircuitVolts: number): number => (doubled * openCircuitVolts * Math.SQRT2 * bare.mains.highVolts) / bare.mains.nominalVolts;
  return {
    caption: 'The rail holds where the solid line is above the dashed one. The dotted line is what reservoir and regulator must bear with nothing drawn, diodes not taken off. Each point is a standard secondary in the smallest size that carries the load, with its usual rise.',
    x: { name: 'secondary, rated volts', unit: 'V', values: solved.map(({ volts }) => volts) },
    series: [
      { name: 'valley at low mains', kind: 'volts', unit: 'V', values: solved.map(({ at }) => at.rectifier.rail.minVolts) },
      { name: bare.stage.kind === 'none' ? 'nine tenths of the rail' : 'regulator may need', kind: 'needed', unit: 'V', values: solved.map(() => needed) },
      { name: 'most at high mains, unloaded', kind: 'other', unit: 'V', values: solved.map(({ winding }) => highest(winding.openCircuitVolts)) },
    ],
    markAt,
  };
}

function sizeSteps({ transformer, input }: Taken, chain: ChainSolution): readonly WorkingStep[] {
  const { winding } = input;
  const worst = chain.worst?.windingCurrent;
  const volts = transformer.secondaryVolts;
  return [
    workingStep({
      name: 'rated-amps',
      words: transformer.secondaries === 'one' ? 'What the secondary is rated to carry.' : 'What each of the two secondaries is rated to carry: half of the size each.',
      formula: transformer.secondaries === 'one' ? 'R = S / V' : 'R = S / (2 × V)',
      numbers: [{ symbol: 'S', value: transformer.voltAmps, unit: 'VA' }, { symbol: 'V', value: volts, unit: 'V' }],
      result: { symbol: 'R', value: transformer.voltAmps / volts / (transformer.secondaries === 'one' ? 1 : 2), unit: 'A' },
      source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'open-circuit',
      words: 'What it gives with nothing connected, joined as it is used.',
      formula: transformer.secondaries === 'two-in-series' ? 'E = 2 × V × (1 + r)' : 'E = V × (1 + r)',
      numbers: [{ symbol: 'V', value: volts, unit: 'V' }, { symbol: 'r', value: transformer.regulationRatio, unit: '' }],
      result: { symbol: 'E', value: winding.openCircuitVolts, unit: 'V' },
      source: { id: transformer.basis === 'typical' ? 'typical-small-transformers' : 'note-transformer-regulation' },
    }),
    ...(worst === undefined || winding.ratedAmps === undefined
      ? []
      : [
          workingStep({
            name: 'winding-share',
            words: `RMS current of the winding at ${worst.corner.words}, over its rating.`,
            formula: 's = I / W',
            numbers: [{ symbol: 'I', value: worst.windingRmsAmps, unit: 'A' }, { symbol: 'W', value: winding.ratedAmps, unit: 'A' }],
            result: { symbol: 's', value: worst.windingRmsAmps / winding.ratedAmps, unit: '%' },
            source: { id: 'solved' },
          }),
        ]),
  ];
}

function cornersOf(values: Values, input: ChainInput, chain: ChainSolution, findings: readonly Finding[]): readonly CornerFigure[] {
  const { valley, windingCurrent, peak, heat } = decidingCorners(chain);
  const spare = valley.headroomVolts ?? valley.rectifier.rail.minVolts - 0.9 * values.setVolts;
  const level = input.stage.kind === 'none' ? (spare < 0 ? 'outside' : 'within') : levelOfRule(findings, 'regulator-valley');
  const rated = input.winding.ratedAmps ?? 0;
  return [
    { name: mainsName(input.mains, 'low'), value: valley.rectifier.rail.minVolts, unit: 'V', of: 'valley', level, found: `${showQuantity(Math.abs(spare), 'V')} ${spare < 0 ? 'short' : 'to spare'}`, restsOn: 'smallest and oldest reservoir, flat-topped mains' },
    {
      name: `worst · ${windingCurrent.corner.mains} mains`, value: windingCurrent.windingRmsAmps, unit: 'A', of: 'RMS', level: levelOfRule(findings, 'winding-current'),
      found: `of ${showQuantity(rated, 'A')} rated, for ${showMarked(values.loadAmps, 'A')} DC`, restsOn: input.winding.basis === 'typical' ? 'a rise usual for its size' : 'its own printed rise',
    },
    {
      name: mainsName(input.mains, 'high'), value: peak.rectifier.rail.maxVolts, unit: 'V', of: 'unloaded', level: worstLevel(findings.filter(({ rule }) => rule === 'regulator-input' || rule === 'capacitor-volts')),
      found: input.stage.kind === 'none' ? `reservoir rated ${showMarked(input.reservoir.ratedVolts, 'V')}` : `and ${showQuantity(heat.regulatorWatts, 'W')} in the regulator under load`,
    },
  ];
}

function findingsOf(values: Values, { transformer, input }: Taken, chain: ChainSolution): readonly Finding[] {
  const { mains } = input;
  return [
    ...chainFindings(input, chain),
    ...transformerFindings({ mains, transformer }),
    ...primaryFuse({ transformer, winding: input.winding, mainsVolts: mains.nominalVolts, hertz: mains.hertz, chosen: undefined }).findings.filter(({ rule }) => rule === 'primary-fuse-clears'),
    ...(values.madeFor === 'both' ? [] : checkFrequency({ mains, ratedHertz: values.madeFor === '60' ? 60 : 50 })),
    ...checkPhasing({
      corner: 'before anything is connected behind it', restsOn: ['assumed'], secondaries: transformer.secondaries, secondaryVolts: transformer.secondaryVolts, winding: input.winding,
      ...(values.freeEndVolts === undefined ? {} : { freeEndVolts: values.freeEndVolts }),
    }),
    strayField,
  ];
}

function handOns(values: Values, { transformer, input }: Taken): readonly HandOnLink[] {
  const { winding, reservoir } = input;
  const rounded = (value: number): number => Number(value.toPrecision(4));
  const given = {
    windingVolts: rounded(winding.openCircuitVolts / (1 + transformer.regulationRatio)),
    windingAmps: rounded(winding.ratedAmps ?? 0),
    regulation: rounded(transformer.regulationRatio),
    farads: reservoir.farads,
    ratedVolts: reservoir.ratedVolts,
  };
  const { regulator, setVolts, heatsink, ...shared } = values;
  const linear = input.stage.kind !== 'none' && input.stage.kind !== 'buck';
  return [
    ...(linear ? [handOn(headroom, { what: 'This transformer and its regulator', from: { ...shared, regulator, setVolts, heatsink: heatsink ?? '' }, given })] : []),
    handOn(rectify, { what: nameOf(transformer), from: shared, given: { ...given, floorVolts: rounded(input.stage.kind === 'none' ? 0.9 * setVolts : neededInputVolts(input.stage, values.loadAmps)) } }),
    handOn(fusePickFace, { what: 'Its fuse', from: { ...shared, ...given } }),
    handOn(switchOnFace, { what: 'Its first seconds', from: { ...shared, ...given, regulator, setVolts }, given: { heaterAmps: 0, steadyAmps: values.loadAmps, coils: 0 } }),
  ];
}

function solve(values: Values): WindingPickView {
  const bare = bareOf(values);
  const taken = take(values, bare);
  const { transformer, input } = taken;
  const chain = solveChain(input);
  const findings = findingsOf(values, taken, chain);
  const { windingCurrent } = decidingCorners(chain);
  const ladder = COMMON_SECONDARY_VOLTS.flatMap((volts) => sizeAtVolts(bare, volts) ?? []);
  const corners = cornersOf(values, input, chain, findings);
  // What only a listening test can tell has no part in which one to buy.
  const level = worstLevel(findings.filter(({ rule }) => rule !== strayField.rule));
  const verb = values.which === 'this' ? 'the one in hand' : taken.found ? 'buy' : 'nothing standard holds this rail; the largest tried is';
  return {
    level,
    summary: `${verb}: ${nameOf(transformer)}. Its valley has ${corners[0]?.found ?? ''} for a rail of ${showMarked(railVoltsOf(values), 'V')}, and its winding carries ${showQuantity(windingCurrent.windingRmsAmps, 'A')} RMS of ${showQuantity(input.winding.ratedAmps ?? 0, 'A')}`,
    shows: { railVolts: railIsSet(values), inHand: values.which === 'this', joined: values.which === 'this' && values.topology !== 'centre-tap' && values.secondaries !== 'one' },
    corners,
    findings,
    rungs: rungsOf(bare, ladder, transformer.secondaryVolts),
    reservoir: `Solved with a reservoir of ${showMarked(input.reservoir.farads, 'F')} rated ${showMarked(input.reservoir.ratedVolts, 'V')}${values.topology === 'doubler' ? ', two of them' : ''}, the smallest standard one that serves; worst at ${decidingCorner(bare.mains).words}.`,
    plot: plotOf(bare, ladder, transformer.secondaryVolts),
    working: [...sizeSteps(taken, chain), ...chain.working],
    handOn: handOns(values, taken),
  };
}

export const windingPick = defineCalculator({
  ...windingPickFace,
  quantities: {
    outputVolts: 'setVolts', 'stage.outputVolts': 'setVolts', 'stage.designVolts': 'setVolts', 'load.everythingAmps': 'loadAmps',
    ratedVolts: 'secondaryVolts', ratedAmps: 'voltAmps', 'winding.openCircuitVolts': 'secondaryVolts', 'winding.ohms': 'voltAmps', 'winding.ratedAmps': 'voltAmps',
    'cooling.airCelsius': 'airCelsius', 'cooling.heatsinkKelvinPerWatt': 'heatsink',
  },
  solve,
});
