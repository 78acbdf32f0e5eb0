import { SolveError } from '../../compute/errors.ts';
import { levelOfMargin, worstLevel, type Finding } from '../../compute/findings.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { JUNCTION_AIM_CELSIUS } from '../../compute/parts/heatsink.ts';
import { LINEAR_REGULATORS, linearRegulator } from '../../compute/parts/regulator-linear.ts';
import type { ChainInput, ChainSolution, LinearStage, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import { chainDiode, chainReservoir, linearStage } from '../../compute/supplies/chain-parts.ts';
import { solveChain } from '../../compute/supplies/chain.ts';
import type { MainsState } from '../../compute/supplies/corners.ts';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { cycleOf, type Cycle } from '../shared/cycle.ts';
import { defineCalculator, type FieldSet, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import type { Stair } from '../shared/stairs.tsx';
import { diodeField, mainsFields, mainsOf, reservoirFields, topologyField, windingFields, windingOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';

export const fields = {
  ...windingFields,
  topology: topologyField,
  diode: diodeField,
  ...reservoirFields,
  regulator: {
    kind: 'choice',
    label: 'Regulator',
    options: LINEAR_REGULATORS.map(({ id, name }) => ({ value: id, label: name })),
    default: '7812',
  },
  setVolts: { kind: 'quantity', label: 'Rail that the adjustable regulator is set to', unit: 'V', default: 12, min: 1.25, max: 36, stepping: 0.5 },
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.0767, min: 0, max: 5, assume: 'mA', stepping: 'e12', hint: 'everything on' },
  ...mainsFields,
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
  heatsink: { kind: 'quantity', label: 'Heatsink', unit: 'K/W', min: 0.5, max: 100, optional: true, blank: 'no heatsink', stepping: 'e6' },
} as const satisfies FieldSet;

type Values = ValuesOf<typeof fields>;

export interface HeadroomView extends ViewModel {
  readonly adjustable: boolean;
  readonly corners: readonly CornerFigure[];
  readonly stairs: readonly Stair[];
  readonly spareVolts: number;
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  /** The corner of least headroom over one mains cycle, and what the regulator needs there. */
  readonly cycle: Cycle;
  readonly neededVolts: number;
  readonly worstCorner: string;
  readonly labels: { readonly winding: string; readonly reservoir: string; readonly load: string; readonly volts: string; readonly regulator: string; readonly rail: string };
}

const stageOf = ({ regulator, setVolts }: Values): LinearStage => {
  const part = linearRegulator(regulator);
  return linearStage(part, part.family === 'adjustable' ? setVolts : undefined);
};

function chainOf(values: Values): ChainInput {
  const { topology, airCelsius, heatsink, loadAmps, farads, ratedVolts } = values;
  const mains = mainsOf(values);
  return {
    mains,
    winding: windingOf(values),
    topology,
    diode: chainDiode(diodePart(values.diode)),
    reservoir: chainReservoir({ farads, ratedVolts, topology, hertz: mains.hertz, airCelsius }),
    stage: stageOf(values),
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius, ...(heatsink === undefined ? {} : { heatsinkKelvinPerWatt: heatsink }) },
  };
}

const at = (chain: ChainSolution, state: MainsState, of: (corner: SolvedCorner) => number): SolvedCorner | undefined =>
  chain.corners
    .filter((corner) => corner.solved)
    .filter((corner) => corner.corner.mains === state)
    .reduce<SolvedCorner | undefined>((best, corner) => (best === undefined || of(corner) > of(best) ? corner : best), undefined);

const STAIR_NAMES = { 'winding-peak': 'winding peak, low mains', 'reservoir-top': 'after copper and diodes', valley: 'ripple valley', rail: 'rail' } as const;

/** The chain's stairs as levels to draw: what the regulator needs stands between the valley and the rail. */
function stairsOf(chain: ChainSolution, neededVolts: number): readonly Stair[] {
  const stairs: Stair[] = [];
  let lost: string[] = [];
  for (const stair of chain.stairs) {
    if (stair.kind === 'loss') {
      lost.push(`${stair.words.toLowerCase()} ${showQuantity(stair.volts, 'V')}`);
      continue;
    }
    if (stair.name === 'left-over') break;
    if (stair.name === 'rail') stairs.push({ name: 'regulator may need', volts: neededVolts, needed: true });
    stairs.push({
      name: STAIR_NAMES[stair.name as keyof typeof STAIR_NAMES],
      volts: stair.volts,
      ...(lost.length > 0 && stair.name !== 'rail' ? { lost: lost.join(', ') } : {}),
    });
    lost = [];
  }
  return stairs;
}

/** Headroom below which a margin is called marginal: the spread between meters, parts and models. */
const WANTED_VOLTS = 0.5;

function solve(values: Values): HeadroomView {
  const input = chainOf(values);
  const stage = input.stage as LinearStage;
  const chain = solveChain(input);
  const { worst } = chain;
  const nominal = at(chain, 'nominal', (corner) => corner.rectifier.rail.rippleVolts);
  if (worst === undefined || nominal === undefined) {
    throw new SolveError(chain.unsolved[0]?.reason ?? 'no-convergence', chain.unsolved[0]?.message ?? 'no corner could be solved');
  }
  const spareVolts = worst.valley.headroomVolts ?? 0;
  const junction = worst.heat.junctionCelsius ?? values.airCelsius;
  const low = levelOfMargin({ margin: spareVolts, wanted: WANTED_VOLTS });
  const hot = levelOfMargin({ margin: stage.maxJunctionCelsius - junction, wanted: stage.maxJunctionCelsius - JUNCTION_AIM_CELSIUS });
  const mains = (state: MainsState): string =>
    `${state} mains · ${showMarked({ low: input.mains.lowVolts, nominal: input.mains.nominalVolts, high: input.mains.highVolts }[state], 'V')}`;
  const spare = `${showQuantity(Math.abs(spareVolts), 'V')} ${spareVolts < 0 ? 'short' : 'spare'}`;
  const findings: readonly Finding[] = [];
  return {
    level: worstLevel([{ level: low }, { level: hot }, ...findings]),
    summary: `${spareVolts < 0 ? 'it drops out' : 'it holds'} at low mains, ${spare}; ${showQuantity(junction, '°C')} at its junction at high mains`,
    adjustable: stage.kind === 'adjustable',
    corners: [
      { name: mains('low'), value: worst.valley.rectifier.rail.minVolts, unit: 'V', of: 'valley', level: low, found: `${spareVolts < 0 ? 'drops out' : 'holds'}, ${spare}`, restsOn: 'planned dropout, typical' },
      { name: mains('nominal'), value: nominal.rectifier.rail.meanVolts, unit: 'V', of: 'mean', level: levelOfMargin({ margin: nominal.headroomVolts ?? 0, wanted: WANTED_VOLTS }), found: `${showQuantity(nominal.rectifier.rail.rippleVolts, 'V')} ripple` },
      { name: mains('high'), value: junction, unit: '°C', of: 'junction', level: hot, found: `${showQuantity(worst.heat.regulatorWatts, 'W', 2)}, ${values.heatsink === undefined ? 'no heatsink' : `on ${showMarked(values.heatsink, 'K/W')}`}` },
    ],
    stairs: stairsOf(chain, worst.valley.neededVolts),
    spareVolts,
    findings,
    working: chain.working,
    cycle: cycleOf(values.topology, worst.valley.rectifier.waveform),
    neededVolts: worst.valley.neededVolts,
    worstCorner: worst.valley.corner.words,
    labels: {
      winding: `${showMarked(values.windingVolts, 'V')} AC`,
      reservoir: showMarked(values.farads, 'F'),
      load: showQuantity(values.loadAmps, 'A'),
      volts: showQuantity(worst.valley.rectifier.rail.meanVolts, 'V'),
      regulator: stage.name.split(/[ ,]/)[0] ?? '',
      rail: showMarked(stage.outputVolts, 'V'),
    },
  };
}

export const headroom = defineCalculator({
  id: 'headroom',
  version: 1,
  question: 'Does the regulator hold at low mains, and how hot is it at high mains?',
  fields,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts',
    'load.everythingAmps': 'loadAmps',
    'cooling.airCelsius': 'airCelsius',
    'cooling.heatsinkKelvinPerWatt': 'heatsink',
    'stage.outputVolts': 'setVolts',
  },
  solve,
});
