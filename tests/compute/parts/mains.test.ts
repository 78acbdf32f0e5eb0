import { describe, expect, it } from 'vitest';
import { MAINS_REGIONS, mainsCorners, mainsRegion } from '../../../src/compute/parts/mains.ts';

describe('regions', () => {
  it('are designed for at least a tenth either way, and for whatever the supplier may give', () => {
    for (const row of MAINS_REGIONS) {
      expect(row.lowVolts).toBeLessThanOrEqual(0.9 * row.nominalVolts + 0.05);
      expect(row.highVolts).toBeGreaterThanOrEqual(1.1 * row.nominalVolts - 0.05);
      expect(row.lowVolts).toBeLessThanOrEqual(row.supplied.minVolts);
      expect(row.highVolts).toBeGreaterThanOrEqual(row.supplied.maxVolts);
    }
  });

  it('give 108 to 132 V for a 114 to 126 V service, 207 to 253 V for 230 V', () => {
    expect(mainsRegion('us-120')).toMatchObject({ lowVolts: 108, highVolts: 132, hertz: 60 });
    expect(mainsRegion('eu-230')).toMatchObject({ lowVolts: 207, highVolts: 253, hertz: 50 });
  });

  it('are asked for by a name that exists', () => {
    expect(() => mainsRegion('moon')).toThrow(/eu-230/);
  });
});

describe('corners', () => {
  it('take a flat-topped wave at low mains and a full sine at high mains', () => {
    const { low, nominal, high } = mainsCorners({ nominalVolts: 120, hertz: 60 });
    expect(low).toEqual({ corner: 'low', volts: 108, ratio: 0.9, hertz: 60, crestFactor: 1.35 });
    expect(nominal.ratio).toBe(1);
    expect(high).toMatchObject({ ratio: expect.closeTo(1.1, 12) as number, crestFactor: Math.SQRT2 });
    expect(low.volts * low.crestFactor).toBeLessThan(nominal.volts * nominal.crestFactor);
  });

  it('take the limits of a place', () => {
    expect(mainsCorners({ nominalVolts: 230, hertz: 50, lowVolts: 216, highVolts: 255 })).toMatchObject({ low: { volts: 216 }, high: { volts: 255 } });
  });

  it.each([{ nominalVolts: 0 }, { hertz: 400 }, { lowVolts: 240 }, { highVolts: 200 }, { lowVolts: NaN }])('refuse %j', (bad) => {
    expect(() => mainsCorners({ nominalVolts: 230, hertz: 50, ...bad })).toThrow(RangeError);
  });
});
