/** The Tarn 45's high-voltage side: what its reservoirs hold when the plug is out, and what a hand would carry. */
import lines from '../../../content/shop/high-voltage.json';
import { solveTransient, type Element } from '../../compute/index.ts';
import { HAND } from '../../compute/grounding/limits.ts';

/** Rectifier, first reservoir, standby switch, second reservoir with the bleeder, dropper, preamp reservoir. */
export const tarnLine = lines.tarn45;

/** Insulation of a capacitor in good health: a few microamps at full charge. Supposed. */
export const LEAK_OHMS = 100e6;

/** The two output valves while they are hot, as one resistance, and how long after switch-off they stay hot. Supposed. */
const HOT_VALVES_OHMS = 6e3;
const STAYS_HOT_SECONDS = 10;

/** How the amp stood at the moment the plug came out. */
export interface LeftStanding {
  readonly standby: 'closed' | 'open';
  readonly valves: 'hot' | 'out';
  readonly bleeder: 'whole' | 'open';
  readonly dropper: 'whole' | 'open';
}

/** Volts left on the three reservoirs so many seconds after the plug came out, every one of them charged to `volts` before. */
export function leftAfter(options: { readonly volts: number; readonly seconds: number; readonly standing: LeftStanding }): {
  readonly first: number;
  readonly second: number;
  readonly preamp: number;
} {
  const { volts, seconds, standing } = options;
  const reservoir = (name: string, farads: number): readonly Element[] => [
    { kind: 'capacitor', name, between: [name, 'ground'], farads, initialVolts: volts },
    { kind: 'resistor', name: `${name}-leak`, between: [name, 'ground'], ohms: LEAK_OHMS },
  ];
  const solution = solveTransient({
    seconds,
    elements: [
      ...reservoir('first', tarnLine.firstFarads),
      ...reservoir('second', tarnLine.secondFarads),
      ...reservoir('preamp', tarnLine.preampFarads),
      ...(standing.standby === 'closed' ? [{ kind: 'resistor', name: 'standby', between: ['first', 'second'], ohms: 0.01 } as const] : []),
      ...(standing.bleeder === 'whole' ? [{ kind: 'resistor', name: 'bleeder', between: ['second', 'ground'], ohms: tarnLine.bleederOhms } as const] : []),
      ...(standing.dropper === 'whole' ? [{ kind: 'resistor', name: 'dropper', between: ['second', 'preamp'], ohms: tarnLine.dropperOhms } as const] : []),
      ...(standing.valves === 'hot'
        ? [
            { kind: 'switch', name: 'cathodes', between: ['second', 'valves'], closed: true, opensAt: STAYS_HOT_SECONDS } as const,
            { kind: 'resistor', name: 'valves', between: ['valves', 'ground'], ohms: HOT_VALVES_OHMS } as const,
          ]
        : []),
    ],
  });
  const last = (node: string): number => solution.volts[node]?.at(-1) ?? Number.NaN;
  return { first: last('first'), second: last('second'), preamp: last('preamp') };
}

/**
 * Volts that come back on a reservoir after it was discharged through `probeOhms` for `probeSeconds` and left for
 * `waitSeconds`, with a link of `linkOhms` across it or none. The dielectric is a second, slow capacitor beside the first.
 */
export function recovered(options: {
  readonly volts: number;
  readonly farads: number;
  /** Part of the volts that comes back in the end. */
  readonly share: number;
  readonly probeOhms: number;
  readonly probeSeconds: number;
  readonly waitSeconds: number;
  readonly linkOhms?: number;
}): number {
  const { volts, farads, share, probeOhms, probeSeconds, waitSeconds, linkOhms } = options;
  const slowFarads = (farads * share) / (1 - share);
  const solution = solveTransient({
    seconds: probeSeconds + waitSeconds,
    elements: [
      { kind: 'capacitor', name: 'plates', between: ['top', 'ground'], farads, initialVolts: volts },
      { kind: 'resistor', name: 'leak', between: ['top', 'ground'], ohms: LEAK_OHMS },
      { kind: 'capacitor', name: 'slow', between: ['inside', 'ground'], farads: slowFarads, initialVolts: volts },
      { kind: 'resistor', name: 'way-out', between: ['top', 'inside'], ohms: SLOW_SECONDS / slowFarads },
      { kind: 'switch', name: 'probe', between: ['top', 'tip'], closed: true, opensAt: probeSeconds },
      { kind: 'resistor', name: 'probe-resistor', between: ['tip', 'ground'], ohms: probeOhms },
      ...(linkOhms === undefined ? [] : [{ kind: 'resistor', name: 'link', between: ['top', 'ground'], ohms: linkOhms } as const]),
    ],
  });
  return solution.volts['top']?.at(-1) ?? Number.NaN;
}

/** How slowly the dielectric gives back what it took. Supposed: minutes. */
const SLOW_SECONDS = 120;

/** A hand to hand path on DC: skin and body in a row, nothing through the skin's capacitance. */
export const HAND_DC_OHMS = HAND.skinOhms + HAND.bodyOhms;

/** RMS current through a hand on AC of `volts` RMS. */
export function handRmsAmps(options: { readonly volts: number; readonly hertz: number }): number {
  const { skinOhms, skinFarads, bodyOhms } = HAND;
  const x = 2 * Math.PI * options.hertz * skinFarads * skinOhms;
  // Skin and its capacitance side by side: R/(1 + jx).
  const real = skinOhms / (1 + x * x) + bodyOhms;
  const imaginary = (skinOhms * x) / (1 + x * x);
  return options.volts / Math.hypot(real, imaginary);
}
