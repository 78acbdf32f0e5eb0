/**
 * A fourth-order implicit Runge-Kutta method with an explicit first stage and equal diagonal (γ = 1/4), L-stable and
 * stiffly accurate, with an embedded third-order result: ARK4(3)6L[2]SA-ESDIRK.
 * Source: C. A. Kennedy and M. H. Carpenter, "Additive Runge-Kutta schemes", Appl. Numer. Math. 44 (2003) 139-181.
 *
 * L-stable because a stiff winding behind a small reservoir has a time constant of a microsecond beside a cycle of
 * twenty milliseconds; equal diagonal because a stage is then one diode equation with one resistance added.
 */
export const STAGES = 6;
export const DIAGONAL = 1 / 4;
export const STAGE_TIMES = Float64Array.of(0, 1 / 2, 83 / 250, 31 / 50, 17 / 20, 1);
/** Lower triangle, row by row (stage i uses entries i·6 … i·6 + i − 1); the last row is also the solution's weights. */
export const STAGE_WEIGHTS = Float64Array.of(
  0, 0, 0, 0, 0, 0,
  1 / 4, 0, 0, 0, 0, 0,
  8611 / 62500, -1743 / 31250, 0, 0, 0, 0,
  5012029 / 34652500, -654441 / 2922500, 174375 / 388108, 0, 0, 0,
  15267082809 / 155376265600, -71443401 / 120774400, 730878875 / 902184768, 2285395 / 8070912, 0, 0,
  82889 / 524892, 0, 15625 / 83664, 69875 / 102672, -2260 / 8211, 0,
);
export const SOLUTION_WEIGHTS = Float64Array.of(
  82889 / 524892, 0, 15625 / 83664, 69875 / 102672, -2260 / 8211, 1 / 4,
);
/** Solution weights less embedded weights. */
export const ERROR_WEIGHTS = Float64Array.of(
  82889 / 524892 - 4586570599 / 29645900160,
  0,
  15625 / 83664 - 178811875 / 945068544,
  69875 / 102672 - 814220225 / 1159782912,
  -2260 / 8211 + 3700637 / 11593932,
  1 / 4 - 61727 / 225920,
);
