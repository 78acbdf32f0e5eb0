import { describe, expect, it } from 'vitest';
import { indicator } from '../../../src/widgets/indicator/state.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';

const opened = open(indicator);
const solved = (given: InitialCase = {}) => open(indicator, given).view;
const levelOf = (view: ReturnType<typeof solved>, rule: string) => view.findings.find((finding) => finding.rule === rule)?.level;
const ohmsOf = (view: ReturnType<typeof solved>) => view.working[0]?.result.value ?? NaN;

describe('a lamp on the rail', () => {
  it('opens on the shop’s channel lamp: (12 − 2.1)/10 mA is 990 Ω, so 1 kΩ of a quarter watt', () => {
    expect(ohmsOf(opened.view)).toBeCloseTo(990, 9);
    expect(opened.view.level).toBe('within');
    expect(opened.view.summary).toMatch(/^1\skΩ, 0\.25\sW, for 9\.90\smA/);
  });

  it('takes 1140 Ω at 7.5 V and 5 mA in red, and less than half of that on 7.5 V of a winding', () => {
    const dc = ohmsOf(solved({ colour: 'red', railVolts: 7.5, amps: 0.005 }));
    const ac = ohmsOf(solved({ colour: 'red', feed: 'ac', windingVolts: 7.5, amps: 0.005 }));
    expect(dc).toBeCloseTo(1140, 9);
    expect(ac / dc).toBeGreaterThan(0.4);
    expect(ac / dc).toBeLessThan(0.5);
  });

  it('finds a string dark at the lowest rail outside', () => {
    const view = solved({ colour: 'white', inSeries: 3, railVolts: 11, railSpread: 0.05 });
    expect(levelOf(view, 'led-lit')).toBe('outside');
    expect(view.level).toBe('outside');
  });

  it('says at the rail that a string drops more than there is', () => {
    const after = evaluate(indicator, { ...opened.raw, inSeries: '7' }, opened);
    expect(after.errors['railVolts']).toContain('14.7');
    expect(after.view).toBe(opened.view);
  });

  it('calls a resistor beyond what it may take a hazard of fire', () => {
    const view = solved({ amps: 0.1, fittedWatts: 0.5 });
    expect(view.findings.find(({ rule }) => rule === 'resistor-watts')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(levelOf(view, 'led-current')).toBe('outside');
  });
});

describe('a lamp on a winding', () => {
  const view = solved({ feed: 'ac', amps: 0.005 });

  it('stands in reverse above the usual 5 V, until a diode takes it', () => {
    expect(levelOf(view, 'led-reverse')).toBe('outside');
    expect(view.findings.find(({ rule }) => rule === 'led-reverse')?.numbers[0]?.value).toBeCloseTo(6.3 * 1.1 * Math.SQRT2, 9);
    expect(levelOf(solved({ feed: 'ac', amps: 0.005, across: 'diode' }), 'led-reverse')).toBe('within');
  });

  it('is lit for less than half of each cycle', () => {
    expect(view.corners[2]?.found).toMatch(/lit 4\d\s% of the time/);
  });

  it('does not vouch for what the winding is joined to', () => {
    expect(levelOf(view, 'winding-reference')).toBe('not assessed');
  });
});

describe('coils on a higher rail', () => {
  it('reckons 12 V coils of 360 Ω on 24 V as the arithmetic does: 360 Ω and 0.4 W', () => {
    const view = solved({ what: 'coil', railVolts: 24, railSpread: 0, coilVolts: 12, coilOhms: 360 });
    expect(ohmsOf(view)).toBeCloseTo(360, 9);
    expect(view.handOn[0]?.path).toContain('coil-check/?coil-check=1');
  });

  it('finds that one coil alone gets too much when several share the resistor', () => {
    const view = solved({ what: 'coil', railVolts: 24, coils: 3 });
    expect(levelOf(view, 'coil-volts')).toBe('outside');
  });
});

describe('an optocoupler', () => {
  it('counts on half the least ratio at the lowest rail', () => {
    const view = solved({ what: 'optocoupler', railVolts: 12, railSpread: 0, fittedOhms: 2120, pullUpVolts: 12, pullUpOhms: 10_000 });
    // Worst drop 1.4 V: (12 − 1.4)/2120 = 5 mA; 80 % × 0.5 of that is 2 mA against 1.16 mA.
    expect(view.findings.find(({ rule }) => rule === 'optocoupler-sink')?.numbers.map(({ value }) => value)).toEqual([expect.closeTo(1.16e-3, 9) as number, expect.closeTo(2e-3, 9) as number]);
    expect(levelOf(view, 'optocoupler-sink')).toBe('within');
  });

  it('cannot pull a relay coil down', () => {
    expect(levelOf(solved({ what: 'optocoupler', pullUpOhms: 360 }), 'optocoupler-sink')).toBe('outside');
  });
});
