import { requireNumber } from '../errors.ts';
import { inrushBoundAmps } from '../parts/transformer.ts';
import { solveTransient } from '../network/solve-transient.ts';
import { OTHER_HALF_ELEMENT, WINDING_ELEMENT, rectifierElements } from './timed-supply.ts';
import type { TimedSupply } from './timed-supply.ts';

/** The first charge of an empty reservoir, with no load, at the worst moment of the mains cycle. */
export interface ChargingSurge {
  /** Largest current in the winding, and the phase at switch-on that gives it. */
  readonly peakAmps: number;
  readonly peakDegrees: number;
  /** Largest I²t in the winding, and the phase that gives it. */
  readonly a2s: number;
  readonly a2sDegrees: number;
  /** The same for a reservoir charged from a steady voltage at the peak: C·Vp²/(2R). A textbook figure, from above. */
  readonly boundA2s: number;
}

/** Phases tried; the halves of a cycle are alike for every rectifier that uses both. */
const PHASE_STEP_DEGREES = 15;
const MAX_CYCLES = 20;

/** ∫i²dt of uneven samples joined by straight lines, A²s. */
export function integralOfSquare(amps: Float64Array, seconds: Float64Array): number {
  let sum = 0;
  for (let k = 1; k < amps.length; k += 1) {
    const a = amps[k - 1] as number;
    const b = amps[k] as number;
    sum += (((seconds[k] as number) - (seconds[k - 1] as number)) * (a * a + a * b + b * b)) / 3;
  }
  return sum;
}

const peakOf = (amps: Float64Array): number => amps.reduce((most, each) => Math.max(most, Math.abs(each)), 0);

/**
 * Charging surge of the empty reservoir, solved in time for switch-on at every 15° of the mains cycle. Winding
 * resistance, diodes and ESR limit it; leakage inductance and mains impedance, which would make it less, are left out.
 * Of a centre tap the half that carries more is given. Throws as `solveTransient`.
 */
export function chargingSurge(supply: TimedSupply): ChargingSurge {
  const { topology, hertz, winding, reservoir, diode, crestFactor = Math.SQRT2 } = supply;
  const elements = rectifierElements(supply);
  const bothWays = topology === 'bridge';
  const diodesInPath = topology === 'bridge' ? 2 : 1;
  const ohms = winding.ohms + reservoir.ohms + diodesInPath * diode.ohms;
  const peakVolts = winding.openCircuitVolts * crestFactor;
  // Charging goes on for some time constants, and only during a part of each cycle.
  const cycles = Math.min(MAX_CYCLES, 1.5 + Math.ceil(8 * ohms * reservoir.farads * hertz));
  const best = { peakAmps: 0, peakDegrees: 0, a2s: 0, a2sDegrees: 0 };
  for (let degrees = 0; degrees < (bothWays ? 180 : 360); degrees += PHASE_STEP_DEGREES) {
    const { seconds, amps } = solveTransient({ elements, seconds: cycles / hertz, hertz, startPhaseDegrees: degrees, maxPoints: 4000 });
    for (const name of [WINDING_ELEMENT, OTHER_HALF_ELEMENT]) {
      const series = amps[name];
      if (series === undefined) continue;
      const peak = peakOf(series);
      const a2s = integralOfSquare(series, seconds);
      if (peak > best.peakAmps) Object.assign(best, { peakAmps: peak, peakDegrees: degrees });
      if (a2s > best.a2s) Object.assign(best, { a2s, a2sDegrees: degrees });
    }
  }
  // A doubler's winding charges each of its two reservoirs.
  const charges = topology === 'doubler' ? 2 : 1;
  return { ...best, boundA2s: (charges * reservoir.farads * peakVolts * peakVolts) / (2 * ohms) };
}

/** Switch-on as the mains side sees it. */
export interface PrimarySurge {
  /** The reservoir's share, through the turns ratio; solved. */
  readonly reflectedPeakAmps: number;
  readonly reflectedA2s: number;
  /** The core's share; upper bounds. Left out for a transformer whose regulation nobody knows. */
  readonly magnetisingPeakBoundAmps?: number;
  readonly magnetisingA2sBound?: number;
  /** I²t of both together, from above. */
  readonly a2sBound?: number;
}

/**
 * What a surge in a secondary of `secondaryVolts` (open circuit) means on the mains side, and the core's own inrush.
 *
 * The core is bounded, not solved: saturated, it leaves nothing but winding resistance, half of it in the primary, so its
 * peak is at most 2/regulation times the rated peak. Each volt-second that a saturated core lacks is dropped on that
 * resistance, and a switch-on lacks at most one whole half-cycle's, so the charge is at most 2·V̂/(ωR) and
 * I²t at most peak times charge: peak²/(π·f). The two I²t together are at most (√A + √B)², whichever way they overlap.
 * Mains resistance, remaining inductance and a demagnetised core make all of it less. Of a winding on a large
 * transformer that the amp already had, leave `transformer` out: its inrush is there with or without the rail.
 *
 * `mainsVolts` 50–500, hertz 10–1000, rated amps and regulation as `inrushBoundAmps`. Throws `InputError` outside.
 */
export function primarySurge(options: {
  readonly surge: Pick<ChargingSurge, 'peakAmps' | 'a2s'>;
  readonly secondaryVolts: number;
  readonly mainsVolts: number;
  readonly hertz: number;
  readonly transformer?: { readonly ratedPrimaryAmps: number; readonly regulation: number };
}): PrimarySurge {
  const { surge, transformer } = options;
  const hertz = requireNumber('hertz', options.hertz, { min: 10, max: 1000 });
  const secondary = requireNumber('secondaryVolts', options.secondaryVolts, { min: 0.1, max: 1000 });
  const ratio = secondary / requireNumber('mainsVolts', options.mainsVolts, { min: 50, max: 500 });
  const reflectedPeakAmps = surge.peakAmps * ratio;
  const reflectedA2s = surge.a2s * ratio * ratio;
  if (transformer === undefined) return { reflectedPeakAmps, reflectedA2s };
  const rated = requireNumber('transformer.ratedPrimaryAmps', transformer.ratedPrimaryAmps, { min: 1e-4, max: 1000 });
  const regulation = requireNumber('transformer.regulation', transformer.regulation, { min: 0.01, max: 1 });
  const magnetisingPeakBoundAmps = inrushBoundAmps({ ratedAmps: rated, regulation });
  const magnetisingA2sBound = (magnetisingPeakBoundAmps * magnetisingPeakBoundAmps) / (Math.PI * hertz);
  const a2sBound = (Math.sqrt(reflectedA2s) + Math.sqrt(magnetisingA2sBound)) ** 2;
  return { reflectedPeakAmps, reflectedA2s, magnetisingPeakBoundAmps, magnetisingA2sBound, a2sBound };
}
