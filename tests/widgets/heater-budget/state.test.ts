import { describe, expect, it } from 'vitest';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { heaterBudget } from '../../../src/widgets/heater-budget/state.ts';

const solved = (given: InitialCase = {}) => open(heaterBudget, given).view;
type View = ReturnType<typeof solved>;
const findingOf = (view: View, rule: string) => view.findings.find((finding) => finding.rule === rule);
const amps = (view: View, name: RegExp): number => view.ledger.lines.find((line) => name.test(line.name))?.amps ?? Number.NaN;

/** A stiff 6.3 V winding with as many 6.3 V heaters as asked for, a low-dropout 5 V rail of 200 mA behind a Schottky bridge. */
const stiff = (heaterAmps: number, given: InitialCase = {}) =>
  solved({
    windingVolts: 6.3, windingOhms: 0.1, ratedAmps: 12, mainsHertz: '50', mainsVolts: 230, regulator: 'none', setVolts: 8, loadAmps: 0.2, topology: 'bridge', diode: '1n5820-22',
    heaters: [{ name: 'valve', count: 1, volts: 6.3, amps: heaterAmps }], ...given,
  });

describe('heater budget', () => {
  it('opens on the Quillon 20, whose heater winding cannot take the rail, and says so as a hazard of fire', () => {
    const view = solved();
    expect(view.level).toBe('hazard');
    expect(findingOf(view, 'winding-current')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(findingOf(view, 'winding-current')?.todo).toContain('separate transformer');
  });

  it('agrees with the published case: 200 mA from a 6.3 V 0.1 Ω winding draws half an amp of its own, and adds about 0.3 A to the heaters’', () => {
    for (const heaterAmps of [1, 3, 5]) {
      const view = stiff(heaterAmps);
      expect(amps(view, /pulses alone/)).toBeGreaterThan(0.44);
      expect(amps(view, /pulses alone/)).toBeLessThan(0.52);
      const added = amps(view, /solved/) - amps(view, /heaters alone/);
      expect(added).toBeGreaterThan(0.24);
      expect(added).toBeLessThan(0.36);
    }
  });

  it('finds the true total between the two sums, in every case', () => {
    for (const given of [{}, { loadAmps: 0.02 }, { loadAmps: 0.5, ratedAmps: 8 }, { topology: 'bridge', regulator: '7805' }] as const) {
      const view = solved(given);
      expect(amps(view, /solved/)).toBeGreaterThan(amps(view, /by their squares/));
      expect(amps(view, /solved/)).toBeLessThan(amps(view, /added up/));
    }
  });

  it('heaters alone carry what Ohm says: 6.93 V over heaters and copper', () => {
    const hot = (6.7 * 132) / 120;
    const heaters = 6.3 / 3.9;
    expect(amps(solved(), /heaters alone/)).toBeCloseTo(hot / (heaters + 0.1), 6);
  });

  it('does not assess a winding whose rating nobody has read, whatever its figures', () => {
    const view = stiff(3, { ratedAmps: '' });
    expect(findingOf(view, 'winding-current')?.level).toBe('not assessed');
    expect(view.ledger.left).toContain('cannot be told');
    expect(view.plot.series.map(({ name }) => name)).not.toContain('rated');
  });

  it('is never within: it is the last choice even where every figure is good', () => {
    const view = stiff(3, { insulation: 'reinforced', bond: 'floating', reference: 'none', setVolts: 6, transformerVoltAmps: 300 });
    expect(findingOf(view, 'heater-winding-last')?.level).toBe('marginal');
    expect(['marginal', 'not assessed', 'outside', 'hazard']).toContain(view.level);
    expect(view.handOn[0]?.path).toContain('calculators/winding-pick/');
  });

  it('calls a rail from lifted heaters on a jack a hazard of shock', () => {
    const view = solved({ reference: 'elevated', liftVolts: 60, reach: 'outside' });
    expect(findingOf(view, 'elevated-rail')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(findingOf(view, 'elevation-single-fault')).toMatchObject({ level: 'hazard', harm: 'shock' });
  });

  it('calls a bonded rail beside a grounded centre tap a hazard of fire', () => {
    expect(findingOf(solved({ reference: 'centre-tap', bond: 'bonded' }), 'ground-situation')).toMatchObject({ level: 'hazard', harm: 'fire' });
  });

  it('sets bridge and doubler, silicon and Schottky side by side', () => {
    const view = solved();
    expect(view.variants.map(({ name }) => name)).toEqual(['Bridge, silicon', 'Bridge, Schottky', 'Doubler, silicon', 'Doubler, Schottky']);
    expect(view.variants.filter(({ taken }) => taken)).toHaveLength(1);
    expect(solved({ topology: 'bridge', diode: '1n5820-22' }).variants).toHaveLength(1);
  });
});
