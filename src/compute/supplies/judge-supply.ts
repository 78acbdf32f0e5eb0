import { bySeverity, worstLevel } from '../findings.ts';
import type { Finding } from '../findings.ts';
import type { Approach, SupplyPlan } from '../plan/plan-types.ts';
import { earthFinding, insulationFindings } from './amp-findings.ts';
import type { ChainInput, ChainSolution } from './chain-types.ts';
import type { ConverterSolution } from './converter-types.ts';
import { groundSituation } from './ground-situation.ts';
import { groundingJob } from './grounding-job.ts';
import { groundMeasure, heatMeasure, holdsMeasure, loadingMeasure, mainsSideMeasure, roomMeasure } from './supply-measures.ts';
import type { MeasureFacts } from './supply-measures.ts';
import type { SizedPart, Supply } from './supply-types.ts';

export interface SupplyPieces {
  readonly plan: SupplyPlan;
  readonly approach: Approach;
  readonly available?: boolean;
  readonly parts: readonly SizedPart[];
  readonly chainInput?: ChainInput;
  readonly chain?: ChainSolution;
  readonly converter?: ConverterSolution;
  /** What the approach itself has found. */
  readonly findings: readonly Finding[];
}

/** Room that the parts take, as a finding of its own. */
function roomFinding(facts: MeasureFacts): Finding {
  const room = roomMeasure(facts);
  return {
    rule: 'room',
    level: room.level,
    what: room.words,
    numbers: [{ name: 'share of the free room', value: Number.isFinite(room.share) ? room.share : 1e9, unit: '' }],
    why: 'What is squeezed in ends up against the mains, the high voltage or a hot valve.',
    todo: room.level === 'within' ? 'Measure the parts in hand against the place.' : 'Find another place, or a supply of fewer and smaller parts.',
    restsOn: ['typical'],
    source: { id: 'typical-small-transformers' },
  };
}

/**
 * Puts one approach together: its own findings with those that every approach shares (protective earth, grounds,
 * insulation, room), the most serious first, and the measures by which the four are compared.
 */
export function judgeSupply(pieces: SupplyPieces): Supply {
  const { plan, approach, available = true, parts, chainInput, chain, converter } = pieces;
  const job = groundingJob(plan, { approach, ...(chainInput === undefined ? {} : { chainInput }), ...(chain === undefined ? {} : { chain }), ...(converter === undefined ? {} : { converter }) });
  const facts: MeasureFacts = { plan, approach, parts, input: chainInput, chain, converter, findings: pieces.findings };
  const shared = available ? [roomFinding(facts), ...(job === undefined ? [] : [groundSituation(job), ...insulationFindings(job.connections, approach)])] : [];
  const findings = [...pieces.findings, earthFinding(plan, approach), ...shared].sort(bySeverity);
  const measured: MeasureFacts = { ...facts, findings };
  return {
    approach,
    available,
    parts,
    ...(chainInput === undefined ? {} : { chainInput }),
    ...(chain === undefined ? {} : { chain }),
    ...(converter === undefined ? {} : { converter }),
    findings,
    level: worstLevel(findings),
    worstCorner: findings.find((each) => each.worstCorner !== undefined)?.worstCorner,
    measures: {
      holds: holdsMeasure(measured),
      heat: heatMeasure(measured),
      loading: loadingMeasure(measured),
      room: roomMeasure(measured),
      mainsSide: mainsSideMeasure(measured),
      ground: groundMeasure(measured),
    },
  };
}
