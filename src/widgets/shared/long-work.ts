/*
 * Work longer than a frame runs in a worker, says how far it is, and can be stopped.
 *
 * The worker's file, beside the calculator's state:
 *
 *     answerWork(self, function* (input: Input) {          // spread.worker.ts
 *       for (let done = 0; done < input.samples; done += 50) { …; yield done / input.samples; }
 *       return result;
 *     });
 *
 * and where the work is wanted:
 *
 *     const work = startWork<Input, Result>(() => new Worker(new URL('./spread.worker.ts', import.meta.url), { type: 'module' }), input, setProgress);
 *     work.result.then(show, () => …);   // rejects with the worker's message; never settles once stopped
 *     work.stop();
 */

type FromWorker<R> = { readonly progress: number } | { readonly result: R } | { readonly failure: string };

/** The part of a worker, or of a message port, that is needed here. */
export interface Channel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => unknown) | null;
}

/** Where work can be sent: a worker, or a stand-in for one. */
export interface WorkerLike extends Channel {
  onerror?: ((event: ErrorEvent) => unknown) | null;
  terminate(): void;
}

export interface Work<R> {
  readonly result: Promise<R>;
  /** Ends it at once; its result then never comes. */
  readonly stop: () => void;
}

/** Sends one piece of work to a worker of its own. `onProgress` is told 0 to 1. */
export function startWork<I, R>(create: () => WorkerLike, input: I, onProgress: (part: number) => void): Work<R> {
  const worker = create();
  const result = new Promise<R>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<FromWorker<R>>) => {
      if ('progress' in data) {
        onProgress(data.progress);
        return;
      }
      worker.terminate();
      if ('result' in data) resolve(data.result);
      else reject(new Error(data.failure));
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message || 'the worker could not be started'));
    };
  });
  worker.postMessage(input);
  return { result, stop: () => worker.terminate() };
}

/** The worker's side: each message is one piece of work, done by a generator that yields how far it is. */
export function answerWork<I, R>(channel: Channel, work: (input: I) => Generator<number, R>): void {
  channel.onmessage = ({ data }: MessageEvent<I>) => {
    try {
      const steps = work(data);
      for (;;) {
        const step = steps.next();
        if (step.done === true) {
          channel.postMessage({ result: step.value } satisfies FromWorker<R>);
          return;
        }
        channel.postMessage({ progress: step.value } satisfies FromWorker<R>);
      }
    } catch (error) {
      channel.postMessage({ failure: error instanceof Error ? error.message : String(error) } satisfies FromWorker<R>);
    }
  };
}
