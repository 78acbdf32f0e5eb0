import type { Finding } from '../findings.ts';
import { figure, finding, say } from '../findings/check.ts';
import { allowedNoLoadExcess, inrushBoundAmps, ratedPrimaryAmps, SHORT_CIRCUIT_MARKS } from '../parts/transformer.ts';
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

/** Secondaries in parallel or series must be joined the right way round. */
function phasingFinding({ secondaries, secondaryVolts }: PlanTransformer): Finding[] {
  if (secondaries === 'one' || secondaries === 'two-as-centre-tap') return [];
  const parallel = secondaries === 'two-in-parallel';
  return [
    {
      rule: 'secondary-phasing',
      level: 'not assessed',
      what: parallel ? `Two secondaries in parallel: joined out of phase they short each other with ${say(2 * secondaryVolts, 'V')} round the loop.` : 'Two secondaries in series: joined out of phase they give nothing.',
      numbers: [],
      why: parallel ? 'Nothing but their copper limits that current, and the primary fuse sees little of it.' : 'The rail is then dead, and nothing says why.',
      todo: parallel ? 'Join one end of each, power up through a series lamp, and measure between the free ends: join them only when it reads next to nothing.' : 'Join one end of each, and measure across the free ends before the rectifier is connected.',
      restsOn: ['assumed'],
      source: { id: 'iec-61558-1' },
    },
  ];
}

/** What its marking says of a short, the inrush it may draw, and how far its volts rise with nothing on it. */
function transformerFindings(plan: SupplyPlan, transformer: PlanTransformer): Finding[] {
  const { voltAmps, regulationRatio, shortCircuitMark, basis } = transformer;
  const { mains } = plan;
  const proof = shortCircuitMark === 'inherently-proof' || shortCircuitMark === 'conditionally-proof' || shortCircuitMark === 'fail-safe';
  const primaryAmps = ratedPrimaryAmps({ voltAmps, mainsVolts: mains.nominalVolts });
  const inrush = inrushBoundAmps({ ratedAmps: primaryAmps, regulation: Math.min(1, regulationRatio) });
  const allowed = allowedNoLoadExcess(voltAmps);
  return [
    {
      rule: 'short-circuit-mark',
      level: proof ? 'within' : shortCircuitMark === 'unknown' ? 'not assessed' : 'outside',
      what: proof ? `It is marked so: ${SHORT_CIRCUIT_MARKS[shortCircuitMark]}` : shortCircuitMark === 'unknown' ? 'Nobody has read its short-circuit marking yet.' : `It is marked so: ${SHORT_CIRCUIT_MARKS['not-proof']}`,
      numbers: [],
      why: 'A small transformer with its secondary shorted draws too little from the mains to open a fuse in time; its winding burns instead.',
      todo: proof ? 'Nothing.' : 'Buy a type marked short-circuit-proof, or with a thermal link stated by its maker. The mark is read, never inferred.',
      restsOn: [shortCircuitMark === 'unknown' ? 'assumed' : 'rated'],
      source: { id: 'iec-61558-1', at: 'short-circuit classes' },
    },
    finding({
      rule: 'primary-current',
      level: 'within',
      what: `It takes ${say(primaryAmps, 'A')} from the mains at full load, and no more than ${say(inrush, 'A')} at the peak of switch-on.`,
      numbers: [figure('primary current', primaryAmps, 'A'), figure('inrush at most', inrush, 'A')],
      why: 'The amp’s switch and mains fuse carry this besides what they carry now.',
      todo: 'Give it a fuse of its own, behind the amp’s switch.',
      context: { corner: 'switch-on at the worst instant', restsOn: [basis] },
      source: { id: 'note-transformer-regulation' },
    }),
    finding({
      rule: 'no-load-rise',
      level: 'within',
      what: `Unloaded it gives ${say(regulationRatio, '%')} more than its label says; the standard allows ${say(allowed, '%')} for its size.`,
      numbers: [figure('rise', regulationRatio, ''), figure('allowed', allowed, '')],
      why: 'Reservoir and regulator must bear that, at high mains.',
      todo: 'Measure it unloaded before anything is connected behind it.',
      context: { corner: 'no load', restsOn: [basis] },
      source: { id: 'iec-61558-2-6' },
    }),
  ];
}

/** What nobody can compute: where its field goes. */
const strayField: Finding = {
  rule: 'stray-field',
  level: 'not assessed',
  what: 'Whether its stray field is heard is for a listening test: turn it and move it before it is fixed.',
  numbers: [],
  why: 'A small transformer strays more for its size than a large one, at the mains frequency and its multiples.',
  todo: 'Put it at the mains end, its axis as the mains transformer’s, far from the input and the output transformer.',
  restsOn: ['assumed'],
  source: { id: 'note-transformer-regulation' },
};

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
      ...transformerFindings(plan, transformer),
      ...phasingFinding(transformer),
      strayField,
      ...primary.findings,
      ...(secondary?.findings ?? []),
    ],
  });
}
