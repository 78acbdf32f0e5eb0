import { requireNumber } from '../errors.ts';
import { capacitiveVolts } from './stray-coupling.ts';

/** A coil in series and a capacitor across, behind a converter. */
export interface FilterSection {
  readonly henries: number;
  readonly farads: number;
  /** Series resistance of the capacitor, which is what is left of it at these frequencies. */
  readonly esrOhms: number;
}

/** What of a converter's ripple reaches the rail and a grid. Estimates. */
export interface ConverterResidue {
  /** At the rail, peak to peak, at the switching frequency. */
  readonly railVolts: number;
  readonly attenuationDecibels: number;
  /** Where each section rings, lowest first. */
  readonly resonanceHertz: readonly number[];
  /** All capacitance that the converter has to start into. */
  readonly outputFarads: number;
  /** At a grid through stray capacitance from the rail's wiring, RMS; left out without one. */
  readonly gridVolts?: number;
  readonly basis: 'typical';
}

/**
 * Converter ripple behind a filter, at its switching frequency, taken as a sine: each section divides by its capacitor's
 * impedance over that and the coil's, from the load backwards (each section loads the one before it). Not in it: common-mode
 * current through the Y capacitor, capacitance of the coils, radiation; those are matters of layout, and usually what is heard.
 *
 * `rippleVolts` peak to peak 0–10 V, `hertz` 1 kHz–10 MHz, up to 4 sections; `grid` a node near the rail's wiring.
 * Sum of capacitances to be kept below what the converter starts into. Throws `InputError` outside.
 */
export function converterResidue(options: {
  readonly rippleVolts: number;
  readonly hertz: number;
  readonly sections: readonly FilterSection[];
  readonly grid?: { readonly strayFarads: number; readonly ohms: number };
}): ConverterResidue {
  const ripple = requireNumber('rippleVolts', options.rippleVolts, { min: 0, max: 10 });
  const hertz = requireNumber('hertz', options.hertz, { min: 1e3, max: 1e7 });
  requireNumber('sections', options.sections.length, { min: 0, max: 4 });
  const omega = 2 * Math.PI * hertz;
  let share = 1;
  // Impedance looking towards the load; nothing beyond the last section.
  let onward: readonly [number, number] | undefined;
  for (const section of options.sections.toReversed()) {
    const farads = requireNumber('section.farads', section.farads, { min: 1e-9, max: 1 });
    const across = parallel([requireNumber('section.esrOhms', section.esrOhms, { min: 0, max: 100 }), -1 / (omega * farads)], onward);
    const reactance = omega * requireNumber('section.henries', section.henries, { min: 1e-9, max: 1 });
    share *= Math.hypot(...across) / Math.hypot(across[0], across[1] + reactance);
    onward = [across[0], across[1] + reactance];
  }
  const railVolts = ripple * share;
  const { grid } = options;
  return {
    railVolts,
    attenuationDecibels: -20 * Math.log10(share),
    resonanceHertz: options.sections.map(({ henries, farads }) => 1 / (2 * Math.PI * Math.sqrt(henries * farads))).sort((a, b) => a - b),
    outputFarads: options.sections.reduce((sum, { farads }) => sum + farads, 0),
    ...(grid === undefined ? {} : { gridVolts: capacitiveVolts({ farads: grid.strayFarads, volts: railVolts / (2 * Math.SQRT2), hertz, ohms: grid.ohms }) }),
    basis: 'typical',
  };
}

function parallel(a: readonly [number, number], b: readonly [number, number] | undefined): readonly [number, number] {
  if (b === undefined) return a;
  // a·b/(a + b), in real and imaginary parts.
  const top = [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]] as const;
  const bottom = [a[0] + b[0], a[1] + b[1]] as const;
  const size = bottom[0] ** 2 + bottom[1] ** 2;
  return [(top[0] * bottom[0] + top[1] * bottom[1]) / size, (top[1] * bottom[0] - top[0] * bottom[1]) / size];
}
