import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { chargingSurge, integralOfSquare, primarySurge } from '../../../src/compute/in-time/inrush.ts';
import { settleRail } from '../../../src/compute/in-time/settled-rail.ts';
import { firstReached, switchOn } from '../../../src/compute/in-time/switch-on.ts';
import { loadSiemens } from '../../../src/compute/in-time/timed-load.ts';
import { timedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import type { TimedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import { warmUpRail } from '../../../src/compute/in-time/warm-up.ts';
import { heaterModel } from '../../../src/compute/parts/heater.ts';
import { reservoirInrushA2s } from '../../../src/compute/parts/fuse.ts';
import { inrushBoundAmps } from '../../../src/compute/parts/transformer.ts';
import { NINE_VOLT_JOB } from '../supplies/chain-cases.ts';
import { BARE, RELAYS, TWELVE_VOLT } from './supplies.ts';

const withOhms = (ohms: number, farads = BARE.reservoir.farads): TimedSupply => ({ ...BARE, winding: { ...BARE.winding, ohms }, reservoir: { farads, ohms: 0 } });

describe('the charge of an empty reservoir', () => {
  it('meets C·Vp²/(2R) from below when it is over before the mains has moved', () => {
    // RC is 0.1 ms; two diodes of about 1 V at these currents take their part of 19.5 V.
    const supply = withOhms(2, 47e-6);
    const surge = chargingSurge(supply);
    const whole = reservoirInrushA2s({ farads: 47e-6, peakVolts: 13.8 * Math.SQRT2, ohms: 2 + 2 * 0.0355 });
    expect(surge.boundA2s / whole).toBeCloseTo(1, 6);
    const lessDiodes = reservoirInrushA2s({ farads: 47e-6, peakVolts: 13.8 * Math.SQRT2 - 1.8, ohms: 2 + 2 * 0.0355 });
    expect(surge.a2s).toBeLessThan(whole);
    expect(surge.a2s / lessDiodes).toBeGreaterThan(0.97);
    expect(surge.a2s / lessDiodes).toBeLessThan(1.06);
  });

  it('peaks at no more than peak volts over resistance, when thrown on near the peak of the mains', () => {
    const surge = chargingSurge(BARE);
    expect(surge.peakAmps).toBeLessThan((13.8 * Math.SQRT2) / 1.08);
    expect(surge.peakAmps).toBeGreaterThan((0.75 * 13.8 * Math.SQRT2) / 1.08);
    expect(Math.abs(surge.peakDegrees - 90)).toBeLessThanOrEqual(15);
  });

  it('grows with the reservoir in I²t and not above its bound, and falls with resistance', () => {
    const byFarads = [1e-3, 2.2e-3, 4.7e-3, 10e-3].map((farads) => chargingSurge(withOhms(1.08, farads)));
    byFarads.reduce((before, surge) => {
      expect(surge.a2s).toBeGreaterThan(before.a2s);
      return surge;
    });
    for (const surge of byFarads) expect(surge.a2s).toBeLessThan(surge.boundA2s);
    const peaks = [0.5, 1, 2, 4].map((ohms) => chargingSurge(withOhms(ohms)).peakAmps);
    expect(peaks).toEqual([...peaks].sort((a, b) => b - a));
  });

  it('heats the path by no less than it stores: dissipation is at least what a slow charge wastes, energy balances', () => {
    // Energy from the source = stored + heat in ohms + heat in diodes; the resistive part must be below ½CV².
    const surge = chargingSurge(BARE);
    const stored = 0.5 * BARE.reservoir.farads * (13.8 * Math.SQRT2) ** 2;
    const ohms = BARE.winding.ohms + BARE.reservoir.ohms + 2 * BARE.diode.ohms;
    expect(surge.a2s * ohms).toBeLessThan(stored);
    expect(surge.a2s * ohms).toBeGreaterThan(0.4 * stored);
  });

  it('is solved for every rectifier', () => {
    for (const topology of ['bridge', 'centre-tap', 'half-wave', 'doubler'] as const) {
      const surge = chargingSurge({ ...BARE, topology });
      expect(surge.peakAmps).toBeGreaterThan(5);
      expect(surge.a2s).toBeLessThan(surge.boundA2s);
    }
  });
});

describe('the mains side', () => {
  const surge = { peakAmps: 12, a2s: 0.5 };
  it('sees the turns ratio, and a core bounded by 2 over regulation', () => {
    const seen = primarySurge({ surge, secondaryVolts: 13.8, mainsVolts: 230, hertz: 50, transformer: { ratedPrimaryAmps: 0.087, regulation: 0.15 } });
    expect(seen.reflectedPeakAmps).toBeCloseTo(12 * 0.06, 9);
    expect(seen.reflectedA2s).toBeCloseTo(0.5 * 0.0036, 9);
    expect(seen.magnetisingPeakBoundAmps).toBeCloseTo(inrushBoundAmps({ ratedAmps: 0.087, regulation: 0.15 }), 12);
    const peak = seen.magnetisingPeakBoundAmps ?? 0;
    // More than one half-sine of that peak, less than the rectangle.
    expect(seen.magnetisingA2sBound).toBeGreaterThan((peak * peak * 0.01) / 2);
    expect(seen.magnetisingA2sBound).toBeLessThan(peak * peak * 0.01);
    expect(seen.a2sBound).toBeGreaterThan((seen.magnetisingA2sBound ?? 0) + seen.reflectedA2s);
  });

  it('the bound on the core holds for a saturating core solved in time', () => {
    // Flux in units of the peak flux V̂/ω: saturates at 1.2, residual 0.8 of that, air-core inductance beyond.
    const [peakVolts, ohms, omega] = [325, 150, 2 * Math.PI * 50];
    for (const airHenries of [0.02, 0.1, 0.5]) {
      const saturation = (1.2 * peakVolts) / omega;
      let flux = 0.8 * saturation;
      let a2s = 0;
      let most = 0;
      const dt = 1e-6;
      for (let t = 0; t < 0.4; t += dt) {
        const amps = Math.sign(flux) * Math.max(0, Math.abs(flux) - saturation) / airHenries;
        a2s += amps * amps * dt;
        most = Math.max(most, Math.abs(amps));
        flux += (peakVolts * Math.sin(omega * t) - ohms * amps) * dt;
      }
      const peak = peakVolts / ohms;
      expect(most).toBeLessThan(peak);
      expect(a2s).toBeLessThan((peak * peak) / (Math.PI * 50));
      expect(a2s).toBeGreaterThan(0);
    }
  });

  it('leaves the core out where its regulation is unknown', () => {
    const seen = primarySurge({ surge, secondaryVolts: 6.3, mainsVolts: 120, hertz: 60 });
    expect(seen.a2sBound).toBeUndefined();
  });
});

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

describe('the settled rail', () => {
  const supply: TimedSupply = { ...BARE, regulator: TWELVE_VOLT };
  it('drops out as the load grows, with the sawtooth let through, and limits into a short', () => {
    const at = (amps: number, openCircuitVolts = 13.8) => settleRail({ supply: { ...supply, winding: { openCircuitVolts, ohms: 1.08 } }, siemens: amps / 12 });
    expect(at(0.3).held).toBe('regulated');
    const out = at(0.8, 11.5);
    expect(out.held).toBe('dropout');
    expect(out.minVolts).toBeCloseTo(out.rectifier.rail.minVolts - 1.8, 3);
    expect(out.loadAmps).toBeLessThan(0.8);
    expect(at(60).held).toBe('limited');
    expect(at(60).loadAmps).toBeLessThan(2.2 * 1.01);
  });

  it('adds conductances of coils, heaters and the rest', () => {
    const heater = heaterModel({ volts: 12, amps: 0.3 });
    const load = { ...RELAYS, heater };
    expect(loadSiemens(load)).toBeCloseTo(0.02 / 12 + 1 / 275 + 0.3 / 12, 9);
    expect(loadSiemens(load, heater.airKelvin)).toBeGreaterThan(5 * (0.3 / 12));
  });
});

describe('a level first reached', () => {
  it('lies between samples', () => {
    expect(firstReached(Float64Array.of(0, 1, 3), Float64Array.of(0, 1, 2), 2)).toBeCloseTo(1.5, 12);
    expect(firstReached(Float64Array.of(0, 1), Float64Array.of(0, 1), 2)).toBeUndefined();
    expect(firstReached(Float64Array.of(2, 1), Float64Array.of(0, 1), 2)).toBe(0);
  });
});
