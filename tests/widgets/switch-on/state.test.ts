import { describe, expect, it } from 'vitest';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { switchOn } from '../../../src/widgets/switch-on/state.ts';

const solved = (given: InitialCase = {}) => open(switchOn, given).view;
type View = ReturnType<typeof solved>;
const findingOf = (view: View, rule: string) => view.findings.find((finding) => finding.rule === rule);
const stepOf = (view: View, name: string) => view.working.find((step) => step.name === name)?.result.value ?? Number.NaN;

describe('switch-on', () => {
  it('opens on the Tarn 45, whose rail stands in milliseconds though its heaters are cold', () => {
    const view = solved();
    expect(view.level).toBe('within');
    expect(view.summary).toMatch(/stands after \d/);
    expect(view.plots).toHaveLength(2);
    expect(view.corners).toHaveLength(3);
  });

  it('holds the first pulse below what Ohm allows: the peak at high mains over copper, by hand', () => {
    // 15 V 2.5 A rising 8 %: 16.2 V behind 0.48 Ω; high mains is a tenth more.
    const bound = (16.2 * 1.1 * Math.SQRT2) / 0.48;
    const peak = stepOf(solved(), 'surge-peak');
    expect(peak).toBeLessThan(bound);
    expect(peak).toBeGreaterThan(0.7 * bound);
    expect(stepOf(solved(), 'surge-square')).toBeLessThan(stepOf(solved(), 'surge-bound'));
  });

  it('shows the warming heaters: six times cold, then what is written on them', () => {
    const [, warm] = solved().plots;
    const amps = warm?.series.find(({ name }) => name === 'winding, RMS')?.values ?? [];
    expect(Math.max(...amps)).toBe(amps[0]);
    expect((amps[0] ?? 0) / (amps.at(-1) ?? 1)).toBeGreaterThan(3);
    expect(solved({ heaterAmps: 0 }).plots).toHaveLength(1);
  });

  it('finds a small diode’s surge rating outside on a stiff winding', () => {
    const view = solved({ diode: '1n400x' });
    expect(findingOf(view, 'diode-surge')?.level).toBe('outside');
    expect(view.level).toBe('outside');
  });

  it('calls a winding that stays over its rating once the heaters are hot a hazard of fire', () => {
    const view = solved({ heaterAmps: 2.2, windingAmps: 2 });
    expect(findingOf(view, 'warm-up-current')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(findingOf(view, 'warm-up-current')?.todo).toContain('Do not leave it running');
  });

  it('says when cold heaters hold the regulator in its limit, and the relays with it', () => {
    const view = solved({ heaterAmps: 1.5 });
    expect(findingOf(view, 'rail-rise')?.level).toBe('marginal');
    expect(findingOf(view, 'coil-at-switch-on')?.level).toBe('marginal');
  });

  it('asks for some load', () => {
    expect(() => solved({ heaterAmps: 0, steadyAmps: 0, coils: 0 })).toThrow(RangeError);
  });

  it('hands the same circuit to the fuse', () => {
    expect(solved({ farads: 2200e-6 }).handOn[0]?.path).toMatch(/fuse-pick.*farads\.2\.2\+mF|fuse-pick.*farads\.2200\+/);
  });
});
