import { describe, expect, it } from 'vitest';
import { fusePick } from '../../../src/widgets/fuse-pick/state.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';

const solved = (given: InitialCase = {}) => open(fusePick, given).view;
type View = ReturnType<typeof solved>;
const findingOf = (view: View, rule: string) => view.findings.find((finding) => finding.rule === rule);
const stepOf = (view: View, name: string) => view.working.find((step) => step.name === name)?.result.value ?? Number.NaN;

/** The small transformer of the fuse makers' trap: 230 V 50 Hz, 10 VA, 25 % regulation. */
const TRAP = { place: 'primary', windingVolts: 12, windingAmps: 10 / 12, regulation: 0.25, mainsVolts: 230, mainsHertz: '50', loadAmps: 0.4 } as const;

describe('fuse pick', () => {
  it('rates the Quillon 20’s secondary fuse by RMS, not by DC', () => {
    const view = solved();
    expect(view.level).toBe('within');
    expect(view.summary).toContain('250\u00A0mA');
    expect(stepOf(view, 'rms-over-dc')).toBeGreaterThan(1.6 * 0.114);
  });

  it('works the trap of the small primary by hand: rated 43 mA, so 80 mA; a short draws five times the rated current, loaded copper and all', () => {
    const view = solved({ ...TRAP, fuse: 'this', fuseAmps: 0.1 });
    // Short: 15 V behind 3.6 Ω is 4.17 A, times 15/230 for the primary, less the fuse's own ohms.
    const ohms = (15 - 12) / (10 / 12);
    expect(stepOf(view, 'fault')).toBeLessThanOrEqual(((15 / ohms) * 15) / 230 + 1e-9);
    expect(stepOf(view, 'fault')).toBeGreaterThan(0.2);
    expect(stepOf(view, 'fault-multiple')).toBeLessThan(3);
    expect(solved(TRAP).summary).toMatch(/^80\smA|^100\smA|^125\smA|^160\smA/);
  });

  it('never lets a fuse save a small transformer that is not marked to bear a short', () => {
    expect(findingOf(solved({ ...TRAP, mark: 'not-proof' }), 'fuse-race')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(findingOf(solved({ ...TRAP, mark: 'unknown' }), 'fuse-race')?.level).toBe('not assessed');
    expect(findingOf(solved({ ...TRAP, mark: 'inherently-proof' }), 'fuse-race')?.what).toContain('this fuse does not save it');
  });

  it.each([
    [{ fuse: 'none' }, 'fuse-fitted'],
    [{ fuse: 'this', fuseAmps: 5 }, 'fuse-fitted'],
    [{ mainsSide: 'nothing' }, 'mains-side'],
  ] as const)('calls %o a hazard of fire, and says what to do instead', (given, rule) => {
    const view = solved(given);
    expect(view.level).toBe('hazard');
    expect(findingOf(view, rule)).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(findingOf(view, rule)?.todo).not.toBe('Nothing.');
  });

  it('finds a fuse too small for its switch-ons outside', () => {
    const view = solved({ fuse: 'this', fuseAmps: 0.1 });
    expect(findingOf(view, 'fuse-inrush')?.level).toBe('outside');
    expect(findingOf(view, 'fuse-running')?.level).toBe('outside');
  });

  it('does not take one standard’s amp for another’s', () => {
    const view = solved({ standard: 'ul-248-14' });
    // Three quarters of a UL rating, all of an IEC one.
    expect(stepOf(view, 'may-carry')).toBeCloseTo(0.75 * 0.315, 9);
    expect(findingOf(view, 'fuse-inrush')?.level).toBe('not assessed');
    expect(view.standards).toHaveLength(4);
  });

  it('knows no breaking of a short of which nobody knows the current', () => {
    expect(findingOf(solved({ place: 'primary' }), 'fuse-breaking')?.level).toBe('not assessed');
    expect(findingOf(solved({ place: 'primary', prospectiveAmps: 1000 }), 'fuse-breaking')?.level).toBe('within');
    expect(findingOf(solved({ place: 'primary', prospectiveAmps: 1000, standard: 'iec-sheet-3' }), 'fuse-breaking')).toMatchObject({ level: 'hazard', harm: 'fire' });
  });

  it('solves less of a surge than the textbook’s bound', () => {
    const view = solved();
    expect(stepOf(view, 'surge')).toBeGreaterThan(0.3 * stepOf(view, 'surge-bound'));
    expect(stepOf(view, 'surge')).toBeLessThan(stepOf(view, 'surge-bound'));
  });

  it('plots every figure above zero: both axes go by ratio', () => {
    for (const given of [{}, TRAP, { fuse: 'this', fuseAmps: 10 }, { standard: 'ul-248-14' }] as const) {
      const { plot } = solved(given);
      expect(plot.isLogarithmic).toBe(true);
      for (const series of plot.series) {
        expect(series.values.every((value) => value > 0)).toBe(true);
        expect((series.at ?? []).every((value) => value > 0)).toBe(true);
      }
    }
  });
});
