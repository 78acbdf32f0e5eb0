import { describe, expect, it } from 'vitest';
import { GROUND, solveNetwork, waveformMean } from '../../../src/compute/index.ts';
import type { Element } from '../../../src/compute/index.ts';
import { settleRail } from '../../../src/compute/in-time/settled-rail.ts';
import { loadSiemens } from '../../../src/compute/in-time/timed-load.ts';
import type { TimedSupply } from '../../../src/compute/in-time/timed-supply.ts';
import { heaterModel } from '../../../src/compute/parts/heater.ts';
import { rectifierElements, regulatorElements } from '../../../src/compute/in-time/timed-supply.ts';
import { seededRandom } from '../../../src/compute/tolerance/random.ts';
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

  it('agrees with the whole circuit solved as a network: regulated, limited, in dropout, near collapse', () => {
    const random = seededRandom(2024);
    let compared = 0;
    for (let k = 0; k < 60; k += 1) {
      const topology = (['bridge', 'centre-tap', 'half-wave', 'doubler'] as const)[k % 4] ?? 'bridge';
      const supply: TimedSupply = {
        ...BARE, topology,
        winding: { openCircuitVolts: random.between(6, 30), ohms: random.between(0.1, 8) },
        reservoir: { farads: 10 ** random.between(-3.3, -2), ohms: random.between(0.01, 0.2) },
        regulator: { ...TWELVE_VOLT, quiescentAmps: 0, limit: { peak: random.between(0.3, 2), atMaxInput: 0.2, maxInputVolts: 35 } },
      };
      const siemens = 10 ** random.between(-3, -1);
      const settled = settleRail({ supply, siemens });
      if (settled.rectifier.rail.rippleVolts > settled.rectifier.rail.meanVolts / 3) continue;
      const elements: Element[] = [
        ...rectifierElements(supply), ...regulatorElements(supply).filter(({ kind }) => kind !== 'behaviour'),
        { kind: 'resistor', name: 'load', between: ['rail', GROUND], ohms: 1 / siemens },
      ];
      const whole = waveformMean(solveNetwork({ hertz: 50, elements }).volts['rail'] as Float64Array);
      expect(Math.abs(settled.meanVolts - whole), `${k}: ${settled.held}, ${whole} V`).toBeLessThan(0.01 * whole + 0.02);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(40);
  });
});
