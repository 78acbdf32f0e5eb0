import type { Source } from '../findings.ts';
import type { CatalogueRow } from './row.ts';

/** A relay coil at one rated voltage. */
export interface RelayCoil extends CatalogueRow {
  readonly ratedVolts: number;
  /** At 23 °C. */
  readonly ohms: number;
  /** Ratio either way. */
  readonly tolerance: number;
  /** Guaranteed to pull in at this ratio of rated volts, coil at 23 °C, and to have let go at that one. */
  readonly mustOperateRatio: number;
  readonly mustReleaseRatio: number;
  /** Most volts over rated, air at 23 and at 70 °C. */
  readonly maxRatio: { readonly at23: number; readonly at70: number };
  /** Coil rise over air per watt. Not printed for most types: assumed from size. */
  readonly kelvinPerWatt: number;
  /** Inductance over resistance with the armature in. Printed for one type only; assumed from size for the others. */
  readonly operatedSeconds: number;
  readonly contacts: RelayContacts;
}

export interface RelayContacts {
  readonly poles: number;
  readonly maxAmps: number;
  readonly maxVoltsAc: number;
  readonly maxVoltsDc: number;
  /** Least load for a dependable contact. */
  readonly minLoad: { readonly volts: number; readonly amps: number };
  /** Electric strength, volts RMS for a minute: coil to contacts, across open contacts. A test, not a working voltage. */
  readonly coilToContactVolts: number;
  readonly openContactVolts: number;
  /** Coil to contacts, farads. */
  readonly coilToContactFarads: number;
}

interface CoilClass {
  readonly id: string;
  readonly name: string;
  readonly source: Source;
  readonly basis: 'rated' | 'typical';
  readonly ohms: Readonly<Record<number, number>>;
  readonly mustOperateRatio: number;
  readonly maxRatio: RelayCoil['maxRatio'];
  readonly kelvinPerWatt: number;
  readonly operatedSeconds: number;
  readonly contacts: RelayContacts;
  readonly mustReleaseRatio?: number;
  readonly note?: string;
}

const TELECOM_CONTACTS: RelayContacts = {
  poles: 2, maxAmps: 1, maxVoltsAc: 120, maxVoltsDc: 60, minLoad: { volts: 5, amps: 1e-3 },
  coilToContactVolts: 1000, openContactVolts: 400, coilToContactFarads: 2e-12,
};

const POWER_CONTACTS: RelayContacts = {
  poles: 1, maxAmps: 10, maxVoltsAc: 250, maxVoltsDc: 125, minLoad: { volts: 5, amps: 0.1 },
  coilToContactVolts: 4000, openContactVolts: 1000, coilToContactFarads: 2e-12,
};

const SUGAR_CUBE_CONTACTS: RelayContacts = { ...POWER_CONTACTS, coilToContactVolts: 1500, openContactVolts: 750 };

const ASSUMED = 'Coil temperature rise and inductance are assumed from its size.';

const CLASSES: readonly CoilClass[] = [
  {
    id: 'telecom-140', name: '2-pole signal relay, 140 mW', source: { id: 'typical-relay-signal' }, basis: 'typical', ohms: { 5: 178, 12: 1028, 24: 4114 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.7, at70: 1.3 }, kelvinPerWatt: 150, operatedSeconds: 0.004, contacts: TELECOM_CONTACTS,
    note: `${ASSUMED} One maker prints 2880 Ω for 24 V.`,
  },
  {
    id: 'telecom-150', name: '2-pole signal relay, 150 mW', source: { id: 'ds-relay-telecom' }, basis: 'rated', ohms: { 5: 167, 12: 960, 24: 3840 },
    mustOperateRatio: 0.8, maxRatio: { at23: 1.7, at70: 1.3 }, kelvinPerWatt: 150, operatedSeconds: 0.004, contacts: TELECOM_CONTACTS, note: ASSUMED,
  },
  {
    id: 'telecom-200', name: '2-pole signal relay, 200 mW', source: { id: 'ds-relay-telecom' }, basis: 'rated', ohms: { 5: 125, 12: 720, 24: 2880 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.7, at70: 1.3 }, kelvinPerWatt: 140, operatedSeconds: 0.004, contacts: TELECOM_CONTACTS, note: ASSUMED,
  },
  {
    id: 'telecom-360', name: 'Small relay, 360 mW', source: { id: 'ds-relay-telecom' }, basis: 'rated', ohms: { 5: 70, 12: 400, 24: 1600 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.7, at70: 1.3 }, kelvinPerWatt: 80, operatedSeconds: 0.006, contacts: { ...TELECOM_CONTACTS, poles: 1 }, note: ASSUMED,
  },
  {
    id: 'power-360', name: 'Sugar-cube power relay, 360 mW', source: { id: 'ds-relay-sugar-cube' }, basis: 'typical', ohms: { 5: 70, 6: 100, 9: 225, 12: 400, 24: 1600 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.3, at70: 1.1 }, kelvinPerWatt: 70, operatedSeconds: 0.007, contacts: SUGAR_CUBE_CONTACTS,
    note: `${ASSUMED} 12 V coil rated; the other coils computed from 0.36 W, contact figures typical.`,
  },
  {
    id: 'power-400', name: 'Slim power relay, 400 mW', source: { id: 'typical-relay-power' }, basis: 'typical', ohms: { 5: 62.5, 9: 202, 12: 360, 24: 1440 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.7, at70: 1.2 }, kelvinPerWatt: 60, operatedSeconds: 0.008, contacts: { ...POWER_CONTACTS, maxAmps: 8 },
    note: `${ASSUMED} Resistance computed from volts and watts.`,
  },
  {
    id: 'power-530', name: 'Power relay, 530 mW', source: { id: 'typical-relay-power' }, basis: 'typical', ohms: { 5: 47, 12: 275, 24: 1100 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.5, at70: 1.1 }, kelvinPerWatt: 55, operatedSeconds: 0.00833, contacts: POWER_CONTACTS,
    note: `${ASSUMED} Resistance computed from volts and watts.`,
  },
  {
    id: 'power-16a', name: '16 A board relay, 524 mW', source: { id: 'ds-relay-power-16a' }, basis: 'rated', ohms: { 12: 275 },
    mustOperateRatio: 0.75, maxRatio: { at23: 1.5, at70: 1.1 }, kelvinPerWatt: 55, operatedSeconds: 2.29 / 275, contacts: { ...POWER_CONTACTS, maxAmps: 16 },
    note: 'Inductance printed: 1.15 H released, 2.29 H operated. Pull-in, limits, contacts and coil temperature rise typical or assumed.',
  },
  {
    id: 'automotive-480', name: 'Automotive board relay, 480 mW', source: { id: 'ds-relay-automotive' }, basis: 'rated', ohms: { 12: 300 },
    mustOperateRatio: 7 / 12, mustReleaseRatio: 0.5 / 12, maxRatio: { at23: 16 / 12, at70: 16 / 12 }, kelvinPerWatt: 60, operatedSeconds: 0.006,
    contacts: { ...POWER_CONTACTS, maxVoltsAc: 30, maxVoltsDc: 30, coilToContactVolts: 500, openContactVolts: 500, maxAmps: 20 },
    note: `${ASSUMED} Contact insulation is for car wiring only (typical).`,
  },
];

/** The classes by id and name: what a reader without a data sheet picks a relay by. */
export const RELAY_KINDS: readonly { readonly id: string; readonly name: string }[] = CLASSES.map(({ id, name }) => ({ id, name }));

/**
 * Relay coils by class and rated voltage. A coil-to-contact test voltage is not a licence to put the high voltage on the
 * contacts with the coil rail on a jack.
 */
export const RELAY_COILS: readonly RelayCoil[] = CLASSES.flatMap((kind) =>
  Object.entries(kind.ohms).map(([volts, ohms]): RelayCoil => ({
    id: `${kind.id}-${volts}v`, name: `${kind.name}, ${volts} V`, basis: kind.basis, source: kind.source, ratedVolts: Number(volts), ohms,
    tolerance: 0.1, mustOperateRatio: kind.mustOperateRatio, mustReleaseRatio: kind.mustReleaseRatio ?? 0.1, maxRatio: kind.maxRatio,
    kelvinPerWatt: kind.kelvinPerWatt, operatedSeconds: kind.operatedSeconds, contacts: kind.contacts,
    ...(kind.note === undefined ? {} : { note: kind.note }),
  })),
);
