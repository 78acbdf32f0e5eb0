/*
 * A worker that is kept and asked again and again, while a reader drags a value: it works on one question at a time,
 * and of those that come meanwhile only the newest waits.
 *
 *     const judge = latestAnswer<RawFields, Evaluation>({ create: () => new Worker(…), onAnswer, onFailure });
 *     judge.ask(raw);
 *
 * The worker's side is `answerWork` of long-work.ts.
 */
import type { WorkerLike } from './long-work.ts';

type FromWorker<R> = { readonly progress: number } | { readonly result: R } | { readonly failure: string };

export interface LatestAnswer<I> {
  readonly ask: (input: I) => void;
  /** Ends what is being worked on and what waits. The next question starts a fresh worker. */
  readonly stop: () => void;
}

export interface LatestAnswerOptions<I, R> {
  readonly create: () => WorkerLike;
  /** `isLatest` is false where something newer has been asked meanwhile. */
  readonly onAnswer: (result: R, input: I, isLatest: boolean) => void;
  /** The worker could not be started, or threw. */
  readonly onFailure: (reason: string, input: I) => void;
}

export function latestAnswer<I, R>({ create, onAnswer, onFailure }: LatestAnswerOptions<I, R>): LatestAnswer<I> {
  let worker: WorkerLike | undefined;
  let asked: { readonly input: I } | undefined;
  let waiting: { readonly input: I } | undefined;

  const stop = (): void => {
    worker?.terminate();
    worker = undefined;
    asked = undefined;
    waiting = undefined;
  };

  const fail = (reason: string): void => {
    const latest = waiting ?? asked;
    stop();
    if (latest !== undefined) onFailure(reason, latest.input);
  };

  const start = (): WorkerLike => {
    const started = create();
    started.onmessage = ({ data }: MessageEvent<FromWorker<R>>) => {
      if ('progress' in data || asked === undefined) return;
      if ('failure' in data) {
        fail(data.failure);
        return;
      }
      const { input } = asked;
      const next = waiting;
      asked = undefined;
      waiting = undefined;
      // Sent on before the answer is shown: the worker need not wait for the page to be painted.
      if (next !== undefined) ask(next.input);
      onAnswer(data.result, input, next === undefined);
    };
    started.onerror = (event) => fail(event.message || 'the worker could not be started');
    return started;
  };

  const ask = (input: I): void => {
    if (asked !== undefined) {
      waiting = { input };
      return;
    }
    asked = { input };
    try {
      worker ??= start();
      worker.postMessage(input);
    } catch (error) {
      fail(error instanceof Error ? error.message : String(error));
    }
  };

  return { ask, stop };
}
