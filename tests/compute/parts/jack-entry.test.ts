import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/errors.ts';
import type { Element } from '../../../src/compute/network/elements.ts';
import { solveTransient } from '../../../src/compute/network/solve-transient.ts';
import { entryTimes, joinedContact } from '../../../src/compute/parts/jack-entry.ts';

describe('a contact joined to the sleeve', () => {
  it('passes what Ohm says, up to what the supply gives', () => {
    expect(joinedContact({ volts: 12, loadOhms: 360, entryOhms: 10, cableOhms: 0.5, limitAmps: 1 })).toEqual({ amps: 12 / 370.5, entryWatts: 10 * (12 / 370.5) ** 2, share: 360 / 370.5 });
    expect(joinedContact({ volts: 12, loadOhms: 0, entryOhms: 0, cableOhms: 0, limitAmps: 0.46 })).toEqual({ amps: 0.46, entryWatts: 0, share: 0 });
  });

  it('refuses what is no resistance', () => {
    expect(() => joinedContact({ volts: 12, loadOhms: -1, entryOhms: 0, cableOhms: 0, limitAmps: 1 })).toThrow(InputError);
    expect(() => joinedContact({ volts: 12, loadOhms: Number.NaN, entryOhms: 0, cableOhms: 0, limitAmps: 1 })).toThrow(InputError);
  });
});

describe('an input behind a jack', () => {
  const parts = { pullUpOhms: 10e3, entryOhms: 1e3, cableOhms: 1, entryFarads: 100e-9, cableFarads: 1e-9 };

  it('rises and falls as the circuit followed in time does, within 2 %', () => {
    const times = entryTimes(parts);
    const elements = (isClosed: boolean): readonly Element[] => [
      { kind: 'dc', name: 'rail', between: ['rail', 'ground'], volts: 12 },
      { kind: 'resistor', name: 'pull-up', between: ['rail', 'input'], ohms: parts.pullUpOhms },
      { kind: 'capacitor', name: 'input', between: ['input', 'ground'], farads: parts.entryFarads, initialVolts: isClosed ? 12 : 12 * times.lowRatio },
      { kind: 'resistor', name: 'entry', between: ['input', 'jack'], ohms: parts.entryOhms },
      { kind: 'capacitor', name: 'cable', between: ['jack', 'ground'], farads: parts.cableFarads, initialVolts: isClosed ? 12 : (12 * times.lowRatio * parts.cableOhms) / (parts.entryOhms + parts.cableOhms) },
      ...(isClosed ? [{ kind: 'resistor', name: 'switch', between: ['jack', 'ground'], ohms: parts.cableOhms } as const] : []),
    ];
    const crossing = (isClosed: boolean, seconds: number): number => {
      const { seconds: at, volts } = solveTransient({ elements: elements(isClosed), seconds });
      const input = volts['input'] ?? new Float64Array();
      const index = input.findIndex((value) => (isClosed ? value <= 6 : value >= 6));
      const [v0, v1, t0, t1] = [input[index - 1] ?? 0, input[index] ?? 0, at[index - 1] ?? 0, at[index] ?? 0];
      return t0 + ((6 - v0) / (v1 - v0)) * (t1 - t0);
    };
    expect(Math.abs(crossing(false, 3e-3) / times.riseSeconds - 1)).toBeLessThan(0.02);
    expect(Math.abs(crossing(true, 5e-4) / times.fallSeconds - 1)).toBeLessThan(0.02);
  });

  it('never gets there when the closed switch leaves it above the threshold', () => {
    expect(entryTimes({ ...parts, entryOhms: 12e3 }).fallSeconds).toBe(Infinity);
  });

  it('has a corner only with both a resistor and a capacitor', () => {
    expect(entryTimes(parts).cornerHertz).toBeCloseTo(1591.5, 0);
    expect(entryTimes({ ...parts, entryOhms: 0 })).not.toHaveProperty('cornerHertz');
    expect(entryTimes({ ...parts, entryFarads: 0 })).not.toHaveProperty('cornerHertz');
  });
});
