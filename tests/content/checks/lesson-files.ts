import { existsSync, globSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { frontmatterOf } from './mdx-tree.ts';
import { passagesOf, type Passage } from './prose.ts';

export const root = resolve(import.meta.dirname, '../../..');
export const readJson = <T>(path: string): T => JSON.parse(readFileSync(join(root, path), 'utf8')) as T;

export interface LessonFile {
  /** From the top of the project, as an editor opens it. */
  readonly path: string;
  /** The number in the file's name. */
  readonly number: number;
  readonly slug: string;
  readonly source: string;
  readonly frontmatter: Record<string, unknown>;
  readonly passages: readonly Passage[];
}

/** A lesson's text, as if it stood in a file of this name. */
export function lessonFile(path: string, source: string): LessonFile {
  const [, number = '', slug = ''] = /^(\d+)-(.*)\.mdx$/.exec(basename(path)) ?? [];
  return { path, number: Number(number), slug, source, frontmatter: frontmatterOf(source), passages: passagesOf(source) };
}

/** Every lesson written so far, in the course's order. */
export const lessonFiles: readonly LessonFile[] = globSync('content/lessons/*.mdx', { cwd: root })
  .sort()
  .map((path) => lessonFile(path, readFileSync(join(root, path), 'utf8')));

/** Pages of the site that a lesson may link to, below its root: those that are built from what is there. */
export function pageExists(address: string): boolean {
  const path = address.replace(/[#?].*$/, '').replace(/^\/|\/$/g, '');
  const [section, slug, ...rest] = path.split('/');
  if (section === 'course' && slug !== undefined && rest.length === 0) return lessonFiles.some((lesson) => lesson.slug === slug);
  if (section === 'calculators' && slug !== undefined && rest.length === 0) return existsSync(join(root, 'src/widgets', slug));
  const page = join(root, 'src/pages', path);
  return existsSync(`${page}.astro`) || existsSync(join(page, 'index.astro'));
}
