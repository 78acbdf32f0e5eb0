import { describe, expect, it } from 'vitest';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import { reservoir } from '../../../src/widgets/reservoir/state.ts';

const opened = open(reservoir).view;
const solved = (given: InitialCase = {}) => open(reservoir, given).view;
const findingOf = (view: typeof opened, rule: string) => view.findings.find((finding) => finding.rule === rule);
const step = (view: typeof opened, name: string) => view.working.find((each) => each.name === name)?.result.value ?? NaN;

describe('the reservoir', () => {
  it('opens on the Quillon’s 470 µF, which serves, lasts, and is not the smallest that would', () => {
    expect(opened.level).toBe('within');
    expect(opened.summary).toMatch(/smallest usual size that serves is 330\sµF/);
    expect(opened.handOn).toHaveLength(2);
  });

  it('agrees with a 9 V 6 VA supply solved independently: 0.83 V of ripple at 0.3 A on 2200 µF, 0.41 A through it', () => {
    const view = solved({ windingVolts: 9, windingAmps: 0.667, regulation: 0.2, loadAmps: 0.3, farads: 2200e-6, ratedVolts: 25, mainsVolts: 230, mainsHertz: '50', floorVolts: 7.5 });
    // The reference has a pure sine and no series resistance; the nominal corner a slightly flat one, and 100 mΩ.
    expect(Math.abs((view.corners[1]?.value ?? NaN) / 0.83 - 1)).toBeLessThan(0.06);
    const amps = Number(/([\d.]+)\smA through/.exec(view.corners[1]?.found ?? '')?.[1]) / 1000;
    expect(Math.abs(amps / Math.sqrt(0.507 ** 2 - 0.3 ** 2) - 1)).toBeLessThan(0.06);
  });

  it('has the series resistance of its data sheet: 186 mΩ at most for 1000 µF of 25 V', () => {
    expect(step(solved({ farads: 1000e-6, ratedVolts: 25 }), 'series-resistance')).toBeCloseTo(0.186, 3);
  });

  it('doubles its life for ten kelvin', () => {
    expect(step(solved({ airCelsius: 65 }), 'life') / step(opened, 'life')).toBeCloseTo(0.5, 1);
    expect(findingOf(solved({ airCelsius: 95 }), 'capacitor-life')?.level).toBe('marginal');
    expect(findingOf(solved({ airCelsius: 105 }), 'capacitor-life')?.level).toBe('outside');
  });

  it('finds a valley below what is needed outside, and no size that would mend it', () => {
    const view = solved({ floorVolts: 18 });
    expect(view.level).toBe('outside');
    expect(findingOf(view, 'reservoir-valley')?.level).toBe('outside');
    expect(view.summary).toContain('No usual size serves');
  });

  it('shows diminishing returns: each doubling lifts the valley by less', () => {
    const volts = opened.plot.series[0]?.values ?? [];
    const farads = opened.plot.x.values;
    const at = (size: number) => volts[farads.findIndex((each) => Math.abs(each / size - 1) < 1e-6)] ?? NaN;
    expect(at(470e-6) - at(220e-6)).toBeGreaterThan(at(1000e-6) - at(470e-6));
    expect(at(2200e-6) - at(1000e-6)).toBeGreaterThan(0);
    expect(at(1000e-6) - at(470e-6)).toBeGreaterThan(at(2200e-6) - at(1000e-6));
  });

  it.each([
    ['under-rated', { ratedVolts: 25 }, 'capacitor-volts'],
    ['the wrong way round', { polarity: 'wrong' }, 'capacitor-polarity'],
  ])('calls one %s a hazard, and says what to do instead', (_, given, rule) => {
    const finding = findingOf(solved(given), rule);
    expect(finding).toMatchObject({ level: 'hazard', harm: 'damage' });
    expect(finding?.todo.length).toBeGreaterThan(20);
  });

  it('does not hide an overloaded winding behind the capacitor’s own question', () => {
    expect(findingOf(solved({ windingAmps: 0.1 }), 'winding-current')?.level).toBe('hazard');
    expect(findingOf(opened, 'winding-current')).toBeUndefined();
  });
});
