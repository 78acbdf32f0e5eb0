import type { Basis, Finding } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from '../findings/check.ts';
import { checkDiodeCurrent, checkReverseVolts } from '../findings/diode.ts';
import { checkJunction, checkRegulatorInput, checkRegulatorValley } from '../findings/regulator.ts';
import { checkCapacitorVolts, checkRippleCurrent } from '../findings/reservoir.ts';
import { checkWindingCurrent } from '../findings/winding.ts';
import type { BuckStage, ChainInput, ChainSolution, LinearStage, UnsolvedCorner, WorstCorners } from './chain-types.ts';

const distinct = (...bases: readonly Basis[]): readonly Basis[] => [...new Set(bases)];

/** A corner without a steady state: the supply cannot feed the load there. */
function unsolvedFinding(unsolved: readonly UnsolvedCorner[]): Finding {
  const names = unsolved.map((at) => at.corner.words);
  const [first] = unsolved;
  const overloaded = unsolved.some((at) => at.reason === 'overloaded');
  return finding({
    rule: 'supply-solved',
    // Without a solution nothing is known of that corner; that it cannot feed the load is known only when it was overloaded.
    level: overloaded ? 'outside' : 'not assessed',
    what:
      overloaded ?
        `The supply cannot feed the load at ${unsolved.length === 1 ? names[0] : `${unsolved.length} corners, among them ${names[0]}`}.`
      : `No steady state was found at ${names[0]}.`,
    numbers: [figure('corners without an answer', unsolved.length, '')],
    why: first?.message ?? '',
    todo: 'Raise the volts, lower the load, or use a stiffer source.',
    context: { corner: names[0] ?? '', restsOn: ['assumed'] },
    source: { id: 'solved' },
  });
}

function regulatorFindings(stage: LinearStage | BuckStage, input: ChainInput, worst: WorstCorners): Finding[] {
  const { valley, heat, peak } = worst;
  const highest = stage.outputVolts * (1 + stage.outputToleranceRatio);
  const most = input.load.everythingAmps;
  return [
    checkRegulatorValley({
      corner: valley.corner.words,
      restsOn: distinct(input.winding.basis, stage.basis),
      valleyVolts: valley.rectifier.rail.minVolts,
      outputMaxVolts: highest,
      dropoutVolts: valley.neededVolts - highest,
    }),
    checkJunction({
      corner: heat.corner.words,
      restsOn: distinct(input.winding.basis, stage.basis),
      part: stage.name,
      watts: Math.max(0, heat.regulatorWatts),
      junctionCelsius: heat.junctionCelsius ?? Number.NaN,
      airCelsius: input.cooling.airCelsius,
      limitCelsius: stage.maxJunctionCelsius,
      aimCelsius: stage.maxJunctionCelsius - 15,
    }),
    checkRegulatorInput({
      corner: peak.corner.words,
      restsOn: distinct(input.winding.basis, stage.basis),
      inputMaxVolts: peak.rectifier.rail.maxVolts,
      ratedMaxVolts: stage.maxInputVolts,
    }),
    finding({
      rule: 'regulator-current',
      level: levelOfLoad({ value: most, limit: stage.ratedAmps, aim: 0.8 }),
      what: `The regulator gives ${say(most, 'A')} of its rated ${say(stage.ratedAmps, 'A')}.`,
      numbers: [figure('load', most, 'A'), figure('rated', stage.ratedAmps, 'A')],
      why: 'Near its rating the dropout grows and the current limit is close; cold heaters take several times their running current.',
      todo: most > stage.ratedAmps ? 'Use a larger regulator, or feed the heaters from a rail of their own.' : 'Nothing.',
      context: { corner: heat.corner.words, restsOn: [stage.basis] },
      source: { id: 'ds-78xx' },
    }),
  ];
}

/** The rules that need no regulator: reservoir, winding, diodes. */
function stressFindings(input: ChainInput, worst: WorstCorners): Finding[] {
  const { reservoir, winding, diode, topology } = input;
  const capacitors = topology === 'doubler' ? 2 : 1;
  const findings = [
    checkCapacitorVolts({
      corner: worst.peak.corner.words,
      restsOn: distinct(winding.basis),
      maxVolts: Math.max(0, worst.peak.rectifier.rail.maxVolts) / capacitors,
      ratedVolts: reservoir.ratedVolts,
    }),
    checkWindingCurrent({
      corner: worst.windingCurrent.corner.words,
      restsOn: distinct(winding.basis),
      rmsAmps: worst.windingCurrent.windingRmsAmps,
      ...(winding.ratedAmps === undefined ? {} : { ratedAmps: winding.ratedAmps }),
    }),
    checkReverseVolts({
      corner: worst.reverse.corner.words,
      restsOn: distinct(winding.basis),
      reverseVolts: Math.max(0, worst.reverse.rectifier.diode.reverseVolts),
      ratedVolts: diode.ratedReverseVolts,
    }),
    checkDiodeCurrent({
      corner: worst.diodeCurrent.corner.words,
      restsOn: distinct(diode.basis),
      meanAmps: Math.max(0, worst.diodeCurrent.rectifier.diode.meanAmps),
      ratedMeanAmps: diode.ratedMeanAmps,
    }),
  ];
  if (reservoir.ratedRippleAmps !== undefined) {
    findings.push(
      checkRippleCurrent({
        corner: worst.rippleCurrent.corner.words,
        restsOn: distinct(reservoir.basis),
        rmsAmps: worst.rippleCurrent.rectifier.reservoir.rmsAmps,
        limitAmps: reservoir.ratedRippleAmps,
      }),
    );
  }
  return findings;
}

/** DC through a winding that is of no account for its iron, and from which it is, amps: a few tens of milliamps (practice). */
const BIAS_AIM_AMPS = 0.02;
const BIAS_LIMIT_AMPS = 0.05;

/** A half-wave rectifier draws its load's current one way only through the winding, and biases the core with it. */
function biasFindings({ topology, winding }: ChainInput, { diodeCurrent }: WorstCorners): Finding[] {
  if (topology !== 'half-wave') return [];
  const amps = Math.max(0, diodeCurrent.rectifier.diode.meanAmps);
  const level = levelOfLoad({ value: amps, limit: BIAS_LIMIT_AMPS, aim: BIAS_AIM_AMPS / BIAS_LIMIT_AMPS });
  return [
    finding({
      rule: 'half-wave-bias',
      level,
      what: `The winding carries ${say(amps, 'A')} of DC, which a half-wave rectifier draws one way only; a few tens of milliamps are borne.`,
      numbers: [figure('DC in the winding', amps, 'A'), figure('borne', BIAS_LIMIT_AMPS, 'A')],
      why: 'DC pushes the core towards saturation on one half-cycle: the whole transformer draws more, hums and warms.',
      todo: level === 'within' ? 'Nothing.' : 'Use a bridge.',
      context: { corner: diodeCurrent.corner.words, restsOn: distinct(winding.basis, 'typical') },
      source: { id: 'transformer-maker-rules' },
    }),
  ];
}

/**
 * What the rules of the trade say of a solved chain, each at its own worst corner: valley, heat, input volts and
 * current of the regulator; volts and ripple current of the reservoir; current of the winding (`not assessed` without a
 * rating); reverse volts and current of the diodes; DC in the winding of a half-wave
 * rectifier; and corners at which the supply cannot feed the load at all.
 */
export function chainFindings(input: ChainInput, solution: ChainSolution): readonly Finding[] {
  const { worst, unsolved } = solution;
  const findings: Finding[] = unsolved.length > 0 ? [unsolvedFinding(unsolved)] : [];
  if (worst === undefined) return findings;
  if (input.stage.kind !== 'none') findings.push(...regulatorFindings(input.stage, input, worst));
  return [...findings, ...stressFindings(input, worst), ...biasFindings(input, worst)];
}
