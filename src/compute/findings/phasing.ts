import { requireNumber } from '../errors.ts';
import type { Finding } from '../findings.ts';
import { shortCircuitAmps } from '../parts/transformer.ts';
import { figure, finding, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Volts between free ends, over those of one secondary, up to which two secondaries count as equal and in phase (choice). */
const NEXT_TO_NOTHING = 0.05;

/**
 * Are two secondaries joined the right way round? One end of each is joined, and `freeEndVolts` is read between the other
 * two with the mains on and nothing connected behind; left out while nobody has read it (`not assessed`).
 *
 * In parallel the free ends must read next to nothing before they are joined: anything near twice one secondary is a
 * `hazard` (fire), since joined they short each other round their own copper; what lies between is `outside`. In series
 * they must read the sum: next to nothing is `outside`, a dead rail. One secondary, or two about a centre tap, has
 * nothing to find. `winding` is the joined winding as it would be in phase. Source: solved, a loop of two sources.
 */
export function checkPhasing(
  options: CheckContext & {
    readonly secondaries: 'one' | 'two-in-series' | 'two-in-parallel' | 'two-as-centre-tap';
    /** Rated RMS of one. */
    readonly secondaryVolts: number;
    readonly winding: { readonly openCircuitVolts: number; readonly ohms: number };
    readonly freeEndVolts?: number;
  },
): readonly Finding[] {
  const { secondaries, winding, freeEndVolts } = options;
  if (secondaries === 'one' || secondaries === 'two-as-centre-tap') return [];
  const volts = requireNumber('secondaryVolts', options.secondaryVolts, { min: 0.1, max: 500 });
  const parallel = secondaries === 'two-in-parallel';
  const base = { rule: 'secondary-phasing', source: { id: 'solved' } } as const;
  const loop = parallel ? loopAmps(winding) : undefined;
  const numbers = loop === undefined ? [] : [figure('round the loop, out of phase', loop, 'A')];
  const danger = loop === undefined ? 'they cancel each other and the rail is dead' : `${say(loop, 'A')} RMS would run round the loop`;
  if (freeEndVolts === undefined) {
    return [
      finding({
        ...base, level: 'not assessed', numbers, context: options,
        what: `Two secondaries in ${parallel ? 'parallel' : 'series'}, and nobody has read the volts between their free ends: joined out of phase, ${danger}.`,
        why: parallel ? 'Nothing but their copper limits that current, and the primary fuse sees little of it.' : 'The rail is then dead, and nothing says why.',
        todo: parallel ? 'Join one end of each, power up through a series lamp, and measure between the free ends: join them only when it reads next to nothing.' : 'Join one end of each, and measure across the free ends before the rectifier is connected.',
      }),
    ];
  }
  const read = requireNumber('freeEndVolts', freeEndVolts, { min: 0, max: 1000 });
  const context = { ...options, restsOn: ['measured'] as const };
  const readFigure = figure('between the free ends', read, 'V');
  if (parallel) {
    const out = read > volts;
    const level = read <= NEXT_TO_NOTHING * volts ? 'within' : out ? 'hazard' : 'outside';
    return [
      finding({
        ...base, level, context, numbers: [readFigure, ...numbers],
        what: `The free ends of the two secondaries read ${say(read, 'V')}: ${level === 'within' ? 'they are in phase and may be joined' : out ? `they are out of phase, and joined ${danger}` : 'they are not equal'}.`,
        why: 'Joined, the difference between the two drives a current round them that nothing but their copper limits; the primary fuse sees little of it.',
        todo: level === 'within' ? 'Nothing.' : out ? 'Turn one of them round and measure again; join the free ends only when they read next to nothing.' : 'Do not parallel windings that differ: use one of them, or another transformer.',
        ...(out ? { harm: 'fire' as const } : {}),
      }),
    ];
  }
  const level = read >= 1.8 * volts ? 'within' : 'outside';
  return [
    finding({
      ...base, level, context, numbers: [readFigure],
      what: `Across the free ends of the two secondaries stand ${say(read, 'V')}: ${level === 'within' ? 'they add, as they should' : 'they do not add, one is the wrong way round'}.`,
      why: 'Out of phase the two cancel, and the rail is dead.',
      todo: level === 'within' ? 'Nothing.' : 'Turn one of them round and measure again.',
    }),
  ];
}

/** Two equal sources pushing the same way round a loop of their own resistances: 2·V over 2·R, R that of one, twice the joined one. */
const loopAmps = ({ openCircuitVolts, ohms }: { readonly openCircuitVolts: number; readonly ohms: number }): number =>
  shortCircuitAmps({ openCircuitVolts, ohms: Math.max(2 * ohms, 1e-4) });
