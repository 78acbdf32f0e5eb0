import type { Shop } from '../shop.ts';
import { COIL_REFERENCE_CELSIUS } from '../../compute/parts/relay.ts';
import { COLD_CELSIUS, coilMostAmps, listLoad } from './load-sums.ts';
import { figure, worked, type Worked } from './worked.ts';

/** A relay from the drawer, for the quiz: the lower-power coil of the same class. */
const OTHER_COIL_OHMS = 720;

/** Everything that lesson 5 says of the Quillon 20's loads, and of the Tarn 45's heaters. */
export function work(shop: Shop): Worked<string> {
  const job = shop.quillon20;
  const { relays, lamps, railVolts, railHighRatio } = job;
  const { heaters } = shop.tarn45;
  const sums = listLoad(job);
  const hot = heaters.count * heaters.amps;
  const lit = lamps.litAtOnce * lamps.amps;

  const figures = {
    rail: figure(railVolts, 'V'),
    railTolerance: figure(railHighRatio, '%'),
    coilOhms: figure(relays.ohms, 'Ω'),
    coilTolerance: figure(relays.toleranceRatio, '%'),
    coilAmps: figure(sums.coil, 'A'),
    coilMost: figure(sums.coilMost, 'A'),
    coilCold: figure(coilMostAmps(job, relays.ohms, COLD_CELSIUS), 'A'),
    lampAmps: figure(lamps.amps, 'A'),
    idle: figure(sums.idle, 'A'),
    running: figure(sums.running, 'A'),
    everything: figure(sums.everything, 'A'),
    firstMoment: figure(sums.firstMoment, 'A'),
    marginShare: figure(job.marginRatio, '%'),
    wanted: figure(sums.wanted, 'A'),
    coldAir: figure(COLD_CELSIUS, '°C'),
    roomAir: figure(COIL_REFERENCE_CELSIUS, '°C'),
    heaterVolts: figure(heaters.volts, 'V'),
    oneHeater: figure(heaters.amps, 'A'),
    heaterHot: figure(hot, 'A'),
    heaterCold: figure(hot * heaters.coldRatio, 'A', 2),
    coldRatio: figure(heaters.coldRatio, ''),
    otherOhms: figure(OTHER_COIL_OHMS, 'Ω'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  const highRail = figure(railVolts * (1 + railHighRatio), 'V').text;
  const lowOhms = figure(relays.ohms * (1 - relays.toleranceRatio), 'Ω').text;

  return worked({
    figures,
    names: { coils: String(relays.count), heaterCount: String(heaters.count) },
    asked: ['otherOhms', 'coilTolerance', 'rail', 'railTolerance', 'heaterCount', 'oneHeater', 'coldRatio', 'everything'],
    answers: {
      'coil-most': coilMostAmps(job, OTHER_COIL_OHMS, COIL_REFERENCE_CELSIUS),
      'cold-heaters': hot * heaters.coldRatio,
    },
    opened: {},
    steps: [
      {
        ask: 'What does one coil take, as marked?',
        words: 'Rail over resistance.',
        sum: `${text('rail')} / ${text('coilOhms')} = ${text('coilAmps')}`,
      },
      {
        ask: 'What is the most it can take, warm room?',
        words: 'The rail as high as its regulator may sit, the coil as low as its tolerance allows.',
        sum: `${highRail} / ${lowOhms} = ${text('coilMost')}`,
      },
      {
        ask: 'What runs while somebody plays?',
        words: 'Both coils as marked, and the one lamp that is lit.',
        sum: `${relays.count} × ${text('coilAmps')} + ${figure(lit, 'A').text} = ${text('running')}`,
      },
      {
        ask: 'What is everything, at its worst?',
        words: 'Both coils at their most, and the lamp on the high rail.',
        sum: `${relays.count} × ${text('coilMost')} + ${figure(lit * (1 + railHighRatio), 'A').text} = ${text('everything')}`,
        left: true,
      },
      {
        ask: 'What must the supply be sized for?',
        words: 'The margin goes on last, and once.',
        sum: `${text('everything')} × ${figure(1 + job.marginRatio, '').text} = ${text('wanted')}`,
        left: true,
      },
    ],
  });
}
