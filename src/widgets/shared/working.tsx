import type { VNode } from 'preact';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import { SourceNote } from './source-note.tsx';

function OneStep({ step, sources }: { readonly step: WorkingStep; readonly sources: Readonly<Record<string, string>> }): VNode {
  const isSum = step.formula.includes(' = ');
  return (
    <li class="step">
      <span class="step-words">{step.words}</span>
      <span class="step-sum">
        {isSum && <span class="step-formula">{step.formula} = </span>}
        {isSum ? step.substituted : `${step.result.symbol} = ${step.substituted}`}
      </span>
      <span class="step-from">
        {!isSum && `${step.formula}; `}
        <SourceNote source={step.source} sources={sources} />
      </span>
    </li>
  );
}

/** How the figures come about, step by step, each with where it came from. */
export function Working(props: {
  readonly steps: readonly WorkingStep[];
  readonly sources: Readonly<Record<string, string>>;
  readonly open?: boolean;
}): VNode {
  return (
    <details class="working" open={props.open === true}>
      <summary>The working</summary>
      <ol>
        {props.steps.map((step, index) => (
          <OneStep key={`${step.name}-${index}`} step={step} sources={props.sources} />
        ))}
      </ol>
    </details>
  );
}
