import { TAN_DELTA_SOURCE, type capacitorLife, type ElectrolyticRow } from '../../compute/parts/capacitor.ts';
import type { ChainSolution, SolvedCorner } from '../../compute/supplies/chain-types.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import type { Values } from './fields.ts';

/** Steps of the chain that this question needs; the rest is told by the rectifier's own page. */
const OF_CHAIN = ['winding-at-the-corner', 'winding-peak', 'ripple-by-rule', 'ripple-solved', 'valley'];

/** How the figures come about. */
export function reservoirWorking(given: {
  readonly values: Values;
  readonly chain: ChainSolution;
  readonly row: ElectrolyticRow;
  readonly newOhms: number;
  readonly peak: SolvedCorner;
  readonly peakVolts: number;
  readonly ripple: SolvedCorner;
  readonly allowedAmps: number;
  readonly life: ReturnType<typeof capacitorLife>;
}): readonly WorkingStep[] {
  const { values, chain, row, newOhms, peak, peakVolts, ripple, allowedAmps, life } = given;
  const amps = ripple.rectifier.reservoir.rmsAmps;
  const ohms = newOhms * ripple.corner.esrRatio;
  return [
    ...chain.working.filter(({ name }) => OF_CHAIN.includes(name)),
    workingStep({
      name: 'highest-volts', words: `The most across it: ${peak.corner.words}.`, formula: 'Highest point of the solved waveform', numbers: [],
      result: { symbol: 'Vh', value: peakVolts, unit: 'V' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'ripple-current', words: `The most ripple current through it, ${ripple.corner.words}, against ${allowedAmps.toPrecision(2)} A allowed in this air.`, formula: 'RMS of the solved current',
      numbers: [], result: { symbol: 'Ir', value: amps, unit: 'A' }, source: { id: 'solved' },
    }),
    workingStep({
      name: 'series-resistance', words: 'Its series resistance when new, at the limit of its sheet; twice that when old.', formula: 'ESR = tan δ / (2π × 120 Hz × C)',
      numbers: [{ symbol: 'C', value: values.farads, unit: 'F' }], result: { symbol: 'ESR', value: newOhms, unit: 'Ω' }, source: TAN_DELTA_SOURCE,
    }),
    workingStep({
      name: 'series-heat', words: 'What the ripple turns into heat in it.', formula: 'P = Ir × Ir × E',
      numbers: [{ symbol: 'Ir', value: amps, unit: 'A' }, { symbol: 'E', value: ohms, unit: 'Ω' }], result: { symbol: 'P', value: amps * amps * ohms, unit: 'W' }, source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'life', words: 'Hours to the end of its life: double for every 10 K that its core is cooler than rated.', formula: 'h = h0 × 2^((T0 + 5 − Tc) / 10)',
      numbers: [{ symbol: 'h0', value: row.lifeHours, unit: '' }, { symbol: 'T0', value: row.maxCelsius, unit: '' }, { symbol: 'Tc', value: life.coreCelsius, unit: '' }],
      result: { symbol: 'h', value: life.hours, unit: '' }, source: { id: 'note-capacitor-life' },
    }),
  ];
}
