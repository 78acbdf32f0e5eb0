import { InputError, requireNumber } from '../errors.ts';

/** The smallest crest factor that the clipped sine is offered for: below it the wave is nearly square. */
export const MIN_CREST_FACTOR = 1.05;

/** Written-down √2 (1.4142, 1.415) is taken for a pure sine up to here. */
export const MAX_CREST_FACTOR = 1.415;

/** A sine of the mains whose top may be flattened. */
export interface ClippedSine {
  /** Peak over RMS of the wave. */
  readonly crestFactor: number;
  /** What the underlying sine is multiplied by, per volt RMS of the finished wave. */
  readonly scale: number;
  /** The level, as a part of the sine's own amplitude, at which it is cut: 1 for a pure sine. */
  readonly level: number;
  /** Phase in radians at which the top begins: π/2 for a pure sine. */
  readonly cornerRadians: number;
}

/** Mean square of min(|sin|, c) for c = sin(corner). */
const clippedMeanSquare = (corner: number): number => {
  const c = Math.sin(corner);
  return (2 / Math.PI) * (corner / 2 - Math.sin(2 * corner) / 4 + c * c * (Math.PI / 2 - corner));
};

/**
 * A sine clipped symmetrically so that its peak over RMS equals `crestFactor`, scaled to an RMS of one.
 *
 * This is the usual picture of mains flattened by capacitor-input loads: same RMS, lower peak, flat top.
 * Range: 1.05 to √2 (any value from √2 to 1.415 is the pure sine). Throws `InputError` outside it: a wave more
 * peaked than a sine is not modelled. Source: definition of the crest factor; the corner is found by bisection.
 */
export function clippedSine(crestFactor: number = Math.SQRT2): ClippedSine {
  requireNumber('crestFactor', crestFactor, { min: MIN_CREST_FACTOR, max: MAX_CREST_FACTOR });
  if (crestFactor >= Math.SQRT2 * (1 - 1e-12)) {
    return { crestFactor: Math.SQRT2, scale: Math.SQRT2, level: 1, cornerRadians: Math.PI / 2 };
  }
  let low = 1e-3;
  let high = Math.PI / 2;
  // The crest factor rises steadily with the corner, so bisection cannot fail; 60 halvings exhaust a double.
  for (let i = 0; i < 60; i += 1) {
    const mid = (low + high) / 2;
    if (Math.sin(mid) / Math.sqrt(clippedMeanSquare(mid)) < crestFactor) low = mid;
    else high = mid;
  }
  const cornerRadians = (low + high) / 2;
  const level = Math.sin(cornerRadians);
  const meanSquare = clippedMeanSquare(cornerRadians);
  if (!(meanSquare > 0)) throw new InputError('crestFactor', crestFactor, { min: MIN_CREST_FACTOR, max: MAX_CREST_FACTOR });
  return { crestFactor, scale: 1 / Math.sqrt(meanSquare), level, cornerRadians };
}

/** The wave at a phase (radians), per volt RMS. */
export function clippedSineAt(wave: ClippedSine, radians: number): number {
  const s = Math.sin(radians);
  return wave.scale * (s > wave.level ? wave.level : s < -wave.level ? -wave.level : s);
}
