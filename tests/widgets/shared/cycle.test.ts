import { describe, expect, it } from 'vitest';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import type { RectifierTopology } from '../../../src/compute/rectifier/rectifier-types.ts';
import { atDegrees, cycleOf, cyclePlot, peakDegrees, phaseAt } from '../../../src/widgets/shared/cycle.ts';
import { plotTable } from '../../../src/widgets/shared/plot-data.ts';

const solved = (topology: RectifierTopology, amps: number) =>
  solveRectifier({
    topology, hertz: 50, winding: { openCircuitVolts: 12, ohms: 1 }, reservoir: { farads: 2200e-6, ohms: 0.05 },
    diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 }, load: { amps },
  });

describe('one mains cycle of a solved rectifier', () => {
  it.each(['bridge', 'centre-tap', 'doubler'] as const)('charges a %s forwards in the first half, in reverse in the second, and rests at the zeros', (topology) => {
    const cycle = cycleOf(topology, solved(topology, 0.3).waveform);
    expect(phaseAt(cycle, 85)).toBe('forward');
    expect(phaseAt(cycle, 265)).toBe('reverse');
    expect(phaseAt(cycle, 0)).toBe('resting');
    expect(peakDegrees(cycle)).toBeGreaterThan(45);
    expect(peakDegrees(cycle)).toBeLessThan(100);
  });

  it('never charges a single diode in reverse', () => {
    const cycle = cycleOf('half-wave', solved('half-wave', 0.3).waveform);
    for (let degrees = 180; degrees < 360; degrees += 3) expect(phaseAt(cycle, degrees)).toBe('resting');
  });

  it('rests all round when the load is off: leakage is no pulse', () => {
    const cycle = cycleOf('bridge', solved('bridge', 0).waveform);
    for (let degrees = 0; degrees < 360; degrees += 3) expect(phaseAt(cycle, degrees)).toBe('resting');
  });

  it('reads between its samples, and round the end', () => {
    expect(atDegrees([0, 10, 20, 0], 60)).toBeCloseTo(5, 9);
    expect(atDegrees([0, 10, 20, 0], -60)).toBeCloseTo(10, 9);
    expect(atDegrees([0, 10, 20, 0], 720)).toBe(0);
  });

  it('keeps what the solver found, to five digits, and stands behind the plot as a table', () => {
    const solution = solved('bridge', 0.3);
    const cycle = cycleOf('bridge', solution.waveform);
    expect(Math.min(...cycle.railVolts)).toBeCloseTo(solution.rail.minVolts, 2);
    const table = plotTable(cyclePlot({ cycle, caption: '', needed: { name: 'needed', volts: 12 }, markDegrees: 90 }));
    expect(table.head).toEqual(['time in one mains cycle', 'reservoir', 'needed', 'winding current']);
    expect(table.rows).toHaveLength(13);
    expect(table.rows.at(-1)?.[0]).toMatch(/^20\.0\sms$/);
  });
});
