import {
  COLD_INRUSH, INSULATORS, JUNCTION_AIM_CELSIUS, JUNCTION_LIMIT_CELSIUS, buck, currentLimitAmps, diodePart, esrLimitOhms, heatsinkNeeded, linearRegulator, solveRectifier,
} from '../../compute/index.ts';
import type { PlanTransformer } from '../../compute/plan.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import { buckStage, linearStage } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import type { LoadState, MainsState, ReservoirState } from '../../compute/supplies/corners.ts';
import { junctionToAirKelvinPerWatt, stageHeatWatts } from '../../compute/supplies/regulator-stage.ts';
import { transformerWinding } from '../../compute/supplies/size-transformer.ts';
import { given, type Shop } from '../shop.ts';
import { cornerOf, quillonChain, settledParts, supplyCase } from './small-transformer.ts';
import { figure, inWords, solved, worked, type Worked } from './worked.ts';

/** Row of the catalogue for a common step-down board; typical. */
const BUCK = 'buck-150k';

/** The heaters of so many small valves, on a rail of their rated volts: too many for a one-amp regulator to start. */
const MANY_HEATERS = 6;

function corner(chain: ChainInput, mains: MainsState, reservoir: ReservoirState, load: LoadState = 'everything'): SolvedCorner {
  const at = solveCorner(chain, cornerOf(chain, { mains, load, reservoir }));
  if (!at.solved) throw new Error(at.message);
  return at;
}

/** The same rail from a transformer of the same size whose label reads the rail's own volts: what is asked for most often. */
const withLabel = (chain: ChainInput, transformer: PlanTransformer, secondaryVolts: number): ChainInput => ({
  ...chain,
  winding: transformerWinding({ ...transformer, secondaryVolts }),
});

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
  const { amp, parts, mains } = shop.tarn45;
  const spare = given(amp.spare, 'a spare winding');
  const reservoir = given(parts.reservoir, 'a reservoir');
  const part = linearRegulator(settledParts(shop.quillon20).regulator);
  const diode = diodePart(given(parts.diode, 'a diode')).typical;
  const inputVolts = (amps: number): number =>
    solveRectifier({
      topology: 'bridge', winding: { openCircuitVolts: spare.openCircuitVolts, ohms: spare.ohms }, hertz: mains.hertz, diode,
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
  const { regulator, transformer } = settledParts(job);
  const part = linearRegulator(regulator);
  const stage = linearStage(part);
  // The valley is deepest with the smallest, oldest reservoir, the heat greatest with the largest.
  const low = corner(chain, 'low', 'smallest-oldest');
  const nominal = corner(chain, 'nominal', 'smallest-oldest');
  const highValley = corner(chain, 'high', 'smallest-oldest');
  const high = corner(chain, 'high', 'largest');
  const bench = corner(chain, 'nominal', 'marked', 'running');
  const unloaded = corner(chain, 'high', 'largest', 'off');
  const asked = corner(withLabel(chain, transformer, job.rail.volts), 'low', 'smallest-oldest');
  const dc = chain.load.everythingAmps;
  const { airCelsius } = chain.cooling;
  const contact = INSULATORS.find(({ id }) => id === 'bare-compound')?.kelvinPerWatt ?? Number.NaN;
  const path = { airCelsius, junctionToCase: part.junctionToCase, insulator: contact };
  const heatsink = heatsinkNeeded({ ...path, watts: high.regulatorWatts });

  const ldo = corner({ ...chain, stage: linearStage(linearRegulator(`ldo-${job.rail.volts}`)) }, 'low', 'smallest-oldest');
  const heaters = given(shop.tarn45.loads.find((item) => item.kind === 'heater'), 'heaters on the Tarn 45');
  const coldRatio = heaters.coldRatio ?? COLD_INRUSH.typical;
  const hot = heaters.count * heaters.amps;
  const many = MANY_HEATERS * heaters.amps;
  const start = coldStart(shop, heaters.volts / (many * coldRatio));
  const example = { watts: 3, airCelsius: 60 };
  const spareLow = low.headroomVolts ?? Number.NaN;
  const dropout = low.neededVolts - stage.outputVolts * (1 + stage.outputToleranceRatio);

  const figures = {
    rail: figure(job.rail.volts, 'V'),
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
    heaterCold: figure(hot * coldRatio, 'A'),
    limitAmps: figure(part.shortCircuitAmps.peak, 'A'),
    manyHot: figure(many, 'A'),
    manyCold: solved(many * coldRatio, 'A', 2),
    startAmps: solved(start.amps, 'A', 2),
    startVolts: solved(start.heaterVolts, 'V', 2),
    heaterHeat: solved(start.watts, 'W', 2),
    tabAtTarget: solved(JUNCTION_AIM_CELSIUS - high.regulatorWatts * part.junctionToCase, '°C'),
    askedShort: solved(-(asked.headroomVolts ?? Number.NaN), 'V', 2),
    askedLabel: figure(job.rail.volts, 'V'),
    noLoadHigh: solved(unloaded.rectifier.rail.maxVolts, 'V'),
    buckHeat: solved(stageHeatWatts(buckStage(buck(BUCK), job.rail.volts), high.rectifier.rail.meanVolts, dc), 'W', 2),
    exampleWatts: figure(example.watts, 'W'),
    exampleAir: figure(example.airCelsius, '°C'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: { regulator, manyHeaters: inWords(MANY_HEATERS) },
    asked: ['regulator', 'exampleWatts', 'exampleAir', 'contact', 'junctionToCase', 'target', 'limitAmps', 'noLoadHigh', 'rail'],
    answers: {
      'ldo-headroom': ldo.headroomVolts ?? Number.NaN,
      heatsink: heatsinkNeeded({ ...path, ...example }),
    },
    opened: { ...supplyCase(job, dc), regulator },
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
