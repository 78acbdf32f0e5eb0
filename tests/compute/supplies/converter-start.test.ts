import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { heaterModel } from '../../../src/compute/parts/heater.ts';
import { startConverter } from '../../../src/compute/supplies/converter-start.ts';

/** Two 12.6 V 150 mA heaters: 0.3 A hot, about six times that cold. */
const HEATERS = heaterModel({ volts: 12.6, amps: 0.3 });
const constant = (amps: number) => ({ kind: 'constant-current', amps }) as const;
const hiccup = (tripAmps: number) => ({ kind: 'hiccup', tripAmps, onSeconds: 0.05, pauseSeconds: 0.5 }) as const;
const foldback = (tripAmps: number) => ({ kind: 'foldback', tripAmps, shortAmps: tripAmps / 3 }) as const;

describe('a converter starting into cold heaters', () => {
  it('starts at once when its limit covers the cold current', () => {
    const start = startConverter({ setVolts: 12, limit: hiccup(2), heater: HEATERS });
    expect(start.coldDemandRatio).toBeLessThan(1);
    expect(start).toMatchObject({ starts: true, seconds: 0, tries: 1 });
  });

  it('takes longer the lower a constant-current limit, and sticks below the hot current', () => {
    const times = [1.2, 0.8, 0.5, 0.4].map((amps) => startConverter({ setVolts: 12, limit: constant(amps), heater: HEATERS }));
    expect(times.every((each) => each.starts)).toBe(true);
    const seconds = times.map((each) => each.seconds);
    expect(seconds).toEqual([...seconds].sort((a, b) => a - b));
    expect(seconds.at(-1)).toBeGreaterThan(2);
    const stuck = startConverter({ setVolts: 12, limit: constant(0.25), heater: HEATERS, seconds: 200 });
    expect(stuck.starts).toBe(false);
    expect(stuck.volts).toBeLessThan(12);
    expect(stuck.volts).toBeGreaterThan(2);
  });

  it('fails to start with a hiccup where the same amps held constant would start', () => {
    const amps = 0.6;
    expect(startConverter({ setVolts: 12, limit: constant(amps), heater: HEATERS }).starts).toBe(true);
    const start = startConverter({ setVolts: 12, limit: hiccup(amps), heater: HEATERS });
    expect(start.starts).toBe(false);
    expect(start.tries).toBeGreaterThan(50);
  });

  it('starts a hiccup after some tries when the heaters gain more in a try than they lose in a pause', () => {
    const start = startConverter({ setVolts: 12, limit: hiccup(1.6), heater: HEATERS });
    expect(start.starts).toBe(true);
    expect(start.tries).toBeGreaterThan(1);
  });

  it('is slower, or stuck, with foldback', () => {
    const folding = startConverter({ setVolts: 12, limit: foldback(0.8), heater: HEATERS });
    const holding = startConverter({ setVolts: 12, limit: constant(0.8), heater: HEATERS });
    expect(holding.starts).toBe(true);
    expect(folding.starts ? folding.seconds : Infinity).toBeGreaterThan(holding.seconds);
  });

  it('has no trouble with relays alone, and none can be started that ask for too much', () => {
    expect(startConverter({ setVolts: 12, limit: hiccup(0.5), loadOhms: 100 }).starts).toBe(true);
    expect(startConverter({ setVolts: 12, limit: constant(0.5), loadOhms: 10 })).toMatchObject({ starts: false, volts: 5 });
    expect(startConverter({ setVolts: 12, limit: constant(0.5) }).starts).toBe(true);
  });

  it('traces volts that never pass the set volts, with times that rise', () => {
    for (const limit of [constant(0.6), hiccup(1), foldback(1)]) {
      const { trace } = startConverter({ setVolts: 12, limit, heater: HEATERS });
      expect(Math.max(...trace.volts)).toBeLessThanOrEqual(12);
      trace.seconds.reduce((before, now) => {
        expect(now).toBeGreaterThanOrEqual(before);
        return now;
      }, 0);
    }
  });

  it('refuses what cannot be', () => {
    expect(() => startConverter({ setVolts: 0, limit: constant(1) })).toThrow(InputError);
    expect(() => startConverter({ setVolts: 12, limit: constant(0) })).toThrow(InputError);
    expect(() => startConverter({ setVolts: 12, limit: constant(1), loadOhms: -1 })).toThrow(InputError);
  });
});
