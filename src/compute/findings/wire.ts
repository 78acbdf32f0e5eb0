import { requireNumber } from '../errors.ts';
import { levelOfMargin } from '../findings.ts';
import type { Finding, Level } from '../findings.ts';
import { figure, finding, levelOfLoad, say } from './check.ts';
import type { CheckContext } from './check.ts';

/** Does the wire carry its current? RMS. `within` to 0.8 of its figure, `marginal` to it, else `outside`. */
export function checkWireCurrent(options: CheckContext & { readonly rmsAmps: number; readonly capacityAmps: number }): Finding {
  const amps = requireNumber('rmsAmps', options.rmsAmps, { min: 0 });
  const capacity = requireNumber('capacityAmps', options.capacityAmps, { min: 0 });
  const level = levelOfLoad({ value: amps, limit: capacity, aim: 0.8 });
  return finding({
    rule: 'wire-current', level, context: options, source: { id: 'wire-table-awg' },
    what: `The wire carries ${say(amps, 'A')} RMS at most, between winding and rectifier; laid like this it is good for ${say(capacity, 'A')}.`,
    numbers: [figure('RMS', amps, 'A'), figure('good for', capacity, 'A')],
    why: 'Wire heats by RMS current, and charging pulses have far more of it than the load’s DC. Tables for a single wire in open air are generous.',
    todo: level === 'within' ? 'Nothing.' : 'Take the next thicker wire, or keep it out of the bundle.',
  });
}

/** Is the drop over the run, there and back, as small as wanted? `within` to 0.8 of it, `marginal` to it, else `outside`. */
export function checkWireDrop(options: CheckContext & { readonly dropVolts: number; readonly wantedVolts: number }): Finding {
  const drop = requireNumber('dropVolts', options.dropVolts, { min: 0 });
  const wanted = requireNumber('wantedVolts', options.wantedVolts, { min: 0 });
  const level = levelOfLoad({ value: drop, limit: wanted, aim: 0.8 });
  return finding({
    rule: 'wire-drop', level, context: options, source: { id: 'wire-table-awg' },
    what: `The run drops ${say(drop, 'V')} there and back; at most ${say(wanted, 'V')} is wanted.`,
    numbers: [figure('drop', drop, 'V'), figure('wanted', wanted, 'V')],
    why: 'What the wire drops the load lacks, and the drop moves with every relay that comes on.',
    todo: level === 'within' ? 'Nothing.' : 'Shorten the run or take thicker wire.',
  });
}

/** Above its insulation's limit by this much a wire is called a fire: it softens, smokes and bares itself. */
const SCORCH_KELVIN = 50;

/** Is the wire cool enough for its insulation? `within` with 15 K to spare, `marginal` to the limit, `outside`, and `hazard` (fire) 50 K beyond. */
export function checkWireTemperature(options: CheckContext & { readonly celsius: number; readonly limitCelsius: number; readonly airCelsius: number }): Finding {
  const celsius = requireNumber('celsius', options.celsius);
  const limit = requireNumber('limitCelsius', options.limitCelsius);
  const level: Level = celsius > limit + SCORCH_KELVIN ? 'hazard' : levelOfMargin({ margin: limit - celsius, wanted: 15 });
  return finding({
    rule: 'wire-temperature', level, context: options, source: { id: 'wire-convection' },
    what: `The copper reaches ${say(celsius, '°C')} in air of ${say(options.airCelsius, '°C')}; its insulation is good for ${say(limit, '°C')}.`,
    numbers: [figure('copper', celsius, '°C'), figure('limit', limit, '°C')],
    why: 'Insulation over its limit hardens and cracks in months, and far over it melts onto the next wire.',
    todo: level === 'within' ? 'Nothing.' : level === 'hazard' ? 'Do not run it: take wire of several times the section.' : 'Take thicker wire, insulation for 105 °C, or a cooler way.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/** What an IEC fuse may carry for an hour without opening, over its rating. */
const FUSE_HOUR_RATIO = 1.5;

/**
 * Does the fuse open before the wire burns? `within` when the wire carries what the fuse lets through for an hour (1.5
 * times its rating), `marginal` when it carries the rating; a `hazard` (fire) below that, and with no fuse at all where a
 * short draws more than the wire carries.
 */
export function checkWireFuse(options: CheckContext & { readonly fuseAmps?: number; readonly capacityAmps: number; readonly shortAmps: number }): Finding {
  const capacity = requireNumber('capacityAmps', options.capacityAmps, { min: 0 });
  const short = requireNumber('shortAmps', options.shortAmps, { min: 0 });
  const { fuseAmps } = options;
  const lets = fuseAmps === undefined ? short : Math.min(short, FUSE_HOUR_RATIO * fuseAmps);
  const level: Level = lets <= capacity ? 'within' : fuseAmps !== undefined && fuseAmps <= capacity ? 'marginal' : 'hazard';
  return finding({
    rule: 'wire-fuse', level, context: options, source: { id: 'iec-60127-2' },
    what: fuseAmps === undefined
      ? `Nothing but the wire stands in the way of a short: ${say(short, 'A')}, on wire good for ${say(capacity, 'A')}.`
      : `A fuse of ${say(fuseAmps, 'A')} may let ${say(lets, 'A')} through for an hour; the wire is good for ${say(capacity, 'A')}.`,
    numbers: [figure('let through', lets, 'A'), figure('good for', capacity, 'A')],
    why: 'A wire thinner than its fuse is the fuse, and burns where it lies: in a bundle, against the chassis, beside the high voltage.',
    todo: level === 'within' ? 'Nothing.' : level === 'marginal' ? 'Take the next thicker wire where it costs nothing.' : 'Fit a fuse at the winding that the wire outlasts, or thicker wire. Never a larger fuse.',
    ...(level === 'hazard' ? { harm: 'fire' as const } : {}),
  });
}

/** Is the noise on a ground that something sensitive shares small enough? Give the peak of its moving part. `within` to half, `marginal` to all of what is put up with, else `outside` (noise). */
export function checkSharedGround(options: CheckContext & { readonly peakVolts: number; readonly toleratedVolts: number; readonly metres: number }): Finding {
  const peak = requireNumber('peakVolts', options.peakVolts, { min: 0 });
  const tolerated = requireNumber('toleratedVolts', options.toleratedVolts, { min: 0 });
  const level = levelOfLoad({ value: peak, limit: tolerated, aim: 0.5 });
  return finding({
    rule: 'shared-ground', level, context: options, source: { id: 'solved' },
    what: `Along ${say(options.metres, 'm')} of shared wire the current puts ${say(peak, 'V')} at its peak in series with the signal; ${say(tolerated, 'V')} is put up with.`,
    numbers: [figure('peak', peak, 'V'), figure('put up with', tolerated, 'V')],
    why: 'To a stage that is grounded along that wire the drop is signal, and it is amplified with the rest. Pulses buzz; a sine would hum.',
    todo: level === 'within' ? 'Nothing; compare the noise before and after.' : 'Take the rectifier’s return to the reservoir’s minus first, then one wire from there to the star, and ground the first stage by a wire of its own.',
    ...(level === 'outside' ? { harm: 'noise' as const } : {}),
  });
}
