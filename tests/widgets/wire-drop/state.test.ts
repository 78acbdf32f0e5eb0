import { describe, expect, it } from 'vitest';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import { wireDrop } from '../../../src/widgets/wire-drop/state.ts';

const opened = open(wireDrop).view;
const solved = (given: InitialCase = {}) => open(wireDrop, given).view;
const findingOf = (view: typeof opened, rule: string) => view.findings.find((finding) => finding.rule === rule);
const step = (view: typeof opened, name: string) => view.working.find((each) => each.name === name)?.result.value ?? NaN;

describe('wire drop', () => {
  it('opens on the Tarn’s spare winding: the run is within its limits, the shared ground is not', () => {
    for (const rule of ['wire-drop', 'wire-current', 'wire-temperature', 'wire-fuse']) expect(findingOf(opened, rule)?.level, rule).toBe('within');
    expect(findingOf(opened, 'shared-ground')).toMatchObject({ level: 'outside', harm: 'noise' });
    expect(opened.summary).toMatch(/shared wire puts 1\d\smV of charging pulses/);
  });

  it('is mended by taking the return to the reservoir first', () => {
    const view = solved({ wiring: 'own' });
    expect(view.level).toBe('within');
    expect(view.summary).toContain('carries no pulses');
    expect(view.spectrum).toEqual([]);
    expect(findingOf(solved({ wiring: 'shared', sharedMetres: 0.005 }), 'shared-ground')?.level).toBe('outside');
  });

  it('agrees with the printed drop of AWG 22: 95 mV over a loop of 0.6 m at 3 A, cold copper', () => {
    const view = solved({ metres: 0.3, loadAmps: 3, windingAmps: 10, regulation: 0.05 });
    const celsius = step(view, 'wire-celsius');
    expect((step(view, 'drop') * 254.5) / (234.5 + celsius)).toBeCloseTo(0.0952, 4);
  });

  it('puts the peak of the pulse times the wire’s ohms on what shares it', () => {
    expect(step(opened, 'shared-by-hand') / step(opened, 'pulse')).toBeCloseTo(0.1 * 0.0529 * ((234.5 + step(opened, 'wire-celsius')) / 254.5), 9);
  });

  it('tells what it sounds of: twice the mains and its multiples', () => {
    expect(opened.spectrum[0]?.hertz).toMatch(/^100\sHz$/);
    expect(opened.spectrum.map(({ hertz }) => Number.parseFloat(hertz)).slice(0, 4)).toEqual([100, 200, 300, 400]);
    expect(solved({ topology: 'half-wave' }).spectrum[0]?.hertz).toMatch(/^50\sHz$/);
  });

  it('finds a run that is too thin outside, and names one that would serve', () => {
    const view = solved({ wire: 'awg-26', loadAmps: 1, metres: 1 });
    expect(findingOf(view, 'wire-drop')?.level).toBe('outside');
    expect(findingOf(view, 'wire-current')?.level).toBe('outside');
    expect(view.summary).toMatch(/AWG \d+ would serve/);
  });

  it.each([
    ['no fuse', { fuseAmps: '' }],
    ['a fuse that outlasts the wire', { fuseAmps: 5 }],
  ])('calls %s a hazard of fire', (_, given) => {
    const finding = findingOf(solved(given), 'wire-fuse');
    expect(finding).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(finding?.todo).toContain('Never a larger fuse');
  });
});
