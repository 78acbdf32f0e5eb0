import { describe, expect, it, vi } from 'vitest';
import { answerWork, startWork, type Channel, type WorkerLike } from '../../../src/widgets/shared/long-work.ts';

/** A worker that works on the next turn of the same thread. */
function pretendWorker<I, R>(work: (input: I) => Generator<number, R>): WorkerLike & { ended: boolean } {
  const inside: Channel = { onmessage: null, postMessage: (data) => void setTimeout(() => worker.ended || worker.onmessage?.({ data } as MessageEvent)) };
  const worker: WorkerLike & { ended: boolean } = {
    ended: false,
    onmessage: null,
    postMessage: (data) => void setTimeout(() => worker.ended || inside.onmessage?.({ data } as MessageEvent)),
    terminate: () => {
      worker.ended = true;
    },
  };
  answerWork(inside, work);
  return worker;
}

function* count(to: number): Generator<number, string> {
  for (let at = 1; at <= to; at += 1) yield at / to;
  return `counted to ${to}`;
}

describe('work longer than a frame', () => {
  it('says how far it is and gives its result', async () => {
    const progress = vi.fn();
    const worker = pretendWorker(count);
    await expect(startWork<number, string>(() => worker, 4, progress).result).resolves.toBe('counted to 4');
    expect(progress.mock.calls.flat()).toEqual([0.25, 0.5, 0.75, 1]);
    expect(worker.ended).toBe(true);
  });

  it('passes a failure on in words', async () => {
    const worker = pretendWorker((): Generator<number, never> => {
      throw new RangeError('loads: 0 is not allowed');
    });
    await expect(startWork(() => worker, 1, () => undefined).result).rejects.toThrow('loads: 0 is not allowed');
    expect(worker.ended).toBe(true);
  });

  it('says when the worker itself cannot be started', async () => {
    const worker = pretendWorker(count);
    const work = startWork(() => worker, 1, () => undefined);
    worker.onerror?.({ message: '' } as ErrorEvent);
    await expect(work.result).rejects.toThrow('could not be started');
  });

  it('can be stopped, and then says nothing more', async () => {
    const progress = vi.fn();
    const settled = vi.fn();
    const work = startWork<number, string>(() => pretendWorker(count), 4, progress);
    void work.result.then(settled, settled);
    work.stop();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(progress).not.toHaveBeenCalled();
    expect(settled).not.toHaveBeenCalled();
  });
});
