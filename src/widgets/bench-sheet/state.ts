import { worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import type { BenchJob } from '../../compute/tolerance/bench-job.ts';
import { CAUSES, type CauseId } from '../../compute/tolerance/causes.ts';
import { expectCause, rankCauses, type RankedCause } from '../../compute/tolerance/rank-causes.ts';
import { judgeReading, runTolerance, type ReadingSpread, type ToleranceRun } from '../../compute/tolerance/spread-of-readings.ts';
import { testPoint, type TestPointId } from '../../compute/tolerance/test-points.ts';
import { headroom } from '../headroom/state.ts';
import { defineCalculator, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import { railIsSet } from '../shared/stage-fields.ts';
import { showQuantity } from '../shared/units.ts';
import { benchSheetFace, blankReadings } from './fields.ts';
import { firstPowerHazards, type FirstPowerHazard } from './first-power.ts';
import { jobOf, measuredOf, readable, type Values } from './job.ts';
import { metersApart, metersInWords, type MetersApart } from './meters.ts';
import { WORTH_NAMING, powerOffFirst } from './power-off-first.ts';

/** One line of the sheet. */
export interface SheetLine {
  readonly id: Exclude<TestPointId, 'mains'>;
  readonly where: string;
  readonly instrument: string;
  /** "19.1 V to 20.4 V" */
  readonly expected: string;
  readonly nominal: string;
  /** Shares of the strip's width: extremes, fifth to ninety-fifth percentile, nominal, and what was read. */
  readonly strip: { readonly min: number; readonly low: number; readonly nominal: number; readonly high: number; readonly max: number; readonly read?: number };
  readonly isEstimate: boolean;
  /** What the meter that is not on the bench would show here. */
  readonly other?: string;
  readonly level?: Level;
  readonly off?: string;
}

export interface SheetStage {
  readonly name: string;
  readonly how: string;
  readonly lines: readonly SheetLine[];
}

export interface CauseLine {
  readonly words: string;
  readonly share: string;
  readonly confirm: string;
  readonly next?: string;
}

export interface BenchSheetView extends ViewModel {
  readonly shows: { readonly railVolts: boolean; readonly winding: boolean; readonly regulator: boolean; readonly coil: boolean };
  readonly firstPower: readonly FirstPowerHazard[];
  readonly stages: readonly SheetStage[];
  readonly powerOff?: string;
  readonly causes: readonly CauseLine[];
  readonly causesNote: string;
  /** The causes are still being worked out; what stands here already is final. */
  readonly isLooking: boolean;
  readonly findings: readonly Finding[];
  readonly meters: string;
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

/** Builds drawn for the spread, and for each cause. The same seed gives the same sheet. */
const SAMPLES = 120;
const CAUSE_SAMPLES = 8;
/** A defect of the circuit itself has no degrees, and swamps the tolerances: half as many builds tell as much, each far dearer to solve. */
const DEFECT_SAMPLES = 4;
const DEFECTS: ReadonlySet<CauseId> = new Set(['shorted-diode', 'second-ground', 'missing-reservoir']);
const SEED = 20;

const STAGES: readonly { readonly name: string; readonly how: string; readonly points: readonly TestPointId[] }[] = [
  { name: 'The transformer alone, rectifier unplugged', how: 'Behind the lamp first: dark means no gross short, no more. Then without it, fuses in, and read.', points: ['winding-open'] },
  { name: 'The converter into a dummy load', how: 'At full mains, its own fuse in, the rail not yet joined to it.', points: ['converter-output'] },
  { name: 'Rectifier and reservoir, load on', how: 'Polarity checked with the power off; nothing downstream that a high reading could spoil.', points: ['winding-loaded', 'winding-loaded-averaging', 'winding-amps', 'reservoir-mean', 'reservoir-ripple', 'reservoir-ripple-averaging', 'reservoir-ripple-peaks', 'reservoir-valley', 'ripple-frequency'] },
  { name: 'The rail, load on', how: 'Scope ground only on a point that is grounded already.', points: ['rail', 'rail-ripple', 'load-amps'] },
  { name: 'Once it is hot', how: 'Half an hour, and two hours for the winding: its resistance read at once after switching off, proved dead first.', points: ['regulator-celsius', 'winding-celsius'] },
  { name: 'Relays and ground', how: 'With everything in place.', points: ['coil-release', 'ground-wire'] },
];

const INSTRUMENTS: Readonly<Record<string, string>> = {
  dc: 'any meter', 'true-rms-ac': 'true-RMS meter', 'averaging-ac': 'averaging meter', scope: 'scope', clamp: 'true-RMS clamp or shunt', thermometer: 'thermometer', resistance: 'ohms, cold and hot',
};

/** An averaging meter is right on the sine of an unloaded winding. */
const instrumentOf = (id: TestPointId, meter: Values['meter']): string => (id === 'winding-open' && meter === 'averaging' ? 'any meter' : (INSTRUMENTS[testPoint(id).instrument] ?? ''));

/** A strip that holds the extremes and what was read, with some room. */
function stripOf(spread: ReadingSpread, read: number | undefined): SheetLine['strip'] {
  const all = [spread.min, spread.max, spread.nominal, ...(read === undefined ? [] : [read])];
  const least = Math.min(...all);
  const room = Math.max(Math.max(...all) - least, Math.abs(spread.nominal) * 1e-3, 1e-9);
  const place = (value: number): number => Number((0.05 + (0.9 * (value - least)) / room).toFixed(3));
  return { min: place(spread.min), low: place(spread.p5), nominal: place(spread.nominal), high: place(spread.p95), max: place(spread.max), ...(read === undefined ? {} : { read: place(read) }) };
}

/** As a meter shows it: ripple behind a regulator in millivolts. */
const showReading = (value: number, { unit }: ReadingSpread['point']): string => (unit === 'V' && Math.abs(value) < 0.1 ? `${(1000 * value).toPrecision(2)}\u00A0mV` : showQuantity(value, unit));

function lineOf(values: Values, spread: ReadingSpread, apart: MetersApart | undefined): SheetLine | undefined {
  const { point, nominal, p5, p95 } = spread;
  if (point.id === 'mains') return undefined;
  const read = values[point.id];
  const show = (value: number): string => showReading(value, point);
  const other = apart?.other[point.id];
  const off = read === undefined || nominal === 0 ? undefined : read / nominal - 1;
  return {
    id: point.id,
    where: point.words.replace(/, (true-RMS|averaging) meter/, ''),
    instrument: instrumentOf(point.id, values.meter),
    expected: `${show(p5)} to ${show(p95)}`,
    nominal: show(nominal),
    strip: stripOf(spread, read),
    isEstimate: point.estimate === true,
    ...(other === undefined ? {} : { other }),
    ...(read === undefined ? {} : { level: judgeReading({ spread, measured: read }) }),
    ...(off === undefined ? {} : { off: Math.abs(off) < 0.005 ? 'as expected' : `${showQuantity(Math.abs(off), '%', 2)} ${off < 0 ? 'below' : 'above'} what is likely` }),
  };
}

function stagesOf(values: Values, run: ToleranceRun, apart: MetersApart | undefined): readonly SheetStage[] {
  const readableIds = new Set(readable(values).map(({ id }) => id));
  return STAGES.flatMap(({ name, how, points }) => {
    const lines = points.flatMap((id): SheetLine[] => {
      const spread = readableIds.has(id) ? run.readings.find(({ point }) => point.id === id) : undefined;
      const line = spread === undefined ? undefined : lineOf(values, spread, apart);
      return line === undefined ? [] : [line];
    });
    return lines.length === 0 ? [] : [{ name, how, lines }];
  });
}

/** A phrase that goes on within a sentence. */
const within = (words: string): string => words.replace(/^[A-Z](?![A-Z])/, (letter) => letter.toLowerCase());

/** Named at the most; one that may burn is named in any case. */
const MOST_CAUSES = 4;

const causeLine = ({ cause, share, tellsFromNext }: RankedCause, values: Values): CauseLine => ({
  words: cause.words,
  share: share > 0.995 ? 'nearly certain among these' : showQuantity(share, '%', 2),
  confirm: cause.confirm,
  ...(tellsFromNext === undefined || !readable(values).some(({ id }) => id === tellsFromNext) ? {} : { next: testPoint(tellsFromNext).words }),
});

/** Builds without a steady state: what a plan may not have. */
function unsolvedFinding({ unsolved, samples }: ToleranceRun): readonly Finding[] {
  if (unsolved === 0) return [];
  const all = unsolved + samples;
  return [{
    rule: 'builds-without-steady-state',
    level: 'outside',
    what: `${unsolved} of ${all} builds of this plan settle nowhere`,
    numbers: [{ name: 'share of builds', value: unsolved / all, unit: '' }],
    why: 'Parts within their tolerances then make a supply that hunts, starves or never starts; the ranges below leave those builds out.',
    todo: 'Look at the supply at its corners before anything is built or powered.',
    restsOn: ['assumed'],
    source: { id: 'solved' },
  }];
}

function workingOf(values: Values, run: ToleranceRun, apart: MetersApart | undefined): readonly WorkingStep[] {
  const { peaks, averaging, clamp } = apart ?? {};
  return [
    workingStep({ name: 'builds', words: 'Builds of this plan, each part drawn within its tolerance, each solved; expected is the fifth to the ninety-fifth percentile, meter error included.', formula: 'Drawn from one fixed seed', numbers: [], result: { symbol: 'n', value: run.samples, unit: '' }, source: { id: 'solved' } }),
    workingStep({ name: 'mains-of-the-day', words: values.mainsRead === undefined ? 'Mains nobody read: it may stand anywhere in its range.' : 'Mains of the day over its nominal: every reading goes with it.', formula: 'k = D / N', numbers: [{ symbol: 'D', value: values.mainsRead ?? values.mainsVolts, unit: 'V' }, { symbol: 'N', value: values.mainsVolts, unit: 'V' }], result: { symbol: 'k', value: (values.mainsRead ?? values.mainsVolts) / values.mainsVolts, unit: '' }, source: { id: 'arithmetic' } }),
    ...(peaks === undefined ? [] : [workingStep({ name: 'peaks-over-rms', words: 'Ripple peak to peak over its RMS; a sawtooth has 3.46.', formula: 'Out of the solved wave', numbers: [], result: { symbol: 'p', value: peaks, unit: '' }, source: { id: 'ripple-by-meter' } })]),
    ...(averaging === undefined ? [] : [workingStep({ name: 'averaging-over-rms', words: 'What an averaging meter shows of that RMS; on a sine it is all of it.', formula: 'Mean size of the solved wave × π / (2 × √2), over its RMS', numbers: [], result: { symbol: 'a', value: averaging, unit: '' }, source: { id: 'ripple-by-meter' } })]),
    ...(clamp === undefined ? [] : [workingStep({ name: 'clamp-over-rms', words: 'What an averaging clamp shows of the winding’s RMS amps: they come in short pulses.', formula: 'Mean size of the solved amps × π / (2 × √2), over their RMS', numbers: [], result: { symbol: 'c', value: clamp, unit: '' }, source: { id: 'solved' } })]),
  ];
}

/** The newest answer is kept: readings are typed one after another on one and the same supply. */
function kept<R>(work: (job: BenchJob) => R): (job: BenchJob) => R {
  let last: { readonly key: string; readonly result: R } | undefined;
  return (job) => {
    const key = JSON.stringify(job);
    if (last?.key !== key) last = { key, result: work(job) };
    return last.result;
  };
}

const spreadOf = kept((job) => runTolerance({ job, samples: SAMPLES, seed: SEED }));
const causesOf = kept((job) =>
  CAUSES.filter(({ applies }) => applies(job))
    .map((cause) => expectCause({ job, cause, samples: DEFECTS.has(cause.id) ? DEFECT_SAMPLES : CAUSE_SAMPLES, seed: SEED }))
    .filter(({ builds }) => builds.length > 0),
);

/** `withCauses`: whether the causes are looked for as well, which takes a second where the supply is a new one. */
function solveWith(withCauses: boolean): (values: Values) => BenchSheetView {
  return (values) => {
    const job = jobOf(values);
    const run = spreadOf(job);
    const apart = metersApart(job, run);
    const stages = stagesOf(values, run, apart);
    const judged = stages.flatMap(({ lines }) => lines).flatMap(({ level, where }) => (level === undefined ? [] : [{ level, where }]));
    const wrong = judged.filter(({ level }) => level !== 'within');
    const measured = measuredOf(values);
    const ranked = wrong.length === 0 || !withCauses ? [] : rankCauses({ expected: causesOf(job), measured });
    const powerOff = powerOffFirst(ranked);
    const findings = [...powerOff.findings, ...unsolvedFinding(run)];
    const read = judged.length;
    const count = stages.reduce((sum, { lines }) => sum + lines.length, 0);
    const summary =
      read === 0
        ? `${count} readings to take, none taken yet`
        : `${read} of ${count} readings taken, ${wrong.length === 0 ? 'all of them as expected' : `${wrong.length} not as expected: ${wrong.map(({ where }) => within(where)).slice(0, 3).join('; ')}. What they point to stands below the sheet`}`;
    return {
      level: read === 0 && findings.length === 0 ? 'not assessed' : worstLevel([...judged, ...findings]),
      summary: leadWithHazard(findings, summary),
      shows: { railVolts: railIsSet(values), winding: values.feed === 'winding', regulator: values.regulator !== 'none', coil: values.coilKind !== 'none' },
      firstPower: firstPowerHazards(values),
      stages,
      ...(powerOff.first === undefined ? {} : { powerOff: powerOff.first }),
      causes: ranked.filter(({ cause, share }, index) => index === 0 || (share >= WORTH_NAMING && (index < MOST_CAUSES || cause.harm === 'fire'))).map((each) => causeLine(each, values)),
      causesNote: 'Each held equally likely beforehand, its circuit changed and solved; a fault that is none of those known here comes out as the one it resembles.',
      isLooking: wrong.length > 0 && !withCauses,
      findings,
      meters: metersInWords(apart),
      working: workingOf(values, run, apart),
      handOn: [
        ...(read === 0 ? [] : [handOn(benchSheetFace, { what: 'The same supply, every reading blank', from: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, value ?? ''])), given: { ...blankReadings, mainsRead: '' } })]),
        ...(values.feed === 'winding' ? [handOn(headroom, { what: 'This supply at its corners', from: { ...values, heatsink: values.heatsink ?? '' } })] : []),
      ],
    };
  };
}

export const benchSheet = defineCalculator({
  ...benchSheetFace,
  quantities: {
    'winding.openCircuitVolts': 'windingVolts', 'winding.ohms': 'regulation', outputVolts: 'setVolts', 'stage.outputVolts': 'setVolts', ratedVolts: 'coilVolts', 'mains.lowVolts': 'mainsSpread', 'mains.highVolts': 'mainsSpread',
    'load.amps': 'loadAmps', railVolts: 'setVolts', 'suppression.volts': 'zenerVolts', metres: 'groundMetres', volts: 'setVolts', 'regulator.setVolts': 'setVolts',
  },
  quick: solveWith(false),
  solve: solveWith(true),
});
