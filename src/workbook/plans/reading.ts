import { attempt, readChoice, readInstant, readNumber, readOptional, readText } from '../fields.ts';
import type { Outcome } from '../problem.ts';
import { climb, currentVersion } from '../schema-ladder.ts';
import type { SchemaLadder } from '../schema-ladder.ts';

export const READING_UNITS = ['V', 'A', 'Ω', 'W', 'Hz', '°C', 's', 'F'] as const;
export type ReadingUnit = (typeof READING_UNITS)[number];

/** What was held to the test point: the same ripple reads differently on each. */
export const METERS = ['dc', 'true-rms', 'averaging', 'oscilloscope', 'thermometer', 'other'] as const;
export type Meter = (typeof METERS)[number];

/** One value measured at the bench. A condition that nobody noted is absent, never assumed. */
export interface BenchReading {
  /** Name of the test point, as the bench sheet has it. */
  readonly point: string;
  /** In the SI unit beside it. */
  readonly value: number;
  readonly unit: ReadingUnit;
  readonly meter: Meter;
  /** RMS volts at the wall, measured at the time. */
  readonly mainsVolts?: number;
  readonly mainsHertz?: number;
  /** Air around the work. */
  readonly ambientCelsius?: number;
  readonly takenAt: string;
  readonly note?: string;
}

export interface ReadingRecord extends BenchReading {
  readonly id: string;
  readonly planId: string;
  readonly schemaVersion: number;
}

export const READING_LADDER: SchemaLadder = { what: 'bench reading', steps: [] };
export const READING_SCHEMA = currentVersion(READING_LADDER);

export const NOTE_CHARACTERS = 500;

const at = (place: string, name: string): string => (place === '' ? name : `${place}.${name}`);

/** Reads the fields of a reading; throws `InputError` naming the one that is wrong. */
export function readReading(place: string, fields: Readonly<Record<string, unknown>>): BenchReading {
  const number = (name: string, min: number, max: number) =>
    (value: unknown): number => readNumber(at(place, name), value, { min, max });
  return {
    point: readText(at(place, 'point'), fields['point'], { max: 80 }),
    value: number('value', -1e9, 1e9)(fields['value']),
    unit: readChoice(at(place, 'unit'), fields['unit'], READING_UNITS),
    meter: readChoice(at(place, 'meter'), fields['meter'], METERS),
    ...readOptional('mainsVolts', fields['mainsVolts'], number('mainsVolts', 0, 500)),
    ...readOptional('mainsHertz', fields['mainsHertz'], number('mainsHertz', 0, 1000)),
    ...readOptional('ambientCelsius', fields['ambientCelsius'], number('ambientCelsius', -50, 150)),
    takenAt: readInstant(at(place, 'takenAt'), fields['takenAt']),
    ...readOptional('note', fields['note'], (value) => readText(at(place, 'note'), value, { max: NOTE_CHARACTERS, empty: true })),
  };
}

/** Reads a stored reading. Never throws. */
export function readReadingRecord(value: unknown): Outcome<ReadingRecord> {
  const climbed = climb(value, READING_LADDER);
  if (!climbed.ok) return climbed;
  const stored = climbed.value;
  return attempt({
    at: '',
    kind: 'damaged',
    read: () => ({
      id: readText('id', stored['id'], { max: 64 }),
      planId: readText('planId', stored['planId'], { max: 64 }),
      schemaVersion: READING_SCHEMA,
      ...readReading('', stored),
    }),
  });
}
