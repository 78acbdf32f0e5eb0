import type { TimedLoad } from '../../../src/compute/in-time/timed-load.ts';
import type { TimedRegulator, TimedSupply } from '../../../src/compute/in-time/timed-supply.ts';

/** A 12 V 20 VA transformer of 15 % at nominal mains, with 1N400x diodes. */
export const BARE: TimedSupply = {
  hertz: 50,
  winding: { openCircuitVolts: 13.8, ohms: 1.08 },
  topology: 'bridge',
  diode: { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 },
  reservoir: { farads: 4700e-6, ohms: 0.03 },
};

export const TWELVE_VOLT: TimedRegulator = {
  setVolts: 12, dropoutVolts: 1.8, quiescentAmps: 0.005, outputFarads: 100e-6, limit: { peak: 2.2, atMaxInput: 0.23, maxInputVolts: 35 },
};

export const COIL = { name: 'relay', count: 1, ohms: 275, henries: 1.15, operateAmps: 0.0327 } as const;
export const RELAYS: TimedLoad = { railVolts: 12, amps: 0.02, coils: [COIL] };
