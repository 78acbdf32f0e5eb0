import { benchCircuit } from '../../compute/tolerance/bench-circuit.ts';
import type { BenchJob } from '../../compute/tolerance/bench-job.ts';
import { benchWaves } from '../../compute/tolerance/bench-waves.ts';
import { meterReading } from '../../compute/tolerance/meter-reading.ts';
import { nominalDraw, partSpreads } from '../../compute/tolerance/part-draw.ts';
import type { ToleranceRun } from '../../compute/tolerance/spread-of-readings.ts';
import type { TestPointId } from '../../compute/tolerance/test-points.ts';
import { showQuantity } from '../shared/units.ts';

/** The same place, with the one meter and with the other. */
const PAIRS: readonly { readonly trueRms: TestPointId; readonly averaging: TestPointId }[] = [
  { trueRms: 'winding-loaded', averaging: 'winding-loaded-averaging' },
  { trueRms: 'reservoir-ripple', averaging: 'reservoir-ripple-averaging' },
];

export interface MetersApart {
  /** Ripple peak to peak over its RMS, and what an averaging meter shows of that RMS. */
  readonly peaks: number;
  readonly averaging: number;
  /** What an averaging clamp shows of the winding's RMS amps. */
  readonly clamp: number;
  /** By test point, what the meter that is not on the bench would show there. */
  readonly other: Readonly<Partial<Record<TestPointId, string>>>;
}

/** What the two kinds of AC meter make of this supply's waves; undefined where a converter leaves none to read. */
export function metersApart(job: BenchJob, run: ToleranceRun): MetersApart | undefined {
  const { source, ...circuit } = benchCircuit(job, nominalDraw(partSpreads(job)));
  if (source.kind !== 'winding') return undefined;
  const nominal = (id: TestPointId): number => run.readings.find(({ point }) => point.id === id)?.nominal ?? NaN;
  const { windingAmps } = benchWaves({ ...circuit, source }, source);
  const shown = (meter: 'true-rms-ac' | 'averaging-ac'): number => meterReading({ values: windingAmps, meter }).value;
  const averagingAmps = shown('averaging-ac');
  const rms = nominal('reservoir-ripple');
  const pairs = PAIRS.flatMap(({ trueRms, averaging }) => [
    [trueRms, `an averaging meter would show ${showQuantity(nominal(averaging), 'V')}`],
    [averaging, `a true-RMS meter would show ${showQuantity(nominal(trueRms), 'V')}`],
  ]);
  return {
    peaks: nominal('reservoir-ripple-peaks') / rms,
    averaging: nominal('reservoir-ripple-averaging') / rms,
    clamp: averagingAmps / shown('true-rms-ac'),
    other: Object.fromEntries([...pairs, ['winding-amps', `an averaging clamp would show ${showQuantity(averagingAmps, 'A')}, and mislead`]]),
  };
}

/** The meters in words. */
export function metersInWords(apart: MetersApart | undefined): string {
  if (apart === undefined || !Number.isFinite(apart.peaks)) return 'A converter’s output is DC with little on it: any meter reads it alike, and its residue is for a scope.';
  return `On this ripple a true-RMS meter’s AC range times ${apart.peaks.toFixed(2)} is peak to peak; an averaging meter shows ${apart.averaging.toFixed(3)} of what a true-RMS one does. On the winding’s current it shows ${apart.clamp.toFixed(2)} of it: do not judge a winding by one.`;
}
