import { attribute, isElement, lineOf, mdxTree, type MdxNode } from './mdx-tree.ts';

export interface GlossaryEntry {
  readonly term: string;
  readonly meaning: string;
  readonly see: readonly string[];
  /** Other forms of the word that a text may use: the plural, a verb. */
  readonly forms?: readonly string[];
}

export type Glossary = Readonly<Record<string, GlossaryEntry>>;

interface Word {
  readonly id: string;
  readonly pattern: RegExp;
}

/** Longer terms first, so that "low-dropout regulator" is not read as a use of "dropout". */
const wordsOf = (glossary: Glossary): Word[] =>
  Object.entries(glossary)
    .flatMap(([id, { term, forms = [] }]) => [term, `${term}s`, ...forms].map((form) => ({ id, form })))
    .sort((a, b) => b.form.length - a.form.length)
    .map(({ id, form }) => ({ id, pattern: new RegExp(`(?<![\\p{L}\\p{N}-])${form.replace(/[.*+?^\${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\p{N}]|-\\p{L})`, 'giu') }));

/** What is wrong with a lesson's use of the glossary, each fault with its line. */
export function glossaryFaults(source: string, glossary: Glossary): string[] {
  const words = wordsOf(glossary);
  const linked = new Set<string>();
  const named = new Set<string>();
  const faults: string[] = [];
  const read = (node: MdxNode): void => {
    if (node.type === 'heading' || node.type === 'inlineCode' || node.type === 'code') return;
    if (isElement(node) && node.name === 'Term') {
      const id = attribute(node, 'id') ?? '';
      if (linked.has(id)) faults.push(`line ${lineOf(node)}: "${id}" is linked a second time`);
      if (!(id in glossary)) faults.push(`line ${lineOf(node)}: the glossary has no "${id}"`);
      linked.add(id);
      return;
    }
    if (node.type === 'text') {
      let rest = node.value ?? '';
      for (const { id, pattern } of words) {
        rest = rest.replace(pattern, (found) => {
          if (!linked.has(id) && !named.has(id)) {
            named.add(id);
            faults.push(`line ${lineOf(node)}: the first "${found}" is not linked to the glossary's "${id}"`);
          }
          return ' '.repeat(found.length);
        });
      }
    }
    for (const child of node.children ?? []) read(child);
  };
  read(mdxTree(source));
  return faults;
}

/** Ids of the terms that a lesson links. */
export const termsLinked = (source: string): string[] => {
  const ids: string[] = [];
  const read = (node: MdxNode): void => {
    if (isElement(node) && node.name === 'Term') ids.push(attribute(node, 'id') ?? '');
    node.children?.forEach(read);
  };
  read(mdxTree(source));
  return ids;
};
