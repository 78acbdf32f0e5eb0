import type { RectifierSolution } from '../rectifier/rectifier-types.ts';
import type { AcrossWinding, ChainWinding } from './chain-types.ts';
import type { OperatingCorner } from './corners.ts';

/** A winding at one corner as the rectifier sees it, whatever hangs across it taken in. */
export interface WindingSource {
  /** RMS, with what hangs across it connected and no rectifier. */
  readonly openCircuitVolts: number;
  readonly ohms: number;
  /** Of the winding by itself. */
  readonly ownVolts: number;
  readonly ownOhms: number;
}

/**
 * The winding's source at a corner. Valve heaters across it and its own resistance are one linear source to the
 * rectifier (Thévenin): its volts are divided, its ohms are the two in parallel, and the shape of its wave stays.
 */
export function windingSource(winding: ChainWinding, corner: OperatingCorner): WindingSource {
  const ownVolts = winding.openCircuitVolts * corner.mainsRatio;
  const ownOhms = winding.ohms * (winding.ohmsMeasuredCold === true ? corner.coldCopperRatio : 1);
  if (winding.acrossOhms === undefined) return { openCircuitVolts: ownVolts, ohms: ownOhms, ownVolts, ownOhms };
  const share = winding.acrossOhms / (winding.acrossOhms + ownOhms);
  return { openCircuitVolts: ownVolts * share, ohms: ownOhms * share, ownVolts, ownOhms };
}

/**
 * What hangs across the winding, with the rectifier drawing its pulses beside it: the wave at the winding's terminals
 * is the loaded source less its resistance times the rectifier's current; the winding carries both currents at once.
 */
export function acrossWinding(acrossOhms: number, source: WindingSource, rectifier: RectifierSolution): AcrossWinding {
  const { sourceVolts, windingAmps } = rectifier.waveform;
  // One period, evenly spaced; the last sample repeats the first.
  const steps = windingAmps.length - 1;
  let voltsSquared = 0;
  let totalSquared = 0;
  let tapSquared = 0;
  let peakVolts = 0;
  for (let i = 0; i < steps; i++) {
    const tap = windingAmps[i] as number;
    const volts = (sourceVolts[i] as number) - source.ohms * tap;
    const total = tap + volts / acrossOhms;
    voltsSquared += volts * volts;
    totalSquared += total * total;
    tapSquared += tap * tap;
    if (Math.abs(volts) > peakVolts) peakVolts = Math.abs(volts);
  }
  const rmsVolts = Math.sqrt(voltsSquared / steps);
  // The pulses' own square is known without sampling error; the rest of the mean square is smooth.
  const total = totalSquared / steps + rectifier.winding.rmsAmps ** 2 - tapSquared / steps;
  return {
    rmsVolts,
    rmsVoltsBefore: source.openCircuitVolts,
    crestFactor: peakVolts / rmsVolts,
    rmsAmps: rmsVolts / acrossOhms,
    watts: rmsVolts ** 2 / acrossOhms,
    totalRmsAmps: Math.sqrt(Math.max(0, total)),
    rmsAmpsBefore: source.openCircuitVolts / acrossOhms,
  };
}
