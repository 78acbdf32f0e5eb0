import { SolveError, requireNumber } from '../errors.ts';
import type { RectifierLoad, RectifierSolution } from '../rectifier/rectifier-types.ts';
import { solveRectifier } from '../rectifier/solve-rectifier.ts';
import { limitAt } from './timed-supply.ts';
import type { TimedSupply } from './timed-supply.ts';

/** A supply and a load that follows the rail, when mains cycles repeat. */
export interface SettledRail {
  readonly rectifier: RectifierSolution;
  /** At the load, one mains cycle, sampled as the rectifier's waveform. */
  readonly railVolts: Float64Array;
  readonly meanVolts: number;
  readonly minVolts: number;
  readonly maxVolts: number;
  readonly loadAmps: number;
  /** What holds the rail: its set volts, the input that does not suffice, the current limit, or no regulator at all. */
  readonly held: 'regulated' | 'dropout' | 'limited' | 'unregulated';
}

const MAX_ROUNDS = 16;
/** Load current is found to this, relative. */
const SETTLED = 2e-3;
/** Resistance of the lightest load tried in dropout, over the load's own. */
const LIGHTEST = 1e4;

/** The rail at one instant: set volts, input less dropout, or what the limit drives through the load. */
function railAt(supply: TimedSupply, inputVolts: number, siemens: number): number {
  const { regulator } = supply;
  if (regulator === undefined) return inputVolts;
  const volts = Math.max(0, Math.min(regulator.setVolts, inputVolts - regulator.dropoutVolts));
  if (siemens * volts <= limitAt(regulator, inputVolts - volts)) return volts;
  // The limit depends on the volts across the part, which depend on it: halve towards the balance.
  let low = 0;
  let high = volts;
  for (let round = 0; round < 30; round += 1) {
    const middle = (low + high) / 2;
    if (siemens * middle > limitAt(regulator, inputVolts - middle)) high = middle;
    else low = middle;
  }
  return low;
}

const series = (supply: TimedSupply, rectifier: RectifierSolution, siemens: number): Float64Array =>
  rectifier.waveform.railVolts.map((volts) => railAt(supply, volts, siemens));

/** Mean of one period of even samples, the last of which repeats the first. */
export function periodMean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < values.length - 1; k += 1) sum += values[k] as number;
  return sum / (values.length - 1);
}

/**
 * The repeating cycle of a supply into a load of `siemens` at the rail: with a regulator the load's mean current is
 * drawn steadily from the reservoir, and found in rounds, since in dropout or in current limit the load gets less.
 *
 * Assumes a load that follows the rail like a resistor. Against the whole circuit solved as a network the mean rail is within
 * 1 % where the ripple is less than a third of the reservoir's volts, and within about 15 % for rails near collapse.
 * `siemens` 0 to 1000. Throws `InputError` outside; `SolveError` when the rectifier has no steady state.
 */
export function settleRail(options: { readonly supply: TimedSupply; readonly siemens: number }): SettledRail {
  const { supply } = options;
  const siemens = requireNumber('siemens', options.siemens, { min: 0, max: 1000 });
  const { regulator, hertz, winding, crestFactor, topology, diode, reservoir } = supply;
  const solve = (load: RectifierLoad): RectifierSolution => solveRectifier({ topology, winding, hertz, crestFactor, diode, reservoir, load });
  if (regulator === undefined) {
    const rectifier = solve(siemens === 0 ? { amps: 0 } : { ohms: 1 / siemens });
    const { meanVolts, minVolts, maxVolts } = rectifier.rail;
    return { rectifier, railVolts: rectifier.waveform.railVolts, meanVolts, minVolts, maxVolts, loadAmps: siemens === 0 ? 0 : rectifier.load.meanAmps, held: 'unregulated' };
  }
  let amps = Math.min(siemens * regulator.setVolts, limitAt(regulator, 0));
  let rectifier: RectifierSolution | undefined;
  let railVolts = new Float64Array(0);
  // A steady current has a most that the rectifier can give; what the load gets in the end lies below it.
  let ceiling = Infinity;
  let lastGood = 0;
  let step = 1;
  let settled = false;
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    try {
      rectifier = solve({ amps: amps + regulator.quiescentAmps });
    } catch (error) {
      if (!(error instanceof SolveError) || error.reason !== 'overloaded') throw error;
      ceiling = amps;
      amps = (lastGood + ceiling) / 2;
      continue;
    }
    lastGood = amps;
    railVolts = new Float64Array(series(supply, rectifier, siemens));
    const wanted = siemens * periodMean(railVolts);
    settled = Math.abs(wanted - amps) <= SETTLED * Math.max(amps, 1e-6);
    if (settled) break;
    // Past the first rounds go half way: a weak winding answers to more current with fewer volts.
    if (round > 2) step = 0.5;
    const next = amps + step * (wanted - amps);
    amps = next < ceiling ? next : (amps + ceiling) / 2;
  }
  // In dropout all cycle long, or where no steady current is right, the load pulls on the reservoir like a resistor: with
  // much ripple, or a rail near collapse, that is another circuit.
  const starved = railVolts.every((volts) => volts < 0.999 * regulator.setVolts && siemens * volts < 0.999 * limitAt(regulator, 0));
  if (siemens > 0 && (starved || !settled)) {
    // More ohms on the reservoir, more volts, and more current through the load: halve between none in the way and hardly any load.
    let [low, high] = [1 / siemens, LIGHTEST / siemens];
    while (high / low > 1 + SETTLED) {
      const ohms = Math.sqrt(low * high);
      rectifier = solve({ ohms });
      railVolts = new Float64Array(series(supply, rectifier, siemens));
      if (rectifier.rail.meanVolts / ohms > siemens * periodMean(railVolts) + regulator.quiescentAmps) low = ohms;
      else high = ohms;
    }
  }
  if (rectifier === undefined) throw new SolveError('overloaded', 'The load draws more than the supply can deliver.');
  let minVolts = Infinity;
  let maxVolts = -Infinity;
  for (const volts of railVolts) {
    minVolts = Math.min(minVolts, volts);
    maxVolts = Math.max(maxVolts, volts);
  }
  const meanVolts = periodMean(railVolts);
  const limited = rectifier.waveform.railVolts.some((input, k) => (railVolts[k] as number) < 0.999 * Math.min(regulator.setVolts, input - regulator.dropoutVolts));
  const held = minVolts >= 0.9999 * regulator.setVolts ? 'regulated' : limited ? 'limited' : 'dropout';
  return { rectifier, railVolts, meanVolts, minVolts, maxVolts, loadAmps: siemens * meanVolts, held };
}
