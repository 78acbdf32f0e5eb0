import { describe, expect, it } from 'vitest';
import { RESERVOIR_SIZES, smallestReservoir, sweepReservoir } from '../../../src/compute/supplies/reservoir-sweep.ts';
import { decidingCorner } from '../../../src/compute/supplies/size-reservoir.ts';
import { solveCorner } from '../../../src/compute/supplies/chain-corner.ts';
import { chainDiode, chainReservoir } from '../../../src/compute/supplies/chain-parts.ts';
import { diodePart } from '../../../src/compute/parts/diode.ts';

const input = {
  mains: { nominalVolts: 120, lowVolts: 108, highVolts: 132, hertz: 60 },
  winding: { openCircuitVolts: 19.5, ohms: 13.5, ratedAmps: 0.333, basis: 'rated' },
  topology: 'bridge', diode: chainDiode(diodePart('1n400x')),
  load: { offAmps: 0, runningAmps: 0.111, everythingAmps: 0.111 }, cooling: { airCelsius: 55 },
  stage: { kind: 'none', designVolts: 15, steady: true },
} as const;
const points = sweepReservoir({ input, farads: RESERVOIR_SIZES, ratedVolts: 50 });

describe('a supply with one reservoir after another', () => {
  it('goes through the usual sizes once, rising', () => {
    expect(RESERVOIR_SIZES[0]).toBe(220e-6);
    expect(RESERVOIR_SIZES.at(-1)).toBe(22e-3);
    expect(RESERVOIR_SIZES.every((size, at) => at === 0 || size > (RESERVOIR_SIZES[at - 1] ?? Infinity))).toBe(true);
    expect(points).toHaveLength(RESERVOIR_SIZES.length);
  });

  it('is each size solved by itself at the deciding corner', () => {
    const at = solveCorner({ ...input, reservoir: chainReservoir({ farads: 1000e-6, ratedVolts: 50, topology: 'bridge', hertz: 60, airCelsius: 55 }) }, decidingCorner(input.mains));
    expect(at.solved && at.rectifier.rail.minVolts).toBe(points.find(({ farads }) => farads === 1000e-6)?.valleyVolts);
  });

  it('lifts the valley and lowers the ripple with size', () => {
    points.slice(1).forEach((point, at) => {
      expect(point.valleyVolts).toBeGreaterThan(points[at]?.valleyVolts ?? Infinity);
      expect(point.rippleVolts).toBeLessThan(points[at]?.rippleVolts ?? 0);
    });
  });

  it('finds the first that leaves 0.3 V, and none where none does', () => {
    const first = smallestReservoir({ points, floorVolts: 15.1 });
    expect(first?.valleyVolts).toBeGreaterThanOrEqual(15.4);
    const before = points[points.findIndex((point) => point === first) - 1];
    expect(before === undefined || before.valleyVolts < 15.4).toBe(true);
    expect(smallestReservoir({ points, floorVolts: 25 })).toBeUndefined();
  });
});
