import { describe, expect, it } from 'vitest';
import { benchCircuit } from '../../../src/compute/tolerance/bench-circuit.ts';
import { CAUSES, type CauseId } from '../../../src/compute/tolerance/causes.ts';
import { nominalDraw, partSpreads } from '../../../src/compute/tolerance/part-draw.ts';
import { readBench } from '../../../src/compute/tolerance/read-bench.ts';
import { jobOf } from '../../../src/widgets/bench-sheet/job.ts';
import { WORTH_NAMING, powerOffFirst } from '../../../src/widgets/bench-sheet/power-off-first.ts';
import { benchSheet } from '../../../src/widgets/bench-sheet/state.ts';
import { readCase } from '../../../src/widgets/shared/address.ts';
import { benchSheetFace } from '../../../src/widgets/bench-sheet/fields.ts';
import { open } from '../../../src/widgets/shared/evaluate.ts';
import type { InitialCase } from '../../../src/widgets/shared/definition.ts';

const solved = (given: InitialCase = {}) => open(benchSheet, given).view;
type View = ReturnType<typeof solved>;
const linesOf = (view: View) => view.stages.flatMap(({ lines }) => lines);
const lineOf = (view: View, id: string) => linesOf(view).find((line) => line.id === id);

const BLANK = { 'winding-open': '', 'reservoir-mean': '', 'reservoir-ripple': '', 'reservoir-ripple-averaging': '', rail: '' } as const;
const TAKEN = ['winding-open', 'winding-loaded', 'winding-amps', 'reservoir-mean', 'reservoir-ripple', 'rail'] as const;

/** What a true-RMS meter would show of the worked supply with one thing wrong. */
function readingsOf(id: CauseId): InitialCase {
  const job = jobOf(open(benchSheet).values);
  const cause = CAUSES.find((each) => each.id === id);
  if (cause === undefined) throw new Error(`no cause ${id}`);
  const all = readBench(cause.change(benchCircuit(job, nominalDraw(partSpreads(job))), 0.5, job));
  return { ...BLANK, ...Object.fromEntries(TAKEN.map((point) => [point, all[point] ?? ''])) };
}

describe('bench sheet', () => {
  it('opens on a Quillon 20 whose reservoir has dried out, and finds that', () => {
    const view = solved();
    expect(view.level).toBe('outside');
    expect(lineOf(view, 'reservoir-ripple')?.level).toBe('outside');
    expect(lineOf(view, 'rail')?.level).toBe('within');
    expect(view.causes[0]?.words).toContain('dried out');
    expect(view.causes[0]?.confirm).not.toBe('');
  });

  it('does not assess what nobody has read', () => {
    const view = solved(BLANK);
    expect(view.level).toBe('not assessed');
    expect(view.summary).toContain('none taken yet');
    expect(view.causes).toEqual([]);
  });

  it('is within when everything reads as it should, the mains of the day taken in', () => {
    expect(solved(readingsOf('nothing-wrong')).level).toBe('within');
  });

  it.each(['open-diode', 'dried-reservoir', 'low-tap', 'shorted-diode', 'second-ground'] as const)('ranks %s first for its own readings', (id) => {
    const view = solved(readingsOf(id));
    expect(view.causes[0]?.words).toBe(CAUSES.find((cause) => cause.id === id)?.words);
  });

  it.each(['shorted-diode', 'second-ground'] as const)('calls readings that fit %s a hazard of fire: switch off first', (id) => {
    const view = solved(readingsOf(id));
    expect(view.level).toBe('hazard');
    expect(view.findings[0]).toMatchObject({ level: 'hazard', harm: 'fire' });
    expect(view.findings[0]?.todo).toMatch(/^Switch off before anything else/);
  });

  it('takes readings along with the mains of the day: 10 % more is 10 % more', () => {
    const nominal = (given: InitialCase): number => Number.parseFloat(lineOf(solved({ ...BLANK, ...given }), 'winding-open')?.nominal ?? '');
    expect(nominal({ mainsRead: 132 }) / nominal({ mainsRead: 120 })).toBeCloseTo(1.1, 2);
    // 15 V rising 30 %: 19.5 V at nominal mains.
    expect(nominal({ mainsRead: 120 })).toBeCloseTo(19.5, 1);
  });

  it('expects more when nobody has read the mains', () => {
    const width = (given: InitialCase): number => {
      const [low = NaN, high = NaN] = (lineOf(solved({ ...BLANK, ...given }), 'reservoir-mean')?.expected ?? '').split(' to ').map(Number.parseFloat);
      return high - low;
    };
    expect(width({ mainsRead: '' })).toBeGreaterThan(2 * width({}));
  });

  it('lists only what the instruments at hand can read', () => {
    const instruments = (given: InitialCase) => linesOf(solved({ ...BLANK, ...given })).map(({ id }) => id);
    expect(instruments({})).toContain('reservoir-ripple');
    expect(instruments({})).not.toContain('reservoir-valley');
    expect(instruments({ scope: 'yes' })).toContain('reservoir-valley');
    expect(instruments({ meter: 'averaging' })).toContain('reservoir-ripple-averaging');
    expect(instruments({ meter: 'averaging' })).not.toContain('reservoir-ripple');
    expect(instruments({ feed: 'converter', regulator: 'none' })).toEqual(['converter-output', 'rail', 'load-amps']);
    expect(instruments({ scope: 'yes', coilKind: 'power-400', groundMetres: 0.3 })).toEqual(expect.arrayContaining(['coil-release', 'ground-wire']));
  });

  it('knows what each meter makes of ripple: 3.1 to 3.5 times true RMS is peak to peak, averaging shows a few per cent less', () => {
    const step = (name: string) => solved().working.find((each) => each.name === name)?.result.value ?? NaN;
    expect(step('peaks-over-rms')).toBeGreaterThan(3.1);
    expect(step('peaks-over-rms')).toBeLessThan(3.5);
    expect(step('averaging-over-rms')).toBeGreaterThan(0.93);
    expect(step('averaging-over-rms')).toBeLessThan(1);
  });

  it('gives the same sheet every time', () => {
    const first = solved(BLANK);
    solved({ ...BLANK, loadAmps: 0.2 });
    expect(solved(BLANK)).toEqual(first);
  });

  it('answers at once without the causes, and says that they are still to come', () => {
    const { values } = open(benchSheet);
    const quick = benchSheet.quick?.(values);
    expect(quick?.level).toBe('outside');
    expect(quick).toMatchObject({ causes: [], isLooking: true });
    expect(solved().isLooking).toBe(false);
    expect(quick?.summary).toBe(solved().summary);
  });

  it('puts the first power-up before every sheet: limiter, high voltage, and what is no limiter', () => {
    for (const feed of ['winding', 'converter'] as const) {
      const hazards = solved({ ...BLANK, feed }).firstPower;
      expect(hazards.map(({ harm }) => harm)).toEqual(['fire', 'shock']);
      expect(hazards[0]?.instead).toMatch(/current-limited bench supply first/);
      expect(hazards[0]?.why).toMatch(/variable transformer is no limiter, and it does not isolate/);
      expect(hazards[1]?.instead).toMatch(/disconnect it dead.*or check every reservoir’s mark/);
    }
    expect(solved({ ...BLANK, feed: 'converter' }).firstPower[0]?.instead).toMatch(/behind a series lamp it may start, sag, stop and try again/);
  });

  it('asks for power off before any further reading wherever a cause it names may burn, however it ranks', () => {
    const [burns, other] = [CAUSES.find(({ harm }) => harm === 'fire'), CAUSES.find(({ harm }) => harm === undefined)];
    if (burns === undefined || other === undefined) throw new Error('the catalogue of causes has lost a kind');
    const withShare = (share: number): string | undefined =>
      powerOffFirst([
        { cause: other, share: 1 - share, worst: undefined, tellsFromNext: undefined },
        { cause: burns, share, worst: undefined, tellsFromNext: undefined },
      ]).first;
    expect(withShare(WORTH_NAMING)).toMatch(/^Power off, and prove dead, before any further reading/);
    expect(withShare(WORTH_NAMING)).toContain(burns.confirm.replace(/^Switch off at once\. /, ''));
    expect(withShare(WORTH_NAMING * 0.9)).toBeUndefined();
    const noFire = solved({ feed: 'converter', rail: 9.5, 'load-amps': 0.06 });
    expect(noFire.causes.length).toBeGreaterThan(0);
    expect(noFire.powerOff).toBeUndefined();
  });

  it('says beside a reading what the other kind of meter would show', () => {
    const other = lineOf(solved(BLANK), 'reservoir-ripple')?.other ?? '';
    const averaging = lineOf(solved({ ...BLANK, meter: 'averaging' }), 'reservoir-ripple-averaging');
    expect(other).toContain(averaging?.nominal ?? 'nothing');
    // Narrow pulses: an averaging clamp is a fifth low and more.
    const clamp = solved(BLANK).working.find(({ name }) => name === 'clamp-over-rms')?.result.value ?? NaN;
    expect(clamp).toBeGreaterThan(0.5);
    expect(clamp).toBeLessThan(0.85);
  });

  it('hands the same supply on with every reading blank', () => {
    const [first] = solved().handOn;
    expect(first?.what).toContain('every reading blank');
    const text = new URL(first?.path ?? '', 'https://example.org/').searchParams.get('bench-sheet') ?? '';
    const raw = readCase(benchSheetFace, text, open(benchSheet).raw);
    expect(raw?.['reservoir-ripple']).toBe('');
    expect(raw?.['mainsRead']).toBe('');
    expect(raw?.['windingVolts']).toMatch(/^15/);
  });
});
