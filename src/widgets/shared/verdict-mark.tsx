import type { VNode } from 'preact';
import type { Level } from '../../compute/findings.ts';

/** Five outlines on a 24 by 24 grid that differ without colour, at 16 pixels and in print. */
const SHAPES: Record<Level, VNode> = {
  within: (
    <>
      <circle cx="12" cy="12" r="9.75" fill="none" stroke="currentColor" stroke-width="2.25" />
      <path d="m7.5 12.4 3.2 3.2 5.9-6.6" fill="none" stroke="currentColor" stroke-width="2.5" stroke-linecap="round" stroke-linejoin="round" />
    </>
  ),
  marginal: (
    <>
      <circle cx="12" cy="12" r="9.75" fill="none" stroke="currentColor" stroke-width="2.25" />
      <path d="M12 2.25a9.75 9.75 0 0 0 0 19.5Z" fill="currentColor" />
    </>
  ),
  outside: (
    <>
      <circle cx="12" cy="12" r="9.5" fill="none" stroke="currentColor" stroke-width="2.75" />
      <path d="m5.4 18.6 13.2-13.2" stroke="currentColor" stroke-width="2.75" />
    </>
  ),
  hazard: (
    <>
      <path class="sign-black" d="M12 2.6 22.6 21H1.4Z" fill="#14161a" stroke="#14161a" stroke-width="2" stroke-linejoin="round" />
      <path class="sign-yellow" d="M12 5.2 20.2 19.5H3.8Z" fill="#f9c80e" />
      <path class="sign-black" d="M10.8 9.6h2.4l-.5 5.2h-1.4ZM10.9 16h2.2v2.1h-2.2Z" fill="#14161a" />
    </>
  ),
  'not assessed': (
    <circle cx="12" cy="12" r="9.75" fill="none" stroke="currentColor" stroke-width="2.75" stroke-linecap="round" stroke-dasharray="0.1 5" />
  ),
};

/**
 * The mark of a level. It stands beside the level's name, never in its place, so it is not read out.
 * Its size and colour come from the text around it.
 */
export function VerdictMark({ level }: { readonly level: Level }): VNode {
  return (
    <svg class="verdict-mark" viewBox="0 0 24 24" width="18" height="18" aria-hidden="true" focusable="false">
      {SHAPES[level]}
    </svg>
  );
}

/** A level's mark and name, and what was found in a few words: "within: holds, 1.5 V spare". */
export function Verdict({ level, found }: { readonly level: Level; readonly found?: string | undefined }): VNode {
  return (
    <span class="verdict" data-level={level}>
      <VerdictMark level={level} />
      <span>{found === undefined ? level : `${level}: ${found}`}</span>
    </span>
  );
}
