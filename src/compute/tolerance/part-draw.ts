import type { Basis } from '../findings.ts';
import { CAPACITANCE_TOLERANCE, END_OF_LIFE } from '../parts/capacitor.ts';
import { MAINS_CREST } from '../parts/mains.ts';
import { DIODE_SPREAD_VOLTS } from '../supplies/corners.ts';
import type { BenchJob } from './bench-job.ts';
import type { RandomSource } from './random.ts';

/** Where each part of one built supply stands: ratios of what the plan says, unless the name says otherwise. */
export interface PartDraw {
  readonly mains: number;
  readonly crestFactor: number;
  readonly windingVolts: number;
  readonly windingOhms: number;
  readonly farads: number;
  /** Over the upper limit of a new part. */
  readonly esr: number;
  readonly diodeShiftVolts: number;
  readonly output: number;
  /** Of a converter's own output. */
  readonly converter: number;
  /** Over the dropout to plan with. */
  readonly dropout: number;
  /** Over the largest own current. */
  readonly quiescent: number;
  readonly load: number;
  readonly airKelvin: number;
  readonly thermal: number;
}

/** How a part varies from one build to the next. */
export interface PartSpread {
  readonly part: keyof PartDraw;
  readonly words: string;
  readonly min: number;
  readonly nominal: number;
  readonly max: number;
  /** Evenly between its ends, or likeliest in the middle. */
  readonly shape: 'even' | 'middle';
  readonly basis: Basis;
}

/**
 * Spreads of a job's parts. Capacitance tolerance, regulator and load tolerances are the parts' own; the rest is assumed
 * from practice and said so. Age (0 new, 1 at its end of life) takes a fifth of the capacitance and doubles the ESR.
 */
export function partSpreads(job: BenchJob): readonly PartSpread[] {
  const { mains, feed, load, reservoirAge = 0 } = job;
  const worn = 1 - (1 - END_OF_LIFE.capacitanceFactor) * reservoirAge;
  const tired = 1 + (END_OF_LIFE.esrFactor - 1) * reservoirAge;
  const stage = feed.kind === 'winding' ? feed.chain.stage : feed.stage;
  const output = stage.kind === 'none' ? 0 : stage.outputToleranceRatio;
  const own = feed.kind === 'converter' ? feed.outputToleranceRatio : 0;
  const row = (part: keyof PartDraw, words: string, min: number, nominal: number, max: number, shape: PartSpread['shape'], basis: Basis): PartSpread => ({ part, words, min, nominal, max, shape, basis });
  return [
    row('mains', 'mains during the readings', 1 - mains.spreadRatio, 1, 1 + mains.spreadRatio, 'even', 'measured'),
    row('crestFactor', 'flatness of the mains wave', MAINS_CREST.low, MAINS_CREST.nominal, MAINS_CREST.high, 'even', 'typical'),
    row('windingVolts', 'winding’s open-circuit volts', 0.97, 1, 1.03, 'middle', 'assumed'),
    row('windingOhms', 'winding’s resistance, warm', 0.85, 1, 1.15, 'middle', 'assumed'),
    row('farads', 'capacitance', (1 - CAPACITANCE_TOLERANCE) * worn, worn, (1 + CAPACITANCE_TOLERANCE) * worn, 'even', 'rated'),
    row('esr', 'ESR over a new part’s limit', tired / 3, tired / 2, (2 * tired) / 3, 'middle', 'typical'),
    row('diodeShiftVolts', 'forward drop of the diodes', -DIODE_SPREAD_VOLTS, 0, DIODE_SPREAD_VOLTS, 'middle', 'typical'),
    row('output', 'regulator’s output', 1 - output, 1, 1 + output, 'middle', 'rated'),
    row('converter', 'converter’s output', 1 - own, 1, 1 + own, 'middle', 'rated'),
    row('dropout', 'regulator’s dropout over the planned one', 0.65, 0.8, 1, 'even', 'typical'),
    row('quiescent', 'regulator’s own current over its largest', 0.5, 0.65, 1, 'even', 'typical'),
    row('load', 'load current', 1 - load.toleranceRatio, 1, 1 + load.toleranceRatio, 'middle', 'rated'),
    row('airKelvin', 'air in the chassis', -5, 0, 5, 'middle', 'assumed'),
    row('thermal', 'thermal resistances', 0.8, 1, 1.2, 'middle', 'typical'),
  ];
}

/** Every part where the plan has it. */
export function nominalDraw(spreads: readonly PartSpread[]): PartDraw {
  return fromSpreads(spreads, ({ nominal }) => nominal);
}

/** One build: every part drawn for itself. The order of drawing is that of the spreads, so that a seed means one thing. */
export function drawParts(spreads: readonly PartSpread[], random: RandomSource): PartDraw {
  return fromSpreads(spreads, ({ min, max, shape }) => (shape === 'even' ? random.between(min, max) : random.around(min, max)));
}

function fromSpreads(spreads: readonly PartSpread[], of: (spread: PartSpread) => number): PartDraw {
  return Object.fromEntries(spreads.map((spread) => [spread.part, of(spread)])) as unknown as PartDraw;
}
