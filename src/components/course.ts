/** The course as one value, for pages and tests: content/course.json, typed. */
import outline from '../../content/course.json';

/** One lesson as the outline of the course names it, written or not. */
export interface CourseLesson {
  readonly number: number;
  readonly slug: string;
  readonly title: string;
  readonly summary: string;
  /** Calculators that the lesson embeds, by slug. */
  readonly calculators: readonly string[];
  /** Harms that its quiz must flag a choice for. */
  readonly hazards: readonly string[];
  /** Part of the safety gate. */
  readonly gate?: boolean;
  /** Bench lab that follows the lesson. */
  readonly lab?: string;
}

export interface CourseUnit {
  readonly number: number;
  readonly title: string;
  readonly lessons: readonly CourseLesson[];
}

export const units: readonly CourseUnit[] = outline.units;

/** All lessons in the order they are taken. */
export const lessons: readonly CourseLesson[] = units.flatMap((unit) => unit.lessons);

/** Where a lesson stands; throws for a file of content/lessons that the outline does not name. */
export function placeOfLesson(slug: string): { readonly lesson: CourseLesson; readonly unit: CourseUnit } {
  for (const unit of units) {
    const lesson = unit.lessons.find((entry) => entry.slug === slug);
    if (lesson !== undefined) return { lesson, unit };
  }
  throw new Error(`content/lessons has "${slug}", which content/course.json does not name`);
}

/**
 * Nearest lessons before and after one, among those that are written.
 * `written` holds their slugs.
 */
export function neighbours(slug: string, written: ReadonlySet<string>): { readonly before?: CourseLesson; readonly after?: CourseLesson } {
  const at = lessons.findIndex((entry) => entry.slug === slug);
  const before = lessons.slice(0, Math.max(at, 0)).findLast((entry) => written.has(entry.slug));
  const after = lessons.slice(at + 1).find((entry) => written.has(entry.slug));
  return { ...(before && { before }), ...(after && { after }) };
}
