import { handOnPath } from './address.ts';
import type { Face, InitialCase } from './definition.ts';
import type { HandOnLink } from './hand-on.tsx';

/**
 * A link that opens another calculator on this one's case: the values of the fields they share, and what is new.
 * `from` and `given` hold SI numbers; what the other has no field for is left out.
 */
export function handOn(to: Face, options: { readonly what: string; readonly from?: object; readonly given?: InitialCase }): HandOnLink {
  const { from = {}, given = {} } = options;
  const shared = Object.fromEntries(Object.entries(from).filter(([name]) => Object.hasOwn(to.fields, name))) as InitialCase;
  return { what: options.what, question: to.question, path: handOnPath(to, { ...shared, ...given }) };
}
