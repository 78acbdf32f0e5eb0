import { clippedSine, clippedSineAt } from './clipped-sine.ts';
import type { Device } from './device.ts';
import type { SineElement } from './elements.ts';
import { sourceDevice } from './passive-devices.ts';

/** A source of the mains frequency or a harmonic of it, its top flattened when a crest factor is given. */
export function sineDevice(element: SineElement, ends: readonly [number, number], hertz: number): Device {
  const { name, peakVolts, degrees = 0, ohms = 0, harmonic = 1, crestFactor } = element;
  const wave = clippedSine(crestFactor);
  const scale = peakVolts / (wave.scale * wave.level);
  const omega = 2 * Math.PI * hertz * harmonic;
  const lead = (degrees * Math.PI) / 180;
  const device = sourceDevice(name, ends, ohms, (seconds) => scale * clippedSineAt(wave, omega * seconds + lead));
  if (wave.level === 1) return device;
  // A clipped top begins and ends at four phases of each cycle.
  const phases = [wave.cornerRadians, Math.PI - wave.cornerRadians];
  device.corners = (from, to) => {
    const found: number[] = [];
    for (const phase of phases) {
      let turn = Math.floor((omega * from + lead - phase) / Math.PI) + 1;
      for (let t = (phase + turn * Math.PI - lead) / omega; t <= to; t = (phase + turn * Math.PI - lead) / omega) {
        if (t > from) found.push(t);
        turn += 1;
      }
    }
    return found;
  };
  return device;
}
