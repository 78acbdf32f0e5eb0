import { diodePart, linearRegulator, solveRectifier, windingFromRating, type RectifierSolution, type RectifierTopology } from '../../compute/index.ts';
import { chainDiode, chainReservoir, linearStage } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { operatingCorners, type LoadState, type MainsState, type OperatingCorner, type ReservoirState } from '../../compute/supplies/corners.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import type { Shop } from '../shop.ts';
import { listLoad } from './the-load-list.ts';

type Job = Shop['quillon20'];

/** The Quillon 20's rail as the shop builds it: a small transformer, a bridge, a reservoir and a fixed regulator. */
export function quillonChain(job: Job): ChainInput {
  const { winding, mains, airCelsius, reservoir } = job;
  const ratedAmps = winding.voltAmps / winding.ratedVolts;
  const { topology } = job;
  const { running, design } = listLoad(job);
  return {
    mains,
    winding: { ...windingFromRating({ ratedVolts: winding.ratedVolts, ratedAmps, regulation: winding.regulation }), ratedAmps, basis: 'rated' },
    topology,
    diode: chainDiode(diodePart(job.diode), job.diodeType),
    reservoir: chainReservoir({ ...reservoir, topology, hertz: mains.hertz, airCelsius }),
    stage: linearStage(linearRegulator(job.regulator)),
    load: { offAmps: 0, runningAmps: running.typical, everythingAmps: design.amps },
    cooling: { airCelsius },
  };
}

/** The corner with these states, of the mains that a chain stands on. */
export function cornerOf({ mains }: ChainInput, state: { readonly mains: MainsState; readonly load: LoadState; readonly reservoir: ReservoirState }): OperatingCorner {
  const found = operatingCorners(mains).find((corner) => corner.mains === state.mains && corner.load === state.load && corner.reservoir === state.reservoir);
  if (found === undefined) throw new Error(`there is no corner with ${state.mains} mains, ${state.load}, ${state.reservoir} reservoir`);
  return found;
}

/** Winding, rectifier and reservoir alone at a corner, feeding a steady current: what the rail does before a regulator. */
export function rectifyAt(options: {
  readonly chain: ChainInput;
  readonly corner: OperatingCorner;
  readonly amps: number;
  readonly topology?: RectifierTopology;
  readonly farads?: number;
  readonly winding?: { readonly openCircuitVolts: number; readonly ohms: number };
  readonly crestFactor?: number;
}): RectifierSolution {
  const { chain, corner, amps } = options;
  const { openCircuitVolts, ohms } = options.winding ?? chain.winding;
  return solveRectifier({
    topology: options.topology ?? chain.topology,
    winding: { openCircuitVolts: openCircuitVolts * corner.mainsRatio, ohms },
    hertz: corner.hertz,
    crestFactor: options.crestFactor ?? corner.crestFactor,
    diode: chain.diode,
    reservoir: { farads: (options.farads ?? chain.reservoir.farads) * corner.faradsRatio, ohms: chain.reservoir.ohms * corner.esrRatio },
    load: { amps },
  });
}

/** The same job in the fields that the rectifier's and the regulator's calculators share. */
export const supplyCase = (job: Job, amps: number): InitialCase => ({
  windingVolts: job.winding.ratedVolts,
  windingAmps: job.winding.voltAmps / job.winding.ratedVolts,
  regulation: job.winding.regulation,
  topology: job.topology,
  diode: job.diode,
  farads: job.reservoir.farads,
  ratedVolts: job.reservoir.ratedVolts,
  loadAmps: amps,
  mainsVolts: job.mains.nominalVolts,
  mainsHertz: String(job.mains.hertz),
  mainsSpread: job.mains.highVolts / job.mains.nominalVolts - 1,
});
