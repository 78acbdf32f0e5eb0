import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const css = readFileSync(resolve(import.meta.dirname, '../../src/styles/tokens.css'), 'utf8');
const screen = css.slice(0, css.indexOf('@media print'));

type Theme = 'light' | 'dark';

/** Colours of one theme by token name, references followed. */
const tokens = (theme: Theme): Record<string, string> => {
  const found: Record<string, string> = {};
  for (const [, name = '', value = ''] of screen.matchAll(/--([\w-]+):\s*([^;]+);/g)) {
    const pair = /^light-dark\((#[0-9a-f]{6}),\s*(#[0-9a-f]{6})\)$/.exec(value);
    const alias = /^var\(--([\w-]+)\)$/.exec(value);
    if (pair) found[name] = (theme === 'light' ? pair[1] : pair[2]) ?? '';
    else if (/^#[0-9a-f]{6}$/.test(value)) found[name] = value;
    else if (alias) found[name] = found[alias[1] ?? ''] ?? '';
  }
  return found;
};

/** Relative luminance and contrast ratio of WCAG 2.2. */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (one: string, other: string): number => {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
};

/** Text on each ground it is set on: 4.5 to 1. */
const TEXT: Record<string, readonly string[]> = {
  ink: ['paper', 'sheet', 'copper-wash', 'volts-wash', 'hazard-sheet', 'selection'],
  'ink-soft': ['paper', 'sheet', 'copper-wash', 'volts-wash'],
  copper: ['paper', 'sheet', 'copper-wash'],
  volts: ['paper', 'sheet', 'volts-wash'],
  within: ['paper', 'sheet', 'copper-wash'],
  marginal: ['paper', 'sheet', 'copper-wash'],
  outside: ['paper', 'sheet', 'copper-wash', 'hazard-sheet'],
  'not-assessed': ['paper', 'sheet', 'copper-wash'],
  paper: ['ink', 'copper'],
  'signal-ink': ['signal'],
};

/** Outlines, focus rings and drawn lines: 3 to 1. */
const LINES: Record<string, readonly string[]> = {
  edge: ['paper', 'sheet'],
  focus: ['paper', 'sheet', 'copper-wash'],
  copper: ['volts-wash'],
  volts: ['copper-wash'],
  'hazard-edge': ['paper', 'hazard-sheet'],
};

const pairs = (table: Record<string, readonly string[]>): [string, string][] =>
  Object.entries(table).flatMap(([front, grounds]) => grounds.map((ground): [string, string] => [front, ground]));

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  const colours = tokens(theme);
  const between = (front: string, ground: string): number => contrast(colours[front] ?? '', colours[ground] ?? '');

  it.each(pairs(TEXT))('text in %s on %s reads well', (front, ground) => {
    expect(between(front, ground)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(pairs(LINES))('a line in %s on %s can be seen', (front, ground) => {
    expect(between(front, ground)).toBeGreaterThanOrEqual(3);
  });
});

describe('the measure itself', () => {
  it('gives the ratios of the standard for black, white and mid grey', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
});
