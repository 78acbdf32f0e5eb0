import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/workbook/fields.ts';
import { PLAN_LADDER, readPlanRecord } from '../../src/workbook/plans/plan-record.ts';
import { READING_LADDER, readReadingRecord } from '../../src/workbook/plans/reading.ts';
import type { Outcome } from '../../src/workbook/problem.ts';
import { FACT_READERS, RECORD_KINDS, RECORD_LADDERS } from '../../src/workbook/record/learning-record.ts';
import { climb, currentVersion } from '../../src/workbook/schema-ladder.ts';
import type { SchemaLadder } from '../../src/workbook/schema-ladder.ts';
import { readSamplePlan } from './sample-plan.ts';

interface Kept {
  readonly name: string;
  readonly ladder: SchemaLadder;
  readonly read: (value: unknown) => Outcome<unknown>;
}

const KEPT: readonly Kept[] = [
  { name: 'plan', ladder: PLAN_LADDER, read: (value) => readPlanRecord(value, readSamplePlan) },
  { name: 'reading', ladder: READING_LADDER, read: readReadingRecord },
  ...RECORD_KINDS.map((kind) => ({
    name: kind === 'gateOpenings' ? 'gate-openings' : kind,
    ladder: RECORD_LADDERS[kind],
    read: (value: unknown): Outcome<unknown> => {
      const climbed = climb(value, RECORD_LADDERS[kind]);
      return climbed.ok ? attempt({ at: '', kind: 'damaged', read: () => FACT_READERS[kind]('', climbed.value) }) : climbed;
    },
  })),
];

const CASES = KEPT.flatMap((kept) => Array.from({ length: currentVersion(kept.ladder) }, (_, index) => ({ ...kept, version: index + 1 })));

// One stored row of every version there ever was stands in tests/workbook/versions: raising a version without adding
// one, or changing what an old one reads as, fails here.
describe('every version of everything kept still reads', () => {
  it.each(CASES)('$name, version $version', ({ name, version, ladder, read }) => {
    const file = join(import.meta.dirname, 'versions', `${name}-${version}.json`);
    expect(existsSync(file), `add ${file}: a row as version ${version} stored it`).toBe(true);
    const stored = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
    expect(stored['schemaVersion']).toBe(version);
    const outcome = read(stored);
    expect(outcome).toMatchObject({ ok: true });
    if (version === currentVersion(ladder) && outcome.ok) expect({ ...stored }).toMatchObject({ ...(outcome.value as object) });
  });
});
