import { say } from '../findings/check.ts';
import { WANTED_VALLEY_MARGIN_VOLTS } from '../findings/regulator.ts';
import { WANTED_WINDING_SHARE } from '../findings/winding.ts';
import { COMMON_SECONDARY_VOLTS, COMMON_VOLT_AMPS, construction, typicalRegulation } from '../parts/transformer.ts';
import { joinSecondaries, windingFromRating } from '../parts/winding.ts';
import type { PlanTransformer } from '../plan/plan-types.ts';
import { ripplelessRail, solveCorner } from './chain-corner.ts';
import type { ChainInput, ChainReservoir, ChainWinding } from './chain-types.ts';
import { operatingCorners } from './corners.ts';
import type { OperatingCorner } from './corners.ts';
import { neededInputVolts } from './regulator-stage.ts';
import { decidingCorner, sizeReservoir } from './size-reservoir.ts';
import type { SizedReservoir } from './size-reservoir.ts';

/**
 * A transformer's secondary as the rectifier sees it, from its printed rating. Two secondaries share the VA equally:
 * in series twice the volts, in parallel (in phase only) twice the amps, as a centre tap each half by itself.
 */
export function transformerWinding(transformer: PlanTransformer): ChainWinding {
  const { secondaryVolts, secondaries, voltAmps, regulationRatio, basis } = transformer;
  const amps = (secondaries === 'one' ? voltAmps : voltAmps / 2) / secondaryVolts;
  const one = windingFromRating({ ratedVolts: secondaryVolts, ratedAmps: amps, regulation: Math.min(1, regulationRatio) });
  if (secondaries === 'two-in-series') return { ...joinSecondaries({ winding: one, as: 'series' }), ratedAmps: amps, basis };
  if (secondaries === 'two-in-parallel') return { ...joinSecondaries({ winding: one, as: 'parallel' }), ratedAmps: 2 * amps, basis };
  return { ...one, ratedAmps: amps, basis };
}

/** Stands where a reservoir is not asked for: its size does not enter a rail without ripple. */
const NO_RESERVOIR: ChainReservoir = { farads: 1e-3, ohms: 0, ratedVolts: 100, basis: 'assumed' };

export interface SizedTransformer {
  readonly transformer: PlanTransformer;
  readonly winding: ChainWinding;
  readonly reservoir: SizedReservoir;
  readonly why: string;
  /** False when nothing in the range holds the rail: the largest tried stands, and its findings say by how much it fails. */
  readonly found: boolean;
}

/** RMS current in a winding over the DC current, to begin with; the solution corrects it. */
const FIRST_RMS_RATIO = { bridge: 1.8, 'centre-tap': 1.2, 'half-wave': 2.6, doubler: 3 } as const;

/** What the rail and its reservoir draw from the winding: amps of the load, or of its power through a switcher. */
const firstAmps = ({ stage, load }: Omit<ChainInput, 'reservoir' | 'winding'>, windingVolts: number): number => {
  if (stage.kind !== 'buck') return load.everythingAmps + (stage.kind === 'none' ? 0 : stage.quiescentAmps);
  return ((stage.outputVolts + stage.lossVolts) * load.everythingAmps) / (1.2 * windingVolts);
};

const typical = (secondaryVolts: number, voltAmps: number, secondaries: PlanTransformer['secondaries']): PlanTransformer => ({
  secondaryVolts,
  secondaries,
  voltAmps,
  regulationRatio: typicalRegulation({ construction: construction('laminated'), voltAmps }).typical,
  // A marking is read, never inferred.
  shortCircuitMark: 'unknown',
  basis: 'typical',
});

/** A secondary of some volts with the smallest VA that carries its current, and its reservoir. */
export interface SizedAtVolts {
  readonly transformer: PlanTransformer;
  readonly winding: ChainWinding;
  readonly reservoir: SizedReservoir;
  /** Valley at the deciding corner less what is needed there; −Infinity without a steady state. */
  readonly marginVolts: number;
  /** Whether the size carries its current; only the largest of the range is given without. */
  readonly carries: boolean;
}

/**
 * The smallest standard VA of a secondary of these volts whose rated current the solved RMS current fills to nine tenths
 * at most, with a reservoir sized for it. With `onlyIfHolds` it is undefined where even a rail without ripple leaves the
 * valley short: nothing is solved then.
 */
export function sizeAtVolts(input: Omit<ChainInput, 'reservoir' | 'winding'>, volts: number, onlyIfHolds = false): SizedAtVolts | undefined {
  const secondaries = input.topology === 'centre-tap' ? 'two-as-centre-tap' : 'one';
  const hot = operatingCorners(input.mains).find((at) => at.mains === 'high' && at.load === 'everything' && at.reservoir === 'largest');
  const deciding = decidingCorner(input.mains);
  const needed = input.stage.kind === 'none' ? 0.9 * input.stage.designVolts : neededInputVolts(input.stage, input.load.everythingAmps) + WANTED_VALLEY_MARGIN_VOLTS;
  const share = secondaries === 'one' ? 1 : 2;
  const first = (volts * share * firstAmps(input, volts) * FIRST_RMS_RATIO[input.topology]) / WANTED_WINDING_SHARE;
  for (const voltAmps of COMMON_VOLT_AMPS) {
    const largest = voltAmps === COMMON_VOLT_AMPS.at(-1);
    if (voltAmps < first && !largest) continue;
    const transformer = typical(volts, voltAmps, secondaries);
    const winding = transformerWinding(transformer);
    // A rail without ripple is the best there can be: these volts are too few, or this size is too small, unsolved.
    const imagined = { ...input, winding, reservoir: NO_RESERVOIR };
    if (onlyIfHolds && ripplelessRail(imagined, deciding).railVolts < needed) return undefined;
    if (hot !== undefined && !largest && ripplelessRail(imagined, hot).windingRmsAmps > WANTED_WINDING_SHARE * (winding.ratedAmps ?? Infinity)) continue;
    const reservoir = sizeReservoir({ ...input, winding });
    return {
      transformer,
      winding,
      reservoir,
      marginVolts: reservoir.at.solved ? (reservoir.at.headroomVolts ?? holdsUnregulated(input, reservoir.at.rail.minVolts)) : -Infinity,
      carries: !largest || fits(imagined, reservoir, hot),
    };
  }
  return undefined;
}

/**
 * Picks a small transformer out of the standard range: the lowest secondary volts at which the valley at low mains
 * still leaves the margin (more would only be burnt in the regulator), and the smallest VA whose rated current the
 * solved RMS current fills to nine tenths at most. A doubler or a half-wave rectifier is sized the same way; a
 * centre-tap rectifier takes two secondaries. Regulation is typical of the size.
 */
export function sizeTransformer(input: Omit<ChainInput, 'reservoir' | 'winding'>): SizedTransformer {
  let last: SizedTransformer | undefined;
  for (const volts of COMMON_SECONDARY_VOLTS) {
    const at = sizeAtVolts(input, volts, volts !== COMMON_SECONDARY_VOLTS.at(-1));
    if (at === undefined) continue;
    const { transformer, winding, reservoir, marginVolts, carries } = at;
    const why =
      `${say(volts, 'V')} is the lowest standard secondary that keeps ${say(Math.max(0, marginVolts), 'V')} above what is needed at low mains; ` +
      `${say(transformer.voltAmps, 'VA')} carries the solved RMS current.`;
    last = { transformer, winding, reservoir, why, found: false };
    if (marginVolts >= WANTED_VALLEY_MARGIN_VOLTS) return { ...last, found: carries };
  }
  if (last === undefined) throw new RangeError('the range of transformers is empty');
  return { ...last, why: `Nothing in the standard range holds this rail: ${say(last.transformer.secondaryVolts, 'V')} ${say(last.transformer.voltAmps, 'VA')} is the largest tried.` };
}

/** Whether the largest size carries its current; smaller ones are passed over before they are solved. */
function fits(input: ChainInput, { reservoir }: SizedReservoir, hot: OperatingCorner | undefined): boolean {
  const at = hot === undefined ? undefined : solveCorner({ ...input, reservoir }, hot);
  return at?.solved === true && at.windingRmsAmps <= WANTED_WINDING_SHARE * (input.winding.ratedAmps ?? Infinity);
}

/** Without a regulator the valley is to stay above nine tenths of the rail asked for. */
const holdsUnregulated = ({ stage }: Omit<ChainInput, 'reservoir' | 'winding'>, valleyVolts: number): number =>
  stage.kind === 'none' ? valleyVolts - 0.9 * stage.designVolts + WANTED_VALLEY_MARGIN_VOLTS : 0;
