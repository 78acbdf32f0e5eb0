import { describe, expect, it } from 'vitest';
import bench from '../../../content/shop/bench.json';
import plan from '../../../content/shop/plans/quillon-20.json';
import { headroom } from '../../../src/widgets/headroom/state.ts';
import { rectify } from '../../../src/widgets/rectify/state.ts';
import { caseIn, readCase } from '../../../src/widgets/shared/address.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';

const opened = (initial: Parameters<typeof open>[1]) => open(rectify, initial);
const figures = (initial: Parameters<typeof open>[1]) => opened(initial).view.corners.map(({ value }) => value);

/** 9 V, 6 VA, 20 % regulation, 50 Hz, 2200 µF, four 1 A silicon diodes, 0.3 A. */
const SMALL = { windingVolts: 9, windingAmps: 6 / 9, regulation: 0.2, farads: 2200e-6, ratedVolts: 25, loadAmps: 0.3, mainsVolts: 230, mainsHertz: '50', mainsSpread: 0 };

describe('the rectifier', () => {
  it('opens on the shop’s job', () => {
    const { topology, diode, reservoir, transformer } = bench.quillon20.parts;
    const { values } = opened({});
    expect(values).toMatchObject({
      windingVolts: transformer.secondaryVolts,
      regulation: transformer.regulationRatio,
      topology,
      diode,
      farads: reservoir.farads,
      ratedVolts: reservoir.ratedVolts,
      mainsVolts: plan.mains.nominalVolts,
      mainsHertz: String(plan.mains.hertz),
      airCelsius: plan.amp.airCelsius,
    });
    expect(values.windingAmps).toBeCloseTo(transformer.voltAmps / transformer.secondaryVolts, 3);
    expect(values.mainsVolts * (1 - values.mainsSpread)).toBeCloseTo(plan.mains.lowVolts, 9);
    expect(opened({}).view.level).toBe('within');
  });

  it('gives the published solution of a small bridge: 10.50 V mean, 0.51 A RMS in the winding', () => {
    const { view } = opened(SMALL);
    // The published case has a pure sine and no series resistance in the reservoir; ours has a crest of 1.4 at nominal
    // mains, which can cost 1 % of the peak (0.15 V), and the resistance of a new part.
    expect(Math.abs((view.corners[1]?.value ?? 0) - 10.5)).toBeLessThan(0.15);
    const rms = view.findings.find(({ rule }) => rule === 'winding-current')?.numbers[0]?.value ?? 0;
    expect(Math.abs(rms / 0.507 - 1)).toBeLessThan(0.05);
  });

  it('sits at the peak, less the diodes, at high mains without load', () => {
    const peak = 15 * 1.3 * 1.1 * Math.SQRT2;
    const [, , unloaded = 0] = figures({});
    expect(unloaded).toBeLessThan(peak);
    expect(unloaded).toBeGreaterThan(peak - 1);
  });

  it('digs a deeper valley with more load, less reservoir, slower mains', () => {
    const [usual = 0] = figures({});
    expect(figures({ loadAmps: 0.15 })[0]).toBeLessThan(usual);
    expect(figures({ farads: 220e-6 })[0]).toBeLessThan(usual);
    expect(figures({ mainsHertz: '50' })[0]).toBeLessThan(usual);
  });

  it('takes a resistance to draw its current at nominal mains, and less at low', () => {
    const steady = opened({}).view;
    const ohms = opened({ draws: 'as-ohms' }).view;
    expect(Math.abs((ohms.corners[1]?.value ?? 0) - (steady.corners[1]?.value ?? 0))).toBeLessThan(0.05);
    expect(ohms.corners[0]?.value).toBeGreaterThan(steady.corners[0]?.value ?? 0);
  });

  it('is outside when the valley falls below what is asked for, and not assessed there when nothing is', () => {
    expect(opened({ floorVolts: 18 }).view).toMatchObject({ level: 'outside', corners: [{ level: 'outside' }, {}, {}] });
    expect(opened({ floorVolts: '' }).view.corners[0]?.level).toBe('not assessed');
  });

  it('is a hazard when the winding is overloaded, and says what to do instead', () => {
    const { view } = opened({ windingAmps: 0.1 });
    expect(view.level).toBe('hazard');
    const finding = view.findings.find(({ level }) => level === 'hazard');
    expect(finding).toMatchObject({ rule: 'winding-current', harm: 'fire' });
    expect(finding?.todo).not.toBe('');
  });

  it('shows both halves of a centre tap on the dial, and one direction for a single diode', () => {
    const centre = opened({ topology: 'centre-tap' }).view.cycle.windingAmps;
    expect(Math.min(...centre)).toBeLessThan(-0.05);
    expect(Math.max(...centre)).toBeCloseTo(-Math.min(...centre), 2);
    const single = opened({ topology: 'half-wave', windingAmps: 1 }).view.cycle.windingAmps;
    expect(Math.min(...single)).toBeGreaterThan(-1e-3);
  });

  it('hands the whole supply on to the regulator', () => {
    const from = opened({ farads: 1000e-6, mainsHertz: '50' });
    const query = from.view.handOn[0]?.path.split('?')[1] ?? '';
    const raw = readCase(headroom, caseIn(query, 'headroom') ?? '');
    const next = evaluate(headroom, raw ?? {}, open(headroom));
    expect(next.stale).toBe(false);
    expect(next.values).toMatchObject({ farads: 1000e-6, mainsHertz: '50', windingVolts: 15 });
  });
});
