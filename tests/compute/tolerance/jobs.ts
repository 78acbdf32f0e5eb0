import { heaterModel } from '../../../src/compute/parts/heater.ts';
import { wire } from '../../../src/compute/parts/wire.ts';
import type { BenchJob } from '../../../src/compute/tolerance/bench-job.ts';
import type { ChainInput } from '../../../src/compute/supplies/chain-types.ts';
import { FIVE_VOLT, NINE_VOLT_JOB } from '../supplies/chain-cases.ts';

/** 12 V, regulated, from a 15 V 30 VA secondary: relays, indicators and the heaters of the first valves. */
const CHAIN: ChainInput = {
  ...NINE_VOLT_JOB,
  mains: { nominalVolts: 230, lowVolts: 207, highVolts: 253, hertz: 50 },
  winding: { openCircuitVolts: 17.1, ohms: 1.05, ratedAmps: 2, basis: 'rated' },
  diode: { ...NINE_VOLT_JOB.diode, name: '3 A silicon', saturationAmps: 1.46e-7, emission: 1.9517, ohms: 0.009, ratedMeanAmps: 2.4 },
  reservoir: { farads: 6800e-6, ohms: 0.07, ratedVolts: 35, basis: 'typical' },
  stage: {
    ...FIVE_VOLT, name: '12 V fixed', outputVolts: 12, dropout: [[0, 2.5], [1, 2.5]],
    shortCircuitAmps: { peak: 2.2, atMaxInput: 0.23 },
  },
  load: { offAmps: 0, runningAmps: 0.55, everythingAmps: 0.65 },
  cooling: { airCelsius: 40, heatsinkKelvinPerWatt: 7 },
};

export const JOB: BenchJob = {
  feed: { kind: 'winding', chain: CHAIN },
  mains: { nominalVolts: 230, volts: 230, spreadRatio: 0.01, hertz: 50 },
  load: { amps: 0.55, toleranceRatio: 0.1, heater: heaterModel({ volts: 12.6, amps: 0.3 }) },
  airCelsius: 40,
  coil: { henries: 2.29, ohms: 275, suppression: { kind: 'diode-zener', volts: 12 } },
  groundWire: { row: wire('awg-20'), metres: 0.25 },
};

export const chainOf = (job: BenchJob): ChainInput => {
  if (job.feed.kind !== 'winding') throw new RangeError('this job has no winding');
  return job.feed.chain;
};
