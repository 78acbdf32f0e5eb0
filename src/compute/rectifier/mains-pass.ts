import { clippedSineAt } from '../network/clipped-sine.ts';
import type { ClippedSine } from '../network/clipped-sine.ts';
import { DIAGONAL, ERROR_WEIGHTS, SOLUTION_WEIGHTS, STAGES, STAGE_TIMES, STAGE_WEIGHTS } from './esdirk4.ts';
import type { RectifierCircuit } from './rectifier-circuit.ts';

/** Local error allowed in one step, as a part of the charge (and of the heat) of the whole pass. */
const STEP_TOLERANCE = 2e-5;

/** No step is longer than this part of a half-cycle, so that no charging pulse is stepped over unseen. */
const LONGEST_STEP = 1 / 20;

/** Steps after which a pass is given up; a demanding one takes about two hundred. */
const MAX_STEPS = 6000;

export interface MainsPassOptions {
  readonly circuit: RectifierCircuit;
  readonly wave: ClippedSine;
  readonly openCircuitVolts: number;
  readonly hertz: number;
  /** Half-cycles of the mains in one pass. */
  readonly halfCycles: 1 | 2;
  readonly farads: number;
  readonly esrOhms: number;
  /** Charge through the rectifier in one pass, roughly: the yardstick of the error. */
  readonly chargeScale: number;
  /** Integral of the winding current squared over one pass, roughly; corrected after each pass. */
  readonly heatScale: number;
}

/** What is known at the end of each step of a pass. */
export interface PassRecord {
  readonly seconds: number[];
  /** Reservoir voltages behind their series resistance, and the currents into them. */
  readonly reservoir1Volts: number[];
  readonly reservoir2Volts: number[];
  readonly charge1Amps: number[];
  readonly charge2Amps: number[];
  /** True where the source has a corner: a maximum there is sharp and must not be rounded off. */
  readonly corner: boolean[];
}

/**
 * Integrates a rectifier once through one or two half-cycles of the mains from given reservoir voltages, with its
 * sensitivity to them and the integrals that the results are made of.
 *
 * Adaptive; step ends are forced at the peak and at the corners of a clipped source, where the source has a kink and
 * where every rectifier conducts. Integrals use the method's own weights, so they are as accurate as the states.
 */
export class MainsPass {
  readonly #o: MainsPassOptions;
  readonly #breaks: number[];
  #heatScale: number;
  readonly record: PassRecord = {
    seconds: [],
    reservoir1Volts: [],
    reservoir2Volts: [],
    charge1Amps: [],
    charge2Amps: [],
    corner: [],
  };
  /** Change of each reservoir voltage over the pass (kept apart from the voltage: at no load it is nanovolts). */
  change1 = 0;
  change2 = 0;
  /** ∂(voltage at the end)/∂(voltage at the start), row by row. */
  sensitivity = Float64Array.of(1, 0, 0, 1);
  /** Integrals over the pass. */
  railSeconds = 0;
  loadCoulombs = 0;
  armCoulombs = 0;
  armSquares = 0;
  windingSquares = 0;
  /** Of all reservoirs together. */
  reservoirSquares = 0;
  collapsed = false;
  steps = 0;

  readonly #q1 = new Float64Array(STAGES);
  readonly #q2 = new Float64Array(STAGES);
  /** Per stage, the reservoir currents' response to the two starting voltages. */
  readonly #s = new Float64Array(4 * STAGES);
  readonly #sums = new Float64Array(6);

  constructor(options: MainsPassOptions) {
    this.#o = options;
    this.#heatScale = options.heatScale;
    const corner = options.wave.cornerRadians;
    const perHalf = corner > Math.PI / 2 - 1e-9 ? [0.5] : [corner / Math.PI, 0.5, 1 - corner / Math.PI];
    const half = 0.5 / options.hertz;
    this.#breaks = [];
    for (let n = 0; n < options.halfCycles; n += 1) {
      for (const part of perHalf) this.#breaks.push((n + part) * half);
      this.#breaks.push((n + 1) * half);
    }
  }

  #source(seconds: number): number {
    const { wave, openCircuitVolts, hertz } = this.#o;
    return openCircuitVolts * clippedSineAt(wave, 2 * Math.PI * hertz * seconds);
  }

  #note(seconds: number, reservoir1Volts: number, reservoir2Volts: number, corner: boolean): void {
    const { record } = this;
    const { circuit } = this.#o;
    record.seconds.push(seconds);
    record.reservoir1Volts.push(reservoir1Volts);
    record.reservoir2Volts.push(reservoir2Volts);
    record.charge1Amps.push(circuit.charge1);
    record.charge2Amps.push(circuit.charge2);
    record.corner.push(corner);
  }

  run(start1: number, start2: number): void {
    const { circuit, farads, esrOhms, hertz, chargeScale, halfCycles, wave, openCircuitVolts } = this.#o;
    const two = circuit.states === 2;
    const half = 0.5 / hertz;
    const longest = half * LONGEST_STEP;
    const shortest = half * 1e-9;
    const q1 = this.#q1;
    const q2 = this.#q2;
    const s = this.#s;
    const sums = this.#sums;
    for (const list of Object.values(this.record)) list.length = 0;
    this.change1 = this.change2 = 0;
    this.railSeconds = this.loadCoulombs = this.armCoulombs = this.armSquares = 0;
    this.windingSquares = this.reservoirSquares = 0;
    this.collapsed = false;
    this.steps = 0;
    const m = this.sensitivity;
    m[0] = m[3] = 1;
    m[1] = m[2] = 0;
    const chargeTolerance = STEP_TOLERANCE * Math.min(chargeScale, farads * openCircuitVolts * wave.crestFactor);

    let t = 0;
    if (!circuit.solve(0, start1, start2, esrOhms)) {
      this.collapsed = true;
      return;
    }
    this.#note(0, start1, start2, false);
    let first1 = circuit.charge1;
    let first2 = circuit.charge2;
    let firstWinding = circuit.windingAmps;
    let firstArm1 = circuit.arms.amps1;
    let firstArm2 = circuit.arms.amps2;
    let firstRail = circuit.railVolts;
    let firstLoad = circuit.loadAmps;
    // Rows of the sensitivity of the first-stage currents: charge1 and charge2 by start1 and start2.
    let f0 = circuit.d11;
    let f1 = two ? circuit.d12 : 0;
    let f2 = two ? circuit.d21 : 0;
    let f3 = two ? circuit.d22 : 0;
    let h = longest / 4;
    let next = 0;

    while (next < this.#breaks.length) {
      const target = this.#breaks[next] as number;
      let lands = false;
      // Stretch or halve to land on the break, leaving no sliver of a step behind.
      const left = target - t;
      if (h >= left * 0.999) {
        h = left;
        lands = true;
      } else if (h > left / 2) {
        h = left / 2;
      }
      if (this.steps++ > MAX_STEPS || h < shortest) {
        this.collapsed = true;
        return;
      }
      const hc = h / farads;
      const z = DIAGONAL * hc + esrOhms;
      let e = 0;
      let ok = true;
      let base1 = 0;
      let base2 = 0;
      q1[0] = first1;
      q2[0] = first2;
      s[0] = f0;
      s[1] = f1;
      s[2] = f2;
      s[3] = f3;
      let b = SOLUTION_WEIGHTS[0] as number;
      sums[0] = b * firstRail;
      sums[1] = b * firstLoad;
      sums[2] = b * (firstArm1 + firstArm2);
      sums[3] = b * (firstArm1 * firstArm1 + firstArm2 * firstArm2);
      sums[4] = b * firstWinding * firstWinding;
      sums[5] = b * (first1 * first1 + first2 * first2);
      let heatError = (ERROR_WEIGHTS[0] as number) * firstWinding * firstWinding;
      for (let i = 1; i < STAGES; i += 1) {
        let w1 = 0;
        let w2 = 0;
        let b0 = 0;
        let b1 = 0;
        let b2 = 0;
        let b3 = 0;
        for (let j = 0; j < i; j += 1) {
          const a = STAGE_WEIGHTS[i * STAGES + j] as number;
          w1 += a * (q1[j] as number);
          b0 += a * (s[4 * j] as number);
          if (two) {
            w2 += a * (q2[j] as number);
            b1 += a * (s[4 * j + 1] as number);
            b2 += a * (s[4 * j + 2] as number);
            b3 += a * (s[4 * j + 3] as number);
          }
        }
        base1 = start1 + (this.change1 + hc * w1);
        base2 = start2 + (this.change2 + hc * w2);
        e = this.#source(t + (STAGE_TIMES[i] as number) * h);
        if (!circuit.solve(e, base1, base2, z)) {
          ok = false;
          break;
        }
        q1[i] = circuit.charge1;
        if (two) {
          q2[i] = circuit.charge2;
          const p0 = (m[0] as number) + hc * b0;
          const p1 = (m[1] as number) + hc * b1;
          const p2 = (m[2] as number) + hc * b2;
          const p3 = (m[3] as number) + hc * b3;
          s[4 * i] = circuit.d11 * p0 + circuit.d12 * p2;
          s[4 * i + 1] = circuit.d11 * p1 + circuit.d12 * p3;
          s[4 * i + 2] = circuit.d21 * p0 + circuit.d22 * p2;
          s[4 * i + 3] = circuit.d21 * p1 + circuit.d22 * p3;
        } else {
          s[4 * i] = circuit.d11 * ((m[0] as number) + hc * b0);
        }
        b = SOLUTION_WEIGHTS[i] as number;
        const { amps1, amps2 } = circuit.arms;
        const winding = circuit.windingAmps;
        sums[0] = (sums[0] as number) + b * circuit.railVolts;
        sums[1] = (sums[1] as number) + b * circuit.loadAmps;
        sums[2] = (sums[2] as number) + b * (amps1 + amps2);
        sums[3] = (sums[3] as number) + b * (amps1 * amps1 + amps2 * amps2);
        sums[4] = (sums[4] as number) + b * winding * winding;
        sums[5] = (sums[5] as number) + b * (circuit.charge1 * circuit.charge1 + circuit.charge2 * circuit.charge2);
        heatError += (ERROR_WEIGHTS[i] as number) * winding * winding;
      }
      if (!ok) {
        h /= 4;
        continue;
      }
      let e1 = 0;
      let e2 = 0;
      let c1 = 0;
      let c2 = 0;
      for (let i = 0; i < STAGES; i += 1) {
        const w = ERROR_WEIGHTS[i] as number;
        b = SOLUTION_WEIGHTS[i] as number;
        e1 += w * (q1[i] as number);
        c1 += b * (q1[i] as number);
        if (two) {
          e2 += w * (q2[i] as number);
          c2 += b * (q2[i] as number);
        }
      }
      const error = Math.max(
        (h * Math.max(Math.abs(e1), Math.abs(e2))) / chargeTolerance,
        (h * Math.abs(heatError)) / (STEP_TOLERANCE * this.#heatScale),
      );
      const growth = 0.85 * Math.max(error, 1e-4) ** -0.25;
      if (error > 1 && h > shortest * 4) {
        h *= Math.max(0.15, growth);
        continue;
      }
      for (let k = 0; k < (two ? 4 : 1); k += 1) {
        let sum = 0;
        for (let i = 0; i < STAGES; i += 1) sum += (SOLUTION_WEIGHTS[i] as number) * (s[4 * i + k] as number);
        m[k] = (m[k] as number) + hc * sum;
      }
      this.change1 += hc * c1;
      this.change2 += hc * c2;
      this.railSeconds += h * (sums[0] as number);
      this.loadCoulombs += h * (sums[1] as number);
      this.armCoulombs += h * (sums[2] as number);
      this.armSquares += h * (sums[3] as number);
      this.windingSquares += h * (sums[4] as number);
      this.reservoirSquares += h * (sums[5] as number);
      // The last stage is the end of the step (stiffly accurate): its currents open the next step.
      const last = STAGES - 1;
      first1 = q1[last] as number;
      first2 = q2[last] as number;
      f0 = s[4 * last] as number;
      f1 = s[4 * last + 1] as number;
      f2 = s[4 * last + 2] as number;
      f3 = s[4 * last + 3] as number;
      firstWinding = circuit.windingAmps;
      firstArm1 = circuit.arms.amps1;
      firstArm2 = circuit.arms.amps2;
      firstRail = circuit.railVolts;
      firstLoad = circuit.loadAmps;
      t = lands ? target : t + h;
      this.#note(t, start1 + this.change1, start2 + this.change2, lands);
      if (lands) next += 1;
      h = Math.min(longest, h * Math.min(4, growth));
    }
    if (halfCycles > 0 && this.windingSquares > 0) this.#heatScale = this.windingSquares;
  }
}
