import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { ChassisGround, Diode, Node, PolarisedCapacitor, Resistor, Winding } from './symbols.tsx';

/** Point of the winding that is joined to the chassis. */
export type WindingGround = 'first' | 'second' | 'tap';

export interface GroundPathsProps {
  readonly id: string;
  readonly windingGround?: WindingGround;
  /** The rail's negative is joined to the chassis. */
  readonly isNegativeGrounded: boolean;
  /** Labels as solved: "16.2 V", "18.8 V", "22.1 A RMS". */
  readonly windingText: string;
  readonly railText: string;
  /** What flows through the chassis between two grounds. */
  readonly faultText?: string;
}

/** A diode of the bridge: its name, its place, and what it joins, as the branches of a solved circuit are called. */
export interface BridgeDiode {
  readonly name: string;
  readonly branch: string;
  readonly at: readonly [number, number];
}

const PLUS = 40;
const MINUS = 220;
const CHASSIS = 272;
const LEFT = 18;
const WINDING_X = 62;
const FIRST_X = 132;
const SECOND_X = 196;
const RESERVOIR_X = 262;
const LOAD_X = 336;

export const BRIDGE: readonly BridgeDiode[] = [
  { name: 'D1', branch: 'diode-first-to-positive', at: [FIRST_X, 70] },
  { name: 'D2', branch: 'diode-negative-to-first', at: [FIRST_X, 190] },
  { name: 'D3', branch: 'diode-second-to-positive', at: [SECOND_X, 70] },
  { name: 'D4', branch: 'diode-negative-to-second', at: [SECOND_X, 190] },
];

const intoChassis = (height: number): string => `M${WINDING_X} ${height}H${LEFT}V${CHASSIS}H${RESERVOIR_X}V${MINUS}`;
const throughD4 = `H${SECOND_X}V160H${WINDING_X}`;
const throughD2 = `H${FIRST_X}V100H${WINDING_X}`;

/**
 * The ways that current takes through the chassis when both the negative and a point of the winding are joined to it,
 * one for each half of the cycle in which it flows, in the direction of the current.
 */
export const FAULT_LOOPS: Readonly<Record<WindingGround, readonly string[]>> = {
  first: [`${intoChassis(100)}${throughD4}V100`],
  second: [`${intoChassis(160)}${throughD2}V160`],
  tap: [`${intoChassis(130)}${throughD4}V130`, `${intoChassis(130)}${throughD2}V130`],
};

const GROUND_WORDS: Readonly<Record<WindingGround, string>> = {
  first: 'the winding’s upper end',
  second: 'the winding’s lower end',
  tap: 'the winding’s centre tap',
};

const LOOP_WORDS: Readonly<Record<WindingGround, string>> = {
  first: 'through the chassis to the rail’s negative, up through D4 and back through the whole winding, in every second half-cycle',
  second: 'through the chassis to the rail’s negative, up through D2 and back through the whole winding, in every second half-cycle',
  tap: 'through the chassis to the rail’s negative and back through D4 and the lower half of the winding, or in the other half-cycle through D2 and the upper half',
};

const describe = (props: GroundPathsProps): string => {
  const { windingGround, isNegativeGrounded } = props;
  const grounds = [...(isNegativeGrounded ? ['the rail’s negative'] : []), ...(windingGround === undefined ? [] : [GROUND_WORDS[windingGround]])];
  const joined = grounds.length === 0 ? 'Nothing is joined to the chassis.' : `Joined to the chassis: ${grounds.join(' and ')}.`;
  const fault = props.faultText !== undefined && windingGround !== undefined ? ` ${props.faultText} flows from ${GROUND_WORDS[windingGround]} ${LOOP_WORDS[windingGround]}.` : '';
  return `A winding of ${props.windingText} feeds a bridge, D1 to D4, a reservoir and a load, which stands at ${props.railText}. ${joined}${fault}`;
};

/** Winding, bridge, reservoir and load over their chassis, with the grounds that are made and the way of the current between two of them. */
export function GroundPaths(props: GroundPathsProps): VNode {
  const { windingGround, isNegativeGrounded, faultText } = props;
  const tapped = windingGround === 'tap';
  const lit = faultText === undefined || windingGround === undefined ? [] : FAULT_LOOPS[windingGround];
  const carries = (diode: BridgeDiode): boolean => lit.some((loop) => loop.includes(`H${diode.at[0]}V`)) && diode.at[1] > 130;
  const groundHeight = windingGround === 'first' ? 100 : windingGround === 'second' ? 160 : 130;
  return (
    <Sheet id={props.id} title="Where current goes between two grounds" desc={describe(props)} width={398} height={306}>
      {lit.map((loop) => (
        <path key={loop} class="fault" d={loop} />
      ))}
      <path class="wire" d={`M${WINDING_X} 100H${FIRST_X}M${WINDING_X} 160H${SECOND_X}`} />
      {[FIRST_X, SECOND_X].map((x) => (
        <path key={x} class="wire" d={`M${x} ${PLUS}V44M${x} 96V164M${x} 216V${MINUS}`} />
      ))}
      <path
        class="wire"
        d={`M${FIRST_X} ${PLUS}H${LOAD_X}V104M${FIRST_X} ${MINUS}H${LOAD_X}V156M${RESERVOIR_X} ${PLUS}V104M${RESERVOIR_X} 156V${MINUS}M${LEFT - 12} ${CHASSIS}H392`}
      />
      {isNegativeGrounded && <path class="wire" d={`M${RESERVOIR_X} ${MINUS}V${CHASSIS}`} />}
      {windingGround !== undefined && <path class="wire" d={`M${WINDING_X} ${groundHeight}H${LEFT}V${CHASSIS}`} />}
      {/* The winding's four turns, or two and two about its tap, between the two leads of the bridge. */}
      <WindingBetween tapped={tapped} />
      {BRIDGE.map((diode) => (
        <g key={diode.name}>
          <Diode at={diode.at} idle={lit.length > 0 && !carries(diode)} />
          <text class="label-part" x={diode.at[0] + 13} y={diode.at[1] + 5}>
            {diode.name}
          </text>
        </g>
      ))}
      <PolarisedCapacitor at={[RESERVOIR_X, 130]} />
      <Resistor at={[LOAD_X, 130]} />
      <ChassisGround at={[372, CHASSIS]} />
      {[[FIRST_X, 100], [SECOND_X, 160], [SECOND_X, PLUS], [SECOND_X, MINUS], [RESERVOIR_X, PLUS], [RESERVOIR_X, MINUS]].map(([x = 0, y = 0]) => (
        <Node key={`${x},${y}`} at={[x, y]} />
      ))}
      {isNegativeGrounded && <Node at={[RESERVOIR_X, CHASSIS]} />}
      {windingGround !== undefined && <Node at={[WINDING_X, groundHeight]} />}
      <text class="label-volts" x={WINDING_X} y="78" text-anchor="middle">
        {props.windingText}
      </text>
      <text class="label-volts" x="300" y="26" text-anchor="middle">
        {props.railText}
      </text>
      <text class="label" x={LOAD_X + 14} y="134">
        load
      </text>
      <text class="label" x="290" y={CHASSIS + 24}>
        chassis
      </text>
      {faultText !== undefined && (
        <text class="label-amps" x="140" y={CHASSIS + 24} text-anchor="middle">
          {faultText}
        </text>
      )}
    </Sheet>
  );
}

const WindingBetween = ({ tapped }: { readonly tapped: boolean }): VNode => (
  <g>
    <path class="wire" d={`M${WINDING_X} 100V104M${WINDING_X} 156V160`} />
    <Winding at={[WINDING_X, 130]} />
    {tapped && <Node at={[WINDING_X, 130]} />}
  </g>
);
