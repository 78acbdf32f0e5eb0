import { figure, say } from '../findings/check.ts';
import { checkPhasing } from '../findings/phasing.ts';
import type { PlanTransformer, SupplyPlan } from '../plan/plan-types.ts';
import { buildChain, planCooling } from './build-chain.ts';
import { chainSupplyFindings } from './chain-supply.ts';
import type { ChainWinding } from './chain-types.ts';
import { chooseRectifier } from './choose-rectifier.ts';
import { chooseStage } from './choose-stage.ts';
import { judgeSupply } from './judge-supply.ts';
import { loadDraw } from './load-draw.ts';
import { transformerVolume } from './part-volumes.ts';
import { primaryFuse, secondaryFuse } from './size-fuses.ts';
import type { SizedReservoir } from './size-reservoir.ts';
import { sizeTransformer, transformerWinding } from './size-transformer.ts';
import type { SizedPart, Supply } from './supply-types.ts';
import { strayField, transformerFindings } from './transformer-findings.ts';

const WIRING: Record<PlanTransformer['secondaries'], string> = {
  one: '',
  'two-in-series': ', two secondaries in series',
  'two-in-parallel': ', two secondaries in parallel',
  'two-as-centre-tap': ', two secondaries with their joint as the centre tap',
};

function transformerPart(transformer: PlanTransformer, chosenBy: SizedPart['chosenBy'], why: string, mainsVolts: number): SizedPart {
  const { secondaryVolts, secondaries, voltAmps, regulationRatio, basis } = transformer;
  const twice = secondaries === 'one' ? '' : '2 × ';
  return {
    role: 'transformer',
    name: `${say(voltAmps, 'VA')} transformer, ${say(mainsVolts, 'V')} to ${twice}${say(secondaryVolts, 'V')}${WIRING[secondaries]}`,
    count: 1,
    chosenBy,
    why,
    numbers: [figure('VA', voltAmps, 'VA'), figure('secondary', secondaryVolts, 'V'), figure('regulation', regulationRatio, '')],
    basis,
    cubicMetres: transformerVolume(voltAmps),
  };
}

/**
 * The rail from a small transformer added for it: volts and VA picked from the standard range for the low-mains valley
 * and the solved RMS current, or taken from the plan (series, parallel and centre-tapped secondaries included); its
 * no-load rise carried through to capacitor and regulator; primary current, inrush bound and short-circuit marking.
 * Throws `InputError` for a plan that names parts which do not exist or do not fit each other.
 */
export function supplyFromTransformer(plan: SupplyPlan): Supply {
  const draw = loadDraw(plan);
  const stage = chooseStage(plan, draw.chain.everythingAmps);
  const named = plan.parts.transformer;
  const topology = plan.parts.topology ?? (named?.secondaries === 'two-as-centre-tap' ? 'centre-tap' : 'bridge');

  let transformer: PlanTransformer;
  let winding: ChainWinding;
  let why = 'Named in the plan.';
  let reservoir: SizedReservoir | undefined;
  if (named !== undefined) {
    transformer = named;
    winding = transformerWinding(named);
  } else {
    const { diode } = chooseRectifier({ named: plan.parts.diode, kind: 'silicon', topology, dcAmps: draw.chain.everythingAmps, openCircuitVolts: plan.rail.volts, mains: plan.mains });
    const sized = sizeTransformer({ mains: plan.mains, topology, diode, stage: stage.stage, load: draw.chain, cooling: planCooling(plan, stage.stage) });
    ({ transformer, winding, why, reservoir } = sized);
  }
  const built = buildChain({ plan, draw, stage, winding, topology, kinds: ['silicon'], ...(reservoir === undefined ? {} : { reservoir }) });
  const primary = primaryFuse({ transformer, winding, mainsVolts: plan.mains.nominalVolts, hertz: plan.mains.hertz, chosen: plan.protections.primaryFuse });
  const secondary = secondaryFuse({ input: built.input, chain: built.chain, chosen: plan.protections.secondaryFuse });
  return judgeSupply({
    plan,
    approach: 'separate-transformer',
    parts: [transformerPart(transformer, named === undefined ? 'sized' : 'plan', why, plan.mains.nominalVolts), primary.part, ...built.parts, ...(secondary === undefined ? [] : [secondary.part])],
    chainInput: built.input,
    chain: built.chain,
    findings: [
      ...chainSupplyFindings({ plan, built, draw }),
      ...transformerFindings({ mains: plan.mains, transformer }),
      ...checkPhasing({ corner: 'before anything is connected behind it', restsOn: ['assumed'], secondaries: transformer.secondaries, secondaryVolts: transformer.secondaryVolts, winding }),
      strayField,
      ...primary.findings,
      ...(secondary?.findings ?? []),
    ],
  });
}
