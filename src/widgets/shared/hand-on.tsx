import type { VNode } from 'preact';
import { sitePath } from './site-path.ts';

/** Where a result is taken next: the calculator that needs it, opened on it. */
export interface HandOnLink {
  /** What goes along: "76 mA". */
  readonly what: string;
  /** The question it is taken to. */
  readonly question: string;
  /** From the site's root. */
  readonly path: string;
}

export function HandOn({ links, instance }: { readonly links: readonly HandOnLink[]; readonly instance: string }): VNode {
  return (
    // Its calculator's question is part of its name: a lesson may hold two calculators, each with links of its own.
    <nav class="hand-on" aria-labelledby={`${instance}-hand-on ${instance}-question`}>
      <p id={`${instance}-hand-on`}>Take this on</p>
      <ul>
        {links.map((link) => (
          <li key={link.path}>
            <a href={sitePath(link.path)}>{`${link.what} → ${link.question}`}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
