import {
  allowedNoLoadExcess, construction, frequencyUse, IEC_FUSE_AMPS, inrushBoundAmps, linearRegulator, ratedPrimaryAmps, supplyFromTransformer, transformerWinding, typicalRegulation, windingFromRating,
} from '../../compute/index.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import type { ChainInput, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import type { LoadState, MainsState, ReservoirState } from '../../compute/supplies/corners.ts';
import { given, type Shop } from '../shop.ts';
import { cornerOf, quillonChain, settledParts, supplyCase } from './small-transformer.ts';
import { figure, solved, worked, type Figure, type Worked } from './worked.ts';

/** Secondaries in the supplier's list, of the job's VA. */
const LISTED_VOLTS = [12, 15, 18] as const;
/** Sizes whose rise the lesson tells. */
const SIZES = [1.5, 3, 5, 10, 25, 50] as const;
/** The next size down in the list. */
const SMALLER_VOLT_AMPS = 3;
/** What an apprentice might feed into a secondary on the bench. */
const BENCH_VOLTS = 12;
/** Another job, for the quiz: a secondary and its rise. */
const OTHER = { ratedVolts: 9, rise: 0.4, mainsRatio: 1.1 };

/** Everything that lesson 13 says of choosing the Quillon 20's small transformer, and of two secondaries. */
export function work(shop: Shop): Worked<string> {
  const job = shop.quillon20;
  const chain = quillonChain(job);
  const { transformer, regulator } = settledParts(job);
  const part = linearRegulator(regulator);
  const lamination = construction('laminated');
  const withWinding = (secondaryVolts: number, voltAmps: number, regulationRatio: number): ChainInput => ({
    ...chain,
    winding: transformerWinding({ ...transformer, secondaryVolts, voltAmps, regulationRatio }),
  });
  const at = (input: ChainInput, mains: MainsState, load: LoadState, reservoir: ReservoirState): SolvedCorner => {
    const corner = solveCorner(input, cornerOf(input, { mains, load, reservoir }));
    if (!corner.solved) throw new Error(corner.message);
    return corner;
  };
  const judge = (input: ChainInput) => ({
    left: given(at(input, 'low', 'everything', 'smallest-oldest').headroomVolts, 'a regulator'),
    high: at(input, 'high', 'everything', 'largest'),
    peak: at(input, 'high', 'off', 'largest').rectifier.rail.maxVolts,
  });
  const listed = Object.fromEntries(LISTED_VOLTS.map((volts) => [volts, judge(withWinding(volts, transformer.voltAmps, transformer.regulationRatio))]));
  const smaller = withWinding(transformer.secondaryVolts, SMALLER_VOLT_AMPS, typicalRegulation({ construction: lamination, voltAmps: SMALLER_VOLT_AMPS }).typical);
  const small = judge(smaller);
  const own = given(listed[transformer.secondaryVolts], 'the transformer on the bench');
  const rows = Object.fromEntries(
    LISTED_VOLTS.flatMap((volts): [string, Figure][] => {
      const { left, high, peak } = given(listed[volts], `${volts} V`);
      return [[`volts${volts}`, figure(volts, 'V')], [`left${volts}`, solved(left, 'V', 2)], [`heat${volts}`, solved(high.regulatorWatts, 'W', 2)], [`peak${volts}`, solved(peak, 'V')]];
    }),
  );
  const rises = Object.fromEntries(
    SIZES.flatMap((voltAmps): [string, Figure][] => {
      const { min, max } = typicalRegulation({ construction: lamination, voltAmps });
      const name = String(voltAmps).replace('.', '_');
      return [[`va${name}`, figure(voltAmps, 'VA')], [`riseMin${name}`, figure(min, '%')], [`riseMax${name}`, figure(max, '%')], [`reads${name}`, figure(transformer.secondaryVolts * (1 + max), 'V', 3)]];
    }),
  );

  const primary = ratedPrimaryAmps({ voltAmps: transformer.voltAmps, mainsVolts: job.mains.nominalVolts });
  const fuse = given(IEC_FUSE_AMPS.find((amps) => amps >= 1.6 * primary), 'a primary fuse');
  // Two secondaries that share the VA, joined against each other: twice the volts round twice the ohms.
  const each = windingFromRating({ ratedVolts: transformer.secondaryVolts, ratedAmps: transformer.voltAmps / 2 / transformer.secondaryVolts, regulation: transformer.regulationRatio });
  const eachRated = transformer.voltAmps / 2 / transformer.secondaryVolts;
  const loop = (2 * each.openCircuitVolts) / (2 * each.ohms);
  const tarn = supplyFromTransformer(shop.tarn45);
  const tarnTransformer = given(tarn.parts.find(({ role }) => role === 'transformer'), 'a transformer for the Tarn 45');
  const number = (name: string): number => given(tarnTransformer.numbers.find((each) => each.name === name)?.value, name);

  const figures = {
    ...rows,
    ...rises,
    rail: figure(job.rail.volts, 'V'),
    dc: figure(chain.load.everythingAmps, 'A'),
    mains: figure(job.mains.nominalVolts, 'V'),
    lowMains: figure(job.mains.lowVolts, 'V'),
    highMains: figure(job.mains.highVolts, 'V'),
    label: figure(transformer.secondaryVolts, 'V'),
    voltAmps: figure(transformer.voltAmps, 'VA'),
    rise: figure(transformer.regulationRatio, '%'),
    open: figure(chain.winding.openCircuitVolts, 'V'),
    needed: solved(at(chain, 'low', 'everything', 'smallest-oldest').neededVolts, 'V'),
    left: solved(own.left, 'V', 2),
    short12: solved(-given(listed[12], '12 V').left, 'V', 2),
    smallerVa: figure(SMALLER_VOLT_AMPS, 'VA'),
    smallerShort: solved(-small.left, 'V', 2),
    smallerRms: solved(small.high.windingRmsAmps, 'A'),
    smallerRated: figure(given(smaller.winding.ratedAmps, 'its rating'), 'A'),
    smallerPeak: solved(small.peak, 'V'),
    rms: solved(own.high.windingRmsAmps, 'A'),
    rated: figure(given(chain.winding.ratedAmps, 'its rating'), 'A'),
    dcVoltAmps: solved(transformer.secondaryVolts * chain.load.everythingAmps, 'VA', 2),
    rmsVoltAmps: solved(transformer.secondaryVolts * own.high.windingRmsAmps, 'VA', 2),
    peak: solved(own.peak, 'V'),
    maxInput: figure(part.maxInputVolts, 'V'),
    capacitor: figure(chain.reservoir.ratedVolts, 'V'),
    allowed: figure(allowedNoLoadExcess(transformer.voltAmps), '%'),
    primary: solved(primary, 'A', 2),
    fuse: figure(fuse, 'A'),
    inrush: solved(inrushBoundAmps({ ratedAmps: primary, regulation: transformer.regulationRatio }), 'A', 2),
    eachRated: solved(eachRated, 'A', 2),
    loop: solved(loop, 'A', 2),
    loopMultiple: solved(loop / eachRated, '', 2),
    loopHeat: solved((loop / eachRated) ** 2, '', 2),
    loopPrimary: solved((2 * loop * each.openCircuitVolts) / job.mains.nominalVolts, 'A', 2),
    against: solved(2 * each.openCircuitVolts, 'V'),
    bench: figure(BENCH_VOLTS, 'V'),
    backwards: solved((BENCH_VOLTS / chain.winding.openCircuitVolts) * job.mains.nominalVolts, 'V', 2),
    flux: solved(frequencyUse({ ratedHertz: 60, mainsHertz: 50 }).fluxRatio - 1, '%', 1),
    tarnVa: figure(number('VA'), 'VA'),
    tarnVolts: figure(number('secondary'), 'V'),
    tarnJunction: solved(given(tarn.measures.heat.hottest, 'a regulator').celsius, '°C'),
    tarnRoom: solved(tarn.measures.room.share, '%', 2),
    otherLabel: figure(OTHER.ratedVolts, 'V'),
    otherRise: figure(OTHER.rise, '%'),
  };
  const text = (name: string): string => given((figures as Record<string, Figure>)[name], name).text;

  return worked({
    figures,
    names: { regulator },
    asked: ['label', 'maxInput', 'volts18', 'peak18', 'left', 'against', 'loop', 'loopHeat', 'loopPrimary', 'fuse', 'otherLabel', 'otherRise', 'rms', 'dc', 'smallerVa', 'smallerShort', 'bench', 'backwards'],
    answers: {
      'unloaded-crest': OTHER.ratedVolts * (1 + OTHER.rise) * OTHER.mainsRatio * Math.SQRT2,
      'va-from-rms': transformer.secondaryVolts * own.high.windingRmsAmps,
    },
    opened: supplyCase(job, chain.load.everythingAmps),
    steps: [
      { ask: 'What must the valley be?', words: 'Highest output of the regulator, and its largest dropout.', sum: text('needed') },
      { ask: 'Which secondary gives that on weak mains?', words: 'Solved for each in the list: low mains with a flat top, everything on, smallest and oldest reservoir. Take the lowest that leaves something over; more is only burnt.', sum: `12 V: ${text('short12')} short; ${text('label')}: ${text('left')} left over` },
      { ask: 'Which VA?', words: 'RMS on strong mains, times the label’s volts. The DC would have promised much less.', sum: `${text('label')} × ${text('rms')} = ${text('rmsVoltAmps')}, so ${text('voltAmps')}` },
      { ask: 'What does it rise to with nothing on it?', words: 'Load unplugged, high mains. Compare with what capacitor and regulator bear.', sum: `${text('peak')}, against ${text('capacitor')} and ${text('maxInput')}`, left: true },
      { ask: 'Which primary fuse?', words: 'From 1.6 times the rated primary current, the next rating, time-lag. For gross faults.', sum: `1.6 × ${text('primary')}, so ${text('fuse')}`, left: true },
      { ask: 'What saves it from a shorted secondary?', words: 'Not the fuse: lesson 10 has the sum. The mark on the part, read and written down.', sum: 'inherently short-circuit proof', left: true },
    ],
  });
}
