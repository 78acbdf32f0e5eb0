import { diodePart, heatersOhms, solveShortedDiode, storedJoules } from '../../compute/index.ts';
import { THERMAL_VOLTS } from '../../compute/parts/diode.ts';
import type { GroundPathsProps } from '../../drawings/ground-paths.tsx';
import { given, type Shop } from '../shop.ts';
import { grounds, poleAboveChassis, regrounded, type SolvedGrounds } from './grounded.ts';
import { HEATER_RAIL, heaterRailJob } from './heater-rail.ts';
import { tarnLine } from './high-voltage.ts';
import { figure, solved, worked, type Figure, type Worked } from './worked.ts';

/** Nothing draws from the rail: its reservoir leaks and no more. Supposed. */
const IDLE_OHMS = 1e6;
/** A winding for the reader's own sum, volts and ohms from end to end; supposed. */
const OTHER = { openCircuitVolts: 12.8, ohms: 0.16, diodeVolts: 1 } as const;

/** Everything that lesson 16 says: one relay board's rail on the heater windings of all three amps, floating and grounded. */
export function work(shop: Shop): Worked<string> & { readonly sheet: GroundPathsProps } {
  const { tarn45, quillon20, fennel100 } = shop;
  const tarnHeater = given(tarn45.amp.heater, 'the Tarn 45’s heater winding');
  const mainsFuse = { ...tarnLine.mainsFuse, otherAmps: given(tarn45.amp.transformer.presentVoltAmps, 'what the Tarn 45 draws') / tarn45.mains.nominalVolts };
  const tarnFree = grounds(heaterRailJob(tarn45));
  const tarn = grounds({ ...heaterRailJob(tarn45, { isGrounded: true }), mainsFuse });
  const tarnHot = grounds(heaterRailJob(tarn45, { isGrounded: true, cooling: 'worst' }));
  const tarnSilicon = grounds(heaterRailJob(tarn45, { isGrounded: true, diode: '1n400x' }));
  const burnt = solveShortedDiode({ job: tarn.job, diode: 'diode-negative-to-second' });
  const burntHalf = given(burnt.find(({ id }) => id === 'half-2'), 'half of the winding').rmsAmps;
  const quillonFree = grounds(heaterRailJob(quillon20));
  const quillon = grounds(heaterRailJob(quillon20, { isGrounded: true }));
  const fennelFree = grounds(heaterRailJob(fennel100));
  const fennel = grounds(heaterRailJob(fennel100, { isGrounded: true }));
  const leg = grounds(heaterRailJob(tarn45, { isGrounded: true, reference: { kind: 'one-leg', leg: 'first' } }));
  const freed = grounds(heaterRailJob(tarn45, { isGrounded: true, reference: { kind: 'none' } }));
  const twoDiodes = grounds(heaterRailJob(tarn45, { isGrounded: true, topology: 'centre-tap' }));
  const doubledFree = grounds(heaterRailJob(tarn45, { topology: 'doubler' }));
  const doubled = grounds(heaterRailJob(tarn45, { isGrounded: true, topology: 'doubler' }));

  const hung = regrounded(heaterRailJob(tarn45), { relays: [{ name: 'relay', work: { at: 'high-tension' }, insulation: { kind: 'unknown' } }] });
  const hungDrawing = grounds(hung).fault('coil-to-contact');
  const hungIdle = grounds({ ...hung, loadOhms: IDLE_OHMS }).fault('coil-to-contact');

  const elevation = given(fennel100.amp.heater?.reference.kind === 'elevated' ? fennel100.amp.heater.reference : undefined, 'the Fennel 100’s elevation');
  const lifted = fennelFree.fault('divider-open');
  const top = poleAboveChassis(fennelFree.job, 'rail-positive');
  const heater = (at: SolvedGrounds) => given(at.heater, 'the heaters’ balance');
  const half = tarn.branch('half-1');
  const rated = given(tarnHeater.ratedAmps, 'its rating');
  const resistor = quillon.stress('centre-resistor-1');
  const diode = (at: SolvedGrounds) => at.stress('diode-negative-to-second');
  const centre = given(quillon20.amp.heater?.reference.kind === 'artificial-centre' ? quillon20.amp.heater.reference : undefined, 'the Quillon 20’s artificial centre').resistors[0].ohms;
  const { saturationAmps, emission, ohms: diodeOhms } = diodePart(HEATER_RAIL.diode).typical;
  const knee = emission * THERMAL_VOLTS * Math.log(tarn.circulating.peakAmps / saturationAmps);
  const estimate = ((tarnHeater.openCircuitVolts / 2) * Math.SQRT2 - knee) / (tarnHeater.ohms / 2 + diodeOhms);
  const volts = (value: number): Figure => solved(value, 'V', 2);
  const fuse = given(tarn.primary?.fuse, 'the mains fuse');

  const figures = {
    load: figure(tarnFree.branch('load').meanAmps, 'A', 2),
    reservoir: figure(HEATER_RAIL.farads, 'F'),
    tarnOpen: figure(tarnHeater.openCircuitVolts, 'V'),
    tarnOhms: figure(tarnHeater.ohms, 'Ω'),
    tarnRated: figure(rated, 'A'),
    freeRail: volts(tarnFree.rail.meanVolts),
    freeHalf: solved(tarnFree.branch('half-1').rmsAmps, 'A', 2),
    freeSwing: volts(heater(tarnFree).first.maxVolts),
    knee: figure(knee, 'V', 2),
    diodeOhms: figure(diodeOhms, 'Ω', 2),
    tapAmps: solved(tarn.circulating.rmsAmps, 'A', 2),
    tapPeak: solved(tarn.circulating.peakAmps, 'A', 2),
    halfAmps: solved(half.rmsAmps, 'A', 2),
    halfHeat: solved((half.rmsAmps / rated) ** 2, '', 2),
    tapRail: volts(tarn.rail.meanVolts),
    tapRailShare: solved(tarn.rail.meanVolts / tarnFree.rail.meanVolts, '%', 2),
    heatersBefore: solved(tarnFree.branch('heaters').rmsAmps, 'A', 2),
    heatersAfter: solved(tarn.branch('heaters').rmsAmps, 'A', 2),
    heatersLost: solved(1 - tarn.branch('heaters').watts / tarnFree.branch('heaters').watts, '%', 2),
    diodeMean: solved(tarn.branch('diode-negative-to-second').meanAmps, 'A', 2),
    diodeRated: figure(given(diode(tarn).rated, 'the diode’s rating'), 'A', 2),
    diodeFast: figure(given(diode(tarnHot).secondsToLimit, 'how soon the diode is past its limit'), 's', 1),
    diodeSlow: figure(given(diode(tarn).secondsToLimit, 'how soon the diode is past its limit'), 's', 1),
    siliconPeak: solved(given(diode(tarnSilicon).surge, 'a surge').peakAmps, 'A', 2),
    siliconOnce: figure(given(diode(tarnSilicon).surge, 'a surge').allowedAmps, 'A'),
    ruin: figure(given(tarn.stress('half-1').secondsToRuin, 'when the winding is ruined'), 's', 1),
    burntHalf: solved(burntHalf, 'A', 2),
    burntHeat: solved((burntHalf / rated) ** 2, '', 2),
    primary: solved(given(tarn.primary, 'the mains side').rmsAmps, 'A', 2),
    primaryBefore: solved(given(tarn.primary, 'the mains side').aloneRmsAmps, 'A', 2),
    fuseAmps: solved(fuse.amps, 'A', 2),
    fuseShare: solved(fuse.ratio, '%', 2),
    mainsFuse: figure(fuse.ratedAmps, 'A'),
    centreOhms: figure(centre, 'Ω'),
    // Both resistors reach the chassis side by side: the winding between them is next to nothing.
    centreReading: figure(centre / 2, 'Ω'),
    quillonAmps: solved(quillon.circulating.rmsAmps, 'A', 2),
    quillonRail: volts(quillon.rail.meanVolts),
    quillonFreeRail: volts(quillonFree.rail.meanVolts),
    quillonBefore: volts(heater(quillonFree).first.maxVolts),
    quillonLow: volts(heater(quillon).first.minVolts),
    quillonHigh: volts(heater(quillon).first.maxVolts),
    quillonCommon: volts(heater(quillon).commonVolts),
    quillonBuzzHertz: figure(2 * quillon20.mains.hertz, 'Hz'),
    resistorBefore: solved(quillonFree.branch('centre-resistor-1').watts, 'W', 2),
    resistorAfter: solved(resistor.value, 'W', 2),
    resistorRated: figure(given(resistor.rated, 'the resistor’s rating'), 'W'),
    elevation: figure(elevation.volts, 'V'),
    lowerOhms: figure(elevation.lowerOhms, 'Ω'),
    fennelLow: volts(fennelFree.railAboveChassis.negativeVolts),
    fennelHigh: volts(top.dcVolts),
    fennelMean: volts(heater(fennel).first.meanVolts),
    fennelAmps: solved(fennel.circulating.rmsAmps, 'A', 1),
    fennelRail: volts(fennel.rail.meanVolts),
    openedVolts: solved(lifted.touch.dcVolts, 'V', 2),
    bypass: figure(given(elevation.bypassFarads, 'the elevation’s capacitor'), 'F'),
    bypassJoules: solved(storedJoules({ farads: given(elevation.bypassFarads, 'the elevation’s capacitor'), volts: lifted.touch.dcVolts }), 'J', 2),
    legAmps: solved(leg.circulating.rmsAmps, 'A', 2),
    legWinding: solved(leg.branch('winding').rmsAmps, 'A', 2),
    legRail: volts(leg.rail.meanVolts),
    freedLow: volts(heater(freed).first.minVolts),
    freedHigh: volts(heater(freed).first.maxVolts),
    freedRail: volts(freed.rail.meanVolts),
    hungSwing: volts(Math.abs(tarnFree.railAboveChassis.negativeVolts)),
    hungDrawing: volts(hungDrawing.touch.dcVolts),
    hungIdle: solved(hungIdle.touch.dcVolts, 'V', 2),
    highVolts: figure(given(tarn45.amp.highTensionVolts, 'the high voltage'), 'V'),
    twoDiodesRail: volts(twoDiodes.rail.meanVolts),
    twoDiodesLoad: figure(twoDiodes.branch('load').meanAmps, 'A', 2),
    doubledRail: solved(doubledFree.rail.meanVolts, 'V', 2),
    doubledAfter: volts(doubled.rail.meanVolts),
    doubledMin: volts(doubled.rail.minVolts),
    doubledMax: solved(doubled.rail.maxVolts, 'V', 2),
    doubledAmps: solved(doubled.branch('half-1').rmsAmps, 'A', 2),
    otherVolts: figure(OTHER.openCircuitVolts, 'V'),
    otherOhms: figure(OTHER.ohms, 'Ω'),
    otherDrop: figure(OTHER.diodeVolts, 'V'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return {
    ...worked({
      figures,
      names: { diodeName: HEATER_RAIL.diodeName },
      asked: [
        'tapAmps', 'tapRail', 'freeRail', 'fuseShare', 'mainsFuse', 'halfAmps', 'tarnRated', 'centreReading', 'quillonCommon', 'legRail', 'legWinding', 'otherVolts', 'otherOhms', 'otherDrop', 'fennelMean',
        'elevation', 'fennelHigh', 'openedVolts', 'bypassJoules', 'hungIdle', 'diodeFast', 'doubledAmps', 'halfHeat',
      ],
      // Half of the volts over half of the ohms: one half of the winding at a time.
      answers: { 'half-of-another': ((OTHER.openCircuitVolts / 2) * Math.SQRT2 - OTHER.diodeVolts) / (OTHER.ohms / 2) },
      opened: {
        source: 'heater-winding',
        windingVolts: tarnHeater.openCircuitVolts,
        windingOhms: tarnHeater.ohms,
        windingAmps: rated,
        centre: 'tap',
        heaterAmps: Number((6.3 / given(heatersOhms(tarnHeater), 'valve heaters')).toPrecision(3)),
        diode: HEATER_RAIL.diode,
        farads: HEATER_RAIL.farads,
        loadAmps: Number(tarnFree.branch('load').meanAmps.toPrecision(2)),
        highVolts: given(tarn45.amp.highTensionVolts, 'the high voltage'),
        mainsVolts: tarn45.mains.nominalVolts,
        mainsHertz: String(tarn45.mains.hertz),
        mainsFuse: mainsFuse.ratedAmps,
        otherAmps: Number(mainsFuse.otherAmps.toPrecision(2)),
        groundCentre: 'chassis',
        groundNegative: 'chassis',
      },
      steps: [
        { ask: 'How many points of the circuit are grounded?', words: 'The tap on the chassis is one. The negative would be the other.', sum: 'two: the tap and the negative' },
        {
          ask: 'Which parts close the loop?',
          words: 'In each half of the cycle one lower diode and the half of the winding that it leads to.',
          sum: 'tap → chassis → negative → D4 → lower half; then tap → chassis → negative → D2 → upper half',
        },
        {
          ask: 'What peak would half the volts drive through half the ohms?',
          words: 'Less the knee of the diode. At such amps its own ohms count as much as the winding’s. The heaters pull the crest down a little more, so the solved figure is lower.',
          sum: `(1.414 × ${text('tarnOpen')} ÷ 2 − ${text('knee')}) ÷ (${text('tarnOhms')} ÷ 2 + ${text('diodeOhms')}) ≈ ${figure(estimate, 'A', 2).text}; solved ${text('tapPeak')}`,
        },
        { ask: 'What is that in each half, against the rating?', words: 'RMS, and heat by the square.', sum: `${text('halfAmps')} against ${text('tarnRated')}: ${text('halfHeat')} times the heat`, left: true },
        { ask: 'What will the meter on the rail say?', words: 'Compare it with the floating rail.', sum: `${text('tapRail')}, ${text('tapRailShare')} of ${text('freeRail')}`, left: true },
        { ask: 'What does the mains fuse carry?', words: 'The heaters, the fault and the rest of the amp.', sum: `${text('fuseAmps')}, ${text('fuseShare')} of ${text('mainsFuse')}`, left: true },
        { ask: 'What do you do with this job?', words: 'Name a source for the rail that has no ground of its own.', sum: 'the spare winding of lesson 11, its negative bonded once; the heater winding stays as it is', left: true },
      ],
    }),
    sheet: { id: 'tap-and-negative', windingGround: 'tap', isNegativeGrounded: true, windingText: text('tarnOpen'), railText: text('tapRail'), faultText: `${text('tapAmps')} RMS` },
  };
}
