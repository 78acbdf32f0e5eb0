import type { Element, RectifierOptions } from '../../../src/compute/index.ts';

/** The same rectifier drawn element by element, for the general solver: rail at node 'rail', winding current(s) named. */
export function rectifierNetwork({ topology, winding, crestFactor, diode, reservoir, load }: RectifierOptions): Element[] {
  const peakVolts = winding.openCircuitVolts * (crestFactor ?? Math.SQRT2);
  const source = (name: string, between: [string, string]): Element => ({
    kind: 'sine', name, between, peakVolts, ohms: winding.ohms, crestFactor,
  });
  const valve = (name: string, between: [string, string]): Element => ({ kind: 'diode', name, between, ...diode });
  const store = (name: string, between: [string, string]): Element => ({
    kind: 'capacitor', name, between, farads: reservoir.farads, ohms: reservoir.ohms,
  });
  const minus = topology === 'doubler' ? 'minus' : 'ground';
  const between: [string, string] = ['rail', minus];
  const loadElement: Element =
    'amps' in load
      ? { kind: 'current', name: 'load', between, amps: load.amps }
      : 'ohms' in load
        ? { kind: 'resistor', name: 'load', between, ohms: load.ohms }
        : { kind: 'load', name: 'load', between, watts: load.watts, minVolts: 3 };
  switch (topology) {
    case 'bridge':
      return [
        source('winding', ['a', 'b']),
        valve('d1', ['a', 'rail']), valve('d2', ['b', 'rail']), valve('d3', ['ground', 'a']), valve('d4', ['ground', 'b']),
        store('reservoir', ['rail', 'ground']), loadElement,
      ];
    case 'centre-tap':
      return [
        source('winding', ['a', 'ground']), source('other half', ['ground', 'b']),
        valve('d1', ['a', 'rail']), valve('d2', ['b', 'rail']),
        store('reservoir', ['rail', 'ground']), loadElement,
      ];
    case 'half-wave':
      return [source('winding', ['a', 'ground']), valve('d1', ['a', 'rail']), store('reservoir', ['rail', 'ground']), loadElement];
    case 'doubler':
      return [
        source('winding', ['a', 'ground']),
        valve('d1', ['a', 'rail']), valve('d2', ['minus', 'a']),
        store('reservoir', ['rail', 'ground']), store('reservoir 2', ['ground', 'minus']), loadElement,
      ];
  }
}
