/** A filament lamp in series with what is powered: where the two share the mains. */

/** A lamp by its marking. */
export interface Lamp {
  readonly watts: number;
  readonly volts: number;
}

/** A filament's current goes with its volts to this power, near and below its rating. Typical of tungsten lamps. */
const AMPS_EXPONENT = 0.55;
/** Hot over cold resistance. Typical. */
const COLD_RATIO = 12;

/** Resistance of the filament with so many volts across it: that of the power law, and not below the cold one. */
export function lampOhms({ watts, volts }: Lamp, across: number): number {
  const hot = (volts * volts) / watts;
  return hot * Math.max(1 / COLD_RATIO, (across / volts) ** (1 - AMPS_EXPONENT));
}

/** What flows, and what is left for a load that is taken as a resistance, behind a lamp on `mainsVolts`. */
export function behindLamp(options: { readonly lamp: Lamp; readonly mainsVolts: number; readonly loadOhms: number }): {
  readonly amps: number;
  readonly lampVolts: number;
  readonly loadVolts: number;
} {
  const { lamp, mainsVolts, loadOhms } = options;
  // The lamp's share rises with its own volts more slowly than they do: one crossing, found by halving.
  let low = 0;
  let high = mainsVolts;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    const ohms = lampOhms(lamp, middle);
    if ((mainsVolts * ohms) / (ohms + loadOhms) > middle) low = middle;
    else high = middle;
  }
  const amps = (mainsVolts - low) / loadOhms;
  return { amps, lampVolts: low, loadVolts: amps * loadOhms };
}
