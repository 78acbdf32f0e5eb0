import { wrightOmega } from '../network/wright-omega.ts';

/**
 * One or two diode arms fed through resistance, solved exactly.
 *
 * The arms obey  N·ln(1 + i₁/Is) + a·i₁ + c·i₂ = r₁  and  N·ln(1 + i₂/Is) + a·i₂ + c·i₁ = r₂,
 * where N is the thermal voltage times emission times the diodes in one arm, a the resistance an arm sees itself and
 * c the resistance the two arms share. Every standard rectifier is this pair of equations (see `rectifier-circuit.ts`).
 * With a > |c| they are the gradient of a strictly convex function: there is one solution and descent finds it.
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
      offExcess = is * Math.exp(Math.max(exponent, -600));
    } else {
      for (let pass = 0; pass < 400; pass += 1) {
        // Each arm is solved exactly against a straight-line account of the other's reply. Should that ever circle,
        // plain alternation (coordinate descent on a convex function) takes over: slower, but it always arrives.
        const straight = pass < 40 ? 1 : 0;
        const replyOn = (-straight * sharedOhms) / (ohms + n / onExcess);
        const offNext = this.#alone(driveOff - sharedOhms * (on - replyOn * off), ohms + sharedOhms * replyOn);
        const offChange = Math.abs(offNext - off);
        off = offNext;
        offExcess = this.#lastExcess;
        const replyOff = (-straight * sharedOhms) / (ohms + n / offExcess);
        const onNext = this.#alone(driveOn - sharedOhms * (off - replyOff * on), ohms + sharedOhms * replyOff);
        const change = Math.abs(onNext - on) + offChange;
        on = onNext;
        onExcess = this.#lastExcess;
        if (change <= 1e-11 * (Math.abs(on) + Math.abs(off) + is)) break;
      }
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
}
