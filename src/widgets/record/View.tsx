import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { printableRecord } from '../../workbook/record/printable.ts';
import type { KeptRecord, RecordStore } from '../../workbook/record/record-store.ts';
import { learningRecord } from '../shared/learning.ts';
import { Done, Due, GateLine, Misconceptions } from './contents.tsx';
import { KeepingView } from './keeping.tsx';
import { outlineOf, type RecordLesson } from './outline.ts';

/** What the device keeps of the reader's learning. Without script there is no record, and it says so. */
export default function RecordView({ lessons }: { readonly lessons: readonly RecordLesson[] }): VNode {
  const [store, setStore] = useState<RecordStore>();
  const [kept, setKept] = useState<KeptRecord>();

  useEffect(() => {
    let stop = (): void => undefined;
    void learningRecord().then(async (opened) => {
      stop = opened.listen(() => void opened.read().then(setKept));
      setKept(await opened.read());
      setStore(opened);
    });
    return () => { stop(); };
  }, []);

  if (store === undefined || kept === undefined) {
    return <p>The record needs script: what you did is kept by your browser, on this device, and only a script can read it there.</p>;
  }
  const shown = printableRecord(kept.record, outlineOf(lessons), store.now());
  return (
    <div class="record">
      {kept.problem !== undefined && <p role="alert">{kept.problem.message}</p>}
      {kept.setAside.length > 0 && (
        <div role="note">
          <p>{kept.setAside.length} kept {kept.setAside.length === 1 ? 'entry' : 'entries'} could not be read, and {kept.setAside.length === 1 ? 'was' : 'were'} set aside as found:</p>
          <ul>
            {kept.setAside.slice(0, 10).map(({ from, problem }, index) => (
              <li key={index}>
                {from}: {problem.message}
              </li>
            ))}
          </ul>
        </div>
      )}
      <p class="small soft">As of {shown.printedAt.slice(0, 10)}. It says what was answered on this device, by whoever held it; it certifies nothing.</p>
      <GateLine shown={shown} lessons={lessons} />
      <Misconceptions shown={shown} lessons={lessons} />
      <Due shown={shown} lessons={lessons} />
      <Done shown={shown} />
      <KeepingView store={store} onChanged={() => void store.read().then(setKept)} />
    </div>
  );
}
