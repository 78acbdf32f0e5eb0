import type { ComponentChildren, VNode } from 'preact';

const isNode = (child: unknown): child is VNode<Record<string, unknown>> => typeof child === 'object' && child !== null && 'type' in child;

/** What a drawing comes to as plain markup, for tests: drawings are pure functions, without state or effects. */
export function markup(child: ComponentChildren): string {
  if (Array.isArray(child)) return child.map(markup).join('');
  if (!isNode(child)) return child === null || child === undefined || typeof child === 'boolean' ? '' : String(child);
  const { type, props } = child;
  if (typeof type === 'function') return markup((type as (given: unknown) => ComponentChildren)(props));
  const inside = markup(props['children'] as ComponentChildren);
  // A fragment has no name of its own.
  if (typeof type !== 'string' || type === '') return inside;
  const attributes = Object.entries(props).flatMap(([name, value]) => (name === 'children' || value === undefined ? [] : [` ${name}="${String(value)}"`]));
  return `<${type}${attributes.join('')}>${inside}</${type}>`;
}
