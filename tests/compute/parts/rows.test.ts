import { describe, expect, it } from 'vitest';
import { ELECTROLYTICS } from '../../../src/compute/parts/capacitor.ts';
import { CONVERTERS } from '../../../src/compute/parts/converter.ts';
import { DIODES } from '../../../src/compute/parts/diode.ts';
import { FUSE_STANDARDS } from '../../../src/compute/parts/fuse.ts';
import { HEATERS } from '../../../src/compute/parts/heater.ts';
import { INSULATORS } from '../../../src/compute/parts/heatsink.ts';
import { LEDS } from '../../../src/compute/parts/led.ts';
import { MAINS_REGIONS } from '../../../src/compute/parts/mains.ts';
import { OPTOCOUPLERS } from '../../../src/compute/parts/optocoupler.ts';
import { LINEAR_REGULATORS } from '../../../src/compute/parts/regulator-linear.ts';
import { BUCKS } from '../../../src/compute/parts/regulator-switching.ts';
import { RELAY_COILS } from '../../../src/compute/parts/relay.ts';
import { RESISTORS } from '../../../src/compute/parts/resistor.ts';
import type { CatalogueRow } from '../../../src/compute/parts/row.ts';
import { CONSTRUCTIONS, INSULATION_CLASSES } from '../../../src/compute/parts/transformer.ts';
import { WIRES } from '../../../src/compute/parts/wire.ts';

const CATALOGUES: Readonly<Record<string, readonly CatalogueRow[]>> = {
  BUCKS, CONSTRUCTIONS, CONVERTERS, DIODES, ELECTROLYTICS, FUSE_STANDARDS, HEATERS, INSULATION_CLASSES, INSULATORS, LEDS, LINEAR_REGULATORS, MAINS_REGIONS,
  OPTOCOUPLERS, RELAY_COILS, RESISTORS, WIRES,
};

/** Every number inside a row, however deep. */
const numbers = (value: unknown): number[] =>
  typeof value === 'number' ? [value]
  : typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbers)
  : [];

describe.each(Object.entries(CATALOGUES))('%s', (_, rows) => {
  it('has rows with unique kebab-case ids, names and sources', () => {
    expect(rows.length).toBeGreaterThan(0);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
    for (const { id, name, source, basis } of rows) {
      expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(name.length).toBeGreaterThan(2);
      expect(source.id).toMatch(/^[a-z0-9-]+$/);
      expect(['rated', 'typical']).toContain(basis);
    }
  });

  it('holds only finite numbers', () => {
    expect(rows.flatMap(numbers).filter((value) => !Number.isFinite(value))).toEqual([]);
  });
});
