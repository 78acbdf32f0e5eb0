import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const scripts = (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> }).scripts;
const NPM_OWN = ['ci', 'install', 'audit'];

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  const text = readFileSync(join(root, name), 'utf8');

  it('names only commands that exist', () => {
    const commands = [...text.matchAll(/npm (?:run )?([a-z][\w:-]*)/g)].map((match) => match[1] ?? '');
    expect(commands.length).toBeGreaterThan(0);
    for (const command of commands) expect([...Object.keys(scripts), ...NPM_OWN]).toContain(command);
  });

  it('names only paths that exist', () => {
    // A path in these documents stands in backticks and begins at the top level.
    const paths = [...text.matchAll(/`((?:src|content|tests|public|\.config|\.ci)\/[^`\s*<>]*)`/g)].map((match) => match[1] ?? '');
    for (const path of paths) expect(existsSync(join(root, path)), path).toBe(true);
  });
});
