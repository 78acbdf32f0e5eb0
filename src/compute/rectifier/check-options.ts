import { InputError, requireNumber } from '../errors.ts';
import type { RectifierOptions } from './rectifier-types.ts';

const TOPOLOGIES = ['bridge', 'centre-tap', 'half-wave', 'doubler'];

/** Throws `InputError` for the first option that is out of its range. */
export function checkOptions({ topology, winding, hertz, diode, reservoir, load }: RectifierOptions): void {
  if (!TOPOLOGIES.includes(topology)) {
    throw new InputError('topology', topology, { expected: TOPOLOGIES.join(', ') });
  }
  requireNumber('winding.openCircuitVolts', winding.openCircuitVolts, { min: 0.1, max: 2000 });
  requireNumber('winding.ohms', winding.ohms, { min: 0, max: 1e5 });
  requireNumber('hertz', hertz, { min: 1, max: 1000 });
  requireNumber('diode.saturationAmps', diode.saturationAmps, { min: 1e-18, max: 0.1 });
  requireNumber('diode.emission', diode.emission, { min: 0.01, max: 10 });
  requireNumber('diode.ohms', diode.ohms, { min: 0, max: 1000 });
  requireNumber('reservoir.farads', reservoir.farads, { min: 1e-9, max: 10 });
  requireNumber('reservoir.ohms', reservoir.ohms, { min: 0, max: 1000 });
  if ('amps' in load) requireNumber('load.amps', load.amps, { min: 0, max: 1000 });
  else if ('ohms' in load) requireNumber('load.ohms', load.ohms, { min: 1e-3, max: 1e12 });
  else if ('watts' in load) requireNumber('load.watts', load.watts, { min: 0, max: 1e5 });
  else throw new InputError('load', load, { expected: 'amps, ohms or watts' });
}
