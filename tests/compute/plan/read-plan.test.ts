import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { migratePlan, readPlan } from '../../../src/compute/plan.ts';
import { SHOP_PLANS, shopPlan, shopPlanJson } from '../../shop/read-shop-plan.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const quillon = (): { [key: string]: Json } => structuredClone(shopPlanJson('quillon-20')) as { [key: string]: Json };

/** A copy with one value put at a dotted path. */
function put(path: string, value: unknown): unknown {
  const plan = quillon();
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  let at: Record<string, unknown> = plan;
  for (const key of keys) at = at[key] as Record<string, unknown>;
  if (value === undefined) Reflect.deleteProperty(at, last);
  else at[last] = value;
  return plan;
}

const problemsOf = (value: unknown): readonly string[] => {
  const reading = readPlan(value);
  return reading.ok ? [] : reading.problems.map((problem) => problem.path);
};

describe('reading a plan', () => {
  it.each(SHOP_PLANS)("takes the shop's %s whole, and gives back what it was given", (name) => {
    expect(shopPlan(name)).toEqual(shopPlanJson(name));
  });

  it.each([
    ['version', 0],
    ['version', '1'],
    ['version', undefined],
    ['version', 2],
    ['mains.hertz', 0],
    ['mains.nominalVolts', '120'],
    ['mains.lowVolts', 130],
    ['mains.highVolts', 100],
    ['amp.protectiveEarth', 'yes'],
    ['amp.heater.ohms', -0.1],
    ['amp.heater.reference.resistors', [{ ohms: 100, ratedWatts: 0.5 }]],
    ['amp.heater.insulation.fromMains.kind', 'excellent'],
    ['amp.room.lengthMetres', null],
    ['loads.0.volts', Infinity],
    ['loads.0.count', 1.5],
    ['loads.1.onAtOnce', 3],
    ['loads.0.ohms', undefined],
    ['rail.volts', 230],
    ['rail.regulation', 'magic'],
    ['approach', 'perpetual motion'],
    ['parts.transformer', {}],
    ['parts.reservoir', 4700],
    ['protections.secondaryFuse', { amps: 1 }],
    ['grounds.rail', { kind: 'bonded', pole: 'middle' }],
    ['grounds.relays.0.work', { at: 'given' }],
  ])('names %s when it is wrong', (path, value) => {
    expect(problemsOf(put(path, value)).some((place) => place.startsWith(path))).toBe(true);
  });

  it('names every problem, not the first only', () => {
    const plan = put('mains.hertz', 'fifty') as { [key: string]: Json };
    plan['rail'] = { volts: -1, regulation: 'fixed' };
    expect(problemsOf(plan)).toEqual(expect.arrayContaining(['mains.hertz', 'rail.volts']));
  });

  it('asks for the high voltage where a winding is elevated from it', () => {
    const fennel = structuredClone(shopPlanJson('fennel-100')) as { amp: { highTensionVolts?: number } };
    delete fennel.amp.highTensionVolts;
    expect(problemsOf(fennel)).toEqual(['amp.highTensionVolts']);
  });

  it('leaves out what it does not know, and says so', () => {
    const reading = readPlan(put('amp.colour', 'oxblood'));
    expect(reading.ok && reading.dropped).toEqual(['amp.colour']);
    expect(reading.ok && reading.plan).toEqual(shopPlan('quillon-20'));
  });

  it('refuses a key that reaches for a prototype anywhere', () => {
    const text = JSON.stringify(quillon()).replace('"room":{', '"room":{"__proto__":{"polluted":true},');
    expect(problemsOf(JSON.parse(text))).toEqual(['amp.room.__proto__']);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it.each([undefined, null, 1, 'plan', [], () => 1, new Map(), Symbol('plan')])('refuses what is no plan at all, without throwing', (value) => {
    expect(readPlan(value).ok).toBe(false);
  });

  it('refuses an object that throws when it is looked at', () => {
    const hostile = new Proxy(
      {},
      {
        getOwnPropertyDescriptor() {
          throw new Error('gotcha');
        },
      },
    );
    expect(readPlan(hostile)).toEqual({ ok: false, problems: [{ path: '', message: 'plain data is expected' }] });
  });

  it('never throws and never lets a number out of range through, whatever one value is replaced by', () => {
    const paths: string[] = [];
    const walk = (value: unknown, path: string): void => {
      if (path !== '') paths.push(path);
      if (typeof value === 'object' && value !== null) for (const [key, inner] of Object.entries(value)) walk(inner, path === '' ? key : `${path}.${key}`);
    };
    walk(quillon(), '');
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.anything(), (path, value) => {
        const reading = readPlan(put(path, value));
        if (!reading.ok) return reading.problems.length > 0;
        return JSON.stringify(reading.plan).length > 0;
      }),
      { seed: 20, numRuns: 2000 },
    );
  });

  it('reads back what it has read', () => {
    for (const name of SHOP_PLANS) {
      const reading = readPlan(JSON.parse(JSON.stringify(shopPlan(name))));
      expect(reading.ok && reading.plan).toEqual(shopPlan(name));
    }
  });
});

describe('bringing a plan up to the present version', () => {
  const steps = { 1: (plan: object) => ({ ...plan, two: true }), 2: (plan: object) => ({ ...plan, three: true }) };

  it('goes step by step', () => {
    expect(migratePlan({ version: 1 }, steps, 3)).toEqual({ ok: true, value: { version: 3, two: true, three: true } });
    expect(migratePlan({ version: 2 }, steps, 3)).toEqual({ ok: true, value: { version: 3, three: true } });
  });

  it('leaves the present version as it is', () => {
    const plan = quillon();
    expect(migratePlan(plan)).toEqual({ ok: true, value: plan });
  });

  it('refuses a newer version by name, and a gap in the way', () => {
    expect(migratePlan({ version: 4 }, steps, 3)).toMatchObject({ ok: false, problem: { path: 'version', message: expect.stringContaining('newer') } });
    expect(migratePlan({ version: 1 }, { 2: steps[2] }, 3).ok).toBe(false);
  });

  it.each([{}, { version: -1 }, { version: 1.5 }, { version: Number.NaN }, [], null, 'x'])('refuses %j', (value) => {
    expect(migratePlan(value).ok).toBe(false);
  });
});
