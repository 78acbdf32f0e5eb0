import { describe, expect, it } from 'vitest';
import { checkCoilsAtSwitchOn, checkDiodeSurge, checkRailRise, checkWarmUpCurrent } from '../../../src/compute/findings/switch-on.ts';
import type { RailWarmUp } from '../../../src/compute/in-time/warm-up.ts';

const context = { corner: 'worst phase', restsOn: ['assumed'] as const };

describe('the first pulse', () => {
  it.each([
    [15, 'within'],
    [15.1, 'marginal'],
    [30, 'marginal'],
    [30.1, 'outside'],
  ] as const)('of %s A through a diode that bears 30 A once is %s', (peakAmps, level) => {
    expect(checkDiodeSurge({ ...context, peakAmps, ratedAmps: 30 }).level).toBe(level);
  });
});

describe('the rise of the rail', () => {
  it('is within to 5 s, marginal beyond, outside when it does not come', () => {
    const at = (upSeconds?: number) => checkRailRise({ ...context, ...(upSeconds === undefined ? {} : { upSeconds }), followedSeconds: 60, held: 'limited' });
    expect(at(0.02).level).toBe('within');
    expect(at(8).level).toBe('marginal');
    expect(at().level).toBe('outside');
    expect(at().what).toContain('current limit');
  });
});

describe('relays at switch-on', () => {
  const at = (pullsInSeconds: number | undefined, deepestDipVolts: number) =>
    checkCoilsAtSwitchOn({ ...context, coils: [{ name: 'K1', endAmps: 0.03, ...(pullsInSeconds === undefined ? {} : { pullsInSeconds }) }], deepestDipVolts, railVolts: 12, windowSeconds: 0.3 })[0];
  it('are within when they pull in and the rail stays, else marginal', () => {
    expect(at(0.01, 0.1)?.level).toBe('within');
    expect(at(0.01, 4)?.level).toBe('marginal');
    expect(at(undefined, 0)?.level).toBe('marginal');
    expect(checkCoilsAtSwitchOn({ ...context, coils: [], deepestDipVolts: 0, railVolts: 12, windowSeconds: 0.3 })).toEqual([]);
  });
});

describe('the winding while heaters warm', () => {
  const warming = (windingRmsAmps: readonly number[], seconds = [0, 10, 60]): RailWarmUp => ({
    seconds, railVolts: seconds.map(() => 12), windingRmsAmps, loadAmps: windingRmsAmps, mostRmsAmps: Math.max(...windingRmsAmps), endRmsAmps: windingRmsAmps.at(-1) ?? 0, heldAtFirst: 'regulated', heldAtLast: 'regulated',
  });
  it.each([
    [[0.9, 0.8, 0.5], 'within'],
    [[3, 1.2, 0.5], 'within'],
    [[3, 1.2, 1.1], 'outside'],
    [[3, 2, 1.5], 'hazard'],
  ] as const)('%j A of 1 A is %s', (amps, level) => {
    expect(checkWarmUpCurrent({ ...context, warmUp: warming(amps), ratedAmps: 1 }).level).toBe(level);
  });

  it('is marginal when it is over for longer than half a minute', () => {
    expect(checkWarmUpCurrent({ ...context, warmUp: warming([3, 1.2, 1.1, 0.9], [0, 10, 40, 60]), ratedAmps: 1 }).level).toBe('marginal');
  });
});
