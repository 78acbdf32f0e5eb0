import type { ChainDiode, ChainInput, LinearStage } from '../../../src/compute/supplies/chain-types.ts';

/** Parts that the chain's tests share; plain figures of data sheets, no catalogue. */
export const SILICON: ChainDiode = {
  name: '1 A silicon',
  saturationAmps: 4.64e-9,
  emission: 1.7529,
  ohms: 0.0355,
  ratedMeanAmps: 0.8,
  ratedReverseVolts: 100,
  basis: 'typical',
};

export const FIVE_VOLT: LinearStage = {
  kind: 'fixed',
  name: '5 V fixed',
  outputVolts: 5,
  outputToleranceRatio: 0.05,
  dropout: [
    [0.2, 2.2],
    [1, 2.5],
  ],
  quiescentAmps: 0.008,
  maxInputVolts: 35,
  ratedAmps: 1,
  junctionToCaseKelvinPerWatt: 5,
  junctionToAirKelvinPerWatt: 65,
  maxJunctionCelsius: 125,
  basis: 'rated',
};

/** A 9 V 6 VA transformer feeding 150 mA of relays at 5 V. */
export const NINE_VOLT_JOB: ChainInput = {
  mains: { nominalVolts: 120, lowVolts: 108, highVolts: 132, hertz: 60 },
  winding: { openCircuitVolts: 10.8, ohms: 2.7, ratedAmps: 0.667, basis: 'rated' },
  topology: 'bridge',
  diode: SILICON,
  reservoir: { farads: 2200e-6, ohms: 0.1, ratedVolts: 25, basis: 'typical' },
  stage: FIVE_VOLT,
  load: { offAmps: 0, runningAmps: 0.1, everythingAmps: 0.15 },
  cooling: { airCelsius: 55 },
};
