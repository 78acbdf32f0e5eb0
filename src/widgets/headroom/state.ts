import { worstLevel, type Finding } from '../../compute/findings.ts';
import { LINEAR_REGULATORS, linearRegulator } from '../../compute/parts/regulator-linear.ts';
import { chainFindings } from '../../compute/supplies/chain-findings.ts';
import { chainReservoir, linearStage } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { solveChain } from '../../compute/supplies/chain.ts';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import { decidingCorners, expectedCorner, levelOfRule, levelsOf, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { cycleOf, type Cycle } from '../shared/cycle.ts';
import { defineCalculator, type FieldSet, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import type { Stair } from '../shared/stairs.tsx';
import { diodeFields, diodeOf, mainsFields, mainsOf, reservoirFields, topologyField, windingFields, windingOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';

export const fields = {
  ...windingFields,
  topology: topologyField,
  ...diodeFields,
  ...reservoirFields,
  regulator: {
    kind: 'choice',
    label: 'Regulator',
    options: LINEAR_REGULATORS.map(({ id, name }) => ({ value: id, label: name })),
    default: '7812',
  },
  setVolts: { kind: 'quantity', label: 'Rail that the adjustable regulator is set to', unit: 'V', default: 12, min: 1.25, max: 36, stepping: 0.5 },
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.106, min: 0, max: 5, assume: 'mA', stepping: 'e12', hint: 'everything on' },
  ...mainsFields,
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
  heatsink: { kind: 'quantity', label: 'Heatsink, to the air', unit: 'K/W', default: 21, min: 0.5, max: 100, optional: true, blank: 'no heatsink', stepping: 'e6' },
} as const satisfies FieldSet;

type Values = ValuesOf<typeof fields>;

export interface HeadroomView extends ViewModel {
  /** Whether the rail's volts are the reader's to set. */
  readonly adjustable: boolean;
  /** What to know of the part before relying on it. */
  readonly note?: string;
  readonly corners: readonly CornerFigure[];
  readonly stairs: readonly Stair[];
  readonly spareVolts: number;
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  /** The corner of least headroom, over one mains cycle. */
  readonly cycle: Cycle;
  readonly neededVolts: number;
  readonly worstCorner: string;
  readonly regulator: { readonly name: string; readonly railText: string };
}

function chainOf(values: Values): ChainInput {
  const { topology, airCelsius, heatsink, loadAmps, farads, ratedVolts } = values;
  const mains = mainsOf(values);
  const part = linearRegulator(values.regulator);
  return {
    mains,
    winding: windingOf(values),
    topology,
    diode: diodeOf(values),
    reservoir: chainReservoir({ farads, ratedVolts, topology, hertz: mains.hertz, airCelsius }),
    stage: linearStage(part, part.family === 'adjustable' ? values.setVolts : undefined),
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius, ...(heatsink === undefined ? {} : { heatsinkKelvinPerWatt: heatsink }) },
  };
}

function solve(values: Values): HeadroomView {
  const input = chainOf(values);
  const chain = solveChain(input);
  const findings = chainFindings(input, chain);
  const { valley, heat } = decidingCorners(chain);
  const nominal = expectedCorner(chain, 'nominal') ?? valley;
  const part = linearRegulator(values.regulator);

  const spareVolts = valley.headroomVolts ?? 0;
  const junction = heat.junctionCelsius ?? values.airCelsius;
  const spare = `${showQuantity(Math.abs(spareVolts), 'V')} ${spareVolts < 0 ? 'short' : 'spare'}`;
  const cooling = values.heatsink === undefined ? 'no heatsink' : `heatsink of ${showMarked(values.heatsink, 'K/W')}`;
  return {
    level: worstLevel(findings),
    summary: `${spareVolts < 0 ? 'drops out' : 'holds'} at low mains, ${spare}; its junction is at ${showQuantity(junction, '°C')} at high mains`,
    adjustable: part.family === 'adjustable',
    ...(part.note === undefined ? {} : { note: part.note }),
    corners: [
      {
        name: mainsName(input.mains, 'low'), value: valley.rectifier.rail.minVolts, unit: 'V', of: 'valley',
        level: levelOfRule(findings, 'regulator-valley'), found: `${spareVolts < 0 ? 'drops out' : 'holds'}, ${spare}`,
        restsOn: `${part.plannedDropout.basis} dropout`,
      },
      {
        name: mainsName(input.mains, 'nominal'), value: nominal.rectifier.rail.meanVolts, unit: 'V', of: 'mean',
        level: levelOfRule(findings, 'winding-current'), found: `winding carries ${showQuantity(nominal.windingRmsAmps, 'A', 2)}`,
        restsOn: `${showQuantity(nominal.rectifier.rail.rippleVolts, 'V')} of ripple`,
      },
      {
        name: mainsName(input.mains, 'high'), value: junction, unit: '°C', of: 'junction',
        level: levelOfRule(findings, 'junction-temperature'), found: `${showQuantity(heat.regulatorWatts, 'W', 2)}, ${cooling}`,
      },
    ],
    stairs: levelsOf(chain.stairs, { name: 'regulator may need', volts: valley.neededVolts }),
    spareVolts,
    findings,
    working: chain.working,
    cycle: cycleOf(values.topology, valley.rectifier.waveform),
    neededVolts: valley.neededVolts,
    worstCorner: valley.corner.words,
    regulator: { name: part.family === 'fixed' ? part.id : part.name.split('-')[0] ?? '', railText: showMarked(part.family === 'adjustable' ? values.setVolts : part.outputVolts, 'V') },
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
    outputVolts: 'setVolts',
    'stage.outputVolts': 'setVolts',
  },
  solve,
});
