import { COLD_INRUSH, LOAD_MARGIN, addLoads, copperRatio, type LoadItem, type LoadSums } from '../../compute/index.ts';
import { COIL_REFERENCE_CELSIUS } from '../../compute/parts/relay.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import { given, type Shop } from '../shop.ts';
import { figure, inWords, solved, worked, type Worked } from './worked.ts';

/** A relay from the drawer, for the quiz: twice the coil resistance of the job's. */
const OTHER_COIL_OHMS = 720;

/** A night in a cold van. */
const COLD_CELSIUS = 0;

/** A rail that a fixed regulator holds: how far it may sit high. */
export const RAIL_HIGH = 0.05;

/** A plan's loads as they stand on the list: lamps that are never lit together stand on it once. */
const listed = ({ loads }: SupplyPlan): readonly LoadItem[] =>
  loads.map((item) => (item.kind === 'indicator' && item.onAtOnce !== undefined ? { ...item, count: item.onAtOnce } : item));

/** The load list of a job. */
export const listLoad = (plan: SupplyPlan): LoadSums =>
  addLoads({ items: listed(plan), railVolts: plan.rail.volts, railMaxVolts: plan.rail.volts * (1 + RAIL_HIGH), airCelsius: plan.amp.airCelsius });

/** The list in the fields of its calculator. */
const listCase = (plan: SupplyPlan): InitialCase => ({
  railVolts: plan.rail.volts,
  railSpread: RAIL_HIGH,
  airCelsius: plan.amp.airCelsius,
  margin: LOAD_MARGIN,
  loads: listed(plan).map((item) => ({
    kind: item.kind,
    name: item.name,
    count: item.count,
    ...('volts' in item ? { volts: item.volts } : {}),
    ...('ohms' in item && item.ohms !== undefined ? { ohms: item.ohms } : {}),
    ...('amps' in item && item.amps !== undefined ? { amps: item.amps } : {}),
    ...(item.onAtOnce === undefined || item.onAtOnce === item.count ? {} : { onAtOnce: item.onAtOnce }),
  })),
});

type Kind<K extends LoadItem['kind']> = LoadItem & { readonly kind: K };

function only<K extends LoadItem['kind']>(loads: readonly LoadItem[], kind: K): Kind<K> {
  const found = loads.find((item): item is Kind<K> => item.kind === kind);
  if (found === undefined) throw new Error(`the job has no ${kind}`);
  return found;
}

/** Everything that lesson 5 says of the Quillon 20's loads, and of the Tarn 45's heaters. */
export function work(shop: Shop): Worked<string> {
  const job = shop.quillon20;
  const sums = listLoad(job);
  const tarn = listLoad(shop.tarn45);
  const relay = only(job.loads, 'relay');
  const lamp = only(listed(job), 'indicator');
  const heater = only(shop.tarn45.loads, 'heater');
  const [relays, lamps] = sums.lines;
  if (relays === undefined || lamps === undefined) throw new Error('the list has two lines');
  const ohms = given(relay.ohms, 'the ohms of its coils');
  const tolerance = given(relay.tolerance, 'the tolerance of its coils');
  const lampAmps = given(lamp.amps, 'the current of its lamps');
  const coldRatio = heater.coldRatio ?? COLD_INRUSH.typical;
  const { volts } = job.rail;
  const otherCoil = addLoads({ items: [{ ...relay, count: 1, ohms: OTHER_COIL_OHMS }], railVolts: volts, railMaxVolts: volts * (1 + RAIL_HIGH) });
  const coldGain = 1 / copperRatio({ fromCelsius: COIL_REFERENCE_CELSIUS, toCelsius: COLD_CELSIUS });

  const figures = {
    rail: figure(volts, 'V'),
    railTolerance: figure(RAIL_HIGH, '%'),
    coilOhms: figure(ohms, 'Ω'),
    coilTolerance: figure(tolerance, '%'),
    coilAmps: solved(relays.each.typical, 'A'),
    coilMost: solved(relays.each.max, 'A'),
    coldGain: solved(coldGain - 1, '%', 1),
    coldAir: figure(COLD_CELSIUS, '°C'),
    lampAmps: figure(lampAmps, 'A'),
    lampMost: solved(lamps.each.max, 'A'),
    idle: solved(sums.idle.typical, 'A'),
    running: solved(sums.running.typical, 'A'),
    everything: solved(sums.everything.max, 'A'),
    firstMoment: solved(sums.switchOn.everythingAmps, 'A'),
    tarnIdle: solved(tarn.idle.typical, 'A'),
    tarnRunning: solved(tarn.running.typical, 'A'),
    tarnEverything: solved(tarn.everything.max, 'A'),
    tarnFirst: solved(tarn.switchOn.everythingAmps, 'A'),
    marginShare: figure(LOAD_MARGIN, '%'),
    wanted: solved(sums.design.amps, 'A'),
    heaterVolts: figure(heater.volts, 'V'),
    oneHeater: figure(heater.amps, 'A'),
    heaterHot: figure(heater.count * heater.amps, 'A'),
    heaterCold: figure(heater.count * heater.amps * coldRatio, 'A', 2),
    coldRatio: figure(coldRatio, ''),
    otherOhms: figure(OTHER_COIL_OHMS, 'Ω'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  const highRail = figure(volts * (1 + RAIL_HIGH), 'V').text;
  const lowOhms = figure(ohms * (1 - tolerance), 'Ω').text;

  return worked({
    figures,
    names: { coils: inWords(relay.count), heaterCount: inWords(heater.count) },
    asked: ['otherOhms', 'coilTolerance', 'rail', 'railTolerance', 'heaterCount', 'oneHeater', 'coldRatio', 'everything'],
    answers: { 'coil-most': otherCoil.everything.max, 'cold-heaters': heater.count * heater.amps * coldRatio },
    opened: listCase(job),
    steps: [
      { ask: 'What does one coil take, as marked?', words: 'Rail over resistance.', sum: `${text('rail')} / ${text('coilOhms')} = ${text('coilAmps')}` },
      {
        ask: 'What is the most it can take?',
        words: 'The rail as high as its regulator may sit, the coil as low as its tolerance allows.',
        sum: `${highRail} / ${lowOhms} = ${text('coilMost')}`,
      },
      {
        ask: 'What runs while somebody plays?',
        words: 'Both coils as marked, and the one lamp that is lit.',
        sum: `${relay.count} × ${text('coilAmps')} + ${text('lampAmps')} = ${text('running')}`,
      },
      {
        ask: 'What is everything, at its worst?',
        words: 'Both coils at their most. The lamp takes a little more as well: its resistor was chosen for the rail as marked, and its LED may drop less than usual.',
        sum: `${relay.count} × ${text('coilMost')} + ${text('lampMost')} = ${text('everything')}`,
        left: true,
      },
      {
        ask: 'What must the supply be sized for?',
        words: 'The margin goes on last, and once.',
        sum: `${text('everything')} × ${figure(1 + LOAD_MARGIN, '').text} = ${text('wanted')}`,
        left: true,
      },
    ],
  });
}
