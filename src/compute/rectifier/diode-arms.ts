import { wrightOmega } from '../network/wright-omega.ts';

/**
 * One or two diode arms fed through resistance, solved exactly.
 *
 * The arms obey  N·ln(1 + i₁/Is) + a·i₁ + c·i₂ = r₁  and  N·ln(1 + i₂/Is) + a·i₂ + c·i₁ = r₂,
 * where N is the thermal voltage times emission times the diodes in one arm, a the resistance an arm sees itself and
 * c the resistance the two arms share. Every standard rectifier is this pair of equations (see `rectifier-circuit.ts`).
 * With a > |c| they are the gradient of a strictly convex function: there is exactly one solution.
 *
 * An instance is scratch space that is reused at every step of the integration: results are left in its fields.
 */
export class DiodeArms {
  readonly thermalVolts: number;
  readonly saturationAmps: number;
  /** Arm currents. */
  amps1 = 0;
  amps2 = 0;
  /** How the arm currents follow their drives: ∂i₁/∂r₁, ∂i₂/∂r₂, and ∂i₁/∂r₂ = ∂i₂/∂r₁. */
  siemens11 = 0;
  siemens22 = 0;
  siemens12 = 0;
  /** Current plus saturation current of the last arm solved: the quantity whose logarithm is the junction voltage. */
  #lastExcess = 0;
  #knownOhms = Number.NaN;
  #knownLog = 0;

  constructor(thermalVolts: number, saturationAmps: number) {
    this.thermalVolts = thermalVolts;
    this.saturationAmps = saturationAmps;
  }

  /** Current of one arm by itself: the x − Is with N·ln(x/Is) + ohms·(x − Is) = volts. */
  #alone(volts: number, ohms: number): number {
    const n = this.thermalVolts;
    const is = this.saturationAmps;
    // The resistance changes only with the step length, so that its logarithm is mostly a repeat.
    if (ohms !== this.#knownOhms) {
      this.#knownOhms = ohms;
      this.#knownLog = Math.log((ohms * is) / n);
    }
    this.#lastExcess = (n / ohms) * wrightOmega((volts + ohms * is) / n + this.#knownLog);
    return this.#lastExcess - is;
  }

  /** A rectifier with a single arm (half-wave). */
  solveOne(drive: number, ohms: number): void {
    this.amps1 = this.#alone(drive, ohms);
    this.siemens11 = 1 / (ohms + this.thermalVolts / this.#lastExcess);
  }

  /** Two arms that share resistance. */
  solveTwo(drive1: number, drive2: number, ohms: number, sharedOhms: number): void {
    const swapped = drive2 > drive1;
    const driveOn = swapped ? drive2 : drive1;
    const driveOff = swapped ? drive1 : drive2;
    const n = this.thermalVolts;
    const is = this.saturationAmps;

    let on = this.#alone(driveOn + sharedOhms * is, ohms);
    let onExcess = this.#lastExcess;
    let off = -is;
    let offExcess = 0;
    const exponent = (driveOff - sharedOhms * on + ohms * is) / n;
    if (exponent < -40) {
      // The usual case: the idle arm carries its leakage and nothing that a double could show.
      offExcess = 1e-290;
    } else {
      const shared = this.#bothConduct(driveOn, driveOff, ohms, sharedOhms, sharedOhms * (on - Math.sign(sharedOhms) * is));
      const apart = ohms - Math.abs(sharedOhms);
      off = this.#alone(sharedOhms < 0 ? driveOff + shared : driveOff - shared, apart);
      offExcess = this.#lastExcess;
      on = this.#alone(driveOn - shared, apart);
      onExcess = this.#lastExcess;
    }

    const ownOn = ohms + n / onExcess;
    const ownOff = ohms + n / offExcess;
    const siemensOn = 1 / (ownOn - (sharedOhms * sharedOhms) / ownOff);
    const siemensOff = 1 / (ownOff - (sharedOhms * sharedOhms) / ownOn);
    this.siemens12 = (-sharedOhms / ownOff) * siemensOn;
    this.amps1 = swapped ? off : on;
    this.amps2 = swapped ? on : off;
    this.siemens11 = swapped ? siemensOff : siemensOn;
    this.siemens22 = swapped ? siemensOn : siemensOff;
  }

  /**
   * The voltage s across the shared resistance when both arms count: s = |c|·(i₁ ± i₂), minus where the arms drive it in
   * opposite directions (c < 0). Each current falls out of s by itself, and the balance rises steadily with s, so that
   * Newton's method inside a bracket is certain to arrive. Signs at the two ends of the bracket follow from currents
   * having the sign of their drive, and from −Is being the least of them.
   */
  #bothConduct(drive1: number, drive2: number, ohms: number, sharedOhms: number, start: number): number {
    const n = this.thermalVolts;
    const is = this.saturationAmps;
    const c = Math.abs(sharedOhms);
    if (c === 0) return 0;
    const apart = ohms - c;
    const sign = sharedOhms < 0 ? -1 : 1;
    let low = sign > 0 ? -2 * c * is : Math.min(drive1, -drive2, 0);
    let high = sign > 0 ? Math.max(drive1, drive2, 0) : Math.max(drive1, -drive2, 0);
    let s = Math.min(high, Math.max(low, start * sign));
    let lastStep = Infinity;
    for (let pass = 0; pass < 120; pass += 1) {
      const amps1 = this.#alone(drive1 - s, apart);
      const slope1 = 1 / (apart + n / this.#lastExcess);
      const amps2 = this.#alone(drive2 - sign * s, apart);
      const slope2 = 1 / (apart + n / this.#lastExcess);
      const balance = s / c - amps1 - sign * amps2;
      if (balance > 0) high = s;
      else low = s;
      const before = s;
      const step = balance / (1 / c + slope1 + slope2);
      s -= step;
      if (Math.abs(step) <= 1e-12 * n + 4e-16 * Math.abs(s)) break;
      // Steps that do not shrink, as an exponential seen from its steep side makes them, are replaced by halving.
      if (!(s > low && s < high) || Math.abs(step) > 0.6 * lastStep) s = (low + high) / 2;
      lastStep = Math.abs(s - before);
    }
    return s;
  }
}
