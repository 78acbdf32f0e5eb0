import { DiodeArms } from './diode-arms.ts';
import type { RectifierOptions } from './rectifier-types.ts';

/** Thermal voltage of the diode law, volts: kT/q at 300 K, the value the parameter sets were fitted with. */
export const THERMAL_VOLTS = 0.025852;

/**
 * A resistance no real loop is without; it keeps the equations defined when every given resistance is zero, and is a
 * thousand times less than a centimetre of hook-up wire.
 */
const LEAST_OHMS = 1e-7;

/**
 * The instantaneous equations of a rectifier: source voltage and capacitor state in, all currents out.
 *
 * A reservoir is presented as `base + seriesOhms·q`, q being the current into it: at an instant that is its voltage
 * behind its series resistance, and inside an implicit time step the same with the step's own resistance (γh/C)
 * added. One solve therefore serves both. Results are left in the fields; the object is scratch space.
 */
export class RectifierCircuit {
  readonly states: 1 | 2;
  readonly arms: DiodeArms;
  readonly #topology: RectifierOptions['topology'];
  readonly #windingOhms: number;
  readonly #diodeOhms: number;
  readonly #amps: number;
  readonly #siemens: number;
  readonly #watts: number;

  /** Rail voltage at the load and current into the load. */
  railVolts = 0;
  loadAmps = 0;
  /** Current into each reservoir, and its derivative with respect to each base. */
  charge1 = 0;
  charge2 = 0;
  d11 = 0;
  d12 = 0;
  d21 = 0;
  d22 = 0;
  windingAmps = 0;

  constructor({ topology, winding, diode, load }: Pick<RectifierOptions, 'topology' | 'winding' | 'diode' | 'load'>) {
    this.#topology = topology;
    this.states = topology === 'doubler' ? 2 : 1;
    this.#windingOhms = winding.ohms;
    // Two diodes in series in each path of a bridge.
    const inSeries = topology === 'bridge' ? 2 : 1;
    this.#diodeOhms = inSeries * diode.ohms + LEAST_OHMS;
    this.arms = new DiodeArms(inSeries * diode.emission * THERMAL_VOLTS, diode.saturationAmps);
    this.#amps = 'amps' in load ? load.amps : 0;
    this.#siemens = 'ohms' in load ? 1 / load.ohms : 0;
    this.#watts = 'watts' in load ? load.watts : 0;
  }

  /**
   * Solves the instant. Gives false when a constant-power load finds no voltage to work at: the rail has collapsed, or
   * the time step asked for is too long to follow it down.
   */
  solve(sourceVolts: number, base1: number, base2: number, seriesOhms: number): boolean {
    if (this.#watts === 0) {
      this.#solveLinear(sourceVolts, base1, base2, seriesOhms, this.#amps, this.#siemens);
      return true;
    }
    // A constant-power load is taken as its tangent (a current and a negative conductance) at the last known voltage.
    // The currents of the last instant say where the terminals are likely to be now.
    let volts = this.states === 1 ? base1 + seriesOhms * this.charge1 : base1 + base2 + seriesOhms * (this.charge1 + this.charge2);
    if (!(volts > 0)) volts = this.states === 1 ? base1 : base1 + base2;
    for (let pass = 0; pass < 30; pass += 1) {
      if (!(volts > 0)) return false;
      const siemens = -this.#watts / (volts * volts);
      // Beyond this the source behind the rail is softer than the load is hungry: no operating point.
      if (1 + this.states * seriesOhms * siemens < 0.05) return false;
      this.#solveLinear(sourceVolts, base1, base2, seriesOhms, (2 * this.#watts) / volts, siemens);
      const change = Math.abs(this.railVolts - volts);
      volts = this.railVolts;
      // Tangents converge as the square: what is left after this change is a part in ten thousand million.
      if (change <= 1e-5 * volts) {
        this.loadAmps = this.#watts / volts;
        return true;
      }
    }
    return false;
  }

  /** Load taken as a current plus a conductance: exact for current and resistance, a tangent for power. */
  #solveLinear(e: number, base1: number, base2: number, z: number, amps: number, siemens: number): void {
    const arms = this.arms;
    const r = this.#windingOhms;
    if (this.states === 1) {
      const shrink = 1 / (1 + z * siemens);
      const rail = (base1 - z * amps) * shrink;
      const zr = z * shrink;
      let armSlope: number;
      if (this.#topology === 'half-wave') {
        arms.solveOne(e - rail, this.#diodeOhms + r + zr);
        arms.amps2 = 0;
        this.windingAmps = arms.amps1;
        armSlope = arms.siemens11;
      } else {
        // Both arms of a bridge use the one winding, in opposite directions; the halves of a centre tap are apart.
        const shared = this.#topology === 'bridge' ? zr - r : zr;
        arms.solveTwo(e - rail, -e - rail, this.#diodeOhms + r + zr, shared);
        this.windingAmps = this.#topology === 'bridge' ? arms.amps1 - arms.amps2 : arms.amps1;
        armSlope = arms.siemens11 + arms.siemens22 + 2 * arms.siemens12;
      }
      const sum = arms.amps1 + arms.amps2;
      this.railVolts = rail + zr * sum;
      this.loadAmps = amps + siemens * this.railVolts;
      this.charge1 = sum - this.loadAmps;
      // d(rail)/d(base) = shrink; the arms answer it, and the load answers the resulting terminal voltage.
      const dSum = -shrink * armSlope;
      this.d11 = dSum - siemens * (shrink + zr * dSum);
      return;
    }
    const shrink = 1 / (1 + 2 * z * siemens);
    const rail0 = (base1 + base2 - 2 * z * amps) * shrink;
    const load0 = amps + siemens * rail0;
    const zr = z * shrink;
    const mutual = z * siemens * zr;
    arms.solveTwo(e - base1 + z * load0, -e - base2 + z * load0, this.#diodeOhms + r + z - mutual, -r - mutual);
    const { amps1, amps2, siemens11, siemens22, siemens12 } = arms;
    this.windingAmps = amps1 - amps2;
    this.railVolts = rail0 + zr * (amps1 + amps2);
    this.loadAmps = amps + siemens * this.railVolts;
    this.charge1 = amps1 - this.loadAmps;
    this.charge2 = amps2 - this.loadAmps;
    // Both bases lower the load's share alike through `load0`; each also opposes its own arm.
    const loadSlope = siemens * shrink;
    const common = z * loadSlope;
    const a11 = siemens11 * (common - 1) + siemens12 * common;
    const a21 = siemens12 * (common - 1) + siemens22 * common;
    const a12 = siemens11 * common + siemens12 * (common - 1);
    const a22 = siemens12 * common + siemens22 * (common - 1);
    const l1 = loadSlope + siemens * zr * (a11 + a21);
    const l2 = loadSlope + siemens * zr * (a12 + a22);
    this.d11 = a11 - l1;
    this.d21 = a21 - l1;
    this.d12 = a12 - l2;
    this.d22 = a22 - l2;
  }

  /** Reverse voltages across a diode of arm 1 and of arm 2, after `solve`. */
  reverseVolts(sourceVolts: number, reservoir1Volts: number, reservoir2Volts: number): number {
    const { amps1, amps2 } = this.arms;
    const r = this.#windingOhms;
    const w = sourceVolts - r * this.windingAmps;
    switch (this.#topology) {
      case 'bridge':
        // Two blocking diodes in series share alike, being alike.
        return (this.railVolts + Math.abs(w)) / 2;
      case 'centre-tap':
        return this.railVolts + Math.max(-(sourceVolts - r * amps1), sourceVolts + r * amps2);
      case 'half-wave':
        return this.railVolts - w;
      default:
        return Math.max(reservoir1Volts - w, reservoir2Volts + w);
    }
  }
}
