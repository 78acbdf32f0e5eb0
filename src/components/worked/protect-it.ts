import {
  breakingCapacityAmps, coilMaxVolts, diodePart, fuseColdOhms, fuseInFault, fuseRatingFor, fuseStandard, fuseTimes, IEC_FUSE_AMPS, insulationClass, loopDropVolts, meltingIntegral, pulseShare, ratedPrimaryAmps,
  reservoirInrushA2s, shortCircuitAmps, solveNetwork, waveformMean, waveformRms, windingHeat, wire, wireCapacityAmps, wireFor,
} from '../../compute/index.ts';
import { addedVoltAmps } from '../../compute/supplies/spare-winding.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import { given, type Shop } from '../shop.ts';
import { tarnLine } from './high-voltage.ts';
import { quillonChain, settledParts } from './small-transformer.ts';
import { tarnCase, tarnRail } from './tarn-spare.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** A clamp across the rail, between the rail and what a coil bears; supposed. */
const CLAMP_VOLTS = 15;
/** From board to winding and back; supposed. */
const RUN_METRES = 0.3;
const SWITCH_ONS = 10_000;
/** What an IEC fuse must carry for an hour. */
const HOLDS = 1.5;

/** Everything that lesson 10 says of fuses: on the Tarn 45's spare winding, and in front of the Quillon 20's small transformer. */
export function work(shop: Shop): Worked<string> & { readonly fused: InitialCase; readonly places: { readonly primaryText: string; readonly windingText: string; readonly railText: string } } {
  const job = shop.tarn45;
  const rail = tarnRail(job);
  const { input, spare } = rail;
  const iec = fuseStandard('iec-sheet-5');
  const ul = fuseStandard('ul-248-14');
  const at = given(rail.chain.worst, 'a worst corner').windingCurrent;
  const rms = at.rectifier.winding.rmsAmps;
  const dc = input.load.everythingAmps;
  const fuse = given(rail.part('secondary-fuse').numbers[0]?.value, 'the rating of the secondary fuse');
  const byDc = given(IEC_FUSE_AMPS.find((amps) => amps >= dc), 'a rating above the DC');
  const carries = given(fuseRatingFor({ standard: iec, rmsAmps: 1.1 * rms }), 'a rating that carries the RMS current');
  const peakVolts = (spare.openCircuitVolts * Math.SQRT2 * job.mains.highVolts) / job.mains.nominalVolts;
  const inrush = reservoirInrushA2s({ farads: input.reservoir.farads * 1.2, peakVolts, ohms: spare.ohms + input.diode.ohms + input.reservoir.ohms });
  const bears = (amps: number): number => meltingIntegral(amps).a2s * pulseShare(SWITCH_ONS);
  const short = shortCircuitAmps(spare);
  const shortMains = (short * spare.openCircuitVolts) / job.mains.nominalVolts;
  const mainsFuse = tarnLine.mainsFuse.ratedAmps;
  const added = addedVoltAmps(input.winding, input.topology, rail.chain);
  const ampMains = given(job.amp.transformer.presentVoltAmps, 'what the amp draws') / job.mains.nominalVolts;

  const small = quillonChain(shop.quillon20);
  const { transformer } = settledParts(shop.quillon20);
  const primary = ratedPrimaryAmps({ voltAmps: transformer.voltAmps, mainsVolts: shop.quillon20.mains.nominalVolts });
  const primaryFuse = given(IEC_FUSE_AMPS.find((amps) => amps >= 1.6 * primary), 'a primary fuse');
  const smallMains = shop.quillon20.mains.nominalVolts;
  const primaryShort = (shortCircuitAmps(small.winding) * small.winding.openCircuitVolts) / smallMains;
  const smallRated = given(small.winding.ratedAmps, 'the rating of its winding');
  const race = fuseInFault({
    standard: iec, ratedAmps: primaryFuse, place: 'primary', winding: small.winding, mainsVolts: smallMains, heat: windingHeat({ ratedAmps: smallRated }), airCelsius: shop.quillon20.amp.airCelsius,
  });
  if (race.protects || race.latestSeconds !== undefined) throw new Error('lesson 10 says that this fuse need never open');
  const classA = insulationClass('a');

  const clamp = (mainsVolts: number): { readonly amps: number; readonly rms: number } => {
    const { saturationAmps, emission, ohms } = diodePart(given(job.parts.diode, 'a diode')).typical;
    const arm = (name: string, between: [string, string]) => ({ kind: 'diode', name, between, saturationAmps, emission, ohms }) as const;
    const solution = solveNetwork({
      hertz: job.mains.hertz,
      elements: [
        { kind: 'sine', name: 'winding', between: ['a', 'b'], peakVolts: (spare.openCircuitVolts * Math.SQRT2 * mainsVolts) / job.mains.nominalVolts, ohms: spare.ohms },
        arm('d1', ['a', 'plus']), arm('d2', ['b', 'plus']), arm('d3', ['ground', 'a']), arm('d4', ['ground', 'b']),
        { kind: 'dc', name: 'clamp', between: ['plus', 'ground'], volts: CLAMP_VOLTS },
      ],
    });
    return {
      amps: waveformMean(given(solution.amps['clamp'], 'the clamp’s current'), solution.seconds),
      rms: waveformRms(given(solution.amps['winding'], 'the winding’s current'), solution.seconds),
    };
  };
  const clamped = clamp(job.mains.nominalVolts);
  const clampedHigh = clamp(job.mains.highVolts);
  const railFuse = given(IEC_FUSE_AMPS.find((amps) => amps >= 1.2 * dc), 'a fuse behind the reservoir');
  const longest = (ratedAmps: number, amps: number): number => fuseTimes({ standard: iec, ratedAmps, amps }).maxSeconds ?? Number.NaN;
  const coil = given(job.loads.find((item) => item.kind === 'relay'), 'relays on the Tarn 45');
  const wireAmps = HOLDS * fuse;
  const thin = wire('awg-24');
  const chosenWire = given(wireFor({ system: 'awg', amps: wireAmps, metres: RUN_METRES, dropVolts: 0.2, hotBundle: true }), 'a wire for the fuse');
  const other = { farads: 2200e-6, peakVolts: 20, ohms: 0.4 };

  const figures = {
    dc: figure(dc, 'A'),
    rms: solved(rms, 'A'),
    ratio: solved(rms / dc, '', 2),
    peak: solved(at.rectifier.winding.peakAmps, 'A', 2),
    windingRated: figure(given(spare.ratedAmps, 'its rating'), 'A'),
    windingOhms: figure(spare.ohms, 'Ω'),
    byDc: figure(byDc, 'A'),
    byDcMultiple: solved(rms / byDc, '', 2),
    byDcSoonest: solved(fuseTimes({ standard: iec, ratedAmps: byDc, amps: rms }).minSeconds ?? Number.NaN, 's', 2),
    carries: figure(carries, 'A'),
    ulRated: figure(given(fuseRatingFor({ standard: ul, rmsAmps: rms }), 'a North American rating'), 'A'),
    reservoir: figure(input.reservoir.farads, 'F'),
    inrush: solved(inrush, 'A²s', 2),
    bearsCarries: solved(bears(carries), 'A²s', 2),
    bearsFuse: solved(bears(fuse), 'A²s', 2),
    fuse: figure(fuse, 'A'),
    short: solved(short, 'A', 2),
    shortClears: solved(longest(fuse, short), 's', 2),
    shortHeat: solved((short / given(spare.ratedAmps, 'its rating')) ** 2, '', 2),
    mainsRunning: solved(ampMains + added / job.mains.nominalVolts, 'A', 2),
    mainsFuse: figure(mainsFuse, 'A'),
    shortMains: solved(shortMains, 'A', 2),
    mainsTotal: solved(shortMains + ampMains, 'A', 2),
    mainsMultiple: solved((shortMains + ampMains) / mainsFuse, '', 2),
    mainsHolds: solved(fuseTimes({ standard: fuseStandard(tarnLine.mainsFuse.standard), ratedAmps: mainsFuse, amps: shortMains + ampMains }).minSeconds ?? Number.NaN, 's', 2),
    smallVoltAmps: figure(transformer.voltAmps, 'VA'),
    primary: solved(primary, 'A', 2),
    primaryFuse: figure(primaryFuse, 'A'),
    primaryShort: solved(primaryShort, 'A', 2),
    primaryMultiple: solved(primaryShort / primaryFuse, '', 3),
    primaryHeat: solved((shortCircuitAmps(small.winding) / smallRated) ** 2, '', 2),
    raceSoonest: solved(given(race.earliestSeconds, 'the quickest fuse'), 's', 1),
    raceNormal: solved(given(race.normalLimitSeconds, 'a winding that passes its limit'), 's', 2),
    raceOverload: solved(given(race.overloadLimitSeconds, 'a winding that passes its limit'), 's', 2),
    raceLast: solved(race.fuseAmps.last, 'A', 2),
    raceMultiple: solved(race.fuseAmps.last / primaryFuse, '', 2),
    classNormal: figure(classA.normalCelsius, '°C'),
    classOverload: figure(classA.overloadCelsius, '°C'),
    glass: figure(breakingCapacityAmps({ standard: fuseStandard('iec-sheet-3'), ratedAmps: 2 }), 'A'),
    ceramic: figure(breakingCapacityAmps({ standard: iec, ratedAmps: 2 }), 'A'),
    fuseDrop: solved(fuseColdOhms(fuse) * rms, 'V', 2),
    byDcDrop: solved(fuseColdOhms(byDc) * rms, 'V', 2),
    hourAmps: solved(wireAmps, 'A'),
    thinAmps: figure(wireCapacityAmps({ row: thin, hotBundle: true }), 'A'),
    wireAmps: figure(wireCapacityAmps({ row: chosenWire, hotBundle: true }), 'A'),
    run: figure(RUN_METRES, 'm'),
    wireDrop: solved(loopDropVolts({ row: chosenWire, metres: RUN_METRES, amps: at.rectifier.winding.peakAmps, celsius: 60 }), 'V', 2),
    railVolts: figure(job.rail.volts, 'V'),
    unloaded: solved(given(rail.chain.worst, 'a worst corner').peak.rectifier.rail.maxVolts, 'V'),
    coilMost: solved(coilMaxVolts({ coil: { ratedVolts: coil.volts, maxRatio: given(coil.maxRatio, 'what its coils bear') }, airCelsius: job.amp.airCelsius }), 'V'),
    clamp: figure(CLAMP_VOLTS, 'V'),
    clampAmps: solved(clamped.amps, 'A', 2),
    clampWatts: solved(clamped.amps * CLAMP_VOLTS, 'W', 2),
    clampHighWatts: solved(clampedHigh.amps * CLAMP_VOLTS, 'W', 2),
    clampLongest: solved(longest(fuse, clamped.rms), 's', 1),
    railFuse: figure(railFuse, 'A'),
    railFuseLongest: solved(longest(railFuse, clamped.amps), 's', 1),
    switchOns: figure(SWITCH_ONS, ''),
    otherFarads: figure(other.farads, 'F'),
    otherPeak: figure(other.peakVolts, 'V'),
    otherOhms: figure(other.ohms, 'Ω'),
    otherFuse: figure(1.6, 'A'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  const opened = tarnCase(job, rail);
  // The fuse's calculator asks for neither the diodes' nor the capacitor's volts.
  const fused = Object.fromEntries(Object.entries(opened).filter(([field]) => field !== 'diodeVolts' && field !== 'ratedVolts'));

  return {
    fused,
    ...worked({
      figures,
      names: { wireName: chosenWire.name, thinName: thin.name },
      asked: ['dc', 'rms', 'byDc', 'byDcSoonest', 'fuse', 'smallVoltAmps', 'primaryFuse', 'primaryShort', 'primaryHeat', 'raceOverload', 'classOverload', 'mainsFuse', 'mainsHolds', 'shortHeat', 'otherFarads', 'otherPeak', 'otherOhms', 'otherFuse', 'clamp', 'clampWatts', 'clampLongest', 'railFuse', 'windingRated'],
      answers: { 'gulp-of-another': reservoirInrushA2s(other), 'hour-long': HOLDS * 1.6 },
      opened,
      steps: [
        { ask: 'Which current rates F2?', words: 'The winding’s RMS on strong mains, everything on. A tenth on top for a warm fuse holder.', sum: `1.1 × ${text('rms')}, so ${text('carries')} at least` },
        {
          ask: 'Does that survive switch-on?',
          words: `The gulp into the largest empty reservoir at the crest of strong mains, against what the fuse bears ${text('switchOns')} times.`,
          sum: `${text('inrush')} against ${text('bearsCarries')}: no`,
        },
        { ask: 'Which one does?', words: 'Go up until it bears the gulp.', sum: `${text('fuse')}: bears ${text('bearsFuse')}` },
        { ask: 'Does it still protect the winding?', words: 'Its rating against the winding’s.', sum: `${text('fuse')} against ${text('windingRated')}: just` },
        {
          ask: 'Does it end a dead short?',
          words: 'Open-circuit volts over the winding’s resistance. Beyond ten times the rating the sheet gives milliseconds.',
          sum: `${text('short')}: opens within ${text('shortClears')}`,
        },
        {
          ask: 'Which wire goes with it?',
          words: 'The fuse may carry one and a half times its rating for an hour, and the wire must too, in a hot bundle.',
          sum: `1.5 × ${text('fuse')} = ${text('hourAmps')}: ${chosenWire.name}, ${text('wireAmps')}`,
        },
      ],
    }),
    places: { primaryText: `${text('mainsRunning')} RMS`, windingText: `${text('rms')} RMS`, railText: `${text('dc')} DC` },
  };
}
