import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';

/** One supply starting: its output against time, as solved. */
export interface StartCourse {
  readonly name: string;
  readonly seconds: readonly number[];
  readonly volts: readonly number[];
  /** In words, for the label beside it: "up after 1.2 s". */
  readonly outcome: string;
}

export interface StartTraceProps {
  readonly id: string;
  readonly title: string;
  /** Drawn under one another on the same scales. */
  readonly courses: readonly StartCourse[];
  /** What the output is meant to reach. */
  readonly setVolts: number;
  /** Ends of the two scales as they are labelled: "30 s", "12 V". */
  readonly endSeconds: number;
  readonly endText: string;
  readonly setText: string;
}

const WIDTH = 460;
const LEFT = 44;
const RIGHT = 448;
const PANEL = 96;
const GAP = 34;

/** Output volts of supplies that start into cold heaters, one panel each. */
export function StartTrace({ id, title, courses, setVolts, endSeconds, endText, setText }: StartTraceProps): VNode {
  const x = (seconds: number): number => LEFT + (Math.min(seconds, endSeconds) / endSeconds) * (RIGHT - LEFT);
  const height = courses.length * (PANEL + GAP) + 22;
  return (
    <Sheet id={id} title={title} desc={courses.map(({ name, outcome }) => `${name}: ${outcome}.`).join(' ')} width={WIDTH} height={height}>
      {courses.map(({ name, seconds, volts, outcome }, at) => {
        const floor = 26 + PANEL + at * (PANEL + GAP);
        const y = (value: number): number => floor - (value / setVolts) * (PANEL - 14);
        // Between two moments the output stays as it was at the first: a try ends as suddenly as it began.
        const steps = seconds.map((time, k): string => `${k === 0 ? 'M' : 'H'}${x(time).toFixed(1)}${k === 0 ? ' ' : 'V'}${y(volts[k] ?? 0).toFixed(1)}`);
        const last = volts.at(-1) ?? 0;
        return (
          <g key={name}>
            <path class="wire" d={`M${LEFT} ${floor - PANEL + 6}V${floor}H${RIGHT}`} />
            <path class="volts-needed" d={`M${LEFT} ${y(setVolts).toFixed(1)}H${RIGHT}`} />
            <path class="volts" d={`${steps.join('')}V${y(last).toFixed(1)}H${RIGHT}`} />
            <text class="label-volts" x={LEFT - 6} y={y(setVolts) + 5} text-anchor="end">
              {setText}
            </text>
            <text class="label-part" x={LEFT} y={floor - PANEL - 4}>
              {name}
            </text>
            <text class="label" x={RIGHT} y={floor - PANEL - 4} text-anchor="end">
              {outcome}
            </text>
          </g>
        );
      })}
      <text class="label" x={LEFT} y={height - 6}>
        0
      </text>
      <text class="label" x={RIGHT} y={height - 6} text-anchor="end">
        {endText}
      </text>
    </Sheet>
  );
}
