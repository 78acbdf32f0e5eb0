import { InputError, requireNumber } from '../errors.ts';
import type { Basis } from '../findings.ts';
import { fuseGates, fuseStandard } from '../parts/fuse.ts';
import { checkConnections, requireOneOf } from './check-connections.ts';
import type { GroundConnections, WindingKind } from './connections.ts';

/** The diode as the solver sees it, with those of its ratings that somebody has read. */
export interface GroundingDiode {
  readonly saturationAmps: number;
  readonly emission: number;
  readonly ohms: number;
  /** Rated mean forward current with a reservoir. */
  readonly ratedMeanAmps?: number;
  /** One half cycle of surge that the sheet allows, not repeated. */
  readonly surgeAmps?: number;
  /** Junction to the air of the chassis. */
  readonly kelvinPerWatt?: number;
  readonly maxJunctionCelsius?: number;
}

/**
 * A rail made from a transformer winding: a spare one, the heater winding, or that of a small transformer added for it.
 * `ohms` is the whole winding's, as seen from the secondary. A tapped winding is taken as two halves with half of the
 * volts and half of the ohms each. That counts the primary's share twice over when one half conducts alone, so the
 * fault current of a real transformer is up to about a third higher than the one solved.
 */
export interface WindingSupply {
  readonly kind: 'winding';
  readonly windingKind: WindingKind;
  /** A transformer of its own: no high-voltage winding shares its core, so none can break through to it there. */
  readonly ownTransformer?: boolean;
  readonly topology: 'bridge' | 'centre-tap' | 'half-wave' | 'doubler';
  /** End to end. */
  readonly openCircuitVolts: number;
  readonly ohms: number;
  readonly hasCentreTap: boolean;
  readonly ratedAmps?: number;
  /** The hot valve heaters across the whole winding, as one resistance. */
  readonly heaterOhms?: number;
  readonly diode: GroundingDiode;
  /** Each of the two capacitors for the doubler. */
  readonly reservoir: { readonly farads: number; readonly ohms: number };
}

/** A rail made by an isolated mains converter: constant voltage up to its current limit. */
export interface ConverterSupply {
  readonly kind: 'converter';
  readonly outputVolts: number;
  /** What it delivers into a short circuit. */
  readonly limitAmps: number;
}

/** A fuse by its rating and the id of its standard in the catalogue of fuses. */
export interface GroundingFuse {
  readonly ratedAmps: number;
  readonly standard: string;
}

/** Where the rail comes from. */
export type GroundingSupply = WindingSupply | ConverterSupply;

/**
 * Everything the grounding analysis needs to know, as plain electrical values at one operating corner. A plan is turned
 * into it by its owner: open-circuit volts, ohms and mains volts at the corner (high mains is the worst for currents,
 * leakage and potentials), the load as the solved rail's volts over its amps, ratings only where somebody has read them.
 */
export interface GroundingJob {
  readonly hertz: number;
  readonly mainsVolts: number;
  /** The fuse that the transformer's primary is behind, and what the amp draws through it beside this winding. */
  readonly mainsFuse?: GroundingFuse & { readonly otherAmps: number };
  /** A fuse between the winding's first end and the rectifier; its resistance is left out. */
  readonly secondaryFuse?: GroundingFuse;
  readonly supply: GroundingSupply;
  /** What hangs on the rail, at the reservoir or the converter's output: rail volts over rail amps. */
  readonly loadOhms: number;
  /** Air inside the chassis; 55 °C when left out, a usual design figure for a valve amp. */
  readonly airCelsius?: number;
  /** Resistance of the single insulation breakdown that is tried out; 1 kΩ when left out, assumed. */
  readonly breakdownOhms?: number;
  /** What the volts, ohms and ratings given here stand on; assumed when left out. */
  readonly restsOn?: readonly Basis[];
  readonly connections: GroundConnections;
}

const checkWinding = (supply: WindingSupply): void => {
  requireOneOf('supply.windingKind', supply.windingKind, ['low-voltage', 'heater', 'rectifier-valve']);
  requireOneOf('supply.topology', supply.topology, ['bridge', 'centre-tap', 'half-wave', 'doubler']);
  requireNumber('supply.openCircuitVolts', supply.openCircuitVolts, { min: 0.1, max: 1000 });
  requireNumber('supply.ohms', supply.ohms, { min: 1e-4, max: 1e4 });
  if (supply.ratedAmps !== undefined) requireNumber('supply.ratedAmps', supply.ratedAmps, { min: 1e-3, max: 1000 });
  if (supply.heaterOhms !== undefined) requireNumber('supply.heaterOhms', supply.heaterOhms, { min: 1e-3, max: 1e6 });
  requireNumber('supply.diode.saturationAmps', supply.diode.saturationAmps, { min: 1e-15, max: 0.1 });
  requireNumber('supply.diode.emission', supply.diode.emission, { min: 0.5, max: 5 });
  requireNumber('supply.diode.ohms', supply.diode.ohms, { min: 0, max: 100 });
  const { ratedMeanAmps, surgeAmps, kelvinPerWatt, maxJunctionCelsius } = supply.diode;
  if (ratedMeanAmps !== undefined) requireNumber('supply.diode.ratedMeanAmps', ratedMeanAmps, { min: 1e-3, max: 1000 });
  if (surgeAmps !== undefined) requireNumber('supply.diode.surgeAmps', surgeAmps, { min: 1e-2, max: 1e5 });
  if (kelvinPerWatt !== undefined) requireNumber('supply.diode.kelvinPerWatt', kelvinPerWatt, { min: 0.1, max: 1000 });
  if (maxJunctionCelsius !== undefined) requireNumber('supply.diode.maxJunctionCelsius', maxJunctionCelsius, { min: 85, max: 250 });
  requireNumber('supply.reservoir.farads', supply.reservoir.farads, { min: 1e-7, max: 1 });
  requireNumber('supply.reservoir.ohms', supply.reservoir.ohms, { min: 0, max: 100 });
  if (supply.topology === 'centre-tap' && !supply.hasCentreTap) {
    throw new InputError('supply.topology', supply.topology, { expected: 'a winding with a centre tap for this rectifier' });
  }
};

/**
 * Throws `InputError` for a job that cannot be: a value outside its range, a tap grounded that the winding does not
 * have, a winding reference on a converter. Gives the job back.
 */
export function checkJob(job: GroundingJob): GroundingJob {
  requireNumber('hertz', job.hertz, { min: 1, max: 1000 });
  requireNumber('mainsVolts', job.mainsVolts, { min: 50, max: 500 });
  requireNumber('loadOhms', job.loadOhms, { min: 1e-2, max: 1e9 });
  if (job.airCelsius !== undefined) requireNumber('airCelsius', job.airCelsius, { min: -20, max: 120 });
  if (job.breakdownOhms !== undefined) requireNumber('breakdownOhms', job.breakdownOhms, { min: 1, max: 1e9 });
  if (job.mainsFuse) requireNumber('mainsFuse.otherAmps', job.mainsFuse.otherAmps, { min: 0, max: 63 });
  for (const fuse of [job.mainsFuse, job.secondaryFuse]) if (fuse) fuseGates({ standard: fuseStandard(fuse.standard), ratedAmps: fuse.ratedAmps });
  const { supply } = job;
  requireOneOf('supply.kind', supply.kind, ['winding', 'converter']);
  if (supply.kind === 'winding') checkWinding(supply);
  else {
    requireNumber('supply.outputVolts', supply.outputVolts, { min: 0.5, max: 400 });
    requireNumber('supply.limitAmps', supply.limitAmps, { min: 1e-3, max: 1000 });
  }
  checkConnections(job.connections, supply);
  return job;
}
