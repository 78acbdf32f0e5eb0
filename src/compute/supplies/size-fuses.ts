import type { Finding, Level } from '../findings.ts';
import { figure, finding, say } from '../findings/check.ts';
import { fuseRatingFor, fuseStandard, fuseTimes, IEC_FUSE_AMPS, meltingIntegral, pulseA2s, pulseShare, reservoirInrushA2s } from '../parts/fuse.ts';
import type { FuseStandard } from '../parts/fuse.ts';
import { inrushBoundAmps, ratedPrimaryAmps, shortCircuitAmps } from '../parts/transformer.ts';
import type { PlanFuse, PlanTransformer } from '../plan/plan-types.ts';
import type { ChainInput, ChainSolution, ChainWinding } from './chain-types.ts';
import { SMALL_VOLUMES } from './part-volumes.ts';
import type { SizedPart } from './supply-types.ts';

/** Time-lag, high breaking capacity: what a mains-side or winding fuse is unless the plan says otherwise. */
const USUAL_STANDARD = 'iec-sheet-5';
/** A short that is over by then has not cooked a winding (assumed: tens of kelvin at several times the rated current). */
const CLEARS_SECONDS = 30;
/** Switch-ons in a working life, for the pulse derating. */
const SWITCH_ONS = 10_000;

/** A fuse with its checks. */
export interface FuseChoice {
  readonly part: SizedPart;
  readonly findings: readonly Finding[];
}

const nextUp = (amps: number): number => IEC_FUSE_AMPS.find((each) => each >= amps * (1 - 1e-9)) ?? 10;

const fusePart = (role: 'primary-fuse' | 'secondary-fuse', amps: number, standard: FuseStandard, chosenBy: SizedPart['chosenBy'], why: string): SizedPart => ({
  role,
  name: `${say(amps, 'A')} ${standard.action} fuse (${standard.name})`,
  count: 1,
  chosenBy,
  why,
  numbers: [figure('rating', amps, 'A')],
  basis: standard.basis,
  cubicMetres: SMALL_VOLUMES.fuse,
});

/** Does it survive switch-on for years? Melting integral, pulse-derated, against the I²t of the inrush. */
const survivesFinding = (rule: string, amps: number, inrushA2s: number): Finding => {
  const melting = meltingIntegral(amps);
  const allowed = melting.a2s * pulseShare(SWITCH_ONS);
  const level: Level = inrushA2s <= allowed ? 'within' : inrushA2s <= melting.a2s ? 'marginal' : 'outside';
  return finding({
    rule,
    level,
    what: `Switch-on puts at most ${say(inrushA2s, 'A²s')} through the fuse; over ${SWITCH_ONS} times it bears ${say(allowed, 'A²s')}.`,
    numbers: [figure('inrush', inrushA2s, 'A²s'), figure('allowed', allowed, 'A²s'), figure('melting', melting.a2s, 'A²s')],
    why: 'A fuse that switch-on wears out blows one evening for no fault, and is then replaced by a bigger one.',
    todo: level === 'within' ? 'Nothing.' : 'Take a time-lag type of higher melting integral, or limit the inrush; never simply the next rating up without checking that it still blows on a fault.',
    context: { corner: 'switch-on at the worst instant', restsOn: [melting.basis, 'assumed'] },
    source: { id: 'note-fuse-guide' },
  });
};

/** Does it protect the winding from an overload, and not from a short only? */
const protectsFinding = ({ winding }: ChainInput, amps: number, corner: string): Finding => {
  const rated = winding.ratedAmps;
  const level: Level = rated === undefined ? 'not assessed' : amps <= rated ? 'within' : 'marginal';
  return finding({
    rule: 'secondary-fuse-protects',
    level,
    what:
      rated === undefined ? `Whether ${say(amps, 'A')} protects the winding cannot be told: nobody knows its rating.`
      : amps <= rated ? `The fuse of ${say(amps, 'A')} is within the winding’s ${say(rated, 'A')}.`
      : `The fuse of ${say(amps, 'A')} is above the winding’s ${say(rated, 'A')}: it ends a short, not an overload.`,
    numbers: [figure('rating', amps, 'A'), ...(rated === undefined ? [] : [figure('winding', rated, 'A')])],
    why: 'The fuse stands in the tap: it sees what the rail draws, and heaters on the same winding not at all.',
    todo: level === 'within' ? 'Nothing.' : 'A smaller reservoir or a resistance before it lowers the inrush that asks for this rating.',
    context: { corner, restsOn: [winding.basis] },
    source: { id: 'note-fuse-guide' },
  });
};

/** Does it open on a dead short? */
const clearsFinding = (rule: string, amps: number, standard: FuseStandard, shortAmps: number, otherwise: { readonly level: Level; readonly todo: string }): Finding => {
  const { maxSeconds } = fuseTimes({ standard, ratedAmps: amps, amps: Math.min(shortAmps, 1e4) });
  const clears = maxSeconds !== undefined && maxSeconds <= CLEARS_SECONDS;
  return finding({
    rule,
    level: clears ? 'within' : otherwise.level,
    what:
      `A dead short draws ${say(shortAmps, 'A')} through the fuse, ${say(shortAmps / amps, '')} times its rating: ` +
      (maxSeconds === undefined ? 'it need never open.' : `it opens within ${say(maxSeconds, 's')}.`),
    numbers: [figure('short-circuit current', shortAmps, 'A'), figure('rating', amps, 'A'), ...(maxSeconds === undefined ? [] : [figure('opens within', maxSeconds, 's')])],
    why: 'A fuse is there for the fault. One that takes minutes lets the winding burn first.',
    todo: clears ? 'Nothing.' : otherwise.todo,
    context: { corner: 'dead short, cold winding', restsOn: [standard.basis] },
    source: standard.source,
    ...(clears || otherwise.level !== 'hazard' ? {} : { harm: 'fire' as const }),
  });
};

/**
 * The fuse between winding and rectifier: the smallest standard rating that carries the solved RMS current of the
 * rectifier (never the DC current) and survives the charging of the empty reservoir; checked to open on a shorted bridge.
 */
export function secondaryFuse(options: { readonly input: ChainInput; readonly chain: ChainSolution; readonly chosen: PlanFuse | undefined }): FuseChoice | undefined {
  const { input, chain, chosen } = options;
  const at = chain.worst?.windingCurrent;
  if (at === undefined) return undefined;
  const rmsAmps = at.rectifier.winding.rmsAmps;
  const peakVolts = (input.winding.openCircuitVolts * Math.SQRT2 * input.mains.highVolts) / input.mains.nominalVolts;
  const inrush = reservoirInrushA2s({ farads: input.reservoir.farads * 1.2, peakVolts, ohms: Math.max(input.winding.ohms, 0.01) + input.diode.ohms + input.reservoir.ohms });
  const standard = fuseStandard(chosen?.standard ?? USUAL_STANDARD);
  const carries = fuseRatingFor({ standard, rmsAmps: 1.1 * rmsAmps }) ?? 10;
  const survives = IEC_FUSE_AMPS.find((amps) => amps >= carries && meltingIntegral(amps).a2s * pulseShare(SWITCH_ONS) >= inrush) ?? carries;
  const amps = chosen?.amps ?? survives;
  const shortAmps = shortCircuitAmps({ openCircuitVolts: input.winding.openCircuitVolts, ohms: Math.max(input.winding.ohms, 0.001) });
  const fits = rmsAmps <= amps * standard.continuousShare;
  return {
    part: fusePart('secondary-fuse', amps, standard, chosen === undefined ? 'sized' : 'plan', `It carries ${say(rmsAmps, 'A')} RMS, the solved current of the winding into the rectifier, and the charging of the empty reservoir.`),
    findings: [
      finding({
        rule: 'secondary-fuse-carries',
        level: fits ? 'within' : 'outside',
        what: `The fuse carries ${say(rmsAmps, 'A')} RMS and is rated ${say(amps, 'A')}, of which it may carry ${say(standard.continuousShare, '%')} for ever.`,
        numbers: [figure('winding current', rmsAmps, 'A'), figure('rating', amps, 'A')],
        why: 'The winding’s RMS current heats the fuse, not the DC current behind the rectifier.',
        todo: fits ? 'Nothing.' : 'Take the next rating up, and check that it still opens on a short.',
        context: { corner: at.corner.words, restsOn: [input.winding.basis, standard.basis] },
        source: standard.source,
      }),
      protectsFinding(input, amps, at.corner.words),
      survivesFinding('secondary-fuse-inrush', amps, inrush),
      clearsFinding('secondary-fuse-clears', amps, standard, shortAmps, { level: 'outside', todo: 'Take a smaller rating if the running current allows; this winding cannot blow the fuse quickly.' }),
    ],
  };
}

/**
 * The fuse in the primary of an added transformer: the first standard rating from 1.6 times the rated primary current,
 * time-lag, checked against the bound on inrush. A small transformer draws too little with its secondary shorted to open
 * it in time: unless its marking says that it bears or ends a short by itself, that is a fire hazard.
 */
export function primaryFuse(options: {
  readonly transformer: PlanTransformer;
  readonly winding: ChainWinding;
  readonly mainsVolts: number;
  readonly hertz: number;
  readonly chosen: PlanFuse | undefined;
}): FuseChoice {
  const { transformer, winding, mainsVolts, hertz, chosen } = options;
  const { voltAmps, regulationRatio, shortCircuitMark } = transformer;
  const ratedAmps = ratedPrimaryAmps({ voltAmps, mainsVolts });
  const peak = inrushBoundAmps({ ratedAmps, regulation: Math.min(1, regulationRatio) });
  const inrush = pulseA2s({ shape: 'half-sine', peakAmps: peak, seconds: 1 / (2 * hertz) });
  const standard = fuseStandard(chosen?.standard ?? USUAL_STANDARD);
  const amps = chosen?.amps ?? nextUp(1.6 * ratedAmps);
  // Open-circuit volts over mains volts is the turns ratio; the short reflects by it.
  const shortAmps = (shortCircuitAmps(winding) * winding.openCircuitVolts) / mainsVolts;
  const proof = shortCircuitMark === 'inherently-proof' || shortCircuitMark === 'conditionally-proof' || shortCircuitMark === 'fail-safe';
  const otherwise = {
    level: proof ? ('within' as const) : shortCircuitMark === 'unknown' ? ('not assessed' as const) : ('hazard' as const),
    todo: proof ? 'Nothing: its marking says that it bears or ends a short by itself; the fuse is for gross faults.' : 'Fit a transformer marked short-circuit-proof, or with a thermal link stated by its maker. The mark is read, never inferred from the size.',
  };
  return {
    part: fusePart('primary-fuse', amps, standard, chosen === undefined ? 'sized' : 'plan', `The first standard rating from 1.6 times the rated primary current of ${say(ratedAmps, 'A')}; for gross faults only.`),
    findings: [survivesFinding('primary-fuse-inrush', amps, inrush), clearsFinding('primary-fuse-clears', amps, standard, shortAmps, otherwise)],
  };
}
