import type { GroundingJob, GroundingSupply, WindingSupply } from '../grounding/job.ts';
import type { SupplyPlan } from '../plan/plan-types.ts';
import { groundsFor } from './grounds-for.ts';
import type { Supply } from './supply-types.ts';

type SolvedPieces = Pick<Supply, 'approach' | 'chainInput' | 'chain' | 'converter'>;

/** Ends of the winding as the grounding takes it: the whole winding, a centre-tap's two halves joined. */
function windingSupply(plan: SupplyPlan, { approach, chainInput }: SolvedPieces): WindingSupply | undefined {
  if (chainInput === undefined) return undefined;
  const { winding, topology, diode, reservoir } = chainInput;
  const halves = topology === 'centre-tap' ? 2 : 1;
  const { amp } = plan;
  const centred = (kind: string | undefined): boolean => kind === 'centre-tap';
  const reference = approach === 'heater-winding' ? amp.heater?.reference : approach === 'spare-winding' ? amp.spare?.reference : undefined;
  const centre = reference?.kind === 'elevated' ? reference.centre.kind : reference?.kind;
  return {
    kind: 'winding',
    windingKind: approach === 'heater-winding' ? 'heater' : approach === 'spare-winding' ? (amp.spare?.kind ?? 'low-voltage') : 'low-voltage',
    ...(approach === 'separate-transformer' ? { ownTransformer: true } : {}),
    topology,
    openCircuitVolts: halves * winding.openCircuitVolts,
    ohms: halves * Math.max(winding.ohms, 1e-3),
    hasCentreTap: topology === 'centre-tap' || centred(centre) || (approach === 'spare-winding' && amp.spare?.centreTapped === true),
    ...(winding.ratedAmps === undefined ? {} : { ratedAmps: winding.ratedAmps }),
    ...(winding.acrossOhms === undefined ? {} : { heaterOhms: winding.acrossOhms }),
    diode: {
      saturationAmps: diode.saturationAmps,
      emission: diode.emission,
      ohms: diode.ohms,
      ratedMeanAmps: diode.ratedMeanAmps,
    },
    reservoir: { farads: reservoir.farads, ohms: reservoir.ohms },
  };
}

function source(plan: SupplyPlan, pieces: SolvedPieces): GroundingSupply | undefined {
  if (pieces.approach !== 'converter') return windingSupply(plan, pieces);
  if (pieces.converter === undefined) return undefined;
  const { part } = pieces.converter;
  return { kind: 'converter', outputVolts: part.outputVolts, limitAmps: part.ratedAmps * part.overloadRatio };
}

/**
 * What the grounding analysis needs to know of one approach to a plan, out of its sized and solved parts, at nominal
 * mains; undefined when there is nothing to ground (the approach is not available, or nothing of it could be solved).
 */
export function groundingJob(plan: SupplyPlan, pieces: SolvedPieces): GroundingJob | undefined {
  const supply = source(plan, pieces);
  if (supply === undefined) return undefined;
  const loaded = pieces.chain?.worst?.valley.rectifier;
  const amps = loaded?.load.meanAmps ?? pieces.converter?.loadAmps.everything ?? 0;
  const volts = loaded?.rail.meanVolts ?? pieces.converter?.part.outputVolts ?? plan.rail.volts;
  return {
    hertz: plan.mains.hertz,
    mainsVolts: plan.mains.nominalVolts,
    supply,
    loadOhms: amps > 0 ? Math.min(1e9, Math.max(0.01, volts / amps)) : 1e6,
    airCelsius: plan.amp.airCelsius,
    connections: groundsFor(plan, pieces.approach, pieces.converter?.part),
  };
}
