import type { TimedSupply } from '../in-time/timed-supply.ts';
import { copperRatio } from '../parts/copper.ts';
import { THERMAL_VOLTS } from '../parts/diode.ts';
import type { Suppression } from '../parts/suppression.ts';
import type { WireRow } from '../parts/wire.ts';
import type { BuckStage, LinearStage } from '../supplies/chain-types.ts';
import { dropoutOf, heatPath } from '../supplies/regulator-stage.ts';
import { designVolts } from './bench-job.ts';
import type { BenchJob } from './bench-job.ts';
import type { PartDraw } from './part-draw.ts';

/** A defect that changes the circuit itself, so that the general solver is needed. */
export type CircuitDefect = 'shorted-diode' | 'second-ground' | 'missing-reservoir';

/** How the regulator's heat gets to its tab and on to the air, K/W. */
export interface TabPath {
  readonly tabToAir: number;
}

/** One built supply, every part with a value of its own: what the readings are computed from. */
export interface BenchCircuit {
  readonly mainsVolts: number;
  readonly hertz: number;
  /** Conductance of everything on the rail. */
  readonly siemens: number;
  readonly airCelsius: number;
  /** Regulator between source and rail; its set volts and dropout are those drawn. */
  readonly stage: { readonly of: LinearStage | BuckStage; readonly tab: TabPath } | undefined;
  readonly rejectionDecibels: number;
  readonly coil?: { readonly henries: number; readonly ohms: number; readonly suppression: Suppression };
  readonly groundWire?: { readonly row: WireRow; readonly metres: number; readonly carriesPulses: boolean };
  readonly source:
    | {
        readonly kind: 'winding';
        readonly supply: TimedSupply;
        /** Winding by itself; `supply.winding` is it with what hangs across it. */
        readonly ownVolts: number;
        readonly ownOhms: number;
        readonly acrossOhms: number | undefined;
        readonly ratedAmps: number | undefined;
        readonly defect?: CircuitDefect;
      }
    | { readonly kind: 'converter'; readonly volts: number; readonly limitAmps: number };
}

/** Running copper over the cold one it was measured at: 50 K warmer (assumed), as at the operating corners. */
const WARM_COPPER = copperRatio({ fromCelsius: 20, toCelsius: 70 });
const REJECTION_DECIBELS = 55;
const OUTPUT_FARADS = 100e-6;

function drawnStage(job: BenchJob, draw: PartDraw): BenchCircuit['stage'] {
  const { feed } = job;
  const stage = feed.kind === 'winding' ? feed.chain.stage : feed.stage;
  if (stage.kind === 'none') return undefined;
  const cooling = feed.kind === 'winding' ? feed.chain.cooling : { airCelsius: job.airCelsius, ...(feed.heatsinkKelvinPerWatt === undefined ? {} : { heatsinkKelvinPerWatt: feed.heatsinkKelvinPerWatt }) };
  const path = heatPath(stage, cooling);
  const caseShare = stage.kind === 'buck' ? 0 : stage.junctionToCaseKelvinPerWatt;
  const tabToAir = 'junctionToAir' in path ? Math.max(0, path.junctionToAir - caseShare) : path.insulator + path.sinkToAir;
  const common = { outputVolts: stage.outputVolts * draw.output, quiescentAmps: stage.quiescentAmps * draw.quiescent };
  const of = stage.kind === 'buck' ? { ...stage, ...common, headroomVolts: stage.headroomVolts * draw.dropout } : { ...stage, ...common, dropout: stage.dropout.map(([amps, volts]) => [amps, volts * draw.dropout] as const) };
  return { of, tab: { tabToAir: tabToAir * draw.thermal } };
}

/** The job's circuit with its parts drawn. */
export function benchCircuit(job: BenchJob, draw: PartDraw): BenchCircuit {
  const { feed, mains, coil, groundWire } = job;
  const stage = drawnStage(job, draw);
  // Of the load, heaters hot: what follows the rail as a resistor.
  const siemens = (job.load.amps / designVolts(job)) * draw.load;
  const common = {
    mainsVolts: mains.volts * draw.mains,
    hertz: mains.hertz,
    siemens,
    airCelsius: job.airCelsius + draw.airKelvin,
    stage,
    rejectionDecibels: job.rejectionDecibels ?? REJECTION_DECIBELS,
    ...(coil === undefined ? {} : { coil }),
    ...(groundWire === undefined ? {} : { groundWire: { ...groundWire, carriesPulses: false } }),
  };
  if (feed.kind === 'converter') return { ...common, source: { kind: 'converter', volts: feed.outputVolts * draw.converter, limitAmps: feed.limitAmps } };
  const { chain } = feed;
  const { winding, diode, reservoir, topology } = chain;
  const ownVolts = winding.openCircuitVolts * draw.windingVolts * ((mains.volts * draw.mains) / mains.nominalVolts);
  const ownOhms = winding.ohms * draw.windingOhms * (winding.ohmsMeasuredCold === true ? WARM_COPPER : 1);
  const share = winding.acrossOhms === undefined ? 1 : winding.acrossOhms / (winding.acrossOhms + ownOhms);
  const regulator = stage === undefined ? undefined : {
    setVolts: stage.of.outputVolts,
    dropoutVolts: stage.of.kind === 'buck' ? stage.of.headroomVolts : dropoutOf(stage.of, job.load.amps),
    quiescentAmps: stage.of.quiescentAmps,
    outputFarads: OUTPUT_FARADS,
    ...(stage.of.kind === 'buck' || stage.of.shortCircuitAmps === undefined ? {} : { limit: { ...stage.of.shortCircuitAmps, maxInputVolts: stage.of.maxInputVolts } }),
  };
  return {
    ...common,
    source: {
      kind: 'winding',
      supply: {
        hertz: mains.hertz,
        winding: { openCircuitVolts: ownVolts * share, ohms: ownOhms * share },
        crestFactor: draw.crestFactor,
        topology,
        diode: { saturationAmps: diode.saturationAmps * Math.exp(-draw.diodeShiftVolts / (diode.emission * THERMAL_VOLTS)), emission: diode.emission, ohms: diode.ohms },
        reservoir: { farads: reservoir.farads * draw.farads, ohms: reservoir.ohms * draw.esr },
        ...(regulator === undefined ? {} : { regulator }),
      },
      ownVolts,
      ownOhms,
      acrossOhms: winding.acrossOhms,
      ratedAmps: winding.ratedAmps,
    },
  };
}
