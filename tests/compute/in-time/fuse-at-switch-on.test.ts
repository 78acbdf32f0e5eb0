import { describe, expect, it } from 'vitest';
import { fuseAtSwitchOn, leastMeltingA2s } from '../../../src/compute/in-time/fuse-at-switch-on.ts';
import { fuseStandard } from '../../../src/compute/parts/fuse.ts';

const SHEET_5 = fuseStandard('iec-sheet-5');
const UL = fuseStandard('ul-248-14');

describe('a fuse at switch-on', () => {
  it('bears a surge by its share of the melting integral, less for more switch-ons', () => {
    const at = (surgeA2s: number, starts: number) => fuseAtSwitchOn({ standard: SHEET_5, ratedAmps: 1, surgeA2s, runningRmsAmps: 0.5, starts });
    // 1 A melts at 1.7 A²s; 0.29 of it for ten thousand starts.
    expect(at(0.49, 10_000).pulse).toBe('within');
    expect(at(0.5, 10_000).pulse).toBe('marginal');
    expect(at(0.5, 1000).pulse).toBe('within');
    expect(at(0.9, 1000).pulse).toBe('outside');
    expect(at(0.49, 10_000).pulseRatio).toBeCloseTo(0.49 / 1.7, 9);
  });

  it('grows in melting integral with its rating, and is less for a fast type', () => {
    const a2s = [1, 1.6, 2.5, 4].map((ratedAmps) => leastMeltingA2s({ standard: SHEET_5, ratedAmps })?.a2s ?? 0);
    expect(a2s).toEqual([...a2s].sort((a, b) => a - b));
    expect(leastMeltingA2s({ standard: fuseStandard('iec-sheet-2'), ratedAmps: 1 })?.a2s).toBeLessThan(0.1);
  });

  it('does not vouch for what a UL fuse does in milliseconds', () => {
    const ul = fuseAtSwitchOn({ standard: UL, ratedAmps: 1, surgeA2s: 0.1, runningRmsAmps: 0.7 });
    expect(ul.pulse).toBe('not assessed');
    expect(ul.running).toBe('marginal');
    expect(fuseAtSwitchOn({ standard: UL, ratedAmps: 1, surgeA2s: 0.1, runningRmsAmps: 0.8 }).running).toBe('outside');
    expect(fuseAtSwitchOn({ standard: SHEET_5, ratedAmps: 1, surgeA2s: 0.1, runningRmsAmps: 0.8 }).running).toBe('within');
  });

  it('uses up its time bit by bit while heaters warm', () => {
    const slow = (amps: number) => ({ seconds: [0, 5, 10, 20], rmsAmps: [amps, amps, 0.8, 0.8] });
    const share = (amps: number): number => fuseAtSwitchOn({ standard: SHEET_5, ratedAmps: 1, surgeA2s: 0, runningRmsAmps: 0.8, slow: slow(amps) }).slowShare ?? NaN;
    expect(share(1)).toBe(0);
    expect(share(1.4)).toBeLessThan(0.01);
    expect(share(2)).toBeGreaterThan(share(1.4));
    const heavy = fuseAtSwitchOn({ standard: SHEET_5, ratedAmps: 1, surgeA2s: 0, runningRmsAmps: 0.8, slow: slow(3) });
    expect(heavy.slow).toBe('outside');
  });
});
