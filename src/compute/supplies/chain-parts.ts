import { InputError, requireNumber } from '../errors.ts';
import { electrolytic, esrLimitOhms, rippleLimitAmps, typicalRippleAmps } from '../parts/capacitor.ts';
import type { DiodePart } from '../parts/diode.ts';
import { JUNCTION_LIMIT_CELSIUS } from '../parts/heatsink.ts';
import type { LinearRegulator } from '../parts/regulator-linear.ts';
import type { BuckRow } from '../parts/regulator-switching.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import type { BuckStage, ChainDiode, ChainReservoir, LinearStage } from './chain-types.ts';

/** Times per mains cycle that a reservoir is refilled: the ripple frequency over the mains frequency. */
export const REFILLS_PER_CYCLE: Record<RectifierTopology, 1 | 2> = { bridge: 2, 'centre-tap': 2, 'half-wave': 1, doubler: 1 };

/**
 * A catalogue diode as the chain takes it: its typical drop (the corners add the spread), its mean rating with the
 * capacitor-load derating, and the reverse rating of the named type of its family, the highest when none is named.
 * Throws `InputError` for a type that the family does not have.
 */
export function chainDiode(part: DiodePart, typeName?: string): ChainDiode {
  const type = typeName === undefined ? part.types.at(-1) : part.types.find((each) => each.name === typeName);
  if (type === undefined) throw new InputError('typeName', typeName, { expected: part.types.map((each) => each.name).join(', ') });
  const { saturationAmps, emission, ohms, basis } = part.typical;
  return {
    name: type.name,
    saturationAmps,
    emission,
    ohms,
    ratedMeanAmps: part.averageAmps * part.capacitiveLoadFactor,
    ratedReverseVolts: type.reverseVolts,
    basis,
  };
}

/**
 * A catalogue linear regulator as the chain takes it, with the dropout to plan with, its largest own current and its
 * overall tolerance. An adjustable part needs `outputVolts`; its tolerance then covers the reference and two 1 %
 * resistors. Throws `InputError` when they are missing, or given otherwise for a part with a fixed output.
 */
export function linearStage(part: LinearRegulator, outputVolts?: number): LinearStage {
  if (part.family === 'adjustable') requireNumber('outputVolts', outputVolts, { min: part.outputVolts, max: part.maxInputVolts });
  else if (outputVolts !== undefined && outputVolts !== part.outputVolts) {
    throw new InputError('outputVolts', outputVolts, { expected: `${part.outputVolts}, the output of ${part.name}` });
  }
  const output = outputVolts ?? part.outputVolts;
  // Two resistors, each off by 1 % the unhelpful way, move the part of the output above the reference by about 2 %.
  const resistors = part.family === 'adjustable' ? 0.02 * (1 - part.outputVolts / output) : 0;
  return {
    kind: part.family,
    name: part.name,
    outputVolts: output,
    outputToleranceRatio: part.tolerance.overall + resistors,
    dropout: part.plannedDropout.points,
    quiescentAmps: part.quiescentAmps.max + (part.family === 'adjustable' ? part.minLoadAmps : 0),
    maxInputVolts: part.maxInputVolts + (part.family === 'adjustable' ? output : 0),
    ratedAmps: part.maxAmps,
    junctionToCaseKelvinPerWatt: part.junctionToCase,
    junctionToAirKelvinPerWatt: part.junctionToAir,
    maxJunctionCelsius: Math.min(JUNCTION_LIMIT_CELSIUS, part.junctionAbsoluteCelsius),
    shortCircuitAmps: part.shortCircuitAmps,
    basis: part.plannedDropout.basis,
  };
}

/** Rise of a small step-down board's hottest part over the air, K/W. Assumed from its size: none is printed. */
const BUCK_KELVIN_PER_WATT = 40;

/** A catalogue step-down module as the chain takes it, rated for what small boards really bear. Typical and assumed. */
export function buckStage(part: BuckRow, outputVolts: number): BuckStage {
  return {
    kind: 'buck',
    name: part.name,
    outputVolts: requireNumber('outputVolts', outputVolts, { min: 0.8, max: 60 }),
    outputToleranceRatio: part.tolerance,
    lossVolts: part.lossVolts,
    headroomVolts: part.headroomVolts,
    minInputVolts: part.minInputVolts,
    maxInputVolts: part.maxInputVolts,
    quiescentAmps: part.idleAmps,
    ratedAmps: part.realisticAmps,
    junctionToAirKelvinPerWatt: BUCK_KELVIN_PER_WATT,
    maxJunctionCelsius: JUNCTION_LIMIT_CELSIUS,
    basis: 'assumed',
  };
}

/**
 * An electrolytic as the chain takes it: largest ESR of a new one, and the ripple current allowed at this rectifier's
 * ripple frequency and air. Without a printed rating the lowest of makers' tables for its class stands, typical.
 */
export function chainReservoir(options: {
  readonly farads: number;
  readonly ratedVolts: number;
  readonly ratedRippleAmps?: number;
  /** Row of the electrolytic classes; `general-105` when left out. */
  readonly kind?: string;
  readonly topology: RectifierTopology;
  readonly hertz: number;
  readonly airCelsius: number;
}): ChainReservoir {
  const { farads, ratedVolts, ratedRippleAmps, topology, hertz, airCelsius } = options;
  const row = electrolytic(options.kind ?? 'general-105');
  return {
    farads,
    ohms: esrLimitOhms({ farads, ratedVolts }),
    ratedVolts,
    ratedRippleAmps: rippleLimitAmps({
      row,
      ratedAmps: ratedRippleAmps ?? typicalRippleAmps({ row, farads }).lowest,
      rippleHertz: REFILLS_PER_CYCLE[topology] * hertz,
      celsius: airCelsius,
    }),
    basis: ratedRippleAmps === undefined ? 'typical' : 'rated',
  };
}
