/*
 * A calculator's worker, both sides. The page sends the fields as typed, as often as they change; the worker answers the
 * newest: first what is quick, where the calculator has that, then the whole, unless something newer has come meanwhile.
 */
import type { Calculator, FieldSet, ViewModel } from './definition.ts';
import { answerFields, type Answer } from './evaluate.ts';
import type { Channel, WorkerLike } from './long-work.ts';
import type { RawFields } from './raw-fields.ts';

interface Asked {
  readonly id: number;
  readonly raw: RawFields;
}

interface Answered<F extends FieldSet, R> {
  readonly id: number;
  /** False for what is quick, with the whole still to come. */
  readonly isWhole: boolean;
  readonly answer: Answer<F, R>;
}

/** What arrived while the worker was at it is in its queue; it comes in before this goes on. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** The worker's side. Throws nothing: a fault of the solver's goes to the page as the worker's error. */
export function answerCalculator<F extends FieldSet, R extends ViewModel>(channel: Channel, calculator: Calculator<F, R>): void {
  let newest: Asked | undefined;
  let isWorking = false;
  const { quick } = calculator;

  const work = async (): Promise<void> => {
    isWorking = true;
    try {
      while (newest !== undefined) {
        const { id, raw } = newest;
        newest = undefined;
        const post = (isWhole: boolean, answer: Answer<F, R>): void => channel.postMessage({ id, isWhole, answer } satisfies Answered<F, R>);
        if (quick !== undefined) {
          post(false, answerFields({ ...calculator, solve: quick }, raw));
          await nextTurn();
          if (newest !== undefined) continue;
        }
        post(true, answerFields(calculator, raw));
        await nextTurn();
      }
    } finally {
      isWorking = false;
    }
  };

  channel.onmessage = ({ data }: MessageEvent<Asked>) => {
    newest = data;
    // Out of the promise, so that a fault reaches the page as the worker's error.
    if (!isWorking) work().catch((error: unknown) => setTimeout(() => { throw error; }));
  };
}

/** The page's side: a worker that is kept, and asked whenever the fields change. */
export interface Solver {
  readonly ask: (raw: RawFields) => void;
  /** Ends what is being worked on. The next question starts a fresh worker. */
  readonly stop: () => void;
  /** Starts the worker ahead of the first question. */
  readonly prepare: () => void;
}

export function solverOf<F extends FieldSet, R>(options: {
  readonly create: () => WorkerLike;
  /** `isLast`: it is the whole answer to the newest question. */
  readonly onAnswer: (answer: Answer<F, R>, isLast: boolean) => void;
  /** The worker could not be started, or its solver has a fault; called for every question from then on. */
  readonly onFailure: () => void;
}): Solver {
  const { create, onAnswer, onFailure } = options;
  let worker: WorkerLike | undefined;
  let asked = 0;
  let failed = false;

  const stop = (): void => {
    worker?.terminate();
    worker = undefined;
    asked += 1;
  };
  const fail = (): void => {
    stop();
    failed = true;
    onFailure();
  };
  const prepare = (): void => {
    if (worker !== undefined || failed) return;
    worker = create();
    worker.onmessage = ({ data }: MessageEvent<Answered<F, R>>) => onAnswer(data.answer, data.isWhole && data.id === asked);
    worker.onerror = fail;
  };
  const ask = (raw: RawFields): void => {
    asked += 1;
    if (failed) {
      onFailure();
      return;
    }
    try {
      prepare();
      worker?.postMessage({ id: asked, raw } satisfies Asked);
    } catch {
      fail();
    }
  };
  return { ask, stop, prepare };
}
