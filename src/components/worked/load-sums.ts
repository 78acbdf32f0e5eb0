import { copperRatio } from '../../compute/index.ts';
import { COIL_REFERENCE_CELSIUS } from '../../compute/parts/relay.ts';
import type { Shop } from '../shop.ts';

type Job = Shop['quillon20'];

/** A night in a cold van: the coldest that the course asks a coil to start from. */
export const COLD_CELSIUS = 0;

/** Most that one coil can take: highest rail, lowest resistance, cold copper. */
export const coilMostAmps = (job: Job, ohms: number, celsius: number): number =>
  (job.railVolts * (1 + job.railHighRatio)) /
  (ohms * (1 - job.relays.toleranceRatio) * copperRatio({ fromCelsius: COIL_REFERENCE_CELSIUS, toCelsius: celsius }));

export interface LoadSums {
  readonly coil: number;
  readonly coilMost: number;
  readonly idle: number;
  readonly running: number;
  readonly everything: number;
  readonly firstMoment: number;
  /** Everything with the margin on it: what the supply is sized for. */
  readonly wanted: number;
}

/** The load list of the Quillon 20, amps. */
export function listLoad(job: Job): LoadSums {
  const { relays, lamps, railVolts, railHighRatio, marginRatio } = job;
  const lit = lamps.litAtOnce * lamps.amps;
  const coil = railVolts / relays.ohms;
  const coilMost = coilMostAmps(job, relays.ohms, COIL_REFERENCE_CELSIUS);
  const everything = relays.count * coilMost + lit * (1 + railHighRatio);
  return {
    coil,
    coilMost,
    idle: lit,
    running: relays.count * coil + lit,
    everything,
    firstMoment: relays.count * coilMostAmps(job, relays.ohms, COLD_CELSIUS) + lit * (1 + railHighRatio),
    wanted: everything * (1 + marginRatio),
  };
}
