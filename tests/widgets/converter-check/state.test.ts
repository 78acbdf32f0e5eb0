import { describe, expect, it } from 'vitest';
import { converterCheck } from '../../../src/widgets/converter-check/state.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';

const solved = (given: InitialCase = {}) => open(converterCheck, given).view;
type View = ReturnType<typeof solved>;
const findingOf = (view: View, rule: string) => view.findings.find((finding) => finding.rule === rule);
const stepOf = (view: View, name: string) => view.working.find((step) => step.name === name)?.result.value ?? Number.NaN;

describe('converter check', () => {
  it('opens on the Tarn 45, whose cold heaters a hiccuping module starts only after too many tries', () => {
    const view = solved();
    expect(view.level).toBe('outside');
    expect(findingOf(view, 'converter-start')?.level).toBe('outside');
    expect(view.starts.map(({ taken }) => taken)).toEqual([true, false, false]);
    expect(view.starts[2]?.level).toBe('within');
    expect(view.starts[0]?.name).toContain('assumed');
  });

  it('derates along the curve: 1 A at 50 °C, half of it at 70 °C, so 875 mA at 55 °C, by hand', () => {
    expect(stepOf(solved(), 'derated')).toBeCloseTo(1 - 0.5 * (5 / 20), 9);
    expect(findingOf(solved({ airCelsius: 75 }), 'converter-rating')?.level).toBe('outside');
  });

  it('asks cold for what Ohm says: six times the heaters and the rest, over 1.1 A', () => {
    const others = 0.024 + 0.167;
    const conductance = (0.3 * 6) / 12.6 + others / 12.6;
    // A module of 12 V; relays are not on at switch-on.
    const view = solved();
    expect(stepOf(view, 'cold-demand')).toBeGreaterThan((((0.3 * 6) / 12.6) * 12) / 1.1);
    expect(stepOf(view, 'cold-demand')).toBeLessThan((conductance * 12) / 1.1 + 0.05);
  });

  it('scales the leakage with the mains, as a capacitor does: 0.1 mA at 230 V 50 Hz is 132 µA at 253 V 60 Hz', () => {
    expect(stepOf(solved({ mainsHertz: '60' }), 'leakage')).toBeCloseTo(0.1e-3 * 1.1 * 1.2, 9);
  });

  it('starts at once where nothing is cold', () => {
    const view = solved({ heaterAmps: 0 });
    expect(view.summary).toContain('at once');
    expect(findingOf(view, 'converter-start')?.level).toBe('within');
  });

  it.each([
    [{ earth: 'absent' }, 'converter-leakage', 'shock'],
    [{ bond: 'floating', reach: 'outside' }, 'converter-leakage', 'shock'],
    [{ creepageMetres: 0.003 }, 'creepage', 'shock'],
  ] as const)('calls %o a hazard', (given, rule, harm) => {
    const view = solved(given);
    expect(view.level).toBe('hazard');
    expect(findingOf(view, rule)).toMatchObject({ level: 'hazard', harm });
  });

  it('does not take a test voltage for a class of insulation', () => {
    const good = { startUp: 'constant-current', heaterAmps: 0.3 } as const;
    expect(findingOf(solved(good), 'insulation-from-mains')?.level).toBe('not assessed');
    expect(findingOf(solved({ ...good, insulation: 'reinforced' }), 'insulation-from-mains')).toBeUndefined();
  });

  it('keeps an adaptor for a wall out of a chassis', () => {
    expect(findingOf(solved({ module: 'adaptor-12w-12v' }), 'converter-build')).toMatchObject({ level: 'outside', harm: 'fire' });
  });

  it('has a limit for the capacitance it starts into', () => {
    expect(findingOf(solved({ maxLoadFarads: 500e-6 }), 'converter-load-capacitance')?.level).toBe('marginal');
    expect(findingOf(solved({ railFarads: 0.01 }), 'converter-load-capacitance')?.level).toBe('outside');
  });

  it('keeps a hiccup’s peaks and pauses in the plot, however long it goes on', () => {
    const { plot } = solved({ heaterAmps: 1.2 });
    expect(plot.x.values.length).toBeLessThanOrEqual(410);
    const amps = plot.series[0]?.values ?? [];
    expect(Math.min(...amps)).toBe(0);
    expect(Math.max(...amps)).toBeGreaterThan(0.9);
  });

  it('says which field is wrong when no module gives the rail, or nothing loads it', () => {
    expect(() => solved({ module: 'picked', setVolts: 18 })).toThrow(RangeError);
    expect(() => solved({ heaterAmps: 0, idleAmps: 0, switchedAmps: 0 })).toThrow(RangeError);
  });
});
