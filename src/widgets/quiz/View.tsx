import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { PASS_SHARE, type SittingResult } from '../../workbook/record/sittings.ts';
import { QuestionCard } from './question-card.tsx';
import type { SolvedQuestion } from './question.ts';
import { score, type Judgement } from './state.ts';
import { useSitting } from './use-sitting.ts';

/** What the run came to, by the first answer to each question. */
const CAME_TO: Record<SittingResult, string> = {
  passed: 'Passed.',
  'too few right': `Not passed: ${PASS_SHARE * 100} % must be right at the first try. Read the reasons, then take it again.`,
  unsafe: 'Not passed: an unsafe answer fails the run, whatever else was right. Read what would have happened, then take it again.',
  unfinished: '',
};

/** The quiz after a lesson. It reads in full without script; with it, it answers back and keeps what was answered. */
export default function QuizView({ lesson, questions }: { readonly lesson: string; readonly questions: readonly SolvedQuestion[] }): VNode {
  const [alive, setAlive] = useState(false);
  const [judgements, setJudgements] = useState<ReadonlyMap<string, Judgement>>(new Map());
  const { run, restored, result, lastTime, problem, answered, again } = useSitting(lesson, questions);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => setAlive(true), []);
  const { right, unsafe, open } = score(questions.map(({ id }) => judgements.get(id) ?? restored.get(id)?.judgement));

  const restart = (): void => {
    setJudgements(new Map());
    again();
    heading.current?.focus();
  };

  return (
    <section class="quiz" aria-labelledby="quiz">
      <h2 id="quiz" ref={heading} tabIndex={-1}>
        Test yourself
      </h2>
      {alive && lastTime !== undefined && lastTime !== 'unfinished' && (
        <p class="small soft">You have been through these questions before. {CAME_TO[lastTime]} What you answer now is a new run.</p>
      )}
      {questions.map((question, index) => (
        <QuestionCard
          key={`${question.id} ${run} ${restored.has(question.id) ? 'as left' : 'fresh'}`}
          question={question}
          place={index + 1}
          of={questions.length}
          alive={alive}
          before={restored.get(question.id)}
          onJudged={(judgement, reply) => {
            setJudgements((old) => new Map(old).set(question.id, judgement));
            answered(question, reply, judgement);
          }}
        />
      ))}
      {alive && open < questions.length && (
        <div class="quiz-score">
          <p>
            {right} of {questions.length} right{open > 0 && `, ${open} still open`}
            {unsafe > 0 && `; ${unsafe} unsafe: go through ${unsafe === 1 ? 'that one' : 'those'} again before you pick up an iron`}.
          </p>
          {open === 0 && result !== undefined && (
            <>
              <p role="status">{CAME_TO[result]}</p>
              <button class="button quiet" type="button" onClick={restart}>
                Take it again
              </button>
            </>
          )}
          {problem !== undefined && <p role="status">{problem}</p>}
        </div>
      )}
    </section>
  );
}
