import type { VNode } from 'preact';
import { useId, useState } from 'preact/hooks';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { Answer, HarmDone, Reason, rightOptions, stepsInOrder } from './answer.tsx';
import type { Restored } from './kept-answer.ts';
import type { ChoiceQuestion, OrderQuestion, SolvedNumericQuestion, SolvedQuestion } from './question.ts';
import { choose, judge, move, startingReply, type Judgement, type Outcome, type Reply } from './state.ts';

interface Asking<Q extends SolvedQuestion> {
  readonly question: Q;
  readonly reply: Reply;
  readonly judgement: Judgement | undefined;
  readonly onReply: (reply: Reply) => void;
}

const HINT: Record<SolvedQuestion['kind'], string> = {
  one: 'Choose one.',
  several: 'Choose every one that holds.',
  order: 'Put the steps in order.',
  numeric: '',
};

const LEVEL = { right: 'within', wrong: 'outside', unsafe: 'hazard', unanswered: 'not assessed' } as const satisfies Record<Outcome, string>;

/** Reasons of the chosen options after a check; of all of them once the question is settled. */
function Choices({ question, reply, judgement, onReply }: Asking<ChoiceQuestion>): VNode {
  const id = useId();
  return (
    <ul class="options">
      {question.options.map((option, index) => {
        const chosen = reply.chosen.includes(index);
        const explained = judgement !== undefined && judgement.outcome !== 'unanswered' && (chosen || judgement.outcome === 'right');
        return (
          <li key={option.text}>
            <label class="option-line">
              <input
                type={question.kind === 'one' ? 'radio' : 'checkbox'}
                name={`${id}-option`}
                checked={chosen}
                {...(explained ? { 'aria-describedby': `${id}-reason-${index}` } : {})}
                onChange={() => onReply(choose(question, reply, index))}
              />
              <span>{option.text}</span>
            </label>
            {explained && (
              <div class="option-reason" id={`${id}-reason-${index}`}>
                <Reason option={option} instead={rightOptions(question)} />
              </div>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function Ordering({ question, reply, onReply }: Asking<OrderQuestion>): VNode {
  return (
    <ol class="ordering">
      {reply.order.map((step, place) => (
        <li key={step}>
          <span>{question.steps[step]}</span>
          <span>
            <button type="button" disabled={place === 0} onClick={() => onReply(move(reply, place, -1))}>
              <span aria-hidden="true">↑</span>
              <span class="unseen">Earlier: {question.steps[step]}</span>
            </button>
            <button type="button" disabled={place === reply.order.length - 1} onClick={() => onReply(move(reply, place, 1))}>
              <span aria-hidden="true">↓</span>
              <span class="unseen">Later: {question.steps[step]}</span>
            </button>
          </span>
        </li>
      ))}
    </ol>
  );
}

function Figure({ question, reply, onReply }: Asking<SolvedNumericQuestion>): VNode {
  const id = useId();
  return (
    <p>
      <label for={id}>Your figure, in {question.writtenIn ?? question.unit}: </label>
      <input id={id} class="field-value" size={8} autocomplete="off" value={reply.text} onInput={(event) => onReply({ ...reply, text: event.currentTarget.value })} />{' '}
      <span class="small soft">within {Math.round(question.tolerance * 1000) / 10} % counts</span>
    </p>
  );
}

function Replying(props: Asking<SolvedQuestion>): VNode {
  const { question } = props;
  if (question.kind === 'order') return <Ordering {...props} question={question} />;
  if (question.kind === 'numeric') return <Figure {...props} question={question} />;
  return <Choices {...props} question={question} />;
}

export interface QuestionCardProps {
  readonly question: SolvedQuestion;
  readonly place: number;
  readonly of: number;
  /** Whether the script runs; until then the answer is in a fold. */
  readonly alive: boolean;
  /** How it stood when the reader left. */
  readonly before?: Restored | undefined;
  readonly onJudged: (judgement: Judgement, reply: Reply) => void;
}

/** One question with its means of answering and its verdict. */
export function QuestionCard({ question, place, of, alive, before, onJudged }: QuestionCardProps): VNode {
  const [reply, setReply] = useState(() => before?.reply ?? startingReply(question));
  const [judgement, setJudgement] = useState(before?.judgement);
  const [shown, setShown] = useState(false);
  const settled = judgement !== undefined && judgement.outcome !== 'unanswered';

  const check = (): void => {
    const next = judge(question, reply);
    setJudgement(next);
    if (next.outcome !== 'unanswered') onJudged(next, reply);
  };

  return (
    <fieldset id={`question-${question.id}`}>
      <legend>
        <span class="soft">
          Question {place} of {of}. {HINT[question.kind]}
        </span>{' '}
        {question.ask}
      </legend>
      <Replying
        question={question}
        reply={reply}
        judgement={judgement}
        onReply={(next) => {
          setReply(next);
          setJudgement(undefined);
        }}
      />
      {alive ? (
        <>
          <div class="quiz-check">
            <button class="button" type="button" onClick={check}>
              Check
            </button>
            <p role="status" class="verdict" data-level={judgement === undefined ? undefined : LEVEL[judgement.outcome]}>
              {judgement !== undefined && (
                <>
                  <VerdictMark level={LEVEL[judgement.outcome]} />
                  <span>{judgement.message}</span>
                </>
              )}
            </p>
            {settled && judgement.outcome !== 'right' && !shown && (
              <button class="button quiet" type="button" onClick={() => setShown(true)}>
                Show the answer
              </button>
            )}
          </div>
          {question.kind === 'order' && question.unsafe !== undefined && judgement?.outcome === 'unsafe' && (
            <HarmDone unsafe={question.unsafe} instead={stepsInOrder(question.unsafe.before)} />
          )}
          {(shown || (judgement?.outcome === 'right' && (question.kind === 'order' || question.kind === 'numeric'))) && <Answer question={question} />}
        </>
      ) : (
        <details>
          <summary>Answer and reasons</summary>
          <Answer question={question} />
        </details>
      )}
    </fieldset>
  );
}
