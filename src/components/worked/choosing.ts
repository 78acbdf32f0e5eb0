import { compareSupplies, openJob, type Approach, type Supply, type SupplyComparison } from '../../compute/index.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import { given, type Shop } from '../shop.ts';
import { grounds } from './grounded.ts';
import { heaterRailJob } from './heater-rail.ts';
import { handRmsAmps } from './high-voltage.ts';
import { figure, solved, worked, type Figure, type Worked } from './worked.ts';

/** How a lesson's text calls each of the four. */
const CALLED: Record<Approach, string> = {
  'spare-winding': 'the spare winding',
  converter: 'a converter module',
  'separate-transformer': 'a small transformer',
  'heater-winding': 'the heater winding',
};

/** A smaller corner in the Quillon, and a larger strip in the Fennel. Supposed. */
const SMALL_ROOM = { lengthMetres: 0.06, widthMetres: 0.04, heightMetres: 0.03 };
const LARGE_ROOM = { lengthMetres: 0.11, widthMetres: 0.04, heightMetres: 0.035 };

const all = (plan: SupplyPlan): SupplyComparison => compareSupplies(openJob(plan));
const winner = ({ recommended }: SupplyComparison): string => (recommended === undefined ? 'none of them' : CALLED[recommended]);
const withAmp = (plan: SupplyPlan, amp: Partial<SupplyPlan['amp']>): SupplyPlan => ({ ...plan, amp: { ...plan.amp, ...amp } });

/** The measures of one way that stand in the lesson's tables. */
function measured(prefix: string, { measures }: Supply): Readonly<Record<string, Figure>> {
  const { holds, heat, loading, room } = measures;
  return {
    [`${prefix}Margin`]: solved(Math.abs(given(holds.marginVolts, 'a margin')), 'V', 2),
    [`${prefix}Heat`]: solved(given(heat.addedWatts, 'the heat of a supply'), 'W', 2),
    [`${prefix}Loading`]: solved(given(loading.ratio, 'a loading'), '%', 3),
    [`${prefix}Room`]: solved(room.share, '%', 2),
  };
}

/** Everything that lesson 19 says of the shop's three jobs, each fed in all four ways. */
export function work(shop: Shop): Worked<string> {
  const { quillon20, tarn45, fennel100 } = shop;
  const [quillon, tarn, fennel] = [all(quillon20), all(tarn45), all(fennel100)];
  const heaters = tarn45.loads.filter(({ kind }) => kind === 'heater');
  const relaysOnly = tarn45.loads.filter(({ kind }) => kind !== 'heater');
  const { spare: _spare, ...ampWithoutSpare } = tarn45.amp;
  const withoutSpare: SupplyPlan = { ...tarn45, amp: ampWithoutSpare };
  const tarnStart = given(tarn.supplies.converter.converter, 'a converter for the Tarn 45').start;
  const junction = given(tarn.supplies['separate-transformer'].measures.heat.hottest, 'the hottest part of the Tarn’s transformer supply').celsius;
  const tap = quillon.supplies['heater-winding'];
  const tapRatio = given(tap.measures.loading.ratio, 'the loading of a heater winding');
  const fennelHeater = given(fennel100.amp.heater, 'the heater winding of the Fennel 100');
  const fennelRatio = given(fennel.supplies['heater-winding'].measures.loading.ratio, 'its loading');
  const fennelRated = given(fennelHeater.ratedAmps, 'its rating');
  const leak = given(quillon.supplies.converter.converter, 'a converter for the Quillon 20').leakageAmps;

  const figures: Record<string, Figure> = {
    ...measured('qt', quillon.supplies['separate-transformer']),
    ...measured('qc', quillon.supplies.converter),
    ...measured('qh', tap),
    ...measured('ts', tarn.supplies['spare-winding']),
    ...measured('tc', tarn.supplies.converter),
    ...measured('tt', tarn.supplies['separate-transformer']),
    ...measured('th', tarn.supplies['heater-winding']),
    ...measured('fc', fennel.supplies.converter),
    ...measured('ft', fennel.supplies['separate-transformer']),
    ...measured('fh', fennel.supplies['heater-winding']),
    rail: figure(quillon20.rail.volts, 'V'),
    tarnRail: figure(tarn45.rail.volts, 'V'),
    qhRms: solved(tapRatio * given(quillon20.amp.heater?.ratedAmps, 'the rating of the heater winding'), 'A', 2),
    qhRated: figure(given(quillon20.amp.heater?.ratedAmps, 'the rating of the heater winding'), 'A'),
    qhHeat: solved(tapRatio ** 2, '%', 3),
    tcTries: figure(tarnStart.tries, ''),
    tcSeconds: solved(tarnStart.seconds, 's', 2),
    tcCold: solved(tarnStart.coldDemandRatio, '%', 3),
    ttJunction: solved(junction, '°C'),
    fhRms: solved(fennelRatio * fennelRated, 'A', 3),
    fhRated: figure(fennelRated, 'A'),
    trapAmps: solved(grounds(heaterRailJob(tarn45, { isGrounded: true })).branch('half-1').rmsAmps, 'A', 2),
    leak: solved(leak, 'A', 2),
    mains: figure(quillon20.mains.nominalVolts, 'V'),
    mainsHand: solved(handRmsAmps({ volts: quillon20.mains.nominalVolts, hertz: quillon20.mains.hertz }), 'A', 2),
  };
  const text = (name: string): string => given(figures[name], name).text;

  return worked({
    figures,
    names: {
      quillonWins: winner(quillon),
      tarnWins: winner(tarn),
      fennelWins: winner(fennel),
      quillonSmall: winner(all(withAmp(quillon20, { room: SMALL_ROOM }))),
      quillonUnearthed: winner(all(withAmp(quillon20, { protectiveEarth: 'absent' }))),
      fennelLarge: winner(all(withAmp(fennel100, { room: LARGE_ROOM }))),
      tarnWithoutSpare: winner(all(withoutSpare)),
      tarnRelaysOnly: winner(all({ ...withoutSpare, loads: relaysOnly })),
      heaterCount: String(heaters.reduce((sum, item) => sum + item.count, 0)),
    },
    asked: ['thLoading', 'trapAmps', 'tcTries', 'tcSeconds', 'tcLoading', 'fhRms', 'fhRated', 'leak', 'mains', 'mainsHand'],
    answers: { 'copper-heat': fennelRatio ** 2 },
    opened: {},
    steps: [
      { ask: 'Is there anything that ends it before the sums?', words: 'Protective earth is verified. There is no spare winding. No jack carries the rail. The heater winding has a grounded centre already, and the rail’s switch can be touched, so it needs a ground of its own: the tap is out.', sum: 'four ways, less one that is not there, less one that is vetoed' },
      { ask: 'Do the two that are left hold at their worst corner?', words: 'The transformer at low mains into an old reservoir; the module at the low end of its tolerance, everything on.', sum: `transformer: ${text('qtMargin')} to spare at the regulator. Module: ${text('qcMargin')} above the least rail asked for` },
      { ask: 'Do they fit, and what heat do they bring?', words: 'Share of the free corner, wiring included; watts inside the chassis.', sum: `transformer: ${text('qtRoom')}, ${text('qtHeat')}. Module: ${text('qcRoom')}, ${text('qcHeat')}` },
      { ask: 'How near their ratings do they run?', words: 'The winding by its RMS, the module by what it may give in this air.', sum: `${text('qtLoading')} and ${text('qcLoading')}` },
      { ask: 'What has nobody read yet?', words: 'The transformer’s short-circuit mark and what its field does. The module’s class of insulation and how its residue sounds. Each has a name on the sheet before anything is ordered.', sum: 'not assessed is not within' },
      { ask: 'Which?', words: 'Both can be built. The course’s habit prefers iron to a switching part near a guitar’s first valve. A full corner, or a light chassis, turns it round, and that is a judgement to write down.', sum: winner(quillon) },
    ],
  });
}
