import { describe, expect, it } from 'vitest';
import type { RectifierTopology } from '../../src/compute/rectifier/rectifier-types.ts';
import { LAYOUTS } from '../../src/drawings/rectifier-layout.ts';
import { RectifierSheet, carryingDiodes } from '../../src/drawings/rectifier-sheet.tsx';
import { REACH } from '../../src/drawings/symbols.tsx';
import { markup } from './markup.ts';

const TOPOLOGIES = Object.keys(LAYOUTS) as RectifierTopology[];
const plan = { id: 'x', windingText: '15 V AC', reservoirText: '470 µF', loadText: '76.7 mA', pathAmps: '0.22 A', reservoirVolts: '19.6 V' };

type Point = readonly [number, number];

/** Straight pieces of a path made of M, L, H and V. */
function pieces(path: string): readonly (readonly [Point, Point])[] {
  const found: (readonly [Point, Point])[] = [];
  let at: Point = [0, 0];
  for (const [, command = '', rest = ''] of path.matchAll(/([MLHV])([^MLHV]*)/g)) {
    const numbers = rest.trim().split(/[ ,]+/).map(Number);
    const next: Point = command === 'H' ? [numbers[0] ?? 0, at[1]] : command === 'V' ? [at[0], numbers[0] ?? 0] : [numbers[0] ?? 0, numbers[1] ?? 0];
    if (command !== 'M') found.push([at, next]);
    at = next;
  }
  return found;
}

/** Whether a point lies on a straight piece, and which way the piece runs there. */
const through = (path: string, [x, y]: Point): { readonly up: boolean; readonly right: boolean } | undefined => {
  const hit = pieces(path).find(
    ([[x1, y1], [x2, y2]]) => x >= Math.min(x1, x2) && x <= Math.max(x1, x2) && y >= Math.min(y1, y2) && y <= Math.max(y1, y2) && (x1 === x2 ? x === x1 : y === y1),
  );
  return hit === undefined ? undefined : { up: hit[1][1] < hit[0][1], right: hit[1][0] > hit[0][0] };
};

describe.each(TOPOLOGIES)('the %s drawing', (topology) => {
  const layout = LAYOUTS[topology];

  it.each(['forward', 'reverse'] as const)('leads the charging current of the %s half through the diodes that can carry it, and in their direction', (half) => {
    const path = layout.charging[half];
    for (const diode of layout.diodes) {
      const way = through(path, diode.at);
      expect(way !== undefined, `${diode.name} on the path`).toBe(diode.half === half);
      if (way !== undefined) expect(diode.turn === 0 ? way.up : way.right, `${diode.name} forwards`).toBe(true);
    }
  });

  it('charges a reservoir from its positive plate down, in every half in which it charges', () => {
    for (const half of ['forward', 'reverse'] as const) {
      const path = layout.charging[half];
      if (path === '') continue;
      const charged = layout.capacitors.map(({ at }) => through(path, at)).filter((way) => way !== undefined);
      expect(charged).toHaveLength(1);
      expect(charged[0]?.up).toBe(false);
    }
  });

  it('joins every symbol to a wire at both ends', () => {
    const ends = (at: Point, turn: number): readonly Point[] => (turn === 0 ? [[at[0], at[1] - REACH], [at[0], at[1] + REACH]] : [[at[0] - REACH, at[1]], [at[0] + REACH, at[1]]]);
    const terminals = [
      ...layout.diodes.flatMap(({ at, turn }) => ends(at, turn)),
      ...layout.capacitors.flatMap(({ at }) => ends(at, 0)),
      ...layout.windings.flatMap((at) => ends(at, 0)),
    ];
    for (const end of terminals) {
      const joined = pieces(layout.wires).some((piece) => piece.some(([x, y]) => x === end[0] && y === end[1]));
      const touches = terminals.filter(([x, y]) => x === end[0] && y === end[1]).length > 1;
      expect(joined || touches, `an end at ${end.join(', ')}`).toBe(true);
    }
  });

  it('says in words what it shows, with the plan’s own figures, and what carries current now', () => {
    const lit = markup(RectifierSheet({ ...plan, topology, phase: 'forward', regulator: { name: '7812', railText: '12 V' } }));
    expect(lit).toMatch(/role="img"/);
    for (const text of ['15 V AC', '470 µF', '76.7 mA', '19.6 V', '7812', '12 V']) expect(lit).toContain(text);
    const names = carryingDiodes(topology, 'forward');
    expect(lit).toContain(`${names.join(' and ')} carr`);
    expect(lit.match(/class="idle"/g)?.length ?? 0).toBe(layout.diodes.length - names.length);
    expect(lit).toContain('class="path"');
    expect(markup(RectifierSheet({ ...plan, topology, phase: 'resting' }))).toContain('reservoir feeds the load alone');
  });

  it('lights nothing when no moment is named', () => {
    const plain = markup(RectifierSheet({ ...plan, topology }));
    expect(plain).not.toContain('class="path"');
    expect(plain).not.toContain('class="idle"');
  });
});
