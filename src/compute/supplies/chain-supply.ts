import type { Finding } from '../findings.ts';
import { figure, finding, say } from '../findings/check.ts';
import { onCurve } from '../parts/interpolate.ts';
import type { StartUpLimit } from '../parts/converter.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import { railFinding } from './amp-findings.ts';
import type { BuiltChain } from './build-chain.ts';
import { chainFindings } from './chain-findings.ts';
import type { ChainInput, LinearStage, SolvedCorner } from './chain-types.ts';
import { startConverter } from './converter-start.ts';
import { loadFindingsAt } from './load-draw.ts';
import type { LoadDraw } from './load-draw.ts';

/** The rail's lowest and highest volts over the corners at which it feeds something, output tolerance included. */
export function railLimits({ input, chain }: BuiltChain): { readonly lowestVolts: number; readonly highestVolts: number } | undefined {
  const solved = chain.corners.filter((at): at is SolvedCorner => at.solved);
  if (solved.length === 0) return undefined;
  const loaded = solved.filter((at) => at.corner.load !== 'off');
  const lowestVolts = Math.min(...(loaded.length > 0 ? loaded : solved).map((at) => at.rail.minVolts));
  const { stage } = input;
  // Without a regulator the rail stands highest with next to nothing on it, and that is what the first coil meets.
  if (stage.kind === 'none') return { lowestVolts, highestVolts: Math.max(...solved.map((at) => at.rail.maxVolts)) };
  return { lowestVolts: lowestVolts * (1 - stage.outputToleranceRatio), highestVolts: stage.outputVolts * (1 + stage.outputToleranceRatio) };
}

/** What a linear regulator gives beyond its limit: its peak with little across it, folding back as more is. */
function regulatorLimit(stage: LinearStage, inputVolts: number): StartUpLimit | undefined {
  const short = stage.shortCircuitAmps;
  if (short === undefined) return undefined;
  const limitAt = (across: number): number => onCurve([[10, short.peak], [Math.max(stage.maxInputVolts, 10.1), short.atMaxInput]], across);
  return { kind: 'foldback', tripAmps: limitAt(Math.max(0, inputVolts - stage.outputVolts)), shortAmps: limitAt(inputVolts) };
}

/** Does the regulator start the cold heaters, or sit in its limit and cook? Solved in time. */
function heaterStartFinding(input: ChainInput, draw: LoadDraw, valley: SolvedCorner): Finding[] {
  const { stage } = input;
  if (draw.heater === undefined || stage.kind === 'none' || stage.kind === 'buck') return [];
  const limit = regulatorLimit(stage, valley.rectifier.rail.meanVolts);
  if (limit === undefined) return [];
  const start = startConverter({
    setVolts: stage.outputVolts,
    limit,
    heater: draw.heater,
    ...(draw.otherAmps > 0 ? { loadOhms: stage.outputVolts / draw.otherAmps } : {}),
  });
  const level = !start.starts ? 'outside' : start.seconds > 5 ? 'marginal' : 'within';
  return [
    finding({
      rule: 'heater-start',
      level,
      what:
        start.starts ?
          start.seconds === 0 ? 'The regulator gives the cold heaters all they ask for.' : `Cold heaters hold the regulator at its limit for ${say(start.seconds, 's')}; then the rail stands.`
        : `Cold heaters ask for ${say(start.coldDemandRatio, '')} times what the regulator gives, and it does not get out of its limit.`,
      numbers: [figure('cold demand over limit', start.coldDemandRatio, ''), figure('until full volts', start.seconds, 's')],
      why: 'A cold heater takes several times its hot current. A regulator at its limit burns most of its input, and folds back the more it has across it.',
      todo: level === 'within' ? 'Nothing; time the rail at switch-on to prove it.' : 'Feed the heaters through a regulator of higher current, or a soft start, or from a rail of their own.',
      context: { corner: 'switch-on, heaters cold', restsOn: ['typical'] },
      source: { id: 'solved' },
    }),
  ];
}

/** What every winding-fed rail is checked for: the chain, the rail's limits, its loads at those limits, cold heaters. */
export function chainSupplyFindings(options: { readonly plan: SupplyPlan; readonly built: BuiltChain; readonly draw: LoadDraw }): readonly Finding[] {
  const { plan, built, draw } = options;
  const { input, chain } = built;
  const limits = railLimits(built);
  const { worst } = chain;
  if (limits === undefined || worst === undefined) return chainFindings(input, chain);
  const stated = input.stage.kind !== 'none' || plan.rail.toleranceRatio !== undefined;
  return [
    ...chainFindings(input, chain),
    // An unregulated rail moves with everything; unless the plan says how far it may, its loads alone judge it.
    ...(stated ? [railFinding({ plan, ...limits, corner: worst.valley.corner.words })] : []),
    ...loadFindingsAt(plan, limits.lowestVolts, limits.highestVolts),
    ...heaterStartFinding(input, draw, worst.valley),
  ];
}
