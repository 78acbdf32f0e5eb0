import type { VNode } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { exportRecord, importRecord } from '../../workbook/record/exchange-record.ts';
import type { RecordStore } from '../../workbook/record/record-store.ts';

interface Keeping {
  readonly store: RecordStore;
  /** Reads the record again after a change. */
  readonly onChanged: () => void;
}

/** Hands a text to the reader as a file. */
function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => { URL.revokeObjectURL(address); });
}

/** Print, export, import and wipe. */
export function KeepingView({ store, onChanged }: Keeping): VNode {
  const [said, setSaid] = useState('');
  const [asking, setAsking] = useState(false);
  const file = useRef<HTMLInputElement>(null);
  const wipe = useRef<HTMLButtonElement>(null);

  const give = async (): Promise<void> => {
    download(`second-rail-record-${store.now().toISOString().slice(0, 10)}.json`, await exportRecord(store));
    setSaid('The file was handed to the browser.');
  };
  const take = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    const outcome = await importRecord(store, await chosen.text());
    if (file.current) file.current.value = '';
    if (!outcome.ok) {
      setSaid(`Nothing was taken from the file. ${outcome.problem.message}`);
      return;
    }
    const { added, alreadyThere, refused, problem } = outcome.value;
    setSaid(
      [
        `${added} added, ${alreadyThere} already there, ${refused.length} refused.`,
        ...refused.slice(0, 3).map(({ message }) => message),
        ...(problem === undefined ? [] : [problem.message]),
      ].join(' '),
    );
    onChanged();
  };
  const keep = (): void => {
    setAsking(false);
    wipe.current?.focus();
  };
  const erase = async (): Promise<void> => {
    const problem = await store.wipe();
    setSaid(problem === undefined ? 'The record on this device is erased.' : problem.message);
    onChanged();
    keep();
  };

  return (
    <div class="record-keeping">
      <h2>Keep it, move it, erase it</h2>
      <p>The record is on this device and nowhere else. A browser may clear it; a file does not get lost that way.</p>
      <p class="record-buttons">
        <button class="button" type="button" onClick={() => { print(); }}>
          Print the record
        </button>
        <button class="button quiet" type="button" onClick={() => void give()}>
          Export as a file
        </button>
        <button class="button quiet" type="button" ref={wipe} aria-expanded={asking} onClick={() => setAsking(true)}>
          Erase everything
        </button>
      </p>
      {asking && (
        <div role="group" aria-label="Erase the record?" class="record-ask">
          <p>Every answer, every lesson and every opening of the gate is erased from this device. It cannot be undone.</p>
          <p class="record-buttons">
            <button class="button quiet" type="button" onClick={() => void erase()}>
              Yes, erase it
            </button>
            <button class="button" type="button" ref={(button) => button?.focus()} onClick={keep}>
              Keep it
            </button>
          </p>
        </div>
      )}
      <p>
        <label>
          Add a record from a file: <input ref={file} type="file" accept=".json,application/json" onChange={(event) => void take(event.currentTarget.files?.[0])} />
        </label>
      </p>
      <p role="status">{said}</p>
    </div>
  );
}
