/**
 * A singly diagonally implicit Runge-Kutta method of order 4 with five stages, L-stable and stiffly accurate, with an
 * embedded third-order result. It keeps nothing from one step to the next but the states themselves, so a switch may
 * change over between two steps without a restart.
 * Source: E. Hairer and G. Wanner, "Solving Ordinary Differential Equations II" (1996), table IV.6.5.
 */
export const STAGES = 5;
export const DIAGONAL = 1 / 4;
export const STAGE_TIMES = Float64Array.of(1 / 4, 3 / 4, 11 / 20, 1 / 2, 1);
/** Below the diagonal, row by row. */
export const STAGE_WEIGHTS = Float64Array.of(
  0, 0, 0, 0, 0,
  1 / 2, 0, 0, 0, 0,
  17 / 50, -1 / 25, 0, 0, 0,
  371 / 1360, -137 / 2720, 15 / 544, 0, 0,
  25 / 24, -49 / 48, 125 / 16, -85 / 12, 0,
);
export const SOLUTION_WEIGHTS = Float64Array.of(25 / 24, -49 / 48, 125 / 16, -85 / 12, 1 / 4);
/** Solution weights less embedded weights. */
export const ERROR_WEIGHTS = Float64Array.of(25 / 24 - 59 / 48, -49 / 48 + 17 / 96, 125 / 16 - 225 / 32, 0, 1 / 4);
