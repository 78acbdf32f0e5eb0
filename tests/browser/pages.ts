import { globSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

const dist = resolve(import.meta.dirname, '../../dist');

/** Paths of all pages of the built site, relative to its root, ending in a slash; the 404 page by its file name. */
export const builtPages = (): string[] =>
  globSync('**/*.html', { cwd: dist })
    .map((file) => (file.endsWith('index.html') ? `${dirname(file)}/`.replace(/^\.\//, '') : file))
    .sort();
