import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { Jack, Node, RelayCoil, Switch } from './symbols.tsx';

export interface RelayBarrierProps {
  readonly id: string;
  /** On the contacts: the high voltage, and what an output anode swings to. */
  readonly highVolts: string;
  readonly anodeVolts: string;
  /** What is printed of the insulation between them and the coil. */
  readonly printed: string;
  /** On the jack once the barrier has given way. */
  readonly jackVolts: string;
}

const TOP = 70;
const BOTTOM = 150;
const CONTACT_X = 70;
const BARRIER_X = 138;
const COIL_X = 204;

/** A relay with the high voltage on its contacts and its coil's rail on a jack: the way through when its insulation gives in. */
export function RelayBarrier({ id, highVolts, anodeVolts, printed, jackVolts }: RelayBarrierProps): VNode {
  return (
    <Sheet
      id={id}
      title="What a signal relay keeps apart"
      desc={`On the left a relay’s contact carries ${highVolts}, at an output anode up to ${anodeVolts}. On the right its coil hangs on the floating rail, and the rail is on a jack with a foot at it. Between contact and coil is the relay’s own insulation, of which only a test is printed: ${printed}. Where it gives way, the high voltage crosses to the coil and stands on the jack: ${jackVolts}.`}
      width={398}
      height={216}
    >
      <path class="fault" d={`M${CONTACT_X} 22V${TOP}H${COIL_X}H306`} />
      <path class="wire" d={`M${CONTACT_X} 22V84M${CONTACT_X} 136V188M${COIL_X} 84V${TOP}H306M${COIL_X} 136V${BOTTOM}H284V94H306`} />
      <path class="part" d={`M${BARRIER_X} 40V176`} stroke-dasharray="7 5" />
      <Switch at={[CONTACT_X, 110]} />
      <RelayCoil at={[COIL_X, 110]} />
      <Jack at={[332, 82]} />
      <Node at={[CONTACT_X, TOP]} />
      <Node at={[COIL_X, TOP]} />
      <text class="label-volts" x={CONTACT_X - 10} y="34" text-anchor="end">
        {highVolts}
      </text>
      <text class="label" x={CONTACT_X + 10} y="34">
        anode: {anodeVolts}
      </text>
      <text class="label" x={BARRIER_X} y="196" text-anchor="middle">
        {printed}
      </text>
      <text class="label-part" x={COIL_X + 26} y="115">
        coil
      </text>
      <text class="label-volts" x="332" y="50" text-anchor="middle">
        {jackVolts}
      </text>
      <text class="label" x="394" y="128" text-anchor="end">
        jack, and a foot
      </text>
    </Sheet>
  );
}
