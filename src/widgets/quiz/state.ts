import { parseQuantity } from '../../compute/quantity.ts';
import type { Option, OrderQuestion, SolvedNumericQuestion, SolvedQuestion, Unsafe } from './question.ts';

/** What a reader has put in so far. Each kind of question uses one member and leaves the others as they began. */
export interface Reply {
  /** Indices of the chosen options. */
  readonly chosen: readonly number[];
  /** Indices of the steps, in the reader's order. */
  readonly order: readonly number[];
  readonly text: string;
}

/** Unsafe outranks wrong: somebody would have been hurt, whatever else was right. */
export type Outcome = 'right' | 'wrong' | 'unsafe' | 'unanswered';

export interface Judgement {
  readonly outcome: Outcome;
  /** One sentence: the verdict as it is shown and read out. */
  readonly message: string;
  /** Harms that the reply would have done. */
  readonly harms: readonly Unsafe[];
}

/** A small seeded sequence, so that a page is the same in every build: FNV-1a of the text, then xorshift32. */
function* sequence(seed: string): Generator<number, never> {
  let state = 0x811c9dc5;
  for (const char of seed) state = Math.imul(state ^ char.charCodeAt(0), 0x01000193) >>> 0;
  for (;;) {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    yield state;
  }
}

/** Steps of a question out of order, always in the same way, and never in the right order. */
export function shuffled({ id, steps }: Pick<OrderQuestion, 'id' | 'steps'>): number[] {
  const order = steps.map((_, index) => index);
  const numbers = sequence(id);
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = numbers.next().value % (last + 1);
    [order[last], order[other]] = [order[other] ?? 0, order[last] ?? 0];
  }
  const [first = 0, ...others] = order;
  return order.every((step, place) => step === place) ? [...others, first] : order;
}

/** The reply a question starts from. */
export const startingReply = (question: SolvedQuestion): Reply => ({
  chosen: [],
  order: question.kind === 'order' ? shuffled(question) : [],
  text: '',
});

/** Takes an option, or in a question with several answers gives it back. */
export function choose(question: SolvedQuestion, reply: Reply, index: number): Reply {
  if (question.kind !== 'several') return { ...reply, chosen: [index] };
  const chosen = reply.chosen.includes(index) ? reply.chosen.filter((other) => other !== index) : [...reply.chosen, index];
  return { ...reply, chosen };
}

/** Moves the step at a place one place up (−1) or down (1); at the ends it stays. */
export function move(reply: Reply, place: number, by: -1 | 1): Reply {
  const order = [...reply.order];
  const [one, other] = [order[place], order[place + by]];
  if (one === undefined || other === undefined) return reply;
  order[place] = other;
  order[place + by] = one;
  return { ...reply, order };
}

const UNSAFE = 'Unsafe. Read what would have happened.';

const judgeOptions = (options: readonly Option[], { chosen }: Reply): Judgement => {
  if (chosen.length === 0) return { outcome: 'unanswered', message: 'Choose first.', harms: [] };
  const harms = chosen.flatMap((index) => options[index]?.unsafe ?? []);
  if (harms.length > 0) return { outcome: 'unsafe', message: UNSAFE, harms };
  const missed = options.filter(({ correct }, index) => correct && !chosen.includes(index)).length;
  const excess = chosen.filter((index) => !options[index]?.correct).length;
  if (missed === 0 && excess === 0) return { outcome: 'right', message: 'Right.', harms };
  return { outcome: 'wrong', message: excess === 0 ? 'Right as far as it goes, but there is more.' : 'Not so.', harms };
};

const judgeOrder = ({ steps, unsafe }: OrderQuestion, { order }: Reply): Judgement => {
  if (unsafe !== undefined) {
    const [harmful, needed] = unsafe.before.map((step) => order.indexOf(steps.indexOf(step)));
    if (harmful !== undefined && needed !== undefined && harmful < needed) return { outcome: 'unsafe', message: UNSAFE, harms: [unsafe] };
  }
  const firstWrong = order.findIndex((step, place) => step !== place);
  if (firstWrong < 0) return { outcome: 'right', message: 'Right.', harms: [] };
  return {
    outcome: 'wrong',
    message: firstWrong === 0 ? 'Not so: another step comes first.' : `Right up to step ${firstWrong}, then not.`,
    harms: [],
  };
};

const judgeNumber = ({ unit, writtenIn, answer, tolerance }: SolvedNumericQuestion, { text }: Reply): Judgement => {
  const read = parseQuantity({ text, unit, ...(writtenIn === undefined ? {} : { assume: writtenIn }) });
  if (!read.ok) return { outcome: 'unanswered', message: `${read.reason}.`, harms: [] };
  const off = Math.abs(read.value - answer);
  if (off <= Math.abs(answer) * tolerance) return { outcome: 'right', message: 'Right.', harms: [] };
  return { outcome: 'wrong', message: read.value > answer ? 'Not so: that is too much.' : 'Not so: that is too little.', harms: [] };
};

/** What a reply is worth. A reply that cannot be read is `unanswered`, with what is asked for in the message. */
export function judge(question: SolvedQuestion, reply: Reply): Judgement {
  switch (question.kind) {
    case 'one':
    case 'several':
      return judgeOptions(question.options, reply);
    case 'order':
      return judgeOrder(question, reply);
    case 'numeric':
      return judgeNumber(question, reply);
  }
}

/** How a quiz stands, from the last judgement of each question. */
export function score(judgements: readonly (Judgement | undefined)[]): { readonly right: number; readonly unsafe: number; readonly open: number } {
  const count = (outcome: Outcome): number => judgements.filter((judgement) => judgement?.outcome === outcome).length;
  return {
    right: count('right'),
    unsafe: count('unsafe'),
    open: judgements.filter((judgement) => judgement === undefined || judgement.outcome === 'unanswered').length,
  };
}
