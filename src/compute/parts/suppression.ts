import { InputError, requireNumber } from '../errors.ts';

/** What takes the coil's current when its switch opens. */
export type Suppression =
  | { readonly kind: 'none' }
  /** Across the coil, blocking in normal running. */
  | { readonly kind: 'diode' }
  /** The diode with a zener in series, or a two-way clamp of `volts` across the coil. */
  | { readonly kind: 'diode-zener'; readonly volts: number }
  | { readonly kind: 'resistor'; readonly ohms: number };

/** Drop of a diode at coil currents. */
const DIODE_VOLTS = 0.8;

/** Kick seen on unsuppressed 12 V relays, volts: what a bare switch has to bear. */
export const UNSUPPRESSED_KICK_VOLTS = { min: 1000, max: 1500 } as const;

export interface CoilRelease {
  /** From the switch opening to the coil current at which the armature is sure to have let go. */
  readonly seconds: number;
  /** Volts that the switch sees, the rail included. */
  readonly switchVolts: number;
  /** Energy in the coil, joules. */
  readonly joules: number;
}

/**
 * Release of a coil into its suppression: t = (L/R)·ln((I₀ + Vc/R)/(Ir + Vc/R)) for a clamp of Vc; into a resistor the
 * current falls through both, t = L/(R + Rs)·ln(I₀/Ir).
 *
 * `henries` with the armature in, held constant though it falls as the armature leaves: so indicative. `releaseRatio`
 * is release over running current (0.1 for the must-release of most types, 0.25 to 0.35 for what they do). Without
 * suppression the time is that of the arc and is given as 0, the volts as the lower end of what is seen on 12 V coils.
 * Throws `InputError` for values out of range. Source: solved; behaviour from relay makers' notes on suppression.
 */
export function coilRelease(options: {
  readonly henries: number;
  readonly ohms: number;
  readonly railVolts: number;
  readonly releaseRatio?: number;
  readonly suppression: Suppression;
}): CoilRelease {
  const { suppression } = options;
  const henries = requireNumber('henries', options.henries, { min: 1e-6, max: 100 });
  const ohms = requireNumber('ohms', options.ohms, { min: 0.1, max: 1e6 });
  const railVolts = requireNumber('railVolts', options.railVolts, { min: 0.1, max: 1000 });
  const releaseRatio = requireNumber('releaseRatio', options.releaseRatio ?? 0.1, { min: 0.001, max: 0.999 });
  const startAmps = railVolts / ohms;
  const joules = (henries * startAmps * startAmps) / 2;
  const clamped = (clampVolts: number): CoilRelease => ({
    seconds: (henries / ohms) * Math.log((startAmps + clampVolts / ohms) / (releaseRatio * startAmps + clampVolts / ohms)),
    switchVolts: railVolts + clampVolts,
    joules,
  });
  switch (suppression.kind) {
    case 'none':
      return { seconds: 0, switchVolts: Math.max(railVolts, UNSUPPRESSED_KICK_VOLTS.min), joules };
    case 'diode':
      return clamped(DIODE_VOLTS);
    case 'diode-zener':
      return clamped(DIODE_VOLTS + requireNumber('suppression.volts', suppression.volts, { min: 1, max: 1000 }));
    case 'resistor': {
      const across = requireNumber('suppression.ohms', suppression.ohms, { min: 0.1, max: 1e6 });
      return { seconds: (henries / (ohms + across)) * -Math.log(releaseRatio), switchVolts: railVolts + startAmps * across, joules };
    }
    default:
      throw new InputError('suppression', suppression, { expected: 'none, diode, diode-zener or resistor' });
  }
}
