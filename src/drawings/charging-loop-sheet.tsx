import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { ChassisGround, Core, Node, PolarisedCapacitor, RegulatorBlock, Resistor, Winding } from './symbols.tsx';

export interface ChargingLoopProps {
  readonly id: string;
  /** Whether the rectifier's return goes along the wire that the first stage is grounded on, or to the reservoir itself. */
  readonly wiring: 'shared' | 'own';
  /** Labels as the case has them: "bridge", "4700 µF", "450 mA". */
  readonly rectifierText: string;
  readonly reservoirText: string;
  readonly loadText: string;
  /** Peak of the pulses, and what the shared wire drops. */
  readonly pulseText: string;
  readonly dropText: string;
}

const TOP = 46;
const BUS = 190;
const RETURN = 232;
const RECTIFIER_X = 126;
const RESERVOIR_X = 214;
const LOAD_X = 282;
const STAGE_X = 352;
const STAR_X = 430;

/** The loop that the charging pulses go round, from the winding to the reservoir and back, and the wire that the first stage calls ground. */
export function ChargingLoopSheet(props: ChargingLoopProps): VNode {
  const { wiring } = props;
  const shared = wiring === 'shared';
  const way = shared
    ? `M48 104V${TOP}H${RESERVOIR_X}V${BUS}H${STAR_X}V${RETURN}H${RECTIFIER_X}V138H70V156H48`
    : `M48 104V${TOP}H${RESERVOIR_X}V${BUS}H${RECTIFIER_X}V138H70V156H48`;
  const desc = `A winding and a ${props.rectifierText} charge a reservoir of ${props.reservoirText} in pulses of ${props.pulseText} at the peak; the load takes ${props.loadText}. ${
    shared
      ? `The pulses return along the wire that the first stage is grounded on, and drop ${props.dropText} on it.`
      : `The pulses return to the reservoir’s minus by a way of their own. The wire to the star carries the load’s current alone and drops ${props.dropText}.`
  }`;
  return (
    <Sheet id={props.id} title="Where the charging pulses flow" desc={desc} width={486} height={262}>
      <path class="path" d={way} />
      <path class="wire" d={`M48 104V${TOP}H95M157 ${TOP}H${LOAD_X}V92M${LOAD_X} 144V${BUS}M${RESERVOIR_X} ${TOP}V92M${RESERVOIR_X} 144V${BUS}H${STAR_X}`} />
      <path class="wire" d={`M48 156H70V138H${RECTIFIER_X}V64`} />
      <path class="wire" d={shared ? `M${RECTIFIER_X} 138V${RETURN}H${STAR_X}V${BUS}` : `M${RECTIFIER_X} 138V${BUS}H${RESERVOIR_X}`} />
      <path class="wire" d={shared ? `M${STAGE_X} 132V${BUS}` : `M${STAGE_X} 132V162H${STAR_X}V${BUS}`} />
      <Winding at={[48, 130]} />
      <Core at={[38, 130]} />
      <RegulatorBlock at={[RECTIFIER_X, TOP]} name={props.rectifierText} />
      <PolarisedCapacitor at={[RESERVOIR_X, 118]} />
      <Resistor at={[LOAD_X, 118]} />
      <path class="part block" d={`M${STAGE_X - 34} 90h68v42h-68Z`} />
      <ChassisGround at={[STAR_X, BUS]} turn={-90} />
      {[[RESERVOIR_X, TOP], [RESERVOIR_X, BUS], [LOAD_X, BUS], [STAR_X, BUS], ...(shared ? [[STAGE_X, BUS]] : [])].map(([x = 0, y = 0]) => (
        <Node key={`${x},${y}`} at={[x, y]} />
      ))}
      <text class="label-part" x={STAGE_X} y="108" text-anchor="middle">first</text>
      <text class="label-part" x={STAGE_X} y="124" text-anchor="middle">stage</text>
      <text class="label" x={RESERVOIR_X - 18} y="164" text-anchor="end">{props.reservoirText}</text>
      <text class="label" x={STAR_X - 4} y={shared ? 178 : 152} text-anchor="end">star</text>
      <text class="label-amps" x={RESERVOIR_X} y="30" text-anchor="middle">{props.pulseText}</text>
      <text class="label-amps" x={LOAD_X + 12} y="76">{props.loadText}</text>
      <text class="label-volts" x={shared ? (STAGE_X + STAR_X) / 2 : (LOAD_X + STAR_X) / 2} y={BUS + 20} text-anchor="middle">{props.dropText}</text>
    </Sheet>
  );
}
