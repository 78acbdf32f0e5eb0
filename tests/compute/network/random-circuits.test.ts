import { describe, expect, it } from 'vitest';
import { GROUND, SolveError, solveNetwork } from '../../../src/compute/index.ts';
import { randomCircuit, seeded } from './seeded-circuits.ts';

// Twenty lots of fifty, so that a failure names the lot and the report shows where time goes.
const LOTS = 20;
const IN_A_LOT = 50;

describe('a thousand circuits nobody designed', () => {
  let solved = 0;
  for (let lot = 1; lot <= LOTS; lot += 1) {
    it(`lot ${lot}: an answer that obeys Kirchhoff, or a typed failure`, () => {
      const random = seeded(lot);
      for (let n = 0; n < IN_A_LOT; n += 1) {
        const elements = randomCircuit(random);
        try {
          const { volts, amps } = solveNetwork({ hertz: 50, elements });
          solved += 1;
          for (const series of [...Object.values(volts), ...Object.values(amps)]) {
            expect(series.every(Number.isFinite)).toBe(true);
          }
          for (const node of Object.keys(volts)) {
            if (node === GROUND) continue;
            for (const k of [0, 100, 333]) {
              let sum = 0;
              let largest = 1e-3;
              for (const { name, between } of elements) {
                const current = amps[name]?.[k] as number;
                largest = Math.max(largest, Math.abs(current));
                if (between[0] === node) sum += current;
                if (between[1] === node) sum -= current;
              }
              // The absurd ones reach megavolts and kiloamperes through milliohms, where rounding shows at this level.
              expect(Math.abs(sum)).toBeLessThan(1e-4 * largest);
            }
          }
        } catch (error) {
          if (!(error instanceof SolveError)) throw error;
        }
      }
    }, 120_000);
  }
  it('most of them do have an answer', () => {
    expect(solved).toBeGreaterThan(0.65 * LOTS * IN_A_LOT);
  });
});
