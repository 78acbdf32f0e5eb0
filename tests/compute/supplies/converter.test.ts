import { describe, expect, it } from 'vitest';
import type { PlanConverter, SupplyPlan } from '../../../src/compute/plan.ts';
import { supplyFromConverter } from '../../../src/compute/supplies/converter.ts';
import type { Supply } from '../../../src/compute/supplies/supply-types.ts';
import { drawing, fennel, quillon, tarn, withAmp, withGrounds } from './plan-cases.ts';

const levelOf = (supply: Supply, rule: string): string | undefined => supply.findings.find((each) => each.rule === rule)?.level;
const named = (plan: SupplyPlan, change: Partial<PlanConverter>): SupplyPlan => ({ ...plan, parts: { converter: { id: 'module-5w-12v', ...change } } });

describe('a rail from a mains converter', () => {
  it('picks the smallest module that stays below four fifths of its rating in this air', () => {
    const { converter } = supplyFromConverter(drawing(fennel(), 0.2));
    expect(converter?.part.id).toBe('module-5w-12v');
    expect(supplyFromConverter(drawing(fennel(), 0.5)).converter?.part.ratedAmps).toBeGreaterThan(0.5);
  });

  it('gives less in hotter air, and nothing beyond the end of its derating', () => {
    const derated = [40, 55, 65, 70].map((airCelsius) => supplyFromConverter(withAmp(named(quillon(), {}), { airCelsius })).converter?.derated.amps ?? Number.NaN);
    expect(derated).toEqual([...derated].sort((a, b) => b - a));
    expect(levelOf(supplyFromConverter(withAmp(named(quillon(), {}), { airCelsius: 75 })), 'converter-rating')).toBe('outside');
  });

  it('is loaded just inside and just outside of what it may give', () => {
    // 0.42 A in air of 50 °C, all of it.
    const level = (amps: number): string | undefined => levelOf(supplyFromConverter(withAmp(named(drawing(quillon(), amps), {}), { airCelsius: 50 })), 'converter-rating');
    expect(level(0.33)).toBe('within');
    expect(level(0.34)).toBe('marginal');
    expect(level(0.425)).toBe('outside');
  });

  it('starts relays at once, and does not start heaters that ask for more than its hiccup lets through', () => {
    expect(supplyFromConverter(named(quillon(), {})).converter?.start).toMatchObject({ starts: true, seconds: 0 });
    const heaters: SupplyPlan = { ...quillon(), loads: [{ kind: 'heater', name: 'first valves', count: 2, volts: 12.6, amps: 0.15 }] };
    expect(levelOf(supplyFromConverter(named(heaters, {})), 'converter-start')).toBe('outside');
    expect(levelOf(supplyFromConverter(named(heaters, { startUpKind: 'constant-current' })), 'converter-start')).not.toBe('outside');
  });

  it('counts the capacitance across its output against what it starts into', () => {
    const level = (railFarads: number): string | undefined => levelOf(supplyFromConverter({ ...named(quillon(), {}), parts: { converter: { id: 'module-5w-12v' }, railFarads } }), 'converter-load-capacitance');
    expect(level(1000e-6)).toBe('within');
    expect(level(2400e-6)).toBe('marginal');
    expect(level(2600e-6)).toBe('outside');
  });

  it('asks for the minimum load of its sheet', () => {
    expect(levelOf(supplyFromConverter(named(quillon(), { minLoadAmps: 0.005 })), 'converter-minimum-load')).toBe('within');
    expect(levelOf(supplyFromConverter(named(quillon(), { minLoadAmps: 0.05 })), 'converter-minimum-load')).toBe('marginal');
  });

  it('sends its leakage home through a bonded rail and a verified earth, and to the strings without', () => {
    expect(levelOf(supplyFromConverter(quillon()), 'converter-leakage')).toBe('within');
    expect(levelOf(supplyFromConverter(withAmp(quillon(), { protectiveEarth: 'not-checked' })), 'converter-leakage')).toBe('not assessed');
    const absent = supplyFromConverter(withAmp(quillon(), { protectiveEarth: 'absent' }));
    expect(levelOf(absent, 'converter-leakage')).toBe('hazard');
    expect(absent.findings.find((each) => each.rule === 'amp-earth')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(absent.measures.mainsSide.level).toBe('hazard');
  });

  it('is a shock hazard with its output floating on a jack, and leaks more at higher mains', () => {
    const floating = supplyFromConverter(withGrounds(quillon(), { rail: { kind: 'floating' } }));
    expect(floating.findings.find((each) => each.rule === 'converter-leakage')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(floating.converter?.floatingVolts).toBe(66);
    const leak = (highVolts: number): number => supplyFromConverter({ ...quillon(), mains: { ...quillon().mains, highVolts } }).converter?.leakageAmps ?? 0;
    expect(leak(140)).toBeCloseTo((leak(132) * 140) / 132, 9);
  });

  it('puts a regulator behind a module of more volts where no module gives the rail', () => {
    const supply = supplyFromConverter(drawing({ ...quillon(), rail: { volts: 8, regulation: 'fixed' } }, 0.1));
    expect(supply.converter?.part.outputVolts).toBe(12);
    expect(supply.converter?.stage).toMatchObject({ kind: 'fixed', outputVolts: 8 });
    // 12 V less 2 % and half the ripple, less 8 V and 5 % and 2.5 V of dropout.
    expect(supply.converter?.headroomVolts).toBeCloseTo(11.76 - 0.05 - 8.4 - 2.5, 9);
    // Nine volts leave it too little: the next module up, and its heat.
    expect(supplyFromConverter(drawing({ ...quillon(), rail: { volts: 9, regulation: 'fixed' } }, 0.1)).converter?.part.outputVolts).toBe(24);
    expect(levelOf(supply, 'regulator-valley')).toBeDefined();
  });

  it('says so when no module suits', () => {
    const supply = supplyFromConverter(drawing({ ...quillon(), rail: { volts: 40, regulation: 'none' } }, 0.1));
    expect(supply.available).toBe(false);
    expect(levelOf(supply, 'converter-output')).toBe('outside');
  });

  it('refuses an adaptor made for a wall', () => {
    expect(supplyFromConverter(named(quillon(), { id: 'adaptor-12w-12v' })).findings.find((each) => each.rule === 'converter-build')).toMatchObject({ level: 'outside', harm: 'fire' });
  });

  it('does not assess what nobody has read: its insulation, or whether it is heard', () => {
    const supply = supplyFromConverter(tarn());
    for (const rule of ['insulation-from-mains', 'insulation-from-high-tension', 'switching-residue']) expect(levelOf(supply, rule)).toBe('not assessed');
    const vouched = named(quillon(), { insulation: { fromMains: { kind: 'reinforced', workingVolts: 300 }, fromHighTension: { kind: 'reinforced', workingVolts: 500 } } });
    expect(levelOf(supplyFromConverter(vouched), 'insulation-from-mains')).toBeUndefined();
  });

  it('gives what it takes: heat is input less output', () => {
    const { converter } = supplyFromConverter(drawing(quillon(), 0.2));
    if (converter === undefined) throw new Error('no converter');
    const output = 12 * 0.2;
    expect(output + converter.moduleWatts).toBeCloseTo(output / converter.part.efficiency, 9);
  });
});
