import { describe, expect, it } from 'vitest';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';
import { windingEstimate } from '../../../src/widgets/winding-estimate/state.ts';

const opened = open(windingEstimate);
const solved = (given: InitialCase = {}) => open(windingEstimate, given).view;
const levelOf = (view: ReturnType<typeof solved>, rule: string) => view.findings.find((finding) => finding.rule === rule)?.level;
const step = (view: ReturnType<typeof solved>, name: string) => view.working.find((each) => each.name === name)?.result.value ?? NaN;

describe('the winding estimate', () => {
  it('opens on the Tarn’s spare winding, about 16.2 V behind half an ohm, and says what it cannot tell', () => {
    expect(step(opened.view, 'open-circuit')).toBeCloseTo(16.2, 9);
    expect(step(opened.view, 'source-ohms')).toBeCloseTo((16.2 - (15.2 * 230) / 229.5) / ((2 * 230) / 229.5), 2);
    expect(opened.view.level).toBe('not assessed');
    expect(levelOf(opened.view, 'winding-spare')).toBe('not assessed');
    expect(levelOf(opened.view, 'winding-insulation')).toBe('not assessed');
    expect(opened.view.summary).toContain('cannot tell');
  });

  it('agrees with two readings reckoned by hand: 14.1 V open and 12.6 V at 3 A are 0.5 Ω, 11.9 %', () => {
    const view = solved({ lighterVolts: 14.1, lighterMains: '', heavierVolts: 12.6, heavierAmps: 3, heavierMains: '' });
    expect(step(view, 'source-ohms')).toBeCloseTo(0.5, 12);
    expect(step(view, 'sag')).toBeCloseTo(1.5 / 12.6, 12);
  });

  it('brings a reading at other mains to nominal', () => {
    const view = solved({ lighterVolts: 15.4, lighterMains: 218.6, heavierVolts: 15.2 });
    expect(step(view, 'lighter')).toBeCloseTo((15.4 * 230) / 218.6, 12);
  });

  it('does not trust a step that drowns in the meter', () => {
    const view = solved({ lighterVolts: 6.7, heavierVolts: 6.65, heavierAmps: 0.5, purpose: 'heater' });
    expect(levelOf(view, 'readings-tell')).toBe('not assessed');
  });

  it('doubts readings with the mains unwatched more', () => {
    const width = (view: ReturnType<typeof solved>) => step(view, 'limits') - step(view, 'source-ohms');
    expect(width(solved({ heavierMains: '' }))).toBeGreaterThan(2 * width(opened.view));
    expect(solved({ heavierMains: '' }).corners[0]?.restsOn).toContain('unwatched');
  });

  it('reckons what is left beside what it carries once its rating is known, and finds too much outside', () => {
    const known = solved({ ratedAmps: 2.5, carriedAmps: 1.5, wantedAmps: 1.4 });
    expect(levelOf(known, 'winding-spare')).toBe('within');
    expect(levelOf(solved({ ratedAmps: 2.5, carriedAmps: 1.5, wantedAmps: 2.1 }), 'winding-spare')).toBe('outside');
  });

  it('calls a rectifier valve’s winding a hazard of shock, and takes it nowhere', () => {
    const view = solved({ purpose: 'rectifier-valve', lighterVolts: 5.3, heavierVolts: 5 });
    expect(view.findings.find(({ rule }) => rule === 'winding-purpose')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(view.handOn).toEqual([]);
    expect(opened.view.handOn).toHaveLength(1);
  });

  it('calls an ohmmeter on a winding not proved dead a hazard, and sets a proved one beside the readings', () => {
    expect(solved({ proved: 'not' }).findings.find(({ rule }) => rule === 'ohmmeter')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(opened.view.findings.find(({ rule }) => rule === 'ohmmeter')?.what).toContain('misses');
    expect(levelOf(solved({ ohmmeterOhms: '' }), 'ohmmeter')).toBeUndefined();
  });

  it('asks for a fall in volts and a rise in amps', () => {
    expect(evaluate(windingEstimate, { ...opened.raw, heavierVolts: '16.5 V' }, opened).errors['heavierVolts']).toContain('fewer volts');
    expect(evaluate(windingEstimate, { ...opened.raw, lighterAmps: '2 A' }, opened).errors['heavierAmps']).toContain('more current');
  });
});
