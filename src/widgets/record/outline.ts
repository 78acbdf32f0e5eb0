import type { CourseOutline } from '../../workbook/record/printable.ts';

/** A lesson as the page of the record names it. */
export interface RecordLesson {
  readonly slug: string;
  readonly number: number;
  readonly title: string;
  readonly questions: readonly { readonly id: string; readonly ask: string }[];
}

/** The course as the record's rules need it. */
export const outlineOf = (lessons: readonly RecordLesson[]): CourseOutline => ({
  lessons: lessons.map(({ slug, title, questions }) => ({ id: slug, title, quiz: { lesson: slug, questions: questions.map(({ id }) => id) } })),
});

/** A question that the record speaks of: what it asks and where it stands, from the site's root. */
export function questionOf(
  lessons: readonly RecordLesson[],
  { lesson, question }: { readonly lesson: string; readonly question: string },
): { readonly ask: string; readonly title: string; readonly path: string } {
  const found = lessons.find(({ slug }) => slug === lesson);
  return {
    ask: found?.questions.find(({ id }) => id === question)?.ask ?? question,
    title: found === undefined ? lesson : `Lesson ${found.number}, ${found.title}`,
    path: `course/${lesson}/#question-${question}`,
  };
}
