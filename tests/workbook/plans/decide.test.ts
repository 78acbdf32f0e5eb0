import { describe, expect, it } from 'vitest';
import { decideSave, withDeletion } from '../../../src/workbook/plans/decide.ts';
import type { SaveRequest } from '../../../src/workbook/plans/decide.ts';
import { TITLE_CHARACTERS } from '../../../src/workbook/plans/plan-record.ts';
import type { PlanRecord } from '../../../src/workbook/plans/plan-record.ts';
import { refused } from '../../../src/workbook/problem.ts';
import { samplePlan } from '../sample-plan.ts';
import type { SamplePlan } from '../sample-plan.ts';

const kept: PlanRecord<SamplePlan> = { id: 'p', title: 'Tarn 45', savedAt: '2025-03-01T12:00:00.000Z', revision: 4, schemaVersion: 1, plan: samplePlan(230) };

const decide = (request: Partial<SaveRequest<SamplePlan>>, existing: Parameters<typeof decideSave<SamplePlan>>[0]['existing']) =>
  decideSave({
    request: { id: 'p', title: 'Tarn 45', plan: samplePlan(240), basedOn: 4, ...request },
    existing,
    savedAt: '2025-03-01T13:00:00.000Z',
    copyId: 'copy',
  });

describe('what becomes of a save', () => {
  it('replaces the revision it was made from', () => {
    expect(decide({}, { ok: true, value: kept })).toEqual({
      kind: 'saved',
      record: { ...kept, savedAt: '2025-03-01T13:00:00.000Z', revision: 5, plan: samplePlan(240) },
    });
  });

  it('writes nothing when the content is kept already, whichever revision it is', () => {
    expect(decide({ plan: samplePlan(230), basedOn: 2 }, { ok: true, value: kept })).toEqual({ kind: 'unchanged', record: kept });
  });

  it('becomes a copy when the plan went on in another tab', () => {
    for (const basedOn of [3, 5, 0]) {
      const decision = decide({ basedOn }, { ok: true, value: kept });
      expect(decision).toMatchObject({ kind: 'copied', because: 'changed elsewhere', record: { id: 'copy', revision: 1, title: 'Tarn 45 (kept from another tab)', plan: samplePlan(240) } });
    }
  });

  it('becomes a copy when the plan was deleted, erased, or cannot be read', () => {
    expect(decide({}, { ok: true, value: withDeletion(kept, '2025-03-01T12:30:00.000Z') })).toMatchObject({ kind: 'copied', because: 'deleted elsewhere' });
    expect(decide({}, undefined)).toMatchObject({ kind: 'copied', because: 'deleted elsewhere' });
    expect(decide({}, refused('newer', '', 'later'))).toMatchObject({ kind: 'copied', because: 'unreadable here' });
  });

  it('keeps a plan for the first time as revision 1, with a usable title', () => {
    expect(decide({ basedOn: 0, title: '  ' }, undefined)).toMatchObject({ kind: 'saved', record: { revision: 1, title: 'Untitled plan' } });
    const long = decide({ basedOn: 1, title: 'x'.repeat(500) }, undefined).record.title;
    expect(long).toHaveLength(TITLE_CHARACTERS);
    expect(long.endsWith('(kept from another tab)')).toBe(true);
  });
});
