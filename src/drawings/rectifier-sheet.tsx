import type { VNode } from 'preact';
import type { RectifierTopology } from '../compute/rectifier/rectifier-types.ts';
import { LAYOUTS, MINUS, PLUS, RESERVOIR_X, type DiodePlace, type RectifierLayout } from './rectifier-layout.ts';
import { Sheet } from './sheet.tsx';
import { Core, Diode, Node, PolarisedCapacitor, RegulatorBlock, Resistor, Winding } from './symbols.tsx';

/** What carries current now: the winding charges the reservoir one way or the other, or the reservoir feeds the load alone. */
export type Phase = 'forward' | 'reverse' | 'resting';

export interface RectifierSheetProps {
  readonly id: string;
  readonly topology: RectifierTopology;
  /** Labels as the plan has them: "15 V AC", "470 µF", "76 mA". */
  readonly windingText: string;
  readonly reservoirText: string;
  readonly loadText: string;
  /** Volts across the reservoir: "19.6 V". */
  readonly reservoirVolts?: string;
  readonly regulator?: { readonly name: string; readonly railText: string };
  /** Left out: a plain schematic, nothing lit. */
  readonly phase?: Phase;
  /** Amps on the lit path: "0.22 A". */
  readonly pathAmps?: string;
}

const LOAD_X = 388;
const REGULATOR_X = 312;
const WIDTH = 472;
const HEIGHT = 256;

const NAMES: Readonly<Record<RectifierTopology, string>> = {
  bridge: 'Bridge rectifier',
  'centre-tap': 'Centre-tap rectifier',
  'half-wave': 'Half-wave rectifier',
  doubler: 'Voltage doubler',
};

/** Beside an upright diode; below one that lies in the upper bus, where its current is written above; above any other. */
const labelPlace = ({ at: [x, y], turn }: DiodePlace) =>
  turn === 0 ? { x: x + 13, y: y + 5 } : { x, y: y === PLUS ? y + 24 : y - 14, 'text-anchor': 'middle' as const };

const carriers = (layout: RectifierLayout, phase: Phase): readonly string[] =>
  layout.diodes.filter((diode) => diode.half === phase).map((diode) => diode.name);

/** "D1 and D4", for the sentence under the dial and the description of the drawing. */
export function carryingDiodes(topology: RectifierTopology, phase: Phase): readonly string[] {
  return carriers(LAYOUTS[topology], phase);
}

const describe = (props: RectifierSheetProps, layout: RectifierLayout): string => {
  const { phase } = props;
  const parts = `A winding of ${props.windingText} feeds diodes ${layout.diodes.map((diode) => diode.name).join(', ')} and a reservoir of ${props.reservoirText}${props.reservoirVolts === undefined ? '' : ` at ${props.reservoirVolts}`}.`;
  const rest = props.regulator === undefined ? `The load takes ${props.loadText}.` : `A ${props.regulator.name} regulator makes ${props.regulator.railText} for a load of ${props.loadText}.`;
  if (phase === undefined) return `${parts} ${rest}`;
  const lit = carriers(layout, phase);
  const now = lit.length === 0 ? 'No diode carries current: the reservoir feeds the load alone.' : `${lit.join(' and ')} ${lit.length === 1 ? 'carries' : 'carry'} ${props.pathAmps ?? 'current'} into the reservoir.`;
  return `${parts} ${rest} ${now}`;
};

/** A rectifier with its reservoir, regulator and load, labelled from a plan; at one instant, the way the current takes is lit. */
export function RectifierSheet(props: RectifierSheetProps): VNode {
  const { topology, phase, regulator } = props;
  const layout = LAYOUTS[topology];
  const lit = phase === undefined ? undefined : carriers(layout, phase);
  const charging = phase === undefined || phase === 'resting' ? '' : layout.charging[phase];
  const feeding = `M${RESERVOIR_X} ${MINUS}V${PLUS}H${LOAD_X}V${MINUS}H${RESERVOIR_X}`;
  return (
    <Sheet id={props.id} title={NAMES[topology]} desc={describe(props, layout)} width={WIDTH} height={HEIGHT}>
      {charging !== '' && <path class="path" d={charging} />}
      {phase === 'resting' && <path class="path" d={feeding} />}
      <path class="wire" d={layout.wires} />
      <path
        class="wire"
        d={
          regulator === undefined
            ? `M${RESERVOIR_X} ${PLUS}H${LOAD_X}V104M${LOAD_X} 156V${MINUS}H${RESERVOIR_X}`
            : `M${RESERVOIR_X} ${PLUS}H${REGULATOR_X - 31}M${REGULATOR_X + 31} ${PLUS}H${LOAD_X}V104M${LOAD_X} 156V${MINUS}H${RESERVOIR_X}M${REGULATOR_X} ${PLUS + 18}V${MINUS}`
        }
      />
      {layout.windings.map((at) => (
        <Winding key={at.join()} at={at} />
      ))}
      <Core at={[38, 130]} length={layout.windings.length > 1 ? 96 : 46} />
      {layout.diodes.map((diode) => (
        <g key={diode.name}>
          <Diode at={diode.at} turn={diode.turn} idle={lit !== undefined && !lit.includes(diode.name)} />
          <text class="label-part" {...labelPlace(diode)}>
            {diode.name}
          </text>
        </g>
      ))}
      {layout.capacitors.map((capacitor) => (
        <g key={capacitor.name}>
          <PolarisedCapacitor at={capacitor.at} />
          <text class="label-part" x={capacitor.at[0] + 19} y={capacitor.at[1] - 4}>
            {capacitor.name}
          </text>
          <text class="label" x={capacitor.at[0] + 19} y={capacitor.at[1] + 13}>
            {props.reservoirText}
          </text>
        </g>
      ))}
      {regulator !== undefined && <RegulatorBlock at={[REGULATOR_X, PLUS]} name={regulator.name} />}
      <Resistor at={[LOAD_X, 130]} />
      {[...layout.nodes, [RESERVOIR_X, PLUS] as const, [RESERVOIR_X, MINUS] as const, ...(regulator === undefined ? [] : [[REGULATOR_X, MINUS] as const])].map((at) => (
        <Node key={at.join()} at={at} />
      ))}
      <text class="label-volts" x="8" y="246">
        {layout.windings.length > 1 ? `2 × ${props.windingText}` : props.windingText}
      </text>
      {props.reservoirVolts !== undefined && (
        <text class="label-volts" x={RESERVOIR_X} y="24" text-anchor="middle">
          {props.reservoirVolts}
        </text>
      )}
      {regulator !== undefined && (
        <text class="label-volts" x={LOAD_X} y="24" text-anchor="middle">
          {regulator.railText}
        </text>
      )}
      <text class="label-amps" x={LOAD_X + 12} y="135">
        {props.loadText}
      </text>
      {props.pathAmps !== undefined && phase !== 'resting' && (
        <text class="label-amps" x="133" y="24" text-anchor="middle">
          {props.pathAmps}
        </text>
      )}
    </Sheet>
  );
}
