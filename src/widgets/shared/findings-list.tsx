import type { VNode } from 'preact';
import { bySeverity, type Finding } from '../../compute/findings.ts';
import { HazardBox } from './hazard-box.tsx';
import { SourceNote } from './source-note.tsx';
import { Verdict } from './verdict-mark.tsx';

interface Props {
  readonly findings: readonly Finding[];
  readonly sources: Readonly<Record<string, string>>;
}

const RESTS: Record<Finding['restsOn'][number], string> = {
  measured: 'measured',
  rated: 'rated',
  typical: 'typical, not guaranteed',
  assumed: 'assumed, nobody has vouched for it',
};

/** After "within:" a sentence goes on in small letters; names and codes at its start keep theirs. */
const goingOn = (sentence: string): string => sentence.replace(/^(The|A|An|It|Its|Each|One|No)\b/, (word) => word.toLowerCase());

function Footing({ finding, sources }: { readonly finding: Finding; readonly sources: Props['sources'] }): VNode {
  return (
    <p class="rests-on">
      {finding.worstCorner !== undefined && `Worst at ${finding.worstCorner}. `}
      {finding.restsOn.length > 0 && `Rests on figures that are ${finding.restsOn.map((basis) => RESTS[basis]).join('; ')}. `}
      Source: <SourceNote source={finding.source} sources={sources} />.
    </p>
  );
}

function OneFinding({ finding, sources }: { readonly finding: Finding; readonly sources: Props['sources'] }): VNode {
  if (finding.level === 'hazard' && finding.harm !== undefined && finding.harm !== 'noise') {
    return (
      <li class="finding" data-level="hazard">
        <HazardBox harm={finding.harm} title={finding.what} instead={finding.todo}>
          <p>{finding.why}</p>
          <Footing finding={finding} sources={sources} />
        </HazardBox>
      </li>
    );
  }
  return (
    <li class="finding" data-level={finding.level}>
      <p>
        <Verdict level={finding.level} found={goingOn(finding.what)} />
      </p>
      <p>{finding.why}</p>
      {finding.level !== 'within' && <p class="finding-todo">{finding.todo}</p>}
      <Footing finding={finding} sources={sources} />
    </li>
  );
}

/** Findings, worst first. What is within its limits is folded away; nothing else ever is. */
export function Findings({ findings, sources }: Props): VNode {
  const sorted = [...findings].sort(bySeverity);
  const open = sorted.filter((finding) => finding.level !== 'within');
  const within = sorted.filter((finding) => finding.level === 'within');
  return (
    <>
      {open.length > 0 && (
        <ul class="findings">
          {open.map((finding, index) => (
            <OneFinding key={`${finding.rule}-${index}`} finding={finding} sources={sources} />
          ))}
        </ul>
      )}
      {within.length > 0 && (
        <details class="findings-within">
          <summary>
            {within.length === 1 ? 'One check is within its limits' : `${within.length} checks are within their limits`}
          </summary>
          <ul class="findings">
            {within.map((finding, index) => (
              <OneFinding key={`${finding.rule}-${index}`} finding={finding} sources={sources} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
