import { describe, expect, it } from 'vitest';
import { mainsCornersOf, pulsesOnWire } from '../../../src/compute/noise/pulses-on-wire.ts';
import { diodePart } from '../../../src/compute/parts/diode.ts';
import { wire, wireOhms } from '../../../src/compute/parts/wire.ts';
import { chainDiode, chainReservoir } from '../../../src/compute/supplies/chain-parts.ts';

const corners = mainsCornersOf({
  mains: { nominalVolts: 230, lowVolts: 207, highVolts: 253, hertz: 50 },
  winding: { openCircuitVolts: 16.2, ohms: 0.48, ratedAmps: 2.5, basis: 'rated' },
  topology: 'bridge', diode: chainDiode(diodePart('1n540x')),
  reservoir: chainReservoir({ farads: 4700e-6, ratedVolts: 35, topology: 'bridge', hertz: 50, airCelsius: 55 }),
  load: { offAmps: 0, runningAmps: 0.47, everythingAmps: 0.47 }, cooling: { airCelsius: 55 },
  stage: { kind: 'none', designVolts: 15, steady: true },
});
const row = wire('awg-22');
const on = (carries: 'pulses' | 'load', metres = 0.1) => pulsesOnWire({ corners, topology: 'bridge', carries, row, metres });

describe('pulses on a shared wire', () => {
  it('are those of the winding, at each mains', () => {
    expect(on('pulses').map(({ mains }) => mains)).toEqual(['low', 'nominal', 'high']);
    for (const { peakAmps, corner } of on('pulses')) expect(peakAmps / corner.rectifier.winding.peakAmps).toBeCloseTo(1, 2);
  });

  it('drop their peak times the wire’s resistance, nearly: the inductance is small and the steady part is taken off', () => {
    for (const { shared, peakAmps, movingPeakVolts } of on('pulses')) {
      const byHand = peakAmps * wireOhms({ row, metres: 0.1 });
      expect((movingPeakVolts + shared.meanVolts) / byHand).toBeGreaterThan(0.9);
      expect((movingPeakVolts + shared.meanVolts) / byHand).toBeLessThan(1.15);
    }
  });

  it('grow with the length shared, and are gone when only the load’s current is left', () => {
    const [short, long] = [on('pulses', 0.1), on('pulses', 0.2)].map((each) => each[1]?.shared.ohms ?? NaN);
    expect(long).toBeCloseTo(2 * (short ?? NaN), 12);
    for (const { movingPeakVolts, shared } of on('load')) {
      expect(movingPeakVolts).toBe(0);
      expect(shared.meanVolts).toBeCloseTo(0.47 * shared.ohms, 9);
    }
  });
});
