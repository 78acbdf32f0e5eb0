import type { VNode } from 'preact';
import type { Level } from '../../compute/findings.ts';
import { figureOf, type Unit } from './units.ts';
import { Verdict } from './verdict-mark.tsx';

/** One big figure with its verdict: what low, nominal or high mains comes to. */
export interface CornerFigure {
  /** "low mains · 108 V" */
  readonly name: string;
  readonly value: number;
  readonly unit: Unit;
  /** What the figure is: "valley". */
  readonly of: string;
  /** Left out for a figure that nothing is held against. */
  readonly level?: Level;
  /** A few words after the level: "holds, 1.5 V spare". */
  readonly found?: string;
  /** What the verdict rests on, where that is less than rated: "typical dropout". */
  readonly restsOn?: string;
}

/** Figures side by side. `fields` are the ids of the controls they come from. */
export function Corners(props: { readonly corners: readonly CornerFigure[]; readonly stale: boolean; readonly instance: string }): VNode {
  return (
    // The settled sentence of Results is what is read out; these are there to be looked at and gone through.
    <output class="corners" id={`${props.instance}-corners`} data-count={props.corners.length} aria-live="off" {...(props.stale ? { 'data-stale': '' } : {})}>
      {props.corners.map((corner) => {
        const { figure, unit } = figureOf(corner.value, corner.unit);
        return (
          <span class="corner" key={corner.name}>
            <span class="corner-name">{corner.name}</span>
            <span class="figure">
              <span class="figure-value">{figure}</span> <span class="figure-unit">{`${unit} ${corner.of}`}</span>
            </span>
            {corner.level === undefined ? corner.found !== undefined && <span class="corner-found">{corner.found}</span> : <Verdict level={corner.level} found={corner.found} />}
            {corner.restsOn !== undefined && <span class="rests-on">{corner.restsOn}</span>}
          </span>
        );
      })}
    </output>
  );
}
