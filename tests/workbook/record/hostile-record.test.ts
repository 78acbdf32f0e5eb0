import { describe, expect, it } from 'vitest';
import { mergeRecords, readRecordFile, writeRecordFile } from '../../../src/workbook/record/record-file.ts';
import { mutate, seededNumbers } from '../mutations.ts';
import { answer, recordWith, unsafeAnswer } from './facts.ts';

const record = recordWith({
  lessons: [{ id: 'quiet', openedAt: '2025-03-01T12:00:00.000Z', seenAt: '2025-03-01T12:00:00.000Z', place: 'star' }],
  answers: [answer(), unsafeAnswer('lift-earth')],
  drills: [{ id: 'd', drill: 'find-the-fault', case: '3', at: '2025-03-01T12:00:00.000Z', named: 'open diode', correct: false, readingsTaken: 4 }],
  gateOpenings: [{ id: 'g', at: '2025-03-01T12:00:00.000Z', by: 'M.' }],
});

describe('5000 mutations of a record file', () => {
  it('are each read or refused in words, run nothing, and drop nothing that is kept', () => {
    const text = writeRecordFile('2025-03-02T12:00:00.000Z', record);
    const pick = seededNumbers(31);
    let [whole, partly, read] = [0, 0, 0];
    for (let round = 0; round < 5000; round += 1) {
      const outcome = readRecordFile(mutate(text, pick));
      if (!outcome.ok) {
        whole += 1;
        expect(outcome.problem.message.length).toBeGreaterThan(10);
        continue;
      }
      if (outcome.value.refused.length > 0) partly += 1;
      else read += 1;
      for (const { message, place } of outcome.value.refused) expect(message.startsWith(place)).toBe(true);
      const { additions } = mergeRecords(record, outcome.value.record, () => `new-${round}`);
      const taken = new Set([...record.answers, ...record.drills, ...record.gateOpenings].map(({ id }) => id));
      for (const fact of [...additions.answers, ...additions.drills, ...additions.gateOpenings]) expect(taken.has(fact.id)).toBe(false);
    }
    expect(Math.min(whole, partly, read)).toBeGreaterThan(50);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect((globalThis as Record<string, unknown>)['ran']).toBeUndefined();
  }, 120_000);
});
