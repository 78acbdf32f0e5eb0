import type { TargetedKeyboardEvent, TargetedPointerEvent, VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { leastAmps } from './cycle.ts';

interface Props {
  readonly instance: string;
  /** Winding current at equal steps over one mains cycle, the rising zero of the mains first; signed. */
  readonly amps: readonly number[];
  /** Where the knob stands, 0 to 359. */
  readonly degrees: number;
  readonly onTurn: (degrees: number) => void;
  /** What carries current at the knob, in a few words for the middle: "D1, D4 · 0.22 A". */
  readonly reading: string;
  /** The same as a sentence, for those who hear it. */
  readonly spoken: string;
  readonly caption: string;
}

const SIZE = 300;
const CENTRE = SIZE / 2;
const RING = 108;
const DEEPEST = 44;

const spot = (degrees: number, radius: number): readonly [number, number] => {
  const angle = ((degrees - 90) * Math.PI) / 180;
  return [CENTRE + radius * Math.cos(angle), CENTRE + radius * Math.sin(angle)];
};

const point = (degrees: number, radius: number): string => spot(degrees, radius).map((value) => value.toFixed(1)).join(' ');

/** The stretches of the cycle in which current flows one way. */
function stretches(amps: readonly number[], sign: 1 | -1): readonly (readonly number[])[] {
  const least = leastAmps(amps);
  const flows = amps.map((value) => value * sign > least);
  const start = flows.findIndex((on, index) => on && !flows[(index + flows.length - 1) % flows.length]);
  if (start < 0) return flows[0] === true ? [amps.map((_, index) => index)] : [];
  const found: number[][] = [];
  for (let step = 0; step < amps.length; step += 1) {
    const index = (start + step) % amps.length;
    if (flows[index] !== true) continue;
    if (flows[(index + amps.length - 1) % amps.length] !== true) found.push([]);
    found.at(-1)?.push(start + step);
  }
  return found;
}

/** Bands of one direction as outlines: the ring outside, as deep inside as the current is large. */
function bandPaths(amps: readonly number[], sign: 1 | -1): readonly string[] {
  const peak = Math.max(...amps.map(Math.abs), 1e-12);
  const degreesOf = (index: number): number => (index * 360) / amps.length;
  return stretches(amps, sign).map((indices) => {
    const outer = indices.map((index) => point(degreesOf(index), RING));
    const inner = indices.map((index) => {
      const current = Math.abs(amps[index % amps.length] ?? 0);
      return point(degreesOf(index), RING - (DEEPEST * current) / peak);
    });
    return `M${outer.join('L')}L${inner.reverse().join('L')}Z`;
  });
}

const KEYS: Readonly<Record<string, number>> = { ArrowRight: 3, ArrowUp: 3, ArrowLeft: -3, ArrowDown: -3, PageUp: 30, PageDown: -30 };

/**
 * One mains cycle as a ring: the band is thick where diodes carry current, plain one way and hatched the other. A knob
 * walks the cycle, by pointer and by arrow keys.
 */
export function CycleDial(props: Props): VNode {
  const { amps, degrees, onTurn } = props;
  const svg = useRef<SVGSVGElement>(null);
  const held = useRef(false);
  const hatch = `${props.instance}-hatch`;

  const turnTo = (event: TargetedPointerEvent<SVGSVGElement>): void => {
    const box = svg.current?.getBoundingClientRect();
    if (box === undefined) return;
    const angle = Math.atan2(event.clientY - box.top - box.height / 2, event.clientX - box.left - box.width / 2);
    onTurn(Math.round(((angle * 180) / Math.PI + 450) % 360) % 360);
  };
  const onPointerDown = (event: TargetedPointerEvent<SVGSVGElement>): void => {
    held.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    turnTo(event);
  };
  const onKeyDown = (event: TargetedKeyboardEvent<SVGGElement>): void => {
    const by = KEYS[event.key];
    const to = event.key === 'Home' ? 0 : event.key === 'End' ? 359 : by === undefined ? undefined : (degrees + by + 360) % 360;
    if (to === undefined) return;
    event.preventDefault();
    onTurn(to);
  };

  const [knobX, knobY] = spot(degrees, RING);
  return (
    <figure class="dial">
      <svg
        ref={svg}
        viewBox={`0 0 ${SIZE} ${SIZE}`}
        onPointerDown={onPointerDown}
        onPointerMove={(event) => held.current && turnTo(event)}
        onPointerUp={() => (held.current = false)}
        onPointerCancel={() => (held.current = false)}
      >
        <defs>
          <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path class="amps-hatch" d="M0 0V7" />
          </pattern>
        </defs>
        <circle class="dial-ring" cx={CENTRE} cy={CENTRE} r={RING} />
        {Array.from({ length: 12 }, (_, tick) => (
          <path key={tick} class="dial-tick" d={`M${point(tick * 30, RING)}L${point(tick * 30, RING + (tick % 3 === 0 ? 9 : 5))}`} />
        ))}
        {[0, 90, 180, 270].map((mark) => {
          const [x, y] = spot(mark, RING + 24);
          return (
            <text key={mark} class="label" x={x} y={y + 4} text-anchor="middle">
              {mark}°
            </text>
          );
        })}
        {bandPaths(amps, 1).map((d) => (
          <path key={d} class="dial-band" d={d} />
        ))}
        {bandPaths(amps, -1).map((d) => (
          <path key={d} class="dial-band-other" d={d} fill={`url(#${hatch})`} />
        ))}
        <path class="dial-hand" d={`M${CENTRE} ${CENTRE}L${knobX.toFixed(1)} ${knobY.toFixed(1)}`} />
        <rect class="dial-plate" x={CENTRE - 62} y={CENTRE - 29} width="124" height="54" rx="4" />
        <text class="dial-reading" x={CENTRE} y={CENTRE - 4}>{`${degrees}°`}</text>
        <text class="label" x={CENTRE} y={CENTRE + 16} text-anchor="middle">
          {props.reading}
        </text>
        <g
          role="slider"
          tabIndex={0}
          class="dial-turn"
          aria-label="Place in the mains cycle"
          aria-valuemin={0}
          aria-valuemax={359}
          aria-valuenow={degrees}
          aria-valuetext={`${degrees} degrees: ${props.spoken}`}
          onKeyDown={onKeyDown}
        >
          <circle class="dial-reach" cx={knobX} cy={knobY} r="24" />
          <circle class="dial-knob" cx={knobX} cy={knobY} r="9" />
        </g>
      </svg>
      <figcaption>{props.caption}</figcaption>
    </figure>
  );
}
