import type { PartEnd, Point, WirePiece } from './wire-tree.ts';

/** A point of the circuit that can be joined to the chassis. `bush` and `gear` are the two ways of a jack's sleeve. */
export type GroundPointName = 'first' | 'centre' | 'second' | 'negative' | 'positive' | 'bush' | 'gear';

/** What of a job decides how its grounding is drawn. */
export interface GroundingShape {
  readonly feed: 'winding' | 'converter';
  readonly topology: 'bridge' | 'centre-tap' | 'half-wave' | 'doubler';
  /** What holds the winding's centre. */
  readonly centre: 'tap' | 'resistors' | 'none';
  /** A divider from the high voltage is in the way from the centre to the chassis. */
  readonly isLifted: boolean;
  readonly hasHeaters: boolean;
  readonly hasWindingFuse: boolean;
  /** The rail's negative meets the chassis through a resistor. */
  readonly hasBondResistor: boolean;
  readonly hasCoupling: boolean;
  /** What the sleeve of the jack is on; `none` where there is no jack. */
  readonly jack: 'none' | 'negative' | 'positive' | 'chassis' | 'isolated';
  /** Points that have a switch to the chassis. */
  readonly points: readonly GroundPointName[];
}

export type PartSymbol = 'winding' | 'diode' | 'resistor' | 'capacitor' | 'plain-capacitor' | 'converter';

/** One part, where it stands and what it is joined to. Its id is that of the branch in the solved circuit. */
export interface PlacedPart {
  readonly id: string;
  readonly symbol: PartSymbol;
  readonly at: Point;
  readonly turn: number;
  readonly ends: readonly [PartEnd, PartEnd];
  /** As labelled in the drawing: D1, C1. */
  readonly name?: string;
}

/** A switch from a point of the circuit to the chassis. */
export interface PlacedSwitch {
  readonly point: GroundPointName;
  readonly x: number;
  readonly node: string;
}

export interface GroundingLayout {
  readonly left: number;
  readonly width: number;
  readonly pieces: readonly WirePiece[];
  readonly parts: readonly PlacedPart[];
  readonly switches: readonly PlacedSwitch[];
}

/** Columns and rows that the parts stand in. */
export const X = {
  winding: 62, second: 86, resistors: 128, centre: 152, heaters: 186, first: 218, left: 250, negative: 285, converter: 300, right: 320, positive: 348, reservoir: 380, load: 420,
  bush: 448, jack: 468, gear: 514,
} as const;
export const Y = { plus: 20, first: 78, tap: 130, second: 182, minus: 240, switchTop: 272, switchBottom: 316, chassis: 332 } as const;

/** Half of the length of a symbol. */
const REACH = 26;

class Builder {
  readonly pieces: WirePiece[] = [];
  readonly parts: PlacedPart[] = [];

  wire(node: string, ...points: readonly Point[]): void {
    points.slice(1).forEach((to, index) => {
      const from = points[index];
      if (from !== undefined) this.pieces.push({ node, from, to });
    });
  }

  /** A straight stretch that a symbol is drawn over. */
  through(node: string, from: Point, to: Point): void {
    this.pieces.push({ node, from, to, drawnBySymbol: true });
  }

  /** A level wire with a joint at each place. */
  bus(node: string, y: number, places: readonly (number | false)[]): void {
    const xs = [...new Set(places.filter((place) => place !== false))].sort((a, b) => a - b);
    this.wire(node, ...xs.map((x): Point => [x, y]));
  }

  /** An upright part between the node above and the node below it. */
  part(id: string, symbol: PartSymbol, at: Point, above: string, below: string, name?: string): void {
    const [x, y] = at;
    const ends = [{ node: above, at: [x, y - REACH] }, { node: below, at: [x, y + REACH] }] as const;
    this.parts.push({ id, symbol, at, turn: 0, ends, ...(name === undefined ? {} : { name }) });
  }
}

/** Nodes as the solved circuit names them. */
const nodesOf = ({ topology }: GroundingShape) => ({
  second: topology === 'half-wave' ? 'negative' : 'second',
  tap: topology === 'centre-tap' ? 'negative' : 'tap',
});

function placeWinding(build: Builder, shape: GroundingShape): void {
  const { topology, centre, isLifted, hasHeaters, points } = shape;
  const { second, tap } = nodesOf(shape);
  const hasTap = centre === 'tap' || topology === 'centre-tap';
  const has = (point: GroundPointName): boolean => points.includes(point);
  if (hasTap) {
    build.part('half-1', 'winding', [X.winding, 104], 'first', tap);
    build.part('half-2', 'winding', [X.winding, 156], tap, second);
  } else {
    build.parts.push({ id: 'winding', symbol: 'winding', at: [X.winding, Y.tap], turn: 0, ends: [{ node: 'first', at: [X.winding, Y.first] }, { node: second, at: [X.winding, Y.second] }] });
  }
  if (centre === 'resistors') {
    build.part('centre-resistor-1', 'resistor', [X.resistors, 104], 'first', 'centre');
    build.part('centre-resistor-2', 'resistor', [X.resistors, 156], 'centre', second);
  }
  if (hasHeaters) {
    build.wire('first', [X.heaters, Y.first], [X.heaters, 104]);
    build.part('heaters', 'resistor', [X.heaters, Y.tap], 'first', second);
    build.wire(second, [X.heaters, 156], [X.heaters, Y.second]);
  }
  const joined = [centre === 'resistors' && X.resistors, hasHeaters && X.heaters] as const;
  build.bus('first', Y.first, [X.winding, ...joined, has('first') && X.first, X.left]);
  build.bus(second, Y.second, [X.winding, has('second') && X.second, ...joined, topology === 'bridge' || topology === 'doubler' ? X.right : topology === 'half-wave' ? X.left : X.right]);
  if (topology === 'centre-tap') build.wire(tap, [X.winding, Y.tap], [76, Y.tap], [76, Y.minus]);
  if (has('centre')) placeCentre(build, shape, centre === 'resistors' ? 'centre' : tap, isLifted);
  if (has('first')) build.wire('first', [X.first, Y.first], [X.first, Y.switchTop]);
  if (has('second')) build.wire(second, [X.second, Y.second], [X.second, Y.switchTop]);
}

/** From the winding's centre, or the joint of the resistors, down to its switch; through the divider's lower resistor where it is lifted. */
function placeCentre(build: Builder, { topology, centre }: GroundingShape, node: string, isLifted: boolean): void {
  const start: Point = centre === 'resistors' ? [X.resistors, Y.tap] : topology === 'centre-tap' ? [76, Y.tap] : [X.winding, Y.tap];
  if (!isLifted) {
    build.wire(node, start, [X.centre, Y.tap], [X.centre, Y.switchTop]);
    return;
  }
  build.wire(node, start, [X.centre, Y.tap], [X.centre, 196]);
  build.through(node, [X.centre, 196], [X.centre, 248]);
  build.wire(node, [X.centre, 248], [X.centre, Y.switchTop]);
  build.parts.push({ id: 'divider-upper', symbol: 'resistor', at: [X.centre - REACH, 196], turn: 90, ends: [{ node: 'high-tension', at: [X.centre - 2 * REACH, 196] }, { node, at: [X.centre, 196] }] });
}

function placeRectifier(build: Builder, shape: GroundingShape): void {
  const { topology } = shape;
  const { second } = nodesOf(shape);
  const [upper, lower] = [49, 211];
  build.part('diode-first-to-positive', 'diode', [X.left, upper], 'positive', 'first', 'D1');
  build.wire('first', [X.left, 75], [X.left, Y.first]);
  build.wire('positive', [X.left, 23], [X.left, Y.plus]);
  const back = (leg: string, node: string, x: number, from: number, name: string): void => {
    build.part(`diode-negative-to-${leg}`, 'diode', [x, lower], node, 'negative', name);
    build.wire(node, [x, 185], [x, from]);
    build.wire('negative', [x, 237], [x, Y.minus]);
  };
  const other = (): void => {
    build.part('diode-second-to-positive', 'diode', [X.right, upper], 'positive', second, topology === 'bridge' ? 'D3' : 'D2');
    build.wire(second, [X.right, 75], [X.right, Y.second]);
    build.wire('positive', [X.right, 23], [X.right, Y.plus]);
  };
  if (topology === 'bridge') {
    back('first', 'first', X.left, Y.first, 'D2');
    other();
    back('second', second, X.right, Y.second, 'D4');
  } else if (topology === 'centre-tap') other();
  else if (topology === 'half-wave') build.wire('negative', [X.left, Y.second], [X.left, Y.minus]);
  else back('first', 'first', X.left, Y.first, 'D2');
}

function placeReservoir(build: Builder, { topology, feed }: GroundingShape): void {
  if (feed === 'converter') return;
  const column = X.reservoir;
  if (topology !== 'doubler') {
    build.wire('positive', [column, Y.plus], [column, 104]);
    build.part('reservoir', 'capacitor', [column, Y.tap], 'positive', 'negative', 'C1');
    build.wire('negative', [column, 156], [column, Y.minus]);
    return;
  }
  build.wire('positive', [column, Y.plus], [column, 58]);
  build.part('reservoir-upper', 'capacitor', [column, 84], 'positive', 'second', 'C1');
  build.wire('second', [column, 110], [column, Y.tap], [column, 150]);
  build.wire('second', [X.right, Y.second], [X.right, Y.tap], [column, Y.tap]);
  build.part('reservoir-lower', 'capacitor', [column, 176], 'second', 'negative', 'C2');
  build.wire('negative', [column, 202], [column, Y.minus]);
}

function placeConverter(build: Builder, { hasCoupling }: GroundingShape): void {
  build.parts.push({ id: 'converter-output', symbol: 'converter', at: [236, Y.tap], turn: 0, ends: [{ node: 'positive', at: [278, 112] }, { node: 'negative', at: [278, 148] }] });
  build.wire('positive', [278, 112], [X.converter, 112], [X.converter, Y.plus]);
  build.wire('negative', [278, 148], [X.converter, 148], [X.converter, 206], [X.converter, Y.minus]);
  if (!hasCoupling) return;
  build.wire('mains-side', [184, 112], [184, 206], [210, 206]);
  build.parts.push({ id: 'converter-coupling', symbol: 'plain-capacitor', at: [236, 206], turn: 90, ends: [{ node: 'mains-side', at: [210, 206] }, { node: 'negative', at: [262, 206] }] });
  build.wire('negative', [262, 206], [X.converter, 206]);
}

function placeJack(build: Builder, { jack, points }: GroundingShape): void {
  const tip = 'jack-1-tip';
  const sleeve = jack === 'negative' || jack === 'positive' ? jack : jack === 'chassis' ? 'ground' : 'jack-1-sleeve';
  if (jack === 'negative' || jack === 'chassis') {
    build.wire('positive', [X.jack, Y.plus], [X.jack, 36]);
    build.part(tip, 'resistor', [X.jack, 62], 'positive', tip);
    build.wire(tip, [X.jack, 88], [X.jack, 118]);
  }
  if (jack === 'negative') build.wire(sleeve, [X.jack, 142], [X.jack, 196], [X.jack, Y.minus]);
  if (jack === 'chassis') build.wire(sleeve, [X.jack, 142], [X.jack, Y.chassis]);
  if (jack === 'positive') build.wire(sleeve, [X.jack, 196], [X.jack, 142], [454, 142], [454, Y.plus]);
  if (points.includes('bush')) build.wire(sleeve, [X.jack, 196], [X.bush, 196], [X.bush, Y.switchTop]);
  if (points.includes('gear')) {
    build.through(sleeve, [X.jack, 142], [X.gear, 142]);
    build.through(sleeve, [X.gear, 142], [X.gear, 150]);
    build.wire(sleeve, [X.gear, 150], [X.gear, 190]);
    build.through(sleeve, [X.gear, 190], [X.gear, 242]);
    build.wire(sleeve, [X.gear, 242], [X.gear, Y.switchTop]);
  }
}

const COLUMN: Record<GroundPointName, number> = {
  first: X.first, centre: X.centre, second: X.second, negative: X.negative, positive: X.positive, bush: X.bush, gear: X.gear,
};

/** Node that a switch is on, by the name it has in the solved circuit. */
function nodeOf(point: GroundPointName, shape: GroundingShape): string {
  const { second, tap } = nodesOf(shape);
  switch (point) {
    case 'centre':
      return shape.centre === 'resistors' ? 'centre' : tap;
    case 'second':
      return second;
    case 'bush':
    case 'gear':
      return shape.jack === 'positive' ? 'positive' : shape.jack === 'chassis' ? 'ground' : 'negative';
    default:
      return point;
  }
}

/** Where everything stands in the drawing of a job's grounding. */
export function groundingLayout(shape: GroundingShape): GroundingLayout {
  const { feed, topology, jack, points } = shape;
  const build = new Builder();
  const isWinding = feed === 'winding';
  if (isWinding) {
    placeWinding(build, shape);
    placeRectifier(build, shape);
  } else placeConverter(build, shape);
  placeReservoir(build, shape);
  build.wire('positive', [X.load, Y.plus], [X.load, 104]);
  build.part('load', 'resistor', [X.load, Y.tap], 'positive', 'negative');
  build.wire('negative', [X.load, 156], [X.load, Y.minus]);
  const hasSecondPair = topology === 'bridge' || topology === 'centre-tap';
  build.bus('positive', Y.plus, [
    isWinding ? X.left : X.converter, isWinding && hasSecondPair && X.right, X.positive, isWinding && X.reservoir, X.load,
    jack === 'positive' && 454, (jack === 'negative' || jack === 'chassis') && X.jack,
  ]);
  build.bus('negative', Y.minus, [
    isWinding && topology === 'centre-tap' && 76, isWinding && topology !== 'centre-tap' && X.left, X.negative, isWinding && topology === 'bridge' && X.right,
    !isWinding && X.converter, isWinding && X.reservoir, X.load, jack === 'negative' && X.jack,
  ]);
  build.wire('negative', [X.negative, Y.minus], [X.negative, Y.switchTop]);
  build.wire('positive', [X.positive, Y.plus], [X.positive, Y.switchTop]);
  if (jack !== 'none') placeJack(build, shape);
  const switches = points.map((point): PlacedSwitch => ({ point, x: COLUMN[point], node: nodeOf(point, shape) }));
  for (const { x } of switches) build.wire('ground', [x, Y.switchBottom], [x, Y.chassis]);
  const left = isWinding ? 0 : 100;
  const right = jack === 'none' ? 456 : 548;
  build.bus('ground', Y.chassis, [left + 40, ...switches.map(({ x }) => x), jack === 'chassis' && X.jack, right - 16]);
  return { left, width: right - left, pieces: build.pieces, parts: build.parts, switches };
}
