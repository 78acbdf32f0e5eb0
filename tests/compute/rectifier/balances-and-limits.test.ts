import { describe, expect, it } from 'vitest';
import { InputError, SolveError, solveRectifier, waveformMean, waveformMeanProduct, waveformRms } from '../../../src/compute/index.ts';
import type { RectifierOptions, RectifierTopology } from '../../../src/compute/index.ts';
import { seeded } from '../network/seeded-circuits.ts';
import { BRIDGE_4A, N400X, N540X, N5819, N5822 } from './diode-sets.ts';

const TOPOLOGIES: readonly RectifierTopology[] = ['bridge', 'centre-tap', 'half-wave', 'doubler'];
const THERMAL_VOLTS = 0.025852;
const BASE: RectifierOptions = {
  topology: 'bridge',
  winding: { openCircuitVolts: 10.8, ohms: 2.7 },
  hertz: 50,
  diode: N400X,
  reservoir: { farads: 2200e-6, ohms: 0.1 },
  load: { amps: 0.3 },
};
/** Diode paths that feed the rail in one cycle. */
const PATHS = { bridge: 2, 'centre-tap': 2, 'half-wave': 1, doubler: 1 } as const;

/** Supplies as they are met, and somewhat beyond: heater windings to big toroids, thin loads to heavy ones. */
function randomSupply(random: () => number): RectifierOptions {
  const spread = (low: number, high: number): number => low * (high / low) ** random();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const topology = pick(TOPOLOGIES);
  const openCircuitVolts = spread(3, 60);
  const amps = spread(1e-3, 10);
  const railVolts = openCircuitVolts * 1.4 * (topology === 'doubler' ? 2 : 1);
  return {
    topology,
    winding: { openCircuitVolts, ohms: Math.max(0.01, (spread(0.002, 0.2) * openCircuitVolts) / amps) },
    hertz: pick([50, 60]),
    crestFactor: random() < 0.5 ? undefined : 1.2 + 0.21 * random(),
    diode: pick([N400X, N540X, BRIDGE_4A, N5819, N5822]),
    reservoir: { farads: (spread(1, 100) * amps) / (20 * railVolts), ohms: random() < 0.3 ? 0 : Math.min(100, (spread(0.001, 0.1) * openCircuitVolts) / amps) },
    load: pick([{ amps }, { ohms: railVolts / amps }, { watts: railVolts * amps * 0.5 }]),
  };
}

describe('balances over a cycle, 300 seeded supplies', () => {
  it('charge: what the diodes bring is what the load takes', () => {
    const random = seeded(11);
    let solved = 0;
    for (let n = 0; n < 300; n += 1) {
      const options = randomSupply(random);
      try {
        const { diode, load } = solveRectifier(options);
        solved += 1;
        expect(Math.abs((diode.meanAmps * PATHS[options.topology]) / load.meanAmps - 1), JSON.stringify(options)).toBeLessThan(1e-3);
      } catch (error) {
        if (!(error instanceof SolveError) || error.reason !== 'overloaded') throw error;
      }
    }
    expect(solved).toBeGreaterThan(270);
  });

  it('energy: the source gives what winding, diodes, reservoir and load turn to heat', () => {
    const random = seeded(12);
    for (let n = 0; n < 300; n += 1) {
      const options = randomSupply(random);
      const { topology, winding, diode, reservoir, load } = options;
      if (!('ohms' in load)) continue;
      const s = solveRectifier(options);
      // The heat of blocked diodes, which the sum leaves out, counts at milliamperes only.
      if (s.load.meanAmps < 1000 * diode.saturationAmps) continue;
      const { sourceVolts, windingAmps, railVolts } = s.waveform;
      // A centre tap's waveform is of one half, which gives half of the power.
      const given = waveformMeanProduct(sourceVolts, windingAmps) * (topology === 'centre-tap' ? 2 : 1);
      const loadWatts = waveformRms(railVolts) ** 2 / load.ohms;
      const windings = topology === 'centre-tap' ? 2 : 1;
      const reservoirs = topology === 'doubler' ? 2 : 1;
      const diodes = { bridge: 4, 'centre-tap': 2, 'half-wave': 1, doubler: 2 }[topology];
      // Junction heat from the plotted current; a bridge or doubler shows its diodes by the sign of the winding's.
      const junction = windingAmps.map((i) => (i > 0 ? i * diode.emission * THERMAL_VOLTS * Math.log1p(i / diode.saturationAmps) : 0));
      const heat =
        loadWatts + windings * winding.ohms * s.winding.rmsAmps ** 2 + reservoirs * reservoir.ohms * s.reservoir.rmsAmps ** 2 +
        diodes * (waveformMean(junction) + diode.ohms * s.diode.rmsAmps ** 2);
      expect(Math.abs(given / heat - 1), JSON.stringify(options)).toBeLessThan(5e-3);
    }
  });

  it('the plotted cycle and the figures are the same solution', () => {
    const random = seeded(13);
    for (let n = 0; n < 100; n += 1) {
      const options = randomSupply(random);
      if (!('ohms' in options.load)) continue;
      const s = solveRectifier(options);
      expect(Math.abs(waveformMean(s.waveform.railVolts) / s.rail.meanVolts - 1)).toBeLessThan(5e-4);
      expect(Math.abs(waveformRms(s.waveform.windingAmps) / s.winding.rmsAmps - 1)).toBeLessThan(1e-2);
      expect(waveformRms(s.waveform.sourceVolts) / options.winding.openCircuitVolts).toBeCloseTo(1, 3);
      expect(s.waveform.sourceVolts[0]).toBe(0);
      expect(s.waveform.sourceVolts[1]).toBeGreaterThan(0);
    }
  });
});

describe('no load', () => {
  // With leakage −Is at rest and no series resistance that matters, the mean diode current vanishes where
  // V = N·ln I0(peak/N), N = n·VT per path; I0 is the modified Bessel function (its asymptotic series).
  const restVolts = (peak: number, n: number): number => {
    const x = peak / n;
    return peak - 0.5 * n * Math.log(2 * Math.PI * x) + n * Math.log(1 + 1 / (8 * x) + 9 / (128 * x * x));
  };
  for (const topology of TOPOLOGIES) {
    it(`${topology} rests where leakage balances the last of the pulse`, () => {
      for (const diode of [N400X, N5819]) {
        const n = (topology === 'bridge' ? 2 : 1) * diode.emission * THERMAL_VOLTS;
        const { rail } = solveRectifier({ ...BASE, topology, diode, winding: { openCircuitVolts: 18, ohms: 0.5 }, load: { amps: 0 } });
        const stacked = topology === 'doubler' ? 2 : 1;
        expect(rail.meanVolts).toBeCloseTo(stacked * restVolts(18 * Math.SQRT2, n), 3);
        expect(rail.rippleVolts).toBeLessThan(1e-3);
      }
    });
  }
  it('a very large resistance and a very small power come to the same', () => {
    const none = solveRectifier({ ...BASE, load: { amps: 0 } }).rail.meanVolts;
    expect(solveRectifier({ ...BASE, load: { ohms: 1e12 } }).rail.meanVolts).toBeCloseTo(none, 3);
    expect(solveRectifier({ ...BASE, load: { watts: 0 } }).rail.meanVolts).toBeCloseTo(none, 6);
  });
});

describe('limits', () => {
  it('resistance that vanishes changes nothing abruptly', () => {
    const at = (ohms: number): number => solveRectifier({ ...BASE, winding: { openCircuitVolts: 6.3, ohms } }).rail.meanVolts;
    expect(at(0)).toBeCloseTo(at(1e-6), 4);
    expect(at(1e-6)).toBeCloseTo(at(1e-4), 2);
  });
  it('no reservoir to speak of leaves the rectified sine', () => {
    // Mean of |sin| is 2/π of the peak; the ideal diode drops nothing that shows.
    const { rail } = solveRectifier({
      ...BASE, winding: { openCircuitVolts: 1000, ohms: 1e-3 }, diode: { saturationAmps: 1e-9, emission: 0.01, ohms: 0 },
      reservoir: { farads: 1e-9, ohms: 0 }, load: { ohms: 1000 },
    });
    expect(rail.meanVolts / (1000 * Math.SQRT2)).toBeCloseTo(2 / Math.PI, 3);
    expect(rail.minVolts).toBeLessThan(5);
  });
  it('a series resistance of the reservoir larger than the load leaves it out', () => {
    const without = solveRectifier({ ...BASE, reservoir: { farads: 1e-9, ohms: 0 }, load: { ohms: 30 } });
    const aside = solveRectifier({ ...BASE, reservoir: { farads: 2200e-6, ohms: 1000 }, load: { ohms: 30 } });
    expect(aside.rail.meanVolts / without.rail.meanVolts).toBeCloseTo(1, 1);
  });
  it('a doubler whose reservoirs run dry is clamped by the idle diode, not charged backwards without end', () => {
    const { rail } = solveRectifier({ ...BASE, topology: 'doubler', diode: N5819, reservoir: { farads: 47e-6, ohms: 0 }, load: { ohms: 30 } });
    expect(rail.meanVolts).toBeGreaterThan(0);
    expect(rail.minVolts).toBeGreaterThan(-2);
  });
});

describe('trends', () => {
  const rising = (values: readonly number[]): void => {
    for (let i = 1; i < values.length; i += 1) expect(values[i]).toBeGreaterThan(values[i - 1] as number);
  };
  for (const topology of TOPOLOGIES) {
    it(`${topology}: more reservoir, less ripple; more load, lower rail; more series resistance, gentler peaks`, () => {
      rising([10e-3, 4700e-6, 2200e-6, 1000e-6].map((farads) => solveRectifier({ ...BASE, topology, reservoir: { farads, ohms: 0.1 } }).rail.rippleVolts));
      rising([0.5, 0.3, 0.1, 0.01, 0].map((amps) => solveRectifier({ ...BASE, topology, load: { amps } }).rail.meanVolts));
      rising([10, 2.7, 1, 0.1, 0.01].map((ohms) => solveRectifier({ ...BASE, topology, winding: { openCircuitVolts: 10.8, ohms }, load: { ohms: 40 } }).diode.peakAmps));
    });
  }
  it('a lower crest factor costs a stiff heater winding about 0.2 V and a soft small transformer hardly anything', () => {
    const drop = (options: RectifierOptions): number =>
      solveRectifier(options).rail.meanVolts - solveRectifier({ ...options, crestFactor: 1.35 }).rail.meanVolts;
    const stiff = drop({ ...BASE, diode: N5822, winding: { openCircuitVolts: 6.3, ohms: 0.1 }, reservoir: { farads: 4700e-6, ohms: 0 }, load: { amps: 0.2 } });
    const soft = drop({ ...BASE, winding: { openCircuitVolts: 10.8, ohms: 2.7 }, reservoir: { farads: 2200e-6, ohms: 0 } });
    expect(stiff).toBeGreaterThan(0.15);
    expect(stiff).toBeLessThan(0.25);
    expect(soft).toBeGreaterThan(0);
    expect(soft).toBeLessThan(0.1);
  });
  it('√2 given or left out is the same sine', () => {
    expect(solveRectifier({ ...BASE, crestFactor: Math.SQRT2 }).rail).toEqual(solveRectifier(BASE).rail);
    expect(solveRectifier({ ...BASE, crestFactor: 1.4142 }).rail.meanVolts).toBeCloseTo(solveRectifier(BASE).rail.meanVolts, 3);
  });
});

describe('what cannot be', () => {
  it('a power no rail can feed is overloaded', () => {
    const reason = (load: RectifierOptions['load']): unknown => {
      try {
        solveRectifier({ ...BASE, load });
      } catch (error) {
        return error instanceof SolveError ? error.reason : error;
      }
      return 'solved';
    };
    expect(reason({ watts: 2 })).toBe('solved');
    expect(reason({ watts: 100 })).toBe('overloaded');
    expect(reason({ amps: 100 })).toBe('overloaded');
  });
  const bad: readonly [string, unknown][] = [
    ['topology', { topology: 'ring' }],
    ['winding.openCircuitVolts', { winding: { openCircuitVolts: 0, ohms: 1 } }],
    ['winding.ohms', { winding: { openCircuitVolts: 6, ohms: -1 } }],
    ['hertz', { hertz: Number.NaN }],
    ['crestFactor', { crestFactor: 1.5 }],
    ['crestFactor', { crestFactor: 1 }],
    ['diode.saturationAmps', { diode: { ...N400X, saturationAmps: 0 } }],
    ['diode.emission', { diode: { ...N400X, emission: 0 } }],
    ['diode.ohms', { diode: { ...N400X, ohms: Infinity } }],
    ['reservoir.farads', { reservoir: { farads: 0, ohms: 0 } }],
    ['reservoir.ohms', { reservoir: { farads: 1e-3, ohms: -1 } }],
    ['load.amps', { load: { amps: -1 } }],
    ['load.ohms', { load: { ohms: 0 } }],
    ['load.watts', { load: { watts: '5' } }],
    ['load', { load: {} }],
  ];
  for (const [quantity, change] of bad) {
    it(`${quantity} as ${JSON.stringify(change)} is an InputError that names it`, () => {
      try {
        solveRectifier({ ...BASE, ...(change as object) });
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        expect((error as InputError).quantity).toBe(quantity);
        return;
      }
      expect.unreachable('it was accepted');
    });
  }
});
