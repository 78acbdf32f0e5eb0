import { InputError } from '../../compute/errors.ts';
import { worstLevel, type Finding } from '../../compute/findings.ts';
import { checkCoilsAtSwitchOn, checkDiodeSurge, checkRailRise, checkWarmUpCurrent } from '../../compute/findings/switch-on.ts';
import { primarySurge } from '../../compute/in-time/inrush.ts';
import { switchOn as followSwitchOn, type SwitchOn } from '../../compute/in-time/switch-on.ts';
import { timedCoil, type TimedLoad } from '../../compute/in-time/timed-load.ts';
import { timedSupply } from '../../compute/in-time/timed-supply.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { heaterModel } from '../../compute/parts/heater.ts';
import { relayOfKind } from '../../compute/parts/relay.ts';
import { ratedPrimaryAmps } from '../../compute/parts/transformer.ts';
import { chainReservoir } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { fusePickFace } from '../fuse-pick/fields.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import type { PlotData } from '../shared/plot-data.ts';
import { railIsSet, railVoltsOf, stageOf } from '../shared/stage-fields.ts';
import { diodeOf, mainsOf, windingOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { switchOnFace } from './fields.ts';

type Values = ValuesOf<typeof switchOnFace.fields>;

export interface SwitchOnView extends ViewModel {
  readonly shows: { readonly railVolts: boolean; readonly regulator: boolean; readonly heaters: boolean; readonly coils: boolean };
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly plots: readonly PlotData[];
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

const WORST = 'high mains, worst phase, largest reservoir, everything cold';
/** Less than this is no heater worth following. */
const LEAST_HEATER_AMPS = 0.01;

function chainOf(values: Values, amps: number): ChainInput {
  const { topology, farads, airCelsius } = values;
  const mains = mainsOf(values);
  return {
    mains,
    winding: windingOf(values),
    topology,
    diode: diodeOf({ diode: values.diode, diodeVolts: 100 }),
    reservoir: chainReservoir({ farads, ratedVolts: 50, topology, hertz: mains.hertz, airCelsius }),
    stage: stageOf(values),
    load: { offAmps: 0, runningAmps: amps, everythingAmps: amps },
    cooling: { airCelsius },
  };
}

function loadOf(values: Values): { readonly load: TimedLoad; readonly amps: number } {
  const railVolts = railVoltsOf(values);
  const coil = relayOfKind({ kind: values.coilKind, ratedVolts: values.coilVolts });
  const coils = values.coils === 0 ? [] : [{ ...timedCoil({ coil, count: values.coils }), name: values.coils === 1 ? 'The relay' : 'The relays' }];
  const heated = values.heaterAmps >= LEAST_HEATER_AMPS;
  const coilAmps = coils.reduce((sum, { count, ohms }) => sum + (count * railVolts) / ohms, 0);
  return {
    amps: values.steadyAmps + coilAmps + (heated ? values.heaterAmps : 0),
    load: {
      railVolts,
      amps: values.steadyAmps,
      ...(heated ? { heater: heaterModel({ volts: railVolts, amps: values.heaterAmps, coldRatio: values.coldRatio }) } : {}),
      coils,
    },
  };
}

const MOST_POINTS = 220;
const rounded = (value: number): number => Number(value.toPrecision(4));

/** Evenly spaced places in time, each figure joined between the solver's by a straight line. */
function evenly(seconds: Float64Array, columns: readonly Float64Array[]): { readonly seconds: readonly number[]; readonly columns: readonly (readonly number[])[] } {
  const end = seconds.at(-1) ?? 0;
  const times = Array.from({ length: MOST_POINTS }, (_, index) => (end * index) / (MOST_POINTS - 1));
  let place = 0;
  const at = times.map((time) => {
    while (place < seconds.length - 2 && (seconds[place + 1] ?? 0) < time) place += 1;
    const [from = 0, to = 0] = [seconds[place], seconds[place + 1]];
    return { place, part: to > from ? Math.min(1, Math.max(0, (time - from) / (to - from))) : 0 };
  });
  return {
    seconds: times.map(rounded),
    columns: columns.map((column) => at.map(({ place: index, part }) => rounded((column[index] ?? 0) * (1 - part) + (column[index + 1] ?? 0) * part))),
  };
}

function plotsOf(values: Values, solved: SwitchOn): readonly PlotData[] {
  const { waveform, warmUp } = solved;
  const regulated = values.regulator !== 'none';
  const even = evenly(waveform.seconds, [waveform.reservoirVolts, waveform.railVolts, waveform.windingAmps.map(Math.abs)]);
  const [reservoirVolts = [], railVolts = [], windingAmps = []] = even.columns;
  const first: PlotData = {
    caption: `The first moments at ${WORST}: the winding’s pulses fill the reservoir${regulated ? ', and the rail follows behind the regulator' : ''}.`,
    x: { name: 'time since switch-on', unit: 's', values: even.seconds },
    series: [
      { name: regulated ? 'reservoir' : 'rail', kind: 'volts', unit: 'V', values: reservoirVolts },
      ...(regulated ? [{ name: 'rail', kind: 'needed' as const, unit: 'V' as const, values: railVolts }] : []),
      { name: 'winding, either way', kind: 'amps', unit: 'A', values: windingAmps },
    ],
  };
  if (warmUp === undefined) return [first];
  return [
    first,
    {
      caption: 'The seconds after, mains cycles averaged out: heaters warm and let go of the current that they took cold.',
      x: { name: 'time since switch-on', unit: 's', values: warmUp.seconds.map(rounded) },
      series: [
        { name: 'rail', kind: 'volts', unit: 'V', values: warmUp.railVolts.map(rounded) },
        { name: 'winding, RMS', kind: 'amps', unit: 'A', values: warmUp.windingRmsAmps.map(rounded) },
        { name: 'winding’s rating', kind: 'limit', unit: 'A', values: warmUp.seconds.map(() => values.windingAmps) },
      ],
    },
  ];
}

function workingOf(values: Values, solved: SwitchOn, chain: ChainInput): readonly WorkingStep[] {
  const { surge } = solved;
  const halves = values.topology === 'centre-tap' ? 2 : 1;
  const voltAmps = Math.min(5000, Math.max(0.5, halves * values.windingVolts * values.windingAmps));
  const rated = ratedPrimaryAmps({ voltAmps, mainsVolts: values.mainsVolts });
  const primary = primarySurge({ surge, secondaryVolts: chain.winding.openCircuitVolts, mainsVolts: values.mainsVolts, hertz: chain.mains.hertz, transformer: { ratedPrimaryAmps: rated, regulation: values.regulation } });
  return [
    workingStep({ name: 'surge-peak', words: `Highest current of the first charge, switched on at ${surge.peakDegrees}° of the mains cycle, the worst of every 15°.`, formula: 'Solved in time', numbers: [], result: { symbol: 'I', value: surge.peakAmps, unit: 'A' }, source: { id: 'solved' } }),
    workingStep({ name: 'surge-square', words: `Its I²t at the phase that gives most, ${surge.a2sDegrees}°.`, formula: 'Solved in time', numbers: [], result: { symbol: 'J', value: surge.a2s, unit: 'A²s' }, source: { id: 'solved' } }),
    workingStep({ name: 'surge-bound', words: 'What the textbook has for it, from a steady peak.', formula: 'C × V² / (2 × R), from above', numbers: [], result: { symbol: 'B', value: surge.boundA2s, unit: 'A²s' }, source: { id: 'note-fuse-guide' } }),
    workingStep({ name: 'reflected', words: 'The first charge as the mains side sees it, through the turns ratio.', formula: 'P = I × E / M', numbers: [{ symbol: 'I', value: surge.peakAmps, unit: 'A' }, { symbol: 'E', value: chain.winding.openCircuitVolts, unit: 'V' }, { symbol: 'M', value: values.mainsVolts, unit: 'V' }], result: { symbol: 'P', value: primary.reflectedPeakAmps, unit: 'A' }, source: { id: 'solved' } }),
    ...(primary.magnetisingPeakBoundAmps === undefined
      ? []
      : [workingStep({ name: 'magnetising', words: 'If the transformer is an added one, its own inrush from above: a saturated core leaves only copper.', formula: 'm = 2 / r × A × √2', numbers: [{ symbol: 'r', value: values.regulation, unit: '' }, { symbol: 'A', value: rated, unit: 'A' }], result: { symbol: 'm', value: primary.magnetisingPeakBoundAmps, unit: 'A' }, source: { id: 'note-toroid-inrush' } })]),
    ...(solved.warmUp === undefined
      ? []
      : [workingStep({ name: 'warm-up', words: 'Most RMS in the winding while the heaters warm.', formula: 'Solved cycle by cycle, the heaters warming between', numbers: [], result: { symbol: 'W', value: solved.warmUp.mostRmsAmps, unit: 'A' }, source: { id: 'heater-cold-current' } })]),
    workingStep({ name: 'settled', words: 'RMS in the winding once everything is hot.', formula: 'Solved over one cycle', numbers: [], result: { symbol: 'S', value: solved.settled.rectifier.winding.rmsAmps, unit: 'A' }, source: { id: 'solved' } }),
  ];
}

function solve(values: Values): SwitchOnView {
  const { load, amps } = loadOf(values);
  if (amps <= 0) throw new InputError('steadyAmps', values.steadyAmps, { expected: 'some load, here or as heaters or relays' });
  const chain = chainOf(values, amps);
  const supply = timedSupply({ chain, outputFarads: values.outputFarads });
  const solved = followSwitchOn({ supply, load });
  const { surge, warmUp, upSeconds, coils } = solved;
  const windowSeconds = solved.waveform.seconds.at(-1) ?? 0;
  const rail = railVoltsOf(values);
  const part = diodePart(values.diode);
  const context = { corner: WORST, restsOn: ['assumed'] as const };
  const findings = [
    checkDiodeSurge({ ...context, restsOn: [part.basis, 'assumed'], peakAmps: surge.peakAmps, ratedAmps: part.surgeAmps }),
    checkRailRise({ ...context, ...(upSeconds === undefined ? {} : { upSeconds }), followedSeconds: warmUp?.seconds.at(-1) ?? windowSeconds, held: warmUp?.heldAtLast ?? solved.settled.held }),
    ...checkCoilsAtSwitchOn({ ...context, restsOn: ['typical', 'assumed'], coils, deepestDipVolts: solved.deepestDipVolts, railVolts: rail, windowSeconds }),
    ...(warmUp === undefined ? [] : [checkWarmUpCurrent({ ...context, warmUp, ratedAmps: values.windingAmps })]),
  ];
  const up = upSeconds === undefined ? 'the rail does not come up' : `the ${showMarked(rail, 'V')} rail stands after ${showQuantity(upSeconds, 's')}`;
  const [coil] = coils;
  const pulls = coil === undefined ? '' : coil.pullsInSeconds === undefined ? '; the relays have not pulled in by then' : `; relays have the current to pull in after ${showQuantity(coil.pullsInSeconds, 's')}`;
  const coilFigure: CornerFigure | undefined = coil === undefined
    ? undefined
    : { name: `relays · ${values.coils}`, value: coil.pullsInSeconds ?? windowSeconds, unit: 's', of: coil.pullsInSeconds === undefined ? 'and not pulled in' : 'to pull-in', level: levelOfRule(findings, 'coil-at-switch-on'), found: `deepest dip of the rail ${showQuantity(solved.deepestDipVolts, 'V')}`, restsOn: 'typical inductance' };
  return {
    level: worstLevel(findings),
    summary: `the first charging pulse reaches ${showQuantity(surge.peakAmps, 'A')}, and ${up}${pulls}`,
    shows: { railVolts: railIsSet(values), regulator: values.regulator !== 'none', heaters: values.heaterAmps >= LEAST_HEATER_AMPS, coils: values.coils > 0 },
    corners: [
      { name: 'first pulse, worst phase', value: surge.peakAmps, unit: 'A', of: 'peak', level: levelOfRule(findings, 'diode-surge'), found: `${showQuantity(surge.a2s, 'A²s')}; a diode bears ${showMarked(part.surgeAmps, 'A')} once` },
      { name: 'rail', value: upSeconds ?? windowSeconds, unit: 's', of: upSeconds === undefined ? 'and not up' : 'until it stands', level: levelOfRule(findings, 'rail-rise'), found: warmUp === undefined ? 'no heaters on it' : `held at first: ${warmUp.heldAtFirst}` },
      ...(coilFigure === undefined ? [] : [coilFigure]),
    ],
    findings,
    plots: plotsOf(values, solved),
    working: workingOf(values, solved, chain),
    handOn: [handOn(fusePickFace, { what: 'Whether the fuse lives through it', from: values, given: { loadAmps: rounded(Math.min(10, amps)) } })],
  };
}

export const switchOn = defineCalculator({
  ...switchOnFace,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts', 'winding.ohms': 'regulation', 'winding.ratedAmps': 'windingAmps', 'load.everythingAmps': 'steadyAmps', 'cooling.airCelsius': 'airCelsius', 'stage.outputVolts': 'setVolts',
    'stage.designVolts': 'setVolts', outputVolts: 'setVolts', 'load.railVolts': 'setVolts', 'load.amps': 'steadyAmps', 'regulator.setVolts': 'setVolts', ratedVolts: 'coilVolts', volts: 'setVolts', amps: 'heaterAmps',
    voltAmps: 'windingAmps', 'coil.count': 'coils', 'coil.ohms': 'coilVolts', 'coil.henries': 'coilVolts', 'coil.operateAmps': 'coilVolts', secondaryVolts: 'windingVolts',
  },
  solve,
});
