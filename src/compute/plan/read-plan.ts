import { migratePlan } from './migrate-plan.ts';
import type {
  HeaterWinding,
  PlanAmp,
  PlanConverter,
  PlanFuse,
  PlanParts,
  PlanProtections,
  PlanRail,
  PlanTransformer,
  PresentHeater,
  SpareWinding,
  SupplyPlan,
} from './plan-types.ts';
import { readGrounds, readInsulation, readWindingReference } from './read-grounds.ts';
import { readLoad } from './read-load.ts';
import { flag, list, number, oneOf, optional, record, text, wholeNumber } from './readers.ts';
import type { Reader, ReadProblem, Reading } from './readers.ts';
import type { Mains } from '../supplies/corners.ts';

const amps = number({ min: 0.0001, max: 100, unit: 'A' });
const airCelsius = number({ min: -20, max: 120, unit: '°C' });
const basis = oneOf(['measured', 'rated', 'typical', 'assumed']);
const voltAmps = number({ min: 0.1, max: 5000, unit: 'VA' });
const partName = text({ least: 1, most: 60 });

const readMains: Reader<Mains> = record({
  nominalVolts: number({ min: 50, max: 500, unit: 'V' }),
  lowVolts: number({ min: 50, max: 500, unit: 'V' }),
  highVolts: number({ min: 50, max: 600, unit: 'V' }),
  hertz: number({ min: 40, max: 70, unit: 'Hz' }),
  alsoHertz: optional(number({ min: 40, max: 70, unit: 'Hz' })),
});

const presentHeater: Reader<PresentHeater> = record({
  name: text({ most: 60 }),
  volts: number({ min: 0.5, max: 200, unit: 'V' }),
  amps: number({ min: 0.01, max: 20, unit: 'A' }),
  count: wholeNumber({ min: 1, max: 40 }),
});

const barriers = record({ fromMains: readInsulation, fromHighTension: readInsulation });

const windingFields = {
  openCircuitVolts: number({ min: 0.5, max: 500, unit: 'V' }),
  ohms: number({ min: 0.001, max: 1000, unit: 'Ω' }),
  ohmsMeasuredCold: optional(flag),
  ratedAmps: optional(number({ min: 0.001, max: 100, unit: 'A' })),
  basis,
  reference: readWindingReference,
  insulation: barriers,
};

const heaterWinding: Reader<HeaterWinding> = record({ ...windingFields, heaters: list(presentHeater, { most: 30 }) });

const spareWinding: Reader<SpareWinding> = record({
  ...windingFields,
  kind: oneOf(['low-voltage', 'heater', 'rectifier-valve']),
  centreTapped: flag,
});

const metres = number({ min: 0, max: 2, unit: 'm' });

const readAmp: Reader<PlanAmp> = record({
  protectiveEarth: oneOf(['verified', 'absent', 'not-checked']),
  highTensionVolts: optional(number({ min: 20, max: 2000, unit: 'V' })),
  transformer: record({ ratedVoltAmps: optional(voltAmps), presentVoltAmps: optional(voltAmps) }),
  heater: optional(heaterWinding),
  spare: optional(spareWinding),
  room: record({ lengthMetres: metres, widthMetres: metres, heightMetres: metres }),
  airCelsius,
});

const readRail: Reader<PlanRail> = record({
  volts: number({ min: 1, max: 60, unit: 'V' }),
  regulation: oneOf(['none', 'fixed', 'low-dropout', 'adjustable', 'buck']),
  toleranceRatio: optional(number({ min: 0.001, max: 0.5 })),
});

const transformer: Reader<PlanTransformer> = record({
  secondaryVolts: number({ min: 1, max: 120, unit: 'V' }),
  secondaries: oneOf(['one', 'two-in-series', 'two-in-parallel', 'two-as-centre-tap']),
  voltAmps: number({ min: 0.3, max: 2000, unit: 'VA' }),
  regulationRatio: number({ min: 0.01, max: 1.5 }),
  shortCircuitMark: oneOf(['inherently-proof', 'conditionally-proof', 'not-proof', 'fail-safe', 'unknown']),
  insulation: optional(barriers),
  basis,
});

const converter: Reader<PlanConverter> = record({
  id: partName,
  outputVolts: optional(number({ min: 1, max: 60, unit: 'V' })),
  ratedAmps: optional(amps),
  efficiency: optional(number({ min: 0.2, max: 0.99 })),
  maxLoadFarads: optional(number({ min: 0, max: 1, unit: 'F' })),
  minLoadAmps: optional(number({ min: 0, max: 50, unit: 'A' })),
  leakageAmps: optional(number({ min: 0, max: 0.1, unit: 'A' })),
  startUpKind: optional(oneOf(['constant-current', 'hiccup', 'foldback'])),
  overloadRatio: optional(number({ min: 1, max: 5 })),
  insulation: optional(barriers),
});

const readParts: Reader<PlanParts> = record({
  topology: optional(oneOf(['bridge', 'centre-tap', 'half-wave', 'doubler'])),
  diode: optional(partName),
  reservoir: optional(
    record({
      farads: number({ min: 1e-6, max: 1, unit: 'F' }),
      ratedVolts: number({ min: 1, max: 500, unit: 'V' }),
      ratedRippleAmps: optional(number({ min: 0.001, max: 100, unit: 'A' })),
    }),
  ),
  regulator: optional(partName),
  heatsink: optional(record({ kind: oneOf(['separate', 'chassis']), kelvinPerWatt: number({ min: 0.1, max: 200, unit: 'K/W' }) })),
  transformer: optional(transformer),
  converter: optional(converter),
  railFarads: optional(number({ min: 0, max: 1, unit: 'F' })),
});

const fuse: Reader<PlanFuse> = record({
  amps: number({ min: 0.03, max: 10, unit: 'A' }),
  standard: partName,
});

const readProtections: Reader<PlanProtections> = record({ primaryFuse: optional(fuse), secondaryFuse: optional(fuse) });

const readFields: Reader<SupplyPlan> = record({
  version: oneOf([1]),
  name: text({ most: 120 }),
  mains: readMains,
  amp: readAmp,
  loads: list(readLoad, { most: 50 }),
  rail: readRail,
  approach: oneOf(['spare-winding', 'converter', 'separate-transformer', 'heater-winding', 'undecided']),
  parts: readParts,
  protections: readProtections,
  grounds: readGrounds,
});

/** Facts that no single field can show. */
function checkTogether(plan: SupplyPlan, problems: ReadProblem[]): void {
  const say = (path: string, message: string): void => void problems.push({ path, message });
  const { mains, amp } = plan;
  if (mains.lowVolts > mains.nominalVolts) say('mains.lowVolts', 'low mains is expected not to be above nominal mains');
  if (mains.highVolts < mains.nominalVolts) say('mains.highVolts', 'high mains is expected not to be below nominal mains');
  for (const [name, winding] of Object.entries({ heater: amp.heater, spare: amp.spare })) {
    if (winding?.reference.kind === 'elevated' && amp.highTensionVolts === undefined) {
      say('amp.highTensionVolts', `the volts are expected that the ${name} winding is elevated from`);
    }
  }
}

/** What reading a plan gives. */
export type PlanReading =
  | {
      readonly ok: true;
      readonly plan: SupplyPlan;
      /** Paths of keys that mean nothing in this version and were left out. */
      readonly dropped: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly ReadProblem[] };

/**
 * Reads a plan out of anything: a parsed file, a link, a stored record. Every field is checked for kind, range and size,
 * and the first 50 problems come back each with its path and what is expected there; nothing that was not checked is in
 * the plan. Never throws.
 *
 * Rule for keys: one that is not known here is left out and its path told in `dropped`, so that a file with somebody's
 * note in it still opens; `__proto__`, `constructor` and `prototype` anywhere refuse the whole. Older versions are
 * brought up first (`migratePlan`); a newer one is refused.
 */
export function readPlan(value: unknown): PlanReading {
  const reading: Reading = { problems: [], dropped: [] };
  try {
    const migrated = migratePlan(value);
    if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
    const plan = readFields(migrated.value, '', reading);
    if (plan !== undefined) checkTogether(plan, reading.problems);
    if (plan === undefined || reading.problems.length > 0) return { ok: false, problems: reading.problems };
    return { ok: true, plan, dropped: reading.dropped };
  } catch {
    // Only an object that lies about itself (a proxy, a throwing getter) comes here; parsed JSON cannot.
    return { ok: false, problems: [{ path: '', message: 'plain data is expected' }] };
  }
}
