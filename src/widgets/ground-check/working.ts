import type { GroundingSolution } from '../../compute/grounding/grounding-result.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import type { Values } from './fields.ts';
import { loadOhmsOf, mainsVoltsAt } from './job.ts';
import { isWinding } from './points.ts';

const SOLVED = { id: 'solved' } as const;

function windingSteps(values: Values, solution: GroundingSolution): readonly WorkingStep[] {
  const { supply } = solution.job;
  if (supply.kind !== 'winding') return [];
  return [
    workingStep({
      name: 'open-circuit-volts',
      words: 'The winding’s volts at high mains, where a fault is worst.',
      formula: 'E = E0 × Vh / Vn',
      numbers: [
        { symbol: 'E0', value: values.windingVolts, unit: 'V' },
        { symbol: 'Vh', value: mainsVoltsAt(values, 'high'), unit: 'V' },
        { symbol: 'Vn', value: values.mainsVolts, unit: 'V' },
      ],
      result: { symbol: 'E', value: supply.openCircuitVolts, unit: 'V' },
      source: { id: 'arithmetic' },
    }),
  ];
}

/** A half of the winding through one diode and two bonds for half of each cycle, as it would be worked by hand. */
function handStep(solution: GroundingSolution): readonly WorkingStep[] {
  const { supply } = solution.job;
  if (supply.kind !== 'winding' || !supply.hasCentreTap || supply.topology === 'centre-tap') return [];
  const carries = solution.branches.find(({ id, isFault }) => isFault && id === 'diode-negative-to-first');
  const wires = solution.links.every(({ ohms }) => ohms < 0.01);
  if (carries === undefined || !wires || !solution.points.some(({ node }) => node === 'tap') || !solution.points.some(({ node }) => node === 'negative')) return [];
  const drop = 0.6;
  const ohms = supply.ohms / 2 + supply.diode.ohms;
  return [
    workingStep({
      name: 'by-hand',
      words: 'The same by hand, for the peak in that diode: half of the winding’s peak less a diode’s knee (0.6 V, rough), over half of its ohms and the diode’s.',
      formula: 'Ip = (1.414 × E / 2 − Vd) / (R / 2 + r)',
      numbers: [
        { symbol: 'E', value: supply.openCircuitVolts, unit: 'V' },
        { symbol: 'Vd', value: drop, unit: 'V' },
        { symbol: 'R', value: supply.ohms, unit: 'Ω' },
        { symbol: 'r', value: supply.diode.ohms, unit: 'Ω' },
      ],
      result: { symbol: 'Ip', value: (Math.SQRT2 * (supply.openCircuitVolts / 2) - drop) / ohms, unit: 'A' },
      source: { id: 'arithmetic' },
    }),
  ];
}

function fuseSteps(solution: GroundingSolution): readonly WorkingStep[] {
  const { primary, job } = solution;
  if (primary === undefined) return [];
  const reflected = workingStep({
    name: 'at-the-mains',
    words: 'What all that is at the mains side: the winding’s current by the ratio of its volts to the mains.',
    formula: 'Solved, sample by sample; DC does not pass',
    numbers: [],
    result: { symbol: 'Im', value: primary.rmsAmps, unit: 'A' },
    source: SOLVED,
  });
  if (primary.fuse === undefined || job.mainsFuse === undefined) return [reflected];
  return [
    reflected,
    workingStep({
      name: 'mains-fuse',
      words: 'With what the rest of the amp draws, through the mains fuse at most.',
      formula: 'If = Im + Io',
      numbers: [{ symbol: 'Im', value: primary.rmsAmps, unit: 'A' }, { symbol: 'Io', value: job.mainsFuse.otherAmps, unit: 'A' }],
      result: { symbol: 'If', value: primary.fuse.amps, unit: 'A' },
      source: { id: 'arithmetic' },
    }),
  ];
}

/** How the figures come about. */
export function workingOf(values: Values, solution: GroundingSolution): readonly WorkingStep[] {
  const load = loadOhmsOf(values);
  return [
    ...windingSteps(values, solution),
    workingStep({
      name: 'load-ohms',
      words: isWinding(values) ? 'The load as a resistance: the rail solved at nominal mains with one ground, over the load’s current.' : 'The load as a resistance: the converter’s volts over the load’s current.',
      formula: 'Rl = Vr / Il',
      numbers: [{ symbol: 'Vr', value: load.volts, unit: 'V' }, { symbol: 'Il', value: values.loadAmps, unit: 'A' }],
      result: { symbol: 'Rl', value: load.ohms, unit: 'Ω' },
      source: SOLVED,
    }),
    workingStep({
      name: 'circulating',
      words: `What flows between grounds and would not with one alone: the circuit solved twice, as it is connected and with one ground only (${solution.points.length} ${solution.points.length === 1 ? 'point' : 'points'} grounded).`,
      formula: 'Difference of the two waves, RMS',
      numbers: [],
      result: { symbol: 'Ic', value: solution.circulating.rmsAmps, unit: 'A' },
      source: SOLVED,
    }),
    ...handStep(solution),
    ...fuseSteps(solution),
  ];
}
