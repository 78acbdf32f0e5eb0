import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { solveChain } from '../../../src/compute/supplies/chain.ts';
import type { BuckStage, ChainInput, SolvedCorner } from '../../../src/compute/supplies/chain-types.ts';
import { FIVE_VOLT, NINE_VOLT_JOB } from './chain-cases.ts';

const solvedOf = (input: ChainInput): SolvedCorner[] => solveChain(input).corners.filter((at) => at.solved);
const worstOf = (input: ChainInput) => {
  const { worst } = solveChain(input);
  if (worst === undefined) throw new Error('nothing was solved');
  return worst;
};

const BUCK: BuckStage = {
  kind: 'buck',
  name: 'step-down module',
  outputVolts: 5,
  outputToleranceRatio: 0.04,
  lossVolts: 1.3,
  headroomVolts: 1.5,
  minInputVolts: 4.5,
  maxInputVolts: 40,
  quiescentAmps: 0.01,
  ratedAmps: 2,
  junctionToAirKelvinPerWatt: 40,
  maxJunctionCelsius: 125,
  basis: 'typical',
};

describe('the rail chain', () => {
  it('finds the valley worst at low mains with everything on and the smallest, oldest reservoir', () => {
    expect(worstOf(NINE_VOLT_JOB).valley.corner.words).toBe('low mains, everything on, smallest and oldest reservoir');
  });

  it('finds heat, winding current and peak volts worst at high mains', () => {
    const worst = worstOf(NINE_VOLT_JOB);
    expect(worst.heat.corner.mains).toBe('high');
    expect(worst.heat.corner.load).toBe('everything');
    expect(worst.windingCurrent.corner.load).toBe('everything');
    expect(worst.peak.corner.id).toBe('high-off-largest-60');
  });

  it('rests unloaded near the peak of a sine at high mains, less two small diode drops', () => {
    const peak = 10.8 * 1.1 * Math.SQRT2;
    const rail = worstOf(NINE_VOLT_JOB).peak.rectifier.rail.maxVolts;
    expect(rail).toBeLessThan(peak);
    expect(rail).toBeGreaterThan(peak - 1.2);
  });

  it('books as much power as the source is seen to give', () => {
    for (const topology of ['bridge', 'centre-tap', 'half-wave', 'doubler'] as const) {
      for (const at of solvedOf({ ...NINE_VOLT_JOB, topology, load: { offAmps: 0.01, runningAmps: 0.05, everythingAmps: 0.1 } })) {
        const { windingAmps, sourceVolts } = at.rectifier.waveform;
        let sum = 0;
        for (let i = 0; i < windingAmps.length - 1; i++) sum += (windingAmps[i] as number) * (sourceVolts[i] as number);
        const given = ((topology === 'centre-tap' ? 2 : 1) * sum) / (windingAmps.length - 1);
        // 1.5 %: the cycle is sampled, and a charging pulse with its sharp corners is only some dozen samples wide.
        expect(at.watts.source / given, `${topology}, ${at.corner.words}`).toBeGreaterThan(0.985);
        expect(at.watts.source / given, `${topology}, ${at.corner.words}`).toBeLessThan(1.015);
      }
    }
  });

  it('conserves charge: what the winding gives in a cycle is what the load takes', () => {
    for (const at of solvedOf(NINE_VOLT_JOB).filter(({ corner }) => corner.load !== 'off')) {
      const { windingAmps } = at.rectifier.waveform;
      let sum = 0;
      for (let i = 0; i < windingAmps.length - 1; i++) sum += Math.abs(windingAmps[i] as number);
      const given = sum / (windingAmps.length - 1);
      expect(given / at.rectifier.load.meanAmps).toBeGreaterThan(0.985);
      expect(given / at.rectifier.load.meanAmps).toBeLessThan(1.015);
    }
  });

  it('builds stairs that add up from the winding peak to what is left', () => {
    for (const topology of ['bridge', 'centre-tap', 'half-wave', 'doubler'] as const) {
      const { stairs, worst } = solveChain({ ...NINE_VOLT_JOB, topology });
      const of = (name: string): number => stairs.find((stair) => stair.name === name)?.volts ?? Number.NaN;
      let height = of('winding-peak');
      for (const stair of stairs.slice(1)) {
        if (stair.kind === 'loss') {
          expect(stair.volts, stair.name).toBeGreaterThanOrEqual(-1e-9);
          height -= stair.volts;
        } else if (stair.name === 'left-over') {
          expect(stair.volts).toBeCloseTo(height - of('rail'), 9);
          expect(stair.volts).toBeCloseTo(worst?.valley.headroomVolts ?? Number.NaN, 9);
        } else if (stair.name !== 'rail') expect(stair.volts, stair.name).toBeCloseTo(height, 9);
      }
    }
  });

  it('digs a shallower valley with more reservoir, a deeper one with more load, more copper or lower mains', () => {
    const valley = (change: Partial<ChainInput>): number => worstOf({ ...NINE_VOLT_JOB, ...change }).valley.rectifier.rail.minVolts;
    const farads = [470e-6, 1000e-6, 2200e-6, 4700e-6, 10e-3].map((f) => valley({ reservoir: { ...NINE_VOLT_JOB.reservoir, farads: f } }));
    expect(farads).toEqual([...farads].sort((a, b) => a - b));
    const loads = [0.05, 0.1, 0.2, 0.3].map((amps) => valley({ load: { offAmps: 0, runningAmps: 0.02, everythingAmps: amps } }));
    expect(loads).toEqual([...loads].sort((a, b) => b - a));
    const copper = [0.5, 1, 2, 4].map((ohms) => valley({ winding: { ...NINE_VOLT_JOB.winding, ohms } }));
    expect(copper).toEqual([...copper].sort((a, b) => b - a));
    const mains = [114, 108, 102].map((lowVolts) => valley({ mains: { ...NINE_VOLT_JOB.mains, lowVolts } }));
    expect(mains).toEqual([...mains].sort((a, b) => b - a));
  });

  it('digs the deeper valley at 50 Hz when the amp must work on both frequencies', () => {
    expect(worstOf({ ...NINE_VOLT_JOB, mains: { ...NINE_VOLT_JOB.mains, alsoHertz: 50 } }).valley.corner.hertz).toBe(50);
  });

  it('warms copper that was measured cold, where that is worse', () => {
    const cold = worstOf({ ...NINE_VOLT_JOB, winding: { ...NINE_VOLT_JOB.winding, ohmsMeasuredCold: true } });
    expect(cold.valley.sourceOhms).toBeCloseTo(2.7 * 1.1965, 3);
    expect(cold.valley.rectifier.rail.minVolts).toBeLessThan(worstOf(NINE_VOLT_JOB).valley.rectifier.rail.minVolts);
    expect(cold.peak.sourceOhms).toBe(2.7);
  });

  it('passes the ripple on when the regulator drops out, and not before', () => {
    const valley = worstOf(NINE_VOLT_JOB).valley;
    expect(valley.rail.rippleVolts).toBe(0);
    expect(valley.rail.meanVolts).toBeCloseTo(5, 9);
    const starved = worstOf({ ...NINE_VOLT_JOB, stage: { ...FIVE_VOLT, outputVolts: 8 } }).valley;
    expect(starved.headroomVolts).toBeLessThan(0);
    expect(starved.rail.rippleVolts).toBeGreaterThan(0.05);
    expect(starved.rail.minVolts).toBeCloseTo(starved.rectifier.rail.minVolts - 2.2, 2);
  });

  it('burns the mean input over the lowest output, and cools better on a heatsink', () => {
    const { heat } = worstOf(NINE_VOLT_JOB);
    const input = heat.rectifier.rail.meanVolts;
    expect(heat.regulatorWatts).toBeCloseTo((input - 4.75) * 0.15 + input * 0.008, 9);
    expect(heat.junctionCelsius).toBeCloseTo(55 + heat.regulatorWatts * 65, 9);
    const cooled = worstOf({ ...NINE_VOLT_JOB, cooling: { airCelsius: 55, heatsinkKelvinPerWatt: 20 } }).heat;
    expect(cooled.junctionCelsius).toBeCloseTo(55 + heat.regulatorWatts * 25.5, 9);
  });

  it('solves an unregulated rail as the resistance its load is', () => {
    const { corners, stairs } = solveChain({ ...NINE_VOLT_JOB, stage: { kind: 'none', designVolts: 12 } });
    expect(stairs.at(-1)?.name).toBe('valley');
    for (const at of corners) {
      if (!at.solved || at.corner.load !== 'everything') continue;
      expect(at.headroomVolts).toBeUndefined();
      expect(at.loadAmps).toBeCloseTo(at.rectifier.rail.meanVolts / 80, 4);
    }
  });

  it('draws less from the winding through a switcher than through a linear regulator', () => {
    const through = (stage: ChainInput['stage']): number => worstOf({ ...NINE_VOLT_JOB, stage }).windingCurrent.rectifier.winding.rmsAmps;
    expect(through(BUCK)).toBeLessThan(0.8 * through(FIVE_VOLT));
  });

  it('says so when a switcher starves, and gives no figure for that corner', () => {
    const { unsolved } = solveChain({ ...NINE_VOLT_JOB, stage: BUCK, load: { offAmps: 0, runningAmps: 0.1, everythingAmps: 3 } });
    expect(unsolved.length).toBeGreaterThan(0);
    for (const at of unsolved) expect(at.reason).toBe('overloaded');
  });

  it('shows its working with the numbers in it', () => {
    const { working } = solveChain(NINE_VOLT_JOB);
    const step = (name: string): string => working.find((each) => each.name === name)?.substituted.replaceAll('\u00A0', ' ') ?? '';
    expect(step('winding-at-the-corner')).toBe('10.8 V × 108 V / 120 V = 9.72 V');
    expect(step('input-needed')).toBe('5 V × (1 + 0.05) + 2.2 V = 7.45 V');
    for (const each of working) {
      expect(each.words.length).toBeGreaterThan(10);
      expect(Number.isFinite(each.result.value)).toBe(true);
    }
  });

  it.each([
    ['winding.openCircuitVolts', { winding: { ...NINE_VOLT_JOB.winding, openCircuitVolts: 0 } }],
    ['winding.ohms', { winding: { ...NINE_VOLT_JOB.winding, ohms: -1 } }],
    ['load.everythingAmps', { load: { offAmps: 0, runningAmps: 0.2, everythingAmps: 0.1 } }],
    ['load.runningAmps', { load: { offAmps: 0, runningAmps: Number.NaN, everythingAmps: 0.1 } }],
    ['cooling.airCelsius', { cooling: { airCelsius: 400 } }],
    ['reservoir.farads', { reservoir: { ...NINE_VOLT_JOB.reservoir, farads: 0 } }],
  ])('refuses %s out of range', (quantity, change) => {
    const solve = (): unknown => solveChain({ ...NINE_VOLT_JOB, ...change });
    expect(solve).toThrow(InputError);
    expect(solve).toThrow(quantity);
  });
});
