import { describe, expect, it } from 'vitest';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import { diodePart } from '../../../src/compute/parts/diode.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { windingPick } from '../../../src/widgets/winding-pick/state.ts';

const solved = (given: InitialCase = {}) => open(windingPick, given).view;
const findingOf = (view: ReturnType<typeof solved>, rule: string) => view.findings.find((finding) => finding.rule === rule);
const stepOf = (view: ReturnType<typeof solved>, name: string) => view.working.find((step) => step.name === name)?.result.value ?? Number.NaN;

describe('winding pick', () => {
  it('buys the shop’s 15 V 5 VA for the Quillon 20, one step down being short', () => {
    const view = solved();
    expect(view.level).toBe('within');
    expect(view.summary).toMatch(/^buy: 15\sV, 5\sVA/);
    expect(view.rungs.map(({ picked, level }) => [picked, level])).toEqual([[false, 'outside'], [true, 'within'], [false, 'within']]);
  });

  it('works the printed figures back to source volts and ohms: 9 V 6 VA rising 20 % is 10.8 V behind 2.7 Ω', () => {
    const view = solved({ which: 'this', secondaryVolts: 9, voltAmps: 6, rise: 0.2, regulator: 'none', setVolts: 10, loadAmps: 0.3, mainsHertz: '50' });
    expect(stepOf(view, 'open-circuit')).toBeCloseTo(10.8, 9);
    expect(stepOf(view, 'rated-amps')).toBeCloseTo(6 / 9, 9);
    // The published case of that transformer: 10.5 V at 0.3 A, 0.507 A RMS in its winding (bridge, 2200 µF, 50 Hz).
    const at = solveRectifier({ topology: 'bridge', winding: { openCircuitVolts: 10.8, ohms: 2.7 }, hertz: 50, diode: diodePart('1n400x').typical, reservoir: { farads: 2200e-6, ohms: 0 }, load: { amps: 0.3 } });
    expect(at.rail.meanVolts).toBeCloseTo(10.5, 1);
    expect(at.winding.rmsAmps).toBeCloseTo(0.507, 2);
  });

  it('finds a 12 V secondary outside for a regulated 12 V', () => {
    const view = solved({ which: 'this', secondaryVolts: 12 });
    expect(view.level).toBe('outside');
    expect(findingOf(view, 'regulator-valley')?.level).toBe('outside');
  });

  it('never takes a size for a marking', () => {
    expect(solved({ mark: 'unknown' }).level).toBe('not assessed');
    const bare = findingOf(solved({ mark: 'not-proof' }), 'primary-fuse-clears');
    expect(bare).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(bare?.todo).toContain('short-circuit-proof');
  });

  it('holds two secondaries by the volts read between their free ends', () => {
    const pair = { which: 'this', secondaryVolts: 15, voltAmps: 10, secondaries: 'two-in-parallel' } as const;
    expect(findingOf(solved(pair), 'secondary-phasing')?.level).toBe('not assessed');
    expect(findingOf(solved({ ...pair, freeEndVolts: 0.1 }), 'secondary-phasing')?.level).toBe('within');
    const wrong = findingOf(solved({ ...pair, freeEndVolts: 38 }), 'secondary-phasing');
    expect(wrong).toMatchObject({ level: 'hazard', harm: 'fire' });
    // Each is 15 V 0.333 A rising 30 %: 19.5 V behind 13.5 Ω, so that 2 × 19.5 V drive 2 × 13.5 Ω.
    expect(wrong?.numbers[1]?.value).toBeCloseTo(19.5 / 13.5, 6);
    expect(findingOf(solved({ ...pair, secondaries: 'two-in-series', freeEndVolts: 1 }), 'secondary-phasing')?.level).toBe('outside');
  });

  it('refuses a part made for 60 Hz on 50 Hz mains, and not the other way round', () => {
    expect(findingOf(solved({ mainsHertz: '50', madeFor: '60' }), 'transformer-frequency')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(findingOf(solved({ mainsHertz: '60', madeFor: '50' }), 'transformer-frequency')).toBeUndefined();
  });

  it('hands the transformer it took on', () => {
    const [toHeadroom, toRectify] = solved({ loadAmps: 0.3 }).handOn;
    expect(toHeadroom?.path).toMatch(/^calculators\/headroom\/\?headroom=/);
    expect(toRectify?.path).toContain('loadAmps.300+mA');
  });
});
