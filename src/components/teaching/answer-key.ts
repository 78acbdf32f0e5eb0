import { formatQuantity } from '../../compute/index.ts';
import type { Question, SolvedQuestion } from '../../widgets/quiz/question.ts';
import { fillQuiz } from '../quiz-fill.ts';
import { shop, type Shop } from '../shop.ts';
import type { Worked } from '../worked/worked.ts';

interface WorkedModule {
  readonly work?: (shop: Shop) => Worked<string>;
}

const modules = import.meta.glob<WorkedModule>('../worked/*.ts', { eager: true });

/** The questions of a lesson's quiz with the figures and answers that its lesson computes for them. */
export function solvedQuiz(slug: string, questions: readonly Question[]): SolvedQuestion[] {
  const { work } = modules[`../worked/${slug}.ts`] ?? {};
  return fillQuiz(questions, work === undefined ? {} : work(shop).quiz);
}

/** One line of an answer key. */
export interface KeyLine {
  readonly text: string;
  readonly reason?: string;
  readonly unsafe?: string;
}

/** What counts as right, and which options an assessor must not let pass. */
export function keyOf(question: SolvedQuestion): { readonly right: readonly KeyLine[]; readonly unsafe: readonly KeyLine[] } {
  if (question.kind === 'numeric') {
    const { answer, unit, tolerance, reason } = question;
    const text = `${formatQuantity({ value: answer, unit })}; ${formatQuantity({ value: tolerance, unit: '%' })} either way counts`;
    return { right: [{ text, reason }], unsafe: [] };
  }
  if (question.kind === 'order') {
    const { steps, reason, unsafe } = question;
    return {
      right: steps.map((text, at) => ({ text, ...(at === steps.length - 1 && { reason }) })),
      unsafe: unsafe === undefined ? [] : [{ text: `“${unsafe.before[0]}” before “${unsafe.before[1]}”`, unsafe: `${unsafe.harm}: ${unsafe.consequence}` }],
    };
  }
  return {
    right: question.options.filter(({ correct }) => correct === true).map(({ text, reason }) => ({ text, reason })),
    unsafe: question.options.flatMap(({ text, unsafe }) => (unsafe === undefined ? [] : [{ text, unsafe: `${unsafe.harm}: ${unsafe.consequence}` }])),
  };
}
