import type { VNode } from 'preact';
import { GroundSwitch, type SwitchState } from './ground-switch.tsx';
import { groundingLayout, X, Y, type GroundingLayout, type GroundingShape, type GroundPointName, type PlacedPart } from './grounding-layout.ts';
import { Sheet } from './sheet.tsx';
import { Capacitor, Core, Diode, Fuse, Jack, Node, PolarisedCapacitor, ProtectiveEarth, Resistor, Winding } from './symbols.tsx';
import { currentPath, joints, pathOf, type PartEnd, type Point } from './wire-tree.ts';

export interface GroundingSheetProps {
  readonly id: string;
  readonly shape: GroundingShape;
  /** What the drawing shows, in words: figures, what is grounded, what flows. */
  readonly desc: string;
  readonly switches: Readonly<Partial<Record<GroundPointName, SwitchState>>>;
  /** Parts that carry the fault, by branch, with their amps: "15.7 A". */
  readonly faults: Readonly<Record<string, string>>;
  readonly texts: {
    readonly feed: string;
    readonly rail: string;
    readonly mainsFuse?: string;
    readonly mainsAmps?: string;
    /** Under the symbol of protective earth, line by line. */
    readonly earth: readonly string[];
    readonly tip?: string;
  };
  readonly isEarthed: boolean;
  readonly onToggle?: (point: GroundPointName) => void;
}

const TOP = -18;
const HEIGHT = 420;

function Part({ part }: { readonly part: PlacedPart }): VNode {
  const { symbol, at, turn } = part;
  const [x, y] = at;
  switch (symbol) {
    case 'winding':
      // A winding without a tap is drawn as long as the two halves of one that has it.
      return part.id === 'winding' ? (
        <>
          <Winding at={[x, y - 26]} />
          <Winding at={[x, y + 26]} />
        </>
      ) : (
        <Winding at={at} turn={turn} />
      );
    case 'diode':
      return <Diode at={at} turn={turn} />;
    case 'capacitor':
      return <PolarisedCapacitor at={at} turn={turn} />;
    case 'plain-capacitor':
      return <Capacitor at={at} turn={turn} />;
    case 'converter':
      return (
        <>
          <path class="part block" d={`M${x - 42} ${y - 36}h84v72h-84ZM${x - 42} ${y + 36}l84 -72`} />
          <text class="label-part" x={x - 24} y={y - 12} text-anchor="middle">
            AC
          </text>
          <text class="label-part" x={x + 22} y={y + 24} text-anchor="middle">
            DC
          </text>
        </>
      );
    default:
      return <Resistor at={at} turn={turn} />;
  }
}

/** The body of a part as a stretch of path, end to end. */
const bodyOf = ({ ends: [a, b] }: Pick<PlacedPart, 'ends'>): string => `M${a.at[0]} ${a.at[1]}L${b.at[0]} ${b.at[1]}`;

/** The whole way of the fault: bodies of the parts and switches that carry it, and the wires between them. */
function faultPath(layout: GroundingLayout, isLit: (id: string) => boolean, litPoints: ReadonlySet<GroundPointName>): string {
  const parts = layout.parts.filter(({ id }) => isLit(id));
  const links = layout.switches
    .filter(({ point }) => litPoints.has(point))
    .map(({ x, node }) => ({ ends: [{ node, at: [x, Y.switchTop] as Point }, { node: 'ground', at: [x, Y.switchBottom] as Point }] as const }));
  const byNode = new Map<string, Point[]>();
  for (const { node, at } of [...parts, ...links].flatMap<PartEnd>(({ ends }) => [...ends])) byNode.set(node, [...(byNode.get(node) ?? []), at]);
  const wires = [...byNode].flatMap(([node, ends]) => currentPath(layout.pieces.filter((piece) => piece.node === node), ends));
  return [...parts, ...links].map(bodyOf).join('') + pathOf(wires);
}

/** Where the amps of a part are written: beside it, where nothing else stands. */
function ampsPlace({ id, symbol, at: [x, y] }: PlacedPart): { readonly x: number; readonly y: number; readonly anchor: 'start' | 'end' } | undefined {
  if (id === 'half-1') return { x: x + 10, y: y + 2, anchor: 'start' };
  if (id === 'half-2' || id === 'winding') return { x: x + 10, y: y + 8, anchor: 'start' };
  if (symbol === 'diode') return { x: x + 13, y: y + 18, anchor: 'start' };
  return undefined;
}

/** Where its name is written; the second column of diodes has a wire on its right. */
function namePlace({ symbol, at: [x, y] }: PlacedPart): { readonly x: number; readonly y: number; readonly 'text-anchor': 'start' | 'end' } {
  if (symbol === 'capacitor') return { x: x + 12, y: y + 22, 'text-anchor': 'start' };
  return x === X.right ? { x: x - 13, y: y + 2, 'text-anchor': 'end' } : { x: x + 13, y: y + 2, 'text-anchor': 'start' };
}

function MainsSide({ texts, feed }: Pick<GroundingSheetProps, 'texts'> & { readonly feed: GroundingShape['feed'] }): VNode {
  const fuse = texts.mainsFuse !== undefined;
  if (feed === 'converter') {
    return (
      <>
        <path class="wire" d={fuse ? 'M116 112H124M176 112H194M116 148H194' : 'M116 112H194M116 148H194'} />
        {fuse && <Fuse at={[150, 112]} turn={90} />}
        <circle class="terminal" cx="114" cy="112" r="3" />
        <circle class="terminal" cx="114" cy="148" r="3" />
        <text class="label" x="108" y="172">
          mains
        </text>
        {fuse && (
          <text class="label" x="150" y="96" text-anchor="middle">
            {texts.mainsFuse}
          </text>
        )}
      </>
    );
  }
  return (
    <>
      <path class="wire" d={fuse ? 'M34 104V96M34 44V28M34 156V206' : 'M34 104V28M34 156V206'} />
      {fuse && <Fuse at={[34, 70]} />}
      <Winding at={[34, Y.tap]} turn={180} />
      <Core at={[48, Y.tap]} length={104} />
      <circle class="terminal" cx="34" cy="26" r="3" />
      <circle class="terminal" cx="34" cy="208" r="3" />
      <text class="label" x="6" y="12">
        mains
      </text>
      {fuse && (
        <text class="label" x="48" y="48">
          {texts.mainsFuse}
        </text>
      )}
      {texts.mainsAmps !== undefined && (
        <text class="label-amps" x="48" y="65">
          {texts.mainsAmps}
        </text>
      )}
    </>
  );
}

/** Symbols that stand in the way of a ground, over wires that the layout keeps clear for them. */
function InTheWay({ shape, tip }: { readonly shape: GroundingShape; readonly tip: string | undefined }): VNode {
  const { points, isLifted, jack, hasWindingFuse, hasBondResistor, feed } = shape;
  return (
    <>
      {isLifted && points.includes('centre') && (
        <>
          <Resistor at={[X.centre, 222]} />
          <circle class="terminal" cx={X.centre - 54} cy="196" r="3" />
          <text class="label-volts" x={X.centre - 46} y="220" text-anchor="middle">
            B+
          </text>
        </>
      )}
      {hasWindingFuse && feed === 'winding' && (
        <g transform="translate(231 78) rotate(90) scale(0.6)">
          <path class="part block" d="M-5.5 -15h11v30h-11Z" />
          <path class="wire" d="M0 -15V15" />
        </g>
      )}
      {hasBondResistor && <path class="part block" d={`M${X.negative - 5} 245h10v22h-10Z`} />}
      {jack !== 'none' && <Jack at={[494, Y.tap]} />}
      {jack !== 'none' && points.includes('gear') && (
        <>
          <Resistor at={[X.gear, 216]} />
          <text class="label" x={X.gear - 10} y="180" text-anchor="end">
            cable
          </text>
        </>
      )}
      {tip !== undefined && (
        <text class="label" x={X.jack + 12} y="66">
          {tip}
        </text>
      )}
    </>
  );
}

/**
 * A low-voltage supply with every way that it has to the chassis: the switches stand in a row above the chassis and can
 * be worked. What flows because of a second ground is marked along its whole way, by line, by figures and by colour.
 */
export function GroundingSheet(props: GroundingSheetProps): VNode {
  const { id, shape, desc, switches, faults, texts, isEarthed, onToggle } = props;
  const layout = groundingLayout(shape);
  const litPoints = new Set(shape.points.filter((point) => switches[point]?.isFault === true));
  const fault = faultPath(layout, (branch) => Object.hasOwn(faults, branch), litPoints);
  const ends = layout.parts.flatMap((part) => part.ends).concat(layout.switches.map(({ x, node }) => ({ node, at: [x, Y.switchTop] as const })));
  const { left } = layout;
  return (
    <Sheet id={id} title="Where the supply meets the chassis" desc={desc} from={[left, TOP]} width={layout.width} height={HEIGHT} hasControls={onToggle !== undefined}>
      {fault !== '' && <path class="fault" d={fault} />}
      <path class="wire" d={pathOf(layout.pieces.filter(({ drawnBySymbol }) => drawnBySymbol !== true))} />
      <path class="chassis" d={`M${left + 16} ${Y.chassis}H${left + layout.width - 12}`} />
      <MainsSide texts={texts} feed={shape.feed} />
      {layout.parts.map((part) => {
        const place = ampsPlace(part);
        const amps = faults[part.id];
        return (
          <g key={part.id}>
            <Part part={part} />
            {part.name !== undefined && (
              <text class="label-part" {...namePlace(part)}>
                {part.name}
              </text>
            )}
            {amps !== undefined && place !== undefined && (
              <text class="label-fault" x={place.x} y={place.y} text-anchor={place.anchor}>
                {amps}
              </text>
            )}
          </g>
        );
      })}
      <InTheWay shape={shape} tip={texts.tip} />
      {joints(layout.pieces.filter(({ drawnBySymbol }) => drawnBySymbol !== true), ends).map((at) => (
        <Node key={at.join()} at={at} />
      ))}
      {shape.hasHeaters && (
        <text class="label" x={X.heaters} y={Y.first - 8} text-anchor="middle">
          valves
        </text>
      )}
      <text class="label-volts" x={shape.feed === 'winding' ? X.winding - 2 : 236} y={shape.feed === 'winding' ? 204 : 86} text-anchor="middle">
        {texts.feed}
      </text>
      <text class="label-volts" x={X.load + 8} y={Y.plus - 12} text-anchor="end">
        {texts.rail}
      </text>
      <text class="label" x={X.load + 10} y={Y.tap + 5}>
        load
      </text>
      {isEarthed ? (
        <ProtectiveEarth at={[left + 40, Y.chassis + 5]} />
      ) : (
        <path class="part" d={`M${left + 40} ${Y.chassis}v7M${left + 33} ${Y.chassis + 8}l14 14M${left + 47} ${Y.chassis + 8}l-14 14`} />
      )}
      {texts.earth.map((line, row) => (
        <text key={line} class="label" x={left + 40} y={Y.chassis + 50 + 15 * row} text-anchor="middle">
          {line}
        </text>
      ))}
      {layout.switches.map(({ point, x }) => {
        const state = switches[point];
        return state === undefined ? null : <GroundSwitch key={point} x={x} state={state} onToggle={onToggle === undefined ? undefined : () => onToggle(point)} />;
      })}
    </Sheet>
  );
}
