import type { VNode } from 'preact';
import { Y } from './grounding-layout.ts';

/** A point's way to the chassis, as the drawing shows it. */
export interface SwitchState {
  /** Spoken name: "winding, centre tap". */
  readonly name: string;
  /** As written below the switch, one or two lines. */
  readonly lines: readonly string[];
  readonly isClosed: boolean;
  /** Current to the chassis, RMS: "22.4 A". */
  readonly ampsText?: string;
  /** Its current would not flow with one ground only. */
  readonly isFault: boolean;
}

interface Props {
  readonly x: number;
  readonly state: SwitchState;
  /** Left out in a drawing that cannot be changed. */
  readonly onToggle?: (() => void) | undefined;
}

const HALF = 22;

/** A switch from a point of the circuit to the chassis: a button of its own in the drawing, open or closed by shape. */
export function GroundSwitch({ x, state, onToggle }: Props): VNode {
  const { name, lines, isClosed, ampsText, isFault } = state;
  const [top, bottom] = [Y.switchTop + 8, Y.switchBottom - 8];
  const middle = (Y.switchTop + Y.switchBottom) / 2;
  const control =
    onToggle === undefined
      ? {}
      : {
          role: 'button' as const,
          tabindex: 0,
          'aria-pressed': isClosed,
          'aria-label': `${name} to the chassis${isClosed && ampsText !== undefined ? `, ${ampsText} flows` : ''}`,
          onClick: onToggle,
          onKeyDown: (event: KeyboardEvent) => {
            if (event.key !== 'Enter' && event.key !== ' ') return;
            event.preventDefault();
            if (!event.repeat) onToggle();
          },
        };
  return (
    <>
      <g class="ground-switch" {...(isClosed ? { 'data-closed': '' } : {})} {...control}>
        <rect class="switch-plate" x={x - HALF} y={Y.switchTop} width={2 * HALF} height={Y.switchBottom - Y.switchTop} rx="5" />
        {isFault && <path class="fault" d={`M${x} ${Y.switchTop}V${Y.switchBottom}`} />}
        <path class="wire" d={`M${x} ${Y.switchTop}V${top}M${x} ${bottom}V${Y.switchBottom}`} />
        <path class="part switch-lever" d={isClosed ? `M${x} ${bottom}V${top}` : `M${x} ${bottom}L${x - 13} ${middle - 9}`} />
        <circle class="terminal" cx={x} cy={top} r="3" />
        <circle class="terminal" cx={x} cy={bottom} r="3" />
      </g>
      {lines.map((line, row) => (
        <text key={line} class="label" x={x} y={Y.chassis + 18 + row * 15} text-anchor="middle" aria-hidden="true">
          {line}
        </text>
      ))}
      {isClosed && ampsText !== undefined && (
        <text class={isFault ? 'label-fault' : 'label-amps'} x={x} y={Y.chassis + 18 + lines.length * 15 + 3} text-anchor="middle" aria-hidden="true">
          {ampsText}
        </text>
      )}
    </>
  );
}
