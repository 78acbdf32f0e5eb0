import { describe, expect, it } from 'vitest';
import { copperRatio } from '../../../src/compute/parts/copper.ts';
import {
  CONSTRUCTIONS, allowedNoLoadExcess, construction, frequencyUse, inrushBoundAmps, insulationClass, ratedPrimaryAmps, shortCircuitAmps, temperatureRise, typicalRegulation,
  windingCelsiusAt,
} from '../../../src/compute/parts/transformer.ts';

describe('regulation by size', () => {
  it('is what catalogues show: 1.3 to 1.35 at 5 VA, 1.1 to 1.13 at 50 VA', () => {
    const row = construction('laminated');
    expect(typicalRegulation({ construction: row, voltAmps: 5 })).toEqual({ min: 0.3, typical: expect.closeTo(0.325, 12) as number, max: 0.35 });
    expect(typicalRegulation({ construction: row, voltAmps: 50 })).toMatchObject({ min: expect.closeTo(0.1, 12) as number, max: expect.closeTo(0.13, 12) as number });
  });

  it('never rises with size', () => {
    for (const row of CONSTRUCTIONS) {
      const middles = [1, 2, 3, 5, 8, 12, 20, 35, 60, 90].map((voltAmps) => typicalRegulation({ construction: row, voltAmps }).typical);
      middles.slice(1).forEach((value, at) => { expect(value).toBeLessThanOrEqual(middles[at] ?? 0); });
    }
  });

  it('may be as much as the standard allows', () => {
    expect([10, 10.1, 25, 63, 250, 630, 631].map(allowedNoLoadExcess)).toEqual([1, 0.5, 0.5, 0.2, 0.15, 0.1, 0.05]);
  });
});

describe('currents', () => {
  it('bound the inrush by winding resistance: 7, 10, 20 and 40 times at 30, 20, 10 and 5 %', () => {
    const ratio = (regulation: number) => inrushBoundAmps({ ratedAmps: 1, regulation }) / Math.SQRT2;
    expect(ratio(0.3)).toBeCloseTo(6.67, 2);
    expect([0.2, 0.1, 0.05].map(ratio)).toEqual([expect.closeTo(10, 9), expect.closeTo(20, 9), expect.closeTo(40, 9)]);
  });

  it('of a 230 V 10 VA part of 25 %: 43 mA of load, 4 to 5 times the rated current into a dead short', () => {
    expect(ratedPrimaryAmps({ voltAmps: 10, mainsVolts: 230 })).toBeCloseTo(0.0435, 4);
    const ratedAmps = 10 / 12;
    const winding = { openCircuitVolts: 15, ohms: 3 / ratedAmps };
    expect(shortCircuitAmps(winding) / ratedAmps).toBeCloseTo(5, 12);
  });
});

describe('temperature', () => {
  it('comes from resistance, with the margin to the insulation class', () => {
    const hotOhms = 20 * copperRatio({ fromCelsius: 22, toCelsius: 98 });
    const found = temperatureRise({ coldOhms: 20, coldCelsius: 22, hotOhms, airCelsius: 40, classId: 'b' });
    expect(found).toEqual({ windingCelsius: expect.closeTo(98, 9) as number, riseKelvin: expect.closeTo(58, 9) as number, marginKelvin: expect.closeTo(22, 9) as number });
    expect(insulationClass('e')).toMatchObject({ normalCelsius: 115, overloadCelsius: 215 });
  });

  it('of the copper part goes by the square of the current', () => {
    expect(windingCelsiusAt({ knownRiseKelvin: 50, knownRmsAmps: 1, rmsAmps: 2, airCelsius: 30, ironShare: 0 })).toBe(230);
    expect(windingCelsiusAt({ knownRiseKelvin: 50, knownRmsAmps: 1, rmsAmps: 0, airCelsius: 30 })).toBe(45);
  });
});

it('keeps a 60 Hz part off 50 Hz mains', () => {
  expect(frequencyUse({ ratedHertz: 60, mainsHertz: 50 })).toEqual({ allowed: false, fluxRatio: 1.2 });
  expect(frequencyUse({ ratedHertz: 50, mainsHertz: 60 }).allowed).toBe(true);
});

it('refuses what it does not know', () => {
  expect(() => construction('r-core')).toThrow(RangeError);
  expect(() => insulationClass('z')).toThrow(RangeError);
  expect(() => inrushBoundAmps({ ratedAmps: 1, regulation: 0 })).toThrow(RangeError);
});
