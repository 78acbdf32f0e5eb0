import { InputError } from '../errors.ts';
import type { RectifierSolution, RectifierTopology } from '../rectifier/rectifier-types.ts';
import { harmonicsOf } from './harmonics.ts';
import type { Spectrum } from './harmonics.ts';

/** Currents of a rectifier's loop over one mains cycle, sampled as its waveform. */
export interface LoopAmps {
  /** In the winding (of a centre tap, in one half). */
  readonly winding: Float64Array;
  /** Through the rectifier into reservoir and load together: all of it positive. */
  readonly rectified: Float64Array;
  /** Into the reservoir; of a doubler, into the one whose half-cycle is the source's positive one. */
  readonly reservoir: Float64Array;
}

/**
 * Where the charging pulses of a solved rectifier flow. The load's current is taken as its mean: a steady load, or what
 * a regulator draws.
 */
export function loopAmps(options: { readonly topology: RectifierTopology; readonly rectifier: RectifierSolution }): LoopAmps {
  const { topology, rectifier } = options;
  const winding = rectifier.waveform.windingAmps;
  const load = rectifier.load.meanAmps;
  const half = Math.floor((winding.length - 1) / 2);
  const rectified = winding.map((amps, k) => {
    switch (topology) {
      case 'bridge':
        return Math.abs(amps);
      case 'centre-tap':
        // The other half does half a cycle later what this one does now.
        return amps + (winding[(k + half) % (winding.length - 1)] as number);
      case 'half-wave':
        return amps;
      case 'doubler':
        return Math.max(0, amps);
      default:
        throw new InputError('topology', topology, { expected: 'bridge, centre-tap, half-wave or doubler' });
    }
  });
  return { winding, rectified, reservoir: rectified.map((amps) => amps - load) };
}

/** An estimate: the circuit solved has no leakage inductance, which rounds the pulses and takes from the high harmonics. */
export interface PulseSpectrum {
  readonly winding: Spectrum;
  readonly reservoir: Spectrum;
  readonly basis: 'typical';
}

/** Harmonics of winding and reservoir current of a solved rectifier at the mains frequency `hertz`; `orders` as `harmonicsOf`. */
export function pulseSpectrum(options: { readonly topology: RectifierTopology; readonly rectifier: RectifierSolution; readonly hertz: number; readonly orders?: number }): PulseSpectrum {
  const { hertz, orders } = options;
  const amps = loopAmps(options);
  const of = (values: Float64Array): Spectrum => harmonicsOf({ values, hertz, ...(orders === undefined ? {} : { orders }) });
  return { winding: of(amps.winding), reservoir: of(amps.reservoir), basis: 'typical' };
}
