import type { VNode } from 'preact';
import type { Source } from '../../compute/findings.ts';
import { sitePath } from './site-path.ts';

export interface SourceNoteProps {
  readonly source: Source;
  readonly sources: Readonly<Record<string, string>>;
}

/** Where a figure or rule comes from: solved here, or an entry of the sources page. */
export function SourceNote({ source, sources }: SourceNoteProps): VNode {
  if (source.id === 'solved') return <>solved from the circuit</>;
  const title = sources[source.id];
  const at = source.at === undefined ? '' : `, ${source.at}`;
  if (title === undefined) return <>{`${source.id}${at}`}</>;
  return (
    <>
      <a href={sitePath(`sources/#${source.id}`)}>{title}</a>
      {at}
    </>
  );
}
