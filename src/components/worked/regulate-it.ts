import {
  INSULATORS, JUNCTION_AIM_CELSIUS, JUNCTION_LIMIT_CELSIUS, currentLimitAmps, diodePart, esrLimitOhms, heatsinkNeeded, linearRegulator, solveRectifier, windingFromRating,
} from '../../compute/index.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import { linearStage } from '../../compute/supplies/chain-parts.ts';
import type { BuckStage, ChainInput, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import { junctionToAirKelvinPerWatt, stageHeatWatts } from '../../compute/supplies/regulator-stage.ts';
import type { Shop } from '../shop.ts';
import type { LoadState, MainsState, ReservoirState } from '../../compute/supplies/corners.ts';
import { cornerOf, quillonChain, supplyCase } from './small-transformer.ts';
import { figure, inWords, solved, worked, type Worked } from './worked.ts';

/** A switching step-down board as sold for hobby use: typical, and to be read off the board's own sheet. */
const BUCK: Omit<BuckStage, 'outputVolts'> = {
  kind: 'buck', name: 'step-down board', outputToleranceRatio: 0.04, lossVolts: 1.3, headroomVolts: 1.5, minInputVolts: 4.5, maxInputVolts: 40,
  quiescentAmps: 0.01, ratedAmps: 2, junctionToAirKelvinPerWatt: 50, maxJunctionCelsius: 125, basis: 'typical',
};

/** The heaters of so many small valves, on a rail of their rated volts: too many for a one-amp regulator to start. */
const MANY_HEATERS = 6;

function corner(chain: ChainInput, mains: MainsState, reservoir: ReservoirState, load: LoadState = 'everything'): SolvedCorner {
  const at = solveCorner(chain, cornerOf(chain, { mains, load, reservoir }));
  if (!at.solved) throw new Error(at.message);
  return at;
}

/** The same rail from a transformer of the same size whose label reads the rail's own volts: what is asked for most often. */
const withWindingOf = (chain: ChainInput, volts: number, { voltAmps, regulation }: Shop['quillon20']['winding']): ChainInput => {
  const ratedAmps = voltAmps / volts;
  return { ...chain, winding: { ...windingFromRating({ ratedVolts: volts, ratedAmps, regulation }), ratedAmps, basis: 'rated' } };
};

interface ColdStart {
  readonly amps: number;
  readonly heaterVolts: number;
  readonly watts: number;
}

/**
 * A regulator in its limit with cold heaters behind it: its typical limit falls with the volts across it, the heaters
 * take what that current gives them, and the reservoir sags under it. Where the three meet is found by halving.
 */
function coldStart(shop: Shop, heaterOhms: number): ColdStart {
  const { spare, reservoir, mains } = shop.tarn45;
  const part = linearRegulator(shop.quillon20.regulator);
  const diode = diodePart('1n540x').typical;
  const inputVolts = (amps: number): number =>
    solveRectifier({
      topology: 'bridge', winding: spare, hertz: mains.hertz, diode,
      reservoir: { farads: reservoir.farads, ohms: esrLimitOhms(reservoir) }, load: { amps },
    }).rail.meanVolts;
  let low = 0;
  let high = part.shortCircuitAmps.peak;
  for (let step = 0; step < 30; step++) {
    const amps = (low + high) / 2;
    const across = Math.max(0, inputVolts(amps) - amps * heaterOhms);
    if (currentLimitAmps({ part, voltsAcross: across }) > amps) low = amps;
    else high = amps;
  }
  return { amps: low, heaterVolts: low * heaterOhms, watts: (inputVolts(low) - low * heaterOhms) * low };
}

/** Everything that lesson 9 says of the Quillon 20's regulator, and of heaters on the Tarn 45. */
export function work(shop: Shop): Worked<string> {
  const job = shop.quillon20;
  const chain = quillonChain(job);
  const part = linearRegulator(job.regulator);
  const stage = linearStage(part);
  // The valley is deepest with the smallest, oldest reservoir, the heat greatest with the largest.
  const low = corner(chain, 'low', 'smallest-oldest');
  const nominal = corner(chain, 'nominal', 'smallest-oldest');
  const highValley = corner(chain, 'high', 'smallest-oldest');
  const high = corner(chain, 'high', 'largest');
  const bench = corner(chain, 'nominal', 'marked', 'running');
  const unloaded = corner(chain, 'high', 'largest', 'off');
  const asked = corner(withWindingOf(chain, job.railVolts, job.winding), 'low', 'smallest-oldest');
  const dc = chain.load.everythingAmps;
  const { airCelsius } = chain.cooling;
  const contact = INSULATORS.find(({ id }) => id === 'bare-compound')?.kelvinPerWatt ?? Number.NaN;
  const path = { airCelsius, junctionToCase: part.junctionToCase, insulator: contact };
  const heatsink = heatsinkNeeded({ ...path, watts: high.regulatorWatts });

  const ldo = corner({ ...chain, stage: linearStage(linearRegulator(`ldo-${job.railVolts}`)) }, 'low', 'smallest-oldest');
  const heaters = shop.tarn45.loads.find((item) => item.kind === 'heater');
  if (heaters?.coldRatio === undefined) throw new Error('the Tarn 45 has heaters with a cold ratio');
  const hot = heaters.count * heaters.amps;
  const many = MANY_HEATERS * heaters.amps;
  const start = coldStart(shop, heaters.volts / (many * heaters.coldRatio));
  const example = { watts: 3, airCelsius: 60 };
  const spareLow = low.headroomVolts ?? Number.NaN;
  const dropout = low.neededVolts - stage.outputVolts * (1 + stage.outputToleranceRatio);

  const figures = {
    rail: figure(job.railVolts, 'V'),
    dc: figure(dc, 'A'),
    mean: solved(bench.rectifier.rail.meanVolts, 'V'),
    lowMains: figure(job.mains.lowVolts, 'V'),
    nominalMains: figure(job.mains.nominalVolts, 'V'),
    highMains: figure(job.mains.highVolts, 'V'),
    dropout: solved(dropout, 'V'),
    highestOutput: solved(stage.outputVolts * (1 + stage.outputToleranceRatio), 'V'),
    lowestOutput: solved(stage.outputVolts * (1 - stage.outputToleranceRatio), 'V'),
    needed: solved(low.neededVolts, 'V'),
    lowValley: solved(low.rectifier.rail.minVolts, 'V'),
    nominalValley: solved(nominal.rectifier.rail.minVolts, 'V'),
    highValley: solved(highValley.rectifier.rail.minVolts, 'V'),
    headroom: solved(spareLow, 'V'),
    nominalHeadroom: solved(nominal.headroomVolts ?? Number.NaN, 'V'),
    highHeadroom: solved(highValley.headroomVolts ?? Number.NaN, 'V'),
    highMean: solved(high.rectifier.rail.meanVolts, 'V'),
    own: figure(stage.quiescentAmps, 'A'),
    heat: solved(high.regulatorWatts, 'W'),
    air: figure(airCelsius, '°C'),
    toAir: figure(junctionToAirKelvinPerWatt(stage, { airCelsius }), 'K/W'),
    bareJunction: solved(airCelsius + high.regulatorWatts * part.junctionToAir, '°C'),
    limit: figure(JUNCTION_LIMIT_CELSIUS, '°C'),
    target: figure(JUNCTION_AIM_CELSIUS, '°C'),
    junctionToCase: figure(part.junctionToCase, 'K/W'),
    contact: figure(contact, 'K/W'),
    heatsinkNeeded: solved(heatsink, 'K/W'),
    heaterHot: figure(hot, 'A'),
    heaterCold: figure(hot * heaters.coldRatio, 'A'),
    limitAmps: figure(part.shortCircuitAmps.peak, 'A'),
    manyHot: figure(many, 'A'),
    manyCold: solved(many * heaters.coldRatio, 'A', 2),
    startAmps: solved(start.amps, 'A', 2),
    startVolts: solved(start.heaterVolts, 'V', 2),
    heaterHeat: solved(start.watts, 'W', 2),
    tabAtTarget: solved(JUNCTION_AIM_CELSIUS - high.regulatorWatts * part.junctionToCase, '°C'),
    askedShort: solved(-(asked.headroomVolts ?? Number.NaN), 'V', 2),
    askedLabel: figure(job.railVolts, 'V'),
    noLoadHigh: solved(unloaded.rectifier.rail.maxVolts, 'V'),
    buckHeat: solved(stageHeatWatts({ ...BUCK, outputVolts: job.railVolts }, high.rectifier.rail.meanVolts, dc), 'W', 2),
    exampleWatts: figure(example.watts, 'W'),
    exampleAir: figure(example.airCelsius, '°C'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: { regulator: job.regulator, manyHeaters: inWords(MANY_HEATERS) },
    asked: ['regulator', 'exampleWatts', 'exampleAir', 'contact', 'junctionToCase', 'target', 'limitAmps', 'noLoadHigh', 'rail'],
    answers: {
      'ldo-headroom': ldo.headroomVolts ?? Number.NaN,
      heatsink: heatsinkNeeded({ ...path, ...example }),
    },
    opened: { ...supplyCase(job, dc), regulator: job.regulator, airCelsius },
    steps: [
      {
        ask: 'What does the regulator need at its input?',
        words: 'The highest output that its tolerance allows, and the largest dropout on top.',
        sum: `${text('highestOutput')} + ${text('dropout')} = ${text('needed')}`,
      },
      {
        ask: 'What is the valley on weak mains?',
        words: 'Solved at low mains with a flat top, diodes that drop a little more than usual, and the smallest, oldest reservoir. The load is everything on, and the regulator’s own current with it.',
        sum: `${text('dc')} + ${text('own')} from the reservoir: valley ${text('lowValley')}`,
      },
      {
        ask: 'What is left over?',
        words: 'If this were below zero, the rail would dip at every valley.',
        sum: `${text('lowValley')} − ${text('needed')} = ${text('headroom')}`,
      },
      {
        ask: 'How much heat, on strong mains?',
        words: 'The mean of the input less the lowest output, times the load, and the regulator’s own current across the whole input.',
        sum: `(${text('highMean')} − ${text('lowestOutput')}) × ${text('dc')} + ${text('highMean')} × ${text('own')} = ${text('heat')}`,
      },
      {
        ask: 'How hot is it without a heatsink?',
        words: 'Air, and the heat times everything between junction and air.',
        sum: `${text('air')} + ${text('heat')} × ${text('toAir')} = ${text('bareJunction')}`,
        left: true,
      },
      {
        ask: 'Which heatsink brings it down to the target?',
        words: 'What may be lost between junction and air, less what lies inside the part and under it.',
        sum: `(${text('target')} − ${text('air')}) / ${text('heat')} − ${text('junctionToCase')} − ${text('contact')} = ${text('heatsinkNeeded')}`,
        left: true,
      },
    ],
  });
}
