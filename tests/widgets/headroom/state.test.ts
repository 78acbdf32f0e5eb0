import { describe, expect, it } from 'vitest';
import { headroom } from '../../../src/widgets/headroom/state.ts';
import { rectify } from '../../../src/widgets/rectify/state.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';

const opened = (initial: Parameters<typeof open>[1]) => open(headroom, initial);
const step = (name: string, initial: Parameters<typeof open>[1] = {}) => {
  const found = opened(initial).view.working.find((each) => each.name === name);
  return Object.fromEntries((found?.numbers ?? []).map(({ symbol, value }) => [symbol, value])) as Record<string, number>;
};

describe('the headroom of a regulator', () => {
  it('opens on the same supply as the rectifier, within its limits', () => {
    const { values, view } = opened({});
    expect(values).toMatchObject(
      Object.fromEntries(Object.entries(open(rectify).values).filter(([name]) => Object.hasOwn(headroom.fields, name))),
    );
    expect(view.level).toBe('within');
  });

  it('needs the highest output and the planned dropout: 12 V + 5 % + 2.5 V, and spares the rest of the valley', () => {
    const { view } = opened({});
    expect(view.neededVolts).toBeCloseTo(12 * 1.05 + 2.5, 9);
    expect(view.spareVolts).toBeCloseTo((view.corners[0]?.value ?? 0) - 15.1, 9);
    expect(view.stairs.find(({ needed }) => needed === true)?.volts).toBe(view.neededVolts);
  });

  it('heats its junction as by hand: (V − 11.4) × I + V × q, times 5 + 0.5 + 21 K/W above the air', () => {
    const { V = 0, I = 0, q = 0 } = step('regulator-heat');
    expect(I).toBe(0.106);
    const watts = (V - 12 * 0.95) * I + V * q;
    expect(opened({}).view.corners[2]?.value).toBeCloseTo(55 + watts * (5 + 0.5 + 21), 6);
    // The same without a heatsink, in free air at 65 K/W.
    expect(opened({ heatsink: '' }).view.corners[2]?.value).toBeCloseTo(55 + watts * 65, 6);
  });

  it('is outside when it drops out at low mains, and when it is too hot at high mains', () => {
    const low = opened({ windingVolts: 12 }).view;
    expect(low).toMatchObject({ level: 'outside', corners: [{ level: 'outside' }, {}, {}] });
    expect(low.spareVolts).toBeLessThan(0);
    expect(low.summary).toContain('drops out');
    expect(low.stairs.at(-1)?.name).toBe('rail asked for');
    expect(opened({ heatsink: '' }).view).toMatchObject({ level: 'outside', corners: [{ level: 'within' }, {}, { level: 'outside' }] });
  });

  it('is a hazard when the winding is overloaded', () => {
    const { view } = opened({ windingAmps: 0.1 });
    expect(view.level).toBe('hazard');
    expect(view.findings.find(({ level }) => level === 'hazard')).toMatchObject({ rule: 'winding-current', harm: 'fire' });
  });

  it('holds with a low-dropout part where a common one does not, and warns of its input limit', () => {
    const case12 = { windingVolts: 13.2, farads: 1000e-6 };
    expect(opened(case12).view.corners[0]?.level).toBe('outside');
    const low = opened({ ...case12, regulator: 'ldo-12' }).view;
    expect(low.corners[0]?.level).toBe('within');
    expect(opened({ regulator: 'ldo-12' }).view.findings.find(({ rule }) => rule === 'regulator-input')?.level).toBe('outside');
  });

  it('lets the rail of an adjustable part be set, and asks for it nowhere else', () => {
    expect(opened({ regulator: '317', setVolts: 9 }).view).toMatchObject({ adjustable: true, regulator: { railText: '9\u00A0V' } });
    expect(opened({ regulator: '317' }).view.note).toContain('insulate');
    expect(opened({}).view.adjustable).toBe(false);
  });
});
