import { describe, expect, it } from 'vitest';
import type { PlanTransformer, SupplyPlan } from '../../../src/compute/plan.ts';
import { supplyFromTransformer } from '../../../src/compute/supplies/separate-transformer.ts';
import { transformerWinding } from '../../../src/compute/supplies/size-transformer.ts';
import type { Supply } from '../../../src/compute/supplies/supply-types.ts';
import { drawing, quillon, tarn } from './plan-cases.ts';

const levelOf = (supply: Supply, rule: string): string | undefined => supply.findings.find((each) => each.rule === rule)?.level;

const FIVE_VA: PlanTransformer = { secondaryVolts: 15, secondaries: 'one', voltAmps: 5, regulationRatio: 0.3, shortCircuitMark: 'inherently-proof', basis: 'rated' };
const named = (change: Partial<PlanTransformer>): SupplyPlan => ({ ...quillon(), parts: { transformer: { ...FIVE_VA, ...change } } });

describe('a rail from a small separate transformer', () => {
  it('picks the lowest standard volts that hold, and the smallest VA that carries the RMS current', () => {
    const supply = supplyFromTransformer(quillon());
    expect(supply.parts[0]).toMatchObject({ role: 'transformer', chosenBy: 'sized', name: expect.stringContaining('15') });
    expect(supply.measures.holds.marginVolts).toBeGreaterThan(0.3);
    expect(supply.measures.loading.ratio).toBeLessThanOrEqual(0.9);
    // One step down in volts does not hold, at the sizes that carry the current and with their usual regulation.
    for (const [voltAmps, regulationRatio] of [[3, 0.4], [5, 0.325]] as const) {
      expect(supplyFromTransformer(named({ secondaryVolts: 12, voltAmps, regulationRatio })).measures.holds.marginVolts).toBeLessThan(0.3);
    }
  });

  it('asks for more VA as the load grows', () => {
    const sizes = [0.05, 0.15, 0.3, 0.6].map((amps) => supplyFromTransformer(drawing(quillon(), amps)).parts[0]?.numbers.find((each) => each.name === 'VA')?.value ?? 0);
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(sizes.at(-1)).toBeGreaterThan(sizes[0] ?? 0);
  });

  it('carries the no-load rise of a soft transformer through to capacitor and regulator', () => {
    const peak = (regulationRatio: number): number => supplyFromTransformer(named({ regulationRatio })).chain?.worst?.peak.rectifier.rail.maxVolts ?? 0;
    expect(peak(0.6)).toBeGreaterThan(peak(0.3) + 5);
    expect(levelOf(supplyFromTransformer(named({ regulationRatio: 0.6 })), 'regulator-input')).toBe('outside');
    expect(levelOf(supplyFromTransformer(named({ regulationRatio: 0.3 })), 'regulator-input')).toBe('within');
  });

  it('joins two secondaries in series, in parallel or as a centre tap', () => {
    const one = transformerWinding({ ...FIVE_VA, secondaryVolts: 9, voltAmps: 6, regulationRatio: 0.2 });
    expect(one.openCircuitVolts).toBeCloseTo(10.8, 9);
    expect(one.ohms).toBeCloseTo(2.7, 9);
    const series = transformerWinding({ ...FIVE_VA, secondaryVolts: 9, voltAmps: 6, regulationRatio: 0.2, secondaries: 'two-in-series' });
    expect(series.openCircuitVolts).toBeCloseTo(21.6, 9);
    expect(series.ohms).toBeCloseTo(10.8, 9);
    expect(series.ratedAmps).toBeCloseTo(1 / 3, 9);
    const parallel = transformerWinding({ ...FIVE_VA, secondaryVolts: 9, voltAmps: 6, regulationRatio: 0.2, secondaries: 'two-in-parallel' });
    expect(parallel.ohms).toBeCloseTo(2.7, 9);
    expect(parallel.ratedAmps).toBeCloseTo(2 / 3, 9);
    const tapped = transformerWinding({ ...FIVE_VA, secondaryVolts: 9, voltAmps: 6, regulationRatio: 0.2, secondaries: 'two-as-centre-tap' });
    expect(tapped.ohms).toBeCloseTo(5.4, 9);
    expect(supplyFromTransformer(named({ secondaryVolts: 15, secondaries: 'two-as-centre-tap' })).chainInput?.topology).toBe('centre-tap');
  });

  it('warns of secondaries joined the wrong way round, of none otherwise', () => {
    expect(levelOf(supplyFromTransformer(named({ secondaries: 'two-in-parallel' })), 'secondary-phasing')).toBe('not assessed');
    expect(levelOf(supplyFromTransformer(named({ secondaryVolts: 7.5, secondaries: 'two-in-series' })), 'secondary-phasing')).toBe('not assessed');
    expect(levelOf(supplyFromTransformer(named({})), 'secondary-phasing')).toBeUndefined();
  });

  it('never takes a transformer for short-circuit-proof that is not marked so', () => {
    expect(levelOf(supplyFromTransformer(quillon()), 'short-circuit-mark')).toBe('not assessed');
    expect(levelOf(supplyFromTransformer(named({ shortCircuitMark: 'inherently-proof' })), 'short-circuit-mark')).toBe('within');
    expect(levelOf(supplyFromTransformer(named({ shortCircuitMark: 'not-proof' })), 'short-circuit-mark')).toBe('outside');
  });

  it('finds that the primary fuse of a small one cannot end a shorted secondary in time, and calls that fire when nothing else does', () => {
    const clears = (shortCircuitMark: PlanTransformer['shortCircuitMark']) => supplyFromTransformer(named({ shortCircuitMark })).findings.find((each) => each.rule === 'primary-fuse-clears');
    const short = clears('not-proof');
    expect(short).toMatchObject({ level: 'hazard', harm: 'fire' });
    // Open-circuit volts (1 + r) over r of rated ohms, reflected by the open-circuit turns ratio: (1 + r)²/r of the rated current.
    expect(short?.numbers.find((each) => each.name === 'short-circuit current')?.value).toBeCloseTo((1.3 ** 2 / 0.3) * (5 / 120), 9);
    expect(clears('unknown')?.level).toBe('not assessed');
    expect(clears('conditionally-proof')?.level).toBe('within');
  });

  it('bounds the inrush by copper alone: two over the regulation times the rated peak', () => {
    const inrush = supplyFromTransformer(named({ regulationRatio: 0.25 })).findings.find((each) => each.rule === 'primary-current')?.numbers.find((each) => each.name === 'inrush at most');
    expect(inrush?.value).toBeCloseTo((5 / 120) * Math.SQRT2 * 8, 9);
  });

  it('says when nothing in the range is enough', () => {
    const supply = supplyFromTransformer(drawing({ ...tarn(), rail: { volts: 24, regulation: 'fixed' } }, 6));
    expect(supply.level).not.toBe('within');
    expect(supply.parts[0]?.why).toContain('Nothing in the standard range');
  });
});
