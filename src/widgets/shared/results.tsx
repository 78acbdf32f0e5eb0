import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { FieldSet, ViewModel } from './definition.ts';
import type { CalculatorState } from './use-calculator.ts';
import { Verdict } from './verdict-mark.tsx';

/** A reader who listens hears the result once it has settled, not at every key. */
const SETTLED_MS = 900;

function useSettled(text: string): string {
  const [settled, setSettled] = useState('');
  const [first] = useState(text);
  useEffect(() => {
    if (text === first && settled === '') return undefined;
    const timer = setTimeout(() => setSettled(text), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return settled;
}

/** The verdict first, in one sentence; what is wrong with the case as a whole; then everything the view adds. */
export function Results<F extends FieldSet, R extends ViewModel>(props: {
  readonly state: CalculatorState<F, R>;
  readonly children: ComponentChildren;
}): VNode {
  const { view, stale, problem, errors, pending, stop } = props.state;
  const wrong = Object.values(errors)[0];
  const trouble = problem ?? wrong;
  const spoken = useSettled(pending ? '' : trouble === undefined ? `${view.level}: ${view.summary}` : `${trouble} The results are still those of the last good case.`);
  return (
    <>
      <p class="answer" aria-busy={pending} {...(stale ? { 'data-stale': '' } : {})}>
        <Verdict level={view.level} found={view.summary} />
      </p>
      {stale && (
        <p class="problem">
          {problem ?? 'A field above cannot be read.'} What follows answers the last case that could be solved.
        </p>
      )}
      <p class="unseen" role="status">
        {spoken}
      </p>
      {pending && (
        <p class="progress pending">
          <span>Still being worked out for the values above.</span>
          <progress aria-label="Working" />
          <button class="button quiet" type="button" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {props.children}
    </>
  );
}
