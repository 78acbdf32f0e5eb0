import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { integralOfSquare, primarySurge } from '../../../src/compute/in-time/inrush.ts';
import { settleRail } from '../../../src/compute/in-time/settled-rail.ts';
import { firstReached, switchOn } from '../../../src/compute/in-time/switch-on.ts';
import { timedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import type { TimedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import { warmUpRail } from '../../../src/compute/in-time/warm-up.ts';
import { heaterModel } from '../../../src/compute/parts/heater.ts';
import { NINE_VOLT_JOB } from '../supplies/chain-cases.ts';
import { BARE, RELAYS, TWELVE_VOLT } from './supplies.ts';

const withOhms = (ohms: number, farads = BARE.reservoir.farads): TimedSupply => ({ ...BARE, winding: { ...BARE.winding, ohms }, reservoir: { farads, ohms: 0 } });

describe('switch-on of a whole supply', () => {
  it('brings the rail up once, to its regulator, and pulls the relay in after the rail', () => {
    const start = switchOn({ supply: { ...BARE, regulator: TWELVE_VOLT }, load: RELAYS });
    expect(start.settled.held).toBe('regulated');
    expect(start.upSeconds).toBeGreaterThan(0.001);
    expect(start.upSeconds).toBeLessThan(0.05);
    expect(start.highestRailVolts).toBeLessThan(12.05);
    expect(start.deepestDipVolts).toBeLessThan(0.02);
    const [coil] = start.coils;
    expect(coil?.pullsInSeconds).toBeGreaterThan(0);
    // L/R of 4.2 ms and 75 %: not sooner than −τ·ln(1 − 0.75) after the rail could first have been there.
    expect(coil?.pullsInSeconds).toBeGreaterThan((1.15 / 275) * Math.log(4) * 0.9);
    expect(coil?.endAmps).toBeCloseTo(12 / 275, 3);
  });

  it('keeps the reservoir below the peak and charge in balance with its current', () => {
    const { waveform } = switchOn({ supply: BARE, load: { railVolts: 12, amps: 0.1 }, maxPoints: 20_000 });
    const { seconds, reservoirVolts, windingAmps } = waveform;
    expect(Math.max(...reservoirVolts)).toBeLessThan(13.8 * Math.SQRT2);
    let charge = 0;
    for (let k = 1; k < seconds.length; k += 1) {
      const h = (seconds[k] as number) - (seconds[k - 1] as number);
      const into = (Math.abs(windingAmps[k - 1] as number) + Math.abs(windingAmps[k] as number)) / 2;
      const out = ((reservoirVolts[k - 1] as number) + (reservoirVolts[k] as number)) / 2 / 120;
      charge += h * (into - out);
    }
    // The reservoir's own volts at the end: terminal volts less its ESR's small share.
    expect(charge / (4700e-6 * (reservoirVolts.at(-1) as number))).toBeCloseTo(1, 1.7);
  });

  it('comes up later with more reservoir and with more resistance', () => {
    const up = (supply: TimedSupply): number => switchOn({ supply, load: { railVolts: 12, amps: 0.05 } }).upSeconds ?? Infinity;
    expect(up({ ...BARE, reservoir: { farads: 22e-3, ohms: 0.02 } })).toBeGreaterThan(up(BARE));
    expect(up(withOhms(6))).toBeGreaterThan(up(withOhms(1)));
  });

  it('agrees with the repeating cycle once it has settled', () => {
    const supply: TimedSupply = { ...BARE, reservoir: { farads: 1000e-6, ohms: 0.05 } };
    const start = switchOn({ supply, load: { railVolts: 12, amps: 0.3 }, seconds: 0.4, maxPoints: 20_000 });
    const late = start.waveform.seconds.findIndex((t) => t >= 0.36);
    const tail = start.waveform.reservoirVolts.subarray(late);
    expect(Math.min(...tail) / start.settled.rectifier.rail.minVolts).toBeCloseTo(1, 2.5);
    expect(Math.max(...tail) / start.settled.rectifier.rail.maxVolts).toBeCloseTo(1, 2.5);
    expect(integralOfSquare(start.waveform.windingAmps, start.waveform.seconds)).toBeCloseTo(start.windowA2s, 9);
    expect(start.surplusA2s).toBeLessThan(start.windowA2s);
  });

  it('holds the rail down while cold heaters take the regulator’s limit, longer with a lower limit', () => {
    const heater = heaterModel({ volts: 12, amps: 0.3 });
    const load = { railVolts: 12, amps: 0.02, heater };
    const limited = (peak: number): TimedSupply => ({ ...BARE, winding: { openCircuitVolts: 16, ohms: 1.2 }, regulator: { ...TWELVE_VOLT, limit: { peak, atMaxInput: peak / 2, maxInputVolts: 35 } } });
    const quick = warmUpRail({ supply: limited(1.2), load });
    const slow = warmUpRail({ supply: limited(0.7), load });
    expect(quick.heldAtFirst).toBe('limited');
    expect(quick.heldAtLast).toBe('regulated');
    expect(slow.upSeconds ?? Infinity).toBeGreaterThan(quick.upSeconds ?? Infinity);
    expect(quick.mostRmsAmps).toBeGreaterThan(1.5 * quick.endRmsAmps);
    expect(Math.max(...quick.loadAmps)).toBeLessThan(1.2 * 1.01);
    const start = switchOn({ supply: limited(0.7), load });
    expect(start.upSeconds).toBeGreaterThan(0.3);
    expect(start.warmUp?.heldAtFirst).toBe('limited');
  });

  it('takes the hardest corner of a chain: high mains, cold, largest reservoir', () => {
    const supply = timedSupply({ chain: NINE_VOLT_JOB });
    expect(supply.winding.openCircuitVolts).toBeCloseTo(10.8 * 1.1, 9);
    expect(supply.reservoir.farads).toBeCloseTo(2200e-6 * 1.2, 9);
    expect(supply.regulator?.setVolts).toBe(5);
    expect(settleRail({ supply, siemens: 0.15 / 5 }).held).toBe('regulated');
  });

  it('refuses what cannot be', () => {
    expect(() => switchOn({ supply: withOhms(0), load: RELAYS })).toThrow(InputError);
    expect(() => switchOn({ supply: BARE, load: { railVolts: 0, amps: 1 } })).toThrow(InputError);
    expect(() => switchOn({ supply: BARE, load: RELAYS, seconds: 1e-3 })).toThrow(InputError);
    expect(() => primarySurge({ surge: { peakAmps: 1, a2s: 1 }, secondaryVolts: 12, mainsVolts: 5, hertz: 50 })).toThrow(InputError);
  });
});

describe('a level first reached', () => {
  it('lies between samples', () => {
    expect(firstReached(Float64Array.of(0, 1, 3), Float64Array.of(0, 1, 2), 2)).toBeCloseTo(1.5, 12);
    expect(firstReached(Float64Array.of(0, 1), Float64Array.of(0, 1), 2)).toBeUndefined();
    expect(firstReached(Float64Array.of(2, 1), Float64Array.of(0, 1), 2)).toBe(0);
  });
});
