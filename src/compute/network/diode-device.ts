import type { Device } from './device.ts';
import type { DiodeElement } from './elements.ts';
import { LEAST_SIEMENS } from './node-equations.ts';
import { wrightOmega } from './wright-omega.ts';

/** kT/q at 300 K, volts: the value that the project's parameter sets are fitted with. */
const THERMAL_VOLTS = 0.025852;
/** Current by which a breakdown voltage is named, and the saturation current its knee is drawn with. */
const BREAKDOWN_AMPS = 1e-3;
const BREAKDOWN_SATURATION_AMPS = 1e-12;

/** Current and slope of one exponential junction behind a resistance. */
class Junction {
  readonly thermalVolts: number;
  readonly saturationAmps: number;
  readonly ohms: number;
  readonly #log: number;
  readonly #knee: number;
  amps = 0;
  siemens = 0;
  last = 0;

  constructor(thermalVolts: number, saturationAmps: number, ohms: number) {
    this.thermalVolts = thermalVolts;
    this.saturationAmps = saturationAmps;
    this.ohms = ohms;
    this.#log = ohms > 0 ? Math.log((ohms * saturationAmps) / thermalVolts) : 0;
    this.#knee = thermalVolts * Math.log(thermalVolts / (Math.SQRT2 * saturationAmps));
  }

  at(volts: number): void {
    const n = this.thermalVolts;
    const is = this.saturationAmps;
    if (this.ohms > 0) {
      const excess = (n / this.ohms) * wrightOmega((volts + this.ohms * is) / n + this.#log);
      this.amps = excess - is;
      this.siemens = excess > 0 ? 1 / (this.ohms + n / excess) : 0;
    } else {
      // No voltage that Newton's limiting lets through comes near the end of the exponential's range.
      const e = Math.exp(Math.min(volts / n, 300));
      this.amps = is * (e - 1);
      this.siemens = (is * e) / n;
    }
  }

  /**
   * Keeps a Newton step from climbing an exponential further than its tangent can be trusted: beyond the knee the step
   * is taken in the logarithm. Source: L. W. Nagel, "SPICE2", Univ. California memo ERL-M520 (1975), section 4.
   */
  limit(volts: number): number {
    const n = this.thermalVolts;
    const knee = this.#knee + this.ohms * Math.max(this.amps, 0);
    let next = volts;
    if (volts > knee && Math.abs(volts - this.last) > 2 * n) {
      if (this.last > 0) {
        const s = (volts - this.last) / n;
        // Series resistance tames the exponential: where the slope is the resistance's, the step may be a volt.
        const tame = this.ohms * this.siemens;
        if (s > 0) next = this.last + n * Math.log1p(s) + tame * tame * Math.min(volts - this.last, 1);
      } else {
        next = Math.max(knee, 0);
      }
    }
    this.last = next;
    return next;
  }
}

/** An exponential diode behind a resistance; with a breakdown voltage, a second junction the other way round. */
export function diodeDevice(element: DiodeElement, [first, second]: readonly [number, number]): Device {
  const { name, saturationAmps, emission, ohms = 0, breakdownVolts } = element;
  const n = emission * THERMAL_VOLTS;
  const forward = new Junction(n, saturationAmps, ohms);
  const backward = breakdownVolts === undefined ? undefined : new Junction(n, BREAKDOWN_SATURATION_AMPS, ohms);
  const offset =
    breakdownVolts === undefined
      ? 0
      : breakdownVolts - n * Math.log1p(BREAKDOWN_AMPS / BREAKDOWN_SATURATION_AMPS) - ohms * BREAKDOWN_AMPS;
  return {
    name, first, second,
    connects: () => true,
    forget: () => {
      forward.last = 0;
      if (backward) backward.last = 0;
    },
    stamp: (eq) => {
      const volts = eq.volts(first, second);
      const trial = forward.limit(volts);
      forward.at(trial);
      let amps = forward.amps + forward.siemens * (volts - trial);
      let siemens = forward.siemens;
      let off = Math.abs(trial - volts);
      if (backward) {
        const back = -volts - offset;
        const backTrial = backward.limit(back);
        backward.at(backTrial);
        amps -= backward.amps + backward.siemens * (back - backTrial);
        siemens += backward.siemens;
        off = Math.max(off, Math.abs(backTrial - back));
      }
      if (off > 1e-9) eq.limited = true;
      eq.addBranch(first, second, amps + eq.junctionSiemens * volts, siemens + eq.junctionSiemens);
    },
    settle: (eq) => {
      const volts = eq.volts(first, second);
      forward.at(volts);
      let amps = forward.amps + LEAST_SIEMENS * volts;
      if (backward) {
        backward.at(-volts - offset);
        amps -= backward.amps;
      }
      return amps;
    },
  };
}
