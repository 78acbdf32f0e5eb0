import type { ComponentChildren, VNode } from 'preact';

interface Props {
  /** Unique on the page: the drawing's title and description hang on it. */
  readonly id: string;
  readonly title: string;
  /** The drawing in words, for those who do not see it: what is joined to what, and the figures in it. */
  readonly desc: string;
  readonly width: number;
  readonly height: number;
  readonly children: ComponentChildren;
  /** Left and top of what is shown; 0 when left out. */
  readonly from?: readonly [x: number, y: number];
  /** It holds controls: a group with a name, since what lies inside a picture cannot be reached. */
  readonly hasControls?: boolean;
}

/** A schematic as one picture with a name and a description. */
export function Sheet({ id, title, desc, width, height, children, from = [0, 0], hasControls = false }: Props): VNode {
  return (
    <svg class="drawing" viewBox={`${from[0]} ${from[1]} ${width} ${height}`} role={hasControls ? 'group' : 'img'} aria-labelledby={`${id}-title`} aria-describedby={`${id}-desc`}>
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{desc}</desc>
      {children}
    </svg>
  );
}
