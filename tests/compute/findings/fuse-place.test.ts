import { describe, expect, it } from 'vitest';
import { checkFuseFitted, checkFuseRace, checkMainsSide } from '../../../src/compute/findings/fuse-place.ts';
import type { FuseInFault } from '../../../src/compute/in-time/fuse-in-fault.ts';
import { fuseStandard } from '../../../src/compute/parts/fuse.ts';

const context = { corner: 'dead short', restsOn: ['assumed'] as const };
const won: FuseInFault = {
  windingAmps: { first: 1.3, last: 1.3 }, fuseAmps: { first: 1.3, last: 1.3 }, multiple: 5.2, latestSeconds: 1.8, windingCelsius: 110, protects: true,
  trace: { seconds: [], windingAmps: [], windingCelsius: [] },
};
const lost: FuseInFault = { ...won, multiple: 2.2, latestSeconds: 1500, overloadLimitSeconds: 120, windingCelsius: 250, protects: false };
const race = (each: FuseInFault, mark: 'unknown' | 'not-proof' | 'inherently-proof' | 'conditionally-proof' | 'fail-safe') =>
  checkFuseRace({ ...context, race: each, standard: fuseStandard('iec-sheet-5'), ratedAmps: 0.25, mark, place: 'primary' });

describe('a fuse against a winding', () => {
  it('is within where the slowest fuse wins, whatever is marked', () => {
    for (const mark of ['unknown', 'not-proof', 'inherently-proof'] as const) expect(race(won, mark).level).toBe('within');
  });

  it('where the winding loses, is what the marking makes of it', () => {
    expect(race(lost, 'not-proof')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(race(lost, 'unknown').level).toBe('not assessed');
    for (const mark of ['inherently-proof', 'conditionally-proof', 'fail-safe'] as const) expect(race(lost, mark).level).toBe('within');
    expect(race(lost, 'inherently-proof').what).toContain('does not save it');
  });

  it('says so when it need never open', () => {
    const { latestSeconds, ...never } = lost;
    expect(latestSeconds).toBe(1500);
    expect(race(never, 'not-proof').what).toContain('need never open');
  });
});

describe('the fuse that is fitted', () => {
  it('is found when there is none, when it is too large, and not otherwise', () => {
    expect(checkFuseFitted({ ...context, pickedAmps: 0.25, protects: false })[0]).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(checkFuseFitted({ ...context, fittedAmps: 5, pickedAmps: 0.25, protects: false })[0]).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(checkFuseFitted({ ...context, fittedAmps: 0.5, pickedAmps: 0.25, protects: true })[0]?.level).toBe('marginal');
    expect(checkFuseFitted({ ...context, fittedAmps: 0.25, pickedAmps: 0.25, protects: true })).toEqual([]);
    expect(checkFuseFitted({ ...context, fittedAmps: 0.2, pickedAmps: 0.25, protects: true })).toEqual([]);
    expect(() => checkFuseFitted({ ...context, fittedAmps: -1, pickedAmps: 0.25, protects: true })).toThrow(RangeError);
  });
});

describe('the mains side of a fused secondary', () => {
  it.each([
    ['own-fuse', 'within'],
    ['amp-winding', 'within'],
    ['amp-fuse', 'outside'],
    ['nothing', 'hazard'],
  ] as const)('%s is %s', (mainsSide, level) => {
    expect(checkMainsSide({ ...context, mainsSide }).level).toBe(level);
  });
});
