import type { Harm } from '../../../src/compute/findings.ts';
import type { Question } from '../../../src/widgets/quiz/question.ts';
import { attribute, elements, mdxTree, walk, isElement, lineOf } from './mdx-tree.ts';

/** What the course owes the reader of one lesson: cautions over it, and choices that it must call dangerous. */
export interface Duty {
  readonly cautions: readonly string[];
  readonly hazards: readonly { readonly id: string; readonly harm: Harm; readonly title: string }[];
}

/** Hazards that a lesson shows, and hazards that stand in something a reader may leave folded. */
export function hazardsShown(source: string): { readonly shown: { readonly id: string; readonly harm: string }[]; readonly folded: string[] } {
  const tree = mdxTree(source);
  const shown = elements(tree, 'Hazard').map((node) => ({ id: attribute(node, 'id') ?? '', harm: attribute(node, 'harm') ?? '' }));
  const folded: string[] = [];
  for (const node of walk(tree)) {
    const folds = isElement(node) && (node.name === 'details' || (node.name === 'Step' && node.attributes?.some(({ name }) => name === 'left')));
    if (folds) folded.push(...elements(node, 'Hazard').map((hazard) => `line ${lineOf(hazard)}`));
  }
  return { shown, folded };
}

/** Every choice of a quiz that is flagged as unsafe. */
export const unsafeChoices = (questions: readonly Question[]): { readonly harm: Harm; readonly hazard?: string | undefined; readonly consequence: string }[] =>
  questions.flatMap((question) => {
    if (question.kind === 'one' || question.kind === 'several') return question.options.flatMap(({ unsafe }) => unsafe ?? []);
    return question.kind === 'order' ? [question.unsafe ?? []].flat() : [];
  });
