import { SolveError } from '../errors.ts';
import { clippedSine } from '../network/clipped-sine.ts';
import { checkOptions } from './check-options.ts';
import { constantRail } from './constant-rail.ts';
import { CycleTrace } from './cycle-trace.ts';
import { cycleWaveform } from './cycle-waveform.ts';
import { MainsPass } from './mains-pass.ts';
import { RectifierCircuit } from './rectifier-circuit.ts';
import { CONDUCTION_FRACTION } from './rectifier-types.ts';
import type { RectifierOptions, RectifierSolution } from './rectifier-types.ts';
import { findSteadyCycle } from './steady-cycle.ts';

/**
 * The repeating cycle of a capacitor-input rectifier: rail, winding, diode and reservoir figures, and one cycle to plot.
 *
 * The circuit solved is exactly: a source of the given RMS and crest factor behind the winding's resistance; each diode
 * i = Is·(exp(v/(n·VT)) − 1) behind its resistance, VT = 25.852 mV; the reservoir behind its own series resistance; the
 * load across the rail. Leakage inductance, iron and temperature are not in it. Reverse breakdown is not in it either:
 * compare `diode.reverseVolts` with the rating.
 *
 * - A bridge's two conducting diodes are in series; a centre tap is two halves that each conduct on their own half-cycle
 *   (and both at once near the crossing, if the load pulls the rail low enough); a doubler is two reservoirs in series
 *   charged on alternate half-cycles from one winding.
 * - No load (`{ amps: 0 }`) is solved like any other: the rail rests a little below the peak, where the diodes' leakage
 *   balances the last of the charging pulse.
 * - A constant-current load is an ideal sink: where a small reservoir cannot carry it between pulses, the rail may dip
 *   below zero within the cycle, held by the diodes. When its mean is not above zero the supply is `overloaded`.
 * - A constant-power load that no steady rail can feed is `overloaded`.
 *
 * Accuracy, for supplies of 3 to 60 V and milliamperes to 10 A: about 0.05 % of the mean rail and 0.2 % of ripple, RMS
 * and peak currents of that circuit; in far corners (a rail of a few millivolts, a winding of milliohms before
 * microfarads) within 0.2 % and 1 %.
 * Conduction is counted above 1 % of the diode's own peak current (`CONDUCTION_FRACTION`).
 *
 * Throws `InputError` outside the ranges given in `RectifierOptions`; `SolveError` 'overloaded' or 'no-convergence'.
 * Source of the problem: O. H. Schade, "Analysis of Rectifier Operation", Proc. IRE 31 (1943) 341-361. Method: implicit
 * Runge-Kutta steps in which the diode equation is solved in closed form (Wright omega), and Newton's method on the
 * cycle (T. J. Aprille and T. N. Trick, Proc. IEEE 60 (1972) 108-114).
 */
export function solveRectifier(options: RectifierOptions): RectifierSolution {
  checkOptions(options);
  const { topology, winding, hertz, reservoir, crestFactor } = options;
  const wave = clippedSine(crestFactor);
  const circuit = new RectifierCircuit(options);
  const { states, arms } = circuit;
  const guess = constantRail(options, wave);

  const halfCycles = topology === 'half-wave' ? 2 : 1;
  const span = halfCycles / (2 * hertz);
  const chargeScale = (Math.abs(guess.loadAmps) + arms.saturationAmps) * span;
  const pass = new MainsPass({
    circuit,
    wave,
    openCircuitVolts: winding.openCircuitVolts,
    hertz,
    halfCycles,
    farads: reservoir.farads,
    esrOhms: reservoir.ohms,
    chargeScale,
    heatScale: (guess.armMeanSquare + arms.saturationAmps ** 2) * span,
  });
  // At the crossing where the pass begins, a reservoir charged once a cycle has run three quarters of its way down
  // (the doubler's second one a quarter), one charged twice has run half.
  const quarterDrop = Math.min(guess.loadAmps / (4 * hertz * reservoir.farads), Math.abs(guess.reservoirVolts) / 2);
  const uneven = topology === 'half-wave' || topology === 'doubler' ? quarterDrop : 0;
  findSteadyCycle({
    pass,
    states,
    start1: guess.reservoirVolts - uneven,
    start2: guess.reservoirVolts + uneven,
    toleranceVolts: 1e-4 * arms.thermalVolts + 1e-7 * winding.openCircuitVolts,
    missVolts: (1e-4 * chargeScale) / reservoir.farads,
    safeVolts: winding.openCircuitVolts * wave.scale * wave.level,
  });

  const meanVolts = pass.railVoltSeconds / span;
  if (!(meanVolts > 0)) {
    throw new SolveError('overloaded', 'The load draws more than the supply can deliver: the mean rail is not above zero.');
  }
  const trace = new CycleTrace({
    record: pass.record,
    circuit,
    wave,
    openCircuitVolts: winding.openCircuitVolts,
    hertz,
    farads: reservoir.farads,
    esrOhms: reservoir.ohms,
    halfCycles,
  });
  const { railVolts, amps1, amps2 } = trace;
  const maxVolts = trace.maximum(railVolts, (c) => c.railVolts);
  const minVolts = -trace.maximum(railVolts.map((v) => -v), (c) => -c.railVolts);
  const cycle = 1 / hertz;
  const diodePeak = Math.max(trace.maximum(amps1, (c) => c.arms.amps1), trace.maximum(amps2, (c) => c.arms.amps2));
  const diodeRms = Math.sqrt(pass.armAmpSquaredSeconds / cycle);
  const perHalf = topology === 'centre-tap';
  const windingPeak = perHalf
    ? diodePeak
    : trace.maximum(amps1.map((i, k) => Math.abs(i - (amps2[k] as number))), (c) => Math.abs(c.windingAmps));
  const conducting = CONDUCTION_FRACTION * diodePeak;
  const conductingSeconds =
    trace.secondsAbove(amps1, (c) => c.arms.amps1, conducting) + trace.secondsAbove(amps2, (c) => c.arms.amps2, conducting);
  return {
    rail: { meanVolts, minVolts, maxVolts, rippleVolts: maxVolts - minVolts },
    winding: { rmsAmps: perHalf ? diodeRms : Math.sqrt(pass.windingAmpSquaredSeconds / span), peakAmps: windingPeak },
    diode: {
      meanAmps: pass.armCoulombs / cycle,
      rmsAmps: diodeRms,
      peakAmps: diodePeak,
      reverseVolts: trace.reverseVolts,
      conductionDegrees: 360 * hertz * conductingSeconds,
    },
    reservoir: { rmsAmps: Math.sqrt(pass.reservoirAmpSquaredSeconds / (states * span)) },
    load: { meanAmps: pass.loadCoulombs / span },
    waveform: cycleWaveform({ trace, topology, wave, openCircuitVolts: winding.openCircuitVolts, hertz }),
  };
}
