/** The Quillon 20's rail on the bench: what its test points show over many builds, and in what spread. */
import { benchJob, runTolerance, supplyFromTransformer, type BenchJob, type ReadingSpread, type TestPointId, type Unit } from '../../compute/index.ts';
import { given, type Shop } from '../shop.ts';
import { figure } from './worked.ts';

/** Mains on the day the shop took its readings, and the air over the bench. Supposed. */
export const BENCH_DAY = { volts: 121, celsius: 25 } as const;
/** Builds drawn for a spread: many enough for its middle nine tenths. */
const BUILDS = 400;

/** The rail as the shop built it, at the mains of the day; its running load unless `loadAmps` says otherwise. */
export const quillonBench = ({ quillon20 }: Shop, loadAmps?: number): BenchJob =>
  benchJob({
    supply: supplyFromTransformer(quillon20),
    mains: { nominalVolts: quillon20.mains.nominalVolts, hertz: quillon20.mains.hertz, measuredVolts: BENCH_DAY.volts },
    airCelsius: BENCH_DAY.celsius,
    ...(loadAmps === undefined ? {} : { loadAmps }),
  });

/** The spread of each reading of a job, by test point; throws for a point that the job has not. */
export function spreads(job: BenchJob): (id: TestPointId) => ReadingSpread {
  const { readings } = runTolerance({ job, samples: BUILDS });
  return (id) => given(readings.find(({ point }) => point.id === id), `a reading at ${id}`);
}

/** From the fifth to the ninety-fifth of a hundred builds, as a reader reads it. */
export const range = ({ p5, p95 }: ReadingSpread, unit: Unit, digits = 3): string => `${figure(p5, unit, digits, 'keep').text} to ${figure(p95, unit, digits, 'keep').text}`;
