import type { CoilMargin, ReleaseSpread } from '../../compute/parts/coil-on-rail.ts';
import { coilHenries, type RelayCoil } from '../../compute/parts/relay.ts';
import { workingStep, type WorkingNumber, type WorkingStep } from '../../compute/supplies/working.ts';

const NOTE = { id: 'note-relay-temperature' } as const;

const number = (symbol: string, value: number, unit: WorkingNumber['unit']): WorkingNumber => ({ symbol, value, unit });

interface Case {
  readonly coil: RelayCoil;
  readonly margin: CoilMargin;
  readonly release: ReleaseSpread;
  readonly lowestVolts: number;
  readonly dropVolts: number;
  readonly seriesOhms: number;
  readonly airCelsius: number;
  /** Volts that the coil's current is held to as it dies; undefined where no clamp holds it. */
  readonly clampVolts: number | undefined;
}

function pullInSteps({ coil, margin, lowestVolts, dropVolts, seriesOhms, airCelsius }: Case): readonly WorkingStep[] {
  const behind = seriesOhms > 0;
  return [
    workingStep({
      name: 'coil-temperature', words: 'How hot the coil gets, on at the highest rail: air, and the rise that its watts make.',
      formula: 'Tc = Ta + θ × P',
      numbers: [number('Ta', airCelsius, '°C'), number('θ', coil.kelvinPerWatt, 'K/W'), number('P', margin.coilWatts, 'W')],
      result: number('Tc', margin.coilCelsius, '°C'), source: NOTE,
    }),
    workingStep({
      name: 'hot-pull-in', words: 'The volts that are sure to pull it in, raised as its copper’s resistance is.',
      formula: 'Vp = Vr × p × (234.5 + Tc) / (234.5 + 23)',
      numbers: [number('Vr', coil.ratedVolts, 'V'), number('p', coil.mustOperateRatio, '%'), number('Tc', margin.coilCelsius, '')],
      result: number('Vp', margin.operateVolts, 'V'), source: NOTE,
    }),
    workingStep({
      name: 'lowest-at-coil', words: behind ? 'What it gets at the lowest rail behind its resistor, least resistance of its tolerance.' : 'What it gets at the lowest rail.',
      formula: behind ? 'Vc = (Vl − Vd) × Rh / (Rh + Rs)' : 'Vc = Vl − Vd',
      numbers: [number('Vl', lowestVolts, 'V'), number('Vd', dropVolts, 'V'), number('Rh', margin.hotOhms, 'Ω'), number('Rs', seriesOhms, 'Ω')],
      result: number('Vc', margin.lowestAtCoil, 'V'), source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'coil-margin', words: 'What is to spare.', formula: 'm = Vc − Vp',
      numbers: [number('Vc', margin.lowestAtCoil, 'V'), number('Vp', margin.operateVolts, 'V')],
      result: number('m', margin.marginVolts, 'V'), source: { id: 'arithmetic' },
    }),
  ];
}

function releaseSteps({ coil, margin, release, clampVolts }: Case): readonly WorkingStep[] {
  const henries = coilHenries(coil).operated;
  const leastOhms = coil.ohms * (1 - coil.tolerance);
  if (clampVolts === undefined) return [];
  return [
    workingStep({
      name: 'coil-inductance', words: 'The coil’s inductance with the armature in, from its resistance and the time constant of its kind.',
      formula: 'L = R × τ', numbers: [number('R', coil.ohms, 'Ω'), number('τ', coil.operatedSeconds, 's')], result: number('L', henries, 'H'), source: coil.source,
    }),
    workingStep({
      name: 'release', words: 'The time its current takes to fall to what it is sure to let go at, held to the clamp’s volts: cold coil of least resistance, highest rail.',
      formula: 't = L / Rl × ln((I0 + Vk / Rl) / (Ir + Vk / Rl))',
      numbers: [
        number('L', henries, 'H'), number('Rl', leastOhms, 'Ω'), number('I0', margin.highestAtCoil / leastOhms, 'A'), number('Vk', clampVolts, 'V'),
        number('Ir', (coil.mustReleaseRatio * coil.ratedVolts) / coil.ohms, 'A'),
      ],
      result: number('t', release.longestSeconds, 's'), source: { id: 'solved' },
    }),
  ];
}

/** How the figures come about, for a reader who checks them by hand. */
export const coilWorking = (given: Case): readonly WorkingStep[] => [...pullInSteps(given), ...releaseSteps(given)];
