import { RELAY_COILS, type RelayCoil } from '../../compute/index.ts';
import type { SupplyPlan } from '../../compute/plan.ts';
import { given } from '../shop.ts';

/** The relay of a plan as the catalogue has it: the first of its volts and ohms. */
export function coilOf({ loads }: SupplyPlan): RelayCoil {
  const relay = given(loads.find((item) => item.kind === 'relay'), 'a relay');
  return given(RELAY_COILS.find(({ ratedVolts, ohms }) => ratedVolts === relay.volts && ohms === relay.ohms), 'a relay of the catalogue');
}
