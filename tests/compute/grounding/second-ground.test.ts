import { describe, expect, it } from 'vitest';
import { analyseGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundingAnalysis } from '../../../src/compute/grounding/grounding-result.ts';
import { CONVERTER, FOOTSWITCH, NEGATIVE, SCHOTTKY, SILICON, TAP, TWO_RESISTORS, jobOf, plugIn } from './jobs.ts';

const branch = (analysis: GroundingAnalysis, id: string) => {
  const found = analysis.branches.find((entry) => entry.id === id);
  if (!found) throw new Error(`no branch ${id}`);
  return found;
};
const finding = (analysis: GroundingAnalysis, rule: string) => analysis.findings.find((entry) => entry.rule === rule);

/** Relative difference, for the tolerances that the tests state. */
const within = (actual: number, expected: number, part: number): void => expect(Math.abs(actual / expected - 1)).toBeLessThan(part);

describe('a bridge on a heater winding of 3.25-0-3.25 V, 45 mΩ per half', () => {
  const both = analyseGrounding(jobOf({ connections: { winding: TAP, rail: NEGATIVE, bondOhms: 1e-5 }, job: { mainsFuse: { ratedAmps: 2, otherAmps: 1, standard: 'iec-sheet-5' } } }));

  it('with tap and negative grounded drives over ten amps through each half (published figures within 3 %)', () => {
    for (const half of ['half-1', 'half-2']) {
      within(branch(both, half).rmsAmps, 15.7, 0.03);
      within(branch(both, half).peakAmps, 33, 0.03);
    }
    within(branch(both, 'rail-reference').rmsAmps, 22, 0.03);
    within(branch(both, 'winding-reference').rmsAmps, branch(both, 'rail-reference').rmsAmps, 1e-6);
  });

  it('agrees with a single loop worked by hand: half of the winding, one diode, nothing else', () => {
    // Peak of the loop: e = n·VT·ln(i/Is) + i·(Rw + Rd), found by bisection; the two bonds are 20 µΩ.
    const peakVolts = 3.25 * Math.SQRT2;
    let low = 0;
    let high = 100;
    for (let step = 0; step < 60; step += 1) {
      const amps = (low + high) / 2;
      const drop = SCHOTTKY.emission * 0.025852 * Math.log1p(amps / SCHOTTKY.saturationAmps) + amps * (0.045 + SCHOTTKY.ohms + 2e-5);
      if (drop > peakVolts) high = amps;
      else low = amps;
    }
    within(branch(both, 'diode-negative-to-first').peakAmps, low, 0.01);
  });

  it('leaves a few volts on the rail and less than an amp at a 120 V primary', () => {
    within(both.rail.meanVolts, 3.9, 0.03);
    expect(both.rail.aloneMeanVolts).toBeGreaterThan(7);
    within(both.primary?.rmsAmps ?? 0, 0.6, 0.03);
    expect(both.primary?.fuse).not.toHaveProperty('opensWithinSeconds');
    expect(finding(both, 'mains-fuse-sees')).toMatchObject({ level: 'hazard', harm: 'fire' });
  });

  it('says which connection is one too many, what burns, and that it burns', () => {
    expect(finding(both, 'second-ground')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(both.firstToOverheat?.branchId).toMatch(/^diode-negative-to-/);
    expect(both.stresses.find((stress) => stress.branchId === 'half-1')?.secondsToLimit).toBeLessThan(300);
    expect(both.options[0]?.remove.map((link) => link.id)).toEqual(['winding-reference']);
    expect(both.options.every((option) => option.clears)).toBe(true);
  });

  it('lights the path of the fault, and only the fault', () => {
    const lit = both.branches.filter((entry) => entry.isFault).map((entry) => entry.id);
    for (const id of ['half-1', 'half-2', 'diode-negative-to-first', 'diode-negative-to-second', 'winding-reference', 'rail-reference']) expect(lit).toContain(id);
    const alone = analyseGrounding(jobOf({ connections: { rail: NEGATIVE } }));
    expect(alone.branches.filter((entry) => entry.isFault)).toEqual([]);
  });

  it('with the rail floating has nothing of it', () => {
    const floating = analyseGrounding(jobOf({ connections: { winding: TAP } }));
    expect(branch(floating, 'half-1').rmsAmps).toBeLessThan(1.2);
    expect(branch(floating, 'winding-reference').rmsAmps).toBeLessThan(1e-6);
    expect(floating.rail.meanVolts).toBeGreaterThan(7);
    expect(finding(floating, 'second-ground')).toBeUndefined();
    within(branch(both, 'half-1').alone.rmsAmps, branch(floating, 'half-1').rmsAmps, 1e-3);
  });

  it('floating, gets it back when an outside sleeve is plugged in, limited by cable and earth', () => {
    const currents = [0.02, 0.1, 0.5, 2, 10].map((earthOhms) => {
      const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, jacks: [plugIn(0.1, earthOhms)] } }));
      expect(finding(analysis, 'outside-sleeve-grounds')).toMatchObject({ level: 'hazard' });
      const amps = branch(analysis, 'jack-1-outside').rmsAmps;
      // At most what half of the winding's peak drives through the path alone.
      expect(amps).toBeLessThan((3.25 * Math.SQRT2) / (0.1 + earthOhms));
      return amps;
    });
    for (let index = 1; index < currents.length; index += 1) expect(currents[index]).toBeLessThan(currents[index - 1] ?? 0);
    expect(currents[0]).toBeGreaterThan(10);
  });

  it('unplugged, or met by an isolated contact, carries nothing outside', () => {
    for (const kind of ['none', 'isolated-contact', 'optocoupler'] as const) {
      const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, jacks: [{ ...FOOTSWITCH, gear: { kind } }] } }));
      expect(analysis.points).toHaveLength(1);
      expect(finding(analysis, 'outside-sleeve-grounds')).toBeUndefined();
    }
  });
});

describe('the same winding at 6.3 V, held by two resistors of 100 Ω', () => {
  const supply = { openCircuitVolts: 6.3, hasCentreTap: false, diode: SILICON, heaterOhms: 4.2, ohms: 0.01 } as const;
  const job = { loadOhms: 1000 };
  const both = analyseGrounding(jobOf({ supply, connections: { winding: TWO_RESISTORS, rail: NEGATIVE }, job }));

  it('is no short circuit: each resistor goes from 0.10 W to about 0.17 W', () => {
    const resistor = branch(both, 'centre-resistor-1');
    within(resistor.alone.watts, 6.3 ** 2 / 4 / 100, 0.02);
    // By hand: one end rests at −0.7 V for half of the cycle and follows the whole winding less 0.7 V for the other.
    const peakVolts = 6.3 * Math.SQRT2;
    const meanSquare = (0.49 + peakVolts ** 2 / 2 - (2 * 0.7 * peakVolts * 2) / Math.PI + 0.49) / 2;
    within(resistor.watts, meanSquare / 100, 0.03);
    // Published as about 0.17 W, without a diode: silicon lies a little below it, a Schottky diode a little above.
    const schottky = analyseGrounding(jobOf({ supply: { ...supply, diode: SCHOTTKY }, connections: { winding: TWO_RESISTORS, rail: NEGATIVE }, job }));
    expect(resistor.watts).toBeGreaterThan(0.155);
    expect(resistor.watts).toBeLessThan(0.17);
    expect(branch(schottky, 'centre-resistor-1').watts).toBeGreaterThan(0.17);
    expect(branch(schottky, 'centre-resistor-1').watts).toBeLessThan(0.185);
    expect(both.circulating.rmsAmps).toBeLessThan(0.1);
    expect(both.firstToOverheat).toBeUndefined();
  });

  it('throws the heaters off balance: each end swings from −0.7 V to +8.2 V', () => {
    for (const leg of ['first', 'second'] as const) {
      expect(both.heater?.[leg].minVolts).toBeGreaterThan(-0.9);
      expect(both.heater?.[leg].minVolts).toBeLessThan(-0.6);
      within(both.heater?.[leg].maxVolts ?? 0, 8.2, 0.03);
    }
    expect(finding(both, 'heater-balance')).toMatchObject({ level: 'marginal', harm: 'noise' });
    expect(finding(both, 'second-ground')).toMatchObject({ level: 'outside', harm: 'noise' });
  });

  it('balances with the rail floating, at ±4.45 V', () => {
    const floating = analyseGrounding(jobOf({ supply, connections: { winding: TWO_RESISTORS }, job }));
    within(floating.heater?.first.maxVolts ?? 0, 4.45, 0.01);
    within(-(floating.heater?.second.minVolts ?? 0), 4.45, 0.01);
    expect(floating.heater?.humPeakVolts).toBeLessThan(1e-3);
    expect(finding(floating, 'heater-balance')?.level).toBe('within');
  });
});

describe('a bridge grounded on one end of the winding', () => {
  const supply = { hasCentreTap: false, diode: SILICON } as const;
  const leg = { kind: 'one-leg', leg: 'first' } as const;

  it('and on its negative burns', () => {
    const both = analyseGrounding(jobOf({ supply, connections: { winding: leg, rail: NEGATIVE } }));
    expect(branch(both, 'winding').rmsAmps).toBeGreaterThan(10);
    expect(finding(both, 'second-ground')).toMatchObject({ level: 'hazard', harm: 'fire' });
    // One diode shorts it for one half of the cycle, so what flows in the winding is one-sided.
    expect(Math.abs(branch(both, 'winding').meanAmps)).toBeGreaterThan(5);
  });

  it('or on its negative alone does not', () => {
    for (const connections of [{ winding: leg }, { rail: NEGATIVE }]) {
      const one = analyseGrounding(jobOf({ supply, connections }));
      expect(branch(one, 'winding').rmsAmps).toBeLessThan(1.5);
      expect(finding(one, 'second-ground')).toBeUndefined();
    }
  });
});

describe('what is one point of the circuit is one ground', () => {
  it('tap and negative of a centre-tap rectifier', () => {
    const analysis = analyseGrounding(jobOf({ supply: { topology: 'centre-tap' }, connections: { winding: TAP, rail: NEGATIVE } }));
    expect(analysis.points).toHaveLength(1);
    expect(finding(analysis, 'second-ground')).toBeUndefined();
    expect(finding(analysis, 'earth-loop')?.level).toBe('marginal');
    within(analysis.rail.meanVolts, 3.94, 0.05);
  });

  it('second end and negative of a half-wave rectifier, while its first end burns', () => {
    const at = (leg: 'first' | 'second') =>
      analyseGrounding(jobOf({ supply: { topology: 'half-wave', hasCentreTap: false }, connections: { winding: { kind: 'one-leg', leg }, rail: NEGATIVE } }));
    expect(finding(at('second'), 'second-ground')).toBeUndefined();
    expect(finding(at('first'), 'second-ground')).toMatchObject({ level: 'hazard', harm: 'fire' });
  });

  it('two wires to the negative are a loop that hums and nothing more', () => {
    const analysis = analyseGrounding(jobOf({ connections: { rail: NEGATIVE, jacks: [{ ...FOOTSWITCH, mounting: 'chassis' }] } }));
    expect(finding(analysis, 'earth-loop')).toMatchObject({ level: 'marginal', harm: 'noise' });
    expect(finding(analysis, 'second-ground')).toBeUndefined();
  });

  it('and a difference between two earths drives through it what Ohm says', () => {
    const gear = { kind: 'sleeve-to-earth', cableOhms: 0.2, earthOhms: 0.3, earthDifferenceVolts: 0.5 } as const;
    const analysis = analyseGrounding(jobOf({ connections: { rail: NEGATIVE, jacks: [{ ...FOOTSWITCH, gear }] } }));
    within(branch(analysis, 'jack-1-outside').rmsAmps, 0.5 / 0.501, 1e-3);
  });
});

describe('every approach and rectifier', () => {
  it('a doubler whose middle is on one end: the tap and the negative fight', () => {
    const both = analyseGrounding(jobOf({ supply: { topology: 'doubler' }, connections: { winding: TAP, rail: NEGATIVE } }));
    expect(branch(both, 'half-1').rmsAmps).toBeGreaterThan(10);
    expect(finding(both, 'second-ground')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(both.options.every((option) => option.clears)).toBe(true);
  });

  it('a converter with both poles on the chassis delivers its limit into it', () => {
    const jack = { ...FOOTSWITCH, mounting: 'chassis', sleeve: { kind: 'rail-positive' } } as const;
    const short = analyseGrounding(jobOf({ supply: CONVERTER, connections: { rail: NEGATIVE, jacks: [jack] } }));
    within(branch(short, 'rail-reference').rmsAmps, CONVERTER.limitAmps, 0.02);
    expect(short.rail.meanVolts).toBeLessThan(0.1);
    expect(short.options[0]?.remove.map((link) => link.id)).toEqual(['jack-1-bush']);
    expect(finding(short, 'live-shield')?.level).toBe('hazard');
  });

  it('a bush on the chassis is a second ground as good as a wire', () => {
    const jack = { ...FOOTSWITCH, mounting: 'chassis' } as const;
    const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, jacks: [jack] } }));
    expect(branch(analysis, 'jack-1-bush').rmsAmps).toBeGreaterThan(10);
    expect(analysis.options[0]?.remove.map((link) => link.id)).toEqual(['winding-reference']);
  });

  it('a resistance in the rail’s ground limits the fault as Ohm says it must', () => {
    const currents = [0.1, 1, 10, 100, 1000].map((ohms) => {
      const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, rail: { kind: 'through-resistance', pole: 'negative', ohms } } }));
      const amps = branch(analysis, 'rail-reference').rmsAmps;
      expect(amps).toBeLessThan((3.25 * Math.SQRT2) / ohms);
      return amps;
    });
    for (let index = 1; index < currents.length; index += 1) expect(currents[index]).toBeLessThan(currents[index - 1] ?? 0);
  });

  it('keeps the sum of currents at the chassis at nothing', () => {
    const analysis = analyseGrounding(
      jobOf({ connections: { winding: TWO_RESISTORS, rail: NEGATIVE, jacks: [plugIn(0.1, 0.2), { ...FOOTSWITCH, name: 'Loop', mounting: 'chassis' }] } }),
    );
    const links = analysis.branches.filter((entry) => entry.kind === 'ground-link');
    expect(links).toHaveLength(4);
    expect(Math.abs(links.reduce((sum, entry) => sum + entry.meanAmps, 0))).toBeLessThan(1e-6);
  });
});

describe('which ground should stay', () => {
  const vouched = { kind: 'reinforced', workingVolts: 1000 } as const;
  const insulation = { fromMains: vouched, fromHighTension: vouched };

  it('the rail’s negative, as long as it reaches a jack or insulation is unknown', () => {
    for (const connections of [{ jacks: [FOOTSWITCH], insulation, highTensionVolts: 400 }, {}]) {
      const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, rail: NEGATIVE, ...connections } }));
      expect(analysis.options[0]?.keep.node).toBe('negative');
    }
  });

  it('the heaters’ tap, for a rail that stays inside behind known insulation', () => {
    const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, rail: NEGATIVE, insulation, highTensionVolts: 400 } }));
    expect(analysis.options[0]?.remove.map((link) => link.id)).toEqual(['rail-reference']);
  });

  it('asks for a bond inside when only the outside lead would be left', () => {
    const analysis = analyseGrounding(jobOf({ connections: { winding: TAP, jacks: [plugIn(0.1, 0.1)] } }));
    expect(analysis.options[0]?.then).toMatch(/bond the rail's negative/);
    expect(analysis.options.filter((option) => option.isSmallest)).toHaveLength(2);
  });
});
