import type { Finding } from '../findings.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../findings/regulator.ts';
import type { SpareWinding, SupplyPlan } from '../plan/plan-types.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import { transformerFinding } from './amp-findings.ts';
import { buildChain } from './build-chain.ts';
import type { BuiltChain } from './build-chain.ts';
import { chainSupplyFindings } from './chain-supply.ts';
import type { ChainSolution, ChainWinding } from './chain-types.ts';
import { chooseStage } from './choose-stage.ts';
import { judgeSupply } from './judge-supply.ts';
import { loadDraw } from './load-draw.ts';
import { secondaryFuse } from './size-fuses.ts';
import type { Supply } from './supply-types.ts';

/** VA that the rectifier takes from the transformer: open-circuit volts times RMS amps, at the worst solved corner. */
export function addedVoltAmps(winding: ChainWinding, topology: RectifierTopology, chain: ChainSolution): number {
  const halves = topology === 'centre-tap' ? 2 : 1;
  return Math.max(
    0,
    ...chain.corners.flatMap((at) => (at.solved ? [halves * winding.openCircuitVolts * at.corner.mainsRatio * (at.windingRmsAmps - (at.across?.rmsAmpsBefore ?? 0))] : [])),
  );
}

const noWinding: Finding = {
  rule: 'no-spare-winding',
  level: 'outside',
  what: 'The amp has no spare winding.',
  numbers: [],
  why: 'There is nothing to take this rail from.',
  todo: 'Use one of the other ways.',
  restsOn: ['measured'],
  source: { id: 'arithmetic' },
};

function rectifierValveVeto({ amp }: SupplyPlan): Finding {
  const volts = amp.highTensionVolts;
  return {
    rule: 'rectifier-valve-winding',
    level: 'hazard',
    what: `This winding feeds a rectifier valve: with the valve fitted it stands at the high voltage${volts === undefined ? '' : `, ${volts} V or more above the chassis`}. It is not a spare winding.`,
    numbers: volts === undefined ? [] : [{ name: 'high voltage', value: volts, unit: 'V' }],
    why: 'The valve’s cathode is the high voltage, and its heater is the cathode or is tied to it. A rail made from this winding kills.',
    todo: 'Leave this winding alone; use a separate transformer or a converter.',
    restsOn: ['assumed'],
    source: { id: 'ds-5ar4' },
    harm: 'shock',
  };
}

/** The winding as a topology takes it: whole, or one half of it. */
function seenBy(spare: SpareWinding, topology: RectifierTopology): ChainWinding {
  const share = topology === 'centre-tap' ? 0.5 : 1;
  return {
    openCircuitVolts: spare.openCircuitVolts * share,
    ohms: spare.ohms * share,
    ...(spare.ohmsMeasuredCold === undefined ? {} : { ohmsMeasuredCold: spare.ohmsMeasuredCold }),
    ...(spare.ratedAmps === undefined ? {} : { ratedAmps: spare.ratedAmps }),
    basis: spare.basis,
  };
}

/**
 * Rectifiers to try: the plan's own; a centre-tap alone where the tap is grounded already, since a bridge would then
 * short each half through its diodes; else a bridge, and for a tapped winding first the centre-tap, which loses one
 * diode less.
 */
function topologies({ parts }: SupplyPlan, spare: SpareWinding): readonly RectifierTopology[] {
  if (parts.topology !== undefined) return [parts.topology];
  if (spare.reference.kind === 'centre-tap' && spare.centreTapped) return ['centre-tap'];
  return spare.centreTapped ? ['centre-tap', 'bridge'] : ['bridge'];
}

const holds = ({ chain, input }: BuiltChain): boolean => {
  const valley = chain.worst?.valley;
  if (valley === undefined || chain.unsolved.length > 0) return false;
  const margin = valley.headroomVolts ?? (input.stage.kind === 'none' ? valley.rail.minVolts - 0.9 * input.stage.designVolts + WANTED_VALLEY_MARGIN_VOLTS : 0);
  return margin >= WANTED_VALLEY_MARGIN_VOLTS;
};

/**
 * The rail from a spare low-voltage winding of the amp's own transformer: rectifier, reservoir, regulator and fuse sized
 * where the plan leaves them open, solved at every corner; the winding held against its own rating and the whole
 * transformer against its VA. A rectifier valve's winding is refused, whatever it would give.
 * Throws `InputError` for a plan that names parts which do not exist or do not fit each other.
 */
export function supplyFromSpareWinding(plan: SupplyPlan): Supply {
  const { spare } = plan.amp;
  const approach = 'spare-winding';
  if (spare === undefined) return judgeSupply({ plan, approach, available: false, parts: [], findings: [noWinding] });
  if (spare.kind === 'rectifier-valve') return judgeSupply({ plan, approach, available: false, parts: [], findings: [rectifierValveVeto(plan)] });

  const draw = loadDraw(plan);
  const stage = chooseStage(plan, draw.chain.everythingAmps);
  let built: BuiltChain | undefined;
  for (const topology of topologies(plan, spare)) {
    built = buildChain({ plan, draw, stage, winding: seenBy(spare, topology), topology, kinds: ['silicon', 'schottky'] });
    if (holds(built)) break;
  }
  if (built === undefined) throw new RangeError('no rectifier was offered');
  const { input, chain } = built;
  const fuse = secondaryFuse({ input, chain, chosen: plan.protections.secondaryFuse });
  const corner = chain.worst?.windingCurrent.corner.words ?? '';
  return judgeSupply({
    plan,
    approach,
    parts: [...built.parts, ...(fuse === undefined ? [] : [fuse.part])],
    chainInput: input,
    chain,
    findings: [
      ...chainSupplyFindings({ plan, built, draw }),
      transformerFinding(plan, addedVoltAmps(input.winding, input.topology, chain), corner),
      ...(fuse?.findings ?? []),
    ],
  });
}
