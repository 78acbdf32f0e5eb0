import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { lessonSchema } from '../../src/components/content-schemas.ts';
import { lessons as outline } from '../../src/components/course.ts';
import { restlessFigures } from './checks/figures.ts';
import { glossaryFaults, termsLinked, type Glossary } from './checks/glossary-use.ts';
import { lessonFiles, pageExists, readJson, root } from './checks/lesson-files.ts';
import { attribute, elements, mdxTree, walk, lineOf } from './checks/mdx-tree.ts';
import { wordsIn } from './checks/prose.ts';
import { readability } from './checks/readability.ts';

/** The course's own limit. A longer lesson is two lessons. */
const MOST_WORDS = 1700;
/** LIX 30 and less is easy reading, a daily newspaper is about 40; sentences you would say at the bench stay near the first. */
const MOST_LIX = 32;
const LONGEST_SENTENCE = 38;

/** A calculator of the outline is owed from the day that it can be opened. */
const isBuilt = (calculator: string): boolean => pageExists(`/calculators/${calculator}/`);

const glossary = readJson<Glossary>('content/glossary.json');
const sources = readJson<Record<string, unknown>>('content/sources.json');

it('finds lessons to check', () => expect(lessonFiles.length).toBeGreaterThan(0));

describe.each(lessonFiles.map((lesson) => [lesson.path, lesson] as const))('%s', (path, lesson) => {
  const place = outline.find(({ slug }) => slug === lesson.slug);
  const text = lesson.passages.filter(({ kind }) => kind === 'text').map((passage) => passage.text);
  const at = (line: number, fault: string): string => `${path}:${line}: ${fault}`;

  it('stands in the outline of the course under its number', () => expect(place?.number, lesson.slug).toBe(lesson.number));

  it('has the frontmatter of a lesson', () => {
    const checked = lessonSchema.safeParse(lesson.frontmatter);
    expect(checked.error?.issues ?? []).toEqual([]);
  });

  it(`has at most ${MOST_WORDS} words`, () => {
    const words = lesson.passages.reduce((sum, passage) => sum + wordsIn(passage.text).length, 0);
    expect(words).toBeLessThanOrEqual(MOST_WORDS);
  });

  it(`reads no harder than LIX ${MOST_LIX}, with no sentence over ${LONGEST_SENTENCE} words`, () => {
    const { lix, longestSentence } = readability(text);
    expect(lix).toBeLessThanOrEqual(MOST_LIX);
    expect(longestSentence.words, longestSentence.text).toBeLessThanOrEqual(LONGEST_SENTENCE);
  });

  it('quotes no figure that is neither computed nor tied to a source', () => {
    const loose = lesson.passages.flatMap((passage) => restlessFigures(passage).map((figure) => at(passage.line, `"${figure}" in “${passage.text.slice(0, 70)}…”`)));
    expect(loose).toEqual([]);
  });

  it('links each glossary term on its first use, once', () => {
    expect(glossaryFaults(lesson.source, glossary).map((fault) => `${path}, ${fault}`)).toEqual([]);
    expect(termsLinked(lesson.source).length).toBeGreaterThan(0);
  });

  it('cites sources that exist, and at least one', () => {
    const cited = elements(mdxTree(lesson.source), 'Source');
    expect(cited.length).toBeGreaterThan(0);
    expect(cited.filter((node) => !((attribute(node, 'id') ?? '') in sources)).map((node) => at(lineOf(node), `no source "${attribute(node, 'id')}"`))).toEqual([]);
  });

  it('links to nothing that is not there', () => {
    const links = [...walk(mdxTree(lesson.source))].filter(({ type }) => type === 'link');
    const dead = links.filter(({ url = '' }) => (url.startsWith('/') ? !pageExists(url) : !url.startsWith('#')));
    expect(dead.map((node) => at(lineOf(node), node.url ?? ''))).toEqual([]);
  });

  it('has a worked example, its takeaways, its quiz, and those calculators of the outline that are built', () => {
    const tree = mdxTree(lesson.source);
    for (const part of ['WorkedExample', 'Takeaways', 'Quiz']) expect(elements(tree, part).length, part).toBe(1);
    for (const calculator of place?.calculators.filter(isBuilt) ?? []) expect(elements(tree, 'Calculator').map((node) => attribute(node, 'name'))).toContain(calculator);
  });

  it('computes its figures in a module of its own', () => {
    expect(existsSync(join(root, 'src/components/worked', `${lesson.slug}.ts`))).toBe(true);
  });
});

describe('content/glossary.json', () => {
  const used = new Set(lessonFiles.flatMap(({ source }) => termsLinked(source)));

  it.each(Object.entries(glossary))('%s: one sentence, used in some lesson, and leading to terms that exist', (id, { meaning, see }) => {
    expect(meaning).toMatch(/^[^.!?]+(?:\.\d[^.!?]*)*[.]$/);
    expect(used.has(id), 'used by no lesson').toBe(true);
    expect(see.filter((other) => !(other in glossary))).toEqual([]);
  });
});
