import type { TargetedKeyboardEvent, VNode } from 'preact';
import type { QuantityField as Descriptor } from './definition.ts';
import { FieldShell, fieldAttributes } from './field-shell.tsx';
import { stepFrom } from './stepping.ts';
import { describeLimits, readQuantity, writeQuantity } from './units.ts';
import type { FieldHandle } from './use-calculator.ts';

/** Letters are part of resistances as they are written (4k7, 0R47); everything else is mostly digits. */
const keypadOf = ({ unit, min }: Descriptor): 'decimal' | 'text' => (unit === 'Ω' || min < 0 ? 'text' : 'decimal');

const isBareNumber = (text: string): boolean => /^[-−+]?[\d.,' ]+$/.test(text.trim());

/** A native text input that takes a value as a technician writes it, grows with it, and steps with the arrow keys. */
export function QuantityFieldView({ handle }: { readonly handle: FieldHandle<Descriptor> }): VNode {
  const { descriptor, raw, error, change } = handle;
  const blank = descriptor.optional === true ? (descriptor.blank ?? 'not known') : '';
  const valueOf = (text: string): number | undefined => {
    const read = readQuantity(text, descriptor.unit, descriptor.assume);
    return 'value' in read ? read.value : undefined;
  };

  const onKeyDown = (event: TargetedKeyboardEvent<HTMLInputElement>): void => {
    if ((event.key !== 'ArrowUp' && event.key !== 'ArrowDown') || event.altKey || event.ctrlKey || event.metaKey) return;
    const value = valueOf(raw) ?? (typeof handle.value === 'number' ? handle.value : descriptor.default);
    if (value === undefined) return;
    event.preventDefault();
    change(writeQuantity(stepFrom(descriptor, value, event.key === 'ArrowUp' ? 1 : -1), descriptor.unit));
  };

  // A bare number is given its unit once the reader has gone on, so that nobody wonders which was taken.
  const onBlur = (): void => {
    const value = error === undefined && isBareNumber(raw) ? valueOf(raw) : undefined;
    if (value !== undefined && descriptor.unit !== '') change(writeQuantity(value, descriptor.unit));
  };

  return (
    <FieldShell
      handle={handle}
      range={`${descriptor.label}${descriptor.hint === undefined ? '' : `, ${descriptor.hint}`}: ${describeLimits(descriptor)}${blank === '' ? '' : `, or blank: ${blank}`}`}
    >
      <input
        {...fieldAttributes(handle)}
        type="text"
        inputMode={keypadOf(descriptor)}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        size={Math.max(3, raw.length || blank.length)}
        placeholder={blank}
        value={raw}
        onInput={(event) => change(event.currentTarget.value)}
        onKeyDown={onKeyDown}
        onBlur={onBlur}
      />
    </FieldShell>
  );
}
