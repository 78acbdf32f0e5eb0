import { describe, expect, it } from 'vitest';
import { coilOnRail, droppedCoils, releaseSpread } from '../../../src/compute/parts/coil-on-rail.ts';
import { coilPullIn, relayCoil, relayOfKind } from '../../../src/compute/parts/relay.ts';

const coil = relayCoil('power-400-12v');
const rail = { coil, airCelsius: 55, lowestVolts: 11.4, highestVolts: 12.6 };

describe('a relay of a kind', () => {
  it('is its row where there is one, and the class’s watts at other volts', () => {
    expect(relayOfKind({ kind: 'power-400', ratedVolts: 12 })).toEqual(coil);
    expect(relayOfKind({ kind: 'power-400', ratedVolts: 48 }).ohms).toBeCloseTo(48 ** 2 / 0.4, 9);
    expect(relayOfKind({ kind: 'power-400', ratedVolts: 48 }).basis).toBe('typical');
  });

  it('takes what is printed on the part before its class', () => {
    expect(relayOfKind({ kind: 'telecom-200', ratedVolts: 12, ohms: 700, mustOperateRatio: 0.7 })).toMatchObject({ ohms: 700, mustOperateRatio: 0.7, kelvinPerWatt: 140 });
    expect(() => relayOfKind({ kind: 'telecom', ratedVolts: 12 })).toThrow(RangeError);
  });
});

describe('a coil on a rail', () => {
  it('without a resistor agrees with the pull-in of a coil heated by the highest rail', () => {
    const pull = coilPullIn({ coil, airCelsius: 55, heatingVolts: 12.6 });
    const found = coilOnRail(rail);
    expect(found.operateVolts).toBeCloseTo(pull.operateVolts, 9);
    expect(found.coilCelsius).toBeCloseTo(pull.coilCelsius, 9);
    expect(found.lowestAtCoil).toBe(11.4);
    expect(coilOnRail({ ...rail, dropVolts: 0.3 }).marginVolts).toBeCloseTo(found.marginVolts - 0.3, 12);
  });

  it('behind a resistor shares the volts with its own hot resistance', () => {
    const found = coilOnRail({ ...rail, lowestVolts: 22.8, highestVolts: 25.2, seriesOhms: 360 });
    expect(found.lowestAtCoil).toBeCloseTo((22.8 * found.hotOhms) / (found.hotOhms + 360), 9);
    // A coil of most resistance, warm: more than half.
    expect(found.highestAtCoil).toBeGreaterThan(12.6);
    expect(found.highestAtCoil).toBeLessThan(15.5);
  });

  it('refuses a lowest rail above the highest', () => {
    expect(() => coilOnRail({ ...rail, lowestVolts: 13 })).toThrow(RangeError);
  });
});

describe('coils behind one resistor', () => {
  const shared = { ...rail, nominalVolts: 24, lowestVolts: 24, highestVolts: 24, resistorOhms: 180, coils: 2 };

  it('get half the rail each when two of 360 Ω share 180 Ω, and far more alone', () => {
    const found = droppedCoils(shared);
    expect(found.usualVolts).toBeCloseTo(12, 12);
    expect(found.resistorWatts).toBeCloseTo((24 / (162 + 180)) ** 2 * 180, 12);
    expect(found.alone.highestAtCoil).toBeGreaterThan(16);
    expect(found.together.lowestAtCoil).toBeCloseTo(coilOnRail({ ...shared, seriesOhms: 360 }).lowestAtCoil, 12);
  });
});

describe('the release', () => {
  it('takes longest with a cold coil of least resistance, and the clamp shortens it', () => {
    const spread = (volts: number) => releaseSpread({ ...rail, suppression: { kind: 'diode-zener', volts } });
    expect(spread(12).longestSeconds).toBeGreaterThan(spread(12).usualSeconds);
    expect(spread(24).longestSeconds).toBeLessThan(spread(12).longestSeconds);
    expect(spread(12).switchVolts).toBeCloseTo(12.6 + 12.8, 9);
  });

  it('puts the rail on the switch even where a resistor keeps it from the coil', () => {
    expect(releaseSpread({ ...rail, highestVolts: 24, highestAtCoil: 12, suppression: { kind: 'diode' } }).switchVolts).toBeCloseTo(24.8, 9);
  });
});
