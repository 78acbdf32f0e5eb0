import { fuseStandard, fuseTimes, groundingJob, solveShortedDiode, supplyFromConverter, type GroundingJob } from '../../compute/index.ts';
import { PROTECTIVE_BOND_OHMS, UNEARTHED_TOUCH_RMS_AMPS } from '../../compute/grounding/limits.ts';
import type { GroundPathsProps } from '../../drawings/ground-paths.tsx';
import { given, type Shop } from '../shop.ts';
import { grounds, poleAboveChassis, ratedDiode, regrounded, type Cooling } from './grounded.ts';
import { tarnLine } from './high-voltage.ts';
import { tarnRail } from './tarn-spare.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

const BONDED = { kind: 'bonded', pole: 'negative' } as const;
/** A rail from which nothing draws: leakage of its reservoir and nothing else. Supposed. */
const IDLE_OHMS = 1e6;
/** Another winding, for the reader's own sum; supposed. */
const OTHER = { openCircuitVolts: 10, ohms: 0.3, diodeVolts: 1 } as const;

/** Everything that lesson 15 says of grounds: the Tarn 45's spare winding with none, one and two, and a converter left floating in the Fennel 100. */
export function work(shop: Shop): Worked<string> & { readonly sheet: GroundPathsProps } {
  const plan = shop.tarn45;
  const rail = tarnRail(plan);
  const { spare } = rail;
  const base = given(groundingJob(plan, rail.supply), 'grounds for the spare winding');
  const { supply } = base;
  if (supply.kind !== 'winding') throw new Error('the Tarn 45’s rail no longer comes from a winding');
  const otherAmps = given(plan.amp.transformer.presentVoltAmps, 'what the amp draws') / plan.mains.nominalVolts;
  const windingFuse = given(rail.part('secondary-fuse').numbers[0]?.value, 'the rating of the secondary fuse');
  const job = (change: Parameters<typeof regrounded>[1], cooling: Cooling = 'best'): GroundingJob => ({
    ...regrounded(base, change),
    mainsFuse: { ...tarnLine.mainsFuse, otherAmps },
    secondaryFuse: { ratedAmps: windingFuse, standard: 'iec-sheet-5' },
    supply: { ...supply, diode: ratedDiode(given(plan.parts.diode, 'a diode'), cooling) },
  });
  const end = (leg: 'first' | 'second') => ({ kind: 'one-leg', leg }) as const;

  const floating = grounds(job({ rail: { kind: 'floating' } }));
  const negative = grounds(job({ rail: BONDED }));
  const windingEnd = job({ rail: { kind: 'floating' }, winding: end('first') });
  const swings = poleAboveChassis(windingEnd, 'rail-negative');
  const two = grounds(job({ rail: BONDED, winding: end('first') }));
  const twoHot = grounds(job({ rail: BONDED, winding: end('first') }, 'worst'));
  const otherEnd = grounds(job({ rail: BONDED, winding: end('second') }));
  const burnt = solveShortedDiode({ job: two.job, diode: 'diode-negative-to-second' });
  const burntWinding = given(burnt.find(({ id }) => id === 'winding'), 'the winding').rmsAmps;
  const d4 = two.branch('diode-negative-to-second');
  const winding = two.stress('winding');
  const rated = given(spare.ratedAmps, 'the rating of the spare winding');
  const mainsFuse = given(two.primary?.fuse, 'the mains fuse');
  const burntMains = burntWinding * (spare.openCircuitVolts / plan.mains.nominalVolts) + otherAmps;
  const burntMultiple = burntMains / tarnLine.mainsFuse.ratedAmps;
  const standard = fuseStandard(tarnLine.mainsFuse.standard);
  const held = fuseTimes({ standard, ratedAmps: tarnLine.mainsFuse.ratedAmps, amps: burntMains }).minSeconds ?? Number.NaN;

  const lifted = floating.fault('winding-to-winding');
  const caught = negative.fault('winding-to-winding');
  const idle = grounds({ ...job({ rail: BONDED }), loadOhms: IDLE_OHMS }).fault('winding-to-winding');

  const fennel = shop.fennel100;
  const module = given(groundingJob(fennel, supplyFromConverter(fennel)), 'grounds for a converter');
  const leak = given(grounds(regrounded(module, { rail: { kind: 'floating' } })).leakage, 'what leaks through the module');

  const figures = {
    mains: figure(plan.mains.nominalVolts, 'V'),
    openVolts: figure(spare.openCircuitVolts, 'V'),
    windingOhms: figure(spare.ohms, 'Ω'),
    windingRated: figure(rated, 'A'),
    oneRail: solved(negative.rail.meanVolts, 'V'),
    oneWinding: solved(negative.branch('winding').rmsAmps, 'A', 2),
    positiveOff: solved(-negative.rail.meanVolts, 'V'),
    swingMean: solved(swings.dcVolts, 'V', 2),
    swingAc: solved(swings.acVolts, 'V', 2),
    swingPeak: solved(swings.peakVolts, 'V', 2),
    twoAmps: solved(two.circulating.rmsAmps, 'A', 2),
    twoPeak: solved(two.circulating.peakAmps, 'A', 2),
    twoRail: solved(two.rail.meanVolts, 'V'),
    railLost: solved(1 - two.rail.meanVolts / negative.rail.meanVolts, '%', 1),
    windingHeat: solved((two.branch('winding').rmsAmps / rated) ** 2, '', 2),
    d4Mean: solved(d4.meanAmps, 'A', 2),
    d4Watts: solved(d4.watts, 'W', 2),
    d4Rated: figure(given(two.stress('diode-negative-to-second').rated, 'the diode’s rating'), 'A', 2),
    d4Fast: figure(given(twoHot.stress('diode-negative-to-second').secondsToLimit, 'how soon a badly cooled diode dies'), 's', 1),
    d4Slow: figure(given(two.stress('diode-negative-to-second').secondsToLimit, 'how soon a well cooled diode dies'), 's', 1),
    ruin: figure(given(winding.secondsToRuin, 'how soon the winding is ruined'), 's', 1),
    burntAmps: solved(burntWinding, 'A', 2),
    burntHeat: solved((burntWinding / rated) ** 2, '', 2),
    dcInCore: solved(Math.abs(two.branch('winding').meanAmps), 'A', 2),
    mainsFuse: figure(tarnLine.mainsFuse.ratedAmps, 'A'),
    fuseAmps: solved(mainsFuse.amps, 'A', 2),
    fuseShare: solved(mainsFuse.ratio, '%', 2),
    burntMains: solved(burntMains, 'A', 2),
    burntMultiple: solved(burntMultiple, '', 2),
    burntHolds: figure(held, 's'),
    windingFuse: figure(windingFuse, 'A'),
    otherEndFuse: solved(given(otherEnd.secondaryFuse, 'the winding’s fuse').ratio, '', 2),
    otherEndOpens: solved(given(otherEnd.secondaryFuse?.opensWithinSeconds, 'when the winding’s fuse opens'), 's', 2),
    highVolts: figure(given(plan.amp.highTensionVolts, 'the high voltage'), 'V'),
    breakdown: figure(given(lifted.ohms, 'the breakdown'), 'Ω'),
    liftedVolts: solved(lifted.touch.dcVolts, 'V'),
    liftedHand: solved(given(lifted.touch.hand, 'a hand').dcAmps, 'A', 2),
    caughtVolts: solved(caught.touch.dcVolts, 'V', 2),
    caughtAmps: solved(caught.faultAmps, 'A', 2),
    idleVolts: solved(idle.touch.dcVolts, 'V'),
    idleHand: solved(given(idle.touch.hand, 'a hand on an idle rail').dcAmps, 'A', 2),
    leakVolts: solved(leak.acVolts, 'V', 2),
    leakAmps: solved(given(leak.hand, 'a hand').acAmps, 'A', 2),
    unearthed: figure(UNEARTHED_TOUCH_RMS_AMPS.value, 'A'),
    bondOhms: figure(PROTECTIVE_BOND_OHMS.value, 'Ω'),
    otherVolts: figure(OTHER.openCircuitVolts, 'V'),
    otherOhms: figure(OTHER.ohms, 'Ω'),
    otherDrop: figure(OTHER.diodeVolts, 'V'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return {
    ...worked({
      figures,
      asked: [
        'twoAmps', 'twoRail', 'oneRail', 'windingHeat', 'mainsFuse', 'fuseShare', 'otherEndOpens', 'd4Mean', 'd4Rated', 'liftedVolts', 'liftedHand', 'highVolts', 'leakVolts', 'leakAmps', 'unearthed',
        'otherVolts', 'otherOhms', 'otherDrop', 'swingAc', 'positiveOff', 'burntMultiple', 'caughtVolts',
      ],
      answers: { 'peak-of-another': (OTHER.openCircuitVolts * Math.SQRT2 - OTHER.diodeVolts) / OTHER.ohms },
      opened: {
        source: 'spare-winding',
        windingVolts: spare.openCircuitVolts,
        windingOhms: spare.ohms,
        windingAmps: rated,
        centre: 'none',
        topology: rail.input.topology,
        diode: given(plan.parts.diode, 'a diode'),
        farads: rail.input.reservoir.farads,
        windingFuse,
        loadAmps: Number((negative.rail.meanVolts / base.loadOhms).toPrecision(2)),
        highVolts: given(plan.amp.highTensionVolts, 'the high voltage'),
        insulation: spare.insulation.fromHighTension.kind === 'basic' ? 'basic' : 'unknown',
        mainsVolts: plan.mains.nominalVolts,
        mainsHertz: String(plan.mains.hertz),
        mainsFuse: tarnLine.mainsFuse.ratedAmps,
        otherAmps: Number(otherAmps.toPrecision(2)),
        groundCentre: 'open',
        groundFirst: 'chassis',
        groundNegative: 'chassis',
      },
      steps: [
        {
          ask: 'Which diode closes the loop?',
          words: 'Go from the grounded end of the winding through the chassis to the negative. One lower diode leads on from there to the other end of the winding. Its arrow points along your way.',
          sum: 'upper end → chassis → negative → D4 → lower end',
        },
        {
          ask: 'What limits the current?',
          words: 'Nothing but the winding’s own resistance. Take its peak, less about a volt for the diode, over its ohms; the solved figure has the leads in as well.',
          sum: `(1.414 × ${text('openVolts')} − 1 V) ÷ ${text('windingOhms')} ≈ ${figure((spare.openCircuitVolts * Math.SQRT2 - 1) / spare.ohms, 'A', 2).text}; solved ${text('twoPeak')}, ${text('twoAmps')} RMS`,
        },
        { ask: 'What does the meter on the rail say?', words: 'The other half of the cycle still charges the reservoir.', sum: `${text('twoRail')}, against ${text('oneRail')}` },
        {
          ask: 'What is at its end first?',
          words: 'D4, by its mean current. How soon depends on how it is mounted: makers of the type differ widely. An estimate.',
          sum: `${text('d4Mean')} against ${text('d4Rated')}, ${text('d4Watts')}: ${text('d4Fast')} to ${text('d4Slow')}`,
        },
        { ask: 'And then?', words: 'Overheated silicon fails as a short. Now both halves of the cycle short the winding.', sum: `${text('burntAmps')} RMS, ${text('burntHeat')} times the winding’s rated heat` },
        { ask: 'What does the mains fuse see?', words: 'The same amps times the turns ratio, and the amp’s own draw on top.', sum: `${text('fuseAmps')}, ${text('fuseShare')} of ${text('mainsFuse')}; later ${text('burntMultiple')} times, which it must bear for ${text('burntHolds')}` },
        { ask: 'Which ground goes?', words: 'The one on the winding. The negative’s bond is what holds the rail if insulation fails.', sum: 'lift the winding’s end, insulate it, label it' },
      ],
    }),
    sheet: { id: 'two-grounds', windingGround: 'first', isNegativeGrounded: true, windingText: text('openVolts'), railText: text('twoRail'), faultText: `${text('twoAmps')} RMS` },
  };
}
