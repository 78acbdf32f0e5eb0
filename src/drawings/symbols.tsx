/*
 * Schematic symbols in the style of IEC 60617. Each is drawn about its own middle, its two terminals on the vertical
 * axis at ±`REACH` (up is negative, as everywhere in SVG), and placed with `at` and `turn` (degrees, clockwise).
 * They are plain functions to Preact nodes: Astro renders them at build, calculators while they run.
 */
import type { ComponentChildren, VNode } from 'preact';

/** Half the distance between a symbol's terminals. */
export const REACH = 26;

export interface Placement {
  readonly at: readonly [x: number, y: number];
  readonly turn?: number;
  /** Carries nothing now. */
  readonly idle?: boolean;
}

function Placed({ at, turn = 0, idle, children }: Placement & { readonly children: ComponentChildren }): VNode {
  return (
    <g transform={`translate(${at[0]} ${at[1]})${turn === 0 ? '' : ` rotate(${turn})`}`} {...(idle === true ? { class: 'idle' } : {})}>
      {children}
    </g>
  );
}

/** A winding: four half circles that bulge to the right (04-03-01). */
export const Winding = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-20M0 20V${REACH}`} />
    <path class="part" d="M0 -20a5 5 0 0 1 0 10a5 5 0 0 1 0 10a5 5 0 0 1 0 10a5 5 0 0 1 0 10" />
  </Placed>
);

/** The iron core beside a winding (04-03-03). */
export const Core = ({ at, length = 46 }: { readonly at: readonly [number, number]; readonly length?: number }): VNode => (
  <path class="part" d={`M${at[0]} ${at[1] - length / 2}v${length}`} />
);

/** A semiconductor diode, current upwards (05-03-01). */
export const Diode = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V${REACH}`} />
    <path class="part" d="M-9 8H9L0 -8ZM-9 -8H9" />
  </Placed>
);

/** A light-emitting diode: a diode with two arrows leaving it (05-03-02). */
export const Led = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V${REACH}`} />
    <path class="part" d="M-9 8H9L0 -8ZM-9 -8H9M12 2l9 -7m-5 -0.5l5 0.5l-1.5 5M12 10l9 -7m-5 -0.5l5 0.5l-1.5 5" />
  </Placed>
);

/** A polarised capacitor, positive plate up (04-02-05). */
export const PolarisedCapacitor = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-4M0 4V${REACH}`} />
    <path class="part" d="M-13 -4H13M-13 4H13M-16 -12h7M-12.5 -15.5v7" />
  </Placed>
);

/** A capacitor that is not polarised (04-02-01). */
export const Capacitor = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-4M0 4V${REACH}`} />
    <path class="part" d="M-13 -4H13M-13 4H13" />
  </Placed>
);

/** A resistor (04-01-01). */
export const Resistor = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-17M0 17V${REACH}`} />
    <path class="part" d="M-6.5 -17h13v34h-13Z" />
  </Placed>
);

/** A fuse: a resistor's box with its wire straight through (07-21-01). */
export const Fuse = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V${REACH}`} />
    <path class="part" d="M-5.5 -15h11v30h-11Z" />
  </Placed>
);

/** A relay's coil (07-15-01). */
export const RelayCoil = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-9M0 9V${REACH}`} />
    <path class="part" d="M-16 -9h32v18h-32Z" />
  </Placed>
);

/** A lamp (08-10-01). */
export const Lamp = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-11M0 11V${REACH}`} />
    <path class="part" d="M11 0a11 11 0 1 1 -22 0a11 11 0 1 1 22 0ZM-7.8 -7.8L7.8 7.8M7.8 -7.8L-7.8 7.8" />
  </Placed>
);

/** A make contact, open (07-02-01). */
export const Switch = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="wire" d={`M0 ${-REACH}V-12M0 12V${REACH}`} />
    <path class="part" d="M0 12L-9 -11" />
  </Placed>
);

/** Connection to the chassis; its terminal is its middle (02-15-04). */
export const ChassisGround = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="part" d="M0 0V10M-11 10H11M-11 10l-5 7M0 10l-5 7M11 10l-5 7" />
  </Placed>
);

/** Protective earth; its terminal is its middle (02-15-03). */
export const ProtectiveEarth = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="part" d="M0 0V10M-11 10H11M-7 14H7M-3 18H3M15 12a15 15 0 1 1 -30 0a15 15 0 1 1 30 0Z" />
  </Placed>
);

/** A jack of tip and sleeve, its leads to the left: tip above, sleeve below (03-03-01 after the style of the standard). */
export const Jack = (place: Placement): VNode => (
  <Placed {...place}>
    <path class="part" d="M-26 -12H6l5 6l5 -6M-26 12H16M16 -20V20h8V-20Z" />
  </Placed>
);

/** A regulator as a block, input left, output right, its third pin below. */
export const RegulatorBlock = ({ at, idle, name }: Placement & { readonly name: string }): VNode => (
  <Placed at={at} {...(idle === undefined ? {} : { idle })}>
    <path class="part block" d="M-31 -18h62v36h-62Z" />
    <text class="label-part" x="0" y="5" text-anchor="middle">
      {name}
    </text>
  </Placed>
);

/** A joint of wires. */
export const Node = ({ at }: { readonly at: readonly [number, number] }): VNode => <circle class="node" cx={at[0]} cy={at[1]} r="3" />;
