import {
  analyseGrounding, chainDiode, chainReservoir, diodePart, groundingJob, heatersOhms, HEATER_TOLERANCE, linearRegulator, linearStage, operatingCorners, supplyFromHeaterWinding,
  type ChainInput, type GroundingAnalysis, type SolvedCorner,
} from '../../compute/index.ts';
import { TOUCH_DC_VOLTS } from '../../compute/grounding/limits.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import { solveCorner } from '../../compute/supplies/chain-corner.ts';
import { given, type Shop } from '../shop.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** What a small rail from the heater winding is asked for: two 5 V relays, or one of 12 V; supposed. */
const TAP_AMPS = 0.2;
const DOUBLED_AMPS = 0.1;
const SMALL_VOLTS = 5;
const FARADS = 4700e-6;
/** Another tap, for the quiz. */
const OTHER_AMPS = 0.3;

interface Tap {
  readonly topology: 'bridge' | 'doubler';
  readonly diode: string;
  readonly regulator: string;
  readonly amps: number;
}

const BEST: Tap = { topology: 'bridge', diode: '1n5820-22', regulator: 'ldo-5', amps: TAP_AMPS };

/** A rectifier and regulator across an amp's heater winding, its valves' heaters hot beside it. */
function tapChain({ amp, mains }: SupplyPlan, { topology, diode, regulator, amps }: Tap): ChainInput {
  const heater = given(amp.heater, 'a heater winding');
  return {
    mains,
    winding: { openCircuitVolts: heater.openCircuitVolts, ohms: heater.ohms, ratedAmps: given(heater.ratedAmps, 'its rating'), acrossOhms: given(heatersOhms(heater), 'heaters'), basis: heater.basis },
    topology,
    diode: chainDiode(diodePart(diode)),
    reservoir: chainReservoir({ farads: FARADS, ratedVolts: 16, topology, hertz: mains.hertz, airCelsius: amp.airCelsius }),
    stage: linearStage(linearRegulator(regulator)),
    load: { offAmps: 0, runningAmps: amps, everythingAmps: amps },
    cooling: { airCelsius: amp.airCelsius },
  };
}

function corners(plan: SupplyPlan, tap: Tap): Record<'low' | 'nominal' | 'high', SolvedCorner> {
  const input = tapChain(plan, tap);
  const at = (mains: 'low' | 'nominal' | 'high', reservoir: 'smallest-oldest' | 'marked' | 'largest'): SolvedCorner => {
    const corner = given(operatingCorners(plan.mains).find((each) => each.mains === mains && each.load === 'everything' && each.reservoir === reservoir), 'a corner');
    const solution = solveCorner(input, corner);
    if (!solution.solved) throw new Error(solution.message);
    return solution;
  };
  return { low: at('low', 'smallest-oldest'), nominal: at('nominal', 'marked'), high: at('high', 'largest') };
}

/** The small rail on an amp's heater winding as a plan of its own, with its ground as asked. */
function grounded(plan: SupplyPlan, rail: SupplyPlan['grounds']['rail']): GroundingAnalysis {
  const small: SupplyPlan = {
    ...plan,
    rail: { volts: SMALL_VOLTS, regulation: 'low-dropout' },
    loads: [{ kind: 'relay', name: 'Small relay', count: 2, volts: SMALL_VOLTS, ohms: 62.5 }],
    parts: { topology: 'bridge', diode: '1n5820-22', reservoir: { farads: FARADS, ratedVolts: 16 } },
    grounds: { ...plan.grounds, rail },
  };
  return analyseGrounding(given(groundingJob(small, supplyFromHeaterWinding(small)), 'a rail to ground'));
}

/** Everything that lesson 14 says of taking a rail from the heater windings of the shop's three amps. */
export function work(shop: Shop): Worked<string> {
  const tarn = corners(shop.tarn45, BEST);
  const quillon = corners(shop.quillon20, BEST);
  const fennel = corners(shop.fennel100, BEST);
  const silicon = corners(shop.tarn45, { ...BEST, diode: '1n540x', regulator: '7805' });
  const schottky = corners(shop.tarn45, { ...BEST, regulator: '7805' });
  const doubled = corners(shop.tarn45, { topology: 'doubler', diode: '1n5820-22', regulator: '7812', amps: DOUBLED_AMPS });
  const doubledLow = corners(shop.tarn45, { topology: 'doubler', diode: '1n5820-22', regulator: 'ldo-12', amps: DOUBLED_AMPS });
  const other = corners(shop.tarn45, { ...BEST, amps: OTHER_AMPS });
  const left = ({ low }: ReturnType<typeof corners>): number => given(low.headroomVolts, 'a regulator');
  const across = ({ nominal }: ReturnType<typeof corners>) => given(nominal.across, 'heaters');
  const rated = (plan: SupplyPlan): number => given(plan.amp.heater?.ratedAmps, 'its rating');

  const trap = grounded(shop.tarn45, { kind: 'bonded', pole: 'negative' });
  const burns = given(trap.firstToOverheat, 'a part that overheats');
  const elevated = grounded(shop.fennel100, { kind: 'floating' });
  const opened = given(elevated.singleFaults.find(({ kind }) => kind === 'divider-open'), 'the open divider');
  const reference = given(shop.fennel100.amp.heater, 'a heater winding').reference;
  if (reference.kind !== 'elevated') throw new Error('the Fennel 100 has elevated heaters');
  const tap = tarn.nominal.rectifier.winding.rmsAmps;
  const heatersAmps = across(tarn).rmsAmpsBefore;

  const figures = {
    tapAmps: figure(TAP_AMPS, 'A'),
    small: figure(SMALL_VOLTS, 'V'),
    tarnRated: figure(rated(shop.tarn45), 'A'),
    tarnHeaters: solved(heatersAmps, 'A'),
    tarnTotal: solved(tarn.nominal.windingRmsAmps, 'A'),
    tarnHigh: solved(tarn.high.windingRmsAmps, 'A'),
    quillonRated: figure(rated(shop.quillon20), 'A'),
    quillonHeaters: solved(across(quillon).rmsAmpsBefore, 'A'),
    quillonTotal: solved(quillon.nominal.windingRmsAmps, 'A'),
    quillonHigh: solved(quillon.high.windingRmsAmps, 'A'),
    quillonHeat: solved((quillon.high.windingRmsAmps / rated(shop.quillon20)) ** 2, '%', 2),
    fennelRated: figure(rated(shop.fennel100), 'A'),
    fennelHeaters: solved(across(fennel).rmsAmpsBefore, 'A'),
    fennelTotal: solved(fennel.nominal.windingRmsAmps, 'A'),
    fennelHigh: solved(fennel.high.windingRmsAmps, 'A'),
    tapRms: solved(tap, 'A', 2),
    tapRatio: solved(tap / TAP_AMPS, '', 2),
    sum: solved(tap + heatersAmps, 'A'),
    quadrature: solved(Math.hypot(tap, heatersAmps), 'A'),
    rise: solved(tarn.nominal.windingRmsAmps - heatersAmps, 'A', 2),
    naive: solved(6.3 * Math.SQRT2, 'V', 2),
    needed7805: solved(silicon.low.neededVolts, 'V', 3),
    siliconValley: solved(silicon.low.rectifier.rail.minVolts, 'V', 3),
    siliconShort: solved(-left(silicon), 'V', 2),
    schottkyValley: solved(schottky.low.rectifier.rail.minVolts, 'V', 3),
    schottkyShort: solved(-left(schottky), 'V', 2),
    neededLow: solved(tarn.low.neededVolts, 'V', 3),
    lowValley: solved(tarn.low.rectifier.rail.minVolts, 'V', 3),
    lowLeft: solved(left(tarn), 'V', 2),
    doubledAmps: figure(DOUBLED_AMPS, 'A'),
    doubledShort: solved(-left(doubled), 'V', 2),
    doubledRatio: solved(doubled.nominal.rectifier.winding.rmsAmps / DOUBLED_AMPS, '', 2),
    doubledRms: solved(doubled.nominal.rectifier.winding.rmsAmps, 'A', 2),
    doubledLowLeft: solved(left(doubledLow), 'V', 2),
    doubledLowRms: solved(doubledLow.nominal.rectifier.winding.rmsAmps, 'A', 2),
    heaterBefore: solved(across(tarn).rmsVoltsBefore, 'V'),
    heaterAfter: solved(across(tarn).rmsVolts, 'V'),
    crestAfter: solved(across(tarn).crestFactor, '', 4),
    tolerance: figure(HEATER_TOLERANCE.close, '%'),
    trapAmps: solved(burns.value, 'A', 2),
    trapGround: solved(trap.circulating.rmsAmps, 'A', 2),
    trapMains: solved(given(trap.primary, 'the primary').rmsAmps, 'A', 2),
    trapRail: solved(trap.rail.meanVolts, 'V', 2),
    trapAlone: solved(trap.rail.aloneMeanVolts, 'V', 2),
    trapLimit: solved(given(burns.secondsToLimit, 'a limit'), 's', 1),
    elevation: figure(reference.volts, 'V'),
    elevatedPlus: solved(elevated.railAboveChassis.positiveVolts, 'V', 2),
    touch: figure(TOUCH_DC_VOLTS.value, 'V'),
    openedVolts: solved(opened.touch.dcVolts, 'V', 3),
    openedJoules: solved((given(reference.bypassFarads, 'its capacitor') * opened.touch.dcVolts ** 2) / 2, 'J', 2),
    highVolts: figure(given(shop.fennel100.amp.highTensionVolts, 'the high voltage'), 'V'),
    otherAmps: figure(OTHER_AMPS, 'A'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    asked: ['tapAmps', 'otherAmps', 'tarnHeaters', 'quillonRated', 'quillonHigh', 'quillonHeat', 'sum', 'quadrature', 'tapRms', 'tarnTotal', 'siliconShort', 'doubledRatio', 'doubledAmps', 'doubledShort', 'trapAmps', 'trapMains', 'trapRail', 'elevation', 'elevatedPlus', 'openedVolts', 'openedJoules'],
    answers: { 'total-with-tap': other.nominal.windingRmsAmps, 'doubler-rms': doubled.nominal.rectifier.winding.rmsAmps },
    opened: { loadAmps: TAP_AMPS },
    steps: [
      { ask: 'What does the winding carry, tap included?', words: 'Solved as one circuit: heaters and rectifier across the same winding, mean of the squared sum. On strong mains too.', sum: `${text('tarnTotal')}, and ${text('tarnHigh')} on strong mains, of ${text('tarnRated')}` },
      { ask: 'Does a 5 V regulator hold on weak mains?', words: 'Schottky diodes and a low-dropout part; flat top, smallest and oldest reservoir.', sum: `${text('lowValley')} − ${text('neededLow')} = ${text('lowLeft')}` },
      { ask: 'What is left for the heaters?', words: 'RMS at the heaters, nominal mains, before and after.', sum: `${text('heaterBefore')} becomes ${text('heaterAfter')}` },
      { ask: 'Where may the rail be grounded?', words: 'Nowhere: the winding has its ground, the centre tap. The rail hangs on it through the bridge.', sum: 'no ground of its own' },
      { ask: 'May it reach a jack or the panel?', words: 'No: what it hangs on is not a bond, and nobody vouches for the insulation of a heater winding here.', sum: 'inside only; insulation: not assessed' },
      { ask: 'Then is it acceptable?', words: 'In amps and volts, yes. As a rail, not until somebody vouches for the insulation. The Tarn 45 has a spare winding, and that is the one to use.', sum: 'not assessed: use another way' },
    ],
  });
}
