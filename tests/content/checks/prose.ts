import { isElement, lineOf, mdxTree, type MdxNode } from './mdx-tree.ts';

/** A stretch of text that stands or falls together: a paragraph, a heading, a row of a table, a hazard. */
export interface Passage {
  readonly line: number;
  /** A table's cells are no sentences. */
  readonly kind: 'heading' | 'table' | 'text';
  /** As read, with `COMPUTED` where a figure is put in when the site is built. */
  readonly text: string;
  /** Expressions of the passage, as written. */
  readonly expressions: readonly string[];
  /** Sources it cites, by id. */
  readonly sources: readonly string[];
}

/** Stands for a computed figure in a passage's text. */
export const COMPUTED = '\u25A2';

/** Elements that belong whole to one passage, so that a source named in one of their parts covers the others. */
const WHOLE = new Set(['Hazard', 'SideNote', 'Figure']);
/** Attributes whose text a reader reads. */
const READ_ATTRIBUTES = new Set(['title', 'instead', 'ask', 'caption']);
/** Nodes that are no text of the lesson. */
const SILENT = new Set(['yaml', 'mdxjsEsm', 'code']);

interface Draft {
  text: string;
  readonly expressions: string[];
  readonly sources: string[];
}

function gather(node: MdxNode, draft: Draft): void {
  if (SILENT.has(node.type)) return;
  if (node.type === 'text' || node.type === 'inlineCode') draft.text += node.value ?? '';
  else if (node.type === 'break') draft.text += ' ';
  else if (node.type === 'mdxTextExpression' || node.type === 'mdxFlowExpression') {
    const value = node.value ?? '';
    if (/^\s*\/\*/.test(value)) return;
    draft.text += COMPUTED;
    draft.expressions.push(value);
  }
  if (isElement(node)) {
    for (const { name, value } of node.attributes ?? []) {
      if (name === 'id' && node.name === 'Source' && typeof value === 'string') draft.sources.push(value);
      if (!READ_ATTRIBUTES.has(name)) continue;
      if (typeof value === 'string') draft.text += ` ${value} `;
      else if (value) gatherTemplate(value.value, draft);
    }
  }
  for (const child of node.children ?? []) {
    gather(child, draft);
    if (isBlock(child)) draft.text += ' ';
  }
}

/** The text of an attribute written as a template: its figures are put in, its words are read. */
function gatherTemplate(expression: string, draft: Draft): void {
  const template = /^\s*`([\s\S]*)`\s*$/.exec(expression)?.[1];
  if (template === undefined) {
    draft.text += ` ${COMPUTED} `;
    draft.expressions.push(expression);
    return;
  }
  draft.text += ` ${template.replace(/\$\{([^}]*)\}/g, (_, inner: string) => {
    draft.expressions.push(inner);
    return COMPUTED;
  })} `;
}

const isBlock = (node: MdxNode): boolean => ['paragraph', 'heading', 'list', 'listItem', 'table', 'tableRow', 'tableCell', 'mdxJsxFlowElement'].includes(node.type);

function passagesIn(node: MdxNode, into: Passage[]): void {
  if (SILENT.has(node.type)) return;
  const single = node.type === 'paragraph' || node.type === 'heading' || node.type === 'table' || (isElement(node) && WHOLE.has(node.name ?? ''));
  const ownText = isElement(node) && node.attributes?.some(({ name }) => READ_ATTRIBUTES.has(name)) === true;
  if (single || ownText || node.type === 'mdxFlowExpression') {
    const draft: Draft = { text: '', expressions: [], sources: [] };
    gather(single ? node : { ...node, children: [] }, draft);
    if (draft.text.trim() !== '') {
      into.push({ line: lineOf(node), kind: node.type === 'heading' || node.type === 'table' ? node.type : 'text', ...draft, text: draft.text.replace(/\s+/g, ' ').trim() });
    }
    if (single) return;
  }
  for (const child of node.children ?? []) passagesIn(child, into);
}

/** Everything in a lesson that a reader reads, in order; widgets and code are not text. */
export function passagesOf(source: string): Passage[] {
  const passages: Passage[] = [];
  passagesIn(mdxTree(source), passages);
  return passages;
}

/** Words of a lesson's text; a computed figure counts as one. */
export const wordsIn = (text: string): string[] => text.match(/[\p{L}\p{N}\u25A2][\p{L}\p{N}\u25A2'’.,/-]*/gu) ?? [];
