import { supplyFromSpareWinding, type ChainInput, type ChainSolution, type OperatingCorner, type SolvedCorner, type Supply } from '../../compute/index.ts';
import type { SpareWinding, SupplyPlan } from '../../compute/plan.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';
import { given } from '../shop.ts';

/** The Tarn 45's rail from its spare winding, sized and solved. */
export interface TarnRail {
  readonly supply: Supply;
  readonly input: ChainInput;
  readonly chain: ChainSolution;
  readonly spare: SpareWinding;
  /** What the parts list says of a role. */
  readonly part: (role: Supply['parts'][number]['role']) => Supply['parts'][number];
  /** One of its solved corners. */
  readonly at: (state: Pick<OperatingCorner, 'mains' | 'load' | 'reservoir'>) => SolvedCorner;
}

export function tarnRail(plan: SupplyPlan): TarnRail {
  const supply = supplyFromSpareWinding(plan);
  const chain = given(supply.chain, 'a rail from the spare winding');
  return {
    supply,
    chain,
    input: given(supply.chainInput, 'a rail from the spare winding'),
    spare: given(plan.amp.spare, 'a spare winding'),
    part: (role) => given(supply.parts.find((each) => each.role === role), `a ${role}`),
    at: ({ mains, load, reservoir }) => {
      const found = chain.corners.find(({ corner }) => corner.mains === mains && corner.load === load && corner.reservoir === reservoir);
      if (found?.solved !== true) throw new Error(`no solution at ${mains} mains, ${load}, ${reservoir}`);
      return found;
    },
  };
}

/** The same rail in the fields of the rectifier's and the regulator's calculators. */
export function tarnCase(plan: SupplyPlan, { input, spare }: TarnRail): InitialCase {
  const ratedAmps = given(spare.ratedAmps, 'the rating of the spare winding');
  const ratedVolts = spare.openCircuitVolts - ratedAmps * spare.ohms;
  return {
    windingVolts: ratedVolts,
    windingAmps: ratedAmps,
    regulation: spare.openCircuitVolts / ratedVolts - 1,
    topology: input.topology,
    diode: given(plan.parts.diode, 'a diode'),
    diodeVolts: input.diode.ratedReverseVolts ?? 100,
    farads: input.reservoir.farads,
    ratedVolts: input.reservoir.ratedVolts,
    loadAmps: input.load.everythingAmps + (input.stage.kind === 'none' ? 0 : input.stage.quiescentAmps),
    mainsVolts: plan.mains.nominalVolts,
    mainsHertz: String(plan.mains.hertz),
    mainsSpread: plan.mains.highVolts / plan.mains.nominalVolts - 1,
    airCelsius: plan.amp.airCelsius,
  };
}
