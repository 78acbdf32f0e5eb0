import { GROUND } from '../../../src/compute/index.ts';
import type { Element } from '../../../src/compute/index.ts';

/** Repeatable numbers from 0 to 1 (mulberry32). */
export function seeded(seed: number): () => number {
  let s = seed | 0;
  return () => {
    s = (s + 0x6d2b79f5) | 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const KINDS = [
  'resistor', 'resistor', 'capacitor', 'capacitor', 'inductor', 'sine', 'dc', 'current', 'diode', 'diode', 'diode', 'switch', 'load',
] as const;

/** A circuit nobody designed: up to ten elements of any kind and size between up to six nodes, some of it absurd. */
export function randomCircuit(random: () => number): Element[] {
  const spread = (low: number, high: number): number => low * (high / low) ** random();
  const nodes = [GROUND, ...Array.from({ length: 2 + Math.floor(random() * 5) }, (_, i) => `n${i}`)];
  const node = (): string => nodes[Math.floor(random() * nodes.length)] as string;
  return Array.from({ length: 3 + Math.floor(random() * 8) }, (_, i): Element => {
    const first = node();
    let second = node();
    // Most elements join two different nodes; a few are left shorted upon themselves.
    if (second === first && random() < 0.9) second = nodes[(nodes.indexOf(first) + 1) % nodes.length] as string;
    const kind = KINDS[Math.floor(random() * KINDS.length)] as (typeof KINDS)[number];
    const base = { name: `${kind}${i}`, between: [first, second] as const };
    const some = random() < 0.4 ? 0 : spread(1e-3, 10);
    switch (kind) {
      case 'resistor':
        return { kind, ...base, ohms: random() < 0.05 ? 0 : spread(1e-3, 1e6) };
      case 'capacitor':
        return { kind, ...base, farads: spread(1e-9, 0.1), ohms: some };
      case 'inductor':
        return { kind, ...base, henries: spread(1e-6, 10), ohms: some };
      case 'sine':
        return {
          kind, ...base, peakVolts: spread(0.1, 400), degrees: 360 * random(), ohms: some,
          crestFactor: random() < 0.3 ? 1.1 + 0.3 * random() : undefined,
        };
      case 'dc':
        return { kind, ...base, volts: spread(0.1, 100), ohms: some };
      case 'current':
        return { kind, ...base, amps: (random() - 0.5) * spread(1e-3, 10) };
      case 'diode':
        return {
          kind, ...base, saturationAmps: spread(1e-15, 1e-3), emission: 1 + random(), ohms: some / 10,
          breakdownVolts: random() < 0.2 ? spread(3, 100) : undefined,
        };
      case 'switch':
        return { kind, ...base, closed: random() < 0.5 };
      case 'load':
        return { kind, ...base, watts: spread(0.01, 30), minVolts: spread(1, 10) };
    }
  });
}
