import { describe, expect, it } from 'vitest';
import { loopAmps } from '../../../src/compute/noise/pulse-spectrum.ts';
import { sharedWireVolts, straightWireHenries } from '../../../src/compute/noise/shared-wire.ts';
import { wire } from '../../../src/compute/parts/wire.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import type { RectifierOptions } from '../../../src/compute/rectifier/rectifier-types.ts';

const JOB: RectifierOptions = {
  topology: 'bridge', winding: { openCircuitVolts: 13.8, ohms: 1.08 }, hertz: 50, diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 },
  reservoir: { farads: 4700e-6, ohms: 0.03 }, load: { amps: 0.6 },
};
const period = (of: (share: number) => number, samples = 256): Float64Array => Float64Array.from({ length: samples + 1 }, (_, k) => of(k / samples));

describe('a shared ground wire', () => {
  const row = wire('awg-22');
  it('drops 21 mV at its peak with 2 A charging peaks in 0.2 m of AWG 22, as the table of hum figures says', () => {
    const pulses = period((x) => (x % 0.5 < 0.06 ? 2 * Math.sin((Math.PI * (x % 0.5)) / 0.06) : 0), 2048);
    const shared = sharedWireVolts({ row, metres: 0.2, amps: pulses, hertz: 50, orders: 200 });
    expect(shared.ohms).toBeCloseTo(0.0106, 4);
    expect(1000 * shared.peakVolts).toBeGreaterThan(20.5);
    expect(1000 * shared.peakVolts).toBeLessThan(22.5);
    expect(shared.rmsVolts).toBeLessThan(shared.peakVolts);
  });

  it('is its resistance for a slow sine and its inductance for a fast one', () => {
    const amps = period((x) => Math.SQRT2 * Math.sin(2 * Math.PI * x));
    const slow = sharedWireVolts({ row, metres: 1, amps, hertz: 50 });
    expect(slow.rmsVolts).toBeCloseTo(slow.ohms, 4);
    const fast = sharedWireVolts({ row, metres: 1, amps, hertz: 1e5 });
    expect(fast.rmsVolts / (2 * Math.PI * 1e5 * fast.henries)).toBeCloseTo(1, 2);
    // A metre of thin wire: about 1.5 µH; 22 gauge has 0.32 mm radius.
    expect(straightWireHenries({ metres: 1, squareMetres: 0.324e-6 })).toBeCloseTo(1.59e-6, 7);
  });

  it('grows with length and with thinner wire', () => {
    const amps = loopAmps({ topology: 'bridge', rectifier: solveRectifier(JOB) }).rectified;
    const at = (id: string, metres: number): number => sharedWireVolts({ row: wire(id), metres, amps, hertz: 50 }).rmsVolts;
    expect(at('awg-22', 0.4)).toBeGreaterThan(1.9 * at('awg-22', 0.2));
    expect(at('awg-26', 0.2)).toBeGreaterThan(at('awg-18', 0.2));
  });
});
