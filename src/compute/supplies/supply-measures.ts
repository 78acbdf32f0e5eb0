import { bySeverity, worstLevel } from '../findings.ts';
import type { Finding, Level } from '../findings.ts';
import { say } from '../findings/check.ts';
import type { Approach, SupplyPlan } from '../plan/plan-types.ts';
import { touchesMains } from './amp-findings.ts';
import type { ChainInput, ChainSolution, SolvedCorner } from './chain-types.ts';
import type { ConverterSolution } from './converter-types.ts';
import { roomShare, volumeClass } from './part-volumes.ts';
import type { GroundMeasure, HeatMeasure, HoldsMeasure, LoadingMeasure, MainsSideMeasure, RoomMeasure, SizedPart } from './supply-types.ts';

/** The most serious level of the findings that bear on one measure; `not assessed` when none does. */
const levelOf = (findings: readonly Finding[], rules: readonly string[]): Level => worstLevel(findings.filter((each) => rules.includes(each.rule)));

const HOLDS_RULES = ['supply-solved', 'regulator-valley', 'rail-volts', 'coil-pull-in', 'coil-volts', 'heater-volts', 'converter-start', 'heater-start', 'converter-output'];
const HEAT_RULES = ['junction-temperature', 'converter-rating', 'winding-current', 'ripple-current'];
const LOADING_RULES = ['winding-current', 'transformer-volt-amps', 'converter-rating'];

export interface MeasureFacts {
  readonly plan: SupplyPlan;
  readonly approach: Approach;
  readonly findings: readonly Finding[];
  readonly parts: readonly SizedPart[];
  readonly input: ChainInput | undefined;
  readonly chain: ChainSolution | undefined;
  readonly converter: ConverterSolution | undefined;
}

function marginWords(margin: number | undefined, regulated: boolean): string {
  if (margin === undefined) return 'It could not be solved.';
  const size = say(Math.abs(margin), 'V');
  if (regulated) return margin < 0 ? `The regulator is ${size} short of input.` : `The regulator has ${size} to spare.`;
  return margin < 0 ? `The rail falls ${size} below the least asked for.` : `The rail stays ${size} above the least asked for.`;
}

export function holdsMeasure({ plan, findings, chain, converter }: MeasureFacts): HoldsMeasure {
  const level = levelOf(findings, HOLDS_RULES);
  const valley = chain?.worst?.valley;
  const lowest = valley?.rail.minVolts ?? converter?.railMinVolts;
  const margin = valley?.headroomVolts ?? converter?.headroomVolts ?? (lowest === undefined ? undefined : lowest - plan.rail.volts * (1 - (plan.rail.toleranceRatio ?? 0.1)));
  const corner = valley?.corner.words ?? (converter === undefined ? 'not solved' : 'everything on, output at the low end of its tolerance');
  const regulated = valley?.headroomVolts !== undefined || converter?.headroomVolts !== undefined;
  // The margin of the rail itself may be ample while a coil or a heater is what falls short.
  const other = [...findings].sort(bySeverity).find((each) => HOLDS_RULES.includes(each.rule) && each.level !== 'within' && !['regulator-valley', 'rail-volts'].includes(each.rule));
  return {
    level,
    marginVolts: margin,
    corner,
    words: `${marginWords(margin, regulated)}${other === undefined ? '' : ` ${other.what}`}`,
  };
}

/** Heat that the rail adds at one corner: what heaters on the same winding cost before is not its doing. */
export function addedWatts(at: SolvedCorner): number {
  const { watts, across, windingRmsAmps } = at;
  const before = across === undefined || windingRmsAmps === 0 ? 0 : watts.winding * (across.rmsAmpsBefore / windingRmsAmps) ** 2;
  return watts.winding - before + watts.diodes + watts.reservoir + watts.regulator;
}

export function heatMeasure({ findings, input, chain, converter }: MeasureFacts): HeatMeasure {
  const level = levelOf(findings, HEAT_RULES);
  if (converter !== undefined) {
    const added = converter.moduleWatts + converter.regulatorWatts;
    const junction = converter.junctionCelsius;
    return {
      level,
      addedWatts: added,
      hottest: junction === undefined || converter.stage.kind === 'none' ? undefined : { part: converter.stage.name, celsius: junction },
      corner: 'everything on',
      words: `${say(added, 'W')} inside the chassis, most of it in the module${junction === undefined ? '' : `; the regulator reaches ${say(junction, '°C')}`}.`,
    };
  }
  const solved = chain?.corners.filter((at) => at.solved) ?? [];
  const worst = solved.reduce<SolvedCorner | undefined>((most, at) => (most === undefined || addedWatts(at) > addedWatts(most) ? at : most), undefined);
  if (worst === undefined) return { level, addedWatts: undefined, hottest: undefined, corner: 'not solved', words: 'It could not be solved.' };
  const heat = chain?.worst?.heat;
  const hottest =
    heat?.junctionCelsius === undefined || input === undefined || input.stage.kind === 'none' ? undefined : { part: input.stage.name, celsius: heat.junctionCelsius };
  return {
    level,
    addedWatts: addedWatts(worst),
    hottest,
    corner: worst.corner.words,
    words: `${say(addedWatts(worst), 'W')} inside the chassis${hottest === undefined ? ', in winding and diodes' : `; the regulator’s junction reaches ${say(hottest.celsius, '°C')}`}.`,
  };
}

export function loadingMeasure({ findings, input, chain, converter }: MeasureFacts): LoadingMeasure {
  const level = levelOf(findings, LOADING_RULES);
  if (converter !== undefined) {
    const ratio = converter.loadingRatio;
    return {
      level,
      of: 'converter',
      ratio,
      words: Number.isFinite(ratio) ? `${say(ratio, '%')} of what the module may give in this air.` : 'The module may give nothing in this air.',
    };
  }
  const at = chain?.worst?.windingCurrent;
  if (at === undefined) return { level, of: 'winding', ratio: undefined, words: 'It could not be solved.' };
  const rated = input?.winding.ratedAmps;
  const amps = `${say(at.windingRmsAmps, 'A')} RMS${at.across === undefined ? '' : ' with the heaters'}`;
  return {
    level,
    of: 'winding',
    ratio: rated === undefined ? undefined : at.windingRmsAmps / rated,
    words: rated === undefined ? `${amps}, and no rating is known.` : `${amps}: ${say(at.windingRmsAmps / rated, '%')} of the winding’s rating.`,
  };
}

export function roomMeasure({ plan, parts }: MeasureFacts): RoomMeasure {
  const cubicMetres = parts.reduce((sum, part) => sum + part.cubicMetres, 0);
  const share = roomShare(cubicMetres, plan.amp.room);
  const partCount = parts.reduce((sum, part) => sum + part.count, 0);
  const level: Level = parts.length === 0 ? 'not assessed' : share <= 0.8 ? 'within' : share <= 1 ? 'marginal' : 'outside';
  const size = volumeClass(cubicMetres);
  if (parts.length === 0) return { level, partCount, cubicMetres, volumeClass: size, share, words: 'Nothing has been sized.' };
  return {
    level,
    partCount,
    cubicMetres,
    volumeClass: size,
    share,
    words: `${partCount} parts, ${Number((cubicMetres * 1e6).toPrecision(2))} cm³ without wiring; ${
      Number.isFinite(share) ? `with it about ${say(share, '%')} of the free room` : 'there is no free room'
    }. Typical sizes: measure before drilling.`,
  };
}

export function mainsSideMeasure({ plan, approach }: MeasureFacts): MainsSideMeasure {
  if (!touchesMains(approach)) {
    return { level: 'within', touched: false, words: 'Nothing on the mains side is touched. The amp is still opened, with its stored charge inside.' };
  }
  const earth = plan.amp.protectiveEarth;
  return {
    level: earth === 'absent' ? 'hazard' : earth === 'not-checked' ? 'not assessed' : 'marginal',
    touched: true,
    words: `New mains wiring behind the switch, with a fuse of its own, clearances and strain relief, by somebody licensed for it where you live; the amp is tested again afterwards${earth === 'absent' ? '. With no protective earth this is refused' : ''}.`,
  };
}

export function groundMeasure({ findings }: MeasureFacts): GroundMeasure {
  const situation = findings.find((each) => each.rule === 'ground-situation');
  return { level: situation?.level ?? 'not assessed', words: situation?.what ?? 'Not looked at: nothing could be solved.' };
}
