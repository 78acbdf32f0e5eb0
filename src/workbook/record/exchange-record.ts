import type { Outcome, Problem } from '../problem.ts';
import { accepted } from '../problem.ts';
import { factCount, mergeRecords, readRecordFile, writeRecordFile } from './record-file.ts';
import type { RecordStore } from './record-store.ts';

/** The text of a file with the whole record, what is held in the page only included. */
export async function exportRecord(store: RecordStore): Promise<string> {
  const { record } = await store.read();
  return writeRecordFile(store.now().toISOString(), record);
}

export interface RecordImportReport {
  readonly added: number;
  readonly alreadyThere: number;
  readonly refused: readonly Problem[];
  readonly problem: Problem | undefined;
}

/** Adds the facts of a file to the record; nothing kept is replaced or dropped. Never throws for what the text holds. */
export async function importRecord(store: RecordStore, text: string): Promise<Outcome<RecordImportReport>> {
  const file = readRecordFile(text);
  if (!file.ok) return file;
  const { record } = await store.read();
  const { additions, alreadyThere } = mergeRecords(record, file.value.record, store.newId);
  const added = factCount(additions);
  const problem = added === 0 ? undefined : await store.addFacts(additions);
  return accepted({ added, alreadyThere, refused: file.value.refused, problem });
}
