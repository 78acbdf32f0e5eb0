import type { Jack } from '../../compute/grounding/connections.ts';
import type { LoadItem } from '../../compute/loads/load-types.ts';
import { converter } from '../../compute/parts/converter.ts';
import { linearRegulator } from '../../compute/parts/regulator-linear.ts';
import { BUCKS } from '../../compute/parts/regulator-switching.ts';
import { PLAN_VERSION, type PlanConverter, type Regulation, type SupplyPlan } from '../../compute/plan/plan-types.ts';
import type { ValuesOf } from '../shared/definition.ts';
import { railVoltsOf } from '../shared/stage-fields.ts';
import { mainsOf } from '../shared/supply-fields.ts';
import { PICKED, type fields } from './fields.ts';

export type Values = ValuesOf<typeof fields>;

/** The simplest way out of the amp: an insulated jack whose tip is on the rail through some resistance. */
const JACK: Jack = { name: 'Footswitch', mounting: 'insulated', tip: { kind: 'logic', ohms: 4700 }, sleeve: { kind: 'rail-negative' }, touchable: true, gear: { kind: 'none' } };

/** Room is not asked for here; a plan must have some. */
const AMPLE = { lengthMetres: 0.3, widthMetres: 0.3, heightMetres: 0.3 };

const regulationOf = (id: string): Regulation => (id === 'none' ? 'none' : BUCKS.some((row) => row.id === id) ? 'buck' : linearRegulator(id).family);

function loadsOf({ heaterAmps, heaterVolts, coldRatio, idleAmps, switchedAmps }: Values): readonly LoadItem[] {
  const loads: LoadItem[] = [];
  if (heaterAmps >= 0.01) loads.push({ kind: 'heater', name: 'Heaters', count: 1, volts: heaterVolts, amps: heaterAmps, coldRatio });
  if (idleAmps > 0) loads.push({ kind: 'fixed-amps', name: 'Lamps and logic', count: 1, amps: idleAmps, when: 'always' });
  if (switchedAmps > 0) loads.push({ kind: 'fixed-amps', name: 'Relays', count: 1, amps: switchedAmps, when: 'switched' });
  return loads;
}

function moduleOf(values: Values): PlanConverter {
  const { module, startUp, overload, leakageAmps, maxLoadFarads, minLoadAmps, insulation } = values;
  return {
    id: module,
    ...(startUp === 'unknown' ? {} : { startUpKind: startUp }),
    overloadRatio: overload,
    ...(leakageAmps === undefined ? {} : { leakageAmps }),
    ...(maxLoadFarads === undefined ? {} : { maxLoadFarads }),
    ...(minLoadAmps === undefined ? {} : { minLoadAmps }),
    ...(insulation === 'test' ? {} : { insulation: { fromMains: { kind: insulation, workingVolts: mainsOf(values).highVolts }, fromHighTension: { kind: 'unknown' as const } } }),
  };
}

/** Volts of the rail: the module's own output where nothing stands behind it. */
export const railOf = (values: Values): number => (values.regulator === 'none' && values.module !== PICKED ? converter(values.module).outputVolts : railVoltsOf(values));

/** The fields as a plan for a rail from a converter. */
export function planOf(values: Values): SupplyPlan {
  const railVolts = railOf(values);
  return {
    version: PLAN_VERSION,
    name: 'Converter',
    mains: mainsOf(values),
    amp: { protectiveEarth: values.earth, transformer: {}, room: AMPLE, airCelsius: values.airCelsius },
    loads: loadsOf(values),
    rail: { volts: railVolts, regulation: regulationOf(values.regulator) },
    approach: 'converter',
    parts: {
      ...(values.regulator === 'none' ? {} : { regulator: values.regulator }),
      ...(values.module === PICKED ? {} : { converter: moduleOf(values) }),
      railFarads: values.railFarads,
    },
    protections: {},
    grounds: {
      rail: values.bond === 'floating' ? { kind: 'floating' } : { kind: 'bonded', pole: 'negative' },
      jacks: values.reach === 'outside' ? [JACK] : [],
      touchableControls: false,
      relays: [],
    },
  };
}
