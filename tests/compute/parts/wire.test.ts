import { describe, expect, it } from 'vitest';
import { WIRES, copperOhms, gaugeMetres, loopDropVolts, wire, wireCapacityAmps, wireFor, wireOhms } from '../../../src/compute/parts/wire.ts';

describe('wire tables', () => {
  // Millivolts over a loop of 0.6 m in all at 3 A, as printed to the millivolt.
  it.each([[26, 241], [24, 152], [22, 95], [20, 60], [18, 38], [16, 24], [14, 15]])('AWG %d drops %d mV', (gauge, millivolts) => {
    expect(Math.abs(1000 * loopDropVolts({ row: wire(`awg-${gauge}`), metres: 0.3, amps: 3 }) - millivolts)).toBeLessThanOrEqual(0.6);
  });

  it('agree with the gauge formula in section and with copper in resistance', () => {
    for (const row of WIRES.filter(({ id }) => id.startsWith('awg'))) {
      const area = (Math.PI / 4) * gaugeMetres(Number(row.id.slice(4))) ** 2;
      // Tables are printed to two or three digits.
      expect(Math.abs(row.squareMetres / area - 1), row.id).toBeLessThan(0.01);
      expect(Math.abs(row.ohmsPerMetre / copperOhms({ squareMetres: area, metres: 1 }) - 1), row.id).toBeLessThan(0.01);
    }
  });

  it('allow the metric strands somewhat more resistance than solid copper', () => {
    for (const row of WIRES.filter(({ id }) => id.startsWith('metric'))) {
      const ratio = row.ohmsPerMetre / copperOhms({ squareMetres: row.squareMetres, metres: 1 });
      expect(ratio, row.id).toBeGreaterThan(1);
      expect(ratio, row.id).toBeLessThan(1.2);
    }
  });
});

describe('a run of wire', () => {
  it('of 0.2 m AWG 22 puts 21 mV of a 2 A pulse on what shares it', () => {
    expect(2 * wireOhms({ row: wire('awg-22'), metres: 0.2 })).toBeCloseTo(0.0212, 4);
  });

  it('grows with temperature as copper does', () => {
    expect(wireOhms({ row: wire('awg-22'), metres: 1, celsius: 70 }) / wireOhms({ row: wire('awg-22'), metres: 1 })).toBeCloseTo(304.5 / 254.5, 12);
  });

  it('carries half in a hot bundle', () => {
    expect(wireCapacityAmps({ row: wire('awg-20'), hotBundle: true })).toBe(5.5);
  });

  it('is the thinnest that both carries and drops little enough', () => {
    const options = { system: 'awg', amps: 3, metres: 0.3, hotBundle: true } as const;
    expect(wireFor({ ...options, dropVolts: 1 })?.id).toBe('awg-22');
    expect(wireFor({ ...options, dropVolts: 0.05 })?.id).toBe('awg-18');
    expect(wireFor({ ...options, dropAmps: 1, dropVolts: 0.05 })?.id).toBe('awg-22');
    expect(wireFor({ ...options, dropVolts: 0.001 })).toBeUndefined();
    expect(wireFor({ ...options, system: 'metric', dropVolts: 1 })?.id).toBe('metric-0-75');
  });
});
