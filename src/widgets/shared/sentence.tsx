import type { ComponentChildren, TargetedFocusEvent, VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { FieldSet, QuantityField } from './definition.ts';
import { SLIDER_STEPS, sliderPosition, sliderValue } from './stepping.ts';
import { writeQuantity } from './units.ts';
import type { CalculatorState, FieldHandle } from './use-calculator.ts';

interface Props<F extends FieldSet, R> {
  readonly state: CalculatorState<F, R>;
  /** The field that the slider turns until the reader has gone into another. */
  readonly drag: Extract<keyof F, string>;
  /** Paragraphs of the sentence, fields inside. */
  readonly children: ComponentChildren;
}

/**
 * The situation, told in a sentence whose values are fields, with one slider below it that turns whichever value the
 * reader was in last.
 */
export function Sentence<F extends FieldSet, R>({ state, drag, children }: Props<F, R>): VNode {
  const [turned, setTurned] = useState<string>(drag);
  const onFocusIn = (event: TargetedFocusEvent<HTMLDivElement>): void => {
    state.prepare();
    const id = event.target instanceof HTMLElement ? event.target.dataset['field'] : undefined;
    const name = id?.slice(state.instance.length + 1);
    if (name !== undefined && Object.hasOwn(state.raw, name) && state.field(name as Extract<keyof F, string>).descriptor.kind === 'quantity') {
      setTurned(name);
    }
  };
  const handle = state.field(turned as Extract<keyof F, string>) as FieldHandle<QuantityField>;
  const value = typeof handle.value === 'number' ? handle.value : handle.descriptor.min;
  return (
    <>
      <div class="sentence" onFocusIn={onFocusIn} onPointerOver={state.prepare}>
        {children}
        <p class="sentence-foot">Write values as you would on paper: 4k7, 2200u, 0R47, 300 mA.</p>
      </div>
      {state.alive && (
        <p class="field-drag-box">
          <label for={`${state.instance}-drag`}>{handle.descriptor.label}</label>
          <input
            id={`${state.instance}-drag`}
            class="field-drag"
            type="range"
            min={0}
            max={SLIDER_STEPS}
            step={1}
            value={sliderPosition(handle.descriptor, value)}
            aria-valuetext={writeQuantity(value, handle.descriptor.unit)}
            onInput={(event) =>
              handle.change(writeQuantity(sliderValue(handle.descriptor, Number(event.currentTarget.value)), handle.descriptor.unit))
            }
          />
        </p>
      )}
    </>
  );
}
