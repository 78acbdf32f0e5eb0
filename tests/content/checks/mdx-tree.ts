import { createRequire } from 'node:module';

/** A node of a lesson's tree: Markdown's own kinds, and the expressions and elements that MDX adds. */
export interface MdxNode {
  readonly type: string;
  readonly position?: { readonly start: { readonly line: number } };
  readonly value?: string;
  readonly name?: string | null;
  readonly url?: string;
  readonly attributes?: readonly MdxAttribute[];
  readonly children?: readonly MdxNode[];
}

export interface MdxAttribute {
  readonly type: string;
  readonly name: string;
  /** A plain text, or an expression. */
  readonly value?: string | null | { readonly type: string; readonly value: string };
}

// The parser that builds the site, found through the integration that brings it: what is checked is what is read.
const integration = createRequire(createRequire(import.meta.url).resolve('@astrojs/mdx'));
const processor = createRequire(integration.resolve('@astrojs/markdown-satteri'));
const { mdxToMdast } = (await import(processor.resolve('satteri'))) as {
  mdxToMdast: (source: string, options: object) => MdxNode;
};
const { parseFrontmatter } = (await import(integration.resolve('@astrojs/internal-helpers/frontmatter'))) as {
  parseFrontmatter: (source: string) => { frontmatter: Record<string, unknown> };
};

/** The tree of an MDX text; lines count from the top of the file, frontmatter included. */
export const mdxTree = (source: string): MdxNode => mdxToMdast(source, { features: { frontmatter: true } });

export const frontmatterOf = (source: string): Record<string, unknown> => parseFrontmatter(source).frontmatter;

/** Every node of a tree in the order of its text. */
export function* walk(node: MdxNode): Generator<MdxNode> {
  yield node;
  for (const child of node.children ?? []) yield* walk(child);
}

export const isElement = (node: MdxNode): boolean => node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement';

/** Uses of one component. */
export const elements = (tree: MdxNode, name: string): MdxNode[] => [...walk(tree)].filter((node) => isElement(node) && node.name === name);

/** A plain attribute's text. */
export function attribute(node: MdxNode, name: string): string | undefined {
  const value = node.attributes?.find((entry) => entry.name === name)?.value;
  return typeof value === 'string' ? value : undefined;
}

export const lineOf = (node: MdxNode): number => node.position?.start.line ?? 0;
