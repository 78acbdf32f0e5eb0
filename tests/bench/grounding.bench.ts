import { analyseGrounding, solveGrounding } from '../../src/compute/grounding/analyse-grounding.ts';
import type { GroundingJob } from '../../src/compute/grounding/job.ts';
import { CONVERTER, FOOTSWITCH, NEGATIVE, TAP, TWO_RESISTORS, jobOf, plugIn } from '../compute/grounding/jobs.ts';
import type { BenchCase } from './measure.ts';

const relays = [{ name: 'K1', work: { at: 'output-anode' }, insulation: { kind: 'unknown' } }] as const;
const common = { highTensionVolts: 400, relays, jacks: [FOOTSWITCH] } as const;
const elevated = { kind: 'elevated', volts: 40, centre: TAP, lowerOhms: 47e3, bypassFarads: 47e-6 } as const;
const coupling = { converterCoupling: { kind: 'y-capacitor', farads: 2.2e-9, from: 'line' } } as const;

const JOBS: readonly (readonly [string, GroundingJob])[] = [
  ['tap and negative grounded', jobOf({ supply: { heaterOhms: 3.15 }, connections: { ...common, winding: TAP, rail: NEGATIVE } })],
  ['two resistors, negative, an outside sleeve', jobOf({ connections: { ...common, winding: TWO_RESISTORS, rail: NEGATIVE, jacks: [plugIn(0.1, 0.2)] } })],
  ['negative grounded alone', jobOf({ connections: { ...common, rail: NEGATIVE } })],
  ['elevated heaters, rail floating', jobOf({ supply: { heaterOhms: 3.15 }, connections: { ...common, winding: elevated } })],
  ['converter, floating', jobOf({ supply: CONVERTER, connections: { ...common, ...coupling } })],
];

/** Switching a ground on or off solves; the whole judgement follows when the reader lets go. */
export const cases: readonly BenchCase[] = JOBS.flatMap(([name, job]) => [
  { name: `solve: ${name}`, targetMilliseconds: 16, run: () => solveGrounding(job) },
  { name: `analyse: ${name}`, targetMilliseconds: 50, run: () => analyseGrounding(job) },
]);
