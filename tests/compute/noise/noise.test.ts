import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { converterResidue } from '../../../src/compute/noise/converter-residue.ts';
import { harmonicsOf, waveOf } from '../../../src/compute/noise/harmonics.ts';
import { loopAmps, pulseSpectrum } from '../../../src/compute/noise/pulse-spectrum.ts';
import { rejectionDecibels, rippleBehindRegulator } from '../../../src/compute/noise/regulator-ripple.ts';
import { sharedWireVolts, straightWireHenries } from '../../../src/compute/noise/shared-wire.ts';
import { capacitiveVolts, edgePeakVolts, heaterLeakageVolts, magneticVolts } from '../../../src/compute/noise/stray-coupling.ts';
import { wire } from '../../../src/compute/parts/wire.ts';
import { solveRectifier } from '../../../src/compute/rectifier/solve-rectifier.ts';
import type { RectifierOptions } from '../../../src/compute/rectifier/rectifier-types.ts';

const JOB: RectifierOptions = {
  topology: 'bridge', winding: { openCircuitVolts: 13.8, ohms: 1.08 }, hertz: 50, diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 },
  reservoir: { farads: 4700e-6, ohms: 0.03 }, load: { amps: 0.6 },
};
const period = (of: (share: number) => number, samples = 256): Float64Array => Float64Array.from({ length: samples + 1 }, (_, k) => of(k / samples));

describe('harmonics', () => {
  it('are those of a square wave, 4/(πn) over √2, and none that are even', () => {
    const { harmonics, mean } = harmonicsOf({ values: period((x) => (x < 0.5 ? 1 : -1), 4096), hertz: 50, orders: 9 });
    expect(mean).toBeCloseTo(0, 9);
    for (const { order, rms, hertz } of harmonics) {
      expect(rms).toBeCloseTo(order % 2 === 1 ? 4 / (Math.PI * order) / Math.SQRT2 : 0, 3);
      expect(hertz).toBe(50 * order);
    }
  });

  it('make the wave again, with its mean and its energy', () => {
    const values = period((x) => 3 + 2 * Math.cos(2 * Math.PI * x + 0.4) - Math.sin(6 * Math.PI * x));
    const spectrum = harmonicsOf({ values, hertz: 60 });
    const again = waveOf({ harmonics: spectrum.harmonics, mean: spectrum.mean, samples: 256 });
    again.forEach((volts, k) => {
      expect(volts).toBeCloseTo(values[k] as number, 9);
    });
    expect(spectrum.heldRms).toBeCloseTo(spectrum.alternatingRms, 9);
    expect(spectrum.alternatingRms).toBeCloseTo(Math.sqrt((4 + 1) / 2), 9);
  });

  it('refuse too few samples and too many orders', () => {
    expect(() => harmonicsOf({ values: [1, 2, 3], hertz: 50 })).toThrow(InputError);
    expect(() => harmonicsOf({ values: period(() => 0), hertz: 50, orders: 200 })).toThrow(InputError);
  });
});

describe('charging pulses', () => {
  const rectifier = solveRectifier(JOB);
  const spectrum = pulseSpectrum({ topology: 'bridge', rectifier, hertz: 50 });

  it('of a bridge have odd harmonics in the winding and even ones in the reservoir', () => {
    const winding = spectrum.winding.harmonics;
    const reservoir = spectrum.reservoir.harmonics;
    for (const { order, rms } of winding) if (order % 2 === 0) expect(rms).toBeLessThan(1e-3 * (winding[0]?.rms ?? 0));
    for (const { order, rms } of reservoir) if (order % 2 === 1) expect(rms).toBeLessThan(1e-2 * (reservoir[1]?.rms ?? 0));
    // The third carries most of the fundamental's size: why it buzzes.
    expect(winding[2]?.rms).toBeGreaterThan(0.6 * (winding[0]?.rms ?? Infinity));
  });

  it('carry the solved RMS, and the reservoir’s is √(Iw² − IDC²)', () => {
    expect(spectrum.winding.alternatingRms / rectifier.winding.rmsAmps).toBeCloseTo(1, 2);
    expect(spectrum.reservoir.alternatingRms / rectifier.reservoir.rmsAmps).toBeCloseTo(1, 1.7);
    expect(spectrum.reservoir.alternatingRms / Math.sqrt(rectifier.winding.rmsAmps ** 2 - 0.36)).toBeCloseTo(1, 1.7);
    expect(spectrum.reservoir.mean).toBeCloseTo(0, 2);
  });

  it('reach higher harmonics from a stiffer winding', () => {
    const high = (ohms: number): number => {
      const { winding } = pulseSpectrum({ topology: 'bridge', rectifier: solveRectifier({ ...JOB, winding: { openCircuitVolts: 13.8, ohms } }), hertz: 50 });
      return (winding.harmonics[8]?.rms ?? 0) / (winding.harmonics[0]?.rms ?? 1);
    };
    expect(high(0.2)).toBeGreaterThan(high(1));
    expect(high(1)).toBeGreaterThan(high(4));
  });

  it('add up to the load’s current for each rectifier', () => {
    for (const topology of ['bridge', 'centre-tap', 'half-wave', 'doubler'] as const) {
      const solved = solveRectifier({ ...JOB, topology });
      const { rectified } = loopAmps({ topology, rectifier: solved });
      const mean = rectified.subarray(0, -1).reduce((sum, amps) => sum + amps, 0) / (rectified.length - 1);
      expect(mean / 0.6).toBeCloseTo(1, 1.7);
    }
  });
});

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

describe('ripple behind a regulator', () => {
  const { waveform } = solveRectifier(JOB);
  const at = (setVolts: number, rejectionAt120Hertz = 55) => rippleBehindRegulator({ inputVolts: waveform.railVolts, hertz: 50, setVolts, dropoutVolts: 2, rejectionAt120Hertz });

  it('is lowered by its rejection while there is headroom', () => {
    const out = at(12);
    expect(out.dropoutShare).toBe(0);
    const input = harmonicsOf({ values: waveform.railVolts, hertz: 50 }).harmonics[1]?.rms ?? 0;
    expect(20 * Math.log10(input / (out.harmonics[1]?.rms ?? 1))).toBeCloseTo(55, 0);
    expect(out.peakToPeakVolts).toBeLessThan(0.005);
    expect(at(12, 71).rmsVolts).toBeLessThan(out.rmsVolts);
  });

  it('comes through as a sawtooth once the valley is short', () => {
    const out = at(12.9);
    expect(out.dropoutShare).toBeGreaterThan(0.05);
    expect(out.dropoutShare).toBeLessThan(1);
    expect(out.peakToPeakVolts).toBeGreaterThan(50 * at(12).peakToPeakVolts);
    const all = at(15);
    expect(all.dropoutShare).toBe(1);
    const input = Math.max(...waveform.railVolts) - Math.min(...waveform.railVolts);
    expect(all.peakToPeakVolts).toBeCloseTo(input, 6);
  });

  it('rejects less at higher frequencies, and never amplifies', () => {
    const decibels = [100, 1e3, 1e4, 1e5, 1e7].map((hertz) => rejectionDecibels({ at120Hertz: 60, hertz }));
    expect(decibels[0]).toBeCloseTo(60, 1);
    expect(decibels[2]).toBeCloseTo(40, 0);
    expect(decibels).toEqual([...decibels].sort((a, b) => b - a));
    expect(decibels.at(-1)).toBe(0);
  });
});

describe('strays, against the table of hum figures', () => {
  it('1 pF from 3.15 V at 50 Hz: 1 mV into 1 MΩ, 0.07 mV into 68 kΩ', () => {
    const at = (ohms: number): number => 1000 * capacitiveVolts({ farads: 1e-12, volts: 3.15, hertz: 50, ohms });
    expect(at(1e6)).toBeCloseTo(0.99, 2);
    expect(at(68e3)).toBeCloseTo(0.067, 3);
    // Never more than the source itself.
    expect(capacitiveVolts({ farads: 1e-6, volts: 3.15, hertz: 1e6, ohms: 1e8 })).toBeCloseTo(3.15, 3);
  });

  it('3 A at 50 Hz beside a loop of 10 by 2 cm: 13 µV from one wire, 0.7 µV from a pair', () => {
    const loop = { amps: 3, hertz: 50, metres: 0.1, widthMetres: 0.02, distanceMetres: 0.02 };
    expect(1e6 * magneticVolts(loop)).toBeCloseTo(13.07, 1);
    expect(1e6 * magneticVolts({ ...loop, returnSpacingMetres: 0.0015 })).toBeCloseTo(0.67, 1);
    expect(magneticVolts(loop) / magneticVolts({ ...loop, returnSpacingMetres: 0.0015 })).toBeCloseTo(20, -0.5);
  });

  it('10 µA of heater leakage into 1.5 kΩ: 15 mV, and with 22 µF about what 145 Ω would have', () => {
    const at = (bypassFarads?: number): number => 1000 * heaterLeakageVolts({ leakageAmps: 10e-6, cathodeOhms: 1500, hertz: 50, ...(bypassFarads === undefined ? {} : { bypassFarads }) });
    expect(at()).toBeCloseTo(15, 9);
    expect(at(22e-6)).toBeCloseTo(1.44, 2);
  });

  it('a coil’s edge: the capacitive divider when sudden, R·C·dV/dt when slow', () => {
    const edge = { farads: 1.5e-12, stepVolts: 12, gridOhms: 1e6, gridFarads: 100e-12 };
    expect(edgePeakVolts({ ...edge, riseSeconds: 1e-9 })).toBeCloseTo((12 * 1.5) / 101.5, 4);
    expect(edgePeakVolts({ ...edge, riseSeconds: 0.01 })).toBeCloseTo((1e6 * 1.5e-12 * 12) / 0.01, 6);
    const peaks = [1e-6, 1e-5, 1e-4, 1e-3].map((riseSeconds) => edgePeakVolts({ ...edge, riseSeconds }));
    expect(peaks).toEqual([...peaks].sort((a, b) => b - a));
  });

  it('refuse what cannot be', () => {
    expect(() => capacitiveVolts({ farads: -1, volts: 1, hertz: 50, ohms: 1e6 })).toThrow(InputError);
    expect(() => magneticVolts({ amps: 1, hertz: 50, metres: 0, widthMetres: 1, distanceMetres: 1 })).toThrow(InputError);
    expect(() => edgePeakVolts({ farads: 1e-12, stepVolts: 12, riseSeconds: 0, gridOhms: 1e6 })).toThrow(InputError);
  });
});

describe('converter residue', () => {
  const section = { henries: 10e-6, farads: 100e-6, esrOhms: 0.05 };
  it('is divided by coil and capacitor, more by two sections than by one', () => {
    const one = converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [section] });
    const reactance = 2 * Math.PI * 65e3 * 10e-6;
    const across = Math.hypot(0.05, 1 / (2 * Math.PI * 65e3 * 100e-6));
    expect(one.railVolts / ((0.1 * across) / Math.hypot(0.05, reactance - 1 / (2 * Math.PI * 65e3 * 100e-6)))).toBeCloseTo(1, 9);
    const two = converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [section, section] });
    expect(two.attenuationDecibels).toBeGreaterThan(1.8 * one.attenuationDecibels);
    expect(two.outputFarads).toBeCloseTo(200e-6, 9);
    expect(one.resonanceHertz[0]).toBeCloseTo(5033, 0);
  });

  it('is itself without a filter, and reaches a grid through stray capacitance', () => {
    const bare = converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [], grid: { strayFarads: 1e-12, ohms: 1e6 } });
    expect(bare.railVolts).toBe(0.1);
    expect(bare.gridVolts).toBeCloseTo(capacitiveVolts({ farads: 1e-12, volts: 0.1 / (2 * Math.SQRT2), hertz: 65e3, ohms: 1e6 }), 12);
    expect(converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [{ ...section, esrOhms: 0.2 }] }).railVolts)
      .toBeGreaterThan(converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [section] }).railVolts);
  });
});
