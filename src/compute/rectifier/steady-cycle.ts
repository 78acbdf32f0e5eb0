import { SolveError } from '../errors.ts';
import type { MainsPass } from './mains-pass.ts';

export interface SteadyCycleOptions {
  readonly pass: MainsPass;
  /** 1, or 2 for a doubler, whose reservoirs trade places every half-cycle. */
  readonly states: 1 | 2;
  readonly start1: number;
  readonly start2: number;
  /** A correction smaller than this (volts) ends the search. */
  readonly toleranceVolts: number;
  /** The miss (volts over a pass) that is small beside what the charge of a pass makes; asked for as well while it can be had. */
  readonly missVolts: number;
  /** A start from which nothing can collapse that need not: the no-load peak. */
  readonly safeVolts: number;
}

const MAX_PASSES = 40;
const PATIENCE = 12;
const MAX_COLLAPSES = 8;
/** Steps that have come to err by this many times what is allowed are chosen afresh. */
const WORN_OUT = 4;

/**
 * Finds the reservoir voltages that repeat, by Newton's method on the pass itself (shooting): leaves `pass` holding
 * the steady cycle. Steps that make the mismatch worse, or that starve a constant-power load, are shortened.
 * Throws `SolveError`: 'overloaded' when the rail collapses from wherever it starts, 'no-convergence' otherwise.
 */
export function findSteadyCycle({ pass, states, start1, start2, toleranceVolts, missVolts, safeVolts }: SteadyCycleOptions): void {
  let y1 = start1;
  let y2 = start2;
  let good1 = Number.NaN;
  let good2 = Number.NaN;
  let goodMiss = Infinity;
  let step1 = 0;
  let step2 = 0;
  let shortened = 0;
  let raised = false;
  let fitted = false;
  let collapses = 0;
  for (let count = 0; count < MAX_PASSES; count += 1) {
    // One rough pass, one that fits its steps to the cycle, then the same steps again: on a fixed mesh the miss is a
    // smooth function of the start, and Newton's method converges as it should.
    const mode = count === 0 ? 'rough' : fitted ? 'again' : 'fine';
    pass.run(y1, y2, mode);
    if (pass.collapsed && mode === 'again') pass.run(y1, y2, 'fine');
    fitted = count > 0 && pass.worstError < WORN_OUT;
    if (pass.collapsed && goodMiss === Infinity) {
      if (raised) throw new SolveError('overloaded', 'The supply cannot deliver this power: the rail collapses.');
      raised = true;
      y1 = y2 = safeVolts;
      continue;
    }
    // From a rail that still works one pass leads to one that does not, again and again: the load drags it down.
    if (pass.collapsed) collapses += 1;
    if (collapses > MAX_COLLAPSES) throw new SolveError('overloaded', 'The supply cannot deliver this power: the rail collapses.');
    // A doubler repeats after half a cycle with its reservoirs exchanged.
    const miss1 = states === 2 ? y2 + pass.change2 - y1 : pass.change1;
    const miss2 = states === 2 ? y1 + pass.change1 - y2 : 0;
    const miss = pass.collapsed ? Infinity : Math.hypot(miss1, miss2);
    if (miss > goodMiss && shortened < 12) {
      shortened += 1;
      step1 /= 2;
      step2 /= 2;
      y1 = good1 + step1;
      y2 = good2 + step2;
      continue;
    }
    if (pass.collapsed) throw new SolveError('overloaded', 'The supply cannot deliver this power: the rail collapses.');
    shortened = 0;
    const s = pass.sensitivity;
    const s11 = s[0] as number;
    const s12 = s[1] as number;
    const s21 = s[2] as number;
    const s22 = s[3] as number;
    // How far a unit of start misses its repeat. Written in the sensitivities less one, since at no load behind a large
    // reservoir a cycle changes next to nothing.
    const determinant = states === 1 ? -s11 : s12 * s21 - s12 - s21 - s11 - s22 - s11 * s22;
    // Not above zero, the rail runs away from its balance: the unstable side of a constant-power load.
    if (!(determinant > 0)) throw new SolveError('overloaded', 'The supply cannot deliver this power: no stable rail exists.');
    if (states === 1) {
      step1 = miss1 / determinant;
    } else {
      step1 = ((1 - s12) * miss1 + (1 + s22) * miss2) / determinant;
      step2 = ((1 - s21) * miss2 + (1 + s11) * miss1) / determinant;
    }
    const small = Math.max(Math.abs(step1), Math.abs(step2)) <= toleranceVolts;
    // Behind a very stiff winding a microvolt is amperes: there the miss decides, unless rounding forbids it.
    if (count > 0 && pass.worstError < WORN_OUT && small && (miss <= missVolts || count > PATIENCE)) return;
    goodMiss = miss;
    good1 = y1;
    good2 = y2;
    y1 += step1;
    y2 += step2;
  }
  throw new SolveError('no-convergence', 'The repeating cycle of the rectifier was not found.');
}
