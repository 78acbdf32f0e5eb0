import { describe, expect, it } from 'vitest';
import { WIRES, wire, wireCapacityAmps, wireOhms } from '../../../src/compute/parts/wire.ts';
import { WIRE_CEILING_CELSIUS, wireTemperature } from '../../../src/compute/parts/wire-heating.ts';

const row = wire('awg-22');
const at = (amps: number, hotBundle = false) => wireTemperature({ row, amps, airCelsius: 30, hotBundle });

describe('a wire in still air', () => {
  it('sits at the air with no current, and warms about as its square while it is little', () => {
    expect(at(0).celsius).toBeCloseTo(30, 5);
    expect((at(2).celsius - 30) / (at(1).celsius - 30)).toBeGreaterThan(3);
    expect((at(2).celsius - 30) / (at(1).celsius - 30)).toBeLessThan(4.2);
  });

  it('makes the heat of its warm copper', () => {
    const { celsius, wattsPerMetre } = at(5);
    expect(wattsPerMetre).toBeCloseTo(25 * wireOhms({ row, metres: 1, celsius }), 9);
  });

  it('sheds what a fine horizontal cylinder does: about 20 W for each square metre and kelvin', () => {
    const { celsius, wattsPerMetre } = at(7);
    const outer = 2 * Math.sqrt(row.squareMetres / Math.PI) + 0.8e-3;
    const coefficient = wattsPerMetre / (Math.PI * outer * (celsius - 30));
    expect(coefficient).toBeGreaterThan(15);
    expect(coefficient).toBeLessThan(35);
  });

  it('rises by at most some 65 K at the open-air figures of the tables, and by as much in a bundle at half of them', () => {
    for (const each of WIRES) {
      const open = wireTemperature({ row: each, amps: wireCapacityAmps({ row: each, hotBundle: false }), airCelsius: 30, hotBundle: false }).celsius;
      expect(open, each.id).toBeGreaterThan(32);
      expect(open, each.id).toBeLessThan(95);
      expect(wireTemperature({ row: each, amps: wireCapacityAmps({ row: each, hotBundle: true }), airCelsius: 30, hotBundle: true }).celsius, each.id).toBeCloseTo(open, 3);
    }
  });

  it('stops at the ceiling where nothing balances', () => {
    expect(at(500).celsius).toBe(WIRE_CEILING_CELSIUS);
  });
});
