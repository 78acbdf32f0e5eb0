import type { GroundConnections, Jack } from '../../../src/compute/grounding/connections.ts';
import { UNCONNECTED } from '../../../src/compute/grounding/connections.ts';
import type { ConverterSupply, GroundingJob, WindingSupply } from '../../../src/compute/grounding/job.ts';

/** A 1 A Schottky diode as typical curves have it, with ratings of its sheet. */
export const SCHOTTKY = {
  saturationAmps: 1.88e-6,
  emission: 0.9937,
  ohms: 0.084,
  ratedMeanAmps: 0.8,
  surgeAmps: 25,
  kelvinPerWatt: 75,
  maxJunctionCelsius: 125,
} as const;

/** A 1 A silicon diode, likewise. */
export const SILICON = {
  saturationAmps: 4.64e-9,
  emission: 1.7529,
  ohms: 0.0355,
  ratedMeanAmps: 0.8,
  surgeAmps: 30,
  kelvinPerWatt: 50,
  maxJunctionCelsius: 150,
} as const;

export const TAP = { kind: 'centre-tap' } as const;

export const TWO_RESISTORS = {
  kind: 'artificial-centre',
  resistors: [
    { ohms: 100, ratedWatts: 0.5 },
    { ohms: 100, ratedWatts: 0.5 },
  ],
} as const;

export const NEGATIVE = { kind: 'bonded', pole: 'negative' } as const;

/** A heater winding of 3.25-0-3.25 V, 45 mΩ in each half, with a bridge on it, of which nobody has read the rating. */
export const UNRATED_WINDING: WindingSupply = {
  kind: 'winding',
  windingKind: 'heater',
  topology: 'bridge',
  openCircuitVolts: 6.5,
  ohms: 0.09,
  hasCentreTap: true,
  diode: SCHOTTKY,
  reservoir: { farads: 4700e-6, ohms: 0.05 },
};

/** The same, rated. */
export const HEATER_WINDING: WindingSupply = { ...UNRATED_WINDING, ratedAmps: 5 };

export const CONVERTER: ConverterSupply = { kind: 'converter', outputVolts: 12, limitAmps: 0.5 };

export const REINFORCED = { kind: 'reinforced', workingVolts: 1000 } as const;

/** A jack for a footswitch that shorts a coil to the rail's negative. */
export const FOOTSWITCH: Jack = {
  name: 'Footswitch',
  mounting: 'insulated',
  tip: { kind: 'coil', ohms: 360 },
  sleeve: { kind: 'rail-negative' },
  touchable: true,
  gear: { kind: 'none' },
};

export const plugIn = (cableOhms: number, earthOhms: number): Jack => ({ ...FOOTSWITCH, gear: { kind: 'sleeve-to-earth', cableOhms, earthOhms } });

/** A 120 V 60 Hz amp with a verified earth; the rest as each test needs it. */
export function jobOf(options: {
  readonly supply?: Partial<WindingSupply> | ConverterSupply;
  readonly connections?: Partial<GroundConnections>;
  readonly job?: Partial<GroundingJob>;
}): GroundingJob {
  const { supply = {}, connections = {}, job = {} } = options;
  return {
    hertz: 60,
    mainsVolts: 120,
    loadOhms: 15,
    supply: supply.kind === 'converter' ? supply : { ...HEATER_WINDING, ...supply },
    connections: { ...UNCONNECTED, ampEarth: 'verified', ...connections },
    ...job,
  };
}
