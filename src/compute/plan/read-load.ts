import type { LoadItem } from '../loads/load-types.ts';
import { number, oneOf, optional, record, refuse, tagged, text, wholeNumber } from './readers.ts';
import type { Reader } from './readers.ts';

const counted = {
  name: text({ most: 80 }),
  count: wholeNumber({ min: 1, max: 100 }),
  onAtOnce: optional(wholeNumber({ min: 0, max: 100 })),
  when: optional(oneOf(['always', 'switched'])),
};

const partVolts = number({ min: 0.5, max: 200, unit: 'V' });
const share = number({ min: 0, max: 10 });

const led = record({
  ...counted,
  amps: optional(number({ min: 1e-5, max: 1, unit: 'A' })),
  seriesOhms: optional(number({ min: 0.1, max: 1e7, unit: 'Ω' })),
  forwardVolts: optional(number({ min: 0.5, max: 100, unit: 'V' })),
});

const fixedAmps = record({
  ...counted,
  amps: number({ min: 0, max: 100, unit: 'A' }),
  tolerance: optional(number({ min: 0, max: 1 })),
});

const fields: Reader<LoadItem> = tagged('kind', {
  relay: record({
    ...counted,
    volts: partVolts,
    ohms: optional(number({ min: 1, max: 1e5, unit: 'Ω' })),
    watts: optional(number({ min: 1e-3, max: 20, unit: 'W' })),
    tolerance: optional(number({ min: 0, max: 0.5 })),
    mustOperateRatio: optional(number({ min: 0.1, max: 1 })),
    kelvinPerWatt: optional(number({ min: 0, max: 500, unit: 'K/W' })),
    maxRatio: optional(record({ at23: share, at70: share })),
    dropperOhms: optional(number({ min: 0, max: 1e5, unit: 'Ω' })),
    driverVolts: optional(number({ min: 0, max: 5, unit: 'V' })),
  }),
  indicator: led,
  optocoupler: led,
  heater: record({
    ...counted,
    volts: partVolts,
    amps: number({ min: 0.01, max: 10, unit: 'A' }),
    inSeries: optional(wholeNumber({ min: 1, max: 20 })),
    coldRatio: optional(number({ min: 2, max: 8 })),
  }),
  'fixed-amps': fixedAmps,
  logic: fixedAmps,
  'fixed-watts': record({ ...counted, watts: number({ min: 0, max: 1000, unit: 'W' }) }),
});

/** One entry of the load list, with what its fields say together. */
export const readLoad: Reader<LoadItem> = (value, path, reading) => {
  const item = fields(value, path, reading);
  if (item === undefined) return undefined;
  if (item.onAtOnce !== undefined && item.onAtOnce > item.count) return refuse(reading, `${path}.onAtOnce`, `no more than the ${item.count} there are is expected`);
  if (item.kind === 'relay' && item.ohms === undefined && item.watts === undefined) return refuse(reading, `${path}.ohms`, 'the coil’s ohms, or its watts, are expected');
  if ((item.kind === 'indicator' || item.kind === 'optocoupler') && item.amps === undefined && item.seriesOhms === undefined) {
    return refuse(reading, `${path}.amps`, 'the current wanted, or the series resistor, is expected');
  }
  return item;
};
