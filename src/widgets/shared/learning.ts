import type { RecordStore } from '../../workbook/record/record-store.ts';

let opening: Promise<RecordStore> | undefined;

/**
 * The record of learning on this device, opened once for a page. Its script is fetched when it is first asked for, so
 * that a lesson can be read without it. Never rejects because storage is refused: the store then lasts as long as the
 * page, and says so in the problem that each of its methods gives.
 */
export function learningRecord(): Promise<RecordStore> {
  opening ??= import('../../workbook/record/record-store.ts').then(({ openRecordStore }) => openRecordStore());
  return opening;
}
