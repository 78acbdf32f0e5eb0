import { requireNumber } from '../errors.ts';

/** Numbers drawn in a fixed order from a seed: the same seed gives the same run on every machine. */
export interface RandomSource {
  /** 0 to 1, the end not included. */
  readonly next: () => number;
  /** Evenly spread between two ends. */
  readonly between: (min: number, max: number) => number;
  /** Between two ends, likeliest in the middle, in a straight line to none at each end. */
  readonly around: (min: number, max: number) => number;
}

/**
 * A small generator for tolerance runs (not for secrets): a counter in steps of the odd 32-bit number nearest to 2³²
 * over the golden ratio, stirred by the 32-bit finaliser of MurmurHash3 (public domain). Every state occurs once in 2³² draws.
 * `seed` a whole number 0 to 2³² − 1. Throws `InputError` outside.
 */
export function seededRandom(seed: number): RandomSource {
  let state = requireNumber('seed', seed, { min: 0, max: 0xffffffff }) >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x85ebca6b);
    mixed ^= mixed >>> 13;
    mixed = Math.imul(mixed, 0xc2b2ae35);
    mixed ^= mixed >>> 16;
    return (mixed >>> 0) / 0x100000000;
  };
  return {
    next,
    between: (min, max) => min + (max - min) * next(),
    around: (min, max) => min + ((max - min) * (next() + next())) / 2,
  };
}
