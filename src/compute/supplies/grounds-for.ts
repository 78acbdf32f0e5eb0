import type { GroundConnections, Insulation, WindingReference } from '../grounding/connections.ts';
import type { ConverterRow } from '../parts/converter.ts';
import type { Approach, Barriers, SupplyPlan } from '../plan/plan-types.ts';

const UNKNOWN: Insulation = { kind: 'unknown' };

const NOTHING: Barriers = { fromMains: UNKNOWN, fromHighTension: UNKNOWN };

interface SourceFacts extends Barriers {
  readonly winding: WindingReference;
}

function sourceFacts({ amp, parts }: SupplyPlan, approach: Approach, part: ConverterRow | undefined): SourceFacts {
  if (approach === 'converter') {
    const tested: Barriers = part === undefined ? NOTHING : { fromMains: { kind: 'test-voltage-only', testVolts: part.isolationTestVolts }, fromHighTension: UNKNOWN };
    return { winding: { kind: 'none' }, ...(parts.converter?.insulation ?? tested) };
  }
  if (approach === 'separate-transformer') return { winding: { kind: 'none' }, ...(parts.transformer?.insulation ?? NOTHING) };
  const winding = approach === 'heater-winding' ? amp.heater : amp.spare;
  return winding === undefined ? { winding: { kind: 'none' }, ...NOTHING } : { winding: winding.reference, ...winding.insulation };
}

/**
 * Every ground connection and insulation that one approach to the plan would have: what the reader decided, joined with
 * what the amp already is and what the approach's source brings (a winding's own ground; a module's or a transformer's
 * insulation, `unknown` while nobody has read it; a converter's leakage). `part` is the converter, where there is one.
 */
export function groundsFor(plan: SupplyPlan, approach: Approach, part?: ConverterRow): GroundConnections {
  const { amp, grounds } = plan;
  const { winding, fromMains, fromHighTension } = sourceFacts(plan, approach, part);
  return {
    winding,
    rail: grounds.rail,
    jacks: grounds.jacks,
    touchableControls: grounds.touchableControls,
    ampEarth: amp.protectiveEarth,
    insulation: { fromMains, fromHighTension },
    relays: grounds.relays,
    ...(amp.highTensionVolts === undefined ? {} : { highTensionVolts: amp.highTensionVolts }),
    ...(grounds.bondOhms === undefined ? {} : { bondOhms: grounds.bondOhms }),
    ...(approach !== 'converter' ? {}
    : { converterCoupling: part === undefined ? ({ kind: 'unknown' } as const) : ({ kind: 'rated-leakage', amps: part.leakageAmps } as const) }),
  };
}
