import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { ChassisGround, Core, Diode, Node, Resistor, Winding } from './symbols.tsx';

export interface ResidualSumProps {
  readonly id: string;
  /** Through the hand, and what the residual-current device sees of it. */
  readonly handAmps: string;
  readonly seenAmps: string;
}

const TOP = 56;
const BOTTOM = 156;

/** A hand across an amp's high voltage behind its transformer, and the residual-current device on the mains side that sees nothing of it. */
export function ResidualSum({ id, handAmps, seenAmps }: ResidualSumProps): VNode {
  return (
    <Sheet
      id={id}
      title="What a residual-current device sees of the high voltage"
      desc={`Mains line and neutral pass through a residual-current device to the transformer’s primary. On the other side of the iron the secondary drives ${handAmps} through a diode, a hand from the high voltage to the chassis, and back into the winding. That loop never crosses to the mains side, so line and neutral carry the same current and the device sees ${seenAmps}. The chassis’ protective earth carries none of it either.`}
      width={398}
      height={232}
    >
      <path class="fault" d={`M206 ${BOTTOM}V${TOP}H340V${BOTTOM}H206`} />
      <path class="wire" d={`M10 ${TOP}H54M10 ${BOTTOM}H54M104 ${TOP}H170V80M104 ${BOTTOM}H170V132M206 80V${TOP}H236M288 ${TOP}H340V80M340 132V${BOTTOM}H206V132M270 ${BOTTOM}V196H10`} />
      <path class="part block" d="M54 36H104V176H54Z" />
      <text class="label-part" x="79" y="92" text-anchor="middle">
        RCD
      </text>
      <text class="label" x="79" y="112" text-anchor="middle">
        sees
      </text>
      <text class="label-amps" x="79" y="130" text-anchor="middle">
        {seenAmps}
      </text>
      <Winding at={[170, 106]} turn={180} />
      <Core at={[188, 106]} />
      <Winding at={[206, 106]} />
      <Diode at={[262, TOP]} turn={90} />
      <Resistor at={[340, 106]} />
      <Node at={[270, BOTTOM]} />
      <ChassisGround at={[305, BOTTOM]} />
      <Node at={[305, BOTTOM]} />
      <text class="label-part" x="328" y="103" text-anchor="end">
        a hand
      </text>
      <text class="label-amps" x="328" y="121" text-anchor="end">
        {handAmps}
      </text>
      <text class="label" x="14" y={TOP - 8}>
        L
      </text>
      <text class="label" x="14" y={BOTTOM - 8}>
        N
      </text>
      <text class="label" x="14" y="216">
        protective earth
      </text>
    </Sheet>
  );
}
