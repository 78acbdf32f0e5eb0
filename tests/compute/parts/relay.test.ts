import { describe, expect, it } from 'vitest';
import { RELAY_COILS, coilDropper, coilHenries, coilMaxVolts, coilOhms, coilPullIn, coilTemperature, relayCoil } from '../../../src/compute/parts/relay.ts';
import { coilRelease } from '../../../src/compute/parts/suppression.ts';
import { copperRatio, temperatureByResistance } from '../../../src/compute/parts/copper.ts';

describe('copper', () => {
  it('lifts a 75 % pull-in at 20 °C to 96 % at 90 °C, and one at 23 °C to 86 % at 60 °C', () => {
    expect(0.75 * copperRatio({ fromCelsius: 20, toCelsius: 90 })).toBeCloseTo(0.956, 3);
    expect(0.75 * copperRatio({ fromCelsius: 23, toCelsius: 60 })).toBeCloseTo(0.858, 3);
  });

  it('tells temperature from resistance, the reverse of the same rule', () => {
    const ratio = copperRatio({ fromCelsius: 20, toCelsius: 87 });
    expect(temperatureByResistance({ coldOhms: 10, coldCelsius: 20, hotOhms: 10 * ratio })).toBeCloseTo(87, 10);
  });
});

describe('coil rows', () => {
  it.each<[string, number]>([
    ['telecom-150-5v', 0.0299], ['telecom-200-5v', 0.04], ['telecom-360-5v', 0.0714], ['telecom-150-12v', 0.0125], ['telecom-200-12v', 0.01667],
    ['telecom-360-24v', 0.015], ['power-16a-12v', 0.0436], ['power-360-12v', 0.03],
  ])('%s takes its printed current', (id, amps) => {
    const coil = relayCoil(id);
    expect(coil.ratedVolts / coil.ohms).toBeCloseTo(amps, 4);
  });

  it('agree with the watts in their names within 5 %', () => {
    for (const coil of RELAY_COILS) {
      const milliwatts = Number(/(\d+) mW/.exec(coil.name)?.[1] ?? 524);
      expect((1000 * coil.ratedVolts ** 2) / coil.ohms / milliwatts, coil.id).toBeGreaterThan(0.95);
      expect((1000 * coil.ratedVolts ** 2) / coil.ohms / milliwatts, coil.id).toBeLessThan(1.05);
    }
  });
});

it('has the inductance printed for the 16 A type, operated and released', () => {
  expect(coilHenries(relayCoil('power-16a-12v'))).toEqual({ operated: expect.closeTo(2.29, 9) as number, released: expect.closeTo(1.145, 9) as number });
});

describe('a hot coil', () => {
  const coil = relayCoil('telecom-200-12v');

  it('settles where its heat and its resistance agree', () => {
    const { celsius, ohms, watts } = coilTemperature({ coil, volts: 12, airCelsius: 55 });
    expect(celsius).toBeCloseTo(55 + coil.kelvinPerWatt * watts, 9);
    expect(watts).toBeCloseTo(144 / ohms, 9);
    expect(ohms).toBeCloseTo(coilOhms({ coil, celsius }).min, 9);
  });

  it('stays at air temperature with nothing across it', () => {
    expect(coilTemperature({ coil, volts: 0, airCelsius: 40 }).celsius).toBeCloseTo(40, 9);
  });

  it('pulls in at its printed share when cold, and needs more the hotter the air and the longer it was on', () => {
    expect(coilPullIn({ coil, airCelsius: 23, heatingVolts: 0 }).operateVolts).toBeCloseTo(9, 9);
    const volts = [23, 40, 55, 70].map((airCelsius) => coilPullIn({ coil, airCelsius }).operateVolts);
    volts.slice(1).forEach((value, at) => { expect(value).toBeGreaterThan(volts[at] ?? Infinity); });
    expect(coilPullIn({ coil, airCelsius: 55, heatingVolts: 14 }).operateVolts).toBeGreaterThan(coilPullIn({ coil, airCelsius: 55 }).operateVolts);
  });

  it('bears 170 % at 23 °C and 130 % at 70 °C', () => {
    expect(coilMaxVolts({ coil, airCelsius: 23 })).toBeCloseTo(20.4, 12);
    expect(coilMaxVolts({ coil, airCelsius: 70 })).toBeCloseTo(15.6, 12);
    expect(coilMaxVolts({ coil, airCelsius: 0 })).toBeCloseTo(20.4, 12);
  });
});

it('drops a higher rail for one coil or several', () => {
  const coil = relayCoil('telecom-200-12v');
  expect(coilDropper({ coil, railVolts: 24 })).toEqual({ ohms: expect.closeTo(720, 9) as number, watts: expect.closeTo(0.2, 9) as number, amps: 12 / 720 });
  expect(coilDropper({ coil, railVolts: 24, coils: 2 }).ohms).toBeCloseTo(360, 9);
  expect(() => coilDropper({ coil, railVolts: 5 })).toThrow(RangeError);
});

describe('release', () => {
  const coil = { henries: 2.29, ohms: 275, railVolts: 12 };
  // Milliseconds to a tenth, a quarter and 35 % of rated current, printed to a tenth.
  it.each<[string, Parameters<typeof coilRelease>[0]['suppression'], number[]]>([
    ['diode', { kind: 'diode' }, [15.5, 10.1, 7.8]],
    ['diode and 12 V zener', { kind: 'diode-zener', volts: 12 }, [4.8, 3.8, 3.1]],
    ['diode and 24 V zener', { kind: 'diode-zener', volts: 24 }, [2.9, 2.3, 2.0]],
  ])('of the 16 A coil into a %s', (_, suppression, milliseconds) => {
    const times = [0.1, 0.25, 0.35].map((releaseRatio) => 1000 * coilRelease({ ...coil, releaseRatio, suppression }).seconds);
    times.forEach((time, at) => { expect(Math.abs(time - (milliseconds[at] ?? NaN))).toBeLessThanOrEqual(0.055); });
  });

  it('into a resistor kicks by its ohms times the current: 98 Ω on 12 V with 680 Ω gives some 80 V across it', () => {
    const { switchVolts, seconds } = coilRelease({ henries: 0.3, ohms: 98, railVolts: 12, suppression: { kind: 'resistor', ohms: 680 } });
    expect(switchVolts).toBeCloseTo(12 + (12 / 98) * 680, 9);
    expect(seconds).toBeCloseTo((0.3 / 778) * Math.log(10), 12);
  });

  it('costs the switch the rail plus the clamp, and leaves it a thousand volts without', () => {
    expect(coilRelease({ ...coil, suppression: { kind: 'diode-zener', volts: 12 } }).switchVolts).toBeCloseTo(24.8, 12);
    expect(coilRelease({ ...coil, suppression: { kind: 'none' } }).switchVolts).toBe(1000);
  });

  it('is faster the higher the clamp', () => {
    const times = [1, 3, 10, 30, 100].map((volts) => coilRelease({ ...coil, suppression: { kind: 'diode-zener', volts } }).seconds);
    times.slice(1).forEach((time, at) => { expect(time).toBeLessThan(times[at] ?? 0); });
  });
});
