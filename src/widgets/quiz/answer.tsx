import type { VNode } from 'preact';
import { formatQuantity } from '../../compute/quantity.ts';
import { HazardBox } from '../shared/hazard-box.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import type { ChoiceQuestion, Option, SolvedQuestion, Unsafe } from './question.ts';

/** What an unsafe reply would have done. Noise hurts nobody and has no sign. */
export function HarmDone({ unsafe, instead, reason }: { readonly unsafe: Unsafe; readonly instead: string; readonly reason?: string }): VNode {
  const { harm, consequence } = unsafe;
  if (harm === 'noise') {
    return (
      <p>
        <strong>Noise. </strong>
        {consequence} {reason}
      </p>
    );
  }
  return (
    <HazardBox harm={harm} title={consequence} instead={instead}>
      {reason !== undefined && <p>{reason}</p>}
    </HazardBox>
  );
}

/** The right options as one line: what to do in place of an unsafe one. */
export const rightOptions = ({ options }: ChoiceQuestion): string =>
  options
    .filter(({ correct }) => correct)
    .map(({ text }) => text)
    .join('; ');

/** What to do in place of taking two steps the wrong way round. */
export const stepsInOrder = ([harmful, needed]: readonly [string, string]): string => `“${needed}” comes before “${harmful}”.`;

/** Why one option is right, wrong or unsafe. */
export function Reason({ option, instead }: { readonly option: Option; readonly instead: string }): VNode {
  const { correct, reason, unsafe } = option;
  if (unsafe !== undefined) return <HarmDone unsafe={unsafe} instead={instead} reason={reason} />;
  return (
    <p>
      <span class="verdict" data-level={correct ? 'within' : 'outside'}>
        <VerdictMark level={correct ? 'within' : 'outside'} />
        <span>{correct ? 'right' : 'wrong'}</span>
      </span>
      {reason}
    </p>
  );
}

/** The whole answer of a question: what stands in the fold without script, and behind "Show the answer" with it. */
export function Answer({ question }: { readonly question: SolvedQuestion }): VNode {
  switch (question.kind) {
    case 'one':
    case 'several':
      return (
        <ul class="options">
          {question.options.map((option) => (
            <li key={option.text} class="option-reason">
              <p>
                <strong>{option.text}</strong>
              </p>
              <Reason option={option} instead={rightOptions(question)} />
            </li>
          ))}
        </ul>
      );
    case 'order':
      return (
        <>
          <ol>
            {question.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p>{question.reason}</p>
          {question.unsafe !== undefined && <HarmDone unsafe={question.unsafe} instead={stepsInOrder(question.unsafe.before)} />}
        </>
      );
    case 'numeric':
      return (
        <p>
          <span class="value">{formatQuantity({ value: question.answer, unit: question.unit })}</span>. {question.reason}
        </p>
      );
  }
}
