import { InputError, requireNumber } from '../errors.ts';
import type { CatalogueRow, Spread } from './row.ts';

export interface LedRow extends CatalogueRow {
  /** Forward drop at about 10 mA. */
  readonly forwardVolts: Spread;
  readonly maxAmps: number;
  /** Reverse volts it bears. */
  readonly reverseMaxVolts: number;
}

const led = (id: string, name: string, min: number, typical: number, max: number, maxAmps: number): LedRow => ({
  id, name, basis: 'typical', source: { id: 'typical-leds' }, forwardVolts: { min, typical, max }, maxAmps, reverseMaxVolts: 5,
});

/** Indicator LEDs by colour. Typical: drop differs by chip, and modern ones are bright at 1 to 2 mA. */
export const LEDS: readonly LedRow[] = [
  led('red', 'Red', 1.6, 1.8, 2.2, 0.02),
  led('amber', 'Amber or yellow', 1.8, 2.1, 2.4, 0.02),
  led('green', 'Green, yellowish', 1.9, 2.1, 2.5, 0.02),
  led('green-bright', 'Green, bright', 2.7, 3.1, 3.6, 0.02),
  led('blue', 'Blue', 2.8, 3.2, 3.6, 0.02),
  led('white', 'White', 2.8, 3.1, 3.6, 0.02),
];

/** The row with this id. Throws `InputError` when there is none. */
export function ledRow(id: string): LedRow {
  const found = LEDS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('led', id, { expected: LEDS.map((row) => row.id).join(', ') });
  return found;
}

interface LedOptions {
  readonly forwardVolts: number;
  readonly amps: number;
  /** LEDs in the string. Default 1. */
  readonly count?: number;
}

const stringVolts = ({ forwardVolts, count = 1 }: LedOptions): number =>
  requireNumber('forwardVolts', forwardVolts, { min: 0.5, max: 10 }) * requireNumber('count', count, { min: 1, max: 50 });

/**
 * Series resistor of an LED string on DC: ohms, and the watts in it. Throws `InputError` when the rail does not exceed
 * the string's drop, which is the answer: it will not light properly. Amps 10 µA–1 A.
 */
export function ledResistor(options: LedOptions & { readonly railVolts: number }): { readonly ohms: number; readonly watts: number } {
  const drop = stringVolts(options);
  const amps = requireNumber('amps', options.amps, { min: 1e-5, max: 1 });
  const rail = requireNumber('railVolts', options.railVolts, { max: 1000 });
  if (rail <= drop) throw new InputError('railVolts', rail, { expected: `more than the ${drop} V that the LEDs drop` });
  return { ohms: (rail - drop) / amps, watts: (rail - drop) * amps };
}

/** Current of an LED string behind a resistor, amps; 0 below its drop. Ohms from 0.1. */
export function ledAmps(options: Omit<LedOptions, 'amps'> & { readonly railVolts: number; readonly ohms: number }): number {
  const drop = stringVolts({ ...options, amps: 0 });
  const rail = requireNumber('railVolts', options.railVolts, { min: 0, max: 1000 });
  return Math.max(0, rail - drop) / requireNumber('ohms', options.ohms, { min: 0.1, max: 1e7 });
}

export interface LedOnAc {
  readonly ohms: number;
  /** Heat in the resistor, with a diode that also carries the other half-cycle if `antiparallel`. */
  readonly watts: number;
  readonly peakAmps: number;
  /** Share of the cycle it is lit. */
  readonly litShare: number;
  /** Reverse volts on the LED without a diode across it. */
  readonly reverseVolts: number;
}

const peakOf = (rmsVolts: number): number => requireNumber('rmsVolts', rmsVolts, { min: 0, max: 1000 }) * Math.SQRT2;

/**
 * Mean and mean square, over a whole cycle, of what a sine of `peak` has above `volts`, and the angle it is above them.
 * With conduction from a to π − a: ∫(Vp·sin θ − V) dθ = 2·Vp·cos a − V·(π − 2a), and its square likewise.
 */
function halfCycle(peak: number, volts: number): { readonly mean: number; readonly square: number; readonly angle: number } {
  if (peak <= volts) return { mean: 0, square: 0, angle: 0 };
  const a = Math.asin(volts / peak);
  const angle = Math.PI - 2 * a;
  return {
    mean: (2 * peak * Math.cos(a) - volts * angle) / (2 * Math.PI),
    square: ((peak * peak) / 2 * (angle + Math.sin(2 * a)) - 4 * peak * volts * Math.cos(a) + volts * volts * angle) / (2 * Math.PI),
    angle,
  };
}

/** Drop of the silicon diode put across an LED the other way round, volts. */
const ANTIPARALLEL_VOLTS = 0.7;

/**
 * Mean current of an LED string behind a resistor on a sine of `rmsVolts`, and what goes with it; dark (0) when the peak
 * does not reach its drop. `antiparallel` as in `ledResistorOnAc`. Ohms from 0.1. Throws `InputError` outside.
 */
export function ledOnAc(options: Omit<LedOptions, 'amps'> & { readonly rmsVolts: number; readonly ohms: number; readonly antiparallel?: boolean }): LedOnAc & { readonly meanAmps: number } {
  const drop = stringVolts({ ...options, amps: 0 });
  const peak = peakOf(options.rmsVolts);
  const ohms = requireNumber('ohms', options.ohms, { min: 0.1, max: 1e7 });
  const across = options.antiparallel === true;
  const forward = halfCycle(peak, drop);
  const backward = across ? halfCycle(peak, ANTIPARALLEL_VOLTS).square : 0;
  return {
    ohms,
    meanAmps: forward.mean / ohms,
    watts: (forward.square + backward) / ohms,
    peakAmps: Math.max(0, peak - drop) / ohms,
    litShare: forward.angle / (2 * Math.PI),
    reverseVolts: across ? Math.min(peak, ANTIPARALLEL_VOLTS) : peak,
  };
}

/**
 * Series resistor for an LED fed from a winding by its own half-cycles, for a mean current: from the mean of
 * (Vp·sin − Vf)/R over the part of the cycle where it conducts. About half the DC value, and it flickers at mains
 * frequency. `antiparallel` puts a silicon diode (0.7 V) across it, which the reverse voltage usually demands.
 * Sine of `rmsVolts`; throws `InputError` when its peak does not reach the drop.
 */
export function ledResistorOnAc(options: LedOptions & { readonly rmsVolts: number; readonly antiparallel?: boolean }): LedOnAc {
  const drop = stringVolts(options);
  const amps = requireNumber('amps', options.amps, { min: 1e-5, max: 1 });
  const peak = peakOf(options.rmsVolts);
  if (peak <= drop) throw new InputError('rmsVolts', options.rmsVolts, { expected: `a peak above the ${drop} V that the LEDs drop` });
  const { ohms, watts, peakAmps, litShare, reverseVolts } = ledOnAc({ ...options, ohms: halfCycle(peak, drop).mean / amps });
  return { ohms, watts, peakAmps, litShare, reverseVolts };
}
