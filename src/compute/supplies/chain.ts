import { InputError, requireNumber } from '../errors.ts';
import { solveCorner } from './chain-corner.ts';
import { chainWorking } from './chain-working.ts';
import type { ChainCorner, ChainInput, ChainSolution, SolvedCorner, WorstCorners } from './chain-types.ts';
import { operatingCorners } from './corners.ts';
import { stageJunctionCelsius } from './regulator-stage.ts';
import { voltageStairs } from './voltage-stairs.ts';

const largest = (corners: readonly SolvedCorner[], of: (corner: SolvedCorner) => number): SolvedCorner | undefined => {
  let best: SolvedCorner | undefined;
  for (const candidate of corners) if (best === undefined || of(candidate) > of(best)) best = candidate;
  return best;
};

function worstCorners(corners: readonly SolvedCorner[]): WorstCorners | undefined {
  const loaded = corners.filter(({ corner }) => corner.load !== 'off');
  const first = corners[0];
  if (first === undefined) return undefined;
  const pick = (of: (corner: SolvedCorner) => number, among = corners): SolvedCorner => largest(among, of) ?? first;
  return {
    valley: pick((at) => -(at.headroomVolts ?? at.rectifier.rail.minVolts), loaded),
    heat: pick((at) => at.regulatorWatts),
    windingCurrent: pick((at) => at.windingRmsAmps),
    rippleCurrent: pick((at) => at.rectifier.reservoir.rmsAmps),
    peak: pick((at) => at.rectifier.rail.maxVolts),
    ripple: pick((at) => at.rectifier.rail.rippleVolts),
    reverse: pick((at) => at.rectifier.diode.reverseVolts),
    diodeCurrent: pick((at) => at.rectifier.diode.meanAmps),
  };
}

function checkInput({ winding, load, cooling, stage, topology }: ChainInput): void {
  requireNumber('winding.openCircuitVolts', winding.openCircuitVolts, { min: 0.5, max: 500 });
  requireNumber('winding.ohms', winding.ohms, { min: 0, max: 10_000 });
  if (winding.ratedAmps !== undefined) requireNumber('winding.ratedAmps', winding.ratedAmps, { min: 0.001, max: 100 });
  if (winding.acrossOhms !== undefined) {
    requireNumber('winding.acrossOhms', winding.acrossOhms, { min: 0.01, max: 1e6 });
    if (topology === 'centre-tap') {
      throw new InputError('topology', topology, { expected: 'a rectifier across the whole winding, where heaters hang on it' });
    }
  }
  for (const key of ['offAmps', 'runningAmps', 'everythingAmps'] as const) {
    requireNumber(`load.${key}`, load[key], { min: 0, max: 50 });
  }
  if (load.everythingAmps < load.runningAmps) {
    throw new InputError('load.everythingAmps', load.everythingAmps, { min: load.runningAmps });
  }
  requireNumber('cooling.airCelsius', cooling.airCelsius, { min: -40, max: 150 });
  if (cooling.heatsinkKelvinPerWatt !== undefined) {
    requireNumber('cooling.heatsinkKelvinPerWatt', cooling.heatsinkKelvinPerWatt, { min: 0.05, max: 200 });
  }
  if (stage.kind === 'none') requireNumber('stage.designVolts', stage.designVolts, { min: 0.5, max: 500 });
  else requireNumber('stage.outputVolts', stage.outputVolts, { min: 0.5, max: 100 });
  if (stage.kind === 'buck') requireNumber('stage.lossVolts', stage.lossVolts, { min: 0, max: 20 });
}

/**
 * One winding → rectifier → reservoir → regulator (or none) → load, solved at every operating corner: what the rail
 * does, how far the valley stands above what the regulator needs, what winding, diodes and reservoir carry, where the
 * power goes, and how hot the regulator's junction is. The one chain that every approach with a winding goes through.
 *
 * Assumptions. Winding: an ideal source behind a resistance (no leakage inductance, no saturation), scaled with the
 * mains, the wave clipped to the corner's crest factor. Heaters across it (`acrossOhms`) keep their hot resistance and
 * share its current, solved together with the rectifier. Regulator: draws the load's current plus its own at every
 * instant; a step-down switcher draws constant power; currents are those of the load at the rated rail even when the
 * rail sags, which errs on the cautious side. Without a regulator the load is the resistance that draws its amps at `designVolts`.
 * Diodes at 27 °C with ±50 mV of spread. Junction temperatures are steady, in still air of `airCelsius`.
 *
 * Range: windings 0.5 to 500 V RMS behind 0 to 10 kΩ, loads up to 50 A. Outside it throws `InputError`. A corner at which
 * no steady state exists (a switcher that starves) comes back unsolved with its reason, and the supply does not hold.
 * `known` is a corner that has been solved already with this very input (by `solveCorner`), to spare doing it again.
 */
export function solveChain(input: ChainInput, known?: ChainCorner): ChainSolution {
  checkInput(input);
  return finishChain(input, solveCorners(input, known));
}

/** Solves every corner; where running is everything, the one solution serves both. */
function solveCorners(input: ChainInput, known: ChainCorner | undefined): readonly ChainCorner[] {
  const corners = operatingCorners(input.mains);
  const alike = input.load.runningAmps === input.load.everythingAmps;
  const solved = new Map<string, ChainCorner>();
  if (known !== undefined) solved.set(known.corner.id, known);
  return corners.map((corner) => {
    const twin = alike && corner.load === 'running' ? solved.get(corner.id.replace('-running-', '-everything-')) : undefined;
    const at = solved.get(corner.id) ?? (twin === undefined ? solveCorner(input, corner) : { ...twin, corner });
    solved.set(corner.id, at);
    return at;
  });
}

function finishChain(input: ChainInput, corners: readonly ChainCorner[]): ChainSolution {
  const worst = worstCorners(corners.filter((at) => at.solved));
  // Stairs and working are many strings that only a reader unfolds: made when asked for, once.
  let stairs: ChainSolution['stairs'] | undefined;
  let working: ChainSolution['working'] | undefined;
  return {
    corners,
    unsolved: corners.filter((at) => !at.solved),
    worst,
    get stairs() {
      return (stairs ??= worst === undefined ? [] : voltageStairs(input, worst.valley));
    },
    get working() {
      return (working ??= worst === undefined ? [] : chainWorking(input, worst));
    },
  };
}

/** A solved chain with its regulator cooled otherwise: the circuit is the same, only the junctions move. */
export function coolChain(input: ChainInput, solution: ChainSolution): ChainSolution {
  return finishChain(
    input,
    solution.corners.map((at) => (at.solved ? { ...at, junctionCelsius: stageJunctionCelsius(input.stage, Math.max(0, at.regulatorWatts), input.cooling) } : at)),
  );
}
