import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { ChassisGround, Diode, Node, PolarisedCapacitor, Resistor, Switch } from './symbols.tsx';

export interface HighVoltageLineProps {
  readonly id: string;
  /** Volts left on each reservoir, as a meter shows them. */
  readonly readings: { readonly first: string; readonly second: string; readonly preamp: string };
}

const TOP = 66;
const BOTTOM = 172;
const RESERVOIRS = [
  { x: 84, name: 'C1' },
  { x: 214, name: 'C2' },
  { x: 374, name: 'C3' },
] as const;
const BLEEDER_X = 264;

/** An amp's high-voltage line with its standby switch open: rectifier, three reservoirs, bleeder and dropper, and what each still holds. */
export function HighVoltageLine({ id, readings }: HighVoltageLineProps): VNode {
  const volts = [readings.first, readings.second, readings.preamp];
  return (
    <Sheet
      id={id}
      title="Where charge stays behind an open standby switch"
      desc={`From left to right: the rectifier, reservoir C1, the standby switch, open, then reservoir C2 with the bleeder beside it and the output valves’ anodes on its line, then the dropper and reservoir C3. C1 still holds ${readings.first}; C2 ${readings.second} and C3 ${readings.preamp}. The bleeder is on the far side of the switch from C1.`}
      width={398}
      height={216}
    >
      <path class="wire" d={`M58 ${TOP}H123M175 ${TOP}H293M345 ${TOP}H374M84 ${BOTTOM}H374M239 ${TOP}V44`} />
      {RESERVOIRS.map(({ x }) => (
        <path key={x} class="wire" d={`M${x} ${TOP}V${119 - 26}M${x} ${119 + 26}V${BOTTOM}`} />
      ))}
      <path class="wire" d={`M${BLEEDER_X} ${TOP}V${119 - 26}M${BLEEDER_X} ${119 + 26}V${BOTTOM}`} />
      <Diode at={[32, TOP]} turn={90} />
      <Switch at={[149, TOP]} turn={90} />
      <Resistor at={[319, TOP]} turn={90} />
      <Resistor at={[BLEEDER_X, 119]} />
      {RESERVOIRS.map(({ x, name }, at) => (
        <g key={name}>
          <PolarisedCapacitor at={[x, 119]} />
          <Node at={[x, TOP]} />
          <text class="label-part" x={x - 20} y="118" text-anchor="end">
            {name}
          </text>
          <text class="label-volts" x={x - 20} y="138" text-anchor="end">
            {volts[at]}
          </text>
        </g>
      ))}
      <Node at={[239, TOP]} />
      <Node at={[BLEEDER_X, TOP]} />
      <Node at={[BLEEDER_X, BOTTOM]} />
      <Node at={[214, BOTTOM]} />
      <ChassisGround at={[149, BOTTOM]} />
      <Node at={[149, BOTTOM]} />
      <text class="label" x="140" y="40" text-anchor="middle">
        standby, open
      </text>
      <text class="label" x="239" y="36" text-anchor="middle">
        anodes
      </text>
      <text class="label" x="319" y="92" text-anchor="middle">
        dropper
      </text>
      <text class="label" x={BLEEDER_X + 11} y="160">
        bleeder
      </text>
      <text class="label" x="34" y="98" text-anchor="middle">
        rectifier
      </text>
    </Sheet>
  );
}
