import { describe, expect, it } from 'vitest';
import { analyseGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundingAnalysis } from '../../../src/compute/grounding/grounding-result.ts';
import type { SupplyPlan } from '../../../src/compute/plan.ts';
import { supplyFromConverter } from '../../../src/compute/supplies/converter.ts';
import { groundingJob } from '../../../src/compute/supplies/grounding-job.ts';
import { supplyFromHeaterWinding } from '../../../src/compute/supplies/heater-winding.ts';
import { supplyFromTransformer } from '../../../src/compute/supplies/separate-transformer.ts';
import { supplyFromSpareWinding } from '../../../src/compute/supplies/spare-winding.ts';
import type { Supply } from '../../../src/compute/supplies/supply-types.ts';
import { fennel, quillon, tarn } from './plan-cases.ts';

function solved(plan: SupplyPlan, supply: Supply): GroundingAnalysis {
  const job = groundingJob(plan, supply);
  if (job === undefined) throw new Error('nothing to ground');
  return analyseGrounding(job);
}

const rules = (analysis: GroundingAnalysis): readonly string[] => analysis.findings.map((each) => `${each.rule} ${each.level}`);

describe('a plan’s grounds, solved for the approach it takes', () => {
  it('finds many amps through half of the heater winding of the Tarn 45, as the structural look foretells', () => {
    const analysis = solved(tarn(), supplyFromHeaterWinding(tarn()));
    expect(analysis.circulating.rmsAmps).toBeGreaterThan(10);
    expect(rules(analysis)).toContain('second-ground hazard');
  });

  it('finds only milliamps where two resistors are what is grounded', () => {
    const analysis = solved(quillon(), supplyFromHeaterWinding(quillon()));
    expect(analysis.circulating.rmsAmps).toBeLessThan(0.5);
    expect(analysis.circulating.rmsAmps).toBeGreaterThan(0.01);
  });

  it('finds nothing that circulates where the rail is bonded once', () => {
    for (const [plan, supply] of [[tarn(), supplyFromSpareWinding(tarn())], [quillon(), supplyFromTransformer(quillon())], [fennel(), supplyFromConverter(fennel())]] as const) {
      expect(solved(plan, supply).circulating.rmsAmps).toBeLessThan(1e-3);
    }
  });

  it('tries a breakdown from winding to winding in the amp’s own transformer, and not in one added for the rail', () => {
    const tried = (analysis: GroundingAnalysis): boolean => analysis.singleFaults.some((fault) => fault.kind === 'winding-to-winding');
    expect(tried(solved(tarn(), supplyFromSpareWinding(tarn())))).toBe(true);
    expect(tried(solved(tarn(), supplyFromTransformer(tarn())))).toBe(false);
  });

  it('has nothing to solve where nothing is there', () => {
    expect(groundingJob(quillon(), supplyFromSpareWinding(quillon()))).toBeUndefined();
  });

  it('agrees with the look at the connections alone on what is a hazard', () => {
    for (const plan of [quillon(), tarn(), fennel()]) {
      for (const supply of [supplyFromSpareWinding(plan), supplyFromConverter(plan), supplyFromTransformer(plan), supplyFromHeaterWinding(plan)]) {
        if (groundingJob(plan, supply) === undefined) continue;
        const structural = supply.findings.find((each) => each.rule === 'ground-situation')?.level;
        const circulates = solved(plan, supply).findings.filter((each) => each.rule === 'second-ground');
        const second = circulates.some((each) => each.level === 'hazard' || each.level === 'outside');
        expect(structural === 'hazard' || structural === 'outside', supply.approach).toBe(second);
      }
    }
  });
});
