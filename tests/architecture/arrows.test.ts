import { globSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/** Which folders of src each folder may import from, besides itself. Nothing else is allowed. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  compute: [],
  drawings: ['compute'],
  workbook: ['compute'],
  widgets: ['compute', 'drawings', 'workbook'],
  components: ['compute', 'drawings', 'workbook', 'widgets'],
  layouts: ['compute', 'drawings', 'workbook', 'widgets', 'components', 'styles'],
  pages: ['compute', 'drawings', 'workbook', 'widgets', 'components', 'layouts', 'styles'],
  styles: [],
};

const root = resolve(import.meta.dirname, '../..');
const src = join(root, 'src');

const importsOf = (file: string): string[] => {
  const text = readFileSync(file, 'utf8');
  // An Astro file's imports stand between its two fences; the rest is markup.
  const code = file.endsWith('.astro') ? (/^---\n([\s\S]*?)\n---/.exec(text)?.[1] ?? '') : text;
  return ts.preProcessFile(code, true, true).importedFiles.map((entry) => entry.fileName);
};

const files = globSync('**/*.{ts,tsx,astro}', { cwd: src }).map((name) => join(src, name));

describe('the arrows between the folders of src run one way', () => {
  it('finds files to check', () => expect(files.length).toBeGreaterThan(0));

  it.each(files.map((file) => [relative(root, file), file] as const))('%s', (_, file) => {
    const folder = relative(src, file).split('/')[0] ?? '';
    if (!(folder in MAY_IMPORT)) return; // files at the top of src belong to Astro
    const allowed = [folder, ...(MAY_IMPORT[folder] ?? [])];
    for (const name of importsOf(file)) {
      if (!name.startsWith('.')) {
        if (folder === 'compute') expect.fail(`compute depends on nothing, yet imports ${name}`);
        continue;
      }
      const target = relative(src, resolve(dirname(file), name));
      if (target.startsWith('..')) {
        expect(['compute', 'drawings', 'widgets'], `${name}: words and data reach this folder as arguments`).not.toContain(folder);
        continue;
      }
      expect(allowed, `import of ${name}`).toContain(target.split('/')[0]);
      if (folder === 'compute') expect(name, 'compute names its files in full, so that Node runs it as it is').toMatch(/\.ts$/);
    }
  });
});
