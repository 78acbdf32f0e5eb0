import { describe, expect, it } from 'vitest';
import { solveChain } from '../../../src/compute/supplies/chain.ts';
import { chainFindings } from '../../../src/compute/supplies/chain-findings.ts';
import type { ChainInput } from '../../../src/compute/supplies/chain-types.ts';
import { FIVE_VOLT, NINE_VOLT_JOB } from './chain-cases.ts';

const levelOf = (change: Partial<ChainInput>, rule: string): string | undefined => {
  const input = { ...NINE_VOLT_JOB, ...change };
  return chainFindings(input, solveChain(input)).find((each) => each.rule === rule)?.level;
};

const worst = (() => {
  const found = solveChain(NINE_VOLT_JOB).worst;
  if (found === undefined) throw new Error('nothing was solved');
  return found;
})();

/** Just inside of `within`, `marginal` and the limit, and just outside, by the one figure that the rule turns on. */
describe('what a solved chain is checked for, at each limit', () => {
  it('the valley: 0.3 V to spare, none, short', () => {
    const spare = worst.valley.headroomVolts ?? 0;
    const at = (margin: number): string | undefined => {
      const outputVolts = FIVE_VOLT.outputVolts + (spare - margin) / 1.05;
      return levelOf({ stage: { ...FIVE_VOLT, outputVolts } }, 'regulator-valley');
    };
    expect([at(0.31), at(0.29), at(0.01), at(-0.01)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the junction: 15 K below its limit, at it, beyond', () => {
    const watts = worst.heat.regulatorWatts;
    const at = (celsius: number): string | undefined =>
      levelOf({ stage: { ...FIVE_VOLT, junctionToAirKelvinPerWatt: (celsius - 55) / watts } }, 'junction-temperature');
    expect([at(109.9), at(110.1), at(124.9), at(125.1)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the regulator’s highest input: nine tenths of its maximum, at it, beyond', () => {
    const peak = worst.peak.rectifier.rail.maxVolts;
    const at = (ratio: number): string | undefined => levelOf({ stage: { ...FIVE_VOLT, maxInputVolts: peak / ratio } }, 'regulator-input');
    expect([at(0.89), at(0.91), at(0.999), at(1.001)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the regulator’s current: four fifths of its rating, at it, beyond', () => {
    const at = (ratio: number): string | undefined => levelOf({ stage: { ...FIVE_VOLT, ratedAmps: 0.15 / ratio } }, 'regulator-current');
    expect([at(0.79), at(0.81), at(0.99), at(1.01)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the reservoir’s volts: four fifths of its rating, at it, its surge, beyond', () => {
    const peak = worst.peak.rectifier.rail.maxVolts;
    const at = (ratio: number): string | undefined => levelOf({ reservoir: { ...NINE_VOLT_JOB.reservoir, ratedVolts: peak / ratio } }, 'capacitor-volts');
    expect([at(0.79), at(0.81), at(0.99), at(1.01), at(1.16)]).toEqual(['within', 'marginal', 'marginal', 'outside', 'hazard']);
  });

  it('the reservoir’s ripple current: four fifths of its limit, at it, beyond', () => {
    const amps = worst.rippleCurrent.rectifier.reservoir.rmsAmps;
    const at = (ratio: number): string | undefined => levelOf({ reservoir: { ...NINE_VOLT_JOB.reservoir, ratedRippleAmps: amps / ratio } }, 'ripple-current');
    expect([at(0.79), at(0.81), at(0.99), at(1.01)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the winding’s RMS current: nine tenths of its rating, at it, beyond, burning; not assessed without one', () => {
    const amps = worst.windingCurrent.windingRmsAmps;
    const at = (ratio: number): string | undefined => levelOf({ winding: { ...NINE_VOLT_JOB.winding, ratedAmps: amps / ratio } }, 'winding-current');
    expect([at(0.89), at(0.91), at(0.99), at(1.01), at(1.16)]).toEqual(['within', 'marginal', 'marginal', 'outside', 'hazard']);
    expect(levelOf({ winding: { openCircuitVolts: 10.8, ohms: 2.7, basis: 'measured' } }, 'winding-current')).toBe('not assessed');
  });

  it('the diodes’ reverse volts: half of their rating, at it, beyond', () => {
    const volts = worst.reverse.rectifier.diode.reverseVolts;
    const at = (ratio: number): string | undefined => levelOf({ diode: { ...NINE_VOLT_JOB.diode, ratedReverseVolts: volts / ratio } }, 'reverse-volts');
    expect([at(0.49), at(0.51), at(0.99), at(1.01)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the diodes’ mean current: four fifths of their rating, at it, beyond', () => {
    const amps = worst.diodeCurrent.rectifier.diode.meanAmps;
    const at = (ratio: number): string | undefined => levelOf({ diode: { ...NINE_VOLT_JOB.diode, ratedMeanAmps: amps / ratio } }, 'diode-current');
    expect([at(0.79), at(0.81), at(0.99), at(1.01)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
  });

  it('the DC that a half-wave rectifier leaves in the winding: twenty milliamps, fifty, beyond; none with a bridge', () => {
    // The regulator's own 8 mA flow as well.
    const at = (amps: number): string | undefined => levelOf({ topology: 'half-wave', load: { offAmps: 0, runningAmps: amps - 0.008, everythingAmps: amps - 0.008 } }, 'half-wave-bias');
    expect([at(0.0195), at(0.0205), at(0.0495), at(0.0505)]).toEqual(['within', 'marginal', 'marginal', 'outside']);
    expect(levelOf({}, 'half-wave-bias')).toBeUndefined();
  });

  it('a corner that cannot be fed at all', () => {
    expect(levelOf({}, 'supply-solved')).toBeUndefined();
    expect(levelOf({ load: { offAmps: 0, runningAmps: 0.1, everythingAmps: 8 } }, 'supply-solved')).toBe('outside');
  });

  it('each half of a doubler’s rail against the rating of its own capacitor', () => {
    const doubled = { ...NINE_VOLT_JOB, topology: 'doubler' as const };
    const peak = solveChain(doubled).worst?.peak.rectifier.rail.maxVolts ?? 0;
    const at = (ratedVolts: number): string | undefined => levelOf({ topology: 'doubler', reservoir: { ...NINE_VOLT_JOB.reservoir, ratedVolts } }, 'capacitor-volts');
    expect(at(peak / 2 / 0.79)).toBe('within');
    expect(at(peak / 2 / 0.81)).toBe('marginal');
  });

  it('names the worst corner of each, and what it rests on', () => {
    for (const finding of chainFindings(NINE_VOLT_JOB, solveChain(NINE_VOLT_JOB))) {
      expect(finding.worstCorner).toMatch(/mains, /);
      expect(finding.restsOn.length).toBeGreaterThan(0);
    }
  });
});
