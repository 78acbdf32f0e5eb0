import { describe, expect, it } from 'vitest';
import { citedSources, lessonReferences, requireKnownReferences } from '../../src/components/lesson-references.ts';

const mdx = `---
aims: []
---

The <Term id="valley">valley</Term> decides<Source at="table 4" id="iec-1" />.

{/* <Term id="commented" /> */}

\`<Term id="quoted">\`

\`\`\`mdx
<Source id="shown" />
\`\`\`

<Caution id={'kills'} /> and again<Source id='iec-2' />, <Source
  id="iec-1"
/>
`;

describe('references of a lesson', () => {
  const references = lessonReferences(mdx);

  it('are found with their lines, outside comments and shown code', () => {
    expect(references).toEqual([
      { part: 'Term', id: 'valley', line: 5 },
      { part: 'Source', id: 'iec-1', line: 5 },
      { part: 'Caution', id: 'kills', line: 15 },
      { part: 'Source', id: 'iec-2', line: 15 },
      { part: 'Source', id: 'iec-1', line: 15 },
    ]);
  });

  it('number each source once, by first use', () => expect(citedSources(references)).toEqual(['iec-1', 'iec-2']));

  it('stop the build with file and line when they name nothing', () => {
    const known = { Term: new Set<string>(), Source: new Set(['iec-1', 'iec-2']), Caution: new Set(['kills']) };
    expect(() => requireKnownReferences({ file: 'a.mdx', references, known })).toThrow('a.mdx:5: <Term id="valley">');
    expect(() => requireKnownReferences({ file: 'a.mdx', references, known: { ...known, Term: new Set(['valley']) } })).not.toThrow();
  });
});
