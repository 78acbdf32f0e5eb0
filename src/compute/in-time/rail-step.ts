import { InputError, requireNumber } from '../errors.ts';
import { GROUND } from '../network/elements.ts';
import type { Element } from '../network/elements.ts';
import { solveTransient } from '../network/solve-transient.ts';
import { settleRail } from './settled-rail.ts';
import type { SettledRail } from './settled-rail.ts';
import { checkTimedLoad, loadSiemens } from './timed-load.ts';
import type { TimedCoil, TimedLoad } from './timed-load.ts';
import { RESERVOIR_NODE, checkTimedSupply, railNode, rectifierElements, regulatorElements } from './timed-supply.ts';
import type { TimedSupply } from './timed-supply.ts';

/** What is switched on: more of what follows the rail like a resistor, or a coil whose current has to build up. */
export type SteppedLoad = { readonly kind: 'amps'; readonly amps: number } | { readonly kind: 'coil'; readonly coil: TimedCoil };

/** An indicator that was lit before the step. */
export interface WatchedLed {
  readonly forwardVolts: number;
  readonly ohms: number;
}

/** A rail (or its reservoir) before and after, once cycles repeat again. */
export interface SteppedNode {
  readonly beforeVolts: number;
  readonly afterVolts: number;
  readonly beforeValleyVolts: number;
  readonly afterValleyVolts: number;
  /** Mean before less mean after. */
  readonly stepVolts: number;
  /** How much further below its mean the valley lies. */
  readonly valleyDeepeningVolts: number;
  /** Lowest at any moment after the step. */
  readonly lowestVolts: number;
}

export interface RailStep {
  /** Time zero is the moment of switching. */
  readonly waveform: { readonly seconds: Float64Array; readonly reservoirVolts: Float64Array; readonly railVolts: Float64Array };
  readonly reservoir: SteppedNode;
  readonly rail: SteppedNode;
  /** Load current before and after, and the source resistance that the reservoir's step shows: step over current. */
  readonly beforeAmps: number;
  readonly afterAmps: number;
  readonly sourceOhms: number;
  /** Lowest current in a coil that was already on, over its running current before. Left out without one. */
  readonly firstCoilHeldRatio?: number;
  readonly led?: { readonly beforeAmps: number; readonly afterAmps: number; readonly lowestAmps: number; readonly afterRatio: number };
  readonly held: { readonly before: SettledRail['held']; readonly after: SettledRail['held'] };
}

const DEFAULT_CYCLES = 12;
const LEAD_CYCLES = 2;
const FIRST_COIL = 'first coil';

function steppedElement(step: SteppedLoad, load: TimedLoad): Element {
  const between = ['switched', GROUND] as const;
  if (step.kind === 'coil') {
    const { coil } = step;
    return { kind: 'inductor', name: 'stepped', between, henries: coil.henries / coil.count, ohms: coil.ohms / coil.count };
  }
  if (step.kind !== 'amps') throw new InputError('step', step, { expected: 'amps or a coil' });
  requireNumber('step.amps', step.amps, { min: 1e-5, max: 50 });
  return { kind: 'resistor', name: 'stepped', between, ohms: load.railVolts / step.amps };
}

const stepSiemens = (step: SteppedLoad, load: TimedLoad): number =>
  step.kind === 'coil' ? step.coil.count / step.coil.ohms : step.amps / load.railVolts;

function node(before: { mean: number; min: number }, after: { mean: number; min: number }, lowestVolts: number): SteppedNode {
  return {
    beforeVolts: before.mean,
    afterVolts: after.mean,
    beforeValleyVolts: before.min,
    afterValleyVolts: after.min,
    stepVolts: before.mean - after.mean,
    valleyDeepeningVolts: after.mean - after.min - (before.mean - before.min),
    lowestVolts: Math.min(lowestVolts, after.min),
  };
}

/**
 * A second relay or an indicator switched onto a running rail: what the rail, the relay and the indicator that were
 * already on it see. The circuit is solved in time from its repeating cycle before, through the switching (at the
 * crossing of the mains, after two cycles), over `seconds` (default 12 cycles) after it; the levels before and after are those of
 * the two repeating cycles. On an unregulated rail the step is the current times the source's resistance, plus a deeper
 * valley; behind a regulator that has headroom it is the regulator's own few millivolts.
 *
 * `load` is on before (hot heaters, coils with their current); with a coil in it the first is watched, and keeps the
 * inductance given. A source's resistance that comes out is the rectifier's, several times the winding's.
 * Throws `InputError` for values out of range, `SolveError` as the solvers.
 */
export function stepRail(options: {
  readonly supply: TimedSupply;
  readonly load: TimedLoad;
  readonly step: SteppedLoad;
  readonly led?: WatchedLed;
  readonly seconds?: number;
  readonly maxPoints?: number;
}): RailStep {
  const { supply, load, step, led, maxPoints = 1500 } = options;
  checkTimedSupply(supply);
  checkTimedLoad(load);
  const { hertz } = supply;
  const after = requireNumber('seconds', options.seconds ?? DEFAULT_CYCLES / hertz, { min: 2 / hertz, max: 100 / hertz });
  const lead = LEAD_CYCLES / hertz;
  const rail = railNode(supply);
  const siemens = loadSiemens(load);
  const then = settleRail({ supply, siemens });
  const now = settleRail({ supply, siemens: siemens + stepSiemens(step, load) });

  const [firstCoil] = load.coils ?? [];
  const watched = firstCoil === undefined ? 0 : firstCoil.count / firstCoil.ohms;
  const startReservoir = then.rectifier.waveform.railVolts[0] as number;
  const startRail = then.railVolts[0] as number;
  const elements: Element[] = [
    ...rectifierElements(supply, startReservoir),
    ...regulatorElements(supply, startRail),
    // Heaters and further coils are hot and settled: resistors. The watched coil keeps its inductance.
    { kind: 'resistor', name: 'steady load', between: [rail, GROUND], ohms: 1 / Math.max(siemens - watched, 1e-9) },
    ...(firstCoil === undefined ? [] : [{
      kind: 'inductor' as const, name: FIRST_COIL, between: [rail, GROUND] as const, henries: firstCoil.henries / firstCoil.count, ohms: firstCoil.ohms / firstCoil.count, initialAmps: then.meanVolts * watched,
    }]),
    { kind: 'switch', name: 'switch', between: [rail, 'switched'], closed: false, closesAt: lead },
    steppedElement(step, load),
  ];
  const solution = solveTransient({ elements, seconds: lead + after, hertz, maxPoints });
  const { seconds, volts, amps } = solution;
  const railVolts = volts[rail] as Float64Array;
  const reservoirVolts = volts[RESERVOIR_NODE] as Float64Array;
  const from = seconds.findIndex((t) => t >= lead);
  const lowestOf = (values: Float64Array): number => values.subarray(from).reduce((least, value) => Math.min(least, value), Infinity);

  const reservoirAt = ({ rectifier }: SettledRail) => ({ mean: rectifier.rail.meanVolts, min: rectifier.rail.minVolts });
  const railAt = ({ meanVolts, minVolts }: SettledRail) => ({ mean: meanVolts, min: minVolts });
  const reservoir = node(reservoirAt(then), reservoirAt(now), lowestOf(reservoirVolts));
  const held = amps[FIRST_COIL];
  const ledAmps = (at: number): number => (led === undefined ? 0 : Math.max(0, at - led.forwardVolts) / requireNumber('led.ohms', led.ohms, { min: 0.1, max: 1e7 }));
  const railNodeSeen = node(railAt(then), railAt(now), lowestOf(railVolts));
  return {
    waveform: { seconds: seconds.map((t) => t - lead), reservoirVolts, railVolts },
    reservoir,
    rail: railNodeSeen,
    beforeAmps: then.loadAmps,
    afterAmps: now.loadAmps,
    sourceOhms: now.loadAmps === then.loadAmps ? 0 : reservoir.stepVolts / (now.loadAmps - then.loadAmps),
    ...(held === undefined ? {} : { firstCoilHeldRatio: lowestOf(held) / (then.meanVolts * watched) }),
    ...(led === undefined ? {} : {
      led: {
        beforeAmps: ledAmps(then.meanVolts),
        afterAmps: ledAmps(now.meanVolts),
        lowestAmps: ledAmps(railNodeSeen.lowestVolts),
        afterRatio: ledAmps(then.meanVolts) > 0 ? ledAmps(now.meanVolts) / ledAmps(then.meanVolts) : 0,
      },
    }),
    held: { before: then.held, after: now.held },
  };
}
