import { clippedSineAt } from '../network/clipped-sine.ts';
import type { ClippedSine } from '../network/clipped-sine.ts';
import { wrightOmega } from '../network/wright-omega.ts';
import { THERMAL_VOLTS } from './rectifier-circuit.ts';
import type { RectifierOptions } from './rectifier-types.ts';

/** A rail imagined without ripple: the limit of a very large reservoir, and where the exact search starts. */
export interface ConstantRail {
  /** Voltage of one reservoir. */
  readonly reservoirVolts: number;
  readonly loadAmps: number;
  /** Mean over the cycle of the square of one arm's current. */
  readonly armMeanSquare: number;
}

const NODES = 24;

/**
 * The rail voltage at which the charging pulses bring, over a cycle, exactly what load and leakage take.
 *
 * Solved on the logarithms of the two, because at a light load the pulse depends on the voltage exponentially and at a
 * heavy one almost in proportion; both are nearly straight in logarithms. A constant-power load too heavy for any rail
 * gives the voltage at which the supply comes nearest to it.
 */
export function constantRail({ topology, winding, diode, load }: RectifierOptions, wave: ClippedSine): ConstantRail {
  const bridge = topology === 'bridge' ? 2 : 1;
  const arms = topology === 'half-wave' || topology === 'doubler' ? 1 : 2;
  const stacked = topology === 'doubler' ? 2 : 1;
  const n = bridge * diode.emission * THERMAL_VOLTS;
  const ohms = winding.ohms + bridge * diode.ohms + 1e-7;
  const logTerm = Math.log((ohms * diode.saturationAmps) / n);
  const leakage = arms * diode.saturationAmps;
  const peak = winding.openCircuitVolts * wave.scale * wave.level;

  // A quarter of a cycle is enough, by symmetry about the peak. Nodes crowd towards the peak as the square, where the
  // narrow pulses of a light load are.
  const source = new Float64Array(NODES);
  const weight = new Float64Array(NODES);
  for (let i = 0; i < NODES; i += 1) {
    const s = (i + 0.5) / NODES;
    source[i] = winding.openCircuitVolts * clippedSineAt(wave, (Math.PI / 2) * (1 - s * s));
    weight[i] = s / NODES;
  }

  let excess = 0;
  let excessSlope = 0;
  let square = 0;
  const charge = (volts: number): void => {
    excess = excessSlope = square = 0;
    for (let i = 0; i < NODES; i += 1) {
      const x = (n / ohms) * wrightOmega(((source[i] as number) - volts + ohms * diode.saturationAmps) / n + logTerm);
      const w = (weight[i] as number) * arms;
      excess += w * x;
      excessSlope += w / (ohms + n / x);
      square += (w * x * x) / arms;
    }
  };
  const drawn = (volts: number): number => {
    if ('amps' in load) return load.amps;
    if ('ohms' in load) return (stacked * volts) / load.ohms;
    return load.watts / (stacked * volts);
  };
  const drawnSlope = (volts: number): number => {
    if ('amps' in load) return 0;
    if ('ohms' in load) return stacked / load.ohms;
    return -load.watts / (stacked * volts * volts);
  };

  let low = -peak;
  let high = peak;
  if ('watts' in load && load.watts > 0) {
    // Power can balance at two voltages; only the upper one is stable, so it is bracketed from above.
    let bestVolts = peak;
    let bestShare = 0;
    low = 0;
    for (let i = 1; i < 40; i += 1) {
      const volts = peak * (1 - i / 40);
      charge(volts);
      const share = (excess - leakage) / drawn(volts);
      if (share > bestShare) {
        bestShare = share;
        bestVolts = volts;
      }
      if (share >= 1) {
        low = volts;
        high = peak * (1 - (i - 1) / 40);
        break;
      }
    }
    if (low === 0) {
      charge(bestVolts);
      return { reservoirVolts: bestVolts, loadAmps: drawn(bestVolts), armMeanSquare: square };
    }
  }
  let volts = Math.min(high, Math.max(low, 0.8 * high));
  for (let i = 0; i < 60; i += 1) {
    charge(volts);
    const demand = Math.max(drawn(volts), 0) + leakage;
    const miss = Math.log(excess / demand);
    if (miss > 0) low = volts;
    else high = volts;
    const step = miss / (excessSlope / excess + drawnSlope(volts) / demand);
    const newton = volts + step;
    const before = volts;
    volts = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(volts - before) < 1e-6 * peak) break;
  }
  return { reservoirVolts: volts, loadAmps: drawn(volts), armMeanSquare: square };
}
