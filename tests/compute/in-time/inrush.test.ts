import { describe, expect, it } from 'vitest';
import { chargingSurge, primarySurge } from '../../../src/compute/in-time/inrush.ts';
import type { TimedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import { reservoirInrushA2s } from '../../../src/compute/parts/fuse.ts';
import { inrushBoundAmps } from '../../../src/compute/parts/transformer.ts';
import { BARE } from './supplies.ts';

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

  it('turns less to heat in its resistance than it stores: a sine charges more gently than a step', () => {
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
