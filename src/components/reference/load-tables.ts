import { HEATERS, LEDS, OPTOCOUPLERS, RELAY_COILS, coilPullIn, formatQuantity } from '../../compute/index.ts';
import type { ReferenceTable } from './reference-table.ts';

const amps = (value: number): string => formatQuantity({ value, unit: 'A' });
const volts = (value: number): string => formatQuantity({ value, unit: 'V' });
const percent = (value: number): string => formatQuantity({ value, unit: '%' });

/** Air in which a coil's hot pull-in is listed. */
const HOT_CELSIUS = 55;

export const heaterTable: ReferenceTable = {
  id: 'heaters',
  title: 'Valve heaters',
  note: 'Running current. Cold, a heater takes several times as much for a second or two. Makers of the same type differ: measure.',
  columns: ['Valve', 'Heater', 'Heater to cathode, at most'],
  rows: HEATERS.map((row) => ({
    cells: [
      row.name,
      row.connections.map((each) => `${volts(each.volts)} ${amps(each.amps)}`).join(' or '),
      row.heating === 'cathode-tied' ? 'tied: at the high voltage'
      : row.heating === 'direct' ? 'is the cathode: at the high voltage'
      : row.heaterCathodeVolts === undefined ? 'not listed'
      : volts(row.heaterCathodeVolts),
    ],
    sourceId: row.source.id,
    basis: row.basis,
  })),
};

export const coilTable: ReferenceTable = {
  id: 'coils',
  title: 'Relay coils',
  note: `Pull-in is what a coil is sure to need, cold, and after an hour in air of ${HOT_CELSIUS} °C at its rated volts. Coil to contact is a test voltage, not a working voltage: no signal relay is a barrier between the high voltage and a jack.`,
  columns: ['Coil', 'Resistance', 'Current', 'Pull-in cold', 'Pull-in hot', 'Coil to contact, test'],
  rows: RELAY_COILS.map((coil) => ({
    cells: [
      coil.name,
      formatQuantity({ value: coil.ohms, unit: 'Ω', digits: 4 }),
      amps(coil.ratedVolts / coil.ohms),
      volts(coil.ratedVolts * coil.mustOperateRatio),
      volts(coilPullIn({ coil, airCelsius: HOT_CELSIUS, heatingVolts: coil.ratedVolts }).operateVolts),
      `${volts(coil.contacts.coilToContactVolts)} AC`,
    ],
    sourceId: coil.source.id,
    basis: coil.basis,
  })),
};

export const indicatorTable: ReferenceTable = {
  id: 'indicators',
  title: 'Indicators',
  note: 'Forward drop at about 10 mA. Chips differ within a colour.',
  columns: ['Colour', 'Drop', 'Current, at most', 'Reverse, at most'],
  rows: LEDS.map((row) => ({
    cells: [
      row.name,
      `${row.forwardVolts.min} to ${row.forwardVolts.max} V`,
      amps(row.maxAmps),
      volts(row.reverseMaxVolts),
    ],
    sourceId: row.source.id,
    basis: row.basis,
  })),
};

export const optocouplerTable: ReferenceTable = {
  id: 'optocouplers',
  title: 'Optocouplers',
  note: 'Transfer ratio of a new part at 25 °C. Design with half the least: age and heat take it.',
  columns: ['Part', 'Transfer ratio', 'at', 'Collector, at most'],
  rows: OPTOCOUPLERS.map((row) => ({
    cells: [
      row.name,
      row.transfer.max === undefined ? `${percent(row.transfer.min)} or more` : `${percent(row.transfer.min)} to ${percent(row.transfer.max)}`,
      amps(row.testAmps),
      volts(row.collectorMaxVolts),
    ],
    sourceId: row.source.id,
    basis: row.basis,
  })),
};
