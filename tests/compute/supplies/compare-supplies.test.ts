import { describe, expect, it } from 'vitest';
import type { SupplyPlan } from '../../../src/compute/plan.ts';
import { compareSupplies, openJob } from '../../../src/compute/supplies/compare-supplies.ts';
import { fennel, quillon, tarn, withAmp, withGrounds } from './plan-cases.ts';

const shop: readonly SupplyPlan[] = [quillon(), tarn(), fennel()];

describe('the four ways side by side', () => {
  it('choose for the shop: a transformer where there is room, the spare winding where there is one, a module where there is neither', () => {
    expect(shop.map((plan) => compareSupplies(plan).recommended)).toEqual(['separate-transformer', 'spare-winding', 'converter']);
  });

  it('name all four once, each with a reason that says something of this job', () => {
    for (const plan of shop) {
      const { order } = compareSupplies(plan);
      expect(new Set(order.map((each) => each.approach)).size).toBe(4);
      for (const { reason } of order) expect(reason.length).toBeGreaterThan(30);
    }
  });

  it('have the same measures, each with a level and words', () => {
    for (const plan of shop) {
      for (const supply of Object.values(compareSupplies(plan).supplies)) {
        expect(Object.keys(supply.measures)).toEqual(['holds', 'heat', 'loading', 'room', 'mainsSide', 'ground']);
        for (const measure of Object.values(supply.measures)) expect(measure.words.length).toBeGreaterThan(5);
      }
    }
  });

  it('never put the heater winding first, not even where the others are all beyond their limits', () => {
    const cramped = withAmp(quillon(), {
      room: { lengthMetres: 0, widthMetres: 0, heightMetres: 0 },
      heater: { openCircuitVolts: 17, ohms: 0.05, ratedAmps: 20, basis: 'rated', reference: { kind: 'none' }, insulation: { fromMains: { kind: 'reinforced', workingVolts: 300 }, fromHighTension: { kind: 'reinforced', workingVolts: 500 } }, heaters: [] },
    });
    for (const plan of [...shop, cramped]) {
      const { order, recommended } = compareSupplies(plan);
      expect(order[0]?.approach).not.toBe('heater-winding');
      expect(recommended).not.toBe('heater-winding');
      expect(order.find((each) => each.approach === 'heater-winding')?.reason).toContain('last choice');
    }
    expect(compareSupplies(cramped).recommended).toBeUndefined();
    expect(compareSupplies(cramped).words).toContain('None of the three better ways');
  });

  it('put a way that is a hazard behind one that only passes a limit, and what is not there last', () => {
    const floating = withGrounds(tarn(), { rail: { kind: 'floating' } });
    const { supplies, recommended } = compareSupplies(floating);
    expect(recommended).toBeUndefined();
    for (const supply of Object.values(supplies)) expect(supply.level).toBe('hazard');
    expect(compareSupplies(quillon()).order.at(-1)?.approach).toBe('spare-winding');
  });

  it('are all hazards in an amp without protective earth', () => {
    for (const supply of Object.values(compareSupplies(withAmp(tarn(), { protectiveEarth: 'absent' })).supplies)) {
      expect(supply.findings.some((each) => each.rule === 'amp-earth' && each.level === 'hazard')).toBe(true);
    }
  });

  it('say what is touched on the mains side', () => {
    const { supplies } = compareSupplies(tarn());
    expect(Object.entries(supplies).map(([approach, supply]) => [approach, supply.measures.mainsSide.touched])).toEqual([
      ['spare-winding', false],
      ['converter', true],
      ['separate-transformer', true],
      ['heater-winding', false],
    ]);
  });

  it('put the most serious finding first and name its corner', () => {
    for (const plan of shop) {
      for (const supply of Object.values(compareSupplies(plan).supplies)) {
        expect(supply.level).toBe(supply.findings[0]?.level);
        for (const finding of supply.findings) {
          expect(finding.what.length).toBeGreaterThan(10);
          expect(finding.restsOn.length).toBeGreaterThan(0);
          if (finding.level === 'hazard') expect(finding.todo.length).toBeGreaterThan(20);
        }
      }
    }
  });

  it('balance charge and power at every solved corner of every way', () => {
    for (const plan of shop) {
      for (const supply of Object.values(compareSupplies(plan).supplies)) {
        for (const at of supply.chain?.corners ?? []) {
          if (!at.solved) continue;
          const { watts } = at;
          expect(watts.winding + watts.diodes + watts.reservoir + watts.regulator + watts.load + watts.across).toBeCloseTo(watts.source, 9);
          // Charge: each diode passes the load's, shared out by the topology.
          const share = { bridge: 2, 'centre-tap': 2, 'half-wave': 1, doubler: 1 }[supply.chainInput?.topology ?? 'bridge'];
          expect(at.rectifier.diode.meanAmps * share).toBeCloseTo(at.rectifier.load.meanAmps, 3);
        }
      }
    }
  });

  it('use the named parts for the approach decided on, and size the other three beside it', () => {
    const plan: SupplyPlan = { ...tarn(), approach: 'spare-winding', parts: { ...tarn().parts, reservoir: { farads: 6800e-6, ratedVolts: 63 } } };
    const { supplies } = compareSupplies(plan);
    const by = (approach: 'spare-winding' | 'separate-transformer') => supplies[approach].parts.find((part) => part.role === 'reservoir')?.chosenBy;
    expect(by('spare-winding')).toBe('plan');
    expect(by('separate-transformer')).toBe('sized');
    expect(supplies['separate-transformer']).toEqual(compareSupplies(tarn()).supplies['separate-transformer']);
  });

  it('refuse parts that do not fit, unless they are left open', () => {
    const plan: SupplyPlan = { ...tarn(), parts: { regulator: '7805' } };
    expect(() => compareSupplies(plan)).toThrow(RangeError);
    expect(compareSupplies(openJob(plan)).order).toHaveLength(4);
  });
});
