import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import { benchCircuit } from '../../../src/compute/tolerance/bench-circuit.ts';
import type { BenchJob } from '../../../src/compute/tolerance/bench-job.ts';
import { CAUSES } from '../../../src/compute/tolerance/causes.ts';
import type { CauseId } from '../../../src/compute/tolerance/causes.ts';
import { drawParts, nominalDraw, partSpreads } from '../../../src/compute/tolerance/part-draw.ts';
import { seededRandom } from '../../../src/compute/tolerance/random.ts';
import { expectCauses, rankCauses, separatingPoint } from '../../../src/compute/tolerance/rank-causes.ts';
import { readBench } from '../../../src/compute/tolerance/read-bench.ts';
import { withInstrumentError } from '../../../src/compute/tolerance/spread-of-readings.ts';
import type { Readings, TestPointId } from '../../../src/compute/tolerance/test-points.ts';
import { JOB } from './jobs.ts';

const causeOf = (id: CauseId) => {
  const found = CAUSES.find((cause) => cause.id === id);
  if (found === undefined) throw new Error(`no cause ${id}`);
  return found;
};
const EXPECTED = expectCauses({ job: JOB, seed: 11 });
const expectedOf = (id: CauseId) => {
  const found = EXPECTED.find(({ cause }) => cause.id === id);
  if (found === undefined) throw new Error(`not expected ${id}`);
  return found;
};

/** A faulty build that the ranking has not seen: parts, degree and meters drawn from another seed. */
function readings(id: CauseId, seed: number, job: BenchJob = JOB): Readings {
  const random = seededRandom(seed);
  const circuit = benchCircuit(job, drawParts(partSpreads(job), random));
  return withInstrumentError(readBench(causeOf(id).change(circuit, random.next(), job)), random);
}

const only = (all: Readings, ids: readonly TestPointId[]): Readings => Object.fromEntries(ids.flatMap((id) => (all[id] === undefined ? [] : [[id, all[id]]])));
const nominal = (id: CauseId, degree = 0.5): Readings => readBench(causeOf(id).change(benchCircuit(JOB, nominalDraw(partSpreads(JOB))), degree, JOB));

describe('the likely cause', () => {
  it('the job can have all of the bench sheet’s causes', () => {
    expect(EXPECTED.map(({ cause }) => cause.id)).toEqual(CAUSES.map(({ id }) => id));
    expect(CAUSES.length).toBeGreaterThanOrEqual(15);
  });

  it.each(CAUSES.map(({ id }) => id))('of a wrong set of readings is first or second: %s', (id) => {
    for (const seed of [101, 202, 303, 404, 505]) {
      const ranked = rankCauses({ expected: EXPECTED, measured: readings(id, seed) });
      const place = ranked.findIndex(({ cause }) => cause.id === id);
      expect(place, `seed ${seed}: ${ranked.slice(0, 3).map(({ cause }) => cause.id).join(', ')}`).toBeLessThan(2);
    }
  });

  it('is found from the few readings that a meter gives, where these can tell', () => {
    const few: readonly TestPointId[] = ['mains', 'reservoir-mean', 'reservoir-ripple', 'rail'];
    for (const id of ['dried-reservoir', 'missing-reservoir', 'low-mains', 'low-tap', 'high-regulator'] as const) {
      const ranked = rankCauses({ expected: EXPECTED, measured: only(readings(id, 77), few) });
      expect(ranked.slice(0, 3).map(({ cause }) => cause.id)).toContain(id);
    }
  });

  it('shares add up to one, and say how sure it is', () => {
    const ranked = rankCauses({ expected: EXPECTED, measured: readings('open-diode', 9) });
    expect(ranked.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(ranked[0]?.share).toBeGreaterThan(0.9);
    const unsure = rankCauses({ expected: EXPECTED, measured: { rail: 12 } });
    expect(unsure[0]?.share).toBeLessThan(0.6);
  });

  it('bears one wild reading', () => {
    const measured = { ...readings('nothing-wrong', 4), 'reservoir-valley': 3 };
    const [best] = rankCauses({ expected: EXPECTED, measured });
    expect(best?.worst?.id).toBe('reservoir-valley');
  });

  it('names the reading that separates it from the next, but asks for none under power where it may burn', () => {
    expect(separatingPoint(expectedOf('slow-release'), expectedOf('nothing-wrong'))).toBe('coil-release');
    expect(separatingPoint(expectedOf('pulses-in-ground'), expectedOf('nothing-wrong'))).toBe('ground-wire');
    expect(separatingPoint(expectedOf('open-diode'), expectedOf('dried-reservoir'))).toBe('ripple-frequency');
    expect(separatingPoint(expectedOf('low-mains'), expectedOf('low-tap'))).toBe('mains');
    const burning = rankCauses({ expected: EXPECTED, measured: readings('second-ground', 8) });
    expect(burning[0]?.tellsFromNext).toBeUndefined();
    expect(burning[0]?.cause.confirm).toMatch(/off at once/);
  });

  it('refuses nothing and nonsense', () => {
    expect(() => rankCauses({ expected: EXPECTED, measured: {} })).toThrow(InputError);
    expect(() => rankCauses({ expected: EXPECTED, measured: { rail: NaN } })).toThrow(InputError);
    expect(() => rankCauses({ expected: [], measured: { rail: 12 } })).toThrow(InputError);
  });
});

describe('faulty circuits, solved', () => {
  const well = nominal('nothing-wrong');
  const value = (readingsOf: Readings, id: TestPointId): number => readingsOf[id] ?? NaN;

  it('an open diode halves the ripple’s frequency and doubles its size or more', () => {
    const open = nominal('open-diode');
    expect(open['ripple-frequency']).toBe(50);
    expect(value(open, 'reservoir-ripple')).toBeGreaterThan(1.9 * value(well, 'reservoir-ripple'));
    expect(value(open, 'winding-amps')).toBeGreaterThan(value(well, 'winding-amps'));
  });

  it('a shorted diode and a second ground drive several times the rating through the winding while the rail still reads', () => {
    for (const id of ['shorted-diode', 'second-ground'] as const) {
      const bad = nominal(id);
      expect(value(bad, 'winding-amps')).toBeGreaterThan(8);
      expect(value(bad, 'rail')).toBeGreaterThan(6);
      expect(value(bad, 'winding-loaded')).toBeLessThan(0.75 * value(well, 'winding-loaded'));
    }
  });

  it('without a reservoir a regulator reads low on DC, and its ripple is volts', () => {
    const bare = nominal('missing-reservoir');
    expect(value(bare, 'rail')).toBeLessThan(0.9 * 12);
    expect(value(bare, 'rail')).toBeGreaterThan(0.5 * 12);
    expect(value(bare, 'rail-ripple')).toBeGreaterThan(1);
    expect(value(bare, 'reservoir-mean')).toBeLessThan(value(well, 'reservoir-mean'));
  });

  it('worsen with their degree', () => {
    const by = (id: CauseId, point: TestPointId): number[] => [0, 0.3, 0.6, 1].map((degree) => value(nominal(id, degree), point));
    const rising = (values: number[]) => { expect(values).toEqual([...values].sort((a, b) => a - b)); };
    rising(by('dried-reservoir', 'reservoir-ripple'));
    rising(by('high-esr', 'reservoir-ripple'));
    rising(by('hot-regulator', 'regulator-celsius'));
    rising(by('heavy-load', 'load-amps'));
    rising(by('low-tap', 'reservoir-mean').reverse());
    rising(by('cold-heaters', 'load-amps').reverse());
    rising(by('dropout', 'reservoir-mean').reverse());
  });

  it('in dropout the rail has lost volts or carries the sawtooth', () => {
    const starved = nominal('dropout', 1);
    expect(value(starved, 'rail')).toBeLessThan(12 - 0.1);
    expect(value(starved, 'rail-ripple')).toBeGreaterThan(20 * value(well, 'rail-ripple'));
  });

  it('heaters stuck cold take less than their running current at far fewer volts', () => {
    const stuck = nominal('cold-heaters', 1);
    expect(value(stuck, 'load-amps')).toBeLessThan(0.6 * 0.55);
    expect(value(stuck, 'rail')).toBeLessThan(0.6 * 12);
  });

  it('a converter has its own few causes', () => {
    const job: BenchJob = { ...JOB, feed: { kind: 'converter', outputVolts: 12, outputToleranceRatio: 0.02, limitAmps: 0.9, stage: { kind: 'none', designVolts: 12 } } };
    const expected = expectCauses({ job });
    expect(expected.map(({ cause }) => cause.id)).toEqual(['nothing-wrong', 'heavy-load', 'low-mains', 'slow-release', 'cold-heaters']);
    expect(rankCauses({ expected, measured: readings('cold-heaters', 3, job) })[0]?.cause.id).toBe('cold-heaters');
  });
});
