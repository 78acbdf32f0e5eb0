import { describe, expect, it } from 'vitest';
import { ChargingLoopSheet } from '../../src/drawings/charging-loop-sheet.tsx';
import { markup } from './markup.ts';

const plan = { id: 'x', rectifierText: 'bridge', reservoirText: '4700 µF', loadText: '470 mA', pulseText: '2.9 A', dropText: '15 mV' };
const drawn = (wiring: 'shared' | 'own'): string => markup(ChargingLoopSheet({ ...plan, wiring }));
/** Horizontal runs of the lit way, as their heights and ends. */
const lit = (text: string): string => /class="path" d="([^"]+)"/.exec(text)?.[1] ?? '';

describe('the charging loop', () => {
  it.each(['shared', 'own'] as const)('is labelled with the case’s own figures and told in words, %s', (wiring) => {
    const text = drawn(wiring);
    for (const word of ['bridge', '4700 µF', '470 mA', '2.9 A', '15 mV']) expect(text).toContain(`>${word}<`);
    expect(text).toContain('aria-labelledby="x-title"');
    expect(/<desc[^>]*>([^<]+)/.exec(text)?.[1]).toContain('2.9 A');
  });

  it('goes round by the star only where the wire is shared', () => {
    expect(lit(drawn('shared'))).toContain('H430');
    expect(lit(drawn('own'))).not.toContain('H430');
    expect(drawn('shared')).toContain('grounded on');
    expect(drawn('own')).toContain('a way of their own');
  });
});
