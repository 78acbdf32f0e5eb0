import { describe, expect, it } from 'vitest';
import { climb, currentVersion } from '../../src/workbook/schema-ladder.ts';
import type { SchemaLadder } from '../../src/workbook/schema-ladder.ts';

// An invented thing with two migrations: its length was once in feet, then gained a colour.
const ladder: SchemaLadder = {
  what: 'plank',
  steps: [
    (value) => {
      const { feet, ...rest } = value;
      if (typeof feet !== 'number') throw new TypeError('no feet');
      return { ...rest, metres: feet * 0.3048 };
    },
    (value) => ({ ...value, colour: 'unpainted' }),
  ],
};

describe('a ladder of schema versions', () => {
  it('has one version more than steps', () => expect(currentVersion(ladder)).toBe(3));

  it('brings each older version to the current one through every step between', () => {
    const current = { schemaVersion: 3, metres: 3.048, colour: 'unpainted' };
    expect(climb({ schemaVersion: 1, feet: 10 }, ladder)).toEqual({ ok: true, value: current });
    expect(climb({ schemaVersion: 2, metres: 3.048 }, ladder)).toEqual({ ok: true, value: current });
    expect(climb(current, ladder)).toEqual({ ok: true, value: current });
  });

  it('does not change what it was given', () => {
    const old = Object.freeze({ schemaVersion: 1, feet: 10 });
    climb(old, ladder);
    expect(old).toEqual({ schemaVersion: 1, feet: 10 });
  });

  it('says that a later version needs a later page', () => {
    expect(climb({ schemaVersion: 4 }, ladder)).toMatchObject({ ok: false, problem: { kind: 'newer', message: expect.stringContaining('Reload') } });
  });

  it('says that something without a version is not ours', () => {
    for (const value of [{}, null, 'text', [1], { schemaVersion: '1' }, { schemaVersion: 0 }, { schemaVersion: 1.5 }, { schemaVersion: NaN }]) {
      expect(climb(value, ladder)).toMatchObject({ ok: false, problem: { kind: 'foreign' } });
    }
  });

  it('says that something a step cannot take is damaged', () => {
    expect(climb({ schemaVersion: 1, feet: 'ten' }, ladder)).toMatchObject({ ok: false, problem: { kind: 'damaged' } });
  });

  it('names the version by another field where asked', () => {
    expect(climb({ version: 1, feet: 10 }, { ...ladder, field: 'version' })).toMatchObject({ ok: true, value: { version: 3 } });
  });
});
