import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';

export interface CordSlackProps {
  readonly id: string;
  /** How far the cord may slip before each wire is taut. */
  readonly lineText: string;
  readonly earthText: string;
}

const CLAMP_X = 92;
const LINE_X = 226;
const EARTH_X = 330;

/** A mains cord behind its clamp: two wires to near terminals with slack, and the earth to a far lug, the longest wire and the tautest. */
export function CordSlack({ id, lineText, earthText }: CordSlackProps): VNode {
  return (
    <Sheet
      id={id}
      title="The longest wire may still part first"
      desc={`A cord enters through a clamp. Line and neutral run to near terminals in loose bows with ${lineText} of slack. The earth runs nearly straight to a lug further off; it is the longest of the three and has ${earthText} of slack. When the cord slips, the earth is taut first.`}
      width={398}
      height={188}
    >
      <path class="part block" d={`M${CLAMP_X - 12} 58h24v84h-24Z`} />
      <path class="wire" d={`M8 84H${CLAMP_X}M8 100H${CLAMP_X}M8 116H${CLAMP_X}`} />
      <path class="wire" d={`M${CLAMP_X} 84C${CLAMP_X + 50} 20 ${LINE_X - 50} 20 ${LINE_X} 60M${CLAMP_X} 100C${CLAMP_X + 50} 58 ${LINE_X - 44} 62 ${LINE_X} 96`} />
      <path class="fault" d={`M${CLAMP_X} 116C${CLAMP_X + 80} 132 ${EARTH_X - 80} 146 ${EARTH_X} 142`} />
      {[[LINE_X, 60] as const, [LINE_X, 96] as const, [EARTH_X, 142] as const].map(([x, y]) => (
        <circle key={`${x},${y}`} class="terminal" cx={x} cy={y} r="5" />
      ))}
      <text class="label" x="8" y="74">
        cord
      </text>
      <text class="label-part" x={CLAMP_X} y="46" text-anchor="middle">
        clamp
      </text>
      <text class="label-part" x={LINE_X + 14} y="65">
        line, neutral
      </text>
      <text class="label" x={LINE_X + 14} y="84">
        slack {lineText}
      </text>
      <text class="label-part" x={EARTH_X + 12} y="140">
        earth
      </text>
      <text class="label" x={EARTH_X - 12} y="170" text-anchor="end">
        slack {earthText}
      </text>
    </Sheet>
  );
}
