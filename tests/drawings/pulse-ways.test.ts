import { describe, expect, it } from 'vitest';
import { PULSE_WAYS, PulseWays, type PulseWaysProps } from '../../src/drawings/pulse-ways.tsx';
import { markup } from './markup.ts';

const drawn = (way: PulseWaysProps['way']): string => markup(PulseWays({ id: 'x', way, pulseText: '3.5 A', stageText: '19 mV at the peak' }));

describe('the drawing of the pulses’ way', () => {
  it.each(['along', 'apart'] as const)('%s: a closed loop, lit, said in words with its figures', (way) => {
    const [, x, y] = /^M(\d+) (\d+)H/.exec(PULSE_WAYS[way]) ?? [];
    expect(PULSE_WAYS[way].endsWith(`H${x}V${y}`)).toBe(true);
    expect(drawn(way).match(/class="path"/g)).toHaveLength(1);
    for (const text of ['3.5 A', '19 mV at the peak']) expect(drawn(way)).toContain(text);
  });

  it('passes the first stage’s ground in one and not in the other', () => {
    // The stage stands on the bus at x 214, y 152.
    expect(PULSE_WAYS.along).toContain('V152H');
    expect(PULSE_WAYS.apart).not.toContain('152');
  });
});
