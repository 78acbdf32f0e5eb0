import { describe, expect, it } from 'vitest';
import { solveGrounding, UNCONNECTED, type GroundingJob } from '../../src/compute/index.ts';
import { BRIDGE, FAULT_LOOPS, GroundPaths, type WindingGround } from '../../src/drawings/ground-paths.tsx';
import { markup } from './markup.ts';

type Point = readonly [number, number];

function pieces(path: string): readonly (readonly [Point, Point])[] {
  const found: (readonly [Point, Point])[] = [];
  let at: Point = [0, 0];
  for (const [, command = '', rest = ''] of path.matchAll(/([MHV])([^MHV]*)/g)) {
    const numbers = rest.trim().split(' ').map(Number);
    const next: Point = command === 'H' ? [numbers[0] ?? 0, at[1]] : command === 'V' ? [at[0], numbers[0] ?? 0] : [numbers[0] ?? 0, numbers[1] ?? 0];
    if (command !== 'M') found.push([at, next]);
    at = next;
  }
  return found;
}

/** Runs upwards through a point, downwards, or not through it. */
const runs = (path: string, [x, y]: Point): 'up' | 'down' | undefined => {
  const hit = pieces(path).find(([[x1, y1], [x2, y2]]) => x1 === x && x2 === x && y > Math.min(y1, y2) && y < Math.max(y1, y2));
  return hit === undefined ? undefined : hit[1][1] < hit[0][1] ? 'up' : 'down';
};

const jobOf = (ground: WindingGround): GroundingJob => ({
  hertz: 50,
  mainsVolts: 230,
  loadOhms: 30,
  supply: {
    kind: 'winding', windingKind: 'low-voltage', topology: 'bridge', openCircuitVolts: 16, ohms: 0.5, hasCentreTap: ground === 'tap',
    diode: { saturationAmps: 1.46e-7, emission: 1.95, ohms: 0.009 }, reservoir: { farads: 4700e-6, ohms: 0.05 },
  },
  connections: {
    ...UNCONNECTED,
    winding: ground === 'tap' ? { kind: 'centre-tap' } : { kind: 'one-leg', leg: ground },
    rail: { kind: 'bonded', pole: 'negative' },
  },
});

describe.each(Object.keys(FAULT_LOOPS) as WindingGround[])('the drawing of two grounds, one of them at the %s of the winding', (ground) => {
  const loops = FAULT_LOOPS[ground];

  it('leads the current through those diodes that carry it in the solved circuit, and no others, upwards', () => {
    const { branches } = solveGrounding(jobOf(ground));
    for (const { branch, at } of BRIDGE) {
      const solved = branches.find(({ id }) => id === branch);
      // A charging pulse is a few amps at most; what goes through the chassis is many times that.
      expect(loops.some((loop) => runs(loop, at) === 'up'), branch).toBe((solved?.rmsAmps ?? 0) > 10);
      expect(loops.some((loop) => runs(loop, at) === 'down'), branch).toBe(false);
    }
  });

  it('closes each loop where it began', () => {
    for (const loop of loops) {
      const parts = pieces(loop);
      expect(parts.at(-1)?.[1]).toEqual(parts[0]?.[0]);
    }
  });

  it('says in words where it flows and how much, and fades the diodes that carry none of it', () => {
    const drawn = markup(GroundPaths({ id: 'x', windingGround: ground, isNegativeGrounded: true, windingText: '16 V', railText: '18.8 V', faultText: '22 A RMS' }));
    for (const text of ['16 V', '18.8 V', '22 A RMS', 'Joined to the chassis: the rail’s negative and']) expect(drawn).toContain(text);
    expect(drawn.match(/class="fault"/g)).toHaveLength(loops.length);
    expect(drawn.match(/class="idle"/g)).toHaveLength(4 - loops.length);
  });
});

describe('the drawing of fewer grounds', () => {
  it('lights nothing with one ground or none', () => {
    const one = markup(GroundPaths({ id: 'x', isNegativeGrounded: true, windingText: '16 V', railText: '19 V' }));
    expect(one).not.toContain('class="fault"');
    expect(one).not.toContain('class="idle"');
    expect(one).toContain('Joined to the chassis: the rail’s negative.');
    expect(markup(GroundPaths({ id: 'x', isNegativeGrounded: false, windingText: '16 V', railText: '19 V' }))).toContain('Nothing is joined to the chassis.');
  });
});
