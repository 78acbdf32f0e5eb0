import { InputError, requireNumber } from '../errors.ts';
import type { Bounded, WindingEstimate } from './winding-readings.ts';

/**
 * How far an estimated winding sags at a current, over its loaded volts, with the limits that its resistance leaves
 * open (nine tenths of the volts lost at most). An error of the voltmeter's gain moves volts and ohms alike and cancels.
 * Throws `InputError` when the current would take more than nine tenths of the volts.
 */
export function sagOfEstimate(options: { readonly estimate: Pick<WindingEstimate, 'openCircuitVolts' | 'ohms'>; readonly amps: number }): Bounded {
  const { openCircuitVolts, ohms } = options.estimate;
  const amps = requireNumber('amps', options.amps, { min: 0, max: 1000 });
  const open = openCircuitVolts.value;
  if (amps * ohms.value > 0.9 * open) throw new InputError('amps', amps, { max: (0.9 * open) / ohms.value });
  // The far limit of a reading that hardly tells may lie beyond what the winding could give at all.
  const lost = (each: number): number => Math.min(0.9 * open, amps * each);
  const at = (each: number): number => lost(each) / (open - lost(each));
  return { value: at(ohms.value), least: at(ohms.least), most: at(ohms.most) };
}

/** Volts RMS of an estimated winding under a steady resistive load, at mains of a ratio to nominal (0.5 to 1.5). */
export function loadedVolts(options: { readonly estimate: Pick<WindingEstimate, 'openCircuitVolts' | 'ohms'>; readonly mainsRatio: number; readonly amps: number }): number {
  const { openCircuitVolts, ohms } = options.estimate;
  const ratio = requireNumber('mainsRatio', options.mainsRatio, { min: 0.5, max: 1.5 });
  return Math.max(0, openCircuitVolts.value * ratio - requireNumber('amps', options.amps, { min: 0, max: 1000 }) * ohms.value);
}
