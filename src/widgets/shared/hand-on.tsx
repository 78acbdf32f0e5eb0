import type { VNode } from 'preact';

/** Where a result is taken next: the calculator that needs it, opened on it. */
export interface HandOnLink {
  /** What goes along: "76 mA". */
  readonly what: string;
  /** The question it is taken to. */
  readonly question: string;
  readonly href: string;
}

export function HandOn({ links, instance }: { readonly links: readonly HandOnLink[]; readonly instance: string }): VNode {
  return (
    <nav class="hand-on" aria-labelledby={`${instance}-hand-on`}>
      <p id={`${instance}-hand-on`}>Take this on</p>
      <ul>
        {links.map((link) => (
          <li key={link.href}>
            <a href={link.href}>{`${link.what} → ${link.question}`}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
