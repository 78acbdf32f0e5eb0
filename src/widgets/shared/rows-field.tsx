import type { ComponentChildren, VNode } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { FieldHandle, RowsHandle } from './use-calculator.ts';

interface Props {
  readonly handle: RowsHandle;
  /** One row as a sentence; `cell` gives its fields. */
  readonly sentence: (cell: (name: string) => FieldHandle, index: number) => ComponentChildren;
  /** What a row comes to. */
  readonly result?: (index: number) => ComponentChildren;
  /** How a row is called when it is copied or removed: "relay K1". */
  readonly nameOf: (index: number) => string;
  /** Kinds of row that can be added. */
  readonly kinds: readonly { readonly label: string; readonly given: Readonly<Record<string, string | number>> }[];
}

type Next = { readonly row: number } | { readonly button: number };

/** A list of sentences of one kind, that can be lengthened, copied from and shortened. Focus goes where the work goes on. */
export function RowsFieldView({ handle, sentence, result, nameOf, kinds }: Props): VNode {
  const { rows, descriptor, error, id } = handle;
  const box = useRef<HTMLDivElement>(null);
  const next = useRef<Next>();
  const [said, say] = useState('');

  useLayoutEffect(() => {
    const goal = next.current;
    next.current = undefined;
    if (goal === undefined || box.current === null) return;
    const selector = 'row' in goal ? `.row:nth-child(${goal.row + 1}) .field-value` : `.row-more button:nth-of-type(${goal.button + 1})`;
    box.current.querySelector<HTMLElement>(selector)?.focus();
  });

  const full = rows.length >= descriptor.max;
  const remove = (index: number): void => {
    const left = rows.length - 1;
    say(`Removed ${nameOf(index)}. ${left} left.`);
    next.current = left > 0 ? { row: Math.min(index, left - 1) } : { button: 0 };
    handle.remove(index);
  };

  return (
    <div ref={box} role="group" aria-label={descriptor.label} {...(error === undefined ? {} : { 'aria-describedby': `${id}-error` })}>
      <ol class="rows">
        {rows.map((_, index) => (
          <li class="row" key={index}>
            <p>{sentence((name) => handle.cell(index, name), index)}</p>
            {result !== undefined && <p class="row-result">{result(index)}</p>}
            <p class="row-do">
              <button
                class="row-remove"
                type="button"
                disabled={full}
                onClick={() => {
                  say(`Copied ${nameOf(index)}.`);
                  next.current = { row: index + 1 };
                  handle.duplicate(index);
                }}
              >
                Copy<span class="unseen"> {nameOf(index)}</span>
              </button>
              <button class="row-remove" type="button" disabled={rows.length <= descriptor.min} onClick={() => remove(index)}>
                Remove<span class="unseen"> {nameOf(index)}</span>
              </button>
            </p>
          </li>
        ))}
      </ol>
      {error !== undefined && (
        <p class="field-error" id={`${id}-error`}>
          {error}
        </p>
      )}
      <p class="row-more">
        {kinds.map(({ label, given }) => (
          <button
            key={label}
            class="button quiet"
            type="button"
            disabled={full}
            onClick={() => {
              say(`${label}: added as number ${rows.length + 1}.`);
              next.current = { row: rows.length };
              handle.add(given);
            }}
          >
            {label}
          </button>
        ))}
        {full && <span class="rests-on"> The list is full at {descriptor.max}.</span>}
      </p>
      <p class="unseen" role="status">
        {said}
      </p>
    </div>
  );
}
