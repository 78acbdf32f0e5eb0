import { diodePart, linearRegulator, solveRectifier, type RectifierSolution, type RectifierTopology } from '../../compute/index.ts';
import type { PlanTransformer, SupplyPlan } from '../../compute/plan.ts';
import { chainDiode, chainReservoir, linearStage } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { operatingCorners, type LoadState, type MainsState, type OperatingCorner, type ReservoirState } from '../../compute/supplies/corners.ts';
import { transformerWinding } from '../../compute/supplies/size-transformer.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import { given } from '../shop.ts';
import { listLoad } from './the-load-list.ts';

/** The type of the diode family that the shop fits. */
const DIODE_TYPE = '1N4002';

/** What a plan must name before a lesson can solve it as a small transformer with a regulator behind. */
export const settledParts = ({ parts }: SupplyPlan): { readonly topology: RectifierTopology; readonly transformer: PlanTransformer; readonly regulator: string; readonly diode: string; readonly reservoir: { readonly farads: number; readonly ratedVolts: number } } => ({
  topology: given(parts.topology, 'a rectifier'),
  transformer: given(parts.transformer, 'a transformer'),
  regulator: given(parts.regulator, 'a regulator'),
  diode: given(parts.diode, 'a diode'),
  reservoir: given(parts.reservoir, 'a reservoir'),
});

/** The Quillon 20's rail as the shop builds it, sized for its load list with the margin on. */
export function quillonChain(plan: SupplyPlan): ChainInput {
  const { topology, transformer, regulator, diode, reservoir } = settledParts(plan);
  const { airCelsius } = plan.amp;
  const { running, design } = listLoad(plan);
  return {
    mains: plan.mains,
    winding: transformerWinding(transformer),
    topology,
    diode: chainDiode(diodePart(diode), DIODE_TYPE),
    reservoir: chainReservoir({ ...reservoir, topology, hertz: plan.mains.hertz, airCelsius }),
    stage: linearStage(linearRegulator(regulator)),
    load: { offAmps: 0, runningAmps: running.typical, everythingAmps: Number(design.amps.toPrecision(3)) },
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

/** The same plan in the fields that the rectifier's and the regulator's calculators share. */
export function supplyCase(plan: SupplyPlan, amps: number): InitialCase {
  const { topology, transformer, diode, reservoir } = settledParts(plan);
  return {
    windingVolts: transformer.secondaryVolts,
    windingAmps: transformer.voltAmps / transformer.secondaryVolts,
    regulation: transformer.regulationRatio,
    topology,
    diode,
    farads: reservoir.farads,
    ratedVolts: reservoir.ratedVolts,
    loadAmps: amps,
    mainsVolts: plan.mains.nominalVolts,
    mainsHertz: String(plan.mains.hertz),
    mainsSpread: plan.mains.highVolts / plan.mains.nominalVolts - 1,
    airCelsius: plan.amp.airCelsius,
  };
}
