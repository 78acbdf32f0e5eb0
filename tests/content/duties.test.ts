import { describe, expect, it } from 'vitest';
import { lessons as outline } from '../../src/components/course.ts';
import { hazardsShown, type Duty } from './checks/hazards.ts';
import { lessonFiles, readJson } from './checks/lesson-files.ts';

const duties = readJson<Record<string, Duty>>('content/lesson-duties.json');
const cautions = readJson<Record<string, unknown>>('content/cautions.json');

describe('content/lesson-duties.json', () => {
  it('says for every lesson of the outline what it owes, and for no other', () => {
    expect(Object.keys(duties).sort()).toEqual(outline.map(({ slug }) => slug).sort());
  });

  it.each(outline.map((lesson) => [lesson.slug, lesson] as const))('%s: cautions that exist, hazard ids of its own, and no harm that the outline does not name', (slug, lesson) => {
    const duty = duties[slug] as Duty;
    expect(duty.cautions.filter((id) => !(id in cautions))).toEqual([]);
    for (const { id, harm } of duty.hazards) expect(lesson.hazards, id).toContain(harm);
    const elsewhere = Object.entries(duties).filter(([other]) => other !== slug).flatMap(([, { hazards }]) => hazards.map(({ id }) => id));
    expect(duty.hazards.filter(({ id }) => elsewhere.includes(id))).toEqual([]);
  });
});

describe.each(lessonFiles.map((lesson) => [lesson.path, lesson] as const))('%s', (_, lesson) => {
  const duty = duties[lesson.slug] as Duty;
  const { shown, folded } = hazardsShown(lesson.source);

  it('carries the cautions it owes', () => {
    expect(lesson.frontmatter['cautions']).toEqual(expect.arrayContaining([...duty.cautions]));
  });

  it('shows the hazards it owes, each with its harm, and names those it shows', () => {
    for (const { id, harm } of duty.hazards) expect(shown).toContainEqual({ id, harm });
    expect(shown.map(({ id }) => id).sort()).toEqual([...(lesson.frontmatter['hazards'] as string[])].sort());
  });

  it('folds none of them', () => expect(folded).toEqual([]));
});
