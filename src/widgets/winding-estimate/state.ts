import { worstLevel, type Finding } from '../../compute/findings.ts';
import { checkOhmmeter, checkReadingsTell, checkWindingPurpose, noteWindingInsulation } from '../../compute/findings/winding-estimate.ts';
import { checkSpareCurrent } from '../../compute/findings/winding.ts';
import { HAND_HELD_METER, windingFromReadings, type Bounded, type MeterError, type WindingEstimate } from '../../compute/parts/winding-readings.ts';
import { loadedVolts, sagOfEstimate } from '../../compute/parts/winding-sag.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { rectify } from '../rectify/state.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import type { PlotData } from '../shared/plot-data.ts';
import { showMarked, showQuantity, type Unit } from '../shared/units.ts';
import { fields } from './fields.ts';

type Values = ValuesOf<typeof fields>;

/** How far the mains may have moved between the readings when nobody watched it. Assumed. */
const UNWATCHED_DRIFT = 0.01;

export interface WindingEstimateView extends ViewModel {
  readonly ohmmeter: boolean;
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly plot: PlotData;
  readonly handOn: readonly HandOnLink[];
}

const watched = ({ lighterMains, heavierMains }: Values): boolean => lighterMains !== undefined && heavierMains !== undefined;

function meterOf(values: Values): MeterError {
  const { voltsGain, voltsCounts, ampsGain } = values;
  return { voltsGain, voltsCounts, ampsGain, mainsDrift: watched(values) ? HAND_HELD_METER.mainsDrift : UNWATCHED_DRIFT };
}

function estimateOf(values: Values): WindingEstimate {
  const reading = (volts: number, amps: number, mainsVolts: number | undefined) => ({ volts, amps, ...(mainsVolts === undefined ? {} : { mainsVolts }) });
  return windingFromReadings({
    lighter: reading(values.lighterVolts, values.lighterAmps, values.lighterMains),
    heavier: reading(values.heavierVolts, values.heavierAmps, values.heavierMains),
    nominalMainsVolts: values.mainsVolts,
    meter: meterOf(values),
  });
}

const between = ({ least, most }: Bounded, unit: Unit): string => `${showQuantity(least, unit)} to ${showQuantity(most, unit)}`;

function findingsOf(values: Values, estimate: WindingEstimate): readonly Finding[] {
  const open = estimate.openCircuitVolts.value;
  const context = { corner: watched(values) ? 'every meter error at its worst end' : 'every meter error at its worst end, the mains unwatched', restsOn: [watched(values) ? 'measured' : 'assumed'] as const };
  return [
    checkWindingPurpose({ ...context, purpose: values.purpose, openCircuitVolts: open }),
    checkReadingsTell({ ...context, ohms: estimate.ohms, telling: estimate.telling }),
    checkSpareCurrent({ ...context, corner: 'any mains', restsOn: [values.ratedAmps === undefined ? 'assumed' : 'rated'], carriedRmsAmps: values.carriedAmps, wantedRmsAmps: values.wantedAmps, ...(values.ratedAmps === undefined ? {} : { ratedAmps: values.ratedAmps }) }),
    ...(values.ohmmeterOhms === undefined ? [] : [checkOhmmeter({ ...context, corner: 'a cold winding', secondaryOhms: values.ohmmeterOhms, ohms: estimate.ohms.value, provedDead: values.proved === 'dead' })]),
    noteWindingInsulation({ ...context, corner: 'any mains', restsOn: ['assumed'], openCircuitVolts: open }),
  ];
}

function stepsOf(values: Values, estimate: WindingEstimate, sag: Bounded, sagAmps: number): readonly WorkingStep[] {
  const toNominal = (mains: number | undefined): number => values.mainsVolts / (mains ?? values.mainsVolts);
  const light = toNominal(values.lighterMains);
  const heavy = toNominal(values.heavierMains);
  const [volts1, volts2] = [values.lighterVolts * light, values.heavierVolts * heavy];
  const [amps1, amps2] = [values.lighterAmps * light, values.heavierAmps * heavy];
  const brought = (name: string, symbol: string, read: number, mains: number | undefined, result: number): WorkingStep =>
    workingStep({
      name, words: `The ${name === 'lighter' ? 'lighter' : 'loaded'} reading, brought to nominal mains.`, formula: `${symbol} = V × N / M`,
      numbers: [{ symbol: 'V', value: read, unit: 'V' }, { symbol: 'N', value: values.mainsVolts, unit: 'V' }, { symbol: 'M', value: mains ?? values.mainsVolts, unit: 'V', digits: 4 }],
      result: { symbol, value: result, unit: 'V', digits: 4 }, source: { id: 'arithmetic' },
    });
  const ohms = { symbol: 'R', value: estimate.ohms.value, unit: 'Ω' } as const;
  return [
    brought('lighter', 'V1', values.lighterVolts, values.lighterMains, volts1),
    brought('loaded', 'V2', values.heavierVolts, values.heavierMains, volts2),
    workingStep({
      name: 'source-ohms', words: 'What the load feels in the way: the step in volts over the step in amps.', formula: 'R = (V1 − V2) / (I2 − I1)',
      numbers: [{ symbol: 'V1', value: volts1, unit: 'V', digits: 4 }, { symbol: 'V2', value: volts2, unit: 'V', digits: 4 }, { symbol: 'I1', value: amps1, unit: 'A' }, { symbol: 'I2', value: amps2, unit: 'A' }],
      result: ohms, source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'open-circuit', words: 'What it gives with nothing connected.', formula: 'E = V1 + I1 × R',
      numbers: [{ symbol: 'V1', value: volts1, unit: 'V' }, { symbol: 'I1', value: amps1, unit: 'A' }, ohms],
      result: { symbol: 'E', value: estimate.openCircuitVolts.value, unit: 'V' }, source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'limits', words: `The least and most that fit the readings: ${between(estimate.ohms, 'Ω')}, ${between(estimate.openCircuitVolts, 'V')}.`,
      formula: 'Every combination of the meter’s errors at their worst ends', numbers: [], result: { symbol: 'R at most', value: estimate.ohms.most, unit: 'Ω' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'sag', words: `How far it stands above its loaded volts with nothing drawn; ${between(sag, '%')} by the meter’s limits.`, formula: 's = I × R / (E − I × R)',
      numbers: [{ symbol: 'I', value: sagAmps, unit: 'A' }, ohms, { symbol: 'E', value: estimate.openCircuitVolts.value, unit: 'V' }],
      result: { symbol: 's', value: sag.value, unit: '%' }, source: { id: 'note-transformer-regulation' },
    }),
    workingStep({
      name: 'load-heat', words: 'What the test load turns into heat: rate the resistor for it, and keep it off the bench top.', formula: 'P = V × I',
      numbers: [{ symbol: 'V', value: values.heavierVolts, unit: 'V' }, { symbol: 'I', value: values.heavierAmps, unit: 'A' }],
      result: { symbol: 'P', value: values.heavierVolts * values.heavierAmps, unit: 'W' }, source: { id: 'arithmetic' },
    }),
  ];
}

function plotOf(values: Values, estimate: WindingEstimate): PlotData {
  const most = 1.25 * Math.max(values.heavierAmps, values.ratedAmps ?? 0);
  const amps = Array.from({ length: 26 }, (_, at) => (most * at) / 25);
  const line = (mainsRatio: number): number[] => amps.map((each) => loadedVolts({ estimate, mainsRatio, amps: each }));
  return {
    caption: 'What the winding gives into a resistor at low, nominal and high mains. Each line falls by its resistance; none says where it must stop, since that is a matter of heat.',
    x: { name: 'current drawn, RMS', unit: 'A', values: amps },
    series: [
      { name: 'high mains', kind: 'other', unit: 'V', values: line(1 + values.mainsSpread) },
      { name: 'nominal mains', kind: 'volts', unit: 'V', values: line(1) },
      { name: 'low mains', kind: 'needed', unit: 'V', values: line(1 - values.mainsSpread) },
    ],
    markAt: values.heavierAmps,
  };
}

/** The winding as a rated one: what the rectifier calculator asks for. Nothing when it lies outside that one's ranges. */
function handOnOf(values: Values, estimate: WindingEstimate, sag: Bounded, amps: number): readonly HandOnLink[] {
  const windingVolts = loadedVolts({ estimate, mainsRatio: 1, amps });
  const { windingVolts: volts, windingAmps, regulation } = rectify.fields;
  if (windingVolts < volts.min || windingVolts > volts.max || amps < windingAmps.min || amps > windingAmps.max || sag.value < regulation.min || sag.value > regulation.max) return [];
  const given = { windingVolts: Number(windingVolts.toPrecision(4)), windingAmps: amps, regulation: Number(sag.value.toPrecision(3)), mainsVolts: values.mainsVolts, mainsSpread: values.mainsSpread };
  return [handOn(rectify, { what: values.ratedAmps === undefined ? `This winding, as if rated ${showMarked(amps, 'A')}` : 'This winding', given })];
}

function solve(values: Values): WindingEstimateView {
  const estimate = estimateOf(values);
  const { openCircuitVolts, ohms } = estimate;
  const sagAmps = values.ratedAmps ?? values.heavierAmps;
  const sag = sagOfEstimate({ estimate, amps: sagAmps });
  const findings = findingsOf(values, estimate);
  const level = worstLevel(findings);
  const unknown = values.ratedAmps === undefined ? '. What more it may carry these readings cannot tell' : '';
  const restsOn = watched(values) ? 'measured' : 'measured, mains unwatched';
  const high = 1 + values.mainsSpread;
  return {
    level,
    summary: leadWithHazard(findings, `${showQuantity(openCircuitVolts.value, 'V')} unloaded behind ${showQuantity(ohms.value, 'Ω')} (${between(ohms, 'Ω')}), regulation ${showQuantity(sag.value, '%', 2)} at ${showMarked(sagAmps, 'A')}${unknown}`),
    ohmmeter: values.ohmmeterOhms !== undefined,
    corners: [
      { name: 'source resistance', value: ohms.value, unit: 'Ω', of: '', level: levelOfRule(findings, 'readings-tell'), found: between(ohms, 'Ω'), restsOn },
      { name: `low mains · ${showMarked(values.mainsVolts * (1 - values.mainsSpread), 'V')}`, value: loadedVolts({ estimate, mainsRatio: 1 - values.mainsSpread, amps: sagAmps }), unit: 'V', of: 'loaded', found: `with ${showMarked(sagAmps, 'A')}` },
      { name: `nominal mains · ${showMarked(values.mainsVolts, 'V')}`, value: openCircuitVolts.value, unit: 'V', of: 'unloaded', found: between(openCircuitVolts, 'V'), restsOn },
      { name: `high mains · ${showMarked(values.mainsVolts * high, 'V')}`, value: openCircuitVolts.most * high * Math.SQRT2, unit: 'V', of: 'peak', found: 'unloaded, a sine: what a reservoir must bear' },
    ],
    findings,
    working: stepsOf(values, estimate, sag, sagAmps),
    plot: plotOf(values, estimate),
    // A winding that nobody may use is not taken on.
    handOn: levelOfRule(findings, 'winding-purpose') === 'hazard' ? [] : handOnOf(values, estimate, sag, sagAmps),
  };
}

export const windingEstimate = defineCalculator({
  id: 'winding-estimate',
  version: 1,
  question: 'What is this winding really?',
  fields,
  quantities: {
    'heavier.amps': 'heavierAmps', 'heavier.volts': 'heavierVolts', 'lighter.volts': 'lighterVolts', 'lighter.amps': 'lighterAmps',
    'lighter.mainsVolts': 'lighterMains', 'heavier.mainsVolts': 'heavierMains', amps: 'heavierAmps',
  },
  solve,
});
