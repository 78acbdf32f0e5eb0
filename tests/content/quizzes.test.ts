import { existsSync, globSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { lessons as outline } from '../../src/components/course.ts';
import { fillQuiz } from '../../src/components/quiz-fill.ts';
import { quizFaults, quizSchema } from '../../src/components/quiz-schema.ts';
import type { Question } from '../../src/widgets/quiz/question.ts';
import { typedFigures } from './checks/figures.ts';
import { lessonFiles, readJson, root } from './checks/lesson-files.ts';
import { unsafeChoices, type Duty } from './checks/hazards.ts';
import { quizFiguresOf } from './checks/worked-modules.ts';

const duties = readJson<Record<string, Duty>>('content/lesson-duties.json');
const sources = readJson<Record<string, unknown>>('content/sources.json');
const quizzes = globSync('content/quizzes/*.json', { cwd: root }).sort();

/** Every text of a question that a reader reads. */
const textsOf = (value: unknown): string[] =>
  typeof value === 'string' ? [value]
  : Array.isArray(value) ? value.flatMap(textsOf)
  : typeof value === 'object' && value !== null ? Object.entries(value).filter(([key]) => !['id', 'aims', 'sources', 'unit', 'writtenIn', 'kind', 'hazard'].includes(key)).flatMap(([, inner]) => textsOf(inner))
  : [];

it('finds quizzes to check', () => expect(quizzes.length).toBeGreaterThan(0));

it('belongs to every lesson', () => {
  for (const { slug } of lessonFiles) expect(existsSync(join(root, `content/quizzes/${slug}.json`)), slug).toBe(true);
});

describe.each(quizzes)('%s', (path) => {
  const slug = basename(path, '.json');
  const lesson = lessonFiles.find((file) => file.slug === slug);
  const { questions } = readJson<{ questions: readonly Question[] }>(path);
  const duty = duties[slug];

  it('has the form of a quiz', () => {
    expect(quizSchema.safeParse({ questions }).error?.issues ?? []).toEqual([]);
  });

  it('tests every aim of its lesson, and only those', () => {
    const aims = (lesson?.frontmatter['aims'] as { id: string }[] | undefined)?.map(({ id }) => id) ?? [];
    const touchesHazard = (outline.find((entry) => entry.slug === slug)?.hazards.length ?? 0) > 0;
    expect(quizFaults({ questions, aims, touchesHazard })).toEqual([]);
  });

  it('flags every choice that the course calls dangerous, with its harm, and every kind of harm that the outline names', () => {
    const flagged = unsafeChoices(questions);
    expect(flagged.map(({ harm }) => harm)).toEqual(expect.arrayContaining([...(outline.find((entry) => entry.slug === slug)?.hazards ?? [])]));
    for (const { id, harm } of duty?.hazards ?? []) {
      expect(flagged.filter(({ hazard }) => hazard === id).map((choice) => choice.harm), id).toContain(harm);
    }
  });

  it('takes every figure from its lesson’s module, or names its source', () => {
    const loose = questions
      .filter(({ sources: cited = [] }) => cited.length === 0)
      .flatMap((question) => textsOf(question).flatMap(typedFigures).map((figure) => `${question.id}: "${figure}"`));
    expect(loose).toEqual([]);
    expect(questions.flatMap(({ sources: cited = [] }) => cited).filter((id) => !(id in sources))).toEqual([]);
  });

  it('is filled by its lesson’s module, figure for figure', async () => {
    const filled = fillQuiz(questions, await quizFiguresOf(slug));
    expect(textsOf(filled).filter((text) => /\{\w+\}/.test(text))).toEqual([]);
  });

  it('lets no option give itself away by standing without a reason', () => {
    for (const question of questions) {
      if (question.kind !== 'one' && question.kind !== 'several') continue;
      for (const { text, reason } of question.options) expect(reason.split(' ').length, text).toBeGreaterThan(4);
    }
  });
});
