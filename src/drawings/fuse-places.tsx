import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { Core, Fuse, Node, PolarisedCapacitor, RegulatorBlock, Resistor, Winding } from './symbols.tsx';

export interface FusePlacesProps {
  readonly id: string;
  /** What flows through each place while the rail runs: "0.1 A RMS". */
  readonly primaryText: string;
  readonly windingText: string;
  readonly railText: string;
}

const TOP = 58;
const BOTTOM = 176;
const MIDDLE = (TOP + BOTTOM) / 2;
const PRIMARY_X = 112;
const SECONDARY_X = 142;
const BRIDGE_X = 244;
const RESERVOIR_X = 300;
const LOAD_X = 446;

/** The three places for a fuse in a rail that has a transformer: in the line, in the winding's lead, behind the reservoir. */
export function FusePlaces({ id, primaryText, windingText, railText }: FusePlacesProps): VNode {
  const fuses = [
    { x: 62, name: 'F1', text: primaryText },
    { x: 188, name: 'F2', text: windingText },
    { x: 340, name: 'F3', text: railText },
  ] as const;
  return (
    <Sheet
      id={id}
      title="Three places for a fuse"
      desc={`From left to right: the mains line, fuse F1, the transformer’s primary, its secondary, fuse F2, the bridge, the reservoir, fuse F3, the regulator and the load. F1 carries ${primaryText}, F2 ${windingText}, F3 ${railText}.`}
      width={470}
      height={206}
    >
      <path
        class="wire"
        d={`M12 ${TOP}H36M88 ${TOP}H${PRIMARY_X}V${MIDDLE - 26}M${PRIMARY_X} ${MIDDLE + 26}V${BOTTOM}H12M${SECONDARY_X} ${MIDDLE - 26}V${TOP}H162M214 ${TOP}H${BRIDGE_X - 27}M${SECONDARY_X} ${MIDDLE + 26}V${BOTTOM}H${BRIDGE_X - 27}`}
      />
      <path
        class="wire"
        d={`M${BRIDGE_X + 27} ${TOP}H314M366 ${TOP}H373M435 ${TOP}H${LOAD_X}V${MIDDLE - 26}M${LOAD_X} ${MIDDLE + 26}V${BOTTOM}H${BRIDGE_X + 27}M${RESERVOIR_X} ${TOP}V${MIDDLE - 26}M${RESERVOIR_X} ${MIDDLE + 26}V${BOTTOM}M404 ${TOP + 18}V${BOTTOM}`}
      />
      <Winding at={[PRIMARY_X, MIDDLE]} turn={180} />
      <Winding at={[SECONDARY_X, MIDDLE]} />
      <Core at={[127, MIDDLE]} length={52} />
      <path class="part block" d={`M${BRIDGE_X - 27} ${TOP - 14}h54v${BOTTOM - TOP + 28}h-54Z`} />
      <text class="label-part" x={BRIDGE_X} y={MIDDLE + 5} text-anchor="middle">
        bridge
      </text>
      <PolarisedCapacitor at={[RESERVOIR_X, MIDDLE]} />
      <RegulatorBlock at={[404, TOP]} name="reg." />
      <Resistor at={[LOAD_X, MIDDLE]} />
      {fuses.map(({ x, name, text }) => (
        <g key={name}>
          <Fuse at={[x, TOP]} turn={90} />
          <text class="label-part" x={x} y={TOP - 14} text-anchor="middle">
            {name}
          </text>
          <text class="label-amps" x={x} y={TOP - 32} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {[[RESERVOIR_X, TOP] as const, [RESERVOIR_X, BOTTOM] as const, [404, BOTTOM] as const].map((at) => (
        <Node key={at.join()} at={at} />
      ))}
      <text class="label" x="12" y={MIDDLE + 4}>
        mains
      </text>
      <text class="label" x={LOAD_X - 12} y={MIDDLE + 4} text-anchor="end">
        load
      </text>
    </Sheet>
  );
}
