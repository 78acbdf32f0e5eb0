import { describe, expect, it } from 'vitest';
import {
  FUSE_STANDARDS, IEC_FUSE_AMPS, breakingCapacityAmps, fuseColdOhms, fuseRatingFor, fuseStandard, fuseTimes, meltingIntegral, pulseA2s, pulseShare, reservoirInrushA2s,
} from '../../../src/compute/parts/fuse.ts';

const lag = fuseStandard('iec-sheet-5');

describe('times to open', () => {
  it.each([
    ['iec-sheet-5', 1, 2.75, 0.75, 80], ['iec-sheet-5', 2, 4, 0.095, 5], ['iec-sheet-5', 3.15, 10, 0.01, 0.1], ['iec-sheet-5', 5, 4, 0.15, 5],
    ['iec-sheet-5', 0.5, 2.75, 0.25, 80], ['iec-sheet-5', 0.5, 4, 0.05, 5], ['iec-sheet-3', 1, 4, 0.15, 3], ['iec-sheet-3', 0.1, 4, 0.04, 3],
  ])('%s %d A at %d times: %d to %d s', (id, ratedAmps, multiple, minSeconds, maxSeconds) => {
    const found = fuseTimes({ standard: fuseStandard(id), ratedAmps, amps: multiple * ratedAmps });
    expect(found).toEqual({ minSeconds: expect.closeTo(minSeconds, 9) as number, maxSeconds: expect.closeTo(maxSeconds, 9) as number });
  });

  it('let an IEC fuse run for ever at 1.5 times and half an hour or two minutes at 2.1 times, by sheet', () => {
    expect(fuseTimes({ standard: lag, ratedAmps: 1, amps: 1.5 })).toEqual({ minSeconds: expect.closeTo(3600, 9) as number });
    expect(fuseTimes({ standard: lag, ratedAmps: 1, amps: 2.09 }).maxSeconds).toBeUndefined();
    expect(fuseTimes({ standard: lag, ratedAmps: 1, amps: 2.1 }).maxSeconds).toBe(1800);
    expect(fuseTimes({ standard: fuseStandard('iec-sheet-3'), ratedAmps: 1, amps: 2.1 }).maxSeconds).toBe(120);
  });

  it('open a UL fuse within the hour at 135 %, which an IEC fuse of the same figure carries', () => {
    const ul = fuseStandard('ul-248-14');
    expect(fuseTimes({ standard: ul, ratedAmps: 1, amps: 1.35 })).toEqual({ maxSeconds: expect.closeTo(3600, 9) as number });
    expect(fuseTimes({ standard: ul, ratedAmps: 1, amps: 2 }).maxSeconds).toBeCloseTo(120, 9);
    expect(fuseTimes({ standard: ul, ratedAmps: 1, amps: 1 }).minSeconds).toBeDefined();
    expect(fuseTimes({ standard: lag, ratedAmps: 1, amps: 1.35 }).maxSeconds).toBeUndefined();
  });

  it('only shorten as the current rises, and keep the least below the most', () => {
    for (const standard of FUSE_STANDARDS) {
      for (const ratedAmps of [0.1, 0.8, 1, 3.15, 5]) {
        let last = { minSeconds: Infinity, maxSeconds: Infinity };
        for (let multiple = 0.5; multiple < 60; multiple *= 1.07) {
          const { minSeconds = 0, maxSeconds = Infinity } = fuseTimes({ standard, ratedAmps, amps: multiple * ratedAmps });
          expect(minSeconds).toBeLessThanOrEqual(maxSeconds);
          expect(maxSeconds).toBeLessThanOrEqual(last.maxSeconds * (1 + 1e-9));
          expect(minSeconds).toBeLessThanOrEqual(last.minSeconds * (1 + 1e-9));
          last = { minSeconds, maxSeconds };
        }
      }
    }
  });

  it('follow constant I²t beyond the last gate', () => {
    const at = (amps: number) => fuseTimes({ standard: lag, ratedAmps: 1, amps }).maxSeconds ?? NaN;
    expect(at(40) / at(20)).toBeCloseTo(0.25, 9);
  });
});

describe('melting integral', () => {
  it('is printed for 1 to 4 A and assumed elsewhere', () => {
    expect([1, 1.25, 1.6, 2, 2.5, 3.15, 4].map((amps) => meltingIntegral(amps).a2s)).toEqual([1.7, 3, 5.4, 9.7, 17.4, 31, 56]);
    expect(meltingIntegral(0.1)).toEqual({ a2s: expect.closeTo(0.00513, 4) as number, basis: 'assumed' });
  });

  it('of the fit is within 3 % of every printed one', () => {
    for (const amps of [1, 1.25, 1.6, 2, 2.5, 3.15, 4]) expect(Math.abs((1.7 * amps ** 2.52) / meltingIntegral(amps).a2s - 1)).toBeLessThan(0.03);
  });

  it('agrees with the fastest opening at ten times rated: no less than that current needs', () => {
    for (const amps of [1, 1.25, 1.6, 2, 2.5, 3.15]) expect(meltingIntegral(amps).a2s).toBeGreaterThanOrEqual((10 * amps) ** 2 * 0.01);
  });
});

describe('pulses', () => {
  it('have their I²t by shape, against the integral', () => {
    const integral = (of: (share: number) => number, seconds: number): number => {
      let sum = 0;
      for (let step = 0; step < 100_000; step += 1) sum += ((of((step + 0.5) / 100_000) ** 2) * seconds) / 100_000;
      return sum;
    };
    expect(pulseA2s({ shape: 'rectangle', peakAmps: 3, seconds: 2 })).toBe(18);
    expect(pulseA2s({ shape: 'half-sine', peakAmps: 3, seconds: 2 })).toBeCloseTo(integral((x) => 3 * Math.sin(Math.PI * x), 2), 6);
    expect(pulseA2s({ shape: 'triangle', peakAmps: 3, seconds: 2 })).toBeCloseTo(integral((x) => 3 * (1 - x), 2), 6);
    expect(pulseA2s({ shape: 'exponential', peakAmps: 3, seconds: 2 })).toBeCloseTo(integral((x) => 3 * Math.exp(-x * 20), 40), 4);
  });

  it('of filling a reservoir are half its charge energy over the resistance', () => {
    expect(reservoirInrushA2s({ farads: 4700e-6, peakVolts: 20, ohms: 1 })).toBeCloseTo(0.5 * 20 * 20 * 4700e-6, 12);
  });

  it('may take 22, 29, 38 and 48 % by how often they come', () => {
    expect([1e5, 1e4, 1e3, 100, 10].map(pulseShare)).toEqual([0.22, 0.29, 0.38, 0.48, 0.48].map((share) => expect.closeTo(share, 12) as number));
  });
});

describe('ratings', () => {
  it('are the standard currents, and carry the RMS by each philosophy', () => {
    expect(IEC_FUSE_AMPS).toHaveLength(26);
    expect(fuseRatingFor({ standard: lag, rmsAmps: 0.507 })).toBe(0.63);
    expect(fuseRatingFor({ standard: fuseStandard('ul-248-14'), rmsAmps: 0.507 })).toBe(0.8);
    expect(fuseRatingFor({ standard: lag, rmsAmps: 0.5 })).toBe(0.5);
    expect(fuseRatingFor({ standard: lag, rmsAmps: 11 })).toBeUndefined();
  });

  it('break 1500 A in ceramic, 35 A or ten times in glass, and what UL prints at 250 V', () => {
    expect(breakingCapacityAmps({ standard: lag, ratedAmps: 1 })).toBe(1500);
    expect(breakingCapacityAmps({ standard: fuseStandard('iec-sheet-3'), ratedAmps: 1 })).toBe(35);
    expect(breakingCapacityAmps({ standard: fuseStandard('iec-sheet-3'), ratedAmps: 6.3 })).toBe(63);
    expect([1, 3.15, 10].map((ratedAmps) => breakingCapacityAmps({ standard: fuseStandard('ul-248-14'), ratedAmps }))).toEqual([35, 100, 200]);
  });

  it('add 0.2 Ω at 1 A', () => {
    expect(fuseColdOhms(1)).toBe(0.2);
    expect(fuseColdOhms(0.1)).toBeGreaterThan(1);
  });

  it('show the small-transformer trap: 0.25 A through T100 mA may last minutes, in sheet 5 half an hour', () => {
    expect(fuseTimes({ standard: lag, ratedAmps: 0.1, amps: 0.21 }).maxSeconds).toBeCloseTo(1800, 6);
    expect(fuseTimes({ standard: lag, ratedAmps: 0.1, amps: 0.25 }).maxSeconds).toBeGreaterThan(120);
    expect(fuseTimes({ standard: lag, ratedAmps: 0.1, amps: 0.2 }).maxSeconds).toBeUndefined();
  });
});
