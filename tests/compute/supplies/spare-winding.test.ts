import { describe, expect, it } from 'vitest';
import type { SupplyPlan } from '../../../src/compute/plan.ts';
import { supplyFromSpareWinding } from '../../../src/compute/supplies/spare-winding.ts';
import type { Supply } from '../../../src/compute/supplies/supply-types.ts';
import { drawing, quillon, tarn, withAmp, without } from './plan-cases.ts';

const levelOf = (supply: Supply, rule: string): string | undefined => supply.findings.find((each) => each.rule === rule)?.level;
const spareOf = (plan: SupplyPlan): NonNullable<SupplyPlan['amp']['spare']> => {
  if (plan.amp.spare === undefined) throw new Error('this plan has no spare winding');
  return plan.amp.spare;
};
const withSpare = (plan: SupplyPlan, change: Partial<NonNullable<SupplyPlan['amp']['spare']>>): SupplyPlan => withAmp(plan, { spare: { ...spareOf(plan), ...change } });

describe('a rail from a spare winding', () => {
  it('is not there in an amp without one', () => {
    const supply = supplyFromSpareWinding(quillon());
    expect(supply.available).toBe(false);
    expect(supply.parts).toHaveLength(0);
    expect(levelOf(supply, 'no-spare-winding')).toBe('outside');
  });

  it('is refused from the winding of a rectifier valve, whatever that would give', () => {
    const supply = supplyFromSpareWinding(withSpare(tarn(), { kind: 'rectifier-valve' }));
    expect(supply.available).toBe(false);
    expect(supply.parts).toHaveLength(0);
    const veto = supply.findings.find((each) => each.rule === 'rectifier-valve-winding');
    expect(veto).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(veto?.what).toContain('450 V');
  });

  it('sizes every part that the plan leaves open, each with its reason', () => {
    const { parts } = supplyFromSpareWinding(tarn());
    expect(parts.map((part) => part.role)).toEqual([
      'rectifier', 'reservoir', 'regulator', 'regulator-capacitor', 'regulator-capacitor', 'setting-resistor', 'heatsink', 'secondary-fuse',
    ]);
    for (const part of parts) expect(part.why.length).toBeGreaterThan(15);
  });

  it('takes the parts that the plan names', () => {
    const { parts, chainInput } = supplyFromSpareWinding({ ...tarn(), parts: { reservoir: { farads: 4700e-6, ratedVolts: 35 }, diode: '1n540x' } });
    expect(parts.find((part) => part.role === 'reservoir')?.chosenBy).toBe('plan');
    expect(chainInput?.reservoir.farads).toBe(4700e-6);
    expect(chainInput?.diode.name).toMatch(/^1N540/);
  });

  it('holds just inside and drops out just outside of the winding volts it needs', () => {
    const plan = drawing({ ...tarn(), parts: { reservoir: { farads: 4700e-6, ratedVolts: 50 }, diode: '1n400x' } }, 0.3);
    const margin = (openCircuitVolts: number): number => supplyFromSpareWinding(withSpare(plan, { openCircuitVolts })).measures.holds.marginVolts ?? Number.NaN;
    let low = 10;
    let high = 25;
    for (let i = 0; i < 20; i++) {
      const middle = (low + high) / 2;
      if (margin(middle) < 0) low = middle;
      else high = middle;
    }
    const level = (volts: number): string | undefined => levelOf(supplyFromSpareWinding(withSpare(plan, { openCircuitVolts: volts })), 'regulator-valley');
    expect(level(low - 0.01)).toBe('outside');
    expect(level(high + 0.01)).toBe('marginal');
    // 0.3 V of margin is asked for; a volt on the winding is worth 1.2 V of peak at low mains.
    expect(level(high + 0.4)).toBe('within');
  });

  it('judges the winding by its own rating, and not at all without one', () => {
    const rated = (ratedAmps: number): string | undefined => levelOf(supplyFromSpareWinding(withSpare(tarn(), { ratedAmps })), 'winding-current');
    const amps = supplyFromSpareWinding(tarn()).chain?.worst?.windingCurrent.windingRmsAmps ?? 0;
    expect(amps).toBeGreaterThan(1);
    expect(rated(amps / 0.89)).toBe('within');
    expect(rated(amps / 0.91)).toBe('marginal');
    expect(rated(amps / 1.01)).toBe('outside');
    expect(rated(amps / 1.16)).toBe('hazard');
    const spare = without(spareOf(tarn()), 'ratedAmps');
    expect(levelOf(supplyFromSpareWinding(withAmp(tarn(), { spare })), 'winding-current')).toBe('not assessed');
  });

  it('judges the whole transformer by its VA, and not at all while half of that is unknown', () => {
    const level = (transformer: SupplyPlan['amp']['transformer']): string | undefined => levelOf(supplyFromSpareWinding(withAmp(tarn(), { transformer })), 'transformer-volt-amps');
    expect(level({ ratedVoltAmps: 220, presentVoltAmps: 150 })).toBe('within');
    expect(level({ ratedVoltAmps: 180, presentVoltAmps: 150 })).toBe('marginal');
    expect(level({ ratedVoltAmps: 160, presentVoltAmps: 150 })).toBe('outside');
    expect(level({ ratedVoltAmps: 220 })).toBe('not assessed');
    expect(level({})).toBe('not assessed');
  });

  it('takes a winding whose tap is grounded by the tap, with one diode in the path and half the volts', () => {
    const plan = withSpare(tarn(), { centreTapped: true, reference: { kind: 'centre-tap' }, openCircuitVolts: 36 });
    const supply = supplyFromSpareWinding(plan);
    expect(supply.chainInput?.topology).toBe('centre-tap');
    expect(supply.chainInput?.winding.openCircuitVolts).toBe(18);
    // The tap is the rail's negative: grounding both is one ground.
    expect(levelOf(supply, 'ground-situation')).toBe('within');
  });

  it('calls a bridge on a winding with a grounded tap and its negative bonded a fire hazard', () => {
    const plan = withSpare({ ...tarn(), parts: { topology: 'bridge' } }, { centreTapped: true, reference: { kind: 'centre-tap' } });
    const finding = supplyFromSpareWinding(plan).findings.find((each) => each.rule === 'ground-situation');
    expect(finding).toMatchObject({ level: 'hazard', harm: 'fire' });
  });

  it('carries more winding current with more load, and warms more with fewer kelvin per watt of cooling', () => {
    const currents = [0.1, 0.2, 0.4, 0.8].map((amps) => supplyFromSpareWinding(drawing(tarn(), amps)).chain?.worst?.windingCurrent.windingRmsAmps ?? 0);
    expect(currents).toEqual([...currents].sort((a, b) => a - b));
    const junctions = [2, 4, 8].map((kelvinPerWatt) => supplyFromSpareWinding({ ...tarn(), parts: { heatsink: { kind: 'separate', kelvinPerWatt } } }).measures.heat.hottest?.celsius ?? 0);
    expect(junctions).toEqual([...junctions].sort((a, b) => a - b));
  });
});
