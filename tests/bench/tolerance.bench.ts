import { expectCauses, rankCauses } from '../../src/compute/tolerance/rank-causes.ts';
import { runTolerance } from '../../src/compute/tolerance/spread-of-readings.ts';
import { JOB } from '../compute/tolerance/jobs.ts';
import type { BenchCase } from './measure.ts';

const expected = expectCauses({ job: JOB });
const measured = { mains: 231, 'reservoir-mean': 17.4, 'reservoir-ripple': 0.41, rail: 12.02 };

export const cases: readonly BenchCase[] = [
  { name: '500 builds, every reading', targetMilliseconds: 1000, run: () => runTolerance({ job: JOB, samples: 500 }) },
  { name: 'a batch of 10, between two frames', targetMilliseconds: 16, run: () => runTolerance({ job: JOB, samples: 10 }) },
  { name: 'what every cause would show, 32 builds each', run: () => expectCauses({ job: JOB }) },
  { name: 'ranking the causes of a set of readings', targetMilliseconds: 16, run: () => rankCauses({ expected, measured }) },
];
