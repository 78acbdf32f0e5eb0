import { heatersOhms, type GroundingJob, type WindingReference } from '../../compute/index.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import { given } from '../shop.ts';
import { ratedDiode, type Cooling } from './grounded.ts';

/** The small rail that unit 4 hangs on heater windings: a relay board. All of it supposed. */
export const HEATER_RAIL = { diode: '1n5820-22', diodeName: '1N5822', farads: 4700e-6, esrOhms: 0.05, loadOhms: 35 } as const;

/**
 * A relay board's rail from an amp's heater winding through a bridge, at nominal mains, floating until `connections`
 * say otherwise. The winding's own reference is the amp's, unless another is supposed.
 */
export function heaterRailJob(
  plan: SupplyPlan,
  options: { readonly reference?: WindingReference; readonly diode?: string; readonly cooling?: Cooling; readonly isGrounded?: boolean; readonly topology?: 'bridge' | 'centre-tap' | 'doubler' } = {},
): GroundingJob {
  const { diode = HEATER_RAIL.diode, cooling = 'best', isGrounded = false, topology = 'bridge' } = options;
  const heater = given(plan.amp.heater, 'a heater winding');
  const reference = options.reference ?? heater.reference;
  const centre = reference.kind === 'elevated' ? reference.centre.kind : reference.kind;
  const heaterOhms = heatersOhms(heater);
  return {
    hertz: plan.mains.hertz,
    mainsVolts: plan.mains.nominalVolts,
    loadOhms: HEATER_RAIL.loadOhms,
    airCelsius: plan.amp.airCelsius,
    supply: {
      kind: 'winding',
      windingKind: 'heater',
      topology,
      openCircuitVolts: heater.openCircuitVolts,
      ohms: heater.ohms,
      hasCentreTap: centre === 'centre-tap',
      ratedAmps: given(heater.ratedAmps, 'the rating of the heater winding'),
      ...(heaterOhms === undefined ? {} : { heaterOhms }),
      diode: ratedDiode(diode, cooling),
      reservoir: { farads: HEATER_RAIL.farads, ohms: HEATER_RAIL.esrOhms },
    },
    connections: {
      winding: reference,
      rail: isGrounded ? { kind: 'bonded', pole: 'negative' } : { kind: 'floating' },
      jacks: [],
      touchableControls: false,
      ampEarth: plan.amp.protectiveEarth,
      insulation: heater.insulation,
      relays: [],
      highTensionVolts: given(plan.amp.highTensionVolts, 'the high voltage'),
    },
  };
}
