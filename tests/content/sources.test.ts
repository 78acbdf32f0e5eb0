import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sourceSchema } from '../../src/components/content-schemas.ts';
import { readJson, root } from './checks/lesson-files.ts';

const sources = readJson<Record<string, unknown>>('content/sources.json');

/** Ids that stand in the code as the source of a figure, with the files they stand in. */
const cited = new Map<string, string[]>();
for (const path of globSync('src/**/*.{ts,tsx}', { cwd: root })) {
  for (const [, id = ''] of readFileSync(join(root, path), 'utf8').matchAll(/[sS]ource: (?:Source = )?\{ id: '([\w-]+)'/g)) cited.set(id, [...(cited.get(id) ?? []), path]);
}

describe('content/sources.json', () => {
  it.each(Object.entries(sources))('%s has the form of a source', (_, source) => {
    expect(sourceSchema.safeParse(source).error?.issues ?? []).toEqual([]);
  });

  it('finds sources named in the code', () => expect(cited.size).toBeGreaterThan(5));

  it.each([...cited])('%s, named in the code, is there', (id, paths) => expect(id in sources, paths.join(', ')).toBe(true));

  it('keeps its entries in order, so that two additions seldom meet', () => {
    expect(Object.keys(sources)).toEqual(Object.keys(sources).sort());
  });
});
