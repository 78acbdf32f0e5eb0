import type { CatalogueRow } from './row.ts';

/** A gate of a fuse standard: at a multiple of rated current it must not open before `minSeconds`, and must by `maxSeconds`. */
export interface FuseGate {
  readonly multiple: number;
  readonly minSeconds?: number;
  readonly maxSeconds?: number;
}

export interface FuseStandard extends CatalogueRow {
  readonly action: 'time-lag' | 'fast';
  /** Share of its rating that it may carry for ever. */
  readonly continuousShare: number;
  /** Gates by range of ratings, up to and including `toAmps`. */
  readonly gates: readonly { readonly toAmps: number; readonly points: readonly FuseGate[] }[];
  /** Breaking capacity, amps: the larger of a figure and a multiple of its rating; by range of ratings. */
  readonly breaking: readonly { readonly toAmps: number; readonly amps: number; readonly timesRated?: number }[];
}

/** Rated currents of miniature fuses (IEC 60127). */
export const IEC_FUSE_AMPS: readonly number[] = [
  0.032, 0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8,
  1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10,
];

const HOLDS: FuseGate = { multiple: 1.5, minSeconds: 3600 };

/** Fuses as their standards gate them. Gate times of sheet 5 were read in data sheets; sheets 2 and 3 are typical and must be read there. */
export const FUSE_STANDARDS: readonly FuseStandard[] = [
  {
    id: 'iec-sheet-5', name: 'IEC 60127-2 sheet 5: time-lag, high breaking, ceramic 5 × 20', action: 'time-lag', continuousShare: 1, basis: 'rated', source: { id: 'iec-60127-2', at: 'sheet 5' },
    gates: [
      { toAmps: 0.8, points: [HOLDS, { multiple: 2.1, maxSeconds: 1800 }, { multiple: 2.75, minSeconds: 0.25, maxSeconds: 80 }, { multiple: 4, minSeconds: 0.05, maxSeconds: 5 }, { multiple: 10, minSeconds: 0.005, maxSeconds: 0.15 }] },
      { toAmps: 3.15, points: [HOLDS, { multiple: 2.1, maxSeconds: 1800 }, { multiple: 2.75, minSeconds: 0.75, maxSeconds: 80 }, { multiple: 4, minSeconds: 0.095, maxSeconds: 5 }, { multiple: 10, minSeconds: 0.01, maxSeconds: 0.1 }] },
      { toAmps: 10, points: [HOLDS, { multiple: 2.1, maxSeconds: 1800 }, { multiple: 2.75, minSeconds: 0.75, maxSeconds: 80 }, { multiple: 4, minSeconds: 0.15, maxSeconds: 5 }, { multiple: 10, minSeconds: 0.02, maxSeconds: 0.1 }] },
    ],
    breaking: [{ toAmps: 10, amps: 1500 }],
    note: 'Gates at ten times rated below 1 A, and above 6.3 A, are typical.',
  },
  {
    id: 'iec-sheet-3', name: 'IEC 60127-2 sheet 3: time-lag, low breaking, glass 5 × 20', action: 'time-lag', continuousShare: 1, basis: 'typical', source: { id: 'iec-60127-2', at: 'sheet 3' },
    gates: [
      { toAmps: 0.1, points: [HOLDS, { multiple: 2.1, maxSeconds: 120 }, { multiple: 2.75, minSeconds: 0.2, maxSeconds: 10 }, { multiple: 4, minSeconds: 0.04, maxSeconds: 3 }, { multiple: 10, minSeconds: 0.01, maxSeconds: 0.3 }] },
      { toAmps: 10, points: [HOLDS, { multiple: 2.1, maxSeconds: 120 }, { multiple: 2.75, minSeconds: 0.6, maxSeconds: 10 }, { multiple: 4, minSeconds: 0.15, maxSeconds: 3 }, { multiple: 10, minSeconds: 0.02, maxSeconds: 0.3 }] },
    ],
    breaking: [{ toAmps: 10, amps: 35, timesRated: 10 }],
  },
  {
    id: 'iec-sheet-2', name: 'IEC 60127-2 sheet 2: fast, low breaking, glass 5 × 20', action: 'fast', continuousShare: 1, basis: 'typical', source: { id: 'iec-60127-2', at: 'sheet 2' },
    gates: [{ toAmps: 10, points: [HOLDS, { multiple: 2.1, maxSeconds: 1800 }, { multiple: 2.75, minSeconds: 0.01, maxSeconds: 3 }, { multiple: 4, minSeconds: 0.003, maxSeconds: 0.3 }, { multiple: 10, maxSeconds: 0.02 }] }],
    breaking: [{ toAmps: 10, amps: 35, timesRated: 10 }],
  },
  {
    id: 'ul-248-14', name: 'UL/CSA 248-14', action: 'time-lag', continuousShare: 0.75, basis: 'rated', source: { id: 'ul-248-14' },
    gates: [{ toAmps: 30, points: [{ multiple: 1, minSeconds: 14_400 }, { multiple: 1.35, maxSeconds: 3600 }, { multiple: 2, maxSeconds: 120 }] }],
    breaking: [{ toAmps: 1, amps: 35 }, { toAmps: 3.5, amps: 100 }, { toAmps: 10, amps: 200 }],
    note: 'Breaking capacity at 250 V; 10 kA at 125 V. Four hours at its rating typical. Carries its rating in the test, but is used to 75 % of it (typical of selection guides). A 1 A fuse of this standard is not the same fuse as a 1 A IEC one.',
  },
];

/** Melting integral of time-lag ceramic fuses by rating, A²s, and the power law fitted to it for other ratings. */
export const MELTING_A2S: readonly (readonly [number, number])[] = [[1, 1.7], [1.25, 3], [1.6, 5.4], [2, 9.7], [2.5, 17.4], [3.15, 31], [4, 56]];
export const MELTING_EXPONENT = 2.52;

/** Cold resistance of a 1 A time-lag fuse, ohms, and the power of its rating that others follow (assumed). */
export const COLD_OHMS_AT_1A = 0.2;
export const COLD_OHMS_EXPONENT = -1.35;

/** Share of the melting integral that each of so many pulses may take, ten seconds or more apart. */
export const PULSE_SHARES: readonly (readonly [number, number])[] = [[100, 0.48], [1000, 0.38], [10_000, 0.29], [100_000, 0.22]];
