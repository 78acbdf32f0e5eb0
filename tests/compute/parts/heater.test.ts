import { describe, expect, it } from 'vitest';
import { HEATERS, heaterKelvinPerSecond, heaterModel, heaterOhms, heaterRow, seriesHeaters } from '../../../src/compute/parts/heater.ts';
import { warmUpHeater } from '../../../src/compute/parts/heater-warm-up.ts';

describe('heater rows', () => {
  it('take the same power however a centre-tapped heater is connected', () => {
    for (const row of HEATERS) {
      const watts = row.connections.map(({ volts, amps }) => volts * amps);
      watts.forEach((each) => { expect(each, row.id).toBeCloseTo(watts[0] ?? NaN, 12); });
    }
  });

  it('warn that a rectifier valve’s winding is at the high voltage', () => {
    for (const id of ['5u4gb', '5y3gt', 'gz34', 'gz37', '5v4']) expect(heaterRow(id).note).toMatch(/lethal/);
  });

  it('are rated only where a sheet was read', () => {
    expect(heaterRow('12ax7')).toMatchObject({ basis: 'rated', connections: [{ volts: 6.3, amps: 0.3 }, { volts: 12.6, amps: 0.15 }] });
    expect(heaterRow('el34')).toMatchObject({ basis: 'typical', connections: [{ volts: 6.3, amps: 1.5 }] });
  });
});

describe('heaters in series', () => {
  it('share the volts when they take the same current', () => {
    const found = seriesHeaters([{ volts: 6.3, amps: 0.3 }, { volts: 6.3, amps: 0.3 }]);
    expect(found).toMatchObject({ volts: 12.6, amps: expect.closeTo(0.3, 12) as number, ohms: expect.closeTo(42, 12) as number });
    expect(found.mismatch).toBeCloseTo(0, 12);
  });

  it('overfeed the one that is rated for less current', () => {
    const found = seriesHeaters([{ volts: 6.3, amps: 0.3 }, { volts: 6.3, amps: 0.6 }]);
    expect(found.shares[0]).toBeCloseTo(8.4, 12);
    expect(found.mismatch).toBeCloseTo(1 / 3, 12);
    expect(found.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(12.6, 12);
  });

  it('refuse an empty string and heaters without current', () => {
    expect(() => seriesHeaters([])).toThrow(RangeError);
    expect(() => seriesHeaters([{ volts: 6.3, amps: 0 }])).toThrow(RangeError);
  });
});

describe('the thermal model', () => {
  const model = heaterModel({ volts: 12.6, amps: 0.3 });

  it('has its ratings hot and a sixth of the resistance cold', () => {
    expect(heaterOhms({ model, kelvin: model.hotKelvin })).toBeCloseTo(42, 12);
    expect(heaterOhms({ model, kelvin: model.airKelvin })).toBeCloseTo(7, 9);
  });

  it('is in balance hot at rated watts and cold at none', () => {
    expect(heaterKelvinPerSecond({ model, kelvin: model.hotKelvin, watts: 12.6 * 0.3 })).toBeCloseTo(0, 9);
    expect(heaterKelvinPerSecond({ model, kelvin: model.airKelvin, watts: 0 })).toBeCloseTo(0, 9);
  });

  it.each([[2.7, 15], [6, 15], [6, 10], [7.2, 20]])('starts at %d times its current and settles in %d s', (coldRatio, warmUpSeconds) => {
    const found = warmUpHeater({ model: heaterModel({ volts: 6.3, amps: 0.9, coldRatio, warmUpSeconds }), sourceVolts: 6.3, seconds: 90 });
    expect(found.inrushAmps).toBeCloseTo(0.9 * coldRatio, 9);
    expect(Math.abs((found.settledSeconds ?? NaN) - warmUpSeconds)).toBeLessThan(0.01 * warmUpSeconds + 90 / (found.seconds.length - 1));
    expect(found.amps.at(-1)).toBeCloseTo(0.9, 4);
  });

  it('holds three to four times its current for a second or two, as large heaters do', () => {
    const found = warmUpHeater({ model: heaterModel({ volts: 6.3, amps: 1.5 }), sourceVolts: 6.3 });
    const at = (seconds: number) => (found.amps[Math.round((seconds * (found.amps.length - 1)) / 60)] ?? 0) / 1.5;
    expect(at(0.8)).toBeGreaterThan(3);
    expect(at(0.8)).toBeLessThan(4);
    expect(at(2)).toBeGreaterThan(2);
  });

  it('conserves energy: what went in is in the heat content or was radiated', () => {
    const found = warmUpHeater({ model, sourceVolts: 12.6, sourceOhms: 3, seconds: 10 });
    let [into, out] = [0, 0];
    for (let at = 1; at < found.seconds.length; at += 1) {
      const step = (found.seconds[at] ?? 0) - (found.seconds[at - 1] ?? 0);
      for (const end of [at - 1, at]) {
        const kelvin = found.kelvin[end] ?? 0;
        into += 0.5 * step * (found.volts[end] ?? 0) * (found.amps[end] ?? 0);
        out += 0.5 * step * -model.joulesPerKelvin * heaterKelvinPerSecond({ model, kelvin, watts: 0 });
      }
    }
    const stored = model.joulesPerKelvin * ((found.kelvin.at(-1) ?? 0) - model.airKelvin);
    expect((stored + out) / into).toBeCloseTo(1, 4);
  });

  it('warms slower behind resistance or a current limit, and not at all well on a limit below its current', () => {
    const settled = (more: object) => warmUpHeater({ model, sourceVolts: 12.6, seconds: 120, ...more }).settledSeconds ?? Infinity;
    expect(settled({ sourceOhms: 5 })).toBeGreaterThan(settled({}));
    expect(settled({ limitAmps: 0.45 })).toBeGreaterThan(settled({}));
    const starved = warmUpHeater({ model, sourceVolts: 12.6, limitAmps: 0.25, seconds: 120 });
    expect(starved.settledSeconds).toBeUndefined();
    expect(starved.volts.at(-1)).toBeLessThan(10);
  });

  it('refuses a source that burns the heater out, and bears one that merely overfeeds it', () => {
    expect(() => warmUpHeater({ model, sourceVolts: 500 })).toThrow(/burn out/);
    expect(warmUpHeater({ model, sourceVolts: 25 }).kelvin.every(Number.isFinite)).toBe(true);
  });

  it('never exceeds the limit, and stays finite on any source', () => {
    for (const sourceVolts of [0, 1, 12.6, 500]) {
      const found = warmUpHeater({ model: heaterModel({ volts: 0.5, amps: 0.01, warmUpSeconds: 1 }), sourceVolts, limitAmps: 0.02, seconds: 1 });
      expect(Math.max(...found.amps)).toBeLessThanOrEqual(0.02);
      expect(found.kelvin.every(Number.isFinite)).toBe(true);
    }
  });
});
