import { describe, expect, it } from 'vitest';
import { driveOptocoupler, optocoupler, pullUpAmps, reliableSinkAmps } from '../../../src/compute/parts/optocoupler.ts';

describe('an optocoupler', () => {
  it('is relied on for half its least transfer ratio: a 4N25 at 10 mA sinks 1 mA', () => {
    const found = driveOptocoupler({ part: optocoupler('4n25'), driveVolts: 12, ledAmps: 0.01, pullUpVolts: 5 });
    expect(found.collectorAmps).toBeCloseTo(0.001, 12);
    expect(found.leastPullUpOhms).toBeCloseTo(4600, 9);
    expect(found.ohms).toBeCloseTo(1080, 9);
    expect(found.watts).toBeCloseTo(0.108, 12);
  });

  it('sinks what its grade promises', () => {
    const sink = (id: string) => driveOptocoupler({ part: optocoupler(id), driveVolts: 5, ledAmps: 0.005, pullUpVolts: 5, ageing: 1 }).collectorAmps;
    expect(['817', '817a', '817b', '817c', '817d'].map(sink)).toEqual([0.0025, 0.004, 0.0065, 0.01, 0.015].map((amps) => expect.closeTo(amps, 12) as number));
  });

  it('is held against what its output must sink', () => {
    expect(reliableSinkAmps({ part: optocoupler('4n25'), ledAmps: 0.01 })).toBeCloseTo(0.001, 12);
    expect(pullUpAmps({ volts: 12, ohms: 10_000 })).toBeCloseTo(1.16e-3, 12);
    expect(pullUpAmps({ volts: 0.2, ohms: 10_000 })).toBe(0);
  });

  it('refuses a drive below its LED and a pull-up above its collector', () => {
    expect(() => driveOptocoupler({ part: optocoupler('817a'), driveVolts: 1.3, ledAmps: 0.005, pullUpVolts: 5 })).toThrow(RangeError);
    expect(() => driveOptocoupler({ part: optocoupler('817a'), driveVolts: 5, ledAmps: 0.005, pullUpVolts: 36 })).toThrow(RangeError);
    expect(() => optocoupler('6n137')).toThrow(RangeError);
  });
});
