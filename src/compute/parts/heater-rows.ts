import type { CatalogueRow } from './row.ts';

export interface HeaterRow extends CatalogueRow {
  readonly heating: 'indirect' | 'direct' | 'cathode-tied';
  /** Ways to connect it, the first the usual one. */
  readonly connections: readonly { readonly volts: number; readonly amps: number }[];
  /** Most between heater and cathode, either way, where known. Typical, the 12AX7's apart. */
  readonly heaterCathodeVolts?: number;
}

const CENTRE_TAPPED = (amps: number): HeaterRow['connections'] => [{ volts: 6.3, amps }, { volts: 12.6, amps: amps / 2 }];

type Entry = readonly [id: string, name: string, connections: HeaterRow['connections'] | number, more?: { hk?: number; rated?: true; note?: string }];

const row = ([id, name, connections, more = {}]: Entry, heating: HeaterRow['heating'], volts: number): HeaterRow => {
  return {
    id, name, heating, basis: more.rated === true ? 'rated' : 'typical', source: { id: 'heater-ratings' },
    connections: typeof connections === 'number' ? [{ volts, amps: connections }] : connections,
    ...(more.hk === undefined ? {} : { heaterCathodeVolts: more.hk }),
    ...(more.note === undefined ? {} : { note: more.note }),
  };
};

const INDIRECT: readonly Entry[] = [
  ['12ax7', '12AX7 / ECC83', CENTRE_TAPPED(0.3), { hk: 180, rated: true, note: 'Heater to cathode 200 V in one sheet, 180 V in another.' }],
  ['12at7', '12AT7 / ECC81', CENTRE_TAPPED(0.3), { hk: 90 }],
  ['12au7', '12AU7 / ECC82', CENTRE_TAPPED(0.3), { hk: 180, rated: true }],
  ['12ay7', '12AY7', CENTRE_TAPPED(0.3)],
  ['12bh7', '12BH7', CENTRE_TAPPED(0.6), { rated: true }],
  ['6dj8', '6DJ8 / ECC88', 0.365, { note: '6.3 V only: pin 9 is a screen.' }],
  ['6n2p', '6N2P', 0.34, { note: '6.3 V only: pin 9 is a screen.' }],
  ['6sn7', '6SN7GT', 0.6],
  ['6sl7', '6SL7GT', 0.3],
  ['ef86', 'EF86', 0.2],
  ['el84', 'EL84 / 6BQ5', 0.76, { hk: 100, rated: true }],
  ['el34', 'EL34 / 6CA7', 1.5, { hk: 100 }],
  ['6l6gc', '6L6GC / 5881', 0.9, { hk: 200, note: 'Of the 200 V peak no more than 100 V DC with the heater positive.' }],
  ['6v6gt', '6V6GT', 0.45, { hk: 200, note: 'Of the 200 V peak no more than 100 V DC with the heater positive.' }],
  ['kt66', 'KT66', 1.27, { hk: 150, rated: true }],
  ['kt77', 'KT77', 1.4],
  ['kt88', 'KT88 / 6550', 1.6, { hk: 250, note: 'One maker of the 6550 prints 1.8 A.' }],
  ['7591', '7591', 0.8],
  ['7027a', '7027A', 0.9],
  ['ecl82', 'ECL82 / 6BM8', 0.78],
  ['ecl86', 'ECL86 / 6GW8', 0.7],
  ['ez81', 'EZ81 / 6CA4', 1, { hk: 500 }],
  ['ez80', 'EZ80 / 6V4', 0.6],
];

const AT_HIGH_VOLTAGE = 'Its winding stands at the high voltage while the valve is fitted: lethal, never a spare winding.';

/** Valve heaters: volts and amps hot. Few figures were read in a sheet; the others are typical and easily checked there. */
export const HEATERS: readonly HeaterRow[] = [
  ...INDIRECT.map((entry) => row(entry, 'indirect', 6.3)),
  row(['5u4gb', '5U4GB', 3, { rated: true, note: AT_HIGH_VOLTAGE }], 'direct', 5),
  row(['5y3gt', '5Y3GT', 2, { note: AT_HIGH_VOLTAGE }], 'direct', 5),
  row(['gz34', '5AR4 / GZ34', 1.9, { note: AT_HIGH_VOLTAGE }], 'cathode-tied', 5),
  row(['gz37', 'GZ37', 2.8, { note: AT_HIGH_VOLTAGE }], 'cathode-tied', 5),
  row(['5v4', '5V4', 2, { note: AT_HIGH_VOLTAGE }], 'cathode-tied', 5),
];

/** Cold inrush over hot current as measured on many types, and on large heaters for the first second or two. */
export const COLD_INRUSH = { min: 2.7, typical: 6, max: 7.2, lasting: { min: 3, max: 4 } } as const;

/** Heater volts either way of rated: what every maker allows, and the widest that one prints. */
export const HEATER_TOLERANCE = { close: 0.05, wide: 0.1 } as const;
