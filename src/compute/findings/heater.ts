import { requireNumber } from '../errors.ts';
import type { Finding, Level } from '../findings.ts';
import { HEATER_TOLERANCE } from '../parts/heater.ts';
import { figure, finding, say } from './check.ts';
import type { CheckContext } from './check.ts';

/**
 * Are heaters fed within their tolerance? Give the lowest and highest volts they get. `within` 5 % either way (what every
 * maker allows), `marginal` within 10 % (what some print), else `outside`.
 */
export function checkHeaterVolts(options: CheckContext & { readonly heater: string; readonly minVolts: number; readonly maxVolts: number; readonly ratedVolts: number }): Finding {
  const rated = requireNumber('ratedVolts', options.ratedVolts, { min: 0.1 });
  const lowest = requireNumber('minVolts', options.minVolts, { min: 0 });
  const highest = requireNumber('maxVolts', options.maxVolts, { min: lowest });
  const off = Math.max(1 - lowest / rated, highest / rated - 1);
  // A margin of a rounding error's size at 5 or 10 % exactly must not change the verdict.
  const level: Level = off <= HEATER_TOLERANCE.close + 1e-9 ? 'within' : off <= HEATER_TOLERANCE.wide + 1e-9 ? 'marginal' : 'outside';
  return finding({
    rule: 'heater-volts', level, context: options, source: { id: 'heater-cold-current' },
    what: `${options.heater} get ${say(lowest, 'V')} to ${say(highest, 'V')} and are rated ${say(rated, 'V')}: off by ${say(off, '%')} at worst.`,
    numbers: [figure('lowest', lowest, 'V'), figure('highest', highest, 'V'), figure('rated', rated, 'V'), figure('worst deviation', off, '')],
    why: 'Over-fed heaters shorten the valve’s life; under-fed ones starve its emission and poison the cathode.',
    todo: level === 'within' ? 'Nothing.' : 'Bring the rail nearer to the heaters’ rating, or make the string fit the rail.',
  });
}
