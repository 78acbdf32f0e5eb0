import { requireNumber } from '../errors.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../findings/regulator.ts';
import { WANTED_CAPACITOR_SHARE } from '../findings/reservoir.ts';
import { preferredValues } from '../quantity.ts';
import { solveCorner } from './chain-corner.ts';
import { chainReservoir } from './chain-parts.ts';
import type { ChainWithoutReservoir } from './size-reservoir.ts';
import { decidingCorner } from './size-reservoir.ts';

/** Sizes that electrolytics are made in, farads (IEC 60063, E6), 220 µF to 22 000 µF. */
export const RESERVOIR_SIZES: readonly number[] = [1e-4, 1e-3, 1e-2]
  .flatMap((decade) => preferredValues('E6').map((value) => Number((value * decade).toPrecision(3))))
  .filter((farads) => farads >= 220e-6 && farads <= 22e-3);

/** A rail with one size of reservoir, at the corner that decides: low mains, everything on, smallest and oldest part. */
export interface ReservoirPoint {
  /** As marked. */
  readonly farads: number;
  readonly valleyVolts: number;
  readonly rippleVolts: number;
  readonly rippleAmps: number;
  /** Ripple current it may carry; left out when unknown. */
  readonly allowedAmps?: number;
}

/**
 * The same supply with one size of reservoir after another, each solved at the deciding corner. Sizes with which there is
 * no steady rail are left out. `farads` as marked, ascending; `kind` a row of the electrolytic classes. Throws
 * `InputError` as `chainReservoir` does.
 */
export function sweepReservoir(options: {
  readonly input: ChainWithoutReservoir;
  readonly farads: readonly number[];
  readonly ratedVolts: number;
  readonly kind?: string;
  readonly ratedRippleAmps?: number;
}): readonly ReservoirPoint[] {
  const { input, ratedVolts, kind, ratedRippleAmps } = options;
  const corner = decidingCorner(input.mains);
  return options.farads.flatMap((farads): ReservoirPoint[] => {
    const reservoir = chainReservoir({
      farads, ratedVolts, topology: input.topology, hertz: input.mains.hertz, airCelsius: input.cooling.airCelsius,
      ...(kind === undefined ? {} : { kind }), ...(ratedRippleAmps === undefined ? {} : { ratedRippleAmps }),
    });
    const at = solveCorner({ ...input, reservoir }, corner);
    if (!at.solved) return [];
    const { rail } = at.rectifier;
    return [{
      farads, valleyVolts: rail.minVolts, rippleVolts: rail.rippleVolts, rippleAmps: at.rectifier.reservoir.rmsAmps,
      ...(reservoir.ratedRippleAmps === undefined ? {} : { allowedAmps: reservoir.ratedRippleAmps }),
    }];
  });
}

/** The first of ascending points whose valley leaves 0.3 V over `floorVolts` and whose ripple current stays at four fifths; `undefined` when none does. */
export function smallestReservoir(options: { readonly points: readonly ReservoirPoint[]; readonly floorVolts: number }): ReservoirPoint | undefined {
  const floor = requireNumber('floorVolts', options.floorVolts, { min: 0, max: 1000 }) + WANTED_VALLEY_MARGIN_VOLTS;
  return options.points.find(({ valleyVolts, rippleAmps, allowedAmps }) => valleyVolts >= floor && (allowedAmps === undefined || rippleAmps <= WANTED_CAPACITOR_SHARE * allowedAmps));
}
