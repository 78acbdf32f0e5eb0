import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { QuestionCard } from './question-card.tsx';
import type { SolvedQuestion } from './question.ts';
import { score, type Judgement } from './state.ts';

/** The quiz after a lesson. It reads in full without script; with it, it answers back. */
export default function QuizView({ questions }: { readonly questions: readonly SolvedQuestion[] }): VNode {
  const [alive, setAlive] = useState(false);
  const [judgements, setJudgements] = useState<readonly (Judgement | undefined)[]>(() => questions.map(() => undefined));
  useEffect(() => setAlive(true), []);
  const { right, unsafe, open } = score(judgements);

  return (
    <section class="quiz" aria-labelledby="quiz">
      <h2 id="quiz">Test yourself</h2>
      {questions.map((question, index) => (
        <QuestionCard
          key={question.id}
          question={question}
          place={index + 1}
          of={questions.length}
          alive={alive}
          onJudged={(judgement) => setJudgements((before) => before.map((old, at) => (at === index ? judgement : old)))}
        />
      ))}
      {alive && open < questions.length && (
        <p class="quiz-score">
          {right} of {questions.length} right{open > 0 && `, ${open} still open`}
          {unsafe > 0 && `; ${unsafe} unsafe: go through ${unsafe === 1 ? 'that one' : 'those'} again before you pick up an iron`}.
        </p>
      )}
    </section>
  );
}
