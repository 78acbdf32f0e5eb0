import { expect, it } from 'vitest';
import { SLEEVE_LOOP, SleeveLoop } from '../../src/drawings/sleeve-loop.tsx';
import { markup } from './markup.ts';

const drawn = markup(SleeveLoop({ id: 'x', loopText: '4.6 A RMS', pathText: '0.6 Ω' }));

it('closes the loop where it began', () => {
  const [, start = ''] = /^M(\d+ \d+)H/.exec(SLEEVE_LOOP) ?? [];
  const [x, y] = start.split(' ');
  expect(SLEEVE_LOOP.endsWith(`H${x}V${y}`)).toBe(true);
});

it('lights it and says it in words, with its figures', () => {
  expect(drawn.match(/class="fault"/g)).toHaveLength(1);
  for (const text of ['4.6 A RMS', '0.6 Ω', 'cable’s sleeve to the negative']) expect(drawn).toContain(text);
});
