import type { VNode } from 'preact';
import type { ChoiceField, QuantityField, TextField } from './definition.ts';
import { FieldShell, fieldAttributes } from './field-shell.tsx';
import { QuantityFieldView } from './quantity-field.tsx';
import type { FieldHandle } from './use-calculator.ts';

function ChoiceFieldView({ handle }: { readonly handle: FieldHandle<ChoiceField> }): VNode {
  const { descriptor, raw, change } = handle;
  return (
    <FieldShell handle={handle} range={`${descriptor.label}${descriptor.hint === undefined ? '' : `: ${descriptor.hint}`}`}>
      <select {...fieldAttributes(handle)} value={raw} onChange={(event) => change(event.currentTarget.value)}>
        {descriptor.options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === raw}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldShell>
  );
}

function TextFieldView({ handle }: { readonly handle: FieldHandle<TextField> }): VNode {
  const { descriptor, raw, change } = handle;
  return (
    <FieldShell handle={handle} range={`${descriptor.label}: any words, at most ${descriptor.maxLength} characters`}>
      <input
        {...fieldAttributes(handle)}
        type="text"
        autocomplete="off"
        size={Math.max(4, raw.length)}
        value={raw}
        onInput={(event) => change(event.currentTarget.value)}
      />
    </FieldShell>
  );
}

/** The control for a field, by its kind. Spread a handle into it: `<Field {...field('windingVolts')} />`. */
export function Field(handle: FieldHandle): VNode {
  switch (handle.descriptor.kind) {
    case 'quantity':
      return <QuantityFieldView handle={handle as FieldHandle<QuantityField>} />;
    case 'choice':
      return <ChoiceFieldView handle={handle as FieldHandle<ChoiceField>} />;
    case 'text':
      return <TextFieldView handle={handle as FieldHandle<TextField>} />;
  }
}
