import type { Finding, Level } from '../findings.ts';
import { levelOfMargin } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from '../findings/check.ts';
import { checkJunction, checkRegulatorValley } from '../findings/regulator.ts';
import { reachesOutside } from '../grounding/exposure.ts';
import { TOUCH_RMS_AMPS, UNEARTHED_TOUCH_RMS_AMPS } from '../grounding/limits.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import { railFinding } from './amp-findings.ts';
import { chooseStage } from './choose-stage.ts';
import type { ConverterSolution } from './converter-types.ts';
import { groundsFor } from './grounds-for.ts';
import { judgeSupply } from './judge-supply.ts';
import { loadDraw, loadFindingsAt } from './load-draw.ts';
import type { LoadDraw } from './load-draw.ts';
import { converterVolume, SMALL_VOLUMES } from './part-volumes.ts';
import { MOST_TRIES, pickConverter, WANTED_CONVERTER_SHARE } from './solve-converter.ts';
import type { SizedPart, Supply } from './supply-types.ts';

const EVERYTHING = 'everything on, hottest air';

function ratingFinding(plan: SupplyPlan, { part, derated, loadAmps, moduleWatts }: ConverterSolution): Finding {
  const air = plan.amp.airCelsius;
  const level: Level = derated.amps <= 0 ? 'outside' : levelOfLoad({ value: loadAmps.everything, limit: derated.amps, aim: WANTED_CONVERTER_SHARE });
  return finding({
    rule: 'converter-rating',
    level,
    what:
      derated.amps <= 0 ? `In air of ${say(air, '°C')} this module may not run at all.`
      : `It gives ${say(loadAmps.everything, 'A')}; in air of ${say(air, '°C')} it may give ${say(derated.amps, 'A')} of its rated ${say(part.ratedAmps, 'A')}. It turns ${say(moduleWatts, 'W')} into heat.`,
    numbers: [figure('load', loadAmps.everything, 'A'), figure('allowed in this air', derated.amps, 'A'), figure('rated', part.ratedAmps, 'A'), figure('heat', moduleWatts, 'W')],
    why: 'A module is rated for the air of its sheet. An amp’s chassis is hotter, and its electrolytics age with every degree.',
    todo: level === 'within' ? 'Nothing; measure its case after two hours.' : 'Take the next larger module, or put it where the air is cooler.',
    context: { corner: EVERYTHING, restsOn: [part.basis] },
    source: part.source,
  });
}

function startFinding({ part, start }: ConverterSolution, draw: LoadDraw): Finding {
  const heaters = draw.heater !== undefined;
  const level: Level = !start.starts || start.tries > MOST_TRIES ? 'outside' : start.seconds > 10 || start.tries > 1 ? 'marginal' : 'within';
  const kind = part.startUpKind === 'hiccup' ? 'hiccups' : part.startUpKind === 'foldback' ? 'folds back' : 'holds its current';
  return finding({
    rule: 'converter-start',
    level,
    what:
      start.starts && start.seconds === 0 ? 'It starts its load at once.'
      : start.starts ? `Into cold heaters it ${kind} for ${say(start.seconds, 's')}${start.tries > 1 ? `, ${start.tries} tries` : ''}; then the rail stands.`
      : `It does not start: the load asks for ${say(start.coldDemandRatio, '')} times its limit, and it ${kind} for ever.`,
    numbers: [figure('cold demand over limit', start.coldDemandRatio, ''), figure('until full volts', start.seconds, 's'), figure('tries', start.tries, '')],
    why: heaters ? 'Cold heaters take several times their hot current; what a converter does beyond its limit decides whether they ever warm, and each try rattles the relays.' : 'A load beyond its limit at switch-on keeps a converter from starting.',
    todo: level === 'within' ? 'Nothing; read on the sheet what it does beyond its limit.' : 'Use a module with a constant-current limit, one of three to four times the running current, or warm the heaters through a soft start.',
    context: { corner: 'switch-on, heaters cold', restsOn: [part.basis, 'assumed'] },
    source: { id: 'note-heater-soft-start' },
  });
}

function outputFindings(plan: SupplyPlan, solution: ConverterSolution, draw: LoadDraw): Finding[] {
  const { part, stage } = solution;
  const railFarads = plan.parts.railFarads ?? 0;
  const findings = [
    railFinding({ plan, lowestVolts: solution.railMinVolts, highestVolts: solution.railMaxVolts, corner: 'output at the ends of its tolerance' }),
    finding({
      rule: 'converter-load-capacitance',
      level: levelOfLoad({ value: railFarads, limit: part.maxLoadFarads, aim: 0.8 }),
      what: `There are ${say(railFarads, 'F')} across its output; it starts into ${say(part.maxLoadFarads, 'F')} at most.`,
      numbers: [figure('across the output', railFarads, 'F'), figure('at most', part.maxLoadFarads, 'F')],
      why: 'A converter takes a large capacitor for a short and hiccups.',
      todo: railFarads > 0.8 * part.maxLoadFarads ? 'Use less capacitance: a converter’s rail needs none of the reservoir a rectifier needs.' : 'Count the filter’s capacitors in.',
      context: { corner: 'switch-on', restsOn: [part.basis] },
      source: part.source,
    }),
    finding({
      rule: 'converter-minimum-load',
      level: part.minLoadAmps === 0 || draw.idleAmps >= part.minLoadAmps ? 'within' : 'marginal',
      what:
        part.minLoadAmps === 0 ? 'Its sheet asks for no minimum load.' : `With nothing switched on it gives ${say(draw.idleAmps, 'A')}; its sheet asks for ${say(part.minLoadAmps, 'A')} at least.`,
      numbers: [figure('least load', draw.idleAmps, 'A'), figure('asked for', part.minLoadAmps, 'A')],
      why: 'Below its minimum load a converter’s output rises or runs in bursts, which fall into the audio band.',
      todo: part.minLoadAmps > draw.idleAmps ? 'Leave a lamp or a resistor on that takes the minimum.' : 'Listen for bursts with everything off all the same.',
      context: { corner: 'nothing switched on', restsOn: [part.basis, 'assumed'] },
      source: part.source,
    }),
  ];
  if (stage.kind === 'none') return findings;
  const highest = stage.outputVolts * (1 + stage.outputToleranceRatio);
  return [
    ...findings,
    checkRegulatorValley({
      corner: 'output at the low end of its tolerance, everything on',
      restsOn: [part.basis, stage.basis],
      valleyVolts: (solution.headroomVolts ?? 0) + neededOf(solution),
      outputMaxVolts: highest,
      dropoutVolts: Math.max(0, neededOf(solution) - highest),
    }),
    checkJunction({
      corner: EVERYTHING,
      restsOn: [part.basis, stage.basis],
      part: stage.name,
      watts: solution.regulatorWatts,
      junctionCelsius: solution.junctionCelsius ?? Number.NaN,
      airCelsius: plan.amp.airCelsius,
      limitCelsius: stage.maxJunctionCelsius,
      aimCelsius: stage.maxJunctionCelsius - 15,
    }),
  ];
}

/** Input the regulator behind it needs: what is there at the low end of tolerance, less the headroom. */
const neededOf = ({ part, headroomVolts }: ConverterSolution): number => part.outputVolts * (1 - part.outputTolerance) - part.rippleVolts / 2 - (headroomVolts ?? 0);

/** Where its Y-capacitor current goes: home through a verified earth, or into a hand. */
function leakageFinding(plan: SupplyPlan, { leakageAmps, floatingVolts, part }: ConverterSolution): Finding {
  const connections = groundsFor(plan, 'converter', part);
  const bonded = connections.rail.kind === 'bonded';
  const outside = reachesOutside(connections);
  const earth = connections.ampEarth;
  const limit = earth === 'verified' ? TOUCH_RMS_AMPS : UNEARTHED_TOUCH_RMS_AMPS;
  const level: Level =
    earth === 'absent' ? 'hazard'
    : bonded && earth === 'verified' ? 'within'
    : bonded ? 'not assessed'
    : outside ? 'hazard'
    : levelOfMargin({ margin: limit.value - leakageAmps, wanted: limit.value / 2 });
  return finding({
    rule: 'converter-leakage',
    level,
    what:
      `At high mains ${say(leakageAmps, 'A')} RMS comes through its Y capacitor. ` +
      (bonded && earth === 'verified' ? 'It goes home through the rail’s bond and the verified earth.'
      : bonded ? 'It goes into a chassis whose earth nobody has shown, and from there to the strings.'
      : `Its output floats at up to ${say(floatingVolts, 'V')} RMS behind that${outside ? ', on a jack or within reach of a hand' : ''}.`),
    numbers: [figure('leakage', leakageAmps, 'A'), figure('floating at', floatingVolts, 'V'), figure('touch limit', limit.value, 'A')],
    why: 'It is the tingle of an unearthed supply; with two of them it adds up.',
    todo: level === 'within' ? 'Nothing; keep the bond the only one.' : 'Verify protective earth first, then bond the output’s negative to the chassis once.',
    context: { corner: 'high mains', restsOn: [part.basis] },
    source: limit.source,
    ...(level === 'hazard' ? { harm: 'shock' as const } : {}),
  });
}

function buildFindings(plan: SupplyPlan, { part }: ConverterSolution): Finding[] {
  const { mains } = plan;
  const inside = mains.lowVolts >= part.inputVolts.min && mains.highVolts <= part.inputVolts.max;
  const board = part.build === 'board module';
  return [
    finding({
      rule: 'converter-input',
      level: inside ? 'within' : 'outside',
      what: `The mains here runs from ${say(mains.lowVolts, 'V')} to ${say(mains.highVolts, 'V')}; it takes ${say(part.inputVolts.min, 'V')} to ${say(part.inputVolts.max, 'V')}.`,
      numbers: [figure('low mains', mains.lowVolts, 'V'), figure('high mains', mains.highVolts, 'V')],
      why: 'Beyond its input range it stops, or fails.',
      todo: inside ? 'Nothing.' : 'Use a module for this mains.',
      context: { corner: inside ? 'low and high mains' : 'high mains', restsOn: [part.basis] },
      source: part.source,
    }),
    {
      rule: 'converter-build',
      level: board ? 'within' : 'outside',
      what: board ? 'It is a module made to be built in.' : 'It is a plug-in adaptor: it is approved as it is, on a wall, and not as a part inside an appliance.',
      numbers: [],
      why: 'Opened or strapped down inside a hot chassis, it has neither its approval nor its cooling.',
      todo: board ? 'Keep the clearances its sheet asks for, and its own.' : 'Use an encapsulated module made for building in.',
      restsOn: [part.basis],
      source: part.source,
      ...(board ? {} : { harm: 'fire' as const }),
    },
  ];
}

/** What nobody can compute: whether it is heard. */
const residueFinding = ({ part }: ConverterSolution): Finding => ({
  rule: 'switching-residue',
  level: 'not assessed',
  what: `Whether it is heard is for a listening test: ${say(part.rippleVolts, 'V')} of ripple at ${say(part.switchingHertz, 'Hz')}, and bursts at light load that may fall into the audio band.`,
  numbers: [figure('ripple', part.rippleVolts, 'V'), figure('switching frequency', part.switchingHertz, 'Hz')],
  why: 'A high-gain input rectifies what it picks up.',
  todo: 'Keep it at the mains end, its output twisted and filtered, and compare the noise before and after at full gain.',
  restsOn: [part.basis],
  source: part.source,
});

const noOutput = (plan: SupplyPlan): Finding => ({
  rule: 'converter-output',
  level: 'outside',
  what: `No usual module gives ${say(plan.rail.volts, 'V')}, nor enough above it for the regulator asked for.`,
  numbers: [figure('rail', plan.rail.volts, 'V')],
  why: 'Modules come in a few volts only.',
  todo: 'Choose loads for a standard rail, or put a regulator behind a module of higher volts.',
  restsOn: ['typical'],
  source: { id: 'ds-converter-modules' },
});

const moduleParts = (solution: ConverterSolution, chosenBy: SizedPart['chosenBy']): SizedPart[] => [
  {
    role: 'converter',
    name: solution.part.name,
    count: 1,
    chosenBy,
    why: chosenBy === 'plan' ? 'Named in the plan.' : 'The smallest module of these volts that stays below four fifths of its rating in this air and starts the load; the largest there is when none does.',
    numbers: [figure('output', solution.part.outputVolts, 'V'), figure('rated', solution.part.ratedAmps, 'A')],
    basis: solution.part.basis,
    cubicMetres: converterVolume(solution.part.ratedWatts),
  },
  {
    role: 'primary-fuse',
    name: `${say(solution.part.advisedFuseAmps, 'A')} time-lag fuse`,
    count: 1,
    chosenBy: 'sized',
    why: 'What its maker advises in the line: its inrush is short and high.',
    numbers: [figure('rating', solution.part.advisedFuseAmps, 'A'), figure('inrush at 230 V', solution.part.inrushAmps.at230, 'A')],
    basis: solution.part.basis,
    cubicMetres: SMALL_VOLUMES.fuse,
  },
];

/**
 * The rail from a mains converter module: picked from standard outputs for its rating in the chassis air and its start
 * into cold heaters (solved in time), with a regulator behind it where no output is the rail; capacitive and minimum
 * load, leakage into whatever it meets, input range. Throws `InputError` for a plan that names parts which do not exist
 * or do not fit each other.
 */
export function supplyFromConverter(plan: SupplyPlan): Supply {
  const approach = 'converter';
  const draw = loadDraw(plan);
  const stage = chooseStage(plan, draw.chain.everythingAmps);
  const solution = pickConverter({ plan, stage: stage.stage, draw });
  if (solution === undefined) return judgeSupply({ plan, approach, available: false, parts: [], findings: [noOutput(plan)] });
  return judgeSupply({
    plan,
    approach,
    parts: [...moduleParts(solution, plan.parts.converter === undefined ? 'sized' : 'plan'), ...(solution.stage.kind === 'none' ? [] : stage.parts)],
    converter: solution,
    findings: [
      ratingFinding(plan, solution),
      startFinding(solution, draw),
      ...outputFindings(plan, solution, draw),
      ...loadFindingsAt(plan, solution.railMinVolts, solution.railMaxVolts),
      leakageFinding(plan, solution),
      ...buildFindings(plan, solution),
      residueFinding(solution),
    ],
  });
}
