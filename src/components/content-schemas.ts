import { z } from 'astro/zod';

/** Cautions that stand on a page; the words are in content/cautions.json. */
export const CAUTION_IDS = ['kills', 'codes', 'figures', 'approval', 'retest', 'charge'] as const;
export type CautionId = (typeof CAUTION_IDS)[number];

const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'kebab-case');
const sentence = z.string().min(3);

/** Frontmatter of a lesson. Number, title and unit are in content/course.json and are not repeated. */
export const lessonSchema = z.strictObject({
  /** One or two sentences under the title: what the reader is about to see happen. */
  standfirst: sentence.optional(),
  /** What a reader can do afterwards; each is named by some question of the quiz. */
  aims: z.array(z.strictObject({ id: slug, text: sentence })).min(2).max(6),
  cautions: z.array(z.enum(CAUTION_IDS)).default([]),
  /** Ids of the hazards that the lesson shows; content/lesson-duties.json says which it owes. */
  hazards: z.array(slug).default([]),
  minutes: z.number().int().min(5).max(90).optional(),
  /** For whoever teaches the lesson. */
  teacher: z.strictObject({
    minutes: z.number().int().min(10).max(180),
    demonstration: sentence,
    misconception: sentence,
    question: sentence,
    /** What a pass looks like. */
    pass: sentence,
  }),
});

/** A trade term: one plain sentence. */
export const glossarySchema = z.strictObject({
  term: z.string().min(1),
  meaning: sentence,
  /** Other terms worth reading beside it. */
  see: z.array(slug).default([]),
  /** Other forms of the word that a text uses. */
  forms: z.array(z.string().min(2)).optional(),
});

/** Where figures and rules come from. */
export const sourceSchema = z.strictObject({
  title: z.string().min(3),
  /** Who publishes it: a standards body, "component data sheet", "this site's own solver". */
  publisher: z.string().min(2),
  kind: z.enum(['standard', 'data sheet', 'textbook', 'article', 'computed', 'practice']),
  /** What this site takes from it. */
  usedFor: sentence,
  /** `document`: the figure was read in it; `excerpt`: in a copy or a quotation; `unread`: check it there before relying on it. */
  read: z.enum(['document', 'excerpt', 'unread', 'own']),
  year: z.number().int().min(1900).max(2100).optional(),
  url: z.url().optional(),
});

/** One of the shop's amps. Quantities in SI units. */
export const ampSchema = z.strictObject({
  name: z.string(),
  what: sentence,
  mains: z.strictObject({ volts: z.number().positive(), hertz: z.number().positive() }),
  protectiveEarth: z.enum(['verified', 'not verified', 'absent']),
  chassisAirCelsius: z.number(),
  windings: z.array(
    z.strictObject({
      id: slug,
      name: z.string(),
      kind: z.enum(['spare', 'heater', 'rectifier-valve', 'high-voltage']),
      volts: z.number().positive(),
      centreTapped: z.boolean().default(false),
      ratedAmps: z.number().positive().optional(),
      loadAmps: z.number().nonnegative().optional(),
      openCircuitVolts: z.number().positive().optional(),
      ohms: z.number().positive().optional(),
      grounding: z.enum(['none', 'centre-tap', 'artificial-centre', 'one-leg', 'elevated', 'high-voltage']).optional(),
    }),
  ),
  highVolts: z.number().positive(),
  room: sentence,
});

/** What a customer of the shop asked for. */
export const jobSchema = z.strictObject({
  amp: slug,
  title: z.string(),
  request: sentence,
  railVolts: z.number().positive(),
  loads: z
    .array(
      z.strictObject({
        kind: z.enum(['relay', 'indicator', 'heater', 'optocoupler', 'other']),
        name: z.string(),
        count: z.number().int().positive(),
        volts: z.number().positive().optional(),
        amps: z.number().positive().optional(),
        ohms: z.number().positive().optional(),
      }),
    )
    .min(1),
});

/** A calculator, its question, and the part of the job it belongs to. */
export const calculatorSchema = z.strictObject({
  order: z.number().int(),
  title: z.string(),
  question: sentence,
  stage: z.enum(['load', 'supply', 'ground', 'prove']),
});
