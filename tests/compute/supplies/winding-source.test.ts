import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { solveChain } from '../../../src/compute/supplies/chain.ts';
import type { AcrossWinding, ChainInput, SolvedCorner } from '../../../src/compute/supplies/chain-types.ts';
import { NINE_VOLT_JOB } from './chain-cases.ts';

/** Schottky bridge on a 6.3 V heater winding of 0.1 Ω, 200 mA unregulated. */
const TAP: ChainInput = {
  ...NINE_VOLT_JOB,
  mains: { nominalVolts: 230, lowVolts: 207, highVolts: 253, hertz: 50 },
  winding: { openCircuitVolts: 6.6, ohms: 0.1, basis: 'measured' },
  diode: { ...NINE_VOLT_JOB.diode, name: '3 A Schottky', saturationAmps: 1.39e-5, emission: 1.0315, ohms: 0.0384 },
  reservoir: { farads: 4700e-6, ohms: 0.02, ratedVolts: 16, basis: 'typical' },
  stage: { kind: 'none', designVolts: 8 },
  load: { offAmps: 0, runningAmps: 0.1, everythingAmps: 0.2 },
};

const nominal = (acrossOhms: number | undefined, change: Partial<ChainInput> = {}): SolvedCorner => {
  const winding = acrossOhms === undefined ? TAP.winding : { ...TAP.winding, acrossOhms };
  const found = solveChain({ ...TAP, ...change, winding: { ...winding, ...change.winding } }).corners.find((at) => at.corner.id === 'nominal-everything-marked-50');
  if (found?.solved !== true) throw new Error('the nominal corner was not solved');
  return found;
};

const heaters = (at: SolvedCorner): AcrossWinding => {
  if (at.across === undefined) throw new Error('no heaters across the winding');
  return at.across;
};

describe('heaters across the winding that feeds the rail', () => {
  it('add to the pulses by the mean of the squared sum: more than in quadrature, less than by arithmetic', () => {
    for (const amps of [1, 2, 4, 6]) {
      const at = nominal(6.3 / amps);
      const { rmsAmps, totalRmsAmps } = heaters(at);
      const tap = at.rectifier.winding.rmsAmps;
      expect(totalRmsAmps).toBeGreaterThan(Math.hypot(rmsAmps, tap) * 1.005);
      expect(totalRmsAmps).toBeLessThan((rmsAmps + tap) * 0.995);
    }
  });

  it('rise in total by about 0.3 A for a 200 mA tap, whatever the heaters take', () => {
    for (const amps of [1, 2, 4, 6]) {
      const { totalRmsAmps, rmsAmpsBefore } = heaters(nominal(6.3 / amps));
      expect(totalRmsAmps - rmsAmpsBefore).toBeGreaterThan(0.22);
      expect(totalRmsAmps - rmsAmpsBefore).toBeLessThan(0.38);
    }
  });

  it('lose volts and their crest to the pulses, more so on a softer winding', () => {
    const [stiff, soft] = [0.05, 0.2].map((ohms) => heaters(nominal(1.5, { winding: { ...TAP.winding, ohms, acrossOhms: 1.5 } })));
    for (const each of [stiff, soft]) {
      expect(each?.rmsVolts).toBeLessThan(each?.rmsVoltsBefore ?? 0);
      expect(each?.crestFactor).toBeLessThan(1.4);
    }
    const sag = (each: AcrossWinding | undefined): number => (each?.rmsVoltsBefore ?? 0) - (each?.rmsVolts ?? 0);
    expect(sag(soft)).toBeGreaterThan(2 * sag(stiff));
    expect(soft?.crestFactor).toBeLessThan(stiff?.crestFactor ?? 0);
  });

  it('lower the rail against the same winding without heaters', () => {
    expect(nominal(1.2).rectifier.rail.minVolts).toBeLessThan(nominal(undefined).rectifier.rail.minVolts - 0.4);
  });

  it('vanish as their resistance grows', () => {
    const without = nominal(undefined);
    const nearly = nominal(1e6);
    expect(nearly.rectifier.rail.meanVolts).toBeCloseTo(without.rectifier.rail.meanVolts, 5);
    expect(nearly.windingRmsAmps).toBeCloseTo(without.rectifier.winding.rmsAmps, 3);
  });

  it('are in the power that the source gives, the whole circuit booked', () => {
    const at = nominal(1.5);
    const { sourceVolts, windingAmps } = at.rectifier.waveform;
    const steps = windingAmps.length - 1;
    let sum = 0;
    // The winding's own source, out of the reduced one it was solved with.
    const own = 1.6 / 1.5;
    for (let i = 0; i < steps; i++) {
      const tap = windingAmps[i] as number;
      const source = sourceVolts[i] as number;
      const volts = source - at.sourceOhms * tap;
      sum += source * own * (tap + volts / 1.5);
    }
    // 1 %: the pulses are sampled.
    expect(at.watts.source / (sum / steps)).toBeGreaterThan(0.99);
    expect(at.watts.source / (sum / steps)).toBeLessThan(1.01);
  });

  it('are refused beside a centre-tap rectifier, which takes the winding in halves', () => {
    expect(() => nominal(1.5, { topology: 'centre-tap' })).toThrow(InputError);
  });
});
