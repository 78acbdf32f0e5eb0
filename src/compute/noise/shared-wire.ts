import { requireNumber } from '../errors.ts';
import { wireOhms } from '../parts/wire.ts';
import type { WireRow } from '../parts/wire.ts';
import { harmonicsOf, waveOf } from './harmonics.ts';
import type { Harmonic } from './harmonics.ts';

/** What a current drops on a wire that something else uses as its ground. An estimate. */
export interface SharedWire {
  readonly ohms: number;
  readonly henries: number;
  /** From the mean current, and all the rest: RMS and largest moment (mean included). */
  readonly meanVolts: number;
  readonly rmsVolts: number;
  readonly peakVolts: number;
  /** Volts per harmonic of the current. */
  readonly harmonics: readonly Harmonic[];
  readonly basis: 'typical';
}

/** Magnetic constant over 2π, H/m. */
const MU0_OVER_2PI = 2e-7;

/**
 * Inductance of a straight round wire by itself, henries: (μ₀l/2π)·(ln(2l/r) − 3/4), about 1 µH per metre. Part of a loop
 * whose return is not near; next to its return it is less. 1 mm to 100 m, 1e-9 to 1e-3 m². Throws `InputError` outside.
 * Source: E. B. Rosa, Bulletin of the Bureau of Standards 4 (1908), for a wire much longer than thick.
 */
export function straightWireHenries(options: { readonly metres: number; readonly squareMetres: number }): number {
  const metres = requireNumber('metres', options.metres, { min: 1e-3, max: 100 });
  const radius = Math.sqrt(requireNumber('squareMetres', options.squareMetres, { min: 1e-9, max: 1e-3 }) / Math.PI);
  return Math.max(0, MU0_OVER_2PI * metres * (Math.log((2 * metres) / radius) - 0.75));
}

/**
 * Volts along a length of wire that a repeating current runs through and something else takes for ground:
 * V = I·(R + jωL), harmonic by harmonic. Charging pulses in it are what buzzes; the steady part moves nothing but a level.
 *
 * `amps` one period of even samples, the last repeating the first, at `hertz`; `metres` the shared length, 1 mm to 100 m;
 * `celsius` of the copper (20 when left out). An estimate: joints and lugs are left out and often outweigh the copper.
 * Throws `InputError` outside.
 */
export function sharedWireVolts(options: {
  readonly row: WireRow;
  readonly metres: number;
  readonly amps: ArrayLike<number>;
  readonly hertz: number;
  readonly orders?: number;
  readonly celsius?: number;
}): SharedWire {
  const { row, amps, hertz, orders } = options;
  const metres = requireNumber('metres', options.metres, { min: 1e-3, max: 100 });
  const ohms = wireOhms({ row, metres, ...(options.celsius === undefined ? {} : { celsius: options.celsius }) });
  const henries = straightWireHenries({ metres, squareMetres: row.squareMetres });
  const current = harmonicsOf({ values: amps, hertz, ...(orders === undefined ? {} : { orders }) });
  const harmonics = current.harmonics.map(({ order, hertz: at, rms, phase }) => {
    const reactance = 2 * Math.PI * at * henries;
    return { order, hertz: at, rms: rms * Math.hypot(ohms, reactance), phase: phase + Math.atan2(reactance, ohms) };
  });
  const meanVolts = current.mean * ohms;
  const wave = waveOf({ harmonics, mean: meanVolts });
  return {
    ohms,
    henries,
    meanVolts,
    rmsVolts: Math.sqrt(harmonics.reduce((sum, { rms }) => sum + rms * rms, 0)),
    peakVolts: wave.reduce((most, volts) => Math.max(most, Math.abs(volts)), 0),
    harmonics,
    basis: 'typical',
  };
}
