import { describe, expect, it } from 'vitest';
import { HighVoltageLine } from '../../src/drawings/high-voltage-line.tsx';
import { RelayBarrier } from '../../src/drawings/relay-barrier.tsx';
import { ResidualSum } from '../../src/drawings/residual-sum.tsx';
import { markup } from './markup.ts';

const readings = { first: '396 V', second: '1 V', preamp: '2 V' };
const barrier = { highVolts: '470 V', anodeVolts: '940 V', printed: 'a test: 1 kV', jackVolts: '469 V' };

const texts = (svg: string): string[] => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text);
const described = (svg: string): string => /<desc[^>]*>([^<]*)<\/desc>/.exec(svg)?.[1] ?? '';
const width = (svg: string): number => Number(/viewBox="0 0 (\d+)/.exec(svg)?.[1]);
/** Straight pieces of a path, as from [x, y] to [x, y]. */
const corners = (svg: string, kind: string): (readonly [number, number])[] => {
  const d = new RegExp(`<path class="${kind}" d="([^"]*)"`).exec(svg)?.[1] ?? '';
  let at: [number, number] = [0, 0];
  return [...d.matchAll(/([MHV])([\d.]+)(?: ([\d.]+))?/g)].map(([, command, a = '', b = '']) => {
    at = command === 'H' ? [Number(a), at[1]] : command === 'V' ? [at[0], Number(a)] : [Number(a), Number(b)];
    return at;
  });
};

describe.each([
  ['the high-voltage line', markup(HighVoltageLine({ id: 'a', readings })), Object.values(readings)],
  ['the residual sum', markup(ResidualSum({ id: 'b', handAmps: '225 mA', seenAmps: '0 A' })), ['225 mA', '0 A']],
  ['the relay’s barrier', markup(RelayBarrier({ id: 'c', ...barrier })), ['470 V', 'a test: 1 kV', '469 V']],
])('%s', (_, svg, figures) => {
  it('shows every figure it is given, and says it to those who do not see it', () => {
    for (const figure of figures) {
      expect(texts(svg), figure).toContain(figure);
      expect(described(svg), figure).toContain(figure);
    }
  });

  it('has a name, and fits a phone without shrinking its words away', () => {
    expect(svg).toMatch(/<title[^>]*>[^<]{10,}<\/title>/);
    expect(width(svg)).toBeLessThanOrEqual(400);
  });
});

describe('the path through a hand', () => {
  it('is one closed loop, all of it behind the transformer', () => {
    const loop = corners(markup(ResidualSum({ id: 'b', handAmps: '225 mA', seenAmps: '0 A' })), 'fault');
    expect(loop[0]).toEqual(loop.at(-1));
    // The iron stands at 188; line and neutral are to its left.
    for (const [x] of loop) expect(x).toBeGreaterThan(188);
  });
});

describe('the path through the barrier', () => {
  it('runs from the contact, across the barrier and past the coil to the jack', () => {
    const svg = markup(RelayBarrier({ id: 'c', ...barrier }));
    const xs = corners(svg, 'fault').map(([x]) => x);
    expect(Math.min(...xs)).toBeLessThan(138);
    expect(Math.max(...xs)).toBeGreaterThan(300);
    expect([...xs]).toEqual([...xs].sort((a, b) => a - b));
  });
});
