import { describe, expect, it, vi } from 'vitest';
import { answerCalculator, solverOf } from '../../../src/widgets/shared/calculator-worker.ts';
import { defineCalculator, type FieldSet, type ViewModel } from '../../../src/widgets/shared/definition.ts';
import type { Channel, WorkerLike } from '../../../src/widgets/shared/long-work.ts';

const fields = { volts: { kind: 'quantity', label: 'Volts', unit: 'V', default: 1, min: 0, max: 100 } } as const satisfies FieldSet;

const solved: string[] = [];
const slow = defineCalculator({
  id: 'slow', version: 1, question: 'How long?', fields,
  solve: ({ volts }): ViewModel => {
    solved.push(`whole ${volts}`);
    return { level: 'within', summary: `whole ${volts}` };
  },
  quick: ({ volts }) => {
    solved.push(`quick ${volts}`);
    return { level: 'not assessed', summary: `quick ${volts}` };
  },
});
const { quick: _, ...plain } = slow;

/** A worker on turns of its own in the same thread; what the solver throws there is an `error` event. */
function pretendWorker(calculator: typeof slow | typeof plain): WorkerLike & { ended: boolean } {
  const inside: Channel = { onmessage: null, postMessage: (data) => void setTimeout(() => worker.ended || worker.onmessage?.({ data } as MessageEvent)) };
  const worker: WorkerLike & { ended: boolean } = {
    ended: false,
    onmessage: null,
    postMessage: (data) => void setTimeout(() => worker.ended || inside.onmessage?.({ data } as MessageEvent)),
    terminate: () => {
      worker.ended = true;
    },
  };
  answerCalculator(inside, calculator);
  return worker;
}

function ask(calculator: typeof slow | typeof plain) {
  solved.length = 0;
  const worker = pretendWorker(calculator);
  const answers: (readonly [string, boolean])[] = [];
  const onFailure = vi.fn();
  const solver = solverOf<typeof fields, ViewModel>({
    create: () => worker,
    onAnswer: (answer, isLast) => answers.push([('view' in answer ? answer.view.summary : Object.values(answer.errors)[0]) ?? '', isLast]),
    onFailure,
  });
  return { solver, worker, answers, onFailure };
}

describe('a calculator in a worker', () => {
  it('answers with what is quick, then with the whole', async () => {
    const { solver, answers } = ask(slow);
    solver.ask({ volts: '5 V' });
    await vi.waitFor(() => expect(answers).toEqual([['quick 5', false], ['whole 5', true]]));
  });

  it('leaves out the whole of what has been overtaken', async () => {
    const { solver, answers } = ask(slow);
    for (const volts of ['1', '2', '3', '4']) solver.ask({ volts });
    await vi.waitFor(() => expect(answers.at(-1)).toEqual(['whole 4', true]));
    expect(solved.filter((each) => each.startsWith('whole'))).toEqual(['whole 4']);
  });

  it('answers at once with the whole where nothing is quick', async () => {
    const { solver, answers } = ask(plain);
    solver.ask({ volts: '7 V' });
    await vi.waitFor(() => expect(answers).toEqual([['whole 7', true]]));
  });

  it('says what is wrong with a field', async () => {
    const { solver, answers } = ask(plain);
    solver.ask({ volts: '700 V' });
    await vi.waitFor(() => expect(answers[0]?.[0]).toMatch(/between 0 V and 100 V/));
  });

  it('says nothing any more once stopped', async () => {
    const { solver, worker, answers } = ask(slow);
    solver.ask({ volts: '5 V' });
    solver.stop();
    expect(worker.ended).toBe(true);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(answers).toEqual([]);
  });

  it('fails in words where there can be no worker, for every question', () => {
    const onFailure = vi.fn();
    const solver = solverOf({ create: () => { throw new Error('no workers here'); }, onAnswer: vi.fn(), onFailure });
    solver.ask({ volts: '1' });
    solver.ask({ volts: '2' });
    expect(onFailure).toHaveBeenCalledTimes(2);
  });
});
