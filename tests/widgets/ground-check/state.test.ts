import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fields } from '../../../src/widgets/ground-check/fields.ts';
import { FIELD_OF, type GroundField } from '../../../src/widgets/ground-check/points.ts';
import { groundCheck, type GroundCheckView } from '../../../src/widgets/ground-check/state.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';

const opened = open(groundCheck);
type Case = Readonly<Record<string, string>>;

function solved(changes: Case): GroundCheckView {
  const after = evaluate(groundCheck, { ...opened.raw, ...changes }, opened);
  expect(after.problem ?? Object.entries(after.errors).flat().join(': ')).toBe('');
  return after.view;
}

const SWITCHES = Object.values(FIELD_OF);
const only = (...closed: readonly GroundField[]): Case => Object.fromEntries(SWITCHES.map((name) => [name, closed.includes(name) ? 'chassis' : 'open']));
const between = (view: GroundCheckView): number => view.corners[0]?.value ?? Number.NaN;
const point = (view: GroundCheckView, name: string) => view.points.find((each) => each.point === name);

describe('the worked case: a tapped heater winding, grounded at its tap, with a bonded rail on it', () => {
  const { view } = opened;

  it('drives tens of amps between the grounds and still reads a rail', () => {
    expect(view.level).toBe('hazard');
    expect(view.summary).toMatch(/grounded at the winding’s centre tap and the rail’s negative, 4\d\sA RMS .* rail still reads 4\.\d+\sV/);
    expect(view.findings.find(({ rule }) => rule === 'second-ground')).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(view.corners.map(({ level }) => level)).toEqual(['hazard', 'outside', undefined, undefined]);
  });

  it('marks the way of the fault: both halves and the two diodes from the negative', () => {
    expect(Object.keys(view.sheet.faults).sort()).toEqual(['diode-negative-to-first', 'diode-negative-to-second', 'half-1', 'half-2']);
    expect(point(view, 'centre')).toMatchObject({ isClosed: true, isFault: true });
    expect(point(view, 'first')).toMatchObject({ isClosed: false, isFault: false });
    expect(view.description).toMatch(/On the chassis: the winding’s centre tap with 4\d\sA, part of the fault/);
  });

  it('is worse on strong mains', () => {
    const amps = view.atMains.map(({ betweenAmps }) => betweenAmps);
    expect(amps).toHaveLength(3);
    expect([...amps].sort((a, b) => a - b)).toEqual(amps);
    expect(amps[2]).toBe(between(view));
  });

  it('names the one too many, and taking it off the chassis cures it', () => {
    expect(view.cures).toEqual([{ label: 'Take off the chassis: winding’s centre tap', then: '', open: ['groundCentre'] }]);
    const cured = solved({ groundCentre: 'open' });
    expect(between(cured)).toBe(0);
    expect(cured.sheet.faults).toEqual({});
    expect(cured.cures).toEqual([]);
    expect(cured.summary).toMatch(/^one ground, the rail’s negative: no supply current has a second way/);
  });
});

describe('figures worked by hand', () => {
  it('both ends of the winding on the chassis: its volts at high mains over its ohms and two bonds', () => {
    // 6.6 V × 1.1 over 70 mΩ and 2 × 1 mΩ; the heaters and the rectifier take nothing beside that.
    expect(Math.abs(between(solved(only('groundFirst', 'groundSecond'))) / (7.26 / 0.072) - 1)).toBeLessThan(0.01);
  });

  it('both poles of a converter on the chassis: what it gives into a short', () => {
    const view = solved({ ...only('groundNegative', 'groundPositive'), source: 'converter', limitAmps: '0.5 A' });
    expect(Math.abs(between(view) / 0.5 - 1)).toBeLessThan(0.001);
    expect(Object.keys(view.sheet.faults)).toEqual(['converter-output']);
  });

  it('one end on the chassis, and through 1 kΩ the other, which is a single diode’s negative: the winding across 1 kΩ', () => {
    // 7.26 V over 1 kΩ, less what the charging pulses take off the winding's peaks.
    const view = solved({ ...only('groundFirst', 'groundNegative'), topology: 'half-wave', bond: 'resistor', bondOhms: '1 k', heaterAmps: '' });
    expect(between(view)).toBeGreaterThan(7.0e-3);
    expect(between(view)).toBeLessThan(7.26e-3);
  });
});

describe('what stands or falls with the connections', () => {
  it('nothing grounded is not in order either', () => {
    const view = solved(only());
    expect(view.level).toBe('not assessed');
    expect(view.summary).toMatch(/nothing is grounded.*floats/);
    expect(view.corners[0]?.level).toBe('not assessed');
  });

  it('two resistors across the winding only hum: far from a short, and outside', () => {
    const view = solved({ centre: 'resistors' });
    const second = view.findings.find(({ rule }) => rule === 'second-ground');
    expect(second).toMatchObject({ level: 'outside', harm: 'noise' });
    expect(between(view)).toBeLessThan(0.2);
  });

  it('a rail on elevated heaters is a hazard on a jack', () => {
    const view = solved({ ...only('groundCentre'), lift: 'lifted', jack: 'negative' });
    expect(view.findings.find(({ rule }) => rule === 'elevated-rail')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(view.contacts.every(({ dcVolts }) => dcVolts > 40)).toBe(true);
  });

  it('the sleeve of what is plugged in is a second ground, by way of its cable', () => {
    const view = solved({ ...only('groundCentre', 'groundGear'), jack: 'negative' });
    expect(point(view, 'gear')).toMatchObject({ isClosed: true, isFault: true });
    expect(view.findings.some(({ rule }) => rule === 'outside-sleeve-grounds')).toBe(true);
  });

  it('a single diode’s negative is the winding’s second end, and a pair’s the tap: one switch each', () => {
    expect(solved({ topology: 'half-wave' }).points.map((each) => each.point)).not.toContain('second');
    const pair = solved({ topology: 'centre-tap' });
    expect(pair.points.map((each) => each.point)).not.toContain('centre');
    expect(between(pair)).toBe(0);
  });

  it('asks for the B+ that a divider hangs on', () => {
    const after = evaluate(groundCheck, { ...opened.raw, lift: 'lifted', highVolts: '' }, opened);
    expect(after.errors['highVolts']).toMatch(/B\+/);
    expect(after.view).toBe(opened.view);
  });
});

describe('any switches whatever', () => {
  const anyCase = fc.record({
    ...Object.fromEntries(SWITCHES.map((name) => [name, fc.constantFrom('open', 'chassis')])),
    source: fc.constantFrom(...fields.source.options.map(({ value }) => value)),
    topology: fc.constantFrom(...fields.topology.options.map(({ value }) => value)),
    centre: fc.constantFrom('tap', 'resistors'),
    lift: fc.constantFrom(...fields.lift.options.map(({ value }) => value)),
    jack: fc.constantFrom(...fields.jack.options.map(({ value }) => value)),
  });

  it('are cured by each cure offered, and the quick answer gives the same currents and never calls it within', () => {
    const { quick } = groundCheck;
    if (quick === undefined) throw new Error('there is no quick answer');
    fc.assert(
      fc.property(anyCase, (changes) => {
        const view = solved(changes as Case);
        const first = evaluate({ ...groundCheck, solve: quick }, { ...opened.raw, ...(changes as Case) }, opened).view;
        expect(first.corners.map(({ value }) => value)).toEqual(view.corners.map(({ value }) => value));
        expect(first.points).toEqual(view.points);
        expect(['within', 'marginal']).not.toContain(first.level);
        if (view.findings.some(({ rule }) => rule === 'second-ground')) expect(view.cures.length).toBeGreaterThan(0);
        for (const cure of view.cures) {
          const cured = solved({ ...(changes as Case), ...Object.fromEntries(cure.open.map((name) => [name, 'open'])) });
          expect(between(cured)).toBe(0);
          expect(cured.cures).toEqual([]);
        }
      }),
      { seed: 20_260_402, numRuns: 40 },
    );
  }, 120_000);
});
