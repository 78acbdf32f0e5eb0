import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { analyseGrounding } from '../../../src/compute/grounding/analyse-grounding.ts';
import type { GroundConnections } from '../../../src/compute/grounding/connections.ts';
import type { GroundingAnalysis } from '../../../src/compute/grounding/grounding-result.ts';
import { isBeyondTouch } from '../../../src/compute/grounding/jack-potentials.ts';
import type { GroundingJob } from '../../../src/compute/grounding/job.ts';
import { CONVERTER, FOOTSWITCH, NEGATIVE, REINFORCED, TAP, TWO_RESISTORS, jobOf, plugIn } from './jobs.ts';

const LOW = { hasCentreTap: false, windingKind: 'low-voltage', openCircuitVolts: 9, ohms: 0.5 } as const;
const levelOf = (analysis: GroundingAnalysis, rule: string): string | undefined => analysis.findings.find((entry) => entry.rule === rule)?.level;
const judge = (connections: Partial<GroundConnections>, supply: Parameters<typeof jobOf>[0]['supply'] = LOW): GroundingAnalysis =>
  analyseGrounding(jobOf({ supply, connections, job: { loadOhms: 50 } }));

describe('a rail on a jack or within reach', () => {
  const reach: readonly Partial<GroundConnections>[] = [{ jacks: [FOOTSWITCH] }, { touchableControls: true }];
  it.each(reach)('is a hazard unless it is bonded once: %o', (exposed) => {
    expect(levelOf(judge({ ...exposed, rail: NEGATIVE }), 'rail-bond')).toBe('within');
    for (const connections of [
      {},
      { rail: { kind: 'through-resistance', pole: 'negative', ohms: 10 } as const },
      { rail: NEGATIVE, bondOhms: 0.2 },
      { rail: NEGATIVE, ampEarth: 'absent' as const },
      { rail: NEGATIVE, winding: { kind: 'one-leg', leg: 'first' } as const },
      { winding: { kind: 'one-leg', leg: 'first' } as const },
    ]) {
      const analysis = judge({ ...exposed, ...connections });
      expect(analysis.findings.find((entry) => entry.rule === 'rail-bond')).toMatchObject({ level: 'hazard', harm: 'shock' });
    }
  });

  it('is no hazard when it is proven separate and floats, by insulation that reaches the working voltages', () => {
    const separate = { jacks: [FOOTSWITCH], highTensionVolts: 400, insulation: { fromMains: REINFORCED, fromHighTension: REINFORCED } } as const;
    expect(levelOf(judge(separate), 'rail-bond')).toBe('within');
    expect(levelOf(judge({ ...separate, highTensionVolts: 1001 }), 'rail-bond')).toBe('hazard');
    expect(levelOf(judge({ ...separate, insulation: { ...separate.insulation, fromHighTension: { kind: 'basic', workingVolts: 1000 } } }), 'rail-bond')).toBe('hazard');
    const relay = { name: 'K1', work: { at: 'output-anode' }, insulation: REINFORCED } as const;
    expect(levelOf(judge({ ...separate, relays: [relay] }), 'rail-bond')).toBe('within');
    expect(levelOf(judge({ ...separate, highTensionVolts: 501, relays: [relay] }), 'rail-bond')).toBe('hazard');
  });

  it('is not assessed on an earth that nobody has tested', () => {
    const analysis = judge({ jacks: [FOOTSWITCH], rail: NEGATIVE, ampEarth: 'not-checked' });
    expect(levelOf(analysis, 'rail-bond')).toBe('not assessed');
    expect(levelOf(analysis, 'amp-earth')).toBe('not assessed');
  });

  it('is not on the jack at all behind an optocoupler or on dry contacts', () => {
    const isolated = { kind: 'isolated' } as const;
    for (const jack of [{ ...FOOTSWITCH, gear: { kind: 'optocoupler' } } as const, { ...FOOTSWITCH, tip: isolated, sleeve: isolated }]) {
      const analysis = judge({ jacks: [jack] });
      expect(levelOf(analysis, 'rail-bond')).toBe('not assessed');
      expect(analysis.jacks).toEqual([]);
    }
  });

  it('is outside when it comes from the heater winding, however bonded, unless proven separate', () => {
    const heater = { windingKind: 'heater', hasCentreTap: false } as const;
    const bonded = { rail: NEGATIVE, jacks: [FOOTSWITCH] };
    expect(levelOf(judge(bonded, heater), 'heater-rail-outside')).toBe('outside');
    expect(levelOf(judge(bonded), 'heater-rail-outside')).toBeUndefined();
    expect(levelOf(judge({ rail: NEGATIVE }, heater), 'heater-rail-outside')).toBeUndefined();
    const separate = { highTensionVolts: 400, insulation: { fromMains: REINFORCED, fromHighTension: REINFORCED } };
    expect(levelOf(judge({ ...bonded, ...separate }, heater), 'heater-rail-outside')).toBeUndefined();
  });

  it('only held by what is plugged in is a hazard still', () => {
    expect(levelOf(judge({ jacks: [plugIn(0.1, 0.1)] }), 'rail-bond')).toBe('hazard');
  });
});

describe('a rail that stays inside', () => {
  it('floating is never within: marginal where insulation is known, not assessed where it is not', () => {
    const known = { highTensionVolts: 400, insulation: { fromMains: REINFORCED, fromHighTension: { kind: 'basic', workingVolts: 400 } } } as const;
    expect(levelOf(judge(known), 'rail-bond')).toBe('marginal');
    expect(levelOf(judge({ ...known, highTensionVolts: 401 }), 'rail-bond')).toBe('not assessed');
    expect(levelOf(judge({}), 'rail-bond')).toBe('not assessed');
  });

  it('with one ground is within', () => expect(levelOf(judge({ rail: NEGATIVE }), 'rail-bond')).toBe('within'));
});

describe('voltage on a jack', () => {
  it('passes the limits of touch at 60 V DC, 30 V RMS, 42.4 V peak, and the sum of shares', () => {
    const at = (dcVolts: number, acVolts: number, peakVolts: number): boolean => isBeyondTouch({ dcVolts, acVolts, peakVolts });
    expect(at(59.9, 0, 59.9)).toBe(false);
    expect(at(60.1, 0, 60.1)).toBe(true);
    expect(at(-60.1, 0, 60.1)).toBe(true);
    expect(at(0, 29.9, 42.2)).toBe(false);
    expect(at(0, 30.1, 42.3)).toBe(true);
    expect(at(0, 10, 42.5)).toBe(true);
    expect(at(31, 15, 52)).toBe(true);
    expect(at(29, 15, 50)).toBe(false);
  });

  it('is a hazard beyond them: a 48 V rail is within, a 68 V rail is not', () => {
    const jacks = [FOOTSWITCH];
    const converter = (outputVolts: number) => judge({ jacks, rail: NEGATIVE, converterCoupling: { kind: 'unknown' } }, { ...CONVERTER, outputVolts, limitAmps: 3 });
    expect(levelOf(converter(48), 'jack-voltage')).toBe('within');
    expect(levelOf(converter(68), 'jack-voltage')).toBe('hazard');
  });

  it('is not assessed where the circuit floats', () => expect(levelOf(judge({ jacks: [FOOTSWITCH] }), 'jack-voltage')).toBe('not assessed'));
});

describe('a live shield', () => {
  it('is a hazard within reach', () => {
    const jack = { ...FOOTSWITCH, tip: { kind: 'rail-negative' }, sleeve: { kind: 'coil', ohms: 360 } } as const;
    expect(levelOf(judge({ rail: NEGATIVE, jacks: [jack] }), 'live-shield')).toBe('hazard');
    expect(levelOf(judge({ rail: NEGATIVE, jacks: [{ ...jack, touchable: false }] }), 'live-shield')).toBe('outside');
    expect(levelOf(judge({ rail: NEGATIVE, jacks: [FOOTSWITCH] }), 'live-shield')).toBeUndefined();
  });

  it('is also a negative that the rectifier keeps below the chassis, or a rail grounded by its positive', () => {
    expect(levelOf(judge({ winding: TAP, jacks: [FOOTSWITCH] }, {}), 'live-shield')).toBe('hazard');
    expect(levelOf(judge({ rail: { kind: 'bonded', pole: 'positive' }, jacks: [FOOTSWITCH] }), 'live-shield')).toBe('hazard');
  });
});

describe('insulation', () => {
  const relay = (insulation: GroundConnections['relays'][number]['insulation'], at: 'output-anode' | 'high-tension' = 'output-anode') => [{ name: 'K1', work: { at }, insulation }];

  it('of a relay is held against twice the high voltage at output anodes', () => {
    const at = (workingVolts: number) => levelOf(judge({ rail: NEGATIVE, highTensionVolts: 400, relays: relay({ kind: 'reinforced', workingVolts }) }), 'coil-to-contact');
    expect(at(800)).toBe('within');
    expect(at(799)).toBe('hazard');
    expect(levelOf(judge({ highTensionVolts: 400, relays: relay({ kind: 'basic', workingVolts: 400 }, 'high-tension') }), 'coil-to-contact')).toBe('within');
    expect(levelOf(judge({ highTensionVolts: 401, relays: relay({ kind: 'basic', workingVolts: 400 }, 'high-tension') }), 'coil-to-contact')).toBe('hazard');
  });

  it('known by its test voltage alone is a hazard with the rail on a jack, and outside without', () => {
    const tested = { highTensionVolts: 400, rail: NEGATIVE, relays: relay({ kind: 'test-voltage-only', testVolts: 1000 }) };
    expect(levelOf(judge({ ...tested, jacks: [FOOTSWITCH] }), 'coil-to-contact')).toBe('hazard');
    expect(levelOf(judge(tested), 'coil-to-contact')).toBe('outside');
  });

  it('unknown is not assessed, and contacts on low voltage need none', () => {
    expect(levelOf(judge({ highTensionVolts: 400, relays: relay({ kind: 'unknown' }) }), 'coil-to-contact')).toBe('not assessed');
    for (const [volts, level] of [[60, 'within'], [61, 'not assessed']] as const) {
      const relays = [{ name: 'K2', work: { at: 'given', volts } as const, insulation: { kind: 'unknown' } as const }];
      expect(levelOf(judge({ highTensionVolts: 400, relays }), 'coil-to-contact')).toBe(level);
    }
    expect(levelOf(judge({}), 'insulation-from-mains')).toBe('not assessed');
    expect(levelOf(judge({}), 'insulation-from-high-tension')).toBe('not assessed');
  });

  it('of the mains and the high voltage is held against them', () => {
    const barrier = (workingVolts: number) => ({ kind: 'reinforced', workingVolts }) as const;
    const at = (mains: number, high: number, jacks: GroundConnections['jacks'] = []) =>
      judge({ rail: NEGATIVE, jacks, highTensionVolts: 400, insulation: { fromMains: barrier(mains), fromHighTension: barrier(high) } });
    expect(levelOf(at(120, 400), 'insulation-from-mains')).toBe('within');
    expect(levelOf(at(119, 400), 'insulation-from-mains')).toBe('outside');
    expect(levelOf(at(119, 400, [FOOTSWITCH]), 'insulation-from-mains')).toBe('hazard');
    expect(levelOf(at(120, 400), 'insulation-from-high-tension')).toBe('within');
    expect(levelOf(at(120, 399, [FOOTSWITCH]), 'insulation-from-high-tension')).toBe('hazard');
  });

  it('that a resistor stands in for is outside: two resistors hold a breakdown until they burn', () => {
    const analysis = judge({ winding: TWO_RESISTORS, highTensionVolts: 400 }, { windingKind: 'heater' });
    expect(levelOf(analysis, 'insulation-single-fault')).toBe('outside');
  });
});

describe('what is refused outright', () => {
  it('a rectifier-valve winding offered as a spare one', () => {
    const analysis = judge({ rail: NEGATIVE, highTensionVolts: 420 }, { ...LOW, windingKind: 'rectifier-valve', openCircuitVolts: 5 });
    expect(analysis.findings[0]).toMatchObject({ rule: 'rectifier-valve-winding', level: 'hazard', harm: 'shock' });
    expect(levelOf(judge({ rail: NEGATIVE }), 'rectifier-valve-winding')).toBeUndefined();
  });

  it('an amp without protective earth, for every supply', () => {
    for (const supply of [LOW, CONVERTER]) expect(levelOf(judge({ rail: NEGATIVE, ampEarth: 'absent' }, supply), 'amp-earth')).toBe('hazard');
  });
});

describe('every finding', () => {
  const jobs = [
    judge({ winding: TAP, rail: NEGATIVE, jacks: [FOOTSWITCH, plugIn(0.1, 0.1)], highTensionVolts: 400, ampEarth: 'not-checked' }, {}),
    judge({ jacks: [FOOTSWITCH], converterCoupling: { kind: 'y-capacitor', farads: 2.2e-9, from: 'line' }, ampEarth: 'absent' }, CONVERTER),
    judge({ winding: { kind: 'elevated', volts: 60, centre: TAP, lowerOhms: 47e3 }, highTensionVolts: 400, touchableControls: true }, { heaterOhms: 3 }),
    judge({ rail: NEGATIVE, highTensionVolts: 420 }, { ...LOW, windingKind: 'rectifier-valve' }),
  ];
  const all = jobs.flatMap((analysis) => analysis.findings);

  it('says what, why and what to do, and a hazard says whom it harms', () => {
    for (const entry of all) {
      for (const text of [entry.what, entry.why, entry.todo]) expect(text).toMatch(/^[\p{Lu}\d].*[.]$/u);
      if (entry.level === 'hazard') expect(entry.harm).toBeDefined();
      expect(entry.restsOn.length).toBeGreaterThan(0);
      expect(`${entry.what} ${entry.why} ${entry.todo}`).not.toMatch(/\bsafe\b|NaN|undefined|Infinity/);
      for (const { value } of entry.numbers) expect(value).toSatisfy(Number.isFinite);
    }
  });

  it('names a source that the course lists', () => {
    const listed = Object.keys(JSON.parse(readFileSync(new URL('../../../content/sources.json', import.meta.url), 'utf8')) as object);
    for (const entry of all) expect(listed).toContain(entry.source.id);
  });

  it('comes most serious first', () => {
    const rank = ['hazard', 'outside', 'not assessed', 'marginal', 'within'];
    for (const { findings } of jobs) {
      const order = findings.map((entry) => rank.indexOf(entry.level));
      expect(order).toEqual([...order].sort((a, b) => a - b));
    }
  });
});

describe('what cannot be is refused with its name', () => {
  const broken: readonly (readonly [string, GroundingJob])[] = [
    ['connections.winding.kind', jobOf({ supply: LOW, connections: { winding: TAP } })],
    ['connections.winding.kind', jobOf({ supply: CONVERTER, connections: { winding: TWO_RESISTORS } })],
    ['supply.topology', jobOf({ supply: { ...LOW, topology: 'centre-tap' } })],
    ['connections.highTensionVolts', jobOf({ connections: { winding: { kind: 'elevated', volts: 40, centre: TAP, lowerOhms: 47e3 } } })],
    ['connections.winding.volts', jobOf({ connections: { highTensionVolts: 100, winding: { kind: 'elevated', volts: 100, centre: TAP, lowerOhms: 47e3 } } })],
    ['loadOhms', jobOf({ job: { loadOhms: 0 } })],
    ['supply.ohms', jobOf({ supply: { ohms: Number.NaN } })],
    ['connections.jacks[0].gear.cableOhms', jobOf({ connections: { jacks: [plugIn(-1, 0)] } })],
    ['connections.relays[0].work.volts', jobOf({ connections: { relays: [{ name: 'K', work: { at: 'given', volts: -1 }, insulation: { kind: 'unknown' } }] } })],
    ['connections.rail.kind', jobOf({ connections: { rail: { kind: 'somehow' } as never } })],
    ['connections.jacks[0].tip.kind', jobOf({ connections: { jacks: [{ ...FOOTSWITCH, tip: { kind: 'wire' } as never }] } })],
    ['connections.ampEarth', jobOf({ connections: { ampEarth: 'perhaps' as never } })],
    ['fuse', jobOf({ job: { mainsFuse: { ratedAmps: 2, otherAmps: 0, standard: 'none such' } } })],
  ];
  it.each(broken)('%s', (quantity, job) => {
    expect(() => analyseGrounding(job)).toThrow(InputError);
    try {
      analyseGrounding(job);
    } catch (error) {
      expect((error as InputError).quantity).toBe(quantity);
    }
  });
});
