import { nextRatedVolts, RATED_VOLTS } from '../parts/capacitor.ts';
import { say } from '../findings/check.ts';
import { WANTED_CAPACITOR_SHARE } from '../findings/reservoir.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../findings/regulator.ts';
import { ripplelessRail, solveCorner } from './chain-corner.ts';
import { chainReservoir, REFILLS_PER_CYCLE } from './chain-parts.ts';
import type { ChainCorner, ChainInput, ChainReservoir } from './chain-types.ts';
import { operatingCorners } from './corners.ts';
import type { Mains, OperatingCorner } from './corners.ts';
import { neededInputVolts } from './regulator-stage.ts';

/** Sizes on any shelf, farads (E3 and E6, IEC 60063). */
export const STANDARD_RESERVOIR_FARADS = [470e-6, 1000e-6, 2200e-6, 3300e-6, 4700e-6, 6800e-6, 10_000e-6] as const;

/** Ripple to plan for, over the rail at the reservoir: enough left for the regulator, no needless inrush (practice). */
const PLANNED_RIPPLE_SHARE = 0.1;

/** The corner that decides whether a rail holds: low mains, everything on, smallest and oldest reservoir, lowest frequency. */
export function decidingCorner(mains: Mains): OperatingCorner {
  const candidates = operatingCorners(mains).filter((at) => at.mains === 'low' && at.load === 'everything' && at.reservoir === 'smallest-oldest');
  const [first, second] = candidates;
  if (first === undefined) throw new RangeError('no corner at low mains with everything on');
  return second !== undefined && second.hertz < first.hertz ? second : first;
}

/** Everything of a chain but its reservoir. */
export type ChainWithoutReservoir = Omit<ChainInput, 'reservoir'>;

export interface SizedReservoir {
  readonly reservoir: ChainReservoir;
  readonly why: string;
  /** The deciding corner with it, and the chain that was solved there. */
  readonly at: ChainCorner;
  readonly input: ChainInput;
}

/** Highest volts that one capacitor of the reservoir can see: the peak at high mains with nothing drawn. */
function highestVolts({ winding, mains }: ChainWithoutReservoir): number {
  return (winding.openCircuitVolts * mains.highVolts * Math.SQRT2) / mains.nominalVolts;
}

const marginOf = (input: ChainInput, at: ChainCorner): number => {
  if (!at.solved) return -Infinity;
  if (at.headroomVolts !== undefined) return at.headroomVolts - WANTED_VALLEY_MARGIN_VOLTS;
  // Without a regulator the ripple itself is what is to be kept small.
  return 2 * PLANNED_RIPPLE_SHARE * (input.stage.kind === 'none' ? input.stage.designVolts : 0) - at.rectifier.rail.rippleVolts;
};

/** What the solved ripple of a loaded rectifier is, over what the rule of thumb says, at the least (tables of both). */
const LEAST_OF_RULE = 0.6;

/**
 * Capacitance below which no size can serve, marked: the rule of thumb at its kindest, for the ripple planned for and
 * for the room between a rail without ripple and what is needed.
 */
function firstFarads(input: ChainWithoutReservoir, smallest: ChainInput, corner: OperatingCorner): number {
  const { stage, load, topology, winding } = input;
  const planned = PLANNED_RIPPLE_SHARE * 1.2 * winding.openCircuitVolts * (topology === 'doubler' ? 2 : 1);
  const charge = load.everythingAmps / (REFILLS_PER_CYCLE[topology] * corner.hertz);
  const forRipple = charge / planned;
  if (stage.kind === 'none') return forRipple;
  const room = ripplelessRail(smallest, corner).railVolts - neededInputVolts(stage, load.everythingAmps) - WANTED_VALLEY_MARGIN_VOLTS;
  // Half of the ripple hangs below the mean.
  const forValley = room > 0 ? (LEAST_OF_RULE * charge) / (2 * room * corner.faradsRatio) : 0;
  return Math.max(forRipple, forValley);
}

/**
 * Picks a reservoir: the smallest standard capacitance from which the ripple is about a tenth of the rail, the valley
 * leaves the margin asked for, and its ripple current stays within four fifths of what such a part usually bears; and
 * the lowest standard rating of which high mains without load fills four fifths. When no size leaves the margin, the
 * one beyond which more capacitance no longer gains a tenth of a volt.
 */
export function sizeReservoir(input: ChainWithoutReservoir): SizedReservoir {
  const corner = decidingCorner(input.mains);
  const peak = highestVolts(input);
  const ratedVolts = nextRatedVolts({ volts: Math.min(peak, 1000) }) ?? RATED_VOLTS.at(-1) ?? 100;
  const build = (farads: number): ChainInput => ({
    ...input,
    reservoir: chainReservoir({ farads, ratedVolts, topology: input.topology, hertz: input.mains.hertz, airCelsius: input.cooling.airCelsius }),
  });
  const sizes = STANDARD_RESERVOIR_FARADS;
  const first = firstFarads(input, build(sizes[0]), corner);
  let index = sizes.findIndex((farads) => farads >= first);
  if (index < 0) index = sizes.length - 1;

  let chosen = build(sizes[index] as number);
  let at = solveCorner(chosen, corner);
  for (index += 1; index < sizes.length; index++) {
    const limit = chosen.reservoir.ratedRippleAmps ?? Infinity;
    const rippleFits = at.solved && at.rectifier.reservoir.rmsAmps <= WANTED_CAPACITOR_SHARE * limit;
    if (marginOf(chosen, at) >= 0 && rippleFits) break;
    // The valley cannot come higher than the top of the ripple stands now: then no reservoir helps.
    if (at.solved && rippleFits && marginOf(chosen, at) + at.rectifier.rail.rippleVolts < 0) break;
    const larger = build(sizes[index] as number);
    const next = solveCorner(larger, corner);
    const gained = next.solved && at.solved ? next.rectifier.rail.minVolts - at.rectifier.rail.minVolts : Infinity;
    if (rippleFits && gained < 0.1) break;
    chosen = larger;
    at = next;
  }
  const ripple = at.solved ? `${say(at.rectifier.rail.rippleVolts, 'V')} of ripple` : 'no steady rail';
  const serves = marginOf(chosen, at) >= 0;
  return {
    reservoir: chosen.reservoir,
    at,
    input: chosen,
    why:
      `${serves ? 'The smallest standard size that serves' : 'No reservoir leaves the valley its margin here; this is where more of it stops helping'}: ${ripple} at ${corner.words}. ` +
      `Rated ${say(chosen.reservoir.ratedVolts, 'V')} because high mains without load reaches ${say(peak, 'V')}.`,
  };
}
