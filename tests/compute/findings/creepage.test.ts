import { describe, expect, it } from 'vitest';
import { checkCreepage } from '../../../src/compute/findings/creepage.ts';

const at = (metres: number | undefined, workingVolts = 253) =>
  checkCreepage({ corner: 'high mains', restsOn: ['measured'], workingVolts, ...(metres === undefined ? {} : { metres }) });

describe('creepage between mains and rail', () => {
  it.each([
    [0.008, 'within'],
    [0.0079, 'marginal'],
    [0.005, 'marginal'],
    [0.0049, 'hazard'],
    [0, 'hazard'],
    [undefined, 'not assessed'],
  ] as const)('%s m is %s', (metres, level) => {
    expect(at(metres).level).toBe(level);
  });

  it('courts shock, and says what to do instead', () => {
    expect(at(0.003)).toMatchObject({ harm: 'shock' });
    expect(at(0.003).todo).toContain('Do not power it');
  });

  it('does not vouch for more volts than its figures are for', () => {
    expect(at(0.02, 264).level).toBe('within');
    expect(at(0.02, 450).level).toBe('not assessed');
    expect(at(0.003, 450).level).toBe('hazard');
  });

  it('refuses nonsense', () => {
    expect(() => at(-0.001)).toThrow(RangeError);
    expect(() => at(0.008, Number.NaN)).toThrow(RangeError);
  });
});
