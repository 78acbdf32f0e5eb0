import { useEffect, useRef, useState } from 'preact/hooks';
import type { Answer } from '../../workbook/record/learning-record.ts';
import { openSitting, resultOf, sittingsOf, type SittingResult } from '../../workbook/record/sittings.ts';
import { learningRecord } from '../shared/learning.ts';
import { answerGiven, restoredAnswer, type Restored } from './kept-answer.ts';
import type { SolvedQuestion } from './question.ts';
import type { Judgement, Reply } from './state.ts';

export interface SittingInHand {
  /** The number of this run on the page: a new one clears the cards. */
  readonly run: number;
  /** Questions answered before a reload, by id. */
  readonly restored: ReadonlyMap<string, Restored>;
  /** Verdict of the run by first answers; undefined until the first of them. */
  readonly result: SittingResult | undefined;
  /** How the last finished run came out, as long as no new answer was given. */
  readonly lastTime: SittingResult | undefined;
  /** Why answers are not kept; said once. */
  readonly problem: string | undefined;
  readonly answered: (question: SolvedQuestion, reply: Reply, judgement: Judgement) => void;
  readonly again: () => void;
}

interface OpenRun {
  readonly sitting: string;
  readonly answers: readonly Answer[];
}

const NOTHING: ReadonlyMap<string, Restored> = new Map();

/** One run through a quiz, kept as it goes: the open one is taken up again after a reload. */
export function useSitting(lesson: string, questions: readonly SolvedQuestion[]): SittingInHand {
  const [run, setRun] = useState(0);
  const [restored, setRestored] = useState(NOTHING);
  const [answers, setAnswers] = useState<readonly Answer[]>([]);
  const [lastTime, setLastTime] = useState<SittingResult>();
  const [problem, setProblem] = useState<string>();
  const opened = useRef<Promise<OpenRun> | undefined>(undefined);
  const touched = useRef(new Set<string>());
  const outline = { lesson, questions: questions.map(({ id }) => id) };

  useEffect(() => {
    opened.current = learningRecord().then(async (store) => {
      const { record } = await store.read();
      const open = openSitting(record.answers, outline);
      if (open === undefined) {
        const latest = sittingsOf(record.answers, lesson).at(-1);
        setLastTime(latest && resultOf(latest, outline));
        return { sitting: store.newId(), answers: [] };
      }
      const before = record.answers.filter(({ lesson: of, sitting }) => of === lesson && sitting === open.id);
      const latest = new Map([...before].sort((a, b) => (a.at < b.at ? -1 : 1)).map((answer) => [answer.question, answer]));
      setRestored(new Map(questions.flatMap((question) => {
        const answer = latest.get(question.id);
        const found = answer && !touched.current.has(question.id) && restoredAnswer(question, answer);
        return found ? [[question.id, found] as const] : [];
      })));
      setAnswers((now) => [...before, ...now]);
      return { sitting: open.id, answers: before };
    });
  }, []);

  const answered = (question: SolvedQuestion, reply: Reply, judgement: Judgement): void => {
    touched.current.add(question.id);
    const at = new Date().toISOString();
    const place = String(answers.length).padStart(6, '0');
    // The page's own copy judges the run; the store's is written behind it.
    const now: Answer = { ...answerGiven({ lesson, sitting: '', question, reply, judgement }), id: place, at };
    const all = [...answers, now];
    setAnswers(all);
    setLastTime(undefined);
    void (async () => {
      const [store, current] = [await learningRecord(), await opened.current];
      if (current === undefined) return;
      const trouble = await store.answered({ ...now, sitting: current.sitting });
      const complete = outline.questions.every((id) => [...current.answers, ...all].some((answer) => answer.question === id));
      const more = complete ? await store.lessonFinished(lesson) : undefined;
      setProblem((trouble ?? more)?.message);
    })();
  };

  const again = (): void => {
    opened.current = learningRecord().then((store) => ({ sitting: store.newId(), answers: [] }));
    setAnswers([]);
    setRestored(NOTHING);
    setRun((before) => before + 1);
  };

  const [sitting] = sittingsOf(answers.map((answer) => ({ ...answer, sitting: 'this one' })), lesson);
  return { run, restored, result: sitting && resultOf(sitting, outline), lastTime, problem, answered, again };
}
