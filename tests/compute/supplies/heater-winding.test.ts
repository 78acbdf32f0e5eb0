import { describe, expect, it } from 'vitest';
import type { SupplyPlan } from '../../../src/compute/plan.ts';
import { heatersOhms, supplyFromHeaterWinding } from '../../../src/compute/supplies/heater-winding.ts';
import type { Supply } from '../../../src/compute/supplies/supply-types.ts';
import { drawing, fennel, quillon, tarn, withAmp, withGrounds, without } from './plan-cases.ts';

const levelOf = (supply: Supply, rule: string): string | undefined => supply.findings.find((each) => each.rule === rule)?.level;
const numberOf = (supply: Supply, rule: string, name: string): number =>
  supply.findings.find((each) => each.rule === rule)?.numbers.find((each) => each.name === name)?.value ?? Number.NaN;
type Heater = NonNullable<SupplyPlan['amp']['heater']>;
const withHeater = (plan: SupplyPlan, change: Partial<Heater>): SupplyPlan => {
  if (plan.amp.heater === undefined) throw new Error('this plan has no heater winding');
  return withAmp(plan, { heater: { ...plan.amp.heater, ...change } });
};

/** 5 V relays from 6.3 V: the case that is tried most. */
const fiveVolts = (plan: SupplyPlan, regulation: SupplyPlan['rail']['regulation'], amps = 0.2): SupplyPlan => drawing({ ...plan, rail: { volts: 5, regulation } }, amps);

describe('a rail from the heater winding', () => {
  it('takes the heaters in parallel as the load they are', () => {
    expect(heatersOhms({ heaters: [{ name: 'a', volts: 6.3, amps: 1.5, count: 2 }, { name: 'b', volts: 6.3, amps: 0.3, count: 3 }] })).toBeCloseTo(6.3 / 3.9, 9);
    expect(heatersOhms({ heaters: [] })).toBeUndefined();
  });

  it('says in every case that it is the last choice', () => {
    for (const plan of [quillon(), tarn(), fennel()]) expect(levelOf(supplyFromHeaterWinding(plan), 'heater-winding-last')).toBe('marginal');
  });

  it('tries bridge and doubler with silicon and with Schottky, and tells each margin', () => {
    const { variants } = supplyFromHeaterWinding(tarn());
    expect(variants).toHaveLength(4);
    const margin = (topology: string, kind: string): number => variants.find((each) => each.topology === topology && each.kind === kind)?.marginVolts ?? Number.NaN;
    expect(margin('bridge', 'schottky')).toBeGreaterThan(margin('bridge', 'silicon') + 0.5);
    expect(margin('doubler', 'schottky')).toBeGreaterThan(margin('bridge', 'schottky') + 3);
  });

  it('cannot feed a fixed 5 V regulator at low mains with silicon or with Schottky, and a low-dropout one only with Schottky', () => {
    const bridge = (regulation: 'fixed' | 'low-dropout', kind: 'silicon' | 'schottky') =>
      supplyFromHeaterWinding({ ...fiveVolts(tarn(), regulation), parts: { topology: 'bridge' } }).variants.find((each) => each.kind === kind)?.marginVolts ?? Number.NaN;
    expect(bridge('fixed', 'silicon')).toBeLessThan(-1);
    expect(bridge('fixed', 'schottky')).toBeLessThan(0);
    expect(bridge('low-dropout', 'schottky')).toBeGreaterThan(0.3);
    expect(bridge('low-dropout', 'silicon')).toBeLessThan(0);
  });

  it('adds its pulses to the heaters in the winding: the total is judged, not the tap', () => {
    const plan = fiveVolts(tarn(), 'low-dropout');
    const heaters = (tarn().amp.heater?.heaters ?? []).reduce((sum, each) => sum + each.amps * each.count, 0);
    const supply = supplyFromHeaterWinding(plan);
    const total = supply.chain?.worst?.windingCurrent.windingRmsAmps ?? 0;
    expect(total).toBeGreaterThan(heaters);
    const level = (ratedAmps: number): string | undefined => levelOf(supplyFromHeaterWinding(withHeater(plan, { ratedAmps })), 'winding-current');
    expect(level(total / 0.89)).toBe('within');
    expect(level(total / 0.99)).toBe('marginal');
    expect(level(total / 1.1)).toBe('outside');
    expect(level(total / 1.2)).toBe('hazard');
  });

  it('does not assess a winding that nobody knows the rating of', () => {
    const heater = without(tarn().amp.heater as Heater, 'ratedAmps');
    expect(levelOf(supplyFromHeaterWinding(withAmp(tarn(), { heater })), 'winding-current')).toBe('not assessed');
  });

  it('takes volts and crest from the heaters, the more the softer the winding', () => {
    const plan = fiveVolts(tarn(), 'low-dropout', 0.5);
    const left = [0.05, 0.1, 0.2].map((ohms) => numberOf(supplyFromHeaterWinding(withHeater(plan, { ohms })), 'heaters-left', 'heater volts'));
    expect(left).toEqual([...left].sort((a, b) => b - a));
    const crest = [0.05, 0.1, 0.2].map((ohms) => numberOf(supplyFromHeaterWinding(withHeater(plan, { ohms })), 'heaters-left', 'crest factor'));
    expect(crest).toEqual([...crest].sort((a, b) => b - a));
  });

  it('starves the heaters inside, just outside of and beyond 5 and 10 % at nominal mains', () => {
    const level = (openCircuitVolts: number): string | undefined => levelOf(supplyFromHeaterWinding(withHeater(fiveVolts(tarn(), 'low-dropout'), { openCircuitVolts })), 'heaters-left');
    expect(level(6.6)).toBe('within');
    expect(level(6.15)).toBe('marginal');
    expect(level(5.7)).toBe('outside');
  });

  it('lifts the rail with elevated heaters: marginal inside, outside past 60 V, a shock hazard on a jack', () => {
    const internal = withGrounds(fennel(), { rail: { kind: 'floating' }, jacks: [] });
    const at = (volts: number, plan = internal) =>
      supplyFromHeaterWinding(withHeater(plan, { reference: { kind: 'elevated', volts, centre: { kind: 'centre-tap' }, lowerOhms: 47e3 } }));
    expect(levelOf(at(45), 'elevated-rail')).toBe('marginal');
    expect(levelOf(at(49), 'elevated-rail')).toBe('outside');
    expect(levelOf(at(45), 'elevation-single-fault')).toBe('marginal');
    const onJack = withGrounds(internal, {
      jacks: [{ name: 'footswitch', mounting: 'insulated', tip: { kind: 'logic', ohms: 4700 }, sleeve: { kind: 'rail-negative' }, touchable: true, gear: { kind: 'none' } }],
    });
    for (const rule of ['elevated-rail', 'elevation-single-fault']) {
      expect(at(45, onJack).findings.find((each) => each.rule === rule)).toMatchObject({ level: 'hazard', harm: 'shock' });
    }
    expect(levelOf(supplyFromHeaterWinding(tarn()), 'elevated-rail')).toBeUndefined();
  });

  it('finds a second ground where the centre tap is grounded already, and one ground where it is not', () => {
    expect(supplyFromHeaterWinding(tarn()).findings.find((each) => each.rule === 'ground-situation')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(levelOf(supplyFromHeaterWinding(withHeater(tarn(), { reference: { kind: 'none' } })), 'ground-situation')).toBe('within');
  });

  it('has nothing to say of a winding that was never surveyed, and does not call it within', () => {
    const supply = supplyFromHeaterWinding({ ...tarn(), amp: without(tarn().amp, 'heater') });
    expect(supply.available).toBe(false);
    expect(levelOf(supply, 'no-heater-winding')).toBe('not assessed');
  });
});
