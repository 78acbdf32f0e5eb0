import { describe, expect, it } from 'vitest';
import { analyseGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundingAnalysis } from '../../../src/compute/grounding/grounding-result.ts';
import { METER_OHMS } from '../../../src/compute/grounding/limits.ts';
import { CONVERTER, FOOTSWITCH, NEGATIVE, TAP, jobOf } from './jobs.ts';

const finding = (analysis: GroundingAnalysis, rule: string) => analysis.findings.find((entry) => entry.rule === rule);
const within = (actual: number, expected: number, part: number): void => expect(Math.abs(actual / expected - 1)).toBeLessThan(part);

describe('a converter’s capacitor from the mains', () => {
  /** Published table, µA: capacitance in nF against volts and hertz. */
  const TABLE: readonly (readonly [number, number, number, number])[] = [
    [1, 120, 60, 45],
    [1, 230, 50, 72],
    [1, 253, 50, 79],
    [1, 264, 60, 100],
    [2.2, 120, 60, 100],
    [2.2, 230, 50, 159],
    [2.2, 253, 50, 175],
    [2.2, 264, 60, 219],
    [4.7, 120, 60, 213],
    [4.7, 230, 50, 340],
    [4.7, 253, 50, 374],
    [4.7, 264, 60, 468],
  ];

  it.each(TABLE)('%s nF at %s V %s Hz sends %s µA to the chassis by way of the bond', (nanofarads, mainsVolts, hertz, microamps) => {
    const analysis = analyseGrounding(
      jobOf({
        supply: CONVERTER,
        connections: { rail: NEGATIVE, converterCoupling: { kind: 'y-capacitor', farads: nanofarads * 1e-9, from: 'line' } },
        job: { mainsVolts, hertz, loadOhms: 48 },
      }),
    );
    const bond = analysis.branches.find((branch) => branch.id === 'rail-reference');
    // The table is rounded to a microampere; the solution may err by half a per cent.
    expect(Math.abs((bond?.rmsAmps ?? 0) * 1e6 - microamps)).toBeLessThan(0.6 + 0.005 * microamps);
    expect(finding(analysis, 'converter-leakage')?.level).toBe('within');
  });

  const floating = (options: { readonly from: 'line' | 'midpoint'; readonly farads?: number }): GroundingAnalysis =>
    analyseGrounding(
      jobOf({
        supply: CONVERTER,
        connections: { jacks: [FOOTSWITCH], converterCoupling: { kind: 'y-capacitor', farads: options.farads ?? 2.2e-9, from: options.from } },
        job: { mainsVolts: 230, hertz: 50, loadOhms: 48 },
      }),
    );

  it('lets a floating rail stand at the mains, or at half of it, for a meter', () => {
    const impedance = 1 / (2 * Math.PI * 50 * 2.2e-9);
    for (const [from, volts] of [
      ['line', 230],
      ['midpoint', 115],
    ] as const) {
      const expected = (volts * METER_OHMS) / Math.hypot(METER_OHMS, impedance);
      within(floating({ from }).leakage?.acVolts ?? 0, expected, 0.005);
    }
  });

  it('passes through a hand what the network of two resistors and a capacitor lets through', () => {
    const omega = 2 * Math.PI * 50;
    const [skin, capacitance, body, farads] = [1500, 0.22e-6, 500, 4.7e-9];
    const turns = 1 + (omega * capacitance * skin) ** 2;
    const real = body + skin / turns;
    const imaginary = -(omega * capacitance * skin * skin) / turns - 1 / (omega * farads);
    within(floating({ from: 'line', farads }).leakage?.hand?.acAmps ?? 0, 230 / Math.hypot(real, imaginary), 0.005);
  });

  it('is a hazard on a jack and none where it is bonded; unread, it is not assessed', () => {
    expect(finding(floating({ from: 'midpoint' }), 'converter-leakage')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(finding(floating({ from: 'midpoint' }), 'rail-bond')).toMatchObject({ level: 'hazard', harm: 'shock' });
    for (const converterCoupling of [undefined, { kind: 'unknown' }] as const) {
      const analysis = analyseGrounding(jobOf({ supply: CONVERTER, connections: { rail: NEGATIVE, ...(converterCoupling ? { converterCoupling } : {}) } }));
      expect(finding(analysis, 'converter-leakage')?.level).toBe('not assessed');
    }
  });

  it('is reckoned back from a rated leakage current', () => {
    const analysis = analyseGrounding(
      jobOf({ supply: CONVERTER, connections: { rail: NEGATIVE, converterCoupling: { kind: 'rated-leakage', amps: 0.3e-3 } }, job: { mainsVolts: 120, hertz: 60 } }),
    );
    within(analysis.branches.find((branch) => branch.id === 'rail-reference')?.rmsAmps ?? 0, (0.3e-3 * 120 * 60) / (230 * 50), 0.005);
  });

  it('reaches the chassis and the player of an amp without earth', () => {
    const analysis = analyseGrounding(
      jobOf({
        supply: CONVERTER,
        connections: { rail: NEGATIVE, ampEarth: 'absent', converterCoupling: { kind: 'y-capacitor', farads: 2.2e-9, from: 'line' } },
        job: { mainsVolts: 230, hertz: 50 },
      }),
    );
    expect(finding(analysis, 'amp-earth')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(finding(analysis, 'converter-leakage')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(analysis.leakage?.acVolts).toBeGreaterThan(200);
  });
});

describe('one breakdown from 400 V behind 1 kΩ', () => {
  const relays = [{ name: 'K1', work: { at: 'high-tension' }, insulation: { kind: 'unknown' } }] as const;
  const broken = (connections: Parameters<typeof jobOf>[0]['connections']): GroundingAnalysis =>
    analyseGrounding(jobOf({ connections: { highTensionVolts: 400, relays, ...connections } }));

  it('lifts a floating rail to the high voltage, and a hand takes what the two resistances leave', () => {
    const [relay, winding] = broken({}).singleFaults;
    expect(relay?.kind).toBe('coil-to-contact');
    expect(winding?.kind).toBe('winding-to-winding');
    for (const fault of [relay, winding]) {
      within(fault?.touch.dcVolts ?? 0, 400, 0.03);
      // 1 kΩ of breakdown and 2 kΩ of hand; the rail's own few volts may add or take away.
      within(fault?.touch.hand?.dcAmps ?? 0, 400 / 3000, 0.03);
    }
    expect(broken({}).findings.filter((entry) => entry.rule === 'insulation-single-fault').map((entry) => entry.level)).not.toContain('within');
    expect(broken({ jacks: [FOOTSWITCH] }).findings.filter((entry) => entry.rule === 'insulation-single-fault' && entry.level === 'hazard')).toHaveLength(2);
  });

  it('is held by a bond, which carries the current', () => {
    const analysis = broken({ rail: NEGATIVE, jacks: [FOOTSWITCH] });
    for (const fault of analysis.singleFaults) {
      expect(Math.abs(fault.touch.dcVolts)).toBeLessThan(15);
      within(fault.faultAmps, 0.395, 0.02);
      expect(fault.touch.hand).toBeUndefined();
    }
    expect(analysis.findings.filter((entry) => entry.rule === 'insulation-single-fault').every((entry) => entry.level === 'marginal' && /clamp/.test(entry.todo))).toBe(true);
  });

  it('is not held by a resistance that somebody takes for a bond', () => {
    const at = (ohms: number) => broken({ rail: { kind: 'through-resistance', pole: 'negative', ohms } }).singleFaults[0]?.touch.dcVolts ?? 0;
    expect(at(10)).toBeLessThan(30);
    expect(at(1000)).toBeGreaterThan(150);
  });

  it('is named and not solved where the high voltage is unknown', () => {
    const analysis = analyseGrounding(jobOf({ connections: { relays } }));
    expect(analysis.singleFaults).toEqual([]);
    expect(finding(analysis, 'insulation-single-fault')?.level).toBe('not assessed');
    expect(finding(analysis, 'coil-to-contact')?.level).toBe('not assessed');
  });
});

describe('heaters lifted by a divider', () => {
  const elevated = (volts: number, more: Parameters<typeof jobOf>[0]['connections'] = {}): GroundingAnalysis =>
    analyseGrounding(
      jobOf({
        supply: { heaterOhms: 3.15 },
        connections: { highTensionVolts: 400, winding: { kind: 'elevated', volts, centre: TAP, lowerOhms: 47e3, bypassFarads: 47e-6 }, ...more },
      }),
    );

  it('lift the rail with them: 60 V and an 8 V rail pass the limit, 40 V do not', () => {
    expect(finding(elevated(60), 'elevated-rail')?.level).toBe('outside');
    expect(finding(elevated(40), 'elevated-rail')?.level).toBe('marginal');
    const { positiveVolts, negativeVolts } = elevated(60).railAboveChassis;
    within((positiveVolts + negativeVolts) / 2, 60, 0.01);
  });

  it('never on a jack', () => {
    for (const volts of [5, 40, 60]) expect(finding(elevated(volts, { jacks: [FOOTSWITCH] }), 'elevated-rail')).toMatchObject({ level: 'hazard', harm: 'shock' });
  });

  it('go to the high voltage when the lower resistor opens', () => {
    const fault = elevated(40, { jacks: [FOOTSWITCH] }).singleFaults.find((entry) => entry.kind === 'divider-open');
    const upperOhms = (47e3 * 360) / 40;
    within(fault?.touch.dcVolts ?? 0, (400 * METER_OHMS) / (METER_OHMS + upperOhms), 0.02);
    within(fault?.touch.hand?.dcAmps ?? 0, 400 / (upperOhms + 2000), 0.03);
    expect(finding(elevated(40, { jacks: [FOOTSWITCH] }), 'elevation-single-fault')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(finding(elevated(40), 'elevation-single-fault')?.level).toBe('marginal');
  });
});
