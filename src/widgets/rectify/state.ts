import { levelOfMargin, worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { MAINS_CREST } from '../../compute/parts/mains.ts';
import { solveRectifier } from '../../compute/rectifier/solve-rectifier.ts';
import { chainFindings } from '../../compute/supplies/chain-findings.ts';
import { chainReservoir } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { solveChain } from '../../compute/supplies/chain.ts';

import type { WorkingStep } from '../../compute/supplies/working.ts';
import { headroom } from '../headroom/state.ts';
import { reservoirFace } from '../reservoir/fields.ts';
import { wireDropFace } from '../wire-drop/fields.ts';
import { decidingCorners, expectedCorner, levelOfRule, levelsOf, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { cycleOf, type Cycle } from '../shared/cycle.ts';
import { defineCalculator, type FieldSet, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { Stair } from '../shared/stairs.tsx';
import { diodeFields, diodeOf, mainsFields, mainsOf, reservoirFields, topologyField, windingFields, windingOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';

export const fields = {
  ...windingFields,
  topology: topologyField,
  ...diodeFields,
  ...reservoirFields,
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.106, min: 0, max: 10, assume: 'mA', stepping: 'e12', hint: 'DC, everything on' },
  draws: {
    kind: 'choice',
    label: 'How the load draws',
    options: [{ value: 'steadily', label: 'steadily' }, { value: 'as-ohms', label: 'as a resistance' }],
    default: 'steadily',
    hint: 'a linear regulator draws steadily; a resistance draws this current at nominal mains, less at low and more at high',
  },
  floorVolts: { kind: 'quantity', label: 'Volts that the rail must not dip below', unit: 'V', default: 15, min: 0.5, max: 200, optional: true, blank: 'any', stepping: 0.5 },
  ...mainsFields,
  airCelsius: { kind: 'quantity', label: 'Air around the reservoir', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
} as const satisfies FieldSet;

type Values = ValuesOf<typeof fields>;

export interface RectifyView extends ViewModel {
  readonly corners: readonly CornerFigure[];
  readonly stairs: readonly Stair[];
  /** Valley above the floor that was asked for. */
  readonly spareVolts: number | undefined;
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  /** The lowest valley, over one mains cycle. */
  readonly cycle: Cycle;
  readonly worstCorner: string;
  readonly handOn: readonly HandOnLink[];
}

/** Volts at which a load of these amps would sit at nominal mains: where a resistance is taken to draw them. */
function designVolts(input: Omit<ChainInput, 'stage'>, amps: number): number {
  const { mains, winding, topology, diode, reservoir } = input;
  const { rail } = solveRectifier({
    topology, winding, diode, reservoir, hertz: mains.hertz, crestFactor: MAINS_CREST.nominal, load: { amps },
  });
  return Math.max(0.5, rail.meanVolts);
}

function chainOf(values: Values): ChainInput {
  const { topology, farads, ratedVolts, airCelsius, loadAmps } = values;
  const mains = mainsOf(values);
  const bare = {
    mains,
    winding: windingOf(values),
    topology,
    diode: diodeOf(values),
    reservoir: chainReservoir({ farads, ratedVolts, topology, hertz: mains.hertz, airCelsius }),
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius },
  };
  return { ...bare, stage: { kind: 'none', designVolts: designVolts(bare, loadAmps), ...(values.draws === 'steadily' ? { steady: true } : {}) } };
}

/** Volts over the floor below which the valley is called marginal, as for a regulator's headroom. */
const WANTED_VOLTS = 0.3;

function floorVerdict(spareVolts: number | undefined): { readonly level: Level; readonly found: string } {
  if (spareVolts === undefined) return { level: 'not assessed', found: 'no lowest volts asked for' };
  const level = levelOfMargin({ margin: spareVolts, wanted: WANTED_VOLTS });
  return { level, found: `${showQuantity(Math.abs(spareVolts), 'V')} ${spareVolts < 0 ? 'too low' : 'spare'}` };
}

function solve(values: Values): RectifyView {
  const input = chainOf(values);
  const chain = solveChain(input);
  const findings = chainFindings(input, chain);
  const { valley, windingCurrent, peak } = decidingCorners(chain);
  const nominal = expectedCorner(chain, 'nominal') ?? valley;

  const valleyVolts = valley.rectifier.rail.minVolts;
  const spareVolts = values.floorVolts === undefined ? undefined : valleyVolts - values.floorVolts;
  const floor = floorVerdict(spareVolts);
  const { rail } = nominal.rectifier;
  return {
    level: worstLevel([...(values.floorVolts === undefined ? [] : [floor]), ...findings]),
    summary: `${showQuantity(rail.meanVolts, 'V')} at nominal mains with ${showQuantity(rail.rippleVolts, 'V')} of ripple; the valley falls to ${showQuantity(valleyVolts, 'V')} at low mains, and the winding carries ${showQuantity(windingCurrent.windingRmsAmps, 'A')} RMS`,
    corners: [
      { name: mainsName(input.mains, 'low'), value: valleyVolts, unit: 'V', of: 'valley', ...floor, restsOn: 'smallest and oldest reservoir, flat-topped mains' },
      {
        name: mainsName(input.mains, 'nominal'), value: rail.meanVolts, unit: 'V', of: 'mean',
        level: levelOfRule(findings, 'winding-current'), found: `winding carries ${showQuantity(nominal.windingRmsAmps, 'A')}`,
        restsOn: `${showQuantity(rail.rippleVolts, 'V')} of ripple, peak to peak`,
      },
      {
        name: mainsName(input.mains, 'high'), value: peak.rectifier.rail.maxVolts, unit: 'V', of: 'unloaded',
        level: levelOfRule(findings, 'capacitor-volts'), found: `reservoir rated ${showMarked(values.ratedVolts, 'V')}`,
      },
    ],
    stairs: levelsOf(chain.stairs, values.floorVolts === undefined ? undefined : { name: 'lowest asked for', volts: values.floorVolts }),
    spareVolts,
    findings,
    working: chain.working,
    cycle: cycleOf(values.topology, valley.rectifier.waveform),
    worstCorner: valley.corner.words,
    handOn: [
      handOn(headroom, { what: 'This rail', from: values }),
      // That one asks for no less than the smallest reservoir on the shelf.
      handOn(reservoirFace, { what: showMarked(values.farads, 'F'), from: { ...values, farads: Math.max(reservoirFace.fields.farads.min, values.farads), loadAmps: Math.max(reservoirFace.fields.loadAmps.min, values.loadAmps) } }),
      handOn(wireDropFace, { what: 'Its charging pulses', from: { ...values, loadAmps: Math.max(wireDropFace.fields.loadAmps.min, values.loadAmps) } }),
    ],
  };
}

export const rectify = defineCalculator({
  id: 'rectify',
  version: 1,
  question: 'What comes out of this winding, rectifier and reservoir?',
  fields,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts',
    'load.everythingAmps': 'loadAmps',
    'load.amps': 'loadAmps',
    'cooling.airCelsius': 'airCelsius',
    'stage.designVolts': 'windingVolts',
  },
  solve,
});
