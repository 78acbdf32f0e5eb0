import type { ComponentChildren, VNode } from 'preact';
import type { FieldHandle } from './use-calculator.ts';

/** What every kind of field's native control carries. */
export function fieldAttributes({ id, error }: FieldHandle): Record<string, string | undefined> {
  return {
    id,
    class: 'field-value',
    'data-field': id,
    'aria-describedby': error === undefined ? `${id}-range` : `${id}-error ${id}-range`,
    'aria-invalid': error === undefined ? undefined : 'true',
  };
}

/** Label, native control, what it takes, and what is wrong with it. Phrasing content only: it stands in a sentence. */
export function FieldShell(props: { readonly handle: FieldHandle; readonly range: string; readonly children: ComponentChildren }): VNode {
  const { handle, range, children } = props;
  const { id, descriptor, error } = handle;
  return (
    <span class="field" {...(error === undefined ? {} : { 'data-wrong': '' })}>
      <label class="unseen" for={id}>
        {descriptor.label}
      </label>
      {children}
      {handle.then}
      <span class="field-range" id={`${id}-range`}>
        {range}
      </span>
      <span class="field-error" id={`${id}-error`}>
        {error}
      </span>
    </span>
  );
}
