import type { Finding } from '../../compute/findings.ts';
import type { RankedCause } from '../../compute/tolerance/rank-causes.ts';

/** A cause this likely is worth naming. */
export const WORTH_NAMING = 0.02;
/** What burns or ruins, this likely, is a hazard; for fire the causes that burn count together. */
const WORTH_A_HAZARD = 0.2;

const sentences = (causes: readonly RankedCause[]): string => causes.map(({ cause }) => cause.words).join(' ');

function hazardOf(harm: 'fire' | 'damage', causes: readonly RankedCause[]): Finding {
  const [first] = causes;
  return {
    rule: first === undefined ? harm : `cause-${first.cause.id}`,
    level: 'hazard',
    what: `The readings fit this: ${sentences(causes)}`,
    numbers: [{ name: 'share of the likelihood', value: causes.reduce((sum, { share }) => sum + share, 0), unit: '' }],
    why: harm === 'fire' ? 'Many amps run where no fuse may see them; the winding burns while somebody takes the next reading.' : 'What is fed too much fails, now or in a week.',
    todo: `Switch off before anything else, and prove dead. ${causes.map(({ cause }) => cause.confirm.replace(/^Switch off at once\. /, '')).join(' ')}`,
    restsOn: ['measured', 'assumed'],
    source: { id: 'solved' },
    harm,
  };
}

export interface PowerOff {
  readonly findings: readonly Finding[];
  /** Set where one of the causes named may burn: no further reading under power until it is ruled out, dead. */
  readonly first?: string;
}

/** What a ranking asks for before anybody reads on. */
export function powerOffFirst(ranked: readonly RankedCause[]): PowerOff {
  const named = ranked.filter(({ share }, index) => index === 0 || share >= WORTH_NAMING);
  const burning = named.filter(({ cause }) => cause.harm === 'fire');
  const mayBurn = burning.reduce((sum, { share }) => sum + share, 0) >= WORTH_A_HAZARD;
  const ruining = named.filter(({ cause, share }) => cause.harm === 'damage' && share >= WORTH_A_HAZARD);
  return {
    findings: [...(mayBurn ? [hazardOf('fire', burning)] : []), ...ruining.map((each) => hazardOf('damage', [each]))],
    ...(burning.length === 0
      ? {}
      : { first: `Power off, and prove dead, before any further reading: one of these may burn. Rule out first, dead: ${burning.map(({ cause }) => cause.confirm.replace(/^Switch off at once\. /, '')).join(' ')} Whatever below needs power waits for that.` }),
  };
}
