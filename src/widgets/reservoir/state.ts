import { worstLevel, type Basis, type Finding } from '../../compute/findings.ts';
import { checkCapacitorLife, checkCapacitorPolarity, checkReservoirValley } from '../../compute/findings/reservoir.ts';
import { capacitorLife, electrolytic, nextRatedVolts, rippleLimitAmps, typicalRippleAmps } from '../../compute/parts/capacitor.ts';
import { chainFindings } from '../../compute/supplies/chain-findings.ts';
import { chainReservoir, REFILLS_PER_CYCLE } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import { solveChain } from '../../compute/supplies/chain.ts';
import { RESERVOIR_SIZES, smallestReservoir, sweepReservoir, type ReservoirPoint } from '../../compute/supplies/reservoir-sweep.ts';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import { headroom } from '../headroom/state.ts';
import { rectify } from '../rectify/state.ts';
import { decidingCorners, expectedCorner, levelOfRule, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import type { PlotData } from '../shared/plot-data.ts';
import { diodeOf, mainsOf, windingOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { reservoirFace, type Values } from './fields.ts';
import { reservoirWorking } from './working.ts';

export interface ReservoirView extends ViewModel {
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly plot: PlotData;
  readonly handOn: readonly HandOnLink[];
}

const rippleRating = ({ ratedRipple }: Values): { readonly ratedRippleAmps?: number } => (ratedRipple === undefined ? {} : { ratedRippleAmps: ratedRipple });

function chainOf(values: Values): ChainInput {
  const { topology, farads, ratedVolts, airCelsius, loadAmps, type } = values;
  const mains = mainsOf(values);
  return {
    mains, topology,
    winding: windingOf(values),
    diode: diodeOf(values),
    reservoir: chainReservoir({ farads, ratedVolts, topology, hertz: mains.hertz, airCelsius, kind: type, ...rippleRating(values) }),
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius },
    // The load draws its amps at any volts, as what hangs behind a regulator does; the volts are then not asked for.
    stage: { kind: 'none', designVolts: values.floorVolts, steady: true },
  };
}

/** Life in this air with this ripple, and the ratio of the ripple to what the part is rated for at its frequency. */
function lifeOf(values: Values, rippleAmps: number): ReturnType<typeof capacitorLife> {
  const row = electrolytic(values.type);
  const ratedAmps = values.ratedRipple ?? typicalRippleAmps({ row, farads: values.farads }).lowest;
  const ratedAt = row.rippleTemperatureFactor.find(([, factor]) => factor === 1)?.[0] ?? row.maxCelsius;
  const rippleHertz = REFILLS_PER_CYCLE[values.topology] * Number(values.mainsHertz);
  const rated = rippleLimitAmps({ row, ratedAmps, rippleHertz, celsius: ratedAt });
  return capacitorLife({ ratedHours: row.lifeHours, ratedCelsius: row.maxCelsius, celsius: values.airCelsius, rippleRatio: Math.min(10, rippleAmps / rated) });
}

/** Rules of the chain that are this question; of the others only what is amiss. */
const OWN_RULES = ['capacitor-volts', 'ripple-current', 'supply-solved'];

function plotOf(values: Values, points: readonly ReservoirPoint[]): PlotData {
  return {
    caption: 'The valley and the ripple at low mains as the reservoir grows, smallest and oldest of its marking. Where the solid line goes flat, a larger one buys next to nothing.',
    x: { name: 'reservoir, as marked', unit: 'F', values: points.map(({ farads }) => farads) },
    series: [
      { name: 'valley', kind: 'volts', unit: 'V', values: points.map(({ valleyVolts }) => valleyVolts) },
      { name: 'must not dip below', kind: 'needed', unit: 'V', values: points.map(() => values.floorVolts) },
      { name: 'ripple, peak to peak', kind: 'other', unit: 'V', values: points.map(({ rippleVolts }) => rippleVolts) },
    ],
    markAt: values.farads,
  };
}

/** Sizes to set beside the one asked about: those on the shelf up to about five times it. */
const sizesAround = (farads: number): readonly number[] =>
  [...new Set([...RESERVOIR_SIZES.filter((size) => size <= Math.max(3300e-6, 5 * farads)), farads, Math.min(94e-3, 2 * farads)])].sort((a, b) => a - b);

function sizeWords(values: Values, points: readonly ReservoirPoint[]): string {
  const shelf = points.filter(({ farads }) => RESERVOIR_SIZES.includes(farads));
  const smallest = smallestReservoir({ points: shelf, floorVolts: values.floorVolts });
  const here = points.find(({ farads }) => farads === values.farads);
  const doubled = points.find(({ farads }) => farads === Math.min(94e-3, 2 * values.farads));
  const gain = here === undefined || doubled === undefined ? '' : `; twice the size would lift the valley by ${showQuantity(doubled.valleyVolts - here.valleyVolts, 'V')}`;
  return `${smallest === undefined ? 'No usual size serves' : `The smallest usual size that serves is ${showMarked(smallest.farads, 'F')}`}${gain}`;
}

function solve(values: Values): ReservoirView {
  const input = chainOf(values);
  const chain = solveChain(input);
  const { valley, peak, rippleCurrent } = decidingCorners(chain);
  const nominal: SolvedCorner = expectedCorner(chain, 'nominal') ?? valley;
  const row = electrolytic(values.type);
  const each = values.topology === 'doubler' ? 2 : 1;
  const peakVolts = Math.max(0, peak.rectifier.rail.maxVolts) / each;
  const life = lifeOf(values, rippleCurrent.rectifier.reservoir.rmsAmps);
  // The rule knows no more than two digits.
  const lifeHours = Number(life.creditedHours.toPrecision(2));
  const valleyVolts = valley.rectifier.rail.minVolts;
  const basis: Basis = values.ratedRipple === undefined ? 'typical' : 'rated';
  const findings = [
    checkReservoirValley({ corner: valley.corner.words, restsOn: ['rated', 'typical'], valleyVolts, floorVolts: values.floorVolts }),
    checkCapacitorLife({ corner: `air of ${showMarked(values.airCelsius, '°C')} all its life`, restsOn: [basis, 'assumed'], hours: life.creditedHours, wantedHours: values.wantedSeconds / 3600, coreCelsius: life.coreCelsius }),
    checkCapacitorPolarity({ corner: peak.corner.words, restsOn: ['assumed'], reversed: values.polarity === 'wrong', volts: peakVolts }),
    ...chainFindings(input, chain).filter(({ rule, level }) => OWN_RULES.includes(rule) || level !== 'within'),
  ];
  const spare = valleyVolts - values.floorVolts;
  const points = sweepReservoir({ input, farads: sizesAround(values.farads), ratedVolts: values.ratedVolts, kind: values.type, ...rippleRating(values) });
  const rated = nextRatedVolts({ volts: Math.min(1000, peakVolts) });
  const { rail } = nominal.rectifier;
  return {
    level: worstLevel(findings),
    summary: leadWithHazard(findings, `the valley stands ${showQuantity(Math.abs(spare), 'V')} ${spare < 0 ? 'below' : 'above'} what is needed, and it should last ${showMarked(lifeHours * 3600, 's')}. ${sizeWords(values, points)}`),
    corners: [
      {
        name: mainsName(input.mains, 'low'), value: valleyVolts, unit: 'V', of: 'valley', level: levelOfRule(findings, 'reservoir-valley'),
        found: `${showQuantity(Math.abs(spare), 'V')} ${spare < 0 ? 'too low' : 'to spare'}`, restsOn: 'smallest and oldest, flat-topped mains',
      },
      {
        name: mainsName(input.mains, 'nominal'), value: rail.rippleVolts, unit: 'V', of: 'ripple', level: levelOfRule(findings, 'ripple-current'),
        found: `${showQuantity(nominal.rectifier.reservoir.rmsAmps, 'A')} through it`, restsOn: values.ratedRipple === undefined ? 'typical ripple rating' : 'peak to peak, about its mean',
      },
      {
        name: mainsName(input.mains, 'high'), value: peakVolts, unit: 'V', of: 'unloaded', level: levelOfRule(findings, 'capacitor-volts'),
        found: `rated ${showMarked(values.ratedVolts, 'V')}${rated === undefined || rated === values.ratedVolts ? '' : `, ${showMarked(rated, 'V')} would do`}`,
      },
      {
        name: `air of ${showMarked(values.airCelsius, '°C')}`, value: lifeHours, unit: '', of: 'h', level: levelOfRule(findings, 'capacitor-life'),
        found: `core at ${showQuantity(life.coreCelsius, '°C')}`, restsOn: 'maker’s rule, assumed rise',
      },
    ],
    findings,
    working: reservoirWorking({ values, chain, row, newOhms: input.reservoir.ohms, peak, peakVolts, ripple: rippleCurrent, allowedAmps: input.reservoir.ratedRippleAmps ?? 0, life }),
    plot: plotOf(values, points),
    handOn: [
      handOn(rectify, { what: 'This rail', from: { ...values, draws: 'steadily', airCelsius: Math.min(100, values.airCelsius) } }),
      handOn(headroom, { what: showMarked(values.farads, 'F'), from: { ...values, loadAmps: Math.min(5, values.loadAmps), airCelsius: Math.min(100, values.airCelsius) } }),
    ],
  };
}

export const reservoir = defineCalculator({
  ...reservoirFace,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts', 'load.everythingAmps': 'loadAmps', 'load.amps': 'loadAmps', 'cooling.airCelsius': 'airCelsius', ratedAmps: 'ratedRipple', celsius: 'airCelsius',
  },
  solve,
});
