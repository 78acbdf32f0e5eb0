import { HEATER_TOLERANCE, coilMaxVolts, coilPullIn, compareSupplies, openJob, type Supply } from '../../compute/index.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import { given, type Shop } from '../shop.ts';
import { coilOf } from './shop-coil.ts';
import { RAIL_HIGH, listLoad } from './the-load-list.ts';
import { figure, inWords, solved, worked, type Figure, type Worked } from './worked.ts';

const share = (ratio: number | undefined, digits = 2): Figure => solved(given(ratio, 'a measure of a supply'), '%', digits);

/** What one of the four ways asks of an amp. */
const costs = (supply: Supply) => ({
  room: share(supply.measures.room.share),
  heat: solved(given(supply.measures.heat.addedWatts, 'the heat of a supply'), 'W', 2),
  loading: share(supply.measures.loading.ratio),
  margin: given(supply.measures.holds.marginVolts, 'the margin of a supply'),
});

const relayCount = ({ loads }: SupplyPlan): number => loads.reduce((sum, item) => sum + (item.kind === 'relay' ? item.count : 0), 0);

/** Everything that lesson 1 says of the shop's three jobs. */
export function work(shop: Shop): Worked<string> {
  const { quillon20, tarn45, fennel100 } = shop;
  const highVolts = given(quillon20.amp.highTensionVolts, 'the high voltage of the Quillon 20');
  const fennelVolts = given(fennel100.amp.highTensionVolts, 'the high voltage of the Fennel 100');
  const railVolts = quillon20.rail.volts;
  const list = listLoad(quillon20);
  const running = list.running.typical;
  const fennelAmps = listLoad(fennel100).running.typical;
  const coil = coilOf(quillon20);
  const lampAmps = running - (relayCount(quillon20) * railVolts) / coil.ohms;
  const air = quillon20.amp.airCelsius;
  const { operateVolts } = coilPullIn({ coil, airCelsius: air, heatingVolts: railVolts * (1 + RAIL_HIGH) });
  const heater = given(tarn45.loads.find((item) => item.kind === 'heater'), 'heaters on the Tarn 45');

  const all = compareSupplies(openJob(quillon20)).supplies;
  const [transformer, converter, tapped] = [costs(all['separate-transformer']), costs(all.converter), costs(all['heater-winding'])];
  const spare = costs(compareSupplies(openJob(tarn45)).supplies['spare-winding']);

  const dropVolts = highVolts - railVolts;
  const dropOhms = dropVolts / running;

  const figures = {
    rail: figure(railVolts, 'V'),
    tarnRail: figure(tarn45.rail.volts, 'V'),
    running: solved(running, 'A', 2),
    tarnRunning: solved(listLoad(tarn45).running.typical, 'A'),
    fennelRunning: solved(fennelAmps, 'A'),
    coilAmps: solved(railVolts / coil.ohms, 'A', 2),
    coilFrom: solved(operateVolts, 'V'),
    coilTo: solved(coilMaxVolts({ coil, airCelsius: air }), 'V'),
    air: figure(air, '°C'),
    heaterVolts: figure(heater.volts, 'V'),
    heaterAmps: figure(heater.amps, 'A'),
    heaterClose: figure(HEATER_TOLERANCE.close, '%'),
    highVolts: figure(highVolts, 'V'),
    dropVolts: figure(dropVolts, 'V'),
    dropOhms: solved(dropOhms, 'Ω', 2),
    dropWatts: solved(dropVolts * running, 'W', 2),
    takenWatts: solved(highVolts * running, 'W', 2),
    usedWatts: solved(railVolts * running, 'W', 2),
    usedShare: solved(railVolts / highVolts, '%', 2),
    spareRoom: spare.room,
    spareHeat: spare.heat,
    spareLoading: spare.loading,
    converterRoom: converter.room,
    converterHeat: converter.heat,
    converterLoading: converter.loading,
    transformerRoom: transformer.room,
    transformerHeat: transformer.heat,
    transformerLoading: transformer.loading,
    heaterRoom: tapped.room,
    heaterHeat: tapped.heat,
    heaterLoading: share(all['heater-winding'].measures.loading.ratio, 3),
    heaterShort: solved(-tapped.margin, 'V', 2),
    quizHigh: figure(fennelVolts, 'V'),
    quizAmps: figure(fennelAmps, 'A'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: {
      quillonRelays: inWords(relayCount(quillon20)),
      tarnRelays: inWords(relayCount(tarn45)),
      fennelRelays: inWords(relayCount(fennel100)),
    },
    asked: ['rail', 'quizHigh', 'quizAmps', 'highVolts', 'heaterLoading'],
    answers: { 'drop-it': (fennelVolts - fennel100.rail.volts) * figures.quizAmps.value },
    opened: {},
    steps: [
      { ask: 'What does the rail take while somebody plays?', words: 'Both relays and the one lamp that is lit. Lesson 5 makes this list properly.', sum: `${relayCount(quillon20)} × ${text('coilAmps')} + ${solved(lampAmps, 'A', 2).text} = ${text('running')}` },
      { ask: 'What must the resistor drop?', words: 'All of the high voltage but the rail.', sum: `${text('highVolts')} − ${text('rail')} = ${text('dropVolts')}` },
      { ask: 'How many ohms, and how many watts?', words: 'Ohm’s law, and volts times amps. That is a soldering iron, inside a chassis that is hot already.', sum: `${text('dropVolts')} / ${text('running')} = ${text('dropOhms')}; ${text('dropVolts')} × ${text('running')} = ${text('dropWatts')}` },
      { ask: 'How much of it reaches the relays?', words: 'The rest warms the air and loads the supply that the valves live on.', sum: `${text('usedWatts')} of ${text('takenWatts')}: ${text('usedShare')}` },
      { ask: 'And when the relays are off?', words: 'Nothing flows, so nothing is dropped. The rail climbs to the high voltage, and so do the coils, the lamp, the switch and the footswitch’s jack.', sum: `${text('highVolts')} − 0 = ${text('highVolts')}` },
    ],
  });
}
