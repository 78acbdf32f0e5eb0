import type { Basis, Finding } from '../findings.ts';
import { checkCoilPullIn, checkCoilVolts } from '../findings/coil.ts';
import { checkHeaterVolts } from '../findings/heater.ts';
import { coilMaxVolts, coilOhms, coilPullIn } from '../parts/relay.ts';
import { coilOf } from './item-amps.ts';
import type { HeaterLoad, LoadItem, LoadRail, RelayLoad } from './load-types.ts';

function relayFindings(item: RelayLoad, rail: LoadRail, airCelsius: number): readonly Finding[] {
  const coil = coilOf(item);
  const { dropperOhms = 0, driverVolts = 0 } = item;
  // The dropper takes a share that falls as the coil warms.
  const across = (railVolts: number, ohms: number): number => ((railVolts - driverVolts) * ohms) / (ohms + dropperOhms);
  const cold = coilOhms({ coil, celsius: 23 });
  // A coil far over its limit is told so below; it has no pull-in worth reckoning at its burning temperature.
  const pullIn = coilPullIn({ coil, airCelsius, heatingVolts: Math.min(across(rail.maxVolts, cold.max), 2 * coil.ratedVolts) });
  const hot = coilOhms({ coil, celsius: pullIn.coilCelsius });
  const restsOn: readonly Basis[] = ['rated', ...(item.mustOperateRatio === undefined ? (['typical'] as const) : []), ...(item.kelvinPerWatt === undefined ? (['assumed'] as const) : [])];
  return [
    checkCoilPullIn({
      corner: 'lowest rail, coil hot from the highest', restsOn, coil: item.name, coilMinVolts: across(rail.minVolts, hot.typical), operateVolts: pullIn.operateVolts,
      ratedVolts: coil.ratedVolts, coilCelsius: pullIn.coilCelsius,
    }),
    checkCoilVolts({
      corner: 'highest rail', restsOn: item.maxRatio === undefined ? ['typical'] : ['rated'], coil: item.name, coilMaxVolts: across(rail.maxVolts, hot.max),
      limitVolts: coilMaxVolts({ coil, airCelsius }),
    }),
  ];
}

const heaterFindings = (item: HeaterLoad, rail: LoadRail): readonly Finding[] => [
  checkHeaterVolts({ corner: 'the rail’s lowest and highest', restsOn: ['typical'], heater: item.name, minVolts: rail.minVolts, maxVolts: rail.maxVolts, ratedVolts: item.volts * (item.inSeries ?? 1) }),
];

/** What is to be said of one item at the ends of the rail. */
export function loadFindings(item: LoadItem, rail: LoadRail, airCelsius: number): readonly Finding[] {
  if (item.kind === 'relay') return relayFindings(item, rail, airCelsius);
  return item.kind === 'heater' ? heaterFindings(item, rail) : [];
}
