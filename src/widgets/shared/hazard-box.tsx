import type { ComponentChildren, VNode } from 'preact';
import type { Harm } from '../../compute/findings.ts';

/** What a hazard is called above its title. Noise hurts nobody: it has a caution, not a sign. */
const NAMES: Record<HazardHarm, string> = {
  shock: 'Electric shock',
  fire: 'Fire and burns',
  damage: 'Damage',
};

export type HazardHarm = Exclude<Harm, 'noise'>;

/**
 * A warning triangle after ISO 7010: the electricity sign (W012) where somebody can be shocked and nowhere else, the
 * general warning sign (W001) for fire and damage. Its fills are part of the drawing, so that they print.
 */
export function HazardSign({ harm }: { readonly harm: HazardHarm }): VNode {
  return (
    <svg class="hazard-sign" viewBox="0 0 100 90" width="56" height="50" aria-hidden="true" focusable="false">
      <path d="M50 5 96 85H4Z" fill="#14161a" stroke="#14161a" stroke-width="8" stroke-linejoin="round" />
      <path d="M50 13.5 88.4 80.5H11.6Z" fill="#f9c80e" stroke="#f9c80e" stroke-width="3" stroke-linejoin="round" />
      {harm === 'shock' ? (
        <path d="M53.6 31.5 37.4 55.3l12.2 1.1-3.9 8.9-4.3-1.9.8 13.2 11.3-8-4.2-1.9 8.9-17.3-11.6-.9 11.9-14.6Z" fill="#14161a" />
      ) : (
        <path d="M44.8 34.5a5.2 5.2 0 0 1 10.4 0l-2.4 23.3h-5.6ZM44.9 68.3a5.1 5.1 0 1 1 10.2 0 5.1 5.1 0 0 1-10.2 0Z" fill="#14161a" />
      )}
    </svg>
  );
}

export interface HazardBoxProps {
  readonly harm: HazardHarm;
  /** The hazard in one sentence. */
  readonly title: string;
  /** What to do instead: a hazard that leaves this out leaves the reader with it. */
  readonly instead: ComponentChildren;
  /** What happens, and to whom. */
  readonly children?: ComponentChildren;
}

/** A hazard as it looks everywhere: sign, what can happen, what to do instead. Never folded, never only coloured. */
export function HazardBox({ harm, title, instead, children }: HazardBoxProps): VNode {
  return (
    <div class="hazard" role="note" aria-label={`Hazard, ${NAMES[harm].toLowerCase()}`}>
      <div class="hazard-panel">
        <HazardSign harm={harm} />
      </div>
      <div class="hazard-text">
        <p class="hazard-kind">{NAMES[harm]}</p>
        <p class="hazard-title">{title}</p>
        {children !== undefined && <div>{children}</div>}
        <div class="hazard-instead">
          <strong>Instead: </strong>
          {instead}
        </div>
      </div>
    </div>
  );
}
