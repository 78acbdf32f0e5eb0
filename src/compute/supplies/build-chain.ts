import { say } from '../findings/check.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../findings/regulator.ts';
import { insulator } from '../parts/heatsink.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import { coolChain, solveChain } from './chain.ts';
import { chainReservoir } from './chain-parts.ts';
import type { ChainCorner, ChainInput, ChainReservoir, ChainSolution, ChainStage, ChainWinding, Cooling } from './chain-types.ts';
import { chooseRectifier } from './choose-rectifier.ts';
import type { StageChoice } from './choose-stage.ts';
import type { LoadDraw } from './load-draw.ts';
import { heatsinkVolume, reservoirVolume } from './part-volumes.ts';
import { stageHeatsink } from './regulator-stage.ts';
import { sizeReservoir } from './size-reservoir.ts';
import type { SizedReservoir } from './size-reservoir.ts';
import type { SizedPart } from './supply-types.ts';

/** Heatsinks on any shelf, K/W in still air. Typical of catalogues. */
const STANDARD_HEATSINKS = [40, 30, 20, 15, 10, 7, 5, 3] as const;

export interface BuiltChain {
  readonly input: ChainInput;
  readonly chain: ChainSolution;
  readonly parts: readonly SizedPart[];
}

export interface ChainWish {
  readonly plan: SupplyPlan;
  readonly draw: LoadDraw;
  readonly stage: StageChoice;
  readonly winding: ChainWinding;
  readonly topology: RectifierTopology;
  /** Kinds of diode to try, in this order, until the valley leaves its margin; the last stands. */
  readonly kinds: readonly ('silicon' | 'schottky')[];
  /** A reservoir sized before, with the same winding and load; sized here when left out. */
  readonly reservoir?: SizedReservoir;
}

const PAD_KELVIN_PER_WATT = insulator('pad').kelvinPerWatt;

/** What the plan cools the regulator by. A pad goes under a tab that is live, and under any tab on the chassis. */
export function planCooling({ amp, parts }: Pick<SupplyPlan, 'amp' | 'parts'>, stage: ChainStage): Cooling {
  const { heatsink } = parts;
  const padded = stage.kind === 'adjustable' || heatsink?.kind === 'chassis';
  return {
    airCelsius: amp.airCelsius,
    ...(heatsink === undefined ? {} : { heatsinkKelvinPerWatt: heatsink.kelvinPerWatt }),
    ...(padded ? { interfaceKelvinPerWatt: PAD_KELVIN_PER_WATT } : {}),
  };
}

const reservoirPart = (reservoir: ChainReservoir, topology: RectifierTopology, chosenBy: SizedPart['chosenBy'], why: string): SizedPart => {
  const count = topology === 'doubler' ? 2 : 1;
  return {
    role: 'reservoir',
    name: `${say(reservoir.farads, 'F')} ${say(reservoir.ratedVolts, 'V')} electrolytic, 105 °C`,
    count,
    chosenBy,
    why,
    numbers: [
      { name: 'capacitance', value: reservoir.farads, unit: 'F' },
      { name: 'rated volts', value: reservoir.ratedVolts, unit: 'V' },
      ...(reservoir.ratedRippleAmps === undefined ? [] : [{ name: 'ripple current allowed here', value: reservoir.ratedRippleAmps, unit: 'A' }]),
    ],
    basis: reservoir.basis,
    cubicMetres: count * reservoirVolume(reservoir.farads, reservoir.ratedVolts),
  };
};

/** Whether a reservoir was sized with these very diodes and this winding, so that its corner need not be solved again. */
const isSameCircuit = (sized: ChainInput, base: Omit<ChainInput, 'reservoir'>): boolean =>
  sized.winding === base.winding && sized.stage === base.stage && sized.diode.saturationAmps === base.diode.saturationAmps && sized.diode.ohms === base.diode.ohms;

/** The reservoir that the plan names, or a sized one. */
function reservoirFor(wish: ChainWish, base: Omit<ChainInput, 'reservoir'>): { readonly reservoir: ChainReservoir; readonly part: SizedPart; readonly margin: number; readonly at?: ChainCorner } {
  const { plan, topology } = wish;
  const chosen = plan.parts.reservoir;
  if (chosen !== undefined) {
    const reservoir = chainReservoir({ ...chosen, topology, hertz: plan.mains.hertz, airCelsius: plan.amp.airCelsius });
    return { reservoir, part: reservoirPart(reservoir, topology, 'plan', 'Named in the plan.'), margin: Infinity };
  }
  const { reservoir, why, at, input } = wish.reservoir ?? sizeReservoir(base);
  const margin = at.solved ? (at.headroomVolts ?? at.rail.minVolts - 0.9 * plan.rail.volts + WANTED_VALLEY_MARGIN_VOLTS) : -Infinity;
  return { reservoir, part: reservoirPart(reservoir, topology, 'sized', why), margin, ...(isSameCircuit(input, base) ? { at } : {}) };
}

/** Cools a linear regulator that needs it: the weakest standard heatsink that keeps the junction at its aim. */
function withHeatsink(plan: SupplyPlan, input: ChainInput, chain: ChainSolution): { readonly input: ChainInput; readonly chain: ChainSolution; readonly part?: SizedPart } {
  const { stage, cooling } = input;
  const heat = chain.worst?.heat;
  if (heat === undefined || stage.kind === 'none' || stage.kind === 'buck') return { input, chain };
  const onChassis = plan.parts.heatsink?.kind === 'chassis';
  const described = (kelvinPerWatt: number, chosenBy: SizedPart['chosenBy'], why: string): SizedPart => ({
    role: 'heatsink',
    name: onChassis ? `The chassis as heatsink, ${say(kelvinPerWatt, 'K/W')}, with pad and bush` : `Heatsink, ${say(kelvinPerWatt, 'K/W')}${cooling.interfaceKelvinPerWatt === undefined ? '' : ', with pad and bush'}`,
    count: 1,
    chosenBy,
    why,
    numbers: [{ name: 'heatsink', value: kelvinPerWatt, unit: 'K/W' }],
    basis: onChassis ? 'assumed' : 'typical',
    cubicMetres: onChassis ? 0 : heatsinkVolume(kelvinPerWatt),
  });
  if (cooling.heatsinkKelvinPerWatt !== undefined) return { input, chain, part: described(cooling.heatsinkKelvinPerWatt, 'plan', 'Named in the plan.') };
  const needed = stageHeatsink(stage, heat.regulatorWatts, cooling);
  if (needed === undefined) return { input, chain };
  const kelvinPerWatt = STANDARD_HEATSINKS.find((each) => each <= needed) ?? 3;
  const cooled: ChainInput = { ...input, cooling: { ...cooling, heatsinkKelvinPerWatt: kelvinPerWatt } };
  const why =
    needed < 3 ?
      `No heatsink that fits a chassis is enough for ${say(heat.regulatorWatts, 'W')}.`
    : `${say(heat.regulatorWatts, 'W')} at ${heat.corner.words} in air of ${say(cooling.airCelsius, '°C')} asks for ${say(needed, 'K/W')} or less.`;
  return { input: cooled, chain: coolChain(cooled, chain), part: described(kelvinPerWatt, 'sized', why) };
}

/**
 * Completes a winding to a chain for the plan's rail, with the parts the plan names and sized ones for the rest, and
 * solves it at every corner.
 */
export function buildChain(wish: ChainWish): BuiltChain {
  const { plan, draw, stage, winding, topology, kinds } = wish;
  const base = { mains: plan.mains, winding, topology, stage: stage.stage, load: draw.chain, cooling: planCooling(plan, stage.stage) };
  let picked: { input: ChainInput; parts: SizedPart[]; at: ChainCorner | undefined } | undefined;
  for (const kind of kinds) {
    const rectifier = chooseRectifier({
      named: plan.parts.diode,
      kind,
      topology,
      dcAmps: draw.chain.everythingAmps,
      openCircuitVolts: winding.openCircuitVolts,
      mains: plan.mains,
    });
    const reservoir = reservoirFor(wish, { ...base, diode: rectifier.diode });
    picked = { input: { ...base, diode: rectifier.diode, reservoir: reservoir.reservoir }, parts: [rectifier.part, reservoir.part], at: reservoir.at };
    if (plan.parts.diode !== undefined || reservoir.margin >= WANTED_VALLEY_MARGIN_VOLTS) break;
  }
  if (picked === undefined) throw new RangeError('no kind of diode was offered');
  const cooled = withHeatsink(plan, picked.input, solveChain(picked.input, picked.at));
  return {
    input: cooled.input,
    chain: cooled.chain,
    parts: [...picked.parts, ...stage.parts, ...(cooled.part === undefined ? [] : [cooled.part])],
  };
}
