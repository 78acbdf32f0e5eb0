import { InputError, requireNumber } from '../errors.ts';
import type { HeaterModel } from '../parts/heater.ts';
import { MAINS_SPREAD } from '../parts/mains.ts';
import type { Suppression } from '../parts/suppression.ts';
import type { WireRow } from '../parts/wire.ts';
import type { ChainInput, ChainStage } from '../supplies/chain-types.ts';
import type { Supply } from '../supplies/supply-types.ts';

/** What feeds the rail. */
export type BenchFeed =
  | { readonly kind: 'winding'; readonly chain: ChainInput }
  | {
      readonly kind: 'converter';
      readonly outputVolts: number;
      readonly outputToleranceRatio: number;
      readonly limitAmps: number;
      /** Behind it; `none` when its output is the rail. */
      readonly stage: ChainStage;
      readonly heatsinkKelvinPerWatt?: number;
    };

/** A built supply on the bench: what is read of it, where, under which mains and load. */
export interface BenchJob {
  readonly feed: BenchFeed;
  readonly mains: {
    readonly nominalVolts: number;
    /** Of the day, RMS; and how far it may have moved unseen, as a ratio each way. */
    readonly volts: number;
    readonly spreadRatio: number;
    readonly hertz: number;
  };
  /** On during the readings, hot, at the rail's nominal volts; and how far from that it may be, each way. */
  readonly load: { readonly amps: number; readonly toleranceRatio: number; readonly heater?: HeaterModel };
  readonly airCelsius: number;
  /** 0 new to 1 at its end of life; 0 when left out. */
  readonly reservoirAge?: number;
  /** A relay coil whose release is looked at, with the suppression that was planned. */
  readonly coil?: { readonly henries: number; readonly ohms: number; readonly suppression: Suppression };
  /** The rail's ground wire to the star: carries the load's current if the rail is joined right, the charging pulses if not. */
  readonly groundWire?: { readonly row: WireRow; readonly metres: number };
  /** Least ripple rejection of the regulator at 120 Hz, dB; 55 when left out (typical). */
  readonly rejectionDecibels?: number;
}

/** Mains was read to this, and has not moved by more during the readings. Assumed. */
const WATCHED_MAINS_RATIO = 0.01;
const LOAD_TOLERANCE = 0.1;

/** Rail volts that the job's load is stated at. */
export function designVolts({ feed }: Pick<BenchJob, 'feed'>): number {
  const stage = feed.kind === 'winding' ? feed.chain.stage : feed.stage;
  return stage.kind === 'none' ? stage.designVolts : stage.outputVolts;
}

/**
 * The bench job of a sized supply (any of the four approaches): its chain or its converter, at the mains of the day.
 *
 * `loadAmps` on during the readings, the plan's running load when left out. Mains as measured, nominal with the whole
 * design spread (a tenth each way) when it was not. Throws `InputError` for a supply that was not sized, or values out of range.
 */
export function benchJob(options: {
  readonly supply: Pick<Supply, 'chainInput' | 'converter'>;
  readonly mains: { readonly nominalVolts: number; readonly hertz: number; readonly measuredVolts?: number };
  readonly airCelsius: number;
  readonly loadAmps?: number;
  readonly loadToleranceRatio?: number;
  readonly more?: Pick<BenchJob, 'reservoirAge' | 'coil' | 'groundWire' | 'rejectionDecibels'> & { readonly heater?: HeaterModel };
}): BenchJob {
  const { supply, mains, more = {} } = options;
  const { heater, ...rest } = more;
  const nominalVolts = requireNumber('mains.nominalVolts', mains.nominalVolts, { min: 50, max: 500 });
  const volts = requireNumber('mains.measuredVolts', mains.measuredVolts ?? nominalVolts, { min: nominalVolts / 2, max: nominalVolts * 1.5 });
  const { chainInput, converter } = supply;
  if (chainInput === undefined && converter === undefined) throw new InputError('supply', 'nothing sized', { expected: 'a supply with a solved chain or converter' });
  const running = chainInput?.load.runningAmps ?? converter?.loadAmps.running ?? 0;
  return {
    feed: chainInput === undefined ? converterFeed(converter) : { kind: 'winding', chain: chainInput },
    mains: { nominalVolts, volts, spreadRatio: mains.measuredVolts === undefined ? MAINS_SPREAD : WATCHED_MAINS_RATIO, hertz: requireNumber('mains.hertz', mains.hertz, { min: 40, max: 70 }) },
    load: {
      amps: requireNumber('loadAmps', options.loadAmps ?? running, { min: 0, max: 50 }),
      toleranceRatio: requireNumber('loadToleranceRatio', options.loadToleranceRatio ?? LOAD_TOLERANCE, { min: 0, max: 0.9 }),
      ...(heater === undefined ? {} : { heater }),
    },
    airCelsius: requireNumber('airCelsius', options.airCelsius, { min: -40, max: 120 }),
    ...rest,
  };
}

function converterFeed(converter: Supply['converter']): BenchFeed {
  if (converter === undefined) throw new InputError('supply', 'no converter', { expected: 'a supply with a solved chain or converter' });
  const { part, stage } = converter;
  return {
    kind: 'converter', outputVolts: part.outputVolts, outputToleranceRatio: part.outputTolerance, limitAmps: part.ratedAmps * part.overloadRatio, stage,
  };
}
