import { describe, expect, it } from 'vitest';
import { settleRail } from '../../../src/compute/in-time/settled-rail.ts';
import { loadSiemens } from '../../../src/compute/in-time/timed-load.ts';
import type { TimedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import { heaterModel } from '../../../src/compute/parts/heater.ts';
import { BARE, RELAYS, TWELVE_VOLT } from './supplies.ts';

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
