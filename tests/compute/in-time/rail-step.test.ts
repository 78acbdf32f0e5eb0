import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { stepRail } from '../../../src/compute/in-time/rail-step.ts';
import { BARE, COIL, RELAYS, TWELVE_VOLT } from './supplies.ts';

const SECOND = { kind: 'coil', coil: COIL } as const;
const LED = { forwardVolts: 2, ohms: 1000 } as const;

describe('a second relay on the rail', () => {
  it('lowers an unregulated rail by its current times the source’s ohms, and deepens the valley', () => {
    const step = stepRail({ supply: BARE, load: RELAYS, step: SECOND, led: LED });
    expect(step.held).toEqual({ before: 'unregulated', after: 'unregulated' });
    expect(step.rail.stepVolts).toBeCloseTo((step.afterAmps - step.beforeAmps) * step.sourceOhms, 9);
    // The rectifier's source resistance is several times the winding's: it conducts a small part of the cycle.
    expect(step.sourceOhms).toBeGreaterThan(2 * BARE.winding.ohms);
    expect(step.sourceOhms).toBeLessThan(12 * BARE.winding.ohms);
    expect(step.rail.valleyDeepeningVolts).toBeGreaterThan(0);
    expect(step.led?.afterAmps).toBeLessThan(step.led?.beforeAmps ?? 0);
    expect(step.firstCoilHeldRatio).toBeGreaterThan(0.9);
    expect(step.firstCoilHeldRatio).toBeLessThan(1);
  });

  it('leaves a regulated rail with headroom within millivolts, though its reservoir steps', () => {
    const step = stepRail({ supply: { ...BARE, regulator: TWELVE_VOLT }, load: RELAYS, step: SECOND, led: LED });
    expect(step.held).toEqual({ before: 'regulated', after: 'regulated' });
    expect(step.reservoir.stepVolts).toBeGreaterThan(0.1);
    expect(step.rail.beforeVolts - step.rail.lowestVolts).toBeLessThan(0.01);
    expect(step.led?.afterRatio).toBeCloseTo(1, 3);
  });

  it('pulls a regulated rail without headroom down and says so', () => {
    const supply = { ...BARE, winding: { openCircuitVolts: 12.4, ohms: 2.5 }, regulator: TWELVE_VOLT };
    const step = stepRail({ supply, load: RELAYS, step: { kind: 'amps', amps: 0.3 } });
    expect(step.held).toEqual({ before: 'regulated', after: 'dropout' });
    expect(step.rail.stepVolts).toBeGreaterThan(0.2);
  });

  it('steps more with more current and with a softer winding', () => {
    const volts = [0.02, 0.05, 0.1, 0.2].map((amps) => stepRail({ supply: BARE, load: RELAYS, step: { kind: 'amps', amps } }).rail.stepVolts);
    expect(volts).toEqual([...volts].sort((a, b) => a - b));
    const soft = stepRail({ supply: { ...BARE, winding: { openCircuitVolts: 13.8, ohms: 4 } }, load: RELAYS, step: SECOND });
    const stiff = stepRail({ supply: { ...BARE, winding: { openCircuitVolts: 13.8, ohms: 0.3 } }, load: RELAYS, step: SECOND });
    expect(soft.rail.stepVolts).toBeGreaterThan(2 * stiff.rail.stepVolts);
  });

  it('starts from and ends at the repeating cycles', () => {
    const step = stepRail({ supply: { ...BARE, reservoir: { farads: 1000e-6, ohms: 0.05 } }, load: RELAYS, step: SECOND, seconds: 0.4, maxPoints: 20_000 });
    const { seconds, railVolts } = step.waveform;
    const before = railVolts.subarray(0, seconds.findIndex((t) => t >= 0));
    expect(Math.min(...before)).toBeCloseTo(step.rail.beforeValleyVolts, 1.5);
    const tail = railVolts.subarray(seconds.findIndex((t) => t >= 0.36));
    expect(Math.min(...tail)).toBeCloseTo(step.rail.afterValleyVolts, 1.5);
    expect(seconds[0]).toBeCloseTo(-2 / 50, 12);
  });

  it('refuses what cannot be', () => {
    expect(() => stepRail({ supply: BARE, load: RELAYS, step: { kind: 'amps', amps: 0 } })).toThrow(InputError);
    expect(() => stepRail({ supply: BARE, load: RELAYS, step: SECOND, led: { forwardVolts: 2, ohms: 0 } })).toThrow(InputError);
  });
});
