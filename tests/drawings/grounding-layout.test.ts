import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groundingLayout, type GroundPointName, type GroundingShape } from '../../src/drawings/grounding-layout.ts';
import { currentPath, joints, type Point, type WirePiece } from '../../src/drawings/wire-tree.ts';
import { fields } from '../../src/widgets/ground-check/fields.ts';
import { jobOf } from '../../src/widgets/ground-check/job.ts';
import { pointsOf } from '../../src/widgets/ground-check/points.ts';
import { drawnSheet } from '../../src/widgets/ground-check/sheet.ts';
import { rawFields } from '../../src/widgets/shared/raw-fields.ts';
import { parseFields } from '../../src/widgets/shared/parse-fields.ts';
import { solveGrounding } from '../../src/compute/grounding/analyse-grounding.ts';

const key = ([x, y]: Point): string => `${x},${y}`;

const shape: fc.Arbitrary<GroundingShape> = fc
  .record({
    feed: fc.constantFrom('winding' as const, 'converter' as const),
    topology: fc.constantFrom('bridge' as const, 'centre-tap' as const, 'half-wave' as const, 'doubler' as const),
    centre: fc.constantFrom('tap' as const, 'resistors' as const, 'none' as const),
    isLifted: fc.boolean(),
    hasHeaters: fc.boolean(),
    hasWindingFuse: fc.boolean(),
    hasBondResistor: fc.boolean(),
    hasCoupling: fc.boolean(),
    jack: fc.constantFrom('none' as const, 'negative' as const, 'positive' as const, 'chassis' as const),
  })
  .map((one) => {
    const isWinding = one.feed === 'winding';
    const has: Record<GroundPointName, boolean> = {
      second: isWinding && one.topology !== 'half-wave',
      centre: isWinding && one.centre !== 'none' && (one.topology !== 'centre-tap' || one.centre === 'resistors' || one.isLifted),
      first: isWinding, negative: true, positive: true,
      bush: one.jack === 'negative' || one.jack === 'positive',
      gear: one.jack !== 'none',
    };
    return { ...one, points: (Object.keys(has) as GroundPointName[]).filter((point) => has[point]) };
  });

const byNode = (pieces: readonly WirePiece[]): ReadonlyMap<string, readonly WirePiece[]> =>
  new Map([...new Set(pieces.map(({ node }) => node))].map((name) => [name, pieces.filter(({ node }) => node === name)]));

/** Points that can be reached from the first piece along the pieces. */
function reached(pieces: readonly WirePiece[]): ReadonlySet<string> {
  const [first] = pieces;
  const known = new Set<string>(first === undefined ? [] : [key(first.from)]);
  for (let before = -1; before !== known.size; ) {
    before = known.size;
    for (const { from, to } of pieces) {
      if (known.has(key(from))) known.add(key(to));
      if (known.has(key(to))) known.add(key(from));
    }
  }
  return known;
}

describe('the drawing of any job’s grounding', () => {
  it('gives every node one connected wire without a ring, and every part and switch its ends on it', () => {
    fc.assert(
      fc.property(shape, (one) => {
        const layout = groundingLayout(one);
        const wires = byNode(layout.pieces);
        for (const [node, pieces] of wires) {
          const points = new Set(pieces.flatMap(({ from, to }) => [key(from), key(to)]));
          expect(reached(pieces).size, `${node} is in one piece`).toBe(points.size);
          expect(pieces.length, `${node} closes no ring`).toBe(points.size - 1);
          expect(pieces.every(({ from, to }) => from[0] === to[0] || from[1] === to[1])).toBe(true);
        }
        for (const { node, at } of layout.parts.flatMap(({ ends }) => [...ends])) {
          if (node === 'high-tension') continue;
          const pieces = wires.get(node);
          // Two halves of a winding meet end to end, with no wire between them where nothing else is on the tap.
          const meets = layout.parts.filter(({ ends }) => ends.some((end) => end.node === node && key(end.at) === key(at))).length > 1;
          expect(meets || pieces?.some(({ from, to }) => key(from) === key(at) || key(to) === key(at)), `${node} at ${key(at)}`).toBe(true);
        }
        for (const { x, node } of layout.switches) expect(wires.get(node)?.some(({ to }) => key(to) === `${x},272`), `switch on ${node}`).toBe(true);
        const columns = layout.switches.map(({ x }) => x).sort((a, b) => a - b);
        // Room for a finger: the plates are 44 wide.
        expect(columns.every((x, index) => index === 0 || x - (columns[index - 1] ?? 0) >= 60)).toBe(true);
        expect(columns.every((x) => x - 24 > layout.left && x + 24 < layout.left + layout.width)).toBe(true);
      }),
      { seed: 20_260_401, numRuns: 200 },
    );
  });

  it.each(['heater-winding', 'spare-winding', 'converter'] as const)('shows every part of the solved circuit that carries current (%s)', (source) => {
    for (const { value: topology } of fields.topology.options) {
      for (const { value: centre } of fields.centre.options) {
        for (const { value: jack } of fields.jack.options) {
          const { values } = parseFields(fields, rawFields(fields, { source, topology, centre, jack, lift: centre === 'tap' ? 'lifted' : 'straight', loadAmps: 0.1 }));
          if (values === undefined) throw new Error('the case cannot be read');
          if (topology === 'centre-tap' && centre === 'none' && source !== 'converter') continue;
          const solution = solveGrounding(jobOf(values, 'high', 60));
          const sheet = drawnSheet(values, solution);
          const parts = new Set(groundingLayout(sheet.shape).parts.map(({ id }) => id));
          const missing = solution.branches.filter(({ id, kind }) => kind !== 'ground-link' && id !== 'divider-bypass' && !parts.has(id)).map(({ id }) => id);
          expect(missing, `${topology}, ${centre}, ${jack}`).toEqual([]);
          // A part stands between the nodes that the circuit has it between.
          for (const part of groundingLayout(sheet.shape).parts) {
            const branch = solution.branches.find(({ id }) => id === part.id);
            if (branch === undefined || part.id === 'converter-output' || part.id === 'divider-upper') continue;
            expect(part.ends.map(({ node }) => node).sort(), `${part.id}: ${topology}, ${centre}`).toEqual([branch.from, branch.to].sort());
          }
          for (const { point, node } of groundingLayout(sheet.shape).switches) {
            const link = solution.links.find(({ id }) => id === { centre: 'winding-reference', negative: 'rail-reference' }[point as 'centre' | 'negative']);
            if (link !== undefined) expect(node, `${point}: ${topology}, ${centre}`).toBe(link.node);
          }
          expect(sheet.shape.points).toEqual(pointsOf(values));
        }
      }
    }
  }, 60_000);
});

describe('the way of a current along a wire', () => {
  const bus: readonly WirePiece[] = [0, 1, 2, 3].map((x) => ({ node: 'n', from: [x, 0], to: [x + 1, 0] }));
  const pieces: readonly WirePiece[] = [...bus, { node: 'n', from: [2, 0], to: [2, 5] }];

  it('is what lies between its ends', () => {
    expect(currentPath(pieces, [[1, 0], [2, 5]]).map(({ from, to }) => [key(from), key(to)])).toEqual([['1,0', '2,0'], ['2,0', '2,5']]);
  });

  it('joins three ends without a dead end', () => {
    expect(currentPath(pieces, [[0, 0], [4, 0], [2, 5]])).toHaveLength(5);
    expect(currentPath(pieces, [[0, 0], [4, 0]])).toHaveLength(4);
  });

  it('is nothing where fewer than two ends meet it', () => {
    expect(currentPath(pieces, [[1, 0]])).toEqual([]);
    expect(currentPath(pieces, [[1, 0], [1, 0]])).toEqual([]);
  });

  it('has a dot where three ways meet and none where two cross', () => {
    expect(joints(pieces, []).map(key)).toEqual(['2,0']);
    expect(joints(bus, [{ node: 'n', at: [1, 0] }, { node: 'other', at: [2, 0] }]).map(key)).toEqual(['1,0']);
  });
});
