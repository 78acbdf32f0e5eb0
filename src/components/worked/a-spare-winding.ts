import {
  analyseGrounding, diodePart, groundingJob, heatsinkNeeded, INSULATION_CLASSES, insulator, loadDraw, solveRectifier, supplyFromSpareWinding, temperatureByResistance, timedSupply, warmUpRail,
  type Finding, type RectifierSolution, type Supply,
} from '../../compute/index.ts';
import { addedVoltAmps } from '../../compute/supplies/spare-winding.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import { given, type Shop } from '../shop.ts';
import { tarnCase, tarnRail } from './tarn-spare.ts';
import { figure, inWords, solved, worked, type Worked } from './worked.ts';

/** A 5 V rectifier-valve winding as such transformers have it, with its valve pulled; supposed. */
const FIVE_VOLT = { openCircuitVolts: 5.4, ohms: 0.1, amps: 0.25, farads: 2200e-6 };
/** A primary measured cold and again after two hours, for the quiz. */
const SOAK = { coldOhms: 6.8, coldCelsius: 21, hotOhms: 8.4 };
const LARGER_FARADS = 10_000e-6;

const valleyOf = (supply: Supply): number => given(given(supply.chain?.worst, 'a worst corner').valley.headroomVolts, 'a regulator');
const heatOf = (supply: Supply): number => given(supply.chain?.worst, 'a worst corner').heat.regulatorWatts;
const found = (findings: readonly Finding[], rule: string): Finding => given(findings.find((each) => each.rule === rule), rule);

/** What one insulation breakdown from the high voltage does to the rail, bonded once or floating. */
function breakdown(plan: SupplyPlan, supply: Supply, rail: SupplyPlan['grounds']['rail']) {
  const job = given(groundingJob(plan, supply), 'a rail to ground');
  const { singleFaults } = analyseGrounding({ ...job, connections: { ...job.connections, rail } });
  return given(singleFaults.find(({ kind }) => kind === 'winding-to-winding'), 'the breakdown between windings');
}

/** Everything that lesson 11 says of the Tarn 45's spare winding. */
export function work(shop: Shop): Worked<string> & { readonly bought: InitialCase } {
  const job = shop.tarn45;
  const rail = tarnRail(job);
  const { input, spare, chain } = rail;
  const ratedAmps = given(spare.ratedAmps, 'its rating');
  const ratedVolts = spare.openCircuitVolts - ratedAmps * spare.ohms;
  const low = rail.at({ mains: 'low', load: 'everything', reservoir: 'smallest-oldest' });
  const high = rail.at({ mains: 'high', load: 'everything', reservoir: 'largest' });
  const dc = input.load.everythingAmps;
  const added = addedVoltAmps(input.winding, input.topology, chain);
  const present = given(job.amp.transformer.presentVoltAmps, 'what the amp draws');

  const withParts = (parts: Partial<SupplyPlan['parts']>, rails: Partial<SupplyPlan['rail']> = {}): Supply =>
    supplyFromSpareWinding({ ...job, rail: { ...job.rail, ...rails }, parts: { ...job.parts, ...parts } });
  const schottky = withParts({ diode: '1n5820-22' });
  const larger = withParts({ reservoir: { farads: LARGER_FARADS, ratedVolts: 35 } });
  const switching = withParts({}, { regulation: 'buck' });
  const largerFuse = given(larger.parts.find(({ role }) => role === 'secondary-fuse')?.numbers[0]?.value, 'its fuse');
  const stage = given(schottky.chainInput, 'a chain').stage;
  if (stage.kind === 'none' || stage.kind === 'buck') throw new Error('the Tarn 45 has a linear regulator');
  const heatsink = heatsinkNeeded({
    watts: heatOf(schottky), airCelsius: job.amp.airCelsius, junctionToCase: stage.junctionToCaseKelvinPerWatt, insulator: insulator('pad').kelvinPerWatt,
  });

  const draw = loadDraw(job);
  const heater = given(draw.heater, 'heaters on the Tarn 45');
  const warming = (corner: typeof low.corner) =>
    warmUpRail({ supply: timedSupply({ chain: input, corner }), load: { railVolts: job.rail.volts, amps: dc - heater.amps, heater } });
  const weak = warming(low.corner);
  const strong = warming(high.corner);

  const tapped: RectifierSolution = solveRectifier({
    topology: 'centre-tap', winding: { openCircuitVolts: spare.openCircuitVolts / 2, ohms: spare.ohms / 2 }, hertz: job.mains.hertz,
    diode: input.diode, reservoir: input.reservoir, load: { amps: dc },
  });
  const five = solveRectifier({
    topology: 'bridge', winding: { openCircuitVolts: (FIVE_VOLT.openCircuitVolts * job.mains.lowVolts) / job.mains.nominalVolts, ohms: FIVE_VOLT.ohms }, hertz: job.mains.hertz,
    crestFactor: low.corner.crestFactor, diode: diodePart('1n400x').typical, reservoir: { farads: FIVE_VOLT.farads, ohms: 0.05 }, load: { amps: FIVE_VOLT.amps },
  });
  const bonded = breakdown(job, rail.supply, { kind: 'bonded', pole: 'negative' });
  const floating = breakdown(job, rail.supply, { kind: 'floating' });
  const heaters = given(job.loads.find((item) => item.kind === 'heater'), 'heaters');
  const relays = given(job.loads.find((item) => item.kind === 'relay'), 'relays');

  const figures = {
    rail: figure(job.rail.volts, 'V'),
    dc: figure(dc, 'A'),
    ratedVolts: figure(ratedVolts, 'V'),
    ratedAmps: figure(ratedAmps, 'A'),
    open: figure(spare.openCircuitVolts, 'V'),
    ohms: figure(spare.ohms, 'Ω'),
    lowMains: figure(job.mains.lowVolts, 'V'),
    highMains: figure(job.mains.highVolts, 'V'),
    valley: solved(low.rectifier.rail.minVolts, 'V', 4),
    needed: solved(low.neededVolts, 'V', 4),
    left: solved(given(low.headroomVolts, 'headroom'), 'V', 2),
    heat: solved(heatOf(rail.supply), 'W', 2),
    schottkyLeft: solved(valleyOf(schottky), 'V', 2),
    schottkyHeat: solved(heatOf(schottky), 'W', 2),
    schottkyReverse: solved(given(schottky.chain?.worst, 'corners').reverse.rectifier.diode.reverseVolts, 'V', 2),
    schottkyRated: figure(given(schottky.chainInput, 'a chain').diode.ratedReverseVolts ?? Number.NaN, 'V'),
    largerFarads: figure(LARGER_FARADS, 'F'),
    largerLeft: solved(valleyOf(larger), 'V', 2),
    largerFuse: figure(largerFuse, 'A'),
    fuse: figure(given(rail.part('secondary-fuse').numbers[0]?.value, 'its fuse'), 'A'),
    switchingLeft: solved(valleyOf(switching), 'V', 2),
    switchingHeat: solved(heatOf(switching), 'W', 2),
    heatsink: solved(heatsink, 'K/W', 2),
    rms: solved(high.windingRmsAmps, 'A'),
    copper: solved((high.windingRmsAmps / ratedAmps) ** 2, '%', 2),
    labelDc: solved(ratedAmps / (high.windingRmsAmps / dc), 'A', 2),
    added: solved(added, 'VA', 2),
    railWatts: solved(job.rail.volts * dc, 'W', 2),
    addedRatio: solved(added / (job.rail.volts * dc), '', 2),
    labelHeat: solved((high.windingRmsAmps / dc) ** 2, '', 2),
    present: figure(present, 'VA'),
    total: solved(present + added, 'VA'),
    transformer: figure(given(job.amp.transformer.ratedVoltAmps, 'its VA'), 'VA'),
    classA: figure(given(INSULATION_CLASSES[0], 'class A').normalCelsius, '°C'),
    tappedMean: solved(tapped.rail.meanVolts, 'V', 2),
    tappedRms: solved(tapped.winding.rmsAmps, 'A', 2),
    coldAmps: solved(strong.loadAmps[0] ?? Number.NaN, 'A', 2),
    coldRms: solved(strong.mostRmsAmps, 'A', 2),
    weakRail: solved(weak.railVolts[0] ?? Number.NaN, 'V', 2),
    weakUp: solved(given(weak.upSeconds, 'a rail that comes up'), 's', 2),
    highVolts: figure(given(job.amp.highTensionVolts, 'the high voltage'), 'V'),
    faultBonded: solved(bonded.touch.dcVolts, 'V', 2),
    faultAmps: solved(given(bonded.faultAmps, 'its current'), 'A', 2),
    faultFloating: solved(floating.touch.dcVolts, 'V', 3),
    faultHand: solved(floating.touch.hand?.dcAmps ?? Number.NaN, 'A', 2),
    faultOhms: figure(given(bonded.ohms, 'the breakdown'), 'Ω'),
    fiveAmps: figure(FIVE_VOLT.amps, 'A'),
    fiveValley: solved(five.rail.minVolts, 'V', 2),
    fiveOpen: figure(FIVE_VOLT.openCircuitVolts, 'V'),
    soakCold: figure(SOAK.coldOhms, 'Ω'),
    soakRoom: figure(SOAK.coldCelsius, '°C'),
    soakHot: figure(SOAK.hotOhms, 'Ω'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  if (found(rail.supply.findings, 'ground-situation').level !== 'within') throw new Error('lesson 11 says that the Tarn 45’s rail has one ground');

  return {
    bought: { loadAmps: dc, regulator: '317', setVolts: job.rail.volts, mainsVolts: job.mains.nominalVolts, mainsHertz: String(job.mains.hertz), airCelsius: job.amp.airCelsius },
    ...worked({
    figures,
    names: { heaters: inWords(heaters.count), relays: inWords(relays.count) },
    asked: ['ratedAmps', 'labelDc', 'left', 'schottkyLeft', 'largerFuse', 'fuse', 'soakCold', 'soakRoom', 'soakHot', 'highVolts', 'faultFloating', 'faultHand', 'added', 'railWatts', 'fiveValley', 'fiveOpen', 'labelHeat', 'largerFarads', 'coldAmps'],
    answers: { 'hot-primary': temperatureByResistance(SOAK), 'spare-va': given(job.amp.transformer.ratedVoltAmps, 'its VA') - present - added },
    opened: tarnCase(job, rail),
    steps: [
      { ask: 'What is the winding?', words: 'Two readings, unloaded and at a known current, give its open-circuit volts and its resistance. Its maker states the rating.', sum: `(${text('open')} − ${text('ratedVolts')}) / ${text('ratedAmps')} = ${text('ohms')}` },
      { ask: 'Does the regulator hold on weak mains?', words: 'Solved at low mains with a flat top, smallest and oldest reservoir, everything on.', sum: `${text('valley')} − ${text('needed')} = ${text('left')}` },
      { ask: 'What cures it?', words: 'Two diodes are in the path at any moment. Schottky diodes give back most of a volt.', sum: `left over ${text('schottkyLeft')}, heat ${text('schottkyHeat')}, heatsink ${text('heatsink')}` },
      { ask: 'Is the winding within its rating?', words: 'RMS against RMS, on strong mains. Copper heats by the square.', sum: `(${text('rms')} / ${text('ratedAmps')})² = ${text('copper')} of its rated heat` },
      { ask: 'Is the whole transformer?', words: 'Open-circuit volts times RMS amps is what the rail adds, and the primary carries it.', sum: `${text('present')} + ${text('added')} = ${text('total')} of ${text('transformer')}` },
      { ask: 'Who vouches for the insulation, and where is the ground?', words: 'Its maker states basic insulation to the mains and to the high voltage. The winding has no ground of its own, so the rail’s negative gets the one bond, to a chassis whose earth has been verified.', sum: 'one ground, on the DC side' },
    ],
  }),
  };
}
