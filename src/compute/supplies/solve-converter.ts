import { InputError } from '../errors.ts';
import { converter, converterHeatWatts, CONVERTERS, deratedOutput, startUpLimit, yCapacitorAmps, yCapacitorFarads } from '../parts/converter.ts';
import type { ConverterRow } from '../parts/converter.ts';
import type { PlanConverter, SupplyPlan } from '../plan/plan-types.ts';
import { planCooling } from './build-chain.ts';
import type { ChainStage } from './chain-types.ts';
import { startConverter } from './converter-start.ts';
import type { ConverterSolution } from './converter-types.ts';
import type { LoadDraw } from './load-draw.ts';
import { neededInputVolts, stageHeatWatts, stageJunctionCelsius } from './regulator-stage.ts';

/** Tries of a hiccup that a rail of relays may be put through: each makes them chatter. */
export const MOST_TRIES = 3;
/** Share of the derated output to fill. */
export const WANTED_CONVERTER_SHARE = 0.8;

/** The catalogue's row with what was read on the part in hand in its place. Throws `InputError` for an unknown name. */
export function converterPart(chosen: PlanConverter): ConverterRow {
  const row = converter(chosen.id);
  const outputVolts = chosen.outputVolts ?? row.outputVolts;
  const ratedAmps = chosen.ratedAmps ?? row.ratedAmps;
  return {
    ...row,
    outputVolts,
    ratedAmps,
    ratedWatts: outputVolts * ratedAmps,
    efficiency: chosen.efficiency ?? row.efficiency,
    maxLoadFarads: chosen.maxLoadFarads ?? row.maxLoadFarads,
    minLoadAmps: chosen.minLoadAmps ?? row.minLoadAmps,
    leakageAmps: chosen.leakageAmps ?? row.leakageAmps,
    startUpKind: chosen.startUpKind ?? row.startUpKind,
    overloadRatio: chosen.overloadRatio ?? row.overloadRatio,
  };
}

/** Amps out of the converter for so many out of the rail, through the stage between. */
function inputAmps(stage: ChainStage, part: ConverterRow, amps: number): number {
  if (stage.kind === 'none') return amps;
  if (stage.kind === 'buck') return ((stage.outputVolts + stage.lossVolts) * amps) / part.outputVolts + stage.quiescentAmps;
  return amps + stage.quiescentAmps;
}

/**
 * One converter for a plan's rail, worked through: load against its rating in this air, the rail's limits, heat,
 * start into cold heaters solved in time, leakage. `stage` is what stands between its output and the rail.
 */
export function solveConverter(options: { readonly plan: SupplyPlan; readonly part: ConverterRow; readonly stage: ChainStage; readonly draw: LoadDraw }): ConverterSolution {
  const { plan, part, stage, draw } = options;
  const { mains, amp } = plan;
  const cooling = planCooling(plan, stage);
  const everything = inputAmps(stage, part, draw.chain.everythingAmps);
  const derated = deratedOutput({ part, airCelsius: amp.airCelsius });
  const lowest = part.outputVolts * (1 - part.outputTolerance) - part.rippleVolts / 2;
  const highest = part.outputVolts * (1 + part.outputTolerance) + part.rippleVolts / 2;
  const needed = neededInputVolts(stage, draw.chain.everythingAmps);
  const regulatorWatts = stageHeatWatts(stage, part.outputVolts * (1 + part.outputTolerance), draw.chain.everythingAmps);
  const regulated = stage.kind === 'none' ? undefined : { low: stage.outputVolts * (1 - stage.outputToleranceRatio), high: stage.outputVolts * (1 + stage.outputToleranceRatio) };
  const farads = yCapacitorFarads({ leakageAmps: part.leakageAmps });
  return {
    part,
    stage,
    loadAmps: { off: inputAmps(stage, part, draw.chain.offAmps), running: inputAmps(stage, part, draw.chain.runningAmps), everything },
    derated: { share: derated.share, amps: derated.amps },
    loadingRatio: derated.amps > 0 ? everything / derated.amps : Infinity,
    railMinVolts: regulated === undefined ? lowest : Math.max(0, Math.min(regulated.low, lowest - (needed - (stage.kind === 'none' ? 0 : stage.outputVolts)))),
    railMaxVolts: regulated === undefined ? highest : Math.min(regulated.high, highest),
    headroomVolts: stage.kind === 'none' ? undefined : lowest - needed,
    moduleWatts: converterHeatWatts({ part, amps: Math.min(everything, 2 * part.ratedAmps) }),
    regulatorWatts,
    junctionCelsius: stageJunctionCelsius(stage, regulatorWatts, cooling),
    start: startConverter({
      // Behind a linear regulator the heaters are limited by it as well; the converter's own limit is the lower one to plan with.
      setVolts: stage.kind === 'none' ? part.outputVolts : plan.rail.volts,
      limit: startUpLimit({ part }),
      ...(draw.heater === undefined ? {} : { heater: draw.heater }),
      ...(draw.otherAmps > 0 ? { loadOhms: Math.max(1e-3, plan.rail.volts / draw.otherAmps) } : {}),
    }),
    leakageAmps: yCapacitorAmps({ farads, mainsVolts: mains.highVolts, hertz: mains.hertz }),
    floatingVolts: mains.highVolts / 2,
  };
}

/** Output volts that suit the rail: its own within a twentieth, or else the lowest above it that leaves a regulator room. */
function outputsFor(plan: SupplyPlan, stage: ChainStage, everythingAmps: number): { readonly volts: number; readonly direct: boolean } | undefined {
  const made = [...new Set(CONVERTERS.map((row) => row.outputVolts))].sort((a, b) => a - b);
  const own = made.find((volts) => Math.abs(volts - plan.rail.volts) <= 0.05 * plan.rail.volts);
  if (own !== undefined) return { volts: own, direct: true };
  const needed = neededInputVolts(stage, everythingAmps);
  const above = stage.kind === 'none' ? undefined : made.find((volts) => volts * 0.98 - 0.05 >= needed);
  return above === undefined ? undefined : { volts: above, direct: false };
}

/**
 * Picks a board module for the rail: of the outputs that suit it, the smallest that fills four fifths of its rating in
 * this air at most and starts the load; the largest when none does, and its checks say by how much it fails.
 * `stage` is the regulator to use where no output is the rail itself. Undefined when no output suits.
 */
export function pickConverter(options: { readonly plan: SupplyPlan; readonly stage: ChainStage; readonly draw: LoadDraw }): ConverterSolution | undefined {
  const { plan, draw } = options;
  const direct: ChainStage = { kind: 'none', designVolts: plan.rail.volts };
  const chosen = plan.parts.converter;
  if (chosen !== undefined) {
    const part = converterPart(chosen);
    const isDirect = Math.abs(part.outputVolts - plan.rail.volts) <= 0.05 * plan.rail.volts;
    if (!isDirect && options.stage.kind === 'none') throw new InputError('parts.converter.outputVolts', part.outputVolts, { expected: `the rail's ${plan.rail.volts} V, or a regulator behind it` });
    return solveConverter({ plan, part, stage: isDirect ? direct : options.stage, draw });
  }
  const output = outputsFor(plan, options.stage, draw.chain.everythingAmps);
  if (output === undefined) return undefined;
  const stage = output.direct ? direct : options.stage;
  const rows = CONVERTERS.filter((row) => row.build === 'board module' && row.outputVolts === output.volts).sort((a, b) => a.ratedAmps - b.ratedAmps);
  let last: ConverterSolution | undefined;
  for (const part of rows) {
    last = solveConverter({ plan, part, stage, draw });
    if (last.loadingRatio <= WANTED_CONVERTER_SHARE && last.start.starts && last.start.tries <= MOST_TRIES) return last;
  }
  return last;
}
