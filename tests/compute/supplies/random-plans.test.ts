import { describe, expect, it } from 'vitest';
import { InputError, SolveError } from '../../../src/compute/errors.ts';
import { readPlan } from '../../../src/compute/plan.ts';
import type { Approach, SupplyPlan } from '../../../src/compute/plan.ts';
import { compareSupplies } from '../../../src/compute/supplies/compare-supplies.ts';
import { supplyFromConverter } from '../../../src/compute/supplies/converter.ts';
import { supplyFromHeaterWinding } from '../../../src/compute/supplies/heater-winding.ts';
import { supplyFromTransformer } from '../../../src/compute/supplies/separate-transformer.ts';
import { supplyFromSpareWinding } from '../../../src/compute/supplies/spare-winding.ts';
import { randomPlan } from './random-plan.ts';

const FEED: Record<Approach, (plan: SupplyPlan) => unknown> = {
  'spare-winding': supplyFromSpareWinding,
  converter: supplyFromConverter,
  'separate-transformer': supplyFromTransformer,
  'heater-winding': supplyFromHeaterWinding,
};

/** Where a number that is none lies in a result; waveforms by their ends and middle. */
function notANumber(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isNaN(value) ? path : undefined;
  if (value instanceof Float64Array) return [0, value.length >> 1, value.length - 1].some((at) => Number.isNaN(value[at])) ? path : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = notANumber(inner, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

interface Tally {
  answered: number;
  refused: number;
  unreadable: number;
}

/** One plan: an answer without NaN, or a typed refusal; anything else fails with the seed that shows it. */
function run(seed: number, wildness: number, feed: (plan: SupplyPlan, approach: Approach) => unknown, tally: Tally): void {
  const { plan, approach } = randomPlan(seed, wildness);
  const reading = readPlan(plan);
  if (!reading.ok) {
    expect(reading.problems.length).toBeGreaterThan(0);
    tally.unreadable += 1;
    return;
  }
  try {
    const result = feed(reading.plan, approach);
    const where = notANumber(result);
    if (where !== undefined) expect.fail(`seed ${seed}, ${approach}: not a number at ${where}`);
    tally.answered += 1;
  } catch (error) {
    if (!(error instanceof InputError || error instanceof SolveError)) throw new Error(`seed ${seed}, ${approach}`, { cause: error });
    tally.refused += 1;
  }
}

describe('random plans, each through one way of feeding it', () => {
  it('10,000 sane and insane ones give findings or a typed error, never NaN', { timeout: 300_000 }, () => {
    const tally: Tally = { answered: 0, refused: 0, unreadable: 0 };
    for (let seed = 0; seed < 10_000; seed++) run(seed, (seed % 5) * 0.1, (plan, approach) => FEED[approach](plan), tally);
    // The test would prove little if most plans never reached the solver.
    expect(tally.answered).toBeGreaterThan(6000);
    expect(tally.refused).toBeGreaterThan(100);
    expect(tally.unreadable).toBeLessThan(2500);
  });

  it('200 compared in all four ways', { timeout: 120_000 }, () => {
    const tally: Tally = { answered: 0, refused: 0, unreadable: 0 };
    for (let seed = 20_000; seed < 20_200; seed++) run(seed, 0.05, (plan) => compareSupplies(plan), tally);
    expect(tally.answered).toBeGreaterThan(80);
  });
});
