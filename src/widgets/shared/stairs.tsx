import type { VNode } from 'preact';
import { showQuantity } from './units.ts';

/** One level that the volts stand at on their way down. */
export interface Stair {
  readonly name: string;
  readonly volts: number;
  /** Where the difference to the level before has gone: "two diodes 1.7 V, copper 2.8 V". */
  readonly lost?: string;
  /** Asked for, not there: drawn dashed and hatched. */
  readonly needed?: boolean;
}

interface Props {
  readonly instance: string;
  readonly stairs: readonly Stair[];
  /** What lies between the valley and what is needed; negative when it falls short. */
  readonly spareVolts?: number;
  readonly caption: string;
}

const WIDTH = 760;
const HEIGHT = 252;
const FLOOR = 200;
const TOP = 34;

/** Breaks a name into lines that fit below its stair. */
function lines(name: string, longest: number): readonly string[] {
  const done: string[] = [];
  for (const word of name.split(' ')) {
    const last = done.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= longest) done[done.length - 1] = `${last} ${word}`;
    else done.push(word);
  }
  return done;
}

const figure = (volts: number): string => showQuantity(volts, 'V');

/** Where every volt goes: levels from the winding's peak down to the rail. Drawn where there is room, in rows where not. */
export function Stairs({ instance, stairs, spareVolts, caption }: Props): VNode {
  const highest = Math.max(...stairs.map((stair) => stair.volts), 1e-9);
  const step = WIDTH / stairs.length;
  const height = (volts: number): number => FLOOR - ((FLOOR - TOP) * Math.max(0, volts)) / highest;
  const hatch = `${instance}-needed`;
  const needed = stairs.findIndex((stair) => stair.needed === true);
  const before = stairs[needed - 1];
  const spare = spareVolts === undefined ? undefined : `${figure(Math.abs(spareVolts))} ${spareVolts < 0 ? 'short' : 'to spare'}`;
  return (
    <figure class="stairs">
      <svg class="stairs-wide" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" focusable="false">
        <defs>
          <pattern id={hatch} width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path class="volts-hatch" d="M0 0V8" />
          </pattern>
        </defs>
        {stairs.map((stair, index) => {
          const x = index * step;
          const y = height(stair.volts);
          // Two figures that would touch give way: the needed one goes under its line.
          const under = stair.needed === true;
          return (
            <g key={stair.name}>
              <rect class="volts-fill" x={x} y={y} width={step} height={FLOOR - y} />
              {stair.needed === true && <rect x={x} y={y} width={step} height={FLOOR - y} fill={`url(#${hatch})`} />}
              <path class={stair.needed === true ? 'volts-needed' : 'volts'} d={`M${x} ${y}H${x + step}`} />
              {index > 0 && <path class="stairs-riser" d={`M${x} ${height(stairs[index - 1]?.volts ?? 0)}V${y}`} />}
              {under && <rect class="stairs-plate" x={x + step / 2 - 36} y={y + 5} width="72" height="22" rx="2" />}
              <text class="stairs-figure" x={x + step / 2} y={under ? y + 21 : y - 8} text-anchor="middle">
                {figure(stair.volts)}
              </text>
              {lines(stair.name, Math.floor(step / 6.6)).map((line, row) => (
                <text key={line} class="label" x={x + step / 2} y={FLOOR + 20 + row * 16} text-anchor="middle">
                  {line}
                </text>
              ))}
            </g>
          );
        })}
        {spare !== undefined && before !== undefined && (
          <g class={(spareVolts ?? 0) < 0 ? 'stairs-short' : 'stairs-spare'}>
            <path d={`M${needed * step} ${height(before.volts)}H${(needed + 1) * step}`} />
            <text x={(needed + 0.5) * step} y={Math.min(height(before.volts), height(stairs[needed]?.volts ?? 0)) - 8} text-anchor="middle">
              {spare}
            </text>
          </g>
        )}
      </svg>
      <ol class="stairs-rows">
        {stairs.map((stair, index) => {
          const above = stairs[index - 1];
          const drop = above === undefined || stair.needed === true || above.needed === true ? '' : figure(stair.volts - above.volts);
          return (
            <li class="stair" key={stair.name}>
              <span class="stair-name">{stair.name}</span>
              <span class="stair-loss">{drop}</span>
              <span class="value">{figure(stair.volts)}</span>
              {stair.lost !== undefined && <span class="stair-why">{stair.lost}</span>}
            </li>
          );
        })}
        {spareVolts !== undefined && (
          <li class="stair">
            <span class="stair-name">{spareVolts < 0 ? 'short by' : 'to spare'}</span>
            <span class="stair-loss" />
            <span class="value">{figure(Math.abs(spareVolts))}</span>
          </li>
        )}
      </ol>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
