import amps from '../../../content/shop/amps.json';
import { linearRegulator, meterReading, quiescentAmps, ratedPrimaryAmps, shortCircuitAmps } from '../../compute/index.ts';
import { neededInputVolts } from '../../compute/supplies/regulator-stage.ts';
import { benchCircuit } from '../../compute/tolerance/bench-circuit.ts';
import { benchWaves } from '../../compute/tolerance/bench-waves.ts';
import { nominalDraw, partSpreads } from '../../compute/tolerance/part-draw.ts';
import { given, type Shop } from '../shop.ts';
import { BENCH_DAY, quillonBench, range, spreads } from './quillon-bench.ts';
import { behindLamp } from './series-lamp.ts';
import { quillonChain, settledParts } from './small-transformer.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** Lamps on the shop's shelf: one for a whole amp, one for a small transformer alone. */
const BIG_LAMP_WATTS = 60;
const SMALL_LAMP_WATTS = 15;
/** What the Quillon's high-voltage reservoirs are marked. Supposed. */
const MARK_VOLTS = 450;
/** Over the expected current, for the limit of a bench supply. The shop's habit. */
const LIMIT_OVER = 1.5;
/** The resistor that stands in for the relays at first: its watts have a margin of two and more. */
const DUMMY = { ohms: 120, watts: 5 };
/** Readings of another day, for the quiz: mean and AC, true RMS. */
const QUIZ_READ = { mean: 21.4, ac: 0.36, times: 3.3 };

/** How far under the sheet's lowest valley a reading stands, for the quiz. */
const QUIZ_BELOW = 2;

/** Highest no-load peak of an amp's high-voltage winding: its volts, √2, strong mains. */
const noLoadPeak = (volts: number, mains: { readonly highVolts: number; readonly nominalVolts: number }): number => (volts * Math.SQRT2 * mains.highVolts) / mains.nominalVolts;

const highWinding = (windings: readonly { readonly kind: string; readonly volts: number }[]): number => given(windings.find(({ kind }) => kind === 'high-voltage')?.volts, 'a high-voltage winding');

/** Everything that lesson 21 says of the Quillon 20 on its first evening under power. */
export function work(shop: Shop): Worked<string> {
  const job = shop.quillon20;
  const { mains, amp } = job;
  const chain = quillonChain(job);
  const { transformer, regulator, reservoir } = settledParts(job);
  const loaded = quillonBench(shop);
  const running = loaded.load.amps;

  const primary = ratedPrimaryAmps({ voltAmps: transformer.voltAmps, mainsVolts: mains.nominalVolts });
  const primaryShort = (shortCircuitAmps(chain.winding) * primary) / given(chain.winding.ratedAmps, 'the rating of its winding');
  const shortOhms = mains.nominalVolts / primaryShort;
  const ampOhms = mains.nominalVolts ** 2 / given(amp.transformer.presentVoltAmps, 'what the amp draws');
  const lamp = (watts: number) => ({ watts, volts: mains.nominalVolts });
  const behind = (watts: number, loadOhms: number) => behindLamp({ lamp: lamp(watts), mainsVolts: BENCH_DAY.volts, loadOhms });
  const bigShort = behind(BIG_LAMP_WATTS, shortOhms);
  const bigAmp = behind(BIG_LAMP_WATTS, ampOhms);
  const smallShort = behind(SMALL_LAMP_WATTS, shortOhms);
  const heat = (through: number): number => (through / primary) ** 2;

  const unloadedAt = spreads(quillonBench(shop, 0));
  const at = spreads(loaded);
  const dummyAt = spreads(quillonBench(shop, job.rail.volts / DUMMY.ohms));
  const circuit = benchCircuit(loaded, nominalDraw(partSpreads(loaded)));
  if (circuit.source.kind !== 'winding') throw new Error('the Quillon 20 is fed from a winding');
  const { reservoirVolts, windingAmps } = benchWaves(circuit, circuit.source);
  const read = (values: Float64Array, meter: 'dc' | 'true-rms-ac' | 'averaging-ac'): number => meterReading({ values, meter }).value;
  const peakToPeak = Math.max(...reservoirVolts) - Math.min(...reservoirVolts);
  const ripple = read(reservoirVolts, 'true-rms-ac');
  const rippleAveraging = read(reservoirVolts, 'averaging-ac');
  const windingRms = read(windingAmps, 'true-rms-ac');
  const windingAveraging = read(windingAmps, 'averaging-ac');
  const mean = read(reservoirVolts, 'dc');
  const valley = mean - (3.3 * ripple) / 2;
  const part = linearRegulator(regulator);
  const bench = running + quiescentAmps({ part, amps: running }).max;
  const highVolts = given(amp.highTensionVolts, 'the high voltage');
  const peak = noLoadPeak(highWinding(amps['quillon-20'].windings), mains);
  const fennelWinding = highWinding(amps['fennel-100'].windings);
  const fennelPeak = noLoadPeak(fennelWinding, shop.fennel100.mains);
  const neededVolts = neededInputVolts(chain.stage, running);

  const figures = {
    rail: figure(job.rail.volts, 'V'),
    mains: figure(mains.nominalVolts, 'V'),
    day: figure(BENCH_DAY.volts, 'V'),
    highMains: figure(mains.highVolts, 'V'),
    lowMains: figure(mains.lowVolts, 'V'),
    air: figure(BENCH_DAY.celsius, '°C'),
    rating: figure(transformer.voltAmps, 'VA'),
    primary: solved(primary, 'A', 2),
    shortAmps: solved(primaryShort, 'A', 2),
    shortHeat: solved(heat(primaryShort), '', 2),
    bigLamp: figure(BIG_LAMP_WATTS, 'W'),
    smallLamp: figure(SMALL_LAMP_WATTS, 'W'),
    bigShortAmps: solved(bigShort.amps, 'A', 2),
    bigShortLamp: solved(bigShort.lampVolts, 'V', 2),
    bigShortHeat: solved(heat(bigShort.amps), '', 2),
    bigAmpVolts: solved(bigAmp.loadVolts, 'V', 2),
    bigDeadAmps: solved(BIG_LAMP_WATTS / mains.nominalVolts, 'A', 1),
    smallShortAmps: solved(smallShort.amps, 'A', 2),
    smallShortHeat: solved(heat(smallShort.amps), '', 2),
    running: solved(running, 'A', 2),
    benchVolts: solved(mean, 'V', 2),
    benchAmps: solved(bench, 'A', 2),
    benchLimit: solved(LIMIT_OVER * bench, 'A', 2),
    limitOver: figure(LIMIT_OVER, ''),
    reservoir: figure(reservoir.farads, 'F'),
    mark: figure(reservoir.ratedVolts, 'V'),
    dummy: figure(DUMMY.ohms, 'Ω'),
    dummyWatts: figure(DUMMY.watts, 'W'),
    dummyHeat: solved(job.rail.volts ** 2 / DUMMY.ohms, 'W', 2),
    windingVolts: figure(highWinding(amps['quillon-20'].windings), 'V'),
    highVolts: figure(highVolts, 'V'),
    highMark: figure(MARK_VOLTS, 'V'),
    highPeak: solved(peak, 'V'),
    highOver: solved(peak - MARK_VOLTS, 'V', 2),
    fennelWinding: figure(fennelWinding, 'V'),
    fennelHigh: figure(shop.fennel100.mains.highVolts, 'V'),
    fennelNominal: figure(shop.fennel100.mains.nominalVolts, 'V'),
    mean: solved(mean, 'V'),
    ripple: solved(ripple, 'V'),
    rippleAveraging: solved(rippleAveraging, 'V'),
    peakToPeak: solved(peakToPeak, 'V'),
    trueTimes: solved(peakToPeak / ripple, '', 3),
    averagingTimes: solved(peakToPeak / rippleAveraging, '', 3),
    valley: solved(valley, 'V'),
    solvedValley: solved(Math.min(...reservoirVolts), 'V'),
    windingRms: solved(windingRms, 'A', 2),
    windingAveraging: solved(windingAveraging, 'A', 2),
    averagingShort: solved(1 - windingAveraging / windingRms, '%', 2),
    heatShort: solved(1 - (windingAveraging / windingRms) ** 2, '%', 2),
    needed: solved(neededVolts, 'V'),
    left: solved(valley - neededVolts, 'V', 2),
    noLoad: solved(unloadedAt('reservoir-mean').nominal, 'V'),
    quizLow: solved(at('reservoir-valley').p5 - QUIZ_BELOW, 'V'),
    quizMean: figure(QUIZ_READ.mean, 'V'),
    quizAc: figure(QUIZ_READ.ac, 'V'),
    quizTimes: figure(QUIZ_READ.times, ''),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: {
      regulator,
      windingOpenRange: range(at('winding-open'), 'V'),
      noLoadRange: range(unloadedAt('reservoir-mean'), 'V'),
      dummyMeanRange: range(dummyAt('reservoir-mean'), 'V'),
      dummyRailRange: range(dummyAt('rail'), 'V'),
      railRange: range(at('rail'), 'V'),
      meanRange: range(at('reservoir-mean'), 'V'),
      rippleRange: range(at('reservoir-ripple'), 'V', 2),
      valleyRange: range(at('reservoir-valley'), 'V'),
      windingAmpsRange: range(at('winding-amps'), 'A', 2),
      loadRange: range(at('load-amps'), 'A', 2),
      tabRange: range(at('regulator-celsius'), '°C', 2),
      hotRange: range(at('winding-celsius'), '°C', 2),
    },
    asked: [
      'rating', 'bigLamp', 'bigShortHeat', 'windingRms', 'windingAveraging', 'heatShort', 'highMark', 'highPeak', 'benchLimit', 'fennelWinding', 'fennelHigh', 'fennelNominal',
      'quizMean', 'quizAc', 'quizTimes', 'quizLow', 'shortHeat', 'valleyRange',
    ],
    answers: { 'fennel-peak': fennelPeak, 'valley-by-meter': QUIZ_READ.mean - (QUIZ_READ.times * QUIZ_READ.ac) / 2 },
    opened: { mainsRead: BENCH_DAY.volts, loadAmps: Number(running.toPrecision(3)), airCelsius: BENCH_DAY.celsius },
    steps: [
      {
        ask: 'How do you set the bench supply for the first stage?',
        words: `Volts: the mean that the reservoir will have. Limit: ${text('limitOver')} times what you expect, the regulator’s own current included. A fault then finds no more than that.`,
        sum: `${text('benchVolts')}; ${text('limitOver')} × ${text('benchAmps')} = ${text('benchLimit')}`,
      },
      {
        ask: 'What may the unloaded reservoir read, and may it?',
        words: 'The crest of the open winding, less two diodes at next to no current. Then look at the mark on the part.',
        sum: `${range(unloadedAt('reservoir-mean'), 'V')}, against a mark of ${text('mark')}`,
      },
      {
        ask: 'Loaded, the true-RMS meter reads the ripple on its AC range. How deep is the valley?',
        words: 'Times 3.3 is peak to peak, near enough; half of that goes down from the mean.',
        sum: `${text('mean')} − 3.3 × ${text('ripple')} / 2 = ${text('valley')}`,
        left: true,
      },
      {
        ask: 'Does the regulator hold there?',
        words: 'Its highest output plus the dropout to plan with, taken off the valley. This is today’s mains, not the lowest.',
        sum: `${text('valley')} − ${text('needed')} = ${text('left')}`,
        left: true,
      },
      {
        ask: 'The output valves are out. How high does the unloaded high voltage go?',
        words: 'The winding’s crest on strong mains; the regulation of a transformer without load adds to it.',
        sum: `${text('windingVolts')} × 1.414 × ${text('highMains')} / ${text('mains')} = ${text('highPeak')}, against ${text('highMark')}`,
        left: true,
      },
    ],
  });
}
