import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { Diode, Node, Winding } from './symbols.tsx';

export interface SleeveLoopProps {
  readonly id: string;
  /** What flows round the loop, and the resistance that alone limits it: "4.6 A RMS", "0.55 Ω". */
  readonly loopText: string;
  readonly pathText: string;
}

const SLEEVE = 72;
const TAP = 150;
const EARTH = 232;
const WINDING_X = 62;
const AMP_EARTH_X = 104;
const GEAR_X = 346;

/** The way of the current, in its direction: tap, chassis, building, outside box, cable, sleeve, negative, diode, winding. */
export const SLEEVE_LOOP = `M${WINDING_X} ${TAP}H${AMP_EARTH_X}V${EARTH}H${GEAR_X}V${SLEEVE}H${WINDING_X}V${TAP}`;

/** An amp whose heater winding has its tap on the chassis, and an outside box whose earth meets the rail by the cable's sleeve. */
export function SleeveLoop({ id, loopText, pathText }: SleeveLoopProps): VNode {
  return (
    <Sheet
      id={id}
      title="The ground that arrives with a cable"
      desc={`Inside the amp, the heater winding’s tap is on the chassis, which is earthed by the mains lead. The rail’s negative is on the sleeve of a jack. A cable joins that sleeve to the case of an outside switcher, which is earthed by its own mains lead. The loop is closed: ${loopText} flows from the tap by way of the chassis and the building’s earth to the switcher, back along the cable’s sleeve to the negative, through a diode of the bridge and half of the winding. Cable and earth together have ${pathText}, and nothing else is in the way.`}
      width={398}
      height={266}
    >
      <path class="part block" d="M10 30H206V186H10ZM304 30H388V186H304Z" />
      <path class="fault" d={SLEEVE_LOOP} />
      <path class="wire" d={`M${WINDING_X} ${SLEEVE}H102M154 ${SLEEVE}H${GEAR_X}V${EARTH}H${AMP_EARTH_X}V${TAP}H${WINDING_X}V137M${WINDING_X} 85V${SLEEVE}M${AMP_EARTH_X} ${TAP}H196`} />
      <Winding at={[WINDING_X, 111]} />
      <Diode at={[128, SLEEVE]} turn={270} />
      <Node at={[WINDING_X, TAP]} />
      <Node at={[AMP_EARTH_X, TAP]} />
      <circle class="terminal" cx="206" cy={SLEEVE} r="5" />
      <circle class="terminal" cx="304" cy={SLEEVE} r="5" />
      <text class="label-part" x="20" y="50">
        amp
      </text>
      <text class="label-part" x="312" y="50">
        switcher
      </text>
      <text class="label" x="172" y={SLEEVE - 12} text-anchor="middle">
        negative
      </text>
      <text class="label" x="255" y={SLEEVE - 12} text-anchor="middle">
        sleeve
      </text>
      <text class="label" x={WINDING_X - 10} y={TAP + 5} text-anchor="end">
        tap
      </text>
      <text class="label" x="120" y={TAP + 20}>
        chassis
      </text>
      <text class="label" x="225" y={EARTH - 10} text-anchor="middle">
        the building’s earth
      </text>
      <text class="label-amps" x="180" y={EARTH + 26} text-anchor="middle">
        {loopText}
      </text>
      <text class="label" x="300" y={EARTH + 26} text-anchor="middle">
        {pathText}
      </text>
    </Sheet>
  );
}
