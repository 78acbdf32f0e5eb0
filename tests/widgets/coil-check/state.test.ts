import { describe, expect, it } from 'vitest';
import { coilCheck } from '../../../src/widgets/coil-check/state.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';

const solved = (given: InitialCase = {}) => open(coilCheck, given).view;
const levelOf = (view: ReturnType<typeof solved>, rule: string) => view.findings.find((finding) => finding.rule === rule)?.level;

describe('coil check', () => {
  it('opens on a channel relay of the shop that pulls in hot and lets go in time', () => {
    const view = solved();
    expect(levelOf(view, 'coil-pull-in')).toBe('within');
    expect(levelOf(view, 'coil-release')).toBe('within');
    expect(levelOf(view, 'driver-volts')).toBe('within');
    expect(view.summary).toMatch(/pulls in when hot, 0\.\d\d\sV to spare/);
    // The power relay asks for more than a signal on its contacts, and says so.
    expect(view.level).toBe('marginal');
    expect(view.summary).toContain('more than a signal');
  });

  it('agrees with a coil of 275 Ω and 2.29 H reckoned by hand: 10.1 ms into a diode, 3.8 ms with 12 V of zener', () => {
    const view = solved({ kind: 'power-16a', lowestVolts: 12, highestVolts: 12 });
    const usual = view.choices.map(({ usually }) => usually.replace(/\u00A0/g, ' '));
    expect(usual[0]).toBe('usually 10 ms');
    expect(usual[1]).toBe('usually 3.8 ms');
    const release = view.working.find(({ name }) => name === 'release')?.result.value ?? NaN;
    const [ohms, henries] = [275 * 0.9, 2.29];
    expect(release).toBeCloseTo((henries / ohms) * Math.log((12 / ohms + 0.8 / ohms) / (1.2 / 275 + 0.8 / ohms)), 9);
  });

  it('raises the pull-in by the coil’s copper: 9 V cold is 11.0 V at 79 °C', () => {
    const step = solved().working.find(({ name }) => name === 'hot-pull-in');
    const celsius = solved().working.find(({ name }) => name === 'coil-temperature')?.result.value ?? NaN;
    expect(step?.result.value).toBeCloseTo((9 * (234.5 + celsius)) / 257.5, 9);
  });

  it('finds the coil outside on a rail that sags', () => {
    const view = solved({ lowestVolts: 9.5 });
    expect(levelOf(view, 'coil-pull-in')).toBe('outside');
    expect(view.level).toBe('outside');
    expect(view.summary).toContain('may stay silent when hot');
  });

  it('calls a bare coil on a transistor a hazard, and says what to do instead', () => {
    const view = solved({ suppression: 'none' });
    const finding = view.findings.find(({ rule }) => rule === 'driver-volts');
    expect(finding).toMatchObject({ level: 'hazard', harm: 'damage' });
    expect(finding?.todo).toContain('diode across the coil');
    expect(levelOf(view, 'coil-release')).toBe('not assessed');
  });

  it.each([
    [{}, 'within'],
    [{ contactsAt: 'high', highVolts: 420 }, 'outside'],
    [{ contactsAt: 'high', highVolts: 420, rail: 'outside' }, 'hazard'],
    [{ contactsAt: 'anode', highVolts: 420, insulation: 'reinforced', insulationVolts: 500, rail: 'outside' }, 'hazard'],
    [{ contactsAt: 'high', highVolts: 420, insulation: 'reinforced', insulationVolts: 500, rail: 'outside' }, 'within'],
    [{ contactsAt: 'high', highVolts: 420, insulation: 'basic', insulationVolts: 500, rail: 'outside' }, 'not assessed'],
    [{ contactsAt: 'high', highVolts: 420, insulation: 'unknown' }, 'not assessed'],
    [{ signalVolts: 180, rail: 'outside' }, 'hazard'],
  ] as const)('holds the barrier against what the contacts work at: %o is %s', (given, level) => {
    expect(levelOf(solved(given), 'coil-to-contact')).toBe(level);
  });

  it('doubles B+ at an output anode', () => {
    const finding = solved({ contactsAt: 'anode', highVolts: 450 }).findings.find(({ rule }) => rule === 'coil-to-contact');
    expect(finding?.numbers[0]?.value).toBe(900);
  });

  it('calls parting the high voltage live a hazard of fire, and dead contacts beyond their rating outside', () => {
    expect(solved({ contactsAt: 'high', moved: 'live' }).findings.find(({ rule }) => rule === 'contact-volts')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(levelOf(solved({ contactsAt: 'high', moved: 'dead' }), 'contact-volts')).toBe('outside');
  });

  it('gives the coil behind a resistor its share', () => {
    const bare = solved({ lowestVolts: 23, highestVolts: 25 }).findings.find(({ rule }) => rule === 'coil-volts');
    expect(bare?.level).toBe('outside');
    expect(levelOf(solved({ lowestVolts: 23, highestVolts: 25, seriesOhms: 330 }), 'coil-volts')).toBe('within');
  });

});
