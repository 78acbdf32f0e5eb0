import { clippedSineAt } from '../network/clipped-sine.ts';
import type { ClippedSine } from '../network/clipped-sine.ts';
import { DIAGONAL, ERROR_WEIGHTS, SOLUTION_WEIGHTS, STAGES, STAGE_TIMES, STAGE_WEIGHTS } from './esdirk4.ts';
import type { RectifierCircuit } from './rectifier-circuit.ts';

/** Local error allowed in one step, as a part of the charge (and of the heat) of the whole pass. */
const STEP_TOLERANCE = 2e-5;
/** While the search is still far off, a rougher pass tells the way as well. */
const ROUGH_TOLERANCE = 1e-3;
/** No step is longer than this part of a half-cycle, so that no charging pulse is stepped over unseen. */
const LONGEST_STEP = 1 / 20;
/** A step this small (part of a half-cycle) is taken whatever its error: a jump stays a jump however finely cut. */
const SHORTEST_STEP = 1e-8;
/** Attempts after which a pass is given up; a demanding one takes about three hundred. */
const MAX_ATTEMPTS = 3000;

const LAST = STAGES - 1;
/** Quantities whose integrals the results are made of, in the order of `#measures`. */
const RAIL = 0;
const LOAD = 1;
const ARMS = 2;
const ARMS_SQUARED = 3;
const WINDING_SQUARED = 4;
const RESERVOIR_SQUARED = 5;
const MEASURES = 6;

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
}

/** How a pass chooses its steps: by a rough error, by the full one, or those of the last pass again. */
export type PassMode = 'rough' | 'fine' | 'again';

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
  #mesh: number[] = [];
  readonly record: PassRecord = { seconds: [], reservoir1Volts: [], reservoir2Volts: [], charge1Amps: [], charge2Amps: [] };
  /** Change of each reservoir voltage over the pass (kept apart from the voltage: at no load it is nanovolts). */
  change1 = 0;
  change2 = 0;
  /** ∂(change over the pass)/∂(voltage at the start), row by row. */
  readonly sensitivity = new Float64Array(4);
  /** True when a constant-power load has dragged the rail down, or no step is short enough: there is no end of the pass. */
  collapsed = false;
  /** Largest error of a step, in units of what a fine pass allows. */
  worstError = 0;

  readonly #integrals = new Float64Array(MEASURES);
  /** Per stage: reservoir currents, their response to the two starting voltages, and the measures. */
  readonly #charge1 = new Float64Array(STAGES);
  readonly #charge2 = new Float64Array(STAGES);
  readonly #response = new Float64Array(4 * STAGES);
  readonly #measures = new Float64Array(MEASURES * STAGES);

  constructor(options: MainsPassOptions) {
    this.#o = options;
    this.#heatScale = options.heatScale;
    const corner = options.wave.cornerRadians / Math.PI;
    const perHalf = corner > 0.5 - 1e-9 ? [0.5, 1] : [corner, 0.5, 1 - corner, 1];
    const half = 0.5 / options.hertz;
    this.#breaks = [];
    for (let n = 0; n < options.halfCycles; n += 1) for (const part of perHalf) this.#breaks.push((n + part) * half);
  }

  /** Integrals over the pass; of all reservoirs together. */
  get railVoltSeconds(): number {
    return this.#integrals[RAIL] as number;
  }
  get loadCoulombs(): number {
    return this.#integrals[LOAD] as number;
  }
  get armCoulombs(): number {
    return this.#integrals[ARMS] as number;
  }
  get armAmpSquaredSeconds(): number {
    return this.#integrals[ARMS_SQUARED] as number;
  }
  get windingAmpSquaredSeconds(): number {
    return this.#integrals[WINDING_SQUARED] as number;
  }
  get reservoirAmpSquaredSeconds(): number {
    return this.#integrals[RESERVOIR_SQUARED] as number;
  }

  run(start1: number, start2: number, mode: PassMode): void {
    const { hertz } = this.#o;
    const half = 0.5 / hertz;
    const rough = mode === 'rough';
    const longest = half * LONGEST_STEP * (rough ? 2 : 1);
    const shortest = half * SHORTEST_STEP;
    const allowed = rough ? ROUGH_TOLERANCE / STEP_TOLERANCE : 1;
    const mesh = mode === 'again' ? this.#mesh : undefined;
    this.#begin(start1, start2);
    if (this.collapsed) return;

    let t = 0;
    let h = longest / 4;
    let next = 0;
    let attempts = 0;
    let steps = 0;
    while (next < this.#breaks.length) {
      const goal = this.#breaks[next] as number;
      let end: number;
      if (mesh) {
        end = mesh[steps] as number;
      } else {
        const left = goal - t;
        // Stretch or halve to land on the break, leaving no sliver of a step behind.
        if (h >= left * 0.999) end = goal;
        else end = h > left / 2 ? t + left / 2 : t + h;
      }
      const step = end - t;
      attempts += 1;
      if (attempts > MAX_ATTEMPTS || step < shortest * 1e-3) {
        this.collapsed = true;
        return;
      }
      if (!this.#stages(start1, start2, t, step)) {
        if (mesh) {
          this.collapsed = true;
          return;
        }
        h = step / 4;
        continue;
      }
      const error = this.#error(step);
      const growth = 0.85 * Math.max(error / allowed, 1e-4) ** -0.25;
      if (!mesh && error > allowed && step > shortest) {
        h = Math.max(shortest, step * Math.max(0.15, growth));
        continue;
      }
      this.worstError = Math.max(this.worstError, error);
      this.#accept(start1, start2, end, step);
      t = end;
      steps += 1;
      if (end === goal) next += 1;
      h = Math.min(longest, step * Math.min(4, Math.max(0.5, growth)));
    }
    if (!mesh) this.#mesh = this.record.seconds.slice(1);
    if (this.windingAmpSquaredSeconds > 0) this.#heatScale = this.windingAmpSquaredSeconds;
  }

  /** Empties the record and the integrals, and solves the first instant. */
  #begin(start1: number, start2: number): void {
    const { circuit, esrOhms } = this.#o;
    for (const list of Object.values(this.record)) list.length = 0;
    this.#integrals.fill(0);
    this.change1 = this.change2 = this.worstError = 0;
    this.sensitivity.fill(0);
    this.collapsed = !circuit.solve(0, start1, start2, esrOhms);
    if (this.collapsed) return;
    this.#read(LAST, 1, 0, 0, 1);
    this.#carry(0, start1, start2);
  }

  /** Takes down what the circuit just solved says at a stage, the reservoirs' bases having the given sensitivity. */
  #read(stage: number, p0: number, p1: number, p2: number, p3: number): void {
    const { circuit } = this.#o;
    const s = this.#response;
    const m = this.#measures;
    const { charge1, charge2, windingAmps } = circuit;
    const { amps1, amps2 } = circuit.arms;
    this.#charge1[stage] = charge1;
    const r = 4 * stage;
    if (circuit.states === 1) {
      s[r] = circuit.d11 * p0;
    } else {
      this.#charge2[stage] = charge2;
      s[r] = circuit.d11 * p0 + circuit.d12 * p2;
      s[r + 1] = circuit.d11 * p1 + circuit.d12 * p3;
      s[r + 2] = circuit.d21 * p0 + circuit.d22 * p2;
      s[r + 3] = circuit.d21 * p1 + circuit.d22 * p3;
    }
    const at = MEASURES * stage;
    m[at + RAIL] = circuit.railVolts;
    m[at + LOAD] = circuit.loadAmps;
    m[at + ARMS] = amps1 + amps2;
    m[at + ARMS_SQUARED] = amps1 * amps1 + amps2 * amps2;
    m[at + WINDING_SQUARED] = windingAmps * windingAmps;
    m[at + RESERVOIR_SQUARED] = charge1 * charge1 + charge2 * charge2;
  }

  /** The last stage is the end of the step (stiffly accurate): it opens the next one, and is recorded. */
  #carry(seconds: number, reservoir1Volts: number, reservoir2Volts: number): void {
    this.#charge1[0] = this.#charge1[LAST] as number;
    this.#charge2[0] = this.#charge2[LAST] as number;
    this.#response.copyWithin(0, 4 * LAST);
    this.#measures.copyWithin(0, MEASURES * LAST);
    const { record } = this;
    record.seconds.push(seconds);
    record.reservoir1Volts.push(reservoir1Volts);
    record.reservoir2Volts.push(reservoir2Volts);
    record.charge1Amps.push(this.#charge1[0] as number);
    record.charge2Amps.push(this.#charge2[0] as number);
  }

  /** Solves the implicit stages of a step; false when one of them has no solution. */
  #stages(start1: number, start2: number, t: number, step: number): boolean {
    const { circuit, wave, openCircuitVolts, hertz, farads, esrOhms } = this.#o;
    const two = circuit.states === 2;
    const perFarad = step / farads;
    const seriesOhms = DIAGONAL * perFarad + esrOhms;
    const omega = 2 * Math.PI * hertz;
    const q1 = this.#charge1;
    const q2 = this.#charge2;
    const s = this.#response;
    const m = this.sensitivity;
    for (let i = 1; i < STAGES; i += 1) {
      let w1 = 0;
      let w2 = 0;
      let p0 = 0;
      let p1 = 0;
      let p2 = 0;
      let p3 = 0;
      for (let j = 0; j < i; j += 1) {
        const a = STAGE_WEIGHTS[i * STAGES + j] as number;
        w1 += a * (q1[j] as number);
        p0 += a * (s[4 * j] as number);
        if (two) {
          w2 += a * (q2[j] as number);
          p1 += a * (s[4 * j + 1] as number);
          p2 += a * (s[4 * j + 2] as number);
          p3 += a * (s[4 * j + 3] as number);
        }
      }
      const e = openCircuitVolts * clippedSineAt(wave, omega * (t + (STAGE_TIMES[i] as number) * step));
      const base1 = start1 + (this.change1 + perFarad * w1);
      const base2 = start2 + (this.change2 + perFarad * w2);
      if (!circuit.solve(e, base1, base2, seriesOhms)) return false;
      this.#read(
        i,
        1 + ((m[0] as number) + perFarad * p0), (m[1] as number) + perFarad * p1,
        (m[2] as number) + perFarad * p2, 1 + ((m[3] as number) + perFarad * p3),
      );
    }
    return true;
  }

  /** Error of the step just staged, in units of what a fine pass allows: of charge, and of the winding's heat. */
  #error(step: number): number {
    const { chargeScale, farads, openCircuitVolts, wave } = this.#o;
    let e1 = 0;
    let e2 = 0;
    let heat = 0;
    for (let i = 0; i < STAGES; i += 1) {
      const w = ERROR_WEIGHTS[i] as number;
      e1 += w * (this.#charge1[i] as number);
      e2 += w * (this.#charge2[i] as number);
      heat += w * (this.#measures[MEASURES * i + WINDING_SQUARED] as number);
    }
    const charge = STEP_TOLERANCE * Math.min(chargeScale, farads * openCircuitVolts * wave.crestFactor);
    return Math.max(
      (step * Math.max(Math.abs(e1), Math.abs(e2))) / charge,
      (step * Math.abs(heat)) / (STEP_TOLERANCE * this.#heatScale),
    );
  }

  #accept(start1: number, start2: number, end: number, step: number): void {
    const { farads } = this.#o;
    const perFarad = step / farads;
    const m = this.sensitivity;
    for (let i = 0; i < STAGES; i += 1) {
      const b = SOLUTION_WEIGHTS[i] as number;
      if (b === 0) continue;
      this.change1 += perFarad * b * (this.#charge1[i] as number);
      this.change2 += perFarad * b * (this.#charge2[i] as number);
      for (let k = 0; k < 4; k += 1) m[k] = (m[k] as number) + perFarad * b * (this.#response[4 * i + k] as number);
      for (let k = 0; k < MEASURES; k += 1) {
        this.#integrals[k] = (this.#integrals[k] as number) + step * b * (this.#measures[MEASURES * i + k] as number);
      }
    }
    this.#carry(end, start1 + this.change1, start2 + this.change2);
  }
}
