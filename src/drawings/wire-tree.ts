/*
 * The wires of a schematic as data: for each node of the circuit the straight pieces that it is drawn with, and for each
 * part the places where its two ends meet them. Both the drawing and the path of a current come out of it.
 */

export type Point = readonly [x: number, y: number];

/** One straight piece of wire of a node. */
export interface WirePiece {
  readonly node: string;
  readonly from: Point;
  readonly to: Point;
  /** A symbol draws it; only a current's path runs along it. */
  readonly drawnBySymbol?: true;
}

/** Where one end of a part meets the wire of a node. */
export interface PartEnd {
  readonly node: string;
  readonly at: Point;
}

const key = ([x, y]: Point): string => `${x},${y}`;

/** As an SVG path, for pieces of wire one after the other. */
export const pathOf = (pieces: readonly Pick<WirePiece, 'from' | 'to'>[]): string => pieces.map(({ from, to }) => `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`).join('');

/**
 * Of a node's wire, the pieces that a current takes between the given ends: what is left when every dead end that none
 * of them lies on is taken away. Nothing for fewer than two ends. The pieces must not close a ring.
 */
export function currentPath(pieces: readonly WirePiece[], ends: readonly Point[]): readonly WirePiece[] {
  const kept = new Set(ends.map(key));
  if (kept.size < 2) return [];
  let left = [...pieces];
  for (;;) {
    const degree = new Map<string, number>();
    for (const { from, to } of left) for (const point of [key(from), key(to)]) degree.set(point, (degree.get(point) ?? 0) + 1);
    const isDeadEnd = (point: Point): boolean => degree.get(key(point)) === 1 && !kept.has(key(point));
    const next = left.filter(({ from, to }) => !isDeadEnd(from) && !isDeadEnd(to));
    if (next.length === left.length) return left;
    left = next;
  }
}

/** Points where three or more wires and parts of a node meet: the joints that are drawn as dots. */
export function joints(pieces: readonly WirePiece[], ends: readonly PartEnd[]): readonly Point[] {
  const count = new Map<string, { readonly point: Point; readonly many: number }>();
  const meet = (node: string, point: Point): void => {
    const at = `${node} ${key(point)}`;
    count.set(at, { point, many: (count.get(at)?.many ?? 0) + 1 });
  };
  for (const { node, from, to } of pieces) {
    meet(node, from);
    meet(node, to);
  }
  for (const { node, at } of ends) meet(node, at);
  return [...count.values()].filter(({ many }) => many > 2).map(({ point }) => point);
}
