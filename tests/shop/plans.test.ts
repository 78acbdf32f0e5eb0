import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SupplyPlan } from '../../src/compute/plan.ts';
import { SHOP_PLANS, shopPlan } from './read-shop-plan.ts';

interface Amp {
  readonly mains: { readonly volts: number; readonly hertz: number };
  readonly protectiveEarth: string;
  readonly chassisAirCelsius: number;
  readonly highVolts: number;
  readonly windings: readonly { readonly id: string; readonly ratedAmps?: number; readonly loadAmps?: number; readonly openCircuitVolts?: number; readonly ohms?: number; readonly grounding: string }[];
}

interface Job {
  readonly amp: string;
  readonly railVolts: number;
  readonly loads: readonly { readonly kind: string; readonly volts?: number; readonly ohms?: number; readonly amps?: number }[];
}

const shopFile = <T>(name: string): Readonly<Record<string, T>> => JSON.parse(readFileSync(join(import.meta.dirname, '../../content/shop', name), 'utf8')) as Record<string, T>;
const amps = shopFile<Amp>('amps.json');
const jobs = Object.values(shopFile<Job>('jobs.json'));

const heaterAmps = ({ amp }: SupplyPlan): number => (amp.heater?.heaters ?? []).reduce((sum, each) => sum + each.amps * each.count, 0);

describe("the shop's plans say of their amps what the shop's pages say", () => {
  it.each(SHOP_PLANS)('%s', (name) => {
    const plan = shopPlan(name);
    const amp = amps[name];
    if (amp === undefined) throw new Error(`no amp ${name}`);
    expect(plan.mains).toMatchObject({ nominalVolts: amp.mains.volts, hertz: amp.mains.hertz });
    expect(plan.amp).toMatchObject({ protectiveEarth: amp.protectiveEarth, airCelsius: amp.chassisAirCelsius, highTensionVolts: amp.highVolts });
    const winding = (id: string) => amp.windings.find((each) => each.id === id);
    const heater = winding('heater');
    expect(plan.amp.heater?.ratedAmps).toBe(heater?.ratedAmps);
    expect(plan.amp.heater?.reference.kind).toBe(heater?.grounding);
    // Valves that move to the rail no longer hang on the winding.
    const moved = plan.loads.reduce((sum, load) => sum + (load.kind === 'heater' ? (load.amps * load.count * load.volts) / 6.3 : 0), 0);
    expect(heaterAmps(plan) + moved).toBeCloseTo(heater?.loadAmps ?? Number.NaN, 6);
    const spare = winding('spare');
    expect(plan.amp.spare === undefined).toBe(spare === undefined);
    if (spare !== undefined) expect(plan.amp.spare).toMatchObject({ openCircuitVolts: spare.openCircuitVolts, ohms: spare.ohms, ratedAmps: spare.ratedAmps, reference: { kind: spare.grounding } });
  });

  it.each(SHOP_PLANS)('%s asks for the rail and the kinds of load that its job asks for', (name) => {
    const plan = shopPlan(name);
    const job = jobs.find((each) => each.amp === name);
    expect(plan.rail.volts).toBe(job?.railVolts);
    expect(plan.loads.map((load) => load.kind)).toEqual(expect.arrayContaining(job?.loads.map((load) => load.kind) ?? []));
    for (const wanted of job?.loads ?? []) {
      const load = plan.loads.find((each) => each.kind === wanted.kind);
      for (const key of ['volts', 'ohms', 'amps'] as const) {
        if (wanted[key] !== undefined) expect((load as unknown as Record<string, unknown>)[key], `${wanted.kind} ${key}`).toBe(wanted[key]);
      }
    }
  });
});
