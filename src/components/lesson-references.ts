/** One use of a lesson part that names something by id. */
export interface LessonReference {
  readonly part: 'Term' | 'Source' | 'Caution';
  readonly id: string;
  /** Line of the file, the first being 1. */
  readonly line: number;
}

const PATTERN = /<(Term|Source|Caution)\b[^>]*?\bid=(?:"([^"]*)"|'([^']*)'|\{['"]([^'"]*)['"]\})/g;

/** Comments and code shown as code are not uses; they are blanked in place, so that lines keep their numbers. */
const blank = (text: string): string => text.replace(/[^\n]/g, ' ');
const withoutCode = (mdx: string): string =>
  mdx.replace(/^(```+|~~~+)[\s\S]*?^\1/gm, blank).replace(/\{\/\*[\s\S]*?\*\/\}/g, blank).replace(/`[^`\n]*`/g, blank);

/** Every term, source and caution that a lesson's text names, in the order of its text. */
export function lessonReferences(mdx: string): LessonReference[] {
  const text = withoutCode(mdx);
  return [...text.matchAll(PATTERN)].map((match) => ({
    part: match[1] as LessonReference['part'],
    id: match[2] ?? match[3] ?? match[4] ?? '',
    line: text.slice(0, match.index).split('\n').length,
  }));
}

/** Ids of the sources that a lesson cites, each once, numbered by first use. */
export const citedSources = (references: readonly LessonReference[]): string[] => [
  ...new Set(references.filter(({ part }) => part === 'Source').map(({ id }) => id)),
];

/**
 * Throws an error that names file and line for the first reference to something that does not exist.
 * `known` holds the ids there are for each part.
 */
export function requireKnownReferences(options: {
  readonly file: string;
  readonly references: readonly LessonReference[];
  readonly known: Readonly<Record<LessonReference['part'], ReadonlySet<string>>>;
}): void {
  const { file, references, known } = options;
  for (const { part, id, line } of references) {
    if (!known[part].has(id)) throw new Error(`${file}:${line}: <${part} id="${id}"> names nothing that exists`);
  }
}
