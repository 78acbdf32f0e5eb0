import { describe, expect, it } from 'vitest';
import { bySeverity, levelOfMargin, worstLevel } from '../../src/compute/findings.ts';
import type { Level } from '../../src/compute/findings.ts';

describe('levels', () => {
  it('rank a hazard first and what is unknown above what is merely tight', () => {
    const levels: { level: Level }[] = [{ level: 'within' }, { level: 'marginal' }, { level: 'hazard' }, { level: 'not assessed' }, { level: 'outside' }];
    expect(levels.toSorted(bySeverity).map(({ level }) => level)).toEqual(['hazard', 'outside', 'not assessed', 'marginal', 'within']);
    expect(worstLevel(levels)).toBe('hazard');
  });

  it('are `not assessed` where nothing was checked or the margin is no number', () => {
    expect(worstLevel([])).toBe('not assessed');
    expect(levelOfMargin({ margin: NaN, wanted: 1 })).toBe('not assessed');
  });

  it('of a margin change at nothing and at what is wanted', () => {
    expect([-0.001, 0, 0.999, 1].map((margin) => levelOfMargin({ margin, wanted: 1 }))).toEqual(['outside', 'marginal', 'marginal', 'within']);
  });
});
