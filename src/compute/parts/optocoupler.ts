import { InputError, requireNumber } from '../errors.ts';
import type { CatalogueRow } from './row.ts';

export interface OptocouplerRow extends CatalogueRow {
  /** Collector over LED current as a ratio, at `testAmps`, 25 °C, new. */
  readonly transfer: { readonly min: number; readonly max?: number };
  readonly testAmps: number;
  readonly ledVolts: { readonly typical: number; readonly max: number };
  readonly collectorMaxVolts: number;
  /** Electric strength of the barrier, volts RMS: a test, not a working voltage. */
  readonly isolationVolts?: number;
}

const grade = (letter: string, min: number, max: number): OptocouplerRow => ({
  id: `817${letter.toLowerCase()}`, name: `817 class, grade ${letter === '' ? 'unmarked' : letter}`, basis: 'rated', source: { id: 'ds-opto-817' }, transfer: { min, max },
  testAmps: 0.005, ledVolts: { typical: 1.2, max: 1.4 }, collectorMaxVolts: 35, isolationVolts: 5000,
});

/** Optocouplers with a transistor output. */
export const OPTOCOUPLERS: readonly OptocouplerRow[] = [
  { id: '4n25', name: '4N25', basis: 'rated', source: { id: 'ds-opto-4n25' }, transfer: { min: 0.2 }, testAmps: 0.01, ledVolts: { typical: 1.2, max: 1.5 }, collectorMaxVolts: 30, note: 'Typically 70 %. Of the isolation one sheet prints 7500 V peak; LED drop typical.' },
  { id: '4n35', name: '4N35', basis: 'rated', source: { id: 'ds-opto-4n25' }, transfer: { min: 1 }, testAmps: 0.01, ledVolts: { typical: 1.2, max: 1.5 }, collectorMaxVolts: 30, note: 'LED drop and collector volts typical.' },
  grade('', 0.5, 6), grade('A', 0.8, 1.6), grade('B', 1.3, 2.6), grade('C', 2, 4), grade('D', 3, 6),
];

/** Share of the new minimum transfer ratio that is left after years, hot and at another LED current. Typical practice. */
export const OPTOCOUPLER_AGEING = 0.5;

/** The row with this id. Throws `InputError` when there is none. */
export function optocoupler(id: string): OptocouplerRow {
  const found = OPTOCOUPLERS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('optocoupler', id, { expected: OPTOCOUPLERS.map((row) => row.id).join(', ') });
  return found;
}

/** Volts left across an output that is pulled down well. */
export const SATURATED_VOLTS = 0.4;

/** Collector current to rely on for years at an LED current, amps: times the least new ratio, times what age leaves of it. LED amps 0 to 1. */
export function reliableSinkAmps(options: { readonly part: OptocouplerRow; readonly ledAmps: number; readonly ageing?: number }): number {
  const { part, ageing = OPTOCOUPLER_AGEING } = options;
  return requireNumber('ledAmps', options.ledAmps, { min: 0, max: 1 }) * part.transfer.min * requireNumber('ageing', ageing, { min: 0.05, max: 1 });
}

/** What an output must sink to hold a resistance to a rail down, amps. Volts 0 to 1000, ohms from 1. */
export function pullUpAmps(options: { readonly volts: number; readonly ohms: number }): number {
  return Math.max(0, requireNumber('volts', options.volts, { min: 0, max: 1000 }) - SATURATED_VOLTS) / requireNumber('ohms', options.ohms, { min: 1, max: 1e8 });
}

export interface OptocouplerDrive {
  /** LED resistor for the LED current wanted, ohms, and its heat. */
  readonly ohms: number;
  readonly watts: number;
  /** Least collector current that can be relied on for years. */
  readonly collectorAmps: number;
  /** Smallest pull-up that this current can hold down to 0.4 V. */
  readonly leastPullUpOhms: number;
}

/**
 * Drives an optocoupler: R = (V − Vf)/I with the typical drop, and what its output can be relied on to sink: LED
 * current times the lowest new ratio times 0.5 for ageing and temperature (`ageing`).
 * Throws `InputError` for a drive that does not exceed the LED's drop, or LED amps outside 0.1–60 mA.
 */
export function driveOptocoupler(options: {
  readonly part: OptocouplerRow;
  readonly driveVolts: number;
  readonly ledAmps: number;
  readonly pullUpVolts: number;
  readonly ageing?: number;
}): OptocouplerDrive {
  const { part } = options;
  const amps = requireNumber('ledAmps', options.ledAmps, { min: 1e-4, max: 0.06 });
  const drive = requireNumber('driveVolts', options.driveVolts, { max: 1000 });
  if (drive <= part.ledVolts.max) throw new InputError('driveVolts', drive, { expected: `more than the ${part.ledVolts.max} V that its LED may drop` });
  const pullUp = requireNumber('pullUpVolts', options.pullUpVolts, { min: 0.5, max: part.collectorMaxVolts });
  const collectorAmps = reliableSinkAmps(options);
  return {
    ohms: (drive - part.ledVolts.typical) / amps,
    watts: (drive - part.ledVolts.typical) * amps,
    collectorAmps,
    leastPullUpOhms: Math.max(0, pullUp - SATURATED_VOLTS) / collectorAmps,
  };
}
