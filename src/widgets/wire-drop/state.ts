import { worstLevel, type Finding } from '../../compute/findings.ts';
import { checkSharedGround, checkWireCurrent, checkWireDrop, checkWireFuse, checkWireTemperature } from '../../compute/findings/wire.ts';
import { waveOf } from '../../compute/noise/harmonics.ts';
import { mainsCornersOf, pulsesOnWire, type PulsesOnWire } from '../../compute/noise/pulses-on-wire.ts';
import { wireTemperature, type WireHeat } from '../../compute/parts/wire-heating.ts';
import { loopDropVolts, wire, wireCapacityAmps, wireFor, type WireRow } from '../../compute/parts/wire.ts';
import { formatQuantity } from '../../compute/quantity.ts';
import { chainReservoir } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { rectify } from '../rectify/state.ts';
import { levelOfRule, mainsName } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import type { PlotData } from '../shared/plot-data.ts';
import { diodeOf, mainsOf, windingOf } from '../shared/supply-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { wireDropFace, fields, type Values } from './fields.ts';

/** One line of the spectrum: where it sounds, and how much of it there is. */
export interface SpectrumLine {
  readonly hertz: string;
  readonly volts: string;
}

export interface WireDropView extends ViewModel {
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly plot: PlotData;
  readonly spectrum: readonly SpectrumLine[];
  readonly sheet: { readonly rectifierText: string; readonly reservoirText: string; readonly loadText: string; readonly pulseText: string; readonly dropText: string };
  readonly handOn: readonly HandOnLink[];
}

/** Any rating the reservoir may have: it is not asked for, and its series resistance hardly depends on it. Assumed. */
const RESERVOIR_VOLTS = 35;

function chainOf(values: Values): ChainInput {
  const { topology, farads, airCelsius, loadAmps } = values;
  const mains = mainsOf(values);
  return {
    mains, topology,
    winding: windingOf(values),
    diode: diodeOf(values),
    reservoir: chainReservoir({ farads, ratedVolts: RESERVOIR_VOLTS, topology, hertz: mains.hertz, airCelsius }),
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius },
    stage: { kind: 'none', designVolts: values.windingVolts, steady: true },
  };
}

/** Small volts with their prefix: on a rail they are told in volts, here in millivolts. */
const smallVolts = (value: number): string => formatQuantity({ value, unit: 'V', digits: 2 });

const ORDERS = 12;

/** The moving part of the shared wire's volts, harmonic by harmonic; those of no account left out. */
function spectrumOf({ shared, movingPeakVolts }: PulsesOnWire): readonly SpectrumLine[] {
  if (movingPeakVolts === 0) return [];
  const most = Math.max(...shared.harmonics.map(({ rms }) => rms));
  return shared.harmonics
    .filter(({ order, rms }) => order <= 2 * ORDERS && rms > most / 1000)
    .slice(0, ORDERS)
    .map(({ hertz, rms }) => ({ hertz: showMarked(hertz, 'Hz'), volts: smallVolts(rms) }));
}

function plotOf(at: PulsesOnWire, values: Values): PlotData {
  const samples = 200;
  const hertz = Number(values.mainsHertz);
  const volts = at.movingPeakVolts === 0 ? new Float64Array(samples + 1).fill(at.shared.meanVolts) : waveOf({ harmonics: at.shared.harmonics, mean: at.shared.meanVolts, samples });
  const last = at.amps.length - 1;
  return {
    caption: `One mains cycle at ${at.mains} mains: the current in the shared wire, and the volts that it puts between the first stage’s ground and the star.`,
    x: { name: 'time in one mains cycle', unit: 's', values: Array.from({ length: samples + 1 }, (_, k) => k / samples / hertz) },
    series: [
      { name: 'along the shared wire', kind: 'volts', unit: 'V', values: [...volts] },
      { name: 'current in it', kind: 'amps', unit: 'A', values: Array.from({ length: samples + 1 }, (_, k) => at.amps[Math.round((k * last) / samples)] ?? 0) },
    ],
  };
}

interface Solved {
  readonly row: WireRow;
  readonly capacityAmps: number;
  readonly heat: WireHeat;
  readonly dropVolts: number;
  readonly rmsAmps: number;
  readonly shortAmps: number;
  readonly at: readonly PulsesOnWire[];
  readonly worst: PulsesOnWire;
}

function solveWire(values: Values): Solved {
  const input = chainOf(values);
  const row = wire(values.wire);
  const hotBundle = values.laid === 'bundle';
  const carries = values.wiring === 'shared' ? 'pulses' : 'load';
  const corners = mainsCornersOf(input);
  const rmsAmps = Math.max(...corners.map(({ windingRmsAmps }) => windingRmsAmps));
  const heat = wireTemperature({ row, amps: rmsAmps, airCelsius: values.airCelsius, hotBundle });
  const at = pulsesOnWire({ corners, topology: values.topology, carries, row, metres: values.sharedMetres, celsius: heat.celsius });
  return {
    row, heat, rmsAmps, at,
    capacityAmps: wireCapacityAmps({ row, hotBundle }),
    dropVolts: loopDropVolts({ row, metres: values.metres, amps: values.loadAmps, celsius: heat.celsius }),
    shortAmps: (input.winding.openCircuitVolts * input.mains.highVolts) / input.mains.nominalVolts / Math.max(input.winding.ohms, 1e-6),
    // A steady current is the same at any mains; the tallest pulses are then those that it does not carry.
    worst: at.reduce((most, each) => (each.movingPeakVolts > most.movingPeakVolts || (each.movingPeakVolts === most.movingPeakVolts && each.corner.rectifier.winding.peakAmps > most.corner.rectifier.winding.peakAmps) ? each : most)),
  };
}

function findingsOf(values: Values, { row, capacityAmps, heat, dropVolts, rmsAmps, shortAmps, worst }: Solved): readonly Finding[] {
  const laid = values.laid === 'bundle' ? 'in a hot bundle' : 'by itself';
  const context = { corner: `${worst.mains} mains, everything on, wire ${laid}`, restsOn: [row.basis, 'assumed'] as const };
  return [
    checkWireDrop({ ...context, corner: 'everything on, the wire warm', restsOn: [row.basis], dropVolts, wantedVolts: values.wantedVolts }),
    checkWireCurrent({ ...context, rmsAmps, capacityAmps, source: row.source }),
    checkWireTemperature({ ...context, celsius: heat.celsius, limitCelsius: values.limitCelsius, airCelsius: values.airCelsius }),
    checkWireFuse({ ...context, corner: 'a short behind the winding, high mains', ...(values.fuseAmps === undefined ? {} : { fuseAmps: values.fuseAmps }), capacityAmps, shortAmps }),
    checkSharedGround({ ...context, corner: `${worst.mains} mains, everything on`, restsOn: ['typical', 'assumed'], peakVolts: worst.movingPeakVolts, toleratedVolts: values.toleratedVolts, metres: values.sharedMetres }),
  ];
}

function stepsOf(values: Values, { row, heat, dropVolts, rmsAmps, worst }: Solved): readonly WorkingStep[] {
  return [
    workingStep({
      name: 'rms', words: 'The most RMS current, in the wires between winding and rectifier.', formula: 'RMS of the solved winding current', numbers: [],
      result: { symbol: 'Iw', value: rmsAmps, unit: 'A' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'wire-celsius', words: 'How hot the copper gets with it: heat made against heat shed to still air.', formula: 'Heat made, I² × r, against convection and radiation', numbers: [],
      result: { symbol: 'Tw', value: heat.celsius, unit: '°C' }, source: { id: 'wire-convection' },
    }),
    workingStep({
      name: 'drop', words: 'The drop to the load, there and back, with the copper that warm.', formula: 'Vd = 2 × I × r × l × (234.5 + Tw) / (234.5 + 20)',
      numbers: [
        { symbol: 'I', value: values.loadAmps, unit: 'A' }, { symbol: 'r', value: row.ohmsPerMetre, unit: 'Ω' }, { symbol: 'l', value: values.metres, unit: '' }, { symbol: 'Tw', value: heat.celsius, unit: '' },
      ],
      result: { symbol: 'Vd', value: dropVolts, unit: 'V' }, source: row.source,
    }),
    workingStep({
      name: 'pulse', words: `The peak of the current in the shared wire, at ${worst.mains} mains.`, formula: values.wiring === 'shared' ? 'Highest point of the solved charging pulse' : 'The load’s steady current', numbers: [],
      result: { symbol: 'Ip', value: worst.peakAmps, unit: 'A' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'shared-by-hand', words: 'What that drops on the shared length by its resistance alone.', formula: 'Vp = Ip × R',
      numbers: [{ symbol: 'Ip', value: worst.peakAmps, unit: 'A' }, { symbol: 'R', value: worst.shared.ohms, unit: 'Ω' }],
      result: { symbol: 'Vp', value: worst.peakAmps * worst.shared.ohms, unit: 'V' }, source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'shared', words: 'The same harmonic by harmonic, with the wire’s inductance, less the steady part that nobody hears.', formula: 'Peak of Σ I(n) × (R + jωL)', numbers: [],
      result: { symbol: 'Vn', value: worst.movingPeakVolts, unit: 'V' }, source: { id: 'solved' },
    }),
  ];
}

const NAMES = Object.fromEntries(fields.topology.options.map(({ value }) => [value, value === 'centre-tap' ? 'pair' : value === 'half-wave' ? 'diode' : value]));

function solve(values: Values): WireDropView {
  const solved = solveWire(values);
  const { at, worst, row, heat, dropVolts, rmsAmps, capacityAmps } = solved;
  const findings = findingsOf(values, solved);
  const mains = mainsOf(values);
  const thinnest = wireFor({
    system: values.wire.startsWith('awg') ? 'awg' : 'metric', amps: rmsAmps / 0.8, dropAmps: values.loadAmps, metres: values.metres, dropVolts: values.wantedVolts, hotBundle: values.laid === 'bundle', celsius: heat.celsius,
  });
  const serves = thinnest === undefined ? 'no wire of the table serves' : thinnest.id === row.id ? 'it is the thinnest that serves' : `${thinnest.name} would serve`;
  const shared = values.wiring === 'shared';
  return {
    level: worstLevel(findings),
    summary: leadWithHazard(findings, `${row.name} drops ${smallVolts(dropVolts)} to the load and reaches ${showQuantity(heat.celsius, '°C')}; ${serves}. ${
      shared ? `The shared wire puts ${smallVolts(worst.movingPeakVolts)} of charging pulses on the first stage’s ground` : 'The wire to the star carries no pulses'
    }`),
    corners: [
      {
        name: `${row.name} ${values.laid === 'bundle' ? 'in a hot bundle' : 'by itself'}`, value: dropVolts * 1000, unit: '', of: 'mV to the load',
        level: worstLevel(findings.filter(({ rule }) => rule !== 'shared-ground')), found: `copper at ${showQuantity(heat.celsius, '°C')}, ${showQuantity(rmsAmps, 'A')} of ${showQuantity(capacityAmps, 'A')} RMS`, restsOn: 'assumed 0.4 mm insulation',
      },
      ...at.map((each): CornerFigure => ({
        name: mainsName(mains, each.mains), value: each.movingPeakVolts * 1000, unit: '', of: 'mV shared', found: shared ? `pulses of ${showQuantity(each.peakAmps, 'A')} at the peak` : `steady, ${smallVolts(each.shared.meanVolts)}: a step when the load switches`,
        ...(each === worst ? { level: levelOfRule(findings, 'shared-ground'), restsOn: 'estimate, joints left out' } : {}),
      })),
    ],
    findings,
    working: stepsOf(values, solved),
    plot: plotOf(worst, values),
    spectrum: spectrumOf(worst),
    sheet: {
      rectifierText: NAMES[values.topology] ?? values.topology,
      reservoirText: showMarked(values.farads, 'F'),
      loadText: showMarked(values.loadAmps, 'A'),
      pulseText: showQuantity(worst.corner.rectifier.winding.peakAmps, 'A', 2),
      dropText: smallVolts(shared ? worst.movingPeakVolts : worst.shared.meanVolts),
    },
    handOn: [handOn(rectify, { what: 'This rail', from: { ...values, floorVolts: undefined, draws: 'steadily' }, given: { ratedVolts: RESERVOIR_VOLTS, floorVolts: '' } })],
  };
}

export const wireDrop = defineCalculator({
  ...wireDropFace,
  quantities: { 'winding.openCircuitVolts': 'windingVolts', 'load.everythingAmps': 'loadAmps', 'load.amps': 'loadAmps', amps: 'loadAmps', celsius: 'loadAmps', toCelsius: 'loadAmps' },
  solve,
});
