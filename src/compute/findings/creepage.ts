import { requireNumber } from '../errors.ts';
import type { Finding } from '../findings.ts';
import { figure, finding, say } from './check.ts';
import type { CheckContext } from './check.ts';

/**
 * Least distance along a surface for reinforced insulation at about 250 V RMS (pollution degree 2, material group III), and
 * what to leave in a hot and dusty amplifier. The first was read in a test report to the standard; the second is practice.
 */
export const REINFORCED_CREEPAGE_METRES = 5e-3;
export const WANTED_CREEPAGE_METRES = 8e-3;
/** The figures above hold to this working voltage. */
const MOST_VOLTS = 264;

/**
 * Distance along surfaces between anything on the mains side and anything on the rail's side: pins, pads, solder, wire
 * ends. `within` from 8 mm, `marginal` from 5 mm, below it a `hazard` (shock); `not assessed` while nobody has measured
 * it, or above 264 V, where the standard asks for more. Metres.
 */
export function checkCreepage(options: CheckContext & { readonly metres?: number; readonly workingVolts: number }): Finding {
  const volts = requireNumber('workingVolts', options.workingVolts, { min: 0, max: 1000 });
  const base = {
    rule: 'creepage', source: { id: 'iec-62368-1', at: 'creepage, reinforced, pollution degree 2' },
    why: 'Dust and damp make a path along a surface. Where it is short, the mains comes to the rail and to whatever hand touches it.',
  } as const;
  if (options.metres === undefined) {
    return finding({
      ...base, level: 'not assessed', numbers: [], context: { ...options, restsOn: ['assumed'] },
      what: 'Nobody has measured the distance along the board between the mains side and the rail’s side.',
      todo: `Measure it along the surface, solder and wire ends included: ${say(WANTED_CREEPAGE_METRES, 'm')} is wanted, and ${say(REINFORCED_CREEPAGE_METRES, 'm')} is the least.`,
    });
  }
  const metres = requireNumber('metres', options.metres, { min: 0, max: 1 });
  const beyond = volts > MOST_VOLTS + 1e-9;
  const level = metres < REINFORCED_CREEPAGE_METRES ? 'hazard' : beyond ? 'not assessed' : metres < WANTED_CREEPAGE_METRES ? 'marginal' : 'within';
  return finding({
    ...base, level, context: { ...options, restsOn: ['measured'] },
    numbers: [figure('distance', metres, 'm'), figure('least', REINFORCED_CREEPAGE_METRES, 'm'), figure('wanted', WANTED_CREEPAGE_METRES, 'm')],
    what: `Between mains and rail lie ${say(metres, 'm')} along the surface; ${say(REINFORCED_CREEPAGE_METRES, 'm')} is the least${beyond ? ` at ${say(MOST_VOLTS, 'V')}, and here stand ${say(volts, 'V')}` : ` and ${say(WANTED_CREEPAGE_METRES, 'm')} is wanted in a hot, dusty amp`}.`,
    todo: level === 'within' ? 'Nothing; see that no wire end or screw shortens it.' : level === 'hazard' ? 'Do not power it. Use a board laid out for the module, with a slot or a barrier, and route no copper between its sides.' : 'Add a slot or a barrier, and trim solder and wire ends; read the standard for the voltage at hand.',
    ...(level === 'hazard' ? { harm: 'shock' as const } : {}),
  });
}
