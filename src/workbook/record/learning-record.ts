import { readBoolean, readInstant, readInteger, readList, readOptional, readText } from '../fields.ts';
import { currentVersion } from '../schema-ladder.ts';
import type { SchemaLadder } from '../schema-ladder.ts';

/**
 * What a reader did, as facts with their times. Everything else (the gate, misconceptions, what is due for review) is
 * worked out from these, so nothing is stored twice and a better rule needs no migration.
 */
export interface LearningRecord {
  readonly lessons: readonly LessonProgress[];
  readonly answers: readonly Answer[];
  readonly drills: readonly Drill[];
  readonly gateOpenings: readonly GateOpening[];
}

/** Where the reader is in one lesson. Its id is the lesson's own. */
export interface LessonProgress {
  readonly id: string;
  readonly openedAt: string;
  readonly seenAt: string;
  /** Anchor of the heading last read, to go on from. */
  readonly place?: string;
  readonly finishedAt?: string;
}

/** One question answered once. */
export interface Answer {
  readonly id: string;
  readonly lesson: string;
  readonly question: string;
  /** Which run through the quiz it belongs to: a quiz is passed or not as one run. */
  readonly sitting: string;
  readonly at: string;
  /** The options chosen, in their own words, in the order chosen where order is asked; for a numeric question the text entered. */
  readonly chosen: readonly string[];
  readonly correct: boolean;
  /** Those of `chosen` that should not have been. */
  readonly wrong: readonly string[];
  /** Those of `chosen` that could hurt someone or burn something. */
  readonly unsafe: readonly string[];
}

/** One fault-finding exercise. */
export interface Drill {
  readonly id: string;
  readonly drill: string;
  /** Which case of it: the seed or name that makes it again. */
  readonly case: string;
  readonly at: string;
  /** The cause the reader named. */
  readonly named: string;
  readonly correct: boolean;
  /** Readings taken before naming it. */
  readonly readingsTaken: number;
}

/** The safety gate opened by a teacher, by hand. */
export interface GateOpening {
  readonly id: string;
  readonly at: string;
  /** Whoever opened it, as they wish to be recorded. */
  readonly by: string;
}

export const EMPTY_RECORD: LearningRecord = { lessons: [], answers: [], drills: [], gateOpenings: [] };

/** The kinds of fact, which are also the stores they are kept in and the lists of an exported file. */
export const RECORD_KINDS = ['lessons', 'answers', 'drills', 'gateOpenings'] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];
export type Fact<Kind extends RecordKind> = LearningRecord[Kind][number];

export const RECORD_LADDERS: Record<RecordKind, SchemaLadder> = {
  lessons: { what: 'lesson progress', steps: [] },
  answers: { what: 'quiz answer', steps: [] },
  drills: { what: 'drill result', steps: [] },
  gateOpenings: { what: 'gate opening', steps: [] },
};

export const recordVersion = (kind: RecordKind): number => currentVersion(RECORD_LADDERS[kind]);

const NAME = { max: 100 };
/** Options are kept in their own words, so that a record still reads after a quiz was edited. */
const OPTION = { max: 400, empty: true };
const OPTIONS = 30;

type Fields = Readonly<Record<string, unknown>>;
const within = (place: string, name: string): string => (place === '' ? name : `${place}.${name}`);

/** Readers of one fact each; they throw `InputError` naming the place. */
export const FACT_READERS: { readonly [Kind in RecordKind]: (place: string, fields: Fields) => Fact<Kind> } = {
  lessons: (place, fields) => ({
    id: readText(within(place, 'id'), fields['id'], NAME),
    openedAt: readInstant(within(place, 'openedAt'), fields['openedAt']),
    seenAt: readInstant(within(place, 'seenAt'), fields['seenAt']),
    ...readOptional('place', fields['place'], (value) => readText(within(place, 'place'), value, NAME)),
    ...readOptional('finishedAt', fields['finishedAt'], (value) => readInstant(within(place, 'finishedAt'), value)),
  }),
  answers: (place, fields) => {
    const options = (name: string): readonly string[] =>
      readList(within(place, name), fields[name], OPTIONS, (at, value) => readText(at, value, OPTION));
    return {
      id: readText(within(place, 'id'), fields['id'], NAME),
      lesson: readText(within(place, 'lesson'), fields['lesson'], NAME),
      question: readText(within(place, 'question'), fields['question'], NAME),
      sitting: readText(within(place, 'sitting'), fields['sitting'], NAME),
      at: readInstant(within(place, 'at'), fields['at']),
      chosen: options('chosen'),
      correct: readBoolean(within(place, 'correct'), fields['correct']),
      wrong: options('wrong'),
      unsafe: options('unsafe'),
    };
  },
  drills: (place, fields) => ({
    id: readText(within(place, 'id'), fields['id'], NAME),
    drill: readText(within(place, 'drill'), fields['drill'], NAME),
    case: readText(within(place, 'case'), fields['case'], NAME),
    at: readInstant(within(place, 'at'), fields['at']),
    named: readText(within(place, 'named'), fields['named'], { max: 200, empty: true }),
    correct: readBoolean(within(place, 'correct'), fields['correct']),
    readingsTaken: readInteger(within(place, 'readingsTaken'), fields['readingsTaken'], { min: 0, max: 1000 }),
  }),
  gateOpenings: (place, fields) => ({
    id: readText(within(place, 'id'), fields['id'], NAME),
    at: readInstant(within(place, 'at'), fields['at']),
    by: readText(within(place, 'by'), fields['by'], NAME),
  }),
};
