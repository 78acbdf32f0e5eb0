import { z } from 'astro/zod';
import { UNITS, type Unit } from '../compute/quantity.ts';
import type { Question } from '../widgets/quiz/question.ts';

const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'kebab-case');
const sentence = z.string().min(3);
const unsafe = z.strictObject({
  harm: z.enum(['shock', 'fire', 'damage', 'noise']),
  consequence: sentence,
  /** The hazard of the lesson that this choice courts, where it is one of them. */
  hazard: slug.optional(),
});
const option = z
  .strictObject({ text: z.string().min(1), reason: sentence, correct: z.boolean().optional(), unsafe: unsafe.optional() })
  .refine((value) => !(value.correct && value.unsafe), 'an unsafe option cannot be correct');
const asked = { id: slug, aims: z.array(slug).min(1), ask: sentence, sources: z.array(slug).optional() };

const question = z.discriminatedUnion('kind', [
  z
    .strictObject({ kind: z.literal('one'), ...asked, options: z.array(option).min(2).max(6) })
    .refine(({ options }) => options.filter(({ correct }) => correct).length === 1, 'exactly one option is correct'),
  z
    .strictObject({ kind: z.literal('several'), ...asked, options: z.array(option).min(3).max(8) })
    .refine(({ options }) => options.some(({ correct }) => correct), 'at least one option is correct')
    .refine(({ options }) => options.some(({ correct }) => !correct), 'at least one option is wrong'),
  z
    .strictObject({
      kind: z.literal('order'),
      ...asked,
      steps: z.array(z.string().min(3)).min(3).max(8),
      reason: sentence,
      unsafe: unsafe.extend({ before: z.tuple([z.string(), z.string()]) }).optional(),
    })
    .refine(({ steps }) => new Set(steps).size === steps.length, 'each step is written once')
    .refine(
      ({ steps, unsafe: harm }) => harm === undefined || (harm.before.every((step) => steps.includes(step)) && steps.indexOf(harm.before[0]) > steps.indexOf(harm.before[1])),
      '"before" names two of the steps, the one that must not come first, then the one that must precede it',
    ),
  z.strictObject({
    kind: z.literal('numeric'),
    ...asked,
    unit: z.custom<Unit>((value) => typeof value === 'string' && value in UNITS, 'a unit of src/compute/quantity'),
    writtenIn: z.string().min(1).optional(),
    tolerance: z.number().min(0.005).max(0.2),
    reason: sentence,
  }),
]) satisfies z.ZodType<Question>;

/** The quiz of one lesson: a file of content/quizzes named like the lesson. */
export const quizSchema = z
  .strictObject({ questions: z.array(question).min(5).max(8) })
  .refine(({ questions }) => new Set(questions.map(({ id }) => id)).size === questions.length, 'question ids are unique');

export type Quiz = z.infer<typeof quizSchema>;

/**
 * What is wrong with a quiz as the quiz of its lesson, in words; empty when nothing is.
 * The schema has already held each question to its own form.
 */
export function quizFaults(options: {
  readonly questions: readonly Question[];
  readonly aims: readonly string[];
  readonly touchesHazard: boolean;
}): string[] {
  const { questions, aims, touchesHazard } = options;
  const tested = new Set(questions.flatMap((entry) => entry.aims));
  const faults = [
    ...aims.filter((aim) => !tested.has(aim)).map((aim) => `no question tests the aim "${aim}"`),
    ...[...tested].filter((aim) => !aims.includes(aim)).map((aim) => `"${aim}" is not an aim of the lesson`),
  ];
  const flagged = questions.some((entry) =>
    entry.kind === 'one' || entry.kind === 'several' ? entry.options.some(({ unsafe: harm }) => harm) : entry.kind === 'order' && entry.unsafe,
  );
  if (touchesHazard && !flagged) faults.push('the lesson touches a hazard, yet no option is flagged as unsafe');
  return faults;
}
