import type { Finding, Level } from '../findings.ts';
import { figure, finding, say } from '../findings/check.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../findings/regulator.ts';
import { reachesOutside } from '../grounding/exposure.ts';
import { TOUCH_DC_VOLTS } from '../grounding/limits.ts';
import { HEATER_TOLERANCE } from '../parts/heater.ts';
import type { HeaterWinding, SupplyPlan } from '../plan/plan-types.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import { transformerFinding } from './amp-findings.ts';
import { buildChain, planCooling } from './build-chain.ts';
import { chainSupplyFindings, railLimits } from './chain-supply.ts';
import type { ChainSolution, ChainWinding } from './chain-types.ts';
import { chooseRectifier } from './choose-rectifier.ts';
import { chooseStage } from './choose-stage.ts';
import type { StageChoice } from './choose-stage.ts';
import { groundsFor } from './grounds-for.ts';
import { judgeSupply } from './judge-supply.ts';
import { loadDraw } from './load-draw.ts';
import type { LoadDraw } from './load-draw.ts';
import { secondaryFuse } from './size-fuses.ts';
import { sizeReservoir } from './size-reservoir.ts';
import type { SizedReservoir } from './size-reservoir.ts';
import { addedVoltAmps } from './spare-winding.ts';
import type { Supply } from './supply-types.ts';

/** One way to rectify the heater winding, at the corner that decides. */
export interface HeaterVariant {
  readonly topology: 'bridge' | 'doubler';
  readonly kind: 'silicon' | 'schottky';
  /** Valley less what is needed; undefined when the winding cannot feed it at all. */
  readonly marginVolts: number | undefined;
  /** All the winding carries, heaters included, RMS. */
  readonly windingRmsAmps: number | undefined;
  /** Left for the heaters, RMS. */
  readonly heaterVolts: number | undefined;
}

/** A variant with the reservoir it was tried with. */
interface TriedVariant extends HeaterVariant {
  readonly reservoir: SizedReservoir;
}

/** The heater supply, with the other ways it could have been rectified. */
export interface HeaterSupply extends Supply {
  readonly variants: readonly HeaterVariant[];
}

/** Hot resistance of all heaters on the winding, in parallel; undefined when there are none. */
export function heatersOhms({ heaters }: Pick<HeaterWinding, 'heaters'>): number | undefined {
  const siemens = heaters.reduce((sum, each) => sum + (each.count * each.amps) / each.volts, 0);
  return siemens > 0 ? 1 / siemens : undefined;
}

const windingOf = (heater: HeaterWinding): ChainWinding => {
  const acrossOhms = heatersOhms(heater);
  return {
    openCircuitVolts: heater.openCircuitVolts,
    ohms: heater.ohms,
    ...(heater.ohmsMeasuredCold === undefined ? {} : { ohmsMeasuredCold: heater.ohmsMeasuredCold }),
    ...(heater.ratedAmps === undefined ? {} : { ratedAmps: heater.ratedAmps }),
    ...(acrossOhms === undefined ? {} : { acrossOhms }),
    basis: heater.basis,
  };
};

interface VariantWish {
  readonly plan: SupplyPlan;
  readonly draw: LoadDraw;
  readonly stage: StageChoice;
  readonly winding: ChainWinding;
}

function tryVariant({ plan, draw, stage, winding }: VariantWish, topology: HeaterVariant['topology'], kind: HeaterVariant['kind']): TriedVariant {
  const { diode } = chooseRectifier({ named: plan.parts.diode, kind, topology, dcAmps: draw.chain.everythingAmps, openCircuitVolts: winding.openCircuitVolts, mains: plan.mains });
  const reservoir = sizeReservoir({ mains: plan.mains, winding, topology, diode, stage: stage.stage, load: draw.chain, cooling: planCooling(plan, stage.stage) });
  const { at } = reservoir;
  if (!at.solved) return { topology, kind, marginVolts: undefined, windingRmsAmps: undefined, heaterVolts: undefined, reservoir };
  return {
    topology,
    kind,
    marginVolts: at.headroomVolts ?? at.rail.minVolts - 0.9 * plan.rail.volts,
    windingRmsAmps: at.windingRmsAmps,
    heaterVolts: at.across?.rmsVolts,
    reservoir,
  };
}

/** The variant that holds with the least current in the winding; the one nearest to holding when none does. */
function bestVariant(variants: readonly TriedVariant[]): TriedVariant | undefined {
  const holding = variants.filter((each) => (each.marginVolts ?? -Infinity) >= WANTED_VALLEY_MARGIN_VOLTS);
  if (holding.length > 0) return [...holding].sort((a, b) => (a.windingRmsAmps ?? 0) - (b.windingRmsAmps ?? 0))[0];
  return [...variants].sort((a, b) => (b.marginVolts ?? -Infinity) - (a.marginVolts ?? -Infinity))[0];
}

/** What the tap leaves the valves: RMS volts at nominal mains, and what the flattened wave means. */
function heaterFindings(heater: HeaterWinding, chain: ChainSolution): Finding[] {
  const nominal = chain.corners.flatMap((at) => (at.solved && at.corner.mains === 'nominal' && at.corner.load === 'everything' && at.across !== undefined ? [{ at, across: at.across }] : []));
  const worst = nominal.sort((a, b) => a.across.rmsVolts - b.across.rmsVolts)[0];
  const rated = heater.heaters[0]?.volts;
  if (worst === undefined || rated === undefined) return [];
  const { rmsVolts, rmsVoltsBefore, crestFactor } = worst.across;
  const off = Math.abs(rmsVolts / rated - 1);
  const level: Level = off <= HEATER_TOLERANCE.close ? 'within' : off <= HEATER_TOLERANCE.wide ? 'marginal' : 'outside';
  return [
    finding({
      rule: 'heaters-left',
      level,
      what:
        `At nominal mains the valves’ heaters keep ${say(rmsVolts, 'V')} RMS of ${say(rmsVoltsBefore, 'V')}; they are rated ${say(rated, 'V')}. ` +
        `The charging pulses flatten their wave to a peak of ${say(crestFactor, '')} times its RMS.`,
      numbers: [figure('heater volts', rmsVolts, 'V'), figure('heater volts before', rmsVoltsBefore, 'V'), figure('rated', rated, 'V'), figure('crest factor', crestFactor, '')],
      why: 'Heaters follow RMS volts. The corners of a flattened wave carry harmonics along every heater wire past every grid, so hum turns to buzz.',
      todo: level === 'within' ? 'Listen for buzz before and after.' : 'Feed the rail from another source.',
      context: { corner: worst.at.corner.words, restsOn: [heater.basis] },
      source: { id: 'solved' },
      ...(level === 'within' ? {} : { harm: 'damage' as const }),
    }),
  ];
}

/** A rail made from elevated heaters sits with them; and one failed resistor of the divider takes it to B+. */
function elevationFindings(plan: SupplyPlan, highestVolts: number): Finding[] {
  const connections = groundsFor(plan, 'heater-winding');
  const { winding, highTensionVolts } = connections;
  if (winding.kind !== 'elevated') return [];
  const outside = reachesOutside(connections);
  const most = winding.volts + highestVolts;
  const beyond = most > TOUCH_DC_VOLTS.value;
  const held = connections.rail.kind !== 'floating';
  return [
    {
      rule: 'elevated-rail',
      level: outside ? 'hazard' : beyond || held ? 'outside' : 'marginal',
      what:
        `The heaters are lifted ${say(winding.volts, 'V')} above the chassis, and a rail made from their winding sits there with them: up to ${say(most, 'V')}` +
        `${beyond ? `, past the ${say(TOUCH_DC_VOLTS.value, 'V')} DC limit` : ''}${outside ? ', and it reaches a jack or a hand' : ''}.` +
        `${held ? ' Bonding the rail to the chassis pulls the elevation down through the rectifier.' : ''}`,
      numbers: [figure('elevation', winding.volts, 'V'), figure('highest above the chassis', most, 'V')],
      why: 'The elevation and the rail add up.',
      todo: 'Use another source; if it must be this one, keep the rail entirely inside and switch outside things by isolated contacts or optocouplers.',
      restsOn: ['rated'],
      source: TOUCH_DC_VOLTS.source,
      ...(outside ? { harm: 'shock' as const } : {}),
    },
    {
      rule: 'elevation-single-fault',
      level: outside ? 'hazard' : 'marginal',
      what: `If the lower resistor of the divider opens, the heaters and the rail head for the high voltage${highTensionVolts === undefined ? '' : `, ${say(highTensionVolts, 'V')}`}.`,
      numbers: highTensionVolts === undefined ? [] : [figure('high voltage', highTensionVolts, 'V')],
      why: 'One resistor holds all of it down, nothing blows when it fails, and nothing shows.',
      todo: 'Use another source; or insulate every part of the rail for the high voltage and put a second resistor beside the lower one.',
      restsOn: ['assumed'],
      source: { id: 'solved' },
      ...(outside ? { harm: 'shock' as const } : {}),
    },
  ];
}

const lastChoice: Finding = {
  rule: 'heater-winding-last',
  level: 'marginal',
  what: 'The heater winding is the last choice for a rail, whatever its figures say.',
  numbers: [],
  why: 'It is the winding whose loss ends the amp; its ground is decided by the valves, not by the rail; its pulses run along every heater wire; and no fuse is in it.',
  todo: 'Take it only when nothing else can be done, for a rail that stays entirely inside, with insulation that is known.',
  restsOn: ['typical'],
  source: { id: 'solved' },
};

const noHeater: Finding = {
  rule: 'no-heater-winding',
  level: 'not assessed',
  what: 'The heater winding has not been surveyed.',
  numbers: [],
  why: 'Without its volts, its resistance and what hangs on it nothing can be said.',
  todo: 'Measure it, or leave it alone: it is the last choice anyway.',
  restsOn: ['assumed'],
  source: { id: 'arithmetic' },
};

/**
 * The rail from the valve heaters' winding: heaters and rectifier solved as one circuit (winding current as the mean of
 * the squared sum, volts left for the heaters, flattened wave), bridge and doubler, Schottky and silicon tried where the
 * plan leaves them open; with what elevation does to the rail and what one failed resistor then does. Never the first
 * choice, and it says so. Throws `InputError` for a plan that names parts which do not exist or do not fit each other.
 */
export function supplyFromHeaterWinding(plan: SupplyPlan): HeaterSupply {
  const { heater } = plan.amp;
  const approach = 'heater-winding';
  if (heater === undefined) return { ...judgeSupply({ plan, approach, available: false, parts: [], findings: [noHeater, lastChoice] }), variants: [] };

  const draw = loadDraw(plan);
  const stage = chooseStage(plan, draw.chain.everythingAmps);
  const winding = windingOf(heater);
  const wish: VariantWish = { plan, draw, stage, winding };
  const chosen = plan.parts.topology;
  const tried = (chosen === undefined ? (['bridge', 'doubler'] as const) : chosen === 'bridge' || chosen === 'doubler' ? [chosen] : []).flatMap((topology) =>
    (['silicon', 'schottky'] as const).map((kind) => tryVariant(wish, topology, kind)),
  );
  const best = bestVariant(tried);
  const topology: RectifierTopology = best?.topology ?? chosen ?? 'bridge';
  const built = buildChain({ ...wish, topology, kinds: [best?.kind ?? 'schottky'], ...(best === undefined ? {} : { reservoir: best.reservoir }) });
  const { input, chain } = built;
  const fuse = secondaryFuse({ input, chain, chosen: plan.protections.secondaryFuse });
  const supply = judgeSupply({
    plan,
    approach,
    parts: [...built.parts, ...(fuse === undefined ? [] : [fuse.part])],
    chainInput: input,
    chain,
    findings: [
      ...chainSupplyFindings({ plan, built, draw }),
      ...heaterFindings(heater, chain),
      ...elevationFindings(plan, railLimits(built)?.highestVolts ?? plan.rail.volts),
      transformerFinding(plan, addedVoltAmps(winding, topology, chain), chain.worst?.windingCurrent.corner.words ?? ''),
      ...(fuse?.findings ?? []),
      lastChoice,
    ],
  });
  const variants = tried.map(({ topology: way, kind, marginVolts, windingRmsAmps, heaterVolts }) => ({ topology: way, kind, marginVolts, windingRmsAmps, heaterVolts }));
  return { ...supply, variants };
}
